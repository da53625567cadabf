"""Whether given sticks hold everything, and so the plan of least cost."""
