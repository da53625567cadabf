"""From content to pages: templates, stylesheet, paper, PDF."""
