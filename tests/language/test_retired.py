"""A word on its way out is read as the new one, with a warning that says how to mend it."""

from __future__ import annotations

from tests.jobs import walls
from trimlang.diagnostics import Severity
from trimlang.diagnostics.source import Source
from trimlang.language.facts import AtEnd
from trimlang.language.parse import parse
from trimlang.language.retired import RETIRED, Retired

OLD = (Retired("inside-corner", "in-corner", "0.3", "1.0"), Retired("square", "butt", "0.3", "1.0"))
TEXT = walls('N: 40 in, left=Inside-corner, right=square, note "square inside-corner" # square')


def test_it_is_read_as_the_new_word_with_a_warning() -> None:
    statements, findings = parse(Source("x", TEXT), OLD)
    mended = TEXT.replace("=Inside-corner", "=in-corner").replace("=square", "=butt")
    assert len(statements) == len(parse(Source("x", mended), OLD)[0])
    run = statements[-1]
    said = [fact.end.joint.text for fact in run.facts if isinstance(fact, AtEnd)]
    assert said == ["in-corner", "butt"]
    assert [one.code for one in findings] == ["T130", "T130"]
    assert all(one.severity is Severity.WARNING for one in findings)
    assert findings[0].remedy == "Write “in-corner” instead of “Inside-corner”."


def test_the_warnings_replacement_mends_the_file() -> None:
    lines = TEXT.splitlines()
    # one word at a time, as an editor would
    while findings := parse(Source("x", "\n".join(lines)), OLD)[1]:
        one = findings[0]
        at, end = one.span.column - 1, one.span.end - 1
        new = one.remedy.split("”")[0].removeprefix("Write “")
        text = lines[one.span.line - 1]
        lines[one.span.line - 1] = text[:at] + new + text[end:]
    assert 'left=in-corner, right=butt, note "square inside-corner" # square' in lines[-1]


def test_without_a_retired_word_nothing_is_said() -> None:
    assert RETIRED == ()
    assert "T130" not in {one.code for one in parse(Source("x", TEXT))[1]}
