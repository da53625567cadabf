"""Slips that people often make in a line: how each is written, and what to write instead."""
