"""Speed, as ratios within one run, and the planner's published instances."""
