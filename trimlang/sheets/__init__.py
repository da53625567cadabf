"""The finished job on paper and as data."""
