"""What the order says of the plan and of its proof, on jobs small enough to count by hand."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest

from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.planning.ask import Question
from trimlang.planning.fewest import Fewest, fewest_sticks
from trimlang.sheets.content import order_reasons
from trimlang.sheets.render.pages import render_sheets

ROOM = """
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=butt
  opening 30 in
  S: 40 in, left=butt, right=butt
"""


def built(lines: str, log: str = "") -> Result:
    result = compile_job(f"{BASE}\n{lines}{ROOM}{log}")
    assert result.ok, result.diagnostics
    return result


def said(result: Result) -> str:
    """The text of every sheet, in one line."""
    pages = render_sheets(result).values()
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", " ".join(pages))).split())


def test_what_is_in_hand_besides_is_told() -> None:
    result = built(f"{TWELVE_FEET}\nspare 0 %",
                   "bought 2 base 12 ft\ncut HA-N-base, HA-S-base\n")  # fmt: skip
    text = said(result)
    # 144 less 60, 40 and two kerfs of 1/8
    assert "rest of base-1, 43 3/4 in" in text
    assert "1 of 12 ft" in text


def test_a_spare_for_any_one_piece_is_told() -> None:
    text = said(built(f"{TWELVE_FEET}\nspare covers any one piece spoiled"))
    assert "Any one piece may be spoiled: what is left over is enough to cut it again." in text
    assert "Nothing is bought for mistakes." in said(built(f"{TWELVE_FEET}\nspare 0 %"))


def test_fewer_and_dearer_sticks_are_told_as_such() -> None:
    # 8 ft and 4 ft at 5.00 each are two sticks for 10.00; one of 12 ft is a single one for 17.40
    text = said(built(f"{TWELVE_FEET}, 8 ft at 5.00\nspare 0 %"))
    assert "1 instead of 2 (1 of 12 ft) cost 17.40, 7.40 more" in text


@pytest.mark.parametrize(
    ("sticks", "text"), [(1, "as a quick search found. "), (2, "A quick search found no fewer. ")]
)
def test_no_bound_is_told_where_none_was_found(
    monkeypatch: pytest.MonkeyPatch, sticks: int, text: str
) -> None:
    """“Fewer than 0 cannot do” says nothing."""

    def unbounded(question: Question) -> Fewest | None:
        found = fewest_sticks(question)
        return None if found is None else replace(found, sticks=sticks, least=0)

    monkeypatch.setattr(order_reasons, "fewest_sticks", unbounded)
    told = said(built(f"{TWELVE_FEET}, 8 ft at 5.00\nspare 0 %"))
    assert text in told
    assert "ewer than 0" not in told


def test_sticks_and_supplies_are_one_sum() -> None:
    text = said(built(f"{TWELVE_FEET}\nspare 0 %\nnails: box of 1000 at 11.90"))
    assert "29.30" in text


def test_a_proof_is_claimed_only_where_there_is_one() -> None:
    result = built(f"{TWELVE_FEET}\nspare 0 %")
    assert "proven" in said(result)
    assert result.plans[0].stick_bound == len(result.plans[0].sticks) == 1


def test_what_joints_cost_and_save_is_told() -> None:
    # 100, 100 and 80 in: three sticks of 144 in, or two with one wall in two pieces
    job = f"""\
{BASE}
{TWELVE_FEET}
spare 0 %
splices: a joint costs {{price}}
room "Hall" as HA, trim base, open walk
  N: 100 in, left=butt, right=butt
  opening 30 in
  S: 100 in, left=butt, right=butt
  opening 30 in
  W: 80 in, left=butt, right=butt
"""
    text = said(compile_job(job.format(price="3.00")))
    what = "joints more than needed"
    assert f"{what} 1 at 3.00 each, 3.00 of work, which saves 17.40 of sticks" in text
    assert what not in said(compile_job(job.format(price="17.40")))
