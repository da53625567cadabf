"""Lays a job file out in the one canonical way; what it says and its comments stay."""
