"""Work in processes beside this one: many jobs at once, and how all of them stop."""
