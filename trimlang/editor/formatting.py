"""The request to lay a document out as ``trimlang tidy`` does."""

from __future__ import annotations

from lsprotocol import types as lsp

from trimlang.editor.server import EditorServer
from trimlang.editor.tidying import tidied


def lines_of(text: str) -> list[str]:
    """Return a document's lines, whatever its line ends are."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


async def formatting(
    ls: EditorServer, params: lsp.DocumentFormattingParams
) -> list[lsp.TextEdit] | None:
    """Return the edits that tidy a document; None where it is not open."""
    text = ls.files.texts.get(ls.files.path(params.text_document.uri))
    if text is None:
        return None
    edits: list[lsp.TextEdit] = []
    last = len(lines_of(text)) - 1
    # Only the lines that change, so that the cursor and the folds of the others stay.
    for new in tidied(text):
        made = "".join(f"{line}\n" for line in new.lines)
        start, end = lsp.Position(new.first, 0), lsp.Position(new.last, 0)
        if new.last > last:
            # The last line has no line end to replace, so the edit ends with its text.
            end = lsp.Position(last, ls.codec.client_num_units(lines_of(text)[last]))
            made = made.removesuffix("\n")
            # Lines are added behind the last one.
            if new.first > last:
                start, made = end, f"\n{made}"
        edits.append(lsp.TextEdit(lsp.Range(start, end), made))
    return edits
