"""A survey as a table: CSV from a spreadsheet into a job file, and back."""
