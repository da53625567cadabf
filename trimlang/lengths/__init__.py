"""Exact lengths and angles: from units to tape readings, with no float in between."""
