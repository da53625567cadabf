"""Draw the arrows of the saw's turns into the sheets' fonts: ``python docs/make_arrows.py``.

Each arrow leaves a broken line at the turn's side: ↙ and ↘ are the table's swing as seen from
above, fence at the top; ↖ and ↗ the blade's lean as seen from the front, on the table's line.
"""

from __future__ import annotations

from itertools import pairwise
from math import hypot
from pathlib import Path

from fontTools.misc.psCharStrings import T2CharString
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.ttLib import TTFont

FONTS = Path(__file__).parent.parent / "templates" / "fonts"
WIDE = 800
"""How far an arrow runs, in thousandths of the size; as the bold is, so that one table holds."""
Point = tuple[float, float]


def stroke(start: Point, end: Point, thick: float) -> list[Point]:
    """A straight stroke's corners."""
    (x, y), (u, v) = start, end
    far = hypot(u - x, v - y)
    across, down = (v - y) / far * thick / 2, (x - u) / far * thick / 2
    return [
        (x - across, y - down), (u - across, v - down),
        (u + across, v + down), (x + across, y + down),
    ]  # fmt: skip


def arrow(*, up: bool) -> list[list[Point]]:
    """The shapes of the arrow to the left, in thousandths above and right of the line's start."""
    dashes = [stroke((0, low), (0, low + 100), 64) for low in range(0, 900, 200)]
    tail, tip = ((0, 0), (-430, 790)) if up else ((0, 900), (-430, 110))
    (x, y), (u, v) = tail, tip
    far = hypot(u - x, v - y)
    along = ((u - x) / far, (v - y) / far)
    neck = (u - 250 * along[0], v - 250 * along[1])
    wing = (along[1] * 150, -along[0] * 150)
    head = [tip, (neck[0] + wing[0], neck[1] + wing[1]), (neck[0] - wing[0], neck[1] - wing[1])]
    table = [stroke((-480, 0), (90, 0), 70)] if up else []
    return [*dashes, stroke(tail, neck, 110), head, *table]


def glyph(shapes: list[list[Point]], font: TTFont, *, mirrored: bool) -> T2CharString:
    """The shapes as a font keeps them, each turning the same way."""
    scale = font["head"].unitsPerEm / 1000
    pen = T2CharStringPen(WIDE * scale, None)
    for shape in shapes:
        corners = [((230 - x if mirrored else 660 + x) * scale, (y - 60) * scale) for x, y in shape]
        area = sum(x * v - u * y for (x, y), (u, v) in pairwise([*corners, corners[0]]))
        corners = corners if area > 0 else corners[::-1]
        pen.moveTo(corners[0])
        for corner in corners[1:]:
            pen.lineTo(corner)
        pen.closePath()
    top = font["CFF "].cff.topDictIndex[0]
    private = top.Private
    return pen.getCharString(private, font["CFF "].cff.GlobalSubrs)


def main() -> None:
    """Put the four arrows into both fonts, in the place of what they had there."""
    for name in ("B612-Regular.woff2", "B612-Bold.woff2"):
        font = TTFont(FONTS / name)
        top = font["CFF "].cff.topDictIndex[0]
        order = font.getGlyphOrder()
        for sign, up, mirrored in (
            ("↙", False, False), ("↘", False, True), ("↖", True, False), ("↗", True, True),
        ):  # fmt: skip
            own = f"uni{ord(sign):04X}"
            drawn = glyph(arrow(up=up), font, mirrored=mirrored)
            strings = top.CharStrings
            if own in strings.charStrings:
                strings[own] = drawn
            else:
                strings.charStringsIndex.append(drawn)
                strings.charStrings[own] = len(strings.charStringsIndex) - 1
                order.append(own)
                if top.charset is not order:
                    top.charset.append(own)
            font["hmtx"][own] = (int(WIDE * font["head"].unitsPerEm / 1000), 0)
            for table in font["cmap"].tables:
                table.cmap[ord(sign)] = own
        font.setGlyphOrder(order)
        font.flavor = "woff2"
        font.save(FONTS / name)


if __name__ == "__main__":
    main()
