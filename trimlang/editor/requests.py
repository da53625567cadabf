"""The requests that an editor may make, each answered by a function of its own."""

from __future__ import annotations

from pathlib import Path

from lsprotocol import types as lsp

from trimlang.diagnostics.mend import Edit
from trimlang.diagnostics.mending import mends
from trimlang.editor import answers
from trimlang.editor.closing_hints import closing_hints
from trimlang.editor.document_outline import outline
from trimlang.editor.formatting import formatting, lines_of
from trimlang.editor.hover import hover, pieces_at
from trimlang.editor.log_in_full import written_in_full
from trimlang.editor.mention import Mention, NameSort
from trimlang.editor.open_job import JobReading
from trimlang.editor.other_way import (
    OTHER_DIRECTION,
    in_the_other_direction,
    listed_the_other_way,
    named_the_other_way,
)
from trimlang.editor.proposed_here import proposed_here
from trimlang.editor.renaming import CannotRenameError, rename
from trimlang.editor.server import Document, EditorServer
from trimlang.editor.sound_mends import sound
from trimlang.language import tree
from trimlang.language.parse import read_line


def answer_all(server: EditorServer) -> None:
    """Register an answer for every kind of request."""
    server.feature(lsp.TEXT_DOCUMENT_HOVER)(_hover)
    server.feature(
        lsp.TEXT_DOCUMENT_COMPLETION,
        lsp.CompletionOptions(trigger_characters=("=", ",", ":", "(", " ", '"')),
    )(_completion)
    server.feature(lsp.TEXT_DOCUMENT_DEFINITION)(_definition)
    server.feature(lsp.TEXT_DOCUMENT_REFERENCES)(_references)
    server.feature(lsp.TEXT_DOCUMENT_DOCUMENT_HIGHLIGHT)(_highlight)
    server.feature(lsp.TEXT_DOCUMENT_PREPARE_RENAME)(_prepare_rename)
    server.feature(lsp.TEXT_DOCUMENT_RENAME, lsp.RenameOptions(prepare_provider=True))(_rename)
    server.feature(lsp.TEXT_DOCUMENT_DOCUMENT_SYMBOL)(_symbols)
    server.feature(lsp.TEXT_DOCUMENT_FORMATTING)(formatting)
    server.feature(
        lsp.TEXT_DOCUMENT_CODE_ACTION,
        lsp.CodeActionOptions(
            code_action_kinds=(lsp.CodeActionKind.QuickFix, lsp.CodeActionKind.RefactorRewrite)
        ),
    )(_actions)
    server.feature(lsp.TEXT_DOCUMENT_INLAY_HINT)(_hints)


async def _hover(ls: EditorServer, params: lsp.HoverParams) -> lsp.Hover | None:
    document = await ls.document(params.text_document.uri)
    reading, file = document.reading, document.file
    line = params.position.line + 1
    column = document.scale.column(file, params.position)
    trims = {piece.trim for piece in pieces_at(reading, file, line, column)}
    # Which stick a piece is cut from needs a plan; only the trims under the pointer are planned.
    sticks = await ls.sticks(reading, trims)
    shown = hover(reading, file, line, column, sticks)
    if shown is None:
        return None
    return lsp.Hover(
        lsp.MarkupContent(lsp.MarkupKind.Markdown, shown.text), document.scale.range(shown.span)
    )


async def _completion(ls: EditorServer, params: lsp.CompletionParams) -> lsp.CompletionList:
    # Completion must not wait for the job to be read: names from a moment ago are good enough,
    # while the line itself is taken as it is now.
    document = await ls.soon(params.text_document.uri)
    path = ls.files.path(params.text_document.uri)
    lines = lines_of(ls.files.texts.get(path, ""))
    line, character = params.position.line, params.position.character
    text = lines[line] if line < len(lines) else ""
    before = text[: answers.our_column(text, character, ls.codec) - 1]
    files = _includable(document.reading, path)
    proposals = proposed_here(document.reading, lines, line, before, files)
    items = [
        answers.item(
            one, line, character, ls.codec.client_num_units(before[len(before) - one.covers :])
        )
        for one in proposals
    ]
    return lsp.CompletionList(is_incomplete=False, items=items)


def _includable(reading: JobReading, path: Path) -> tuple[str, ...]:
    """Return the names of the files beside a document that it could include."""
    if reading.job is None or not path.is_absolute():
        return ()
    try:
        job_files = sorted(path.parent.glob("*.trim"))
    except OSError:
        return ()
    return tuple(other.name for other in job_files if other not in (path, reading.job))


async def _mention(
    ls: EditorServer, uri: str, position: lsp.Position
) -> tuple[Document, Mention] | None:
    document = await ls.document(uri)
    column = document.scale.column(document.file, position)
    found = document.reading.names.at(document.file, position.line + 1, column)
    return None if found is None else (document, found)


async def _definition(ls: EditorServer, params: lsp.DefinitionParams) -> list[lsp.Location] | None:
    uri, position = params.text_document.uri, params.position
    found = await _mention(ls, uri, position)
    if found is not None:
        document, mention = found
        return _locations(ls, document, _given(document.reading, mention))
    included = await _included(ls, uri, position)
    if included is None:
        return None
    start = lsp.Position(0, 0)
    return [lsp.Location(ls.files.uri(included), lsp.Range(start, start))]


def _given(reading: JobReading, mention: Mention) -> tuple[Mention, ...]:
    """Return where a name is given; a tag made from a room's name is given by that name."""
    given = tuple(one for one in reading.names.of(mention.name) if one.gives)
    if given or mention.name.sort is not NameSort.TAG:
        return given
    return tuple(
        one
        for one in reading.names.mentions
        if one.name.sort is NameSort.ROOM and one.name.room == mention.name.room
    )


async def _included(ls: EditorServer, uri: str, position: lsp.Position) -> Path | None:
    """Return the file that the include line at a position names, None elsewhere."""
    document = await ls.document(uri)
    if document.reading.job is None:
        return None
    lines = document.reading.lines.get(document.file, [])
    if position.line >= len(lines):
        return None
    statement = read_line(lines[position.line], document.file, position.line + 1)[0]
    if not isinstance(statement, tree.Include):
        return None
    try:
        target = (ls.files.path(uri).parent / statement.path.text).resolve()
        # As in a build: nothing outside the job's folder is looked at.
        inside = target.is_relative_to(document.reading.job.parent)
        return target if inside and (target in ls.files.texts or target.is_file()) else None
    except (OSError, ValueError, RuntimeError):
        return None


def _locations(
    ls: EditorServer, document: Document, mentions: tuple[Mention, ...]
) -> list[lsp.Location]:
    return [
        lsp.Location(ls.address(document.reading, one.span.file), document.scale.range(one.span))
        for one in mentions
    ]


async def _references(ls: EditorServer, params: lsp.ReferenceParams) -> list[lsp.Location] | None:
    found = await _mention(ls, params.text_document.uri, params.position)
    if found is None:
        return None
    document, mention = found
    wanted = tuple(
        one
        for one in document.reading.names.of(mention.name)
        if params.context.include_declaration or not one.gives
    )
    return _locations(ls, document, wanted)


async def _highlight(
    ls: EditorServer, params: lsp.DocumentHighlightParams
) -> list[lsp.DocumentHighlight] | None:
    found = await _mention(ls, params.text_document.uri, params.position)
    if found is None:
        return None
    document, mention = found
    return [
        lsp.DocumentHighlight(
            document.scale.range(one.span),
            lsp.DocumentHighlightKind.Write if one.gives else lsp.DocumentHighlightKind.Read,
        )
        for one in document.reading.names.of(mention.name)
        if one.span.file == document.file
    ]


async def _prepare_rename(
    ls: EditorServer, params: lsp.PrepareRenameParams
) -> lsp.PrepareRenamePlaceholder | None:
    found = await _mention(ls, params.text_document.uri, params.position)
    if found is None:
        return None
    document, mention = found
    span = mention.span
    text = document.reading.text(span)[span.column - 1 : span.end - 1]
    return lsp.PrepareRenamePlaceholder(document.scale.range(span), text)


async def _rename(ls: EditorServer, params: lsp.RenameParams) -> lsp.WorkspaceEdit | None:
    from pygls.exceptions import JsonRpcException

    # A rename changes every mention, so it waits until all that was typed is read.
    await ls.settled(params.text_document.uri)
    found = await _mention(ls, params.text_document.uri, params.position)
    if found is None:
        return None
    document, mention = found
    try:
        edits = rename(document.reading, mention, params.new_name)
    except CannotRenameError as error:
        raise JsonRpcException(str(error), lsp.LSPErrorCodes.RequestFailed.value) from None
    changes = _changes(ls, document, edits)
    # Old editors take the plain form only, in which nothing guards against typing on meanwhile.
    if not answers.knows_versions(ls.client_capabilities):
        return lsp.WorkspaceEdit(changes=changes)
    return lsp.WorkspaceEdit(document_changes=_of_versions(ls, changes))


def _of_versions(
    ls: EditorServer, changes: dict[str, list[lsp.TextEdit]]
) -> list[lsp.TextDocumentEdit]:
    """Return changes with the version of each document that they are for.

    An editor refuses them where it was typed on meanwhile; the wrong places would change else.
    """
    versions = ls.files.versions
    return [
        lsp.TextDocumentEdit(
            lsp.OptionalVersionedTextDocumentIdentifier(uri, versions.get(ls.files.path(uri))),
            edits,
        )
        for uri, edits in changes.items()
    ]


def _changes(
    ls: EditorServer, document: Document, edits: tuple[Edit, ...]
) -> dict[str, list[lsp.TextEdit]]:
    changes: dict[str, list[lsp.TextEdit]] = {}
    for edit in edits:
        uri = ls.address(document.reading, edit.span.file)
        changes.setdefault(uri, []).append(document.scale.edit(edit))
    return changes


async def _symbols(ls: EditorServer, params: lsp.DocumentSymbolParams) -> list[lsp.DocumentSymbol]:
    document = await ls.document(params.text_document.uri)
    return answers.symbols(outline(document.reading, document.file), document.scale)


async def _actions(ls: EditorServer, params: lsp.CodeActionParams) -> list[lsp.CodeAction]:
    document = await ls.document(params.text_document.uri)
    found: list[lsp.CodeAction] = []
    lines = document.reading.lines.get(document.file, [])
    for finding in document.reading.result.diagnostics:
        # A job is several files; an editor asks about one.
        if finding.span.file != document.file:
            continue
        place = document.scale.range(finding.span)
        # Only findings that touch the place where the user asked.
        if place.end < params.range.start or params.range.end < place.start:
            continue
        shown = answers.diagnostic(finding, document.scale)
        found += [
            answers.action(mend, shown, _changes(ls, document, mend.edits))
            for mend in (
                *sound(mends(finding, document.reading.text(finding.span), lines), finding, lines),
                *listed_the_other_way(document.reading, finding),
                *named_the_other_way(document.reading, finding),
                *await written_in_full(document.reading, finding),
            )
        ]
    # Offered at a room's heading, whatever findings there are.
    turned = in_the_other_direction(document.reading, document.file, params.range.start.line + 1)
    if turned and not any(one.title == OTHER_DIRECTION for one in found):
        found.append(answers.rewriting(OTHER_DIRECTION, _changes(ls, document, turned)))
    return found


async def _hints(ls: EditorServer, params: lsp.InlayHintParams) -> list[lsp.InlayHint]:
    document = await ls.document(params.text_document.uri)
    first, last = params.range.start.line + 1, params.range.end.line + 1
    return [
        lsp.InlayHint(document.scale.range(one.behind).end, one.text, padding_left=True)
        for one in closing_hints(document.reading, document.file, first, last)
    ]
