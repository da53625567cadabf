"""Ready-made templates stand for the templates as they are, and for nothing else."""

from pathlib import Path
from unittest.mock import patch

import pytest
from jinja2 import Environment, TemplateNotFound

from tests.sheets.jobs import small
from trimlang.resources import folder
from trimlang.sheets.render import ready_templates as plates
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.template_filling import make_plates


def test_the_plates_are_made_from_the_templates(tmp_path: Path) -> None:
    """Make them anew: ``python -m trimlang.sheets.render.template_filling``."""
    make_plates(tmp_path)
    fresh = {path.name: path.read_text(encoding="utf-8") for path in tmp_path.glob("*.py")}
    kept = {path.name: path.read_text(encoding="utf-8") for path in plates.PLATES.glob("*.py")}
    assert kept == fresh


def test_plates_print_what_the_templates_print() -> None:
    printed = render_sheets(small())
    with patch.object(plates, "PLATES", Path("nowhere")):
        assert render_sheets(small()) == printed


def test_nothing_is_compiled_where_there_are_plates() -> None:
    with patch("jinja2.Environment.compile", side_effect=AssertionError):
        assert render_sheets(small())


def test_a_plate_serves_only_the_text_that_it_was_made_from() -> None:
    text = (folder("templates") / "checklist.html").read_text(encoding="utf-8")
    assert plates.PlateLoader(lambda _: text).load(Environment(autoescape=True), "checklist.html")
    with pytest.raises(TemplateNotFound):
        plates.PlateLoader(lambda _: f"{text} ").load(
            Environment(autoescape=True), "checklist.html"
        )


def test_a_plate_serves_only_the_jinja2_that_made_it() -> None:
    text = (folder("templates") / "checklist.html").read_text(encoding="utf-8")
    with patch.object(plates, "jinja_version", "3.0"), pytest.raises(TemplateNotFound):
        plates.PlateLoader(lambda _: text).load(Environment(autoescape=True), "checklist.html")
