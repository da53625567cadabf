"""From tree to job: names are resolved, units and defaults filled in, the walk is checked."""
