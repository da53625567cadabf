"""What to buy besides trim: nails, caulk, filler and paint, from the job's own quantities."""
