"""Several jobs bought and planned together: one order for a building with many flats."""
