"""One row a joint: what asks about joints asks the row, and a new one takes few files."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

from tests.conftest import ROOT
from tests.every import every
from tests.jobs import BASE, TWELVE_FEET
from trimlang.editor.word_meanings import MEANINGS
from trimlang.joint_row import ROUNDING_ROWS, WHY_ROUNDED, Fit
from trimlang.joints import Joint

REFERENCE = (ROOT / "docs" / "language.md").read_text(encoding="utf-8")
GRAMMAR = (ROOT / "grammar" / "trim.lark").read_text(encoding="utf-8")
WRITTEN = [joint for joint in Joint if joint.row.written]


def test_the_grammar_knows_the_joints_of_the_table_and_no_others() -> None:
    words = re.search(r"^JOINT\.3: /\(([^)]*)\)", GRAMMAR, re.MULTILINE)
    assert words is not None
    assert sorted(words[1].split("|")) == sorted(joint.word for joint in WRITTEN)


@every("joint", WRITTEN)
def test_the_page_of_a_joint_tells_of_it(joint: Joint) -> None:
    sections = dict(
        part.split("\n", 1) for part in re.split(r"^## ", REFERENCE, flags=re.MULTILINE)[1:]
    )
    assert f"`{joint.word}`" in sections[joint.row.page]
    assert MEANINGS[joint.word] == joint.row.meaning


@every("joint", Joint)
@every("fit", Fit)
def test_every_end_has_a_row_of_the_rounding_rule(joint: Joint, fit: Fit) -> None:
    assert joint.rounds(fit) in WHY_ROUNDED
    assert len(WHY_ROUNDED) == len(ROUNDING_ROWS)


ROW = """    BLOCK = JointRow(
        word="block",
        name=N_("corner block"),
        meaning="Square, against a corner block or a plinth block.",
        page=_WALLS,
        mitre=Mitre.NONE,
        rounds="butt",
        stops=True,
    )
"""
JOB = f"""
{BASE}
{TWELVE_FEET}
room "R", trim base, open walk
  N: 40 1/32 in, left=block, right=in-corner(90 deg)
  E: 50 in, left=in-corner, right=block
"""
SHOW = """
import sys, trimlang
from trimlang.sheets.wording import phrases
from trimlang.sheets.wording.catalogue import words_in
result = trimlang.compile(sys.stdin.read())
for piece in result.pieces:
    print(phrases.joint_name(piece.left, words_in("en")), piece.left.setting, piece.length)
print([one.code for one in result.diagnostics])
"""


def test_the_recipe_of_developers_md_makes_a_new_joint(tmp_path: Path) -> None:
    # what DEVELOPERS.md says of a joint that is cut square: a row and a word of the grammar
    for folder in ("trimlang", "grammar", "templates"):
        skip = shutil.ignore_patterns("__pycache__")
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=skip)
    grammar, table = tmp_path / "grammar" / "trim.lark", tmp_path / "trimlang" / "joints.py"
    grammar.write_text(GRAMMAR.replace("|butt|", "|butt|block|"), encoding="utf-8")
    rows = table.read_text(encoding="utf-8")
    table.write_text(
        rows.replace("    RETURN = JointRow(", ROW + "    RETURN = JointRow("), encoding="utf-8"
    )
    shown = subprocess.run(
        [sys.executable, "-c", SHOW],
        input=JOB,
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={"PYTHONPATH": str(tmp_path)},
        check=False,
    )
    assert not shown.stderr
    assert shown.stdout.splitlines() == ["corner block 0 40", "inside corner 45 50", "[]"]
