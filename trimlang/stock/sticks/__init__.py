"""What is to be cut and what it can be cut from, in whole numbers, and what these alone prove."""
