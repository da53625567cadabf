"""A ticket's payload as a QR code, as a small picture; any phone reads it without a network."""

from __future__ import annotations

from base64 import b64encode
from functools import lru_cache
from struct import pack
from typing import TYPE_CHECKING, Final
from zlib import compress, crc32

from markupsafe import Markup

if TYPE_CHECKING:
    from segno import QRCode

QUIET: Final = 2
"""The margin that readers need, in modules: half of what ISO/IEC 18004 asks for, which a ticket's
own white paper makes up.
"""
_WHITE_IS_ONE: Final = bytes.maketrans(b"\0\1", b"10")


# a job that is built again has few new tickets
@lru_cache(maxsize=512)
def qr_picture(payload: str, about: str) -> Markup:
    """Return the code of a plain text as an image of one dot a module; ``about`` is its name.

    A PDF takes such an image as it is, where it would draw some hundred strokes.
    """
    picture = f"data:image/png;base64,{b64encode(_png(code_of(payload).matrix)).decode()}"
    return Markup('<img class="qr" alt="{}" src="{}"/>').format(about, picture)


def _png(modules: tuple[bytearray, ...]) -> bytes:
    """Return modules (1 is black) and the margin round them as a PNG of one bit a dot.

    The parts are those of ISO/IEC 15948.  segno's own writer can draw in colours, for which it
    takes each module by itself; a row at a time is seven times as fast.
    """
    wide = len(modules) + 2 * QUIET
    side = "1" * QUIET
    margin = [_row("1" * wide)] * QUIET
    rows = [_row(f"{side}{row.translate(_WHITE_IS_ONE).decode()}{side}") for row in modules]
    header = pack(">2I5B", wide, wide, 1, 0, 0, 0, 0)
    dots = compress(b"".join((*margin, *rows, *margin)), 9)
    chunks = ((b"IHDR", header), (b"IDAT", dots), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        pack(">I", len(data)) + name + data + pack(">I", crc32(name + data))
        for name, data in chunks
    )


def _row(bits: str) -> bytes:
    """Return one row of dots, of no filter, filled up to whole bytes."""
    size = -(-len(bits) // 8)
    return b"\0" + int(bits.ljust(size * 8, "0"), 2).to_bytes(size, "big")


def code_of(payload: str) -> QRCode:
    """Return the code of a plain text.

    On a ticket large modules help a phone in poor light more than spare ones do: the
    lowest level of correction, raised (by segno) where that takes no more modules.
    """
    import segno

    # every mask is valid; choosing the prettiest takes ten times as long as all the rest, and
    # this one is the quickest to lay over a code
    return segno.make(payload, error="l", micro=False, mask=2)
