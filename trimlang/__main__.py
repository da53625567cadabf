"""``python -m trimlang``."""

import sys

from trimlang.cli import main

# the processes of many jobs read this module too
if __name__ == "__main__":
    sys.exit(main())
