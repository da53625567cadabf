"""What an editor asks about a job file, answered by the compiler's own passes.

Nothing here reads the language a second time.  ``server`` alone knows the
protocol that editors speak; the other modules take frozen values and give
frozen values.
"""
