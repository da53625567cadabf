"""Which pieces lie on which stick, found quickly, and the plan that is made of it."""
