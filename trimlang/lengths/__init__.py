"""Exact lengths and angles: units in, tape readings out, no float between."""
