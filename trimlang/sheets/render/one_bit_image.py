"""The codes of the tickets as a PDF keeps pictures: black and white dots, packed as they come.

WeasyPrint would unpack each PNG, make three colours of every dot and pack it again, twice.
"""

from __future__ import annotations

from base64 import b64decode
from binascii import Error
from collections.abc import Callable, Iterator
from hashlib import md5
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

_DATA: Final = "data:image/png;base64,"
_SIGNATURE: Final = b"\x89PNG\r\n\x1a\n"
_ONE_BIT_GREY: Final = bytes((1, 0, 0, 0, 0))
"""The end of a PNG's header (ISO/IEC 15948): bits a dot, grey, deflate, filters, not interlaced."""


class OtherImageError(ValueError):
    """An image is none of black and white dots within the page."""


class OneBitImage:
    """An image as WeasyPrint takes one: it has a shape, and is put on a page."""

    def __init__(self, img: Element) -> None:
        """Read an image from its address.

        Raises:
            OtherImageError: it is of another kind.
        """
        source = img.get("src", "")
        if not source.startswith(_DATA) or "style" in img.attrib:
            raise OtherImageError
        try:
            png = b64decode(source[len(_DATA) :], validate=True)
            chunks = list(_chunks(png))
        except (Error, IndexError) as error:
            raise OtherImageError from error
        kinds = {kind for kind, _ in chunks}
        if kinds != {b"IHDR", b"IDAT", b"IEND"} or chunks[0][1][8:] != _ONE_BIT_GREY:
            raise OtherImageError
        header = chunks[0][1]
        self._wide, self._tall = (int.from_bytes(header[at : at + 4]) for at in (0, 4))
        self._dots = b"".join(data for kind, data in chunks if kind == b"IDAT")
        # by this name WeasyPrint keeps an image that stands on a page more than once
        self.id = md5(png, usedforsecurity=False).hexdigest()

    def get_intrinsic_size(self, resolution: float, _size: object) -> tuple[float, float, float]:
        """Return how wide and tall it is by itself, and how wide for its height."""
        return self._wide / resolution, self._tall / resolution, self._wide / self._tall

    def draw(self, stream: Any, wide: float, tall: float, style: Any) -> None:
        """Put it on a stream of WeasyPrint's."""
        name = stream.add_image(self, style["image_rendering"] == "auto", 1)
        stream.transform(wide, 0, 0, -tall, 0, tall)
        stream.draw_x_object(name)

    def get_x_object(self, interpolate: bool, _ratio: float) -> Any:
        """Return it as a PDF keeps it: a PNG's own rows, which PDF can read."""
        import pydyf

        return pydyf.Stream(
            [self._dots],
            pydyf.Dictionary(
                {
                    "Type": "/XObject",
                    "Subtype": "/Image",
                    "Width": self._wide,
                    "Height": self._tall,
                    "ColorSpace": "/DeviceGray",
                    "BitsPerComponent": 1,
                    "Interpolate": "true" if interpolate else "false",
                    "Filter": "/FlateDecode",
                    "DecodeParms": pydyf.Dictionary(
                        {"Predictor": 15, "Colors": 1, "BitsPerComponent": 1, "Columns": self._wide}
                    ),
                }
            ),
        )


def put_as_it_is(left_to: Callable[..., Any]) -> Callable[..., Any]:
    """Return a reader of ``<img>`` for WeasyPrint that leaves other images to another."""
    from weasyprint.html import make_replaced_box

    def read(element: Any, box: Any, images: Any, base_url: Any) -> Any:
        try:
            image = OneBitImage(element)
        except OtherImageError:
            return left_to(element, box, images, base_url)
        return [make_replaced_box(element, box, image)]

    return read


def _chunks(png: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Yield the parts of a PNG: what each is, and what it holds."""
    if not png.startswith(_SIGNATURE):
        raise OtherImageError
    at = len(_SIGNATURE)
    while at < len(png):
        long = int.from_bytes(png[at : at + 4])
        yield png[at + 4 : at + 8], png[at + 8 : at + 8 + long]
        at += 12 + long
