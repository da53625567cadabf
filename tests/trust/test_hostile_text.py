"""A job file's texts stay texts: in HTML, SVG, PDF, CSV, JSON and on the terminal."""

from __future__ import annotations

import csv
import json
from collections import Counter
from functools import cache
from html.parser import HTMLParser
from io import BytesIO, StringIO
from pathlib import Path

import pypdf
import pytest

from tests.every import every
from tests.jobs import TWELVE_FEET, WIDE_CASE
from trimlang.cli import main
from trimlang.compiler import Result, compile_job
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.show import show
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.stock.planner import QUICK

HOSTILE = (
    "</script><script>alert(1)</script>",
    "<img src=http://a.invalid/x onerror=alert(1)>",
    "</style><style>body{display:none}",
    "</title></svg></text><svg onload=alert(1)>",
    "<a href=javascript:alert(1)>x</a><link rel=attachment href=file:///etc/passwd>",
    "&lt;b&gt;&#60;b&#62;",
    "{{ 7 * 191 }}{% raw %}{{ self }}${7*191}",
    "%(id)s {0} {job.__class__} %s",
    "' onmouseover='alert(1)",
    "\\u003cscript\\u003e\\",
    "url(http://a.invalid) @import 'http://a.invalid'; /* -->]]>",
)


def job(text: str, currency: str = "$") -> str:
    return f"""\
job "{text}"
surveyed 2026-04-18
currency "{currency}"
trim base: 9/16 in thick, 5 1/4 in tall, mdf
{WIDE_CASE}
{TWELVE_FEET}
stock case: 7 ft at 8.80
room "{text}", trim base, note "{text}", open walk
  N: 40 in, left=butt, right=out-corner, note "{text}"
  E: 50 in, left=out-corner, right=return, floor gap 3/16 in
  opening 30 in, "{text}", casing case, height 80 in, entrance
  bare 20 in, "{text}"
"""


def made(text: str) -> Result:
    result = compile_job(job(text, text), effort=QUICK)
    assert result.ok, result.diagnostics
    return result


class Elements(HTMLParser):
    """Counts elements and the names of their attributes, and keeps what scripts hold."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.seen: Counter[str] = Counter()
        self.scripts: list[str] = []
        self._in_script = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._in_script = tag == "script"
        if tag not in ("path", "rect", "p", "b", "text", "tspan", "line", "g", "span"):
            # a drawing or ticket has as many lines as its texts need, an elevation numbers in place
            # of names that have no room
            self.seen[tag] += 1
        for name, value in attrs:
            self.seen[f"{tag} {name}"] += tag in ("script", "style", "link", "img", "a")
            assert not name.startswith("on"), (tag, name, value)
            if name in ("href", "src", "xlink:href"):
                assert value is not None
                assert value.startswith(("#", "data:")), value

    def handle_endtag(self, tag: str) -> None:
        self._in_script = False

    def handle_data(self, data: str) -> None:
        if self._in_script:
            self.scripts.append(data)


@cache
def harmless_sheets() -> dict[str, str]:
    return render_sheets(made("Alder"))


@pytest.mark.parametrize("text", HOSTILE)
def test_no_markup_gets_into_a_sheet(text: str) -> None:
    harmless = harmless_sheets()
    for name, html in render_sheets(made(text)).items():
        before, after = Elements(harmless[name]), Elements(html)
        assert after.seen == before.seen, name
        assert after.scripts == before.scripts, name
        assert "1337" not in html.replace(harmless[name], "")


def test_no_link_script_or_file_gets_into_a_pdf() -> None:
    text = "".join(HOSTILE)
    for name, html in render_sheets(made(text), qr=False).items():
        if name not in ("tickets", "floor-plan"):
            continue
        reader = pypdf.PdfReader(BytesIO(to_pdf(html)))
        assert not reader.attachments
        for key in ("/OpenAction", "/AA", "/AcroForm"):
            assert key not in reader.root_object
        for page in reader.pages:
            for annotation in page.get("/Annots") or []:
                action = annotation.get_object().get("/A") or {}
                assert action.get("/S") in (None, "/GoTo")
        catalogue = {str(key) for key in (reader.root_object.get("/Names") or {})}
        assert not catalogue & {"/JavaScript", "/EmbeddedFiles"}


def test_data_keeps_texts_as_they_are(tmp_path: Path) -> None:
    path = tmp_path / "job.trim"
    for text in HOSTILE:
        path.write_text(job(text), encoding="utf-8")
        assert main(["build", str(path), "--format", "json", "--plan", "quick"]) == 0
        plan = json.loads((tmp_path / "job-sheets" / "plan.json").read_text(encoding="utf-8"))
        assert plan["job"] == text
        assert plan["pieces"][0]["room"] == text


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", " =", "\t=", "|", "％="])
def test_no_formula_gets_into_the_order(sign: str) -> None:
    text = f"{sign}HYPERLINK(1)"
    rows = list(csv.reader(StringIO(order_csv(made(text)))))
    assert len(rows) > 2
    for row in rows[1:]:
        for cell in row:
            assert cell == "" or cell[0].isalnum() or cell[0] == "'", cell


ESCAPES = "\x1b]0;owned\x07\x1b[2J\x9b31m\x00\x08\x7f\u202e\u2028\u200b"


@every("form", ["text", "json"])
@every(
    "line",
    [
        f'room "{ESCAPES}"',
        f"{ESCAPES}",
        f"N: 40 in, left={ESCAPES}, right=butt",
        f'include "{ESCAPES}.trim"',
        f"N: 40 {ESCAPES}",
        f"stock b{ESCAPES}: 12 ft at 1",
    ],
)
def test_no_control_reaches_the_terminal(line: str, form: str) -> None:
    result = compile_job(line, name=f"a{ESCAPES}.trim")
    assert result.diagnostics
    shown = StringIO()
    show(result.diagnostics, result.sources, shown, form=MessageForm(form))
    assert shown.getvalue().replace("\n", "").isprintable()


def test_no_control_reaches_the_terminal_by_a_files_name(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for argument in (f"none{ESCAPES}".replace("\x00", ""), "a\x00b"):
        assert main(["check", str(tmp_path / argument)]) == 2
    target = tmp_path / "ab\x1b[2J"
    path = tmp_path / "job.trim"
    path.write_text(job("A", "\x1b[2J"), encoding="utf-8")
    assert main(["build", str(path), "--out", str(target), "--format", "json"]) == 0
    with pytest.raises(SystemExit):
        main(["start", "one.trim", "two\x1b[2J.trim"])
    out, err = capsys.readouterr()
    assert (out + err).replace("\n", "").isprintable()
