"""``python -m trimlang``."""

import sys

from trimlang.commands import main

sys.exit(main())
