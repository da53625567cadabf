"""``python -m trimlang``."""

import sys

from trimlang.cli import main

# Worker processes import this module too, and must not start a command.
if __name__ == "__main__":
    sys.exit(main())
