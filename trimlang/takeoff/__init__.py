"""What to buy besides trim: nails, caulk and paint, from the job's own quantities."""
