"""The printed sheets: a compiled job as pages that people work from."""
