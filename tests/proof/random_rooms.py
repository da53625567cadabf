"""Job files of made-up rooms, of every shape and ending that the proof reads."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from tests.jobs import CROWN, SHOE

ENDS = ["butt", "return", "open", "in-corner", "out-corner"]


@st.composite
def lengths(draw: st.DrawFn, unit: str, least: int, most: int) -> str:
    """A length between so many inches, written in one of the ways that people write."""
    if unit == "mm":
        tenths = draw(st.integers(least * 254, most * 254))
        return draw(st.sampled_from([f"{tenths // 10}", f"{tenths / 10:.1f} mm"]))
    size = Fraction(draw(st.integers(least * 32, most * 32)), 32)
    feet, inches = divmod(size, 12)
    return draw(st.sampled_from([f"{_mixed(size)} in", f"{feet} ft {_mixed(inches)} in"]))


def _mixed(size: Fraction) -> str:
    whole, rest = divmod(size, 1)
    return f"{whole} {rest}" if rest else str(whole)


def _written(size: Fraction, unit: str) -> str:
    return f"{_mixed(size)} in" if unit == "in" else f"{int(size)} mm"


def _run(label: int, size: str, left: str, right: str, more: str = "") -> str:
    return f"  {label}: {size}, left={left}, right={right}{more}"


@st.composite
def closed_room(draw: st.DrawFn, unit: str) -> list[str]:
    """A rectangle, an L, or a room with a chimney breast, its walls coming round; one door."""
    big, small = (st.integers(96, 260), st.integers(20, 60))
    scale = 25 if unit == "mm" else 1
    wide, deep = draw(big) * scale, draw(big) * scale
    cut_w, cut_d = draw(small) * scale, draw(small) * scale
    inside, outside = "in-corner", "out-corner"
    shape = draw(st.sampled_from(["rectangle", "ell", "chimney"]))
    if shape == "rectangle":
        walls = [(wide, inside), (deep, inside), (wide, inside), (deep, inside)]
    elif shape == "ell":
        walls = [(wide, inside), (deep - cut_d, inside), (cut_w, outside),
                 (cut_d, inside), (wide - cut_w, inside), (deep, inside)]  # fmt: skip
    else:
        cut_w = min(cut_w, wide - 50 * scale)
        first = draw(st.integers(20 * scale, wide - cut_w - 20 * scale))
        rest = wide - first - cut_w
        walls = [(first, inside), (cut_d, outside), (cut_w, outside), (cut_d, inside),
                 (rest, inside), (deep, inside), (wide, inside), (deep, inside)]  # fmt: skip
    lines: list[str] = []
    door = draw(st.integers(0, len(walls) - 1))
    for at, (size, right) in enumerate(walls):
        left = walls[at - 1][1]
        more = draw(st.sampled_from(["", "", "", ", splice", ", taken point", ", no shoe"]))
        if at == door and size > 80 * scale:
            gap, before = 30 * scale, draw(st.integers(20 * scale, size - 55 * scale))
            after = Fraction(size - gap - before)
            lines.append(_run(10 * at, _written(Fraction(before), unit), left, "butt", ""))
            lines.append(f'  opening {_written(Fraction(gap), unit)}, "door", entrance')
            lines.append(_run(10 * at + 1, _written(after, unit), "butt", right))
            continue
        if ", splice" in more and size < 72 * scale:
            more = ""
        lines.append(_run(10 * at, _written(Fraction(size), unit), left, right, more))
    return lines


@st.composite
def open_walk(draw: st.DrawFn, unit: str) -> list[str]:
    """Walls in a row, their corners measured or not, with openings between."""
    angles = st.integers(600, 1700).map(lambda tenths: f"{tenths / 10:g} deg")
    lines: list[str] = []
    count = draw(st.integers(1, 5))
    left = draw(st.sampled_from(ENDS))
    entrance = draw(st.integers(0, 2 * count))
    for at in range(count):
        met = draw(st.sampled_from(["in-corner", "out-corner", "in-corner", "splice", "gap"]))
        here = there = met
        if at == count - 1 or met == "gap":
            here, there = draw(st.sampled_from(ENDS[:3])), draw(st.sampled_from(ENDS[:3]))
        elif met != "splice" and draw(st.booleans()):
            here = f"{met}({draw(angles)})"
            if met == "in-corner" and draw(st.booleans()):
                there = draw(st.sampled_from(["in-corner cope", "in-corner(cope)"]))
            elif met == "out-corner" and draw(st.booleans()):
                here, there = "out-corner(taken point)", f"out-corner({draw(angles)})"
        more = draw(st.sampled_from(["", "", ", taken point", ", trim base", ", no shoe"]))
        size = draw(lengths(unit, 26, 420 if draw(st.integers(0, 3)) == 0 else 150))
        lines.append(_run(at, size, left, here, more))
        if met == "gap" and at < count - 1:
            mark = ", entrance" if entrance == at else ""
            lines.append(f"  opening {draw(lengths(unit, 28, 40))}{mark}")
        left = there
    return lines


@st.composite
def jobs(draw: st.DrawFn, most_rooms: int = 4) -> str:
    """A whole sound job file."""
    unit = draw(st.sampled_from(["in", "in", "mm"]))
    thick = draw(st.sampled_from(["9/16 in", "1/2 in", "11/16 in", "16 mm", "0.7 in"]))
    lines = [
        f"unit {unit}",
        f"trim base: {thick} thick, 5 1/4 in tall",
        f"{SHOE}",
        f"{CROWN}",
        "stock base: 12 ft at 17.40, 16 ft at 24.10",
        "stock shoe: 8 ft at 5.20, 12 ft at 7.10",
        "stock crown: 40 ft at 60",
        f"saw: kerf 1/8 in, reads to {draw(st.sampled_from(['1/2', '1/4', '1', '1/8', '0.1']))} deg"
        f"{draw(st.sampled_from(['', ', squares off 1/4 in', ', squares off 5 mm']))}"
        ", reaches 75 deg",
        "closes within 10 ft",
        "corners: out-corner gap 1 in, in-corner gap 1 in",
    ]
    lines += draw(
        st.lists(
            st.sampled_from(
                [
                    "taken point",
                    "round to 1/32 in" if unit == "in" else "round to 0.5 mm",
                    "round to 1/8 in" if unit == "in" else "round to 2 mm",
                    "round butt nearest",
                    "round cope up by 1/32 in",
                    "corners: out-corner mitre 46 deg, in-corner mitre 45 deg",
                    "corners: in-corner cope",
                    "splices: angle 30 deg, least 30 in",
                ]
            ),
            max_size=3,
            unique_by=lambda line: line[:9],
        )
    )
    for number in range(draw(st.integers(1, most_rooms))):
        trims = draw(st.sampled_from(["base", "base, shoe", "base, shoe, crown", "base, crown"]))
        closed = draw(st.booleans())
        walls = draw(closed_room(unit) if closed else open_walk(unit))
        if "shoe" not in trims:
            walls = [wall.replace(", no shoe", "") for wall in walls]
        # a scarf joins two runs of one trim
        walls = [
            wall.replace(", no shoe", "").replace(", trim base", "") if "=splice" in wall else wall
            for wall in walls
        ]
        if "crown" in trims:
            # what a scarf or a return makes of crown is not worked out here
            walls = [
                wall.replace("=splice", "=in-corner").replace("=return", "=butt")
                .replace(", splice", "")
                for wall in walls
            ]  # fmt: skip
        name = draw(st.sampled_from(["Study", "Back room", "Hall by the stair"]))
        walk = "" if closed else ", open walk"
        lines += [f'room "{name} {number}", trim {trims}{walk}', *walls]
    return "\n".join(lines) + "\n"
