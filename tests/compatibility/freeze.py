"""Keep this release's job files: ``python -m tests.compatibility.freeze``.

Run it once, when a version is about to be released.  It copies the examples and
the blocks of the language reference into ``tests/compatibility/VERSION/``, with what
they mean; a version that is kept already is never written over, unless with
``--again`` while it is not yet released.
"""

from __future__ import annotations

import argparse
import json
import shutil
import sys
from hashlib import sha256

from tests.compatibility.kept import HERE, compiled, cost, figures, job_files, meaning
from tests.conftest import EXAMPLES
from tests.test_language_reference import BLOCKS, whole
from trimlang.sheets.export.plan_json import plan_json
from trimlang.stock.planner import Effort
from trimlang.version import __version__

PATIENT = Effort(seconds=120)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--again", action="store_true", help="write over what is kept")
    options = parser.parse_args()
    folder = HERE / __version__
    if folder.exists() and not options.again:
        sys.stderr.write(f"{folder.name} is kept already\n")
        return 1
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir()
    included = {"prices.trim"}
    for path in sorted(EXAMPLES.glob("*.trim")):
        text = path.read_text(encoding="utf-8")
        if path.name in included:
            (folder / "parts").mkdir()
            (folder / "parts" / path.name).write_text(text, encoding="utf-8")
        else:
            text = text.replace('include "prices.trim"', 'include "parts/prices.trim"')
            (folder / path.name).write_text(text, encoding="utf-8")
    for number, (kind, block) in enumerate(BLOCKS, start=1):
        text = whole(kind, block).replace('include "prices.trim"', 'include "parts/prices.trim"')
        (folder / f"reference-{number:02}.trim").write_text(text, encoding="utf-8")
    kept, printed, digests = {}, {}, {}
    for path in job_files(folder):
        price, bound = cost(path, PATIENT)
        kept[path.name] = {**meaning(path), "cost": price, "bound": bound}
        text = plan_json(compiled(path, Effort()))
        printed[path.name] = figures(json.loads(text)).splitlines()
        digests[path.name] = sha256(text.encode()).hexdigest()
    for name, values in (("meaning", kept), ("figures", printed), ("digests", digests)):
        text = json.dumps(values, ensure_ascii=False, indent=1) + "\n"
        (folder / f"{name}.json").write_text(text, encoding="utf-8")
    sys.stderr.write(f"{len(kept)} job files of {__version__} are kept\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
