"""A ticket's payload as a QR code, as a small picture; any phone reads it without a network."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from markupsafe import Markup

if TYPE_CHECKING:
    from segno import QRCode

#: The margin that readers need, in modules: half of what ISO/IEC 18004 asks for, which a ticket's
#: own white paper makes up.
QUIET: Final = 2


# a job that is built again has few new tickets
@lru_cache(maxsize=512)
def qr_picture(payload: str, about: str) -> Markup:
    """Return the code of a plain text as an image of one dot a module; ``about`` is its name.

    A PDF takes such an image as it is, where it would draw some hundred strokes.
    """
    picture = code_of(payload).png_data_uri(border=QUIET, scale=1)
    return Markup('<img class="qr" alt="{}" src="{}"/>').format(about, picture)


def code_of(payload: str) -> QRCode:
    """Return the code of a plain text.

    On a ticket large modules help a phone in poor light more than spare ones do: the
    lowest level of correction, raised (by segno) where that takes no more modules.
    """
    import segno

    # every mask is valid; choosing the prettiest takes ten times as long as all the rest, and
    # this one is the quickest to lay over a code
    return segno.make(payload, error="l", micro=False, mask=2)
