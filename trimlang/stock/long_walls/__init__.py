"""Walls longer than a stick, joined anywhere: what they cost at least, and how to divide them."""
