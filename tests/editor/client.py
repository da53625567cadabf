"""An editor as the server sees it: a real client over standard input and output."""

from __future__ import annotations

import asyncio
import sys
from collections.abc import Coroutine, Sequence
from pathlib import Path
from typing import Any

from lsprotocol import types as lsp
from pygls.lsp.client import LanguageClient


class Editor:
    """Starts the server, types into documents and asks; each call waits for its answer."""

    def __init__(
        self,
        folder: Path,
        encodings: Sequence[str] | None = None,
        workspace: lsp.WorkspaceClientCapabilities | None = None,
    ) -> None:
        self.folder = folder.resolve()
        self.found: dict[str, list[lsp.Diagnostic]] = {}
        self._told_of: dict[str, int | None] = {}
        self._versions: dict[str, int] = {}
        self._loop = asyncio.new_event_loop()
        self.client = LanguageClient("test", "1")
        published = self._published
        self.client.feature(lsp.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS)(lambda told: published(told))
        self._do(self.client.start_io(sys.executable, "-m", "trimlang", "language-server"))
        general = lsp.GeneralClientCapabilities(
            position_encodings=None
            if encodings is None
            else tuple(map(lsp.PositionEncodingKind, encodings))
        )
        self.server = self._do(
            self.client.initialize_async(
                lsp.InitializeParams(
                    capabilities=lsp.ClientCapabilities(general=general, workspace=workspace),
                    root_uri=self.folder.as_uri(),
                    workspace_folders=(lsp.WorkspaceFolder(self.folder.as_uri(), "job"),),
                )
            )
        )
        self.client.initialized(lsp.InitializedParams())

    def _do(self, what: Coroutine[Any, Any, Any]) -> Any:
        return self._loop.run_until_complete(asyncio.wait_for(what, 30))

    def _published(self, params: lsp.PublishDiagnosticsParams) -> None:
        self.found[params.uri] = list(params.diagnostics)
        self._told_of[params.uri] = params.version

    def close(self) -> None:
        """Shut the server down as an editor does."""
        self._do(self.client.shutdown_async(None))
        self.client.exit(None)
        self._do(self.client.stop())
        self._loop.close()

    def uri(self, name: str) -> str:
        """Return a file's address."""
        return name if ":" in name else (self.folder / name).as_uri()

    def write(self, name: str, text: str) -> None:
        """Put a file on the disk."""
        (self.folder / name).parent.mkdir(parents=True, exist_ok=True)
        (self.folder / name).write_text(text, encoding="utf-8", newline="")

    def open(self, name: str, text: str) -> list[lsp.Diagnostic]:
        """Open a document and return what is wrong with it."""
        uri = self.uri(name)
        self._versions[uri] = 1
        item = lsp.TextDocumentItem(uri, "trim", 1, text)
        return self._told(
            uri, lambda: self.client.text_document_did_open(lsp.DidOpenTextDocumentParams(item))
        )

    def type(self, name: str, text: str) -> list[lsp.Diagnostic]:
        """Give a document a new text and return what is wrong with it."""
        uri = self.uri(name)
        self._versions[uri] += 1
        params = lsp.DidChangeTextDocumentParams(
            lsp.VersionedTextDocumentIdentifier(self._versions[uri], uri),
            (lsp.TextDocumentContentChangeWholeDocument(text),),
        )
        return self._told(uri, lambda: self.client.text_document_did_change(params))

    def shut(self, name: str) -> None:
        """Close a document."""
        self.client.text_document_did_close(lsp.DidCloseTextDocumentParams(self.document(name)))

    def _told(self, uri: str, act: Any) -> list[lsp.Diagnostic]:
        self._told_of.pop(uri, None)

        async def wait() -> None:
            while self._told_of.get(uri) != self._versions[uri]:
                await asyncio.sleep(0.005)

        act()
        self._do(wait())
        return self.found[uri]

    def wait_for(self, name: str, codes: list[str]) -> None:
        """Wait until a file has just these findings."""
        uri = self.uri(name)

        async def wait() -> None:
            while [one.code for one in self.found.get(uri, [])] != codes:
                await asyncio.sleep(0.005)

        self._do(wait())

    def document(self, name: str) -> lsp.TextDocumentIdentifier:
        """Return what the protocol calls a document."""
        return lsp.TextDocumentIdentifier(self.uri(name))

    def hover(self, name: str, line: int, character: int) -> str:
        """Return what the editor shows where the pointer rests."""
        told = self._do(
            self.client.text_document_hover_async(
                lsp.HoverParams(self.document(name), lsp.Position(line, character))
            )
        )
        return "" if told is None else told.contents.value

    def complete(self, name: str, line: int, character: int) -> list[lsp.CompletionItem]:
        """Return the proposals."""
        told = self._do(
            self.client.text_document_completion_async(
                lsp.CompletionParams(self.document(name), lsp.Position(line, character))
            )
        )
        return [] if told is None else list(told.items)

    def definition(self, name: str, line: int, character: int) -> list[lsp.Location]:
        """Return where a name is given."""
        return self._do(
            self.client.text_document_definition_async(
                lsp.DefinitionParams(self.document(name), lsp.Position(line, character))
            )
        )

    def references(
        self, name: str, line: int, character: int, given: bool = True
    ) -> list[lsp.Location] | None:
        """Return where a name stands, where it is given too if so wished."""
        return self._do(
            self.client.text_document_references_async(
                lsp.ReferenceParams(
                    lsp.ReferenceContext(given), self.document(name), lsp.Position(line, character)
                )
            )
        )

    def highlight(self, name: str, line: int, character: int) -> list[lsp.DocumentHighlight] | None:
        """Return where a name stands in the document itself."""
        return self._do(
            self.client.text_document_document_highlight_async(
                lsp.DocumentHighlightParams(self.document(name), lsp.Position(line, character))
            )
        )

    def before_rename(
        self, name: str, line: int, character: int
    ) -> lsp.PrepareRenamePlaceholder | None:
        """Return what would be renamed."""
        return self._do(
            self.client.text_document_prepare_rename_async(
                lsp.PrepareRenameParams(self.document(name), lsp.Position(line, character))
            )
        )

    def rename(
        self, name: str, line: int, character: int, new: str
    ) -> dict[str, list[lsp.TextEdit]]:
        """Return the edits of a rename, by address."""
        told = self._do(
            self.client.text_document_rename_async(
                lsp.RenameParams(self.document(name), lsp.Position(line, character), new)
            )
        )
        return {} if told is None else dict(told.changes)

    def versioned_rename(
        self, name: str, line: int, character: int, new: str
    ) -> dict[str, int | None]:
        """Return the version of each document that the edits of a rename are for, by address."""
        told = self._do(
            self.client.text_document_rename_async(
                lsp.RenameParams(self.document(name), lsp.Position(line, character), new)
            )
        )
        documents = [one.text_document for one in told.document_changes]
        return {one.uri: one.version for one in documents}

    def symbols(self, name: str) -> list[lsp.DocumentSymbol]:
        """Return the outline."""
        return self._do(
            self.client.text_document_document_symbol_async(
                lsp.DocumentSymbolParams(self.document(name))
            )
        )

    def fixes(
        self, name: str, finding: lsp.Diagnostic, place: lsp.Range | None = None
    ) -> list[lsp.CodeAction]:
        """Return the quick fixes of a finding, asked for at its own place or another."""
        return self._do(
            self.client.text_document_code_action_async(
                lsp.CodeActionParams(
                    self.document(name), place or finding.range, lsp.CodeActionContext((finding,))
                )
            )
        )

    def hints(self, name: str, first: int, last: int) -> list[lsp.InlayHint]:
        """Return the hints of some lines, counted from 0."""
        place = lsp.Range(lsp.Position(first, 0), lsp.Position(last, 0))
        return self._do(
            self.client.text_document_inlay_hint_async(
                lsp.InlayHintParams(self.document(name), place)
            )
        )

    def actions(self, name: str, line: int, character: int = 0) -> list[lsp.CodeAction]:
        """Return what is offered at a place, the beginning of a line unless it is told."""
        place = lsp.Range(lsp.Position(line, character), lsp.Position(line, character))
        return self._do(
            self.client.text_document_code_action_async(
                lsp.CodeActionParams(self.document(name), place, lsp.CodeActionContext(()))
            )
        )

    def format(self, name: str) -> list[lsp.TextEdit] | None:
        """Return the edits that tidy a document."""
        return self._do(
            self.client.text_document_formatting_async(
                lsp.DocumentFormattingParams(self.document(name), lsp.FormattingOptions(2, True))
            )
        )


def edited(text: str, edits: Sequence[lsp.TextEdit]) -> str:
    """Return a text after edits, columns in UTF-16 units."""
    lines = text.split("\n")

    def at(position: lsp.Position) -> int:
        before = sum(len(line) + 1 for line in lines[: position.line])
        units = lines[position.line].encode("utf-16-le")[: 2 * position.character]
        return before + len(units.decode("utf-16-le"))

    for edit in sorted(
        edits, key=lambda one: (one.range.start.line, one.range.start.character), reverse=True
    ):
        text = text[: at(edit.range.start)] + edit.new_text + text[at(edit.range.end) :]
    return text
