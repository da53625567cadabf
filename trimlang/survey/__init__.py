"""Tree to job: names resolved, units given, defaults filled in, the walk checked."""
