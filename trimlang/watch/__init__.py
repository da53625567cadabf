"""What ``build --watch`` stands on: which files were saved, and sheets shown in a browser."""
