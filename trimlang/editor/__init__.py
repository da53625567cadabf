"""Answers what an editor asks about a job file, with the compiler's own passes.

Nothing here reads the language a second time.  Only ``server``, ``requests``, ``protocol`` and
``answers`` know the editors' protocol (LSP); the other modules take frozen values and give
frozen values.
"""
