"""Our values as the protocol's: places, findings, mends, proposals, outlines."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from lsprotocol import types as lsp

from trimlang.diagnostics import Diagnostic, Severity, Span
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.mending import Edit, Mend
from trimlang.editor import positions as columns
from trimlang.editor.document_outline import Entry, Sort
from trimlang.editor.open_job import Reading
from trimlang.editor.proposals import Kind, Proposal
from trimlang.resources import page_address

_SEVERITIES: Final = {
    Severity.ERROR: lsp.DiagnosticSeverity.Error,
    Severity.WARNING: lsp.DiagnosticSeverity.Warning,
}
_KINDS: Final = {
    Kind.WORD: lsp.CompletionItemKind.Keyword,
    Kind.JOINT: lsp.CompletionItemKind.EnumMember,
    Kind.UNIT: lsp.CompletionItemKind.Unit,
    Kind.TRIM: lsp.CompletionItemKind.Class,
    Kind.RUN: lsp.CompletionItemKind.Field,
    Kind.PIECE: lsp.CompletionItemKind.Reference,
    Kind.FILE: lsp.CompletionItemKind.File,
}
_SYMBOLS: Final = {
    Sort.JOB: lsp.SymbolKind.Package,
    Sort.FILE: lsp.SymbolKind.File,
    Sort.TRIM: lsp.SymbolKind.Class,
    Sort.STOCK: lsp.SymbolKind.Array,
    Sort.SETTING: lsp.SymbolKind.Property,
    Sort.ROOM: lsp.SymbolKind.Namespace,
    Sort.RUN: lsp.SymbolKind.Field,
    Sort.GAP: lsp.SymbolKind.Interface,
    Sort.LINE: lsp.SymbolKind.Event,
}


class Scale:
    """Translates places of one reading, in the units that the editor counts columns in."""

    def __init__(self, reading: Reading, encoding: str) -> None:
        self._reading = reading
        self._encoding = encoding

    def _line(self, file: str, line: int) -> str:
        text = self._reading.text(Span(file, line, 1, 1))
        source = self._reading.result.sources.get(file)
        marked = line == 1 and source is not None and source.text.startswith("\ufeff")
        return f"\ufeff{text}" if marked else text

    def _shift(self, file: str, line: int) -> int:
        """A byte order mark is no column of ours."""
        return len(self._line(file, line)) - len(self._reading.text(Span(file, line, 1, 1)))

    def range(self, span: Span, last_line: int | None = None) -> lsp.Range:
        """Return a place; ``last_line`` where it goes on to the end of that line."""
        text, shift = self._line(span.file, span.line), self._shift(span.file, span.line)
        first = columns.character(text, span.column + shift, self._encoding)
        last = columns.character(text, span.end + shift, self._encoding)
        end = lsp.Position(span.line - 1, max(last, first))
        if last_line is not None and last_line != span.line:
            below = self._line(span.file, last_line)
            end = lsp.Position(last_line - 1, columns.size(below, self._encoding))
        return lsp.Range(lsp.Position(span.line - 1, first), end)

    def column(self, file: str, position: lsp.Position) -> int:
        """Return our column of a position."""
        line = position.line + 1
        text = self._line(file, line)
        found = columns.column(text, position.character, self._encoding)
        return max(found - self._shift(file, line), 1)

    def edit(self, edit: Edit) -> lsp.TextEdit:
        """Return an edit."""
        return lsp.TextEdit(self.range(edit.span), edit.text)


def diagnostic(finding: Diagnostic, scale: Scale) -> lsp.Diagnostic:
    """Return a finding, its remedy in a line of its own and a link to its code's page."""
    message = f"{finding.message}\n{finding.remedy}" if finding.remedy else finding.message
    page = page_address(finding.code, PAGES[finding.code].title)
    return lsp.Diagnostic(
        range=scale.range(finding.span),
        message=message,
        severity=_SEVERITIES[finding.severity],
        code=finding.code,
        code_description=None if page is None else lsp.CodeDescription(page),
        source="trimlang",
    )


def action(
    mend: Mend, finding: lsp.Diagnostic, edits: dict[str, list[lsp.TextEdit]]
) -> lsp.CodeAction:
    """Return a mend as a quick fix."""
    return lsp.CodeAction(
        title=mend.words,
        kind=lsp.CodeActionKind.QuickFix,
        diagnostics=[finding],
        is_preferred=mend.sure or None,
        edit=lsp.WorkspaceEdit(changes={uri: tuple(of) for uri, of in edits.items()}),
    )


def item(proposal: Proposal, line: int, character: int, size: int) -> lsp.CompletionItem:
    """Return a proposal that stands in place of the last ``size`` units before the cursor."""
    place = lsp.Range(lsp.Position(line, character - size), lsp.Position(line, character))
    return lsp.CompletionItem(
        label=proposal.text,
        kind=_KINDS[proposal.kind],
        detail=proposal.detail or None,
        text_edit=lsp.TextEdit(place, proposal.text),
    )


def symbols(entries: Iterable[Entry], scale: Scale) -> list[lsp.DocumentSymbol]:
    """Return an outline."""
    return [
        lsp.DocumentSymbol(
            name=entry.text,
            detail=entry.detail,
            kind=_SYMBOLS[entry.sort],
            range=scale.range(entry.whole, entry.last_line),
            selection_range=scale.range(entry.span),
            children=symbols(entry.below, scale),
        )
        for entry in entries
    ]
