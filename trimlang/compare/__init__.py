"""Compares two versions of a job by what they mean at the saw and at the counter."""
