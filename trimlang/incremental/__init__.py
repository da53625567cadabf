"""What was made once serves again: lines, rooms and drawings that did not change."""
