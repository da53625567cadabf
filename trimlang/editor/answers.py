"""Turns our values into the protocol's: places, findings, mends, proposals, outlines."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from lsprotocol import types as lsp
from pygls.workspace import PositionCodec

from trimlang.diagnostics import Diagnostic, Severity, Span
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.editor.document_outline import Entry, EntrySort
from trimlang.editor.open_job import JobReading
from trimlang.editor.proposals import Proposal, ProposalKind
from trimlang.resources import page_address

_SEVERITIES: Final = {
    Severity.ERROR: lsp.DiagnosticSeverity.Error,
    Severity.WARNING: lsp.DiagnosticSeverity.Warning,
}
# The protocol has a fixed list of kinds, each with its sign in editors; these are the nearest.
_KINDS: Final = {
    ProposalKind.WORD: lsp.CompletionItemKind.Keyword,
    ProposalKind.JOINT: lsp.CompletionItemKind.EnumMember,
    ProposalKind.UNIT: lsp.CompletionItemKind.Unit,
    ProposalKind.TRIM: lsp.CompletionItemKind.Class,
    ProposalKind.RUN: lsp.CompletionItemKind.Field,
    ProposalKind.PIECE: lsp.CompletionItemKind.Reference,
    ProposalKind.FILE: lsp.CompletionItemKind.File,
}
_SYMBOLS: Final = {
    EntrySort.JOB: lsp.SymbolKind.Package,
    EntrySort.FILE: lsp.SymbolKind.File,
    EntrySort.TRIM: lsp.SymbolKind.Class,
    EntrySort.STOCK: lsp.SymbolKind.Array,
    EntrySort.SETTING: lsp.SymbolKind.Property,
    EntrySort.ROOM: lsp.SymbolKind.Namespace,
    EntrySort.RUN: lsp.SymbolKind.Field,
    EntrySort.GAP: lsp.SymbolKind.Interface,
    EntrySort.PIECE: lsp.SymbolKind.Object,
    EntrySort.LINE: lsp.SymbolKind.Event,
}


class Scale:
    """Translates places between our columns and the units in which the editor counts columns."""

    def __init__(self, reading: JobReading, codec: PositionCodec) -> None:
        self._reading = reading
        self._codec = codec

    def _line(self, file: str, line: int) -> str:
        text = self._reading.text(Span(file, line, 1, 1))
        source = self._reading.result.sources.get(file)
        # Editors keep a byte order mark in their first line and count it; the compiler takes it
        # off.
        marked = line == 1 and source is not None and source.text.startswith("\ufeff")
        return f"\ufeff{text}" if marked else text

    def _shift(self, file: str, line: int) -> int:
        """Return 1 on a first line with a byte order mark, which only editors count as a column."""
        return len(self._line(file, line)) - len(self._reading.text(Span(file, line, 1, 1)))

    def range(self, span: Span, last_line: int | None = None) -> lsp.Range:
        """Return a place as a range; with ``last_line`` it goes on to the end of that line."""
        text, shift = self._line(span.file, span.line), self._shift(span.file, span.line)
        first = self._character(text, span.column + shift)
        last = self._character(text, span.end + shift)
        end = lsp.Position(span.line - 1, max(last, first))
        if last_line is not None and last_line != span.line:
            below = self._line(span.file, last_line)
            end = lsp.Position(last_line - 1, self._codec.client_num_units(below))
        return lsp.Range(lsp.Position(span.line - 1, first), end)

    def column(self, file: str, position: lsp.Position) -> int:
        """Return our column (from 1) of an editor's position."""
        line = position.line + 1
        text = self._line(file, line)
        found = our_column(text, position.character, self._codec)
        return max(found - self._shift(file, line), 1)

    def _character(self, line: str, column: int) -> int:
        """Return the editor's column (from 0) of a column of ours (from 1)."""
        # A place may lie behind the line's end, as the end of a text whose quotes are not closed.
        beyond = max(column - 1 - len(line), 0)
        return int(self._codec.client_num_units(line[: column - 1])) + beyond

    def edit(self, edit: Edit) -> lsp.TextEdit:
        """Return an edit in the protocol's form."""
        return lsp.TextEdit(self.range(edit.span), edit.text)


def our_column(line: str, character: int, codec: PositionCodec) -> int:
    """Return our column (from 1) of an editor's (from 0), no further than the line's end."""
    # pygls takes a column beyond the end for the place before the last character.
    within = min(character, codec.client_num_units(line))
    return codec.position_from_client_units([line], lsp.Position(0, within)).character + 1


def knows_versions(editor: lsp.ClientCapabilities) -> bool:
    """Tell whether an editor takes changes that name the version of each document."""
    edit = None if editor.workspace is None else editor.workspace.workspace_edit
    return bool(edit is not None and edit.document_changes)


def diagnostic(finding: Diagnostic, scale: Scale) -> lsp.Diagnostic:
    """Return a finding, with its remedy on a line of its own and a link to its code's page."""
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


def rewriting(title: str, edits: dict[str, list[lsp.TextEdit]]) -> lsp.CodeAction:
    """Return a change that is offered, though nothing is wrong."""
    return lsp.CodeAction(
        title=title,
        kind=lsp.CodeActionKind.RefactorRewrite,
        edit=lsp.WorkspaceEdit(changes={uri: tuple(of) for uri, of in edits.items()}),
    )


def item(proposal: Proposal, line: int, character: int, size: int) -> lsp.CompletionItem:
    """Return a proposal that replaces the last ``size`` units before the cursor."""
    place = lsp.Range(lsp.Position(line, character - size), lsp.Position(line, character))
    return lsp.CompletionItem(
        label=proposal.text,
        kind=_KINDS[proposal.kind],
        detail=proposal.detail or None,
        preselect=proposal.fits or None,
        # Editors sort by the label where this is empty; what fits is to come first.
        sort_text=f"0{proposal.text}" if proposal.fits else None,
        text_edit=lsp.TextEdit(place, proposal.text),
    )


def symbols(entries: Iterable[Entry], scale: Scale) -> list[lsp.DocumentSymbol]:
    """Return an outline in the protocol's form, with everything below each entry."""
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
