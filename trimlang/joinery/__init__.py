"""From job to pieces: true lengths, saw settings, rounding, splices and returns."""
