"""A plain-text language for interior trim jobs, and its compiler."""
