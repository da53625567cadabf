"""The stock plan: which piece comes from which stick, for the least money."""
