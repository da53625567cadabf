"""Several jobs bought and laid out together: one order for a site with many flats."""
