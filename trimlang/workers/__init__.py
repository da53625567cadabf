"""Work in other processes: many jobs at once, and how all of them are stopped."""
