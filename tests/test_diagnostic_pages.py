"""Every page's example brings up its own diagnostic."""

import pytest

import trimlang
from trimlang.diagnostics.pages import PAGES


@pytest.mark.parametrize("code", [code for code, page in PAGES.items() if page.example])
def test_the_example_on_a_page_triggers_its_code(code):
    if code in ("T601", "T602"):
        pytest.skip("wants a folder")
    assert code in {finding.code for finding in trimlang.compile(PAGES[code].example).diagnostics}
