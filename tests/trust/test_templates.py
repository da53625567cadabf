"""A user's template can do no more than fill in a sheet."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.every import every
from tests.jobs import walls
from trimlang.cli import main
from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import ReachesOutError, to_pdf
from trimlang.sheets.render.template_filling import SheetTemplateError, TemplateFiller
from trimlang.stock.planner import QUICK

GOOD = walls("N: 40 in, left=butt, right=butt")


@pytest.mark.parametrize(
    "template",
    [
        "{{ ''.__class__.__mro__[1].__subclasses__() }}",
        "{{ job.__class__.__init__.__globals__ }}",
        "{{ tickets[0].__init__.__globals__['sys'] }}",
        "{{ _.__call__.__globals__ }}",
        "{{ _.__init__.__globals__.__builtins__.open('/etc/passwd').read() }}",
        "{{ self._TemplateReference__context.environment.__class__ }}",
        "{{ cycler.__init__.__globals__.os.popen('id').read() }}",
        "{{ lipsum.__globals__['os'].system('id') }}",
        "{{ ''|attr('__class__')|attr('__mro__') }}",
        "{{ '{0.__class__.__init__}'.format(job) }}",
        "{{ '{0.__class__}'.format_map({'0': job}) }}",
        "{{ ('%c'|format(95)) ~ job|map(attribute='__class__')|list }}",
        "{% set x = job.__setattr__('job', 'x') %}",
        "{{ tickets.__class__.__base__.__subclasses__() }}",
        "{{ code.__globals__ }}",
        "{% include '/etc/passwd' %}",
        "{% include '../secret.html' %}",
        "{% import 'os' as os %}",
        "{% for n in range(999999999) %}{% endfor %}",
    ],
)
def test_nothing_gets_out_of_the_sandbox(template: str, tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (tmp_path / "secret.html").write_text("secret", encoding="utf-8")
    (mine / "tickets.html").write_text(template, encoding="utf-8")
    result = compile_job(GOOD, effort=QUICK)
    try:
        html = render_sheets(result, templates=mine)["tickets"]
    except SheetTemplateError:
        return
    # jinja answers some with nothing at all
    assert not any(word in html for word in ("class", "root:", "secret", "uid=", "0x"))


@every(
    "template, wrong",
    [
        ("{% for a in range(99999) %}{% for b in range(99999) %}{% endfor %}{% endfor %}", "long"),
        ("{{ 'a' * 10 ** 11 }}", "memory"),
        ("{{ 'a'|center(10 ** 11) }}", "memory"),
        ("{{ '%99999999999d' % 1 }}", "memory"),
        ("{{ 10 ** (10 ** 9) }}", "figures"),
        ("{% set n = namespace(x=9) %}{% for i in range(99) %}"
         "{% set n.x = n.x * n.x %}{% endfor %}", "figures"),
        ("{{ 1|round(10 ** 9, 'ceil') }}", "places"),
        ("{{ 7 * 6 }}{{ 'ab' * 3 }}{{ 2 ** 10 }}{{ 2.346|round(2) }}", ""),
    ],
)  # fmt: skip
@pytest.mark.skipif(sys.platform != "linux", reason="no limit of memory elsewhere")
def test_a_template_that_never_ends_is_stopped(template: str, wrong: str, tmp_path: Path) -> None:
    (tmp_path / "sheet.html").write_text(template, encoding="utf-8")
    filler = TemplateFiller(tmp_path, seconds=0.1)
    if not wrong:
        assert filler.fill("sheet.html", {}) == "42ababab10242.35"
        return
    with pytest.raises(SheetTemplateError, match=wrong):
        filler.fill("sheet.html", {})


def test_no_path_leads_a_template_out_of_its_folder(tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "tickets.html").write_text("{% include 'mine/../../secret.html' %}", encoding="utf-8")
    (tmp_path / "secret.html").write_text("secret", encoding="utf-8")
    with pytest.raises(SheetTemplateError):
        render_sheets(compile_job(GOOD, effort=QUICK), templates=mine)


@pytest.mark.parametrize("linked", ["parts.svg", "tickets.html", "sheets.css", "within"])
def test_a_link_leads_no_template_out_of_its_folder(linked: str, tmp_path: Path) -> None:
    mine, secrets = tmp_path / "mine", tmp_path / "secrets"
    mine.mkdir()
    secrets.mkdir()
    (secrets / "parts.svg").write_text("a secret", encoding="utf-8")
    (mine / "tickets.html").write_text(
        "{% include 'within/parts.svg' ignore missing %}{% include 'parts.svg' ignore missing %}",
        encoding="utf-8",
    )
    (mine / linked).unlink(missing_ok=True)
    (mine / linked).symlink_to(secrets if linked == "within" else secrets / "parts.svg")
    with pytest.raises(SheetTemplateError, match="leads out of its folder"):
        render_sheets(compile_job(GOOD, effort=QUICK), templates=mine)


def test_a_link_within_the_folder_of_templates_is_followed(tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "real.svg").write_text("drawn here", encoding="utf-8")
    (mine / "parts.svg").symlink_to("real.svg")
    (mine / "tickets.html").write_text("{% include 'parts.svg' %}", encoding="utf-8")
    assert render_sheets(compile_job(GOOD, effort=QUICK), templates=mine)["tickets"] == "drawn here"


@every(
    "markup",
    [
        "<img src='http://127.0.0.1:9/a.png'>",
        "<img src='https://a.invalid/a.png'>",
        "<img src='file:///etc/passwd'>",
        "<img src='ftp://a.invalid/a'>",
        "<img src='FiLe:///etc/passwd'>",
        "<object data='file:///etc/passwd'></object>",
        "<embed src='file:///etc/passwd'>",
        "<link rel='stylesheet' href='file:///etc/passwd'>",
        "<link rel='attachment' href='file:///etc/passwd'>",
        "<a rel='attachment' href='file:///etc/passwd'>x</a>",
        "<style>@import 'http://127.0.0.1:9/a.css';</style>",
        "<style>@import url(file:///etc/passwd);</style>",
        "<style>@font-face { font-family: x; src: url(file:///etc/passwd) } p { font-family: x }"
        "</style><p>x</p>",
        "<p style='background: url(file:///etc/passwd)'>x</p>",
        "<ul style='list-style-image: url(http://127.0.0.1:9/a)'><li>x</ul>",
        "<svg><image href='file:///etc/passwd' width='9' height='9'/></svg>",
        "<svg><use href='file:///etc/passwd#x'/></svg>",
    ],
)
def test_a_pdf_takes_nothing_from_outside(markup: str) -> None:
    marked = Path("/etc/passwd").read_bytes()[:40]
    try:
        pdf = to_pdf(f"<!DOCTYPE html><html><body>{markup}</body></html>")
    except ReachesOutError:
        return
    assert marked not in pdf
    assert b"EmbeddedFile" not in pdf


def test_a_template_that_asks_for_more_gets_a_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "tickets.html").write_text("<img src='file:///etc/passwd'>", encoding="utf-8")
    path = tmp_path / "job.trim"
    path.write_text(GOOD, encoding="utf-8")
    assert main(["build", str(path), "--templates", str(mine), "--format", "pdf"]) == 2
    assert "from outside itself" in capsys.readouterr().err
    assert not (tmp_path / "job-sheets").exists()


def test_a_shipped_template_that_fails_is_our_fault(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(*_: object, **__: object) -> str:
        raise ValueError("no such thing")

    job = tmp_path / "job.trim"
    job.write_text(walls("N: 40 in, left=butt, right=butt"), encoding="utf-8")
    monkeypatch.setattr("jinja2.Template.render", fail)
    assert main(["build", str(job), "--format", "html", "--plan", "quick"]) == 3
    assert "a defect in trimlang itself" in capsys.readouterr().err
    assert not (tmp_path / "job-sheets").exists()
