"""Writes to the disk: a folder or a file, whole or not at all."""
