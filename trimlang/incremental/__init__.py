"""Caches: lines, rooms and drawings that did not change are not made again."""
