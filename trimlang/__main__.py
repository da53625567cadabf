"""``python -m trimlang``."""

import sys

from trimlang.cli import main

sys.exit(main())
