"""Whether a known weakness touches a locked version: ``python -m benchmarks.audit``."""
