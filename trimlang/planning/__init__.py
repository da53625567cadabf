"""From pieces to a stock problem and back, and where long walls are spliced."""
