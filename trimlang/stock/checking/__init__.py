"""Checks of plans and of the proofs of their cost; shares no reasoning with what made them."""
