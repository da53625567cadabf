"""The language server: speaks the editors' protocol over standard input and output."""

from __future__ import annotations

import logging
import sys
from typing import Any

from lsprotocol import types as lsp

from trimlang.editor.requests import answer_all
from trimlang.editor.server import EditorServer


def make_server() -> EditorServer:
    """Return a server with all its answers registered."""
    server = EditorServer()

    @server.feature(lsp.INITIALIZED)
    def initialized(ls: EditorServer, _params: lsp.InitializedParams) -> None:
        ls.files.folders = [
            ls.files.path(folder.uri) for folder in ls.workspace.folders.values()
        ] or ([ls.files.path(ls.workspace.root_uri)] if ls.workspace.root_uri else [])
        files = ls.client_capabilities.workspace and (
            ls.client_capabilities.workspace.did_change_watched_files
        )
        if files and files.dynamic_registration:
            watchers = (lsp.FileSystemWatcher("**/*.{trim,site}"),)
            options = lsp.DidChangeWatchedFilesRegistrationOptions(watchers)
            ls.client_register_capability(
                lsp.RegistrationParams(
                    (
                        lsp.Registration(
                            "job-files", lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES, options
                        ),
                    )
                )
            )

    @server.feature(lsp.TEXT_DOCUMENT_DID_OPEN)
    async def opened(ls: EditorServer, params: lsp.DidOpenTextDocumentParams) -> None:
        document = params.text_document
        ls.files.put(document.uri, document.text, document.version)
        ls.changed()

    @server.feature(lsp.TEXT_DOCUMENT_DID_CHANGE)
    async def typed(ls: EditorServer, params: lsp.DidChangeTextDocumentParams) -> None:
        if params.content_changes:
            document = params.text_document
            ls.files.put(document.uri, params.content_changes[-1].text, document.version)
            ls.changed()

    @server.feature(lsp.TEXT_DOCUMENT_DID_CLOSE)
    async def closed(ls: EditorServer, params: lsp.DidCloseTextDocumentParams) -> None:
        ls.files.drop(params.text_document.uri)
        ls.changed()

    @server.feature(lsp.TEXT_DOCUMENT_DID_SAVE)
    async def saved(ls: EditorServer, _params: lsp.DidSaveTextDocumentParams) -> None:
        ls.files.look_again()
        ls.changed()

    @server.feature(lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES)
    async def elsewhere(ls: EditorServer, _params: lsp.DidChangeWatchedFilesParams) -> None:
        ls.files.look_again()
        ls.changed()

    @server.feature(lsp.SHUTDOWN)
    def stopped(ls: EditorServer, *_: Any) -> None:
        ls.close()

    answer_all(server)
    return server


def serve() -> bool:
    """Answer an editor over standard input and output until it exits.

    Returns:
        Whether it ended in order: false after an ``exit`` that no ``shutdown`` announced.
    """
    # pygls logs to stderr. An editor that never reads that would block us once its pipe is full.
    logging.getLogger("pygls").setLevel(logging.CRITICAL + 1)
    server = make_server()
    server.start_io()
    # The protocol closes the stream that it writes to after an `exit`, and only then.
    told_to_exit = sys.stdout.closed
    return not told_to_exit or server.protocol.was_shut_down
