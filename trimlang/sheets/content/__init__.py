"""What stands on each sheet, worked out from the plan."""
