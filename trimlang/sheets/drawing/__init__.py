"""Drawings to scale: ends of pieces, plans of rooms, names beside their walls, codes."""
