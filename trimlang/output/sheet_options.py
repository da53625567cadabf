"""The options for a job's sheets."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path

from trimlang.lengths.tape import Shown
from trimlang.record import record


class FileFormat(StrEnum):
    """A kind of file to write; the value is the word that the user asks for it with."""

    HTML = "html"
    PDF = "pdf"
    JSON = "json"
    CSV = "csv"
    DXF = "dxf"


@record
class SheetOptions:
    """How sheets are printed: ``SheetOptions(formats=(FileFormat.HTML,), paper="a4")``.

    formats: the kinds of files to write; empty means HTML and PDF.
    paper: ``letter`` or ``a4``; None takes the one that goes with the job's unit.
    show: ``in``, ``ft`` or ``mm``; None shows lengths as the job file has them.
    language: the code of a language that there is a catalogue for, such as ``es``.
    ticket: the size of a label, such as ``100mm x 50mm``; None prints tickets on pages.
    codes: whether tickets carry a QR code.
    phone: whether all sheets are also written as one page, to send to a phone.
    templates: a folder of the user's own templates.
    """

    formats: tuple[FileFormat, ...] = ()
    paper: str | None = None
    show: Shown | None = None
    language: str = "en"
    ticket: str | None = None
    codes: bool = True
    phone: bool = False
    templates: Path | None = None

    def wants(self, *formats: FileFormat) -> bool:
        """Tell whether any of these kinds of file is asked for."""
        return bool(set(self.formats or (FileFormat.HTML, FileFormat.PDF)) & set(formats))
