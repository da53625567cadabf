"""The one place that states trimlang's version."""

__version__ = "0.1.0"
