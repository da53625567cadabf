"""One row a joint: what asks about joints asks the row, and a new one takes few files."""

import re
import shutil
import subprocess
import sys
import textwrap
from pathlib import Path

from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

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


def sections(page: str) -> dict[str, str]:
    parts = re.split(r"^## ", page, flags=re.MULTILINE)[1:]
    return dict(part.split("\n", 1) for part in parts)


@every("joint", WRITTEN)
def test_the_page_of_a_joint_tells_of_it(joint: Joint) -> None:
    assert f"`{joint.word}`" in sections(REFERENCE)[joint.row.page]
    assert MEANINGS[joint.word] == joint.row.meaning


@every("joint", Joint)
@every("fit", Fit)
def test_every_end_has_a_row_of_the_rounding_rule(joint: Joint, fit: Fit) -> None:
    assert joint.rounds(fit) in WHY_ROUNDED
    assert len(WHY_ROUNDED) == len(ROUNDING_ROWS)


# ---- the recipe of DEVELOPERS.md, done as it says ----------------------------------------

RECIPE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("## A new joint")[2]
STEPS = [textwrap.dedent(one) for one in re.findall(r" ```\w*\n(.*?) ```", RECIPE, re.DOTALL)]
CLIP = """
CLIP = JointRow(
    word="clip",
    name=N_("outside corner"),
    meaning="A corner with a block on it: each piece takes a quarter of the turn.",
    page=_WALLS,
    corner=Corner.OUTSIDE,
    mitre=lambda at: at.half_corner / 2,
    long_point=Edge.FACE,
    rounds=RoundedAs.OUT_CORNER,
    needs_thickness=True,
)
"""
JOB = f"""
{BASE}
{TWELVE_FEET}
room "R", trim base, open walk
  N: 40 1/16 in, left=cant, right=in-corner(90 deg)
  E: 50 in, left=in-corner, right=clip(90 deg)
  S: 30 in, left=clip, right=cant
"""
SHOW = """
import sys
from trimlang.compiler import check_job
from trimlang.sheets.wording import phrases
from trimlang.sheets.wording.catalogue import words_in
result = check_job(sys.stdin.read())
for piece in result.pieces:
    print(piece.left.setting, piece.right.setting, piece.length)
cant = result.pieces[0].left
print(*(phrases.joint_name(cant, words_in(language)) for language in ("en", "es", "de")), sep=", ")
print([one.code for one in result.diagnostics])
"""


def test_a_joint_is_added_as_the_developers_page_says(tmp_path: Path) -> None:
    row, word, line, *names = STEPS
    # with what Python has compiled of them, which goes by the files' times
    for folder in ("trimlang", "grammar", "templates"):
        being_written = shutil.ignore_patterns("*.pyc.*")
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=being_written)
    table = tmp_path / "trimlang" / "joints.py"
    last = "    BUTT = JointRow("
    said = table.read_text(encoding="utf-8")
    # Behind the corners that it knows: what stands first is what a corner is that no file names.
    table.write_text(said.replace(last, f"{textwrap.indent(row + CLIP, '    ')}{last}"), "utf-8")
    known = word.strip().replace("cant|", "")
    assert GRAMMAR.count(known) == 1
    grammar = tmp_path / "grammar" / "trim.lark"
    grammar.write_text(GRAMMAR.replace(known, f"{word.strip()}clip|"), encoding="utf-8")
    for language, name in zip(("es", "de"), names, strict=True):
        with (tmp_path / "templates" / "words" / f"{language}.mo").open("wb") as compiled:
            write_mo(compiled, read_po(name.encode().splitlines(keepends=True)))
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
    # By hand: a third of a right angle, longest at the back, so nothing is added to the wall; a
    # free end decides before an inside corner and rounds to the nearest mark.
    lines = shown.stdout.splitlines()
    # A quarter of a square corner's turn, 9/16 in thick: 0.233 in past the wall, and rounded up.
    assert lines[:3] == ["30 45 641/16", "45 45/2 201/4", "45/2 30 121/4"]
    assert lines[3] == "canted end, extremo achaflanado, abgeschrägtes Ende"
    assert lines[4] == "[]"
    # the page of the reference that the row names tells of it
    page = REFERENCE.replace("| `splice` | ", f"{line}| `splice` | ")
    assert "`cant`" in sections(page)["Rooms and walls"]
