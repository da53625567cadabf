"""A page's HTML as the tree that WeasyPrint lays out, without what only a screen shows.

WeasyPrint reads HTML with a parser in Python that forgives everything.  Our pages are
well-formed XML as well, which the parser in C of the standard library reads in a hundredth of
the time.  A page that is not, from a template of the user's own, is left to WeasyPrint.
"""

from __future__ import annotations

import re
from typing import Final
from xml.etree.ElementTree import Element, ParseError, XMLParser

SVG: Final = "{http://www.w3.org/2000/svg}"
ON_SCREEN: Final = "on-screen"
"""The class of what paper does not show: what is tapped and typed into."""
SIGN: Final = "arrow"
"""The class of what a screen's reader passes over: on paper it is text as all the rest."""

_SCRIPT: Final = re.compile(r"<script>.*?</script>", re.DOTALL)
_DOCTYPE: Final = re.compile(r"\s*<!DOCTYPE html>\s*")


def page_tree(html: str) -> Element | None:
    """Return the tree of a page for paper; None where it is not well-formed."""
    start = _DOCTYPE.match(html)
    if start is None:
        return None
    parser = XMLParser()  # noqa: S314 - no entity can be declared: the doctype is cut off
    try:
        # A script may hold “<” and “&” as they are, which XML does not allow; paper runs no script.
        parser.feed(_SCRIPT.sub("", html[start.end() :]))
        root: Element = parser.close()
    except (ParseError, ValueError):  # what is no character of XML is a ValueError
        return None
    _cut_down(root)
    _names_on_leaves(root)
    for svg in list(root.iter("svg")):
        if name := svg.get("aria-label"):
            # a tagged PDF takes a drawing's alternate text from there
            title = Element("title")
            title.text = name
            svg.insert(0, title)
        for element in svg.iter():
            # HTML puts what is within <svg> into SVG's namespace by itself; XML does so only where
            # told.
            element.tag = f"{SVG}{element.tag}"
    return root


def _cut_down(element: Element) -> None:
    """Take out what only a screen shows or tells apart; keep the text of signs and behind it."""
    before: Element | None = None
    for child in list(element):
        kinds = child.get("class", "").split()
        if ON_SCREEN in kinds or SIGN in kinds:
            element.remove(child)
            # In this tree the text behind an element hangs on it, and would go with it.
            kept = (child.text or "" if SIGN in kinds else "") + (child.tail or "")
            if kept and before is not None:
                before.tail = (before.tail or "") + kept
            elif kept:
                element.text = (element.text or "") + kept
        else:
            before = child
            if len(child):
                _cut_down(child)


def _names_on_leaves(element: Element) -> None:
    """Have links lead to the first word of what they led to.

    What has an id shares its style with nothing else, and nothing in it does: each ticket would
    be worked out anew.
    """
    for child in element:
        # A drawing has ids of its own, for its clips and patterns.
        if child.tag == "svg":
            continue
        if len(child) and (name := child.get("id")):
            leaf = child[0]
            while len(leaf) and leaf.tag != "svg":
                leaf = leaf[0]
            if leaf.tag != "svg" and "id" not in leaf.attrib:
                leaf.set("id", name)
                del child.attrib["id"]
        _names_on_leaves(child)
