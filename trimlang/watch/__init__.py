"""Building again at every save, and showing the sheets meanwhile."""
