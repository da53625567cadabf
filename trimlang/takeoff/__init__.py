"""What to buy besides trim (nails, caulk, filler, paint), from the job's own quantities."""
