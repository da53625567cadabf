"""Settings of the saw, the spare and the supplies: they hold for the whole job."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM, NOTHING
from trimlang.lengths.units import VolumeUnit
from trimlang.settings.setting_kinds import (
    AngleSetting,
    Bevels,
    BevelsSetting,
    LengthSetting,
    NumberSetting,
    Packed,
    PackedSetting,
    PriceSetting,
    SpreadSetting,
    Switch,
)

_PAINT: Final = Fraction(350 * 144, 231)
"""350 sq ft a US gallon, in square inches a cubic inch: 144 in² a sq ft, 231 in³ a gallon."""


MOST_REACH: Final = 75
"""Degrees from square that no mitre saw swings past (a sanity limit, no source)."""


class JobRows:
    """The rows that hold for the whole job."""

    __slots__ = ()

    kerf = LengthSetting(
        words="saw: kerf",
        page="what each cut turns to dust",
        default=Fraction(1, 8),
        unsaid="1/8 in",
        why="a full-kerf 12 in blade; common practice, no source",
        what="a kerf",
        from_nothing=True,
        # Half an inch (12.7 mm) is wider than any saw's cut (a sanity limit, no source).
        at_most=Fraction(1, 2),
        too_much="T250",
        fact="kerf",
    )
    # Scales of mitre saws have a mark at each half degree; one that shows no more than every fifth
    # is none (common practice, no source).
    saw_step = AngleSetting(
        words="saw: reads to",
        page="the finest angle that the saw's scale shows",
        default=Fraction(1, 2),
        unsaid="1/2°",
        rules=("reads_to",),
        what="what the saw reads to",
        least=0,
        most=5,
    )
    squares_off = LengthSetting(
        words="saw: squares off",
        page="trimmed from both ends of each stick",
        default=NOTHING,
        unsaid="nothing",
        what="what is squared off",
        from_nothing=True,
    )
    # Saws swing to 45° and a little more, many to 50° at both sides (common practice, no source).
    saw_reach = AngleSetting(
        words="saw: reaches",
        page="the mitre that the saw swings to; beyond it there is a warning",
        default=Fraction(50),
        unsaid="50°",
        rules=("reaches",),
        what="what the saw swings to",
        least=1,
        most=MOST_REACH,
    )
    # Where nothing is said the order has no line for blades: nobody asked for one.
    saw_blade = PackedSetting(
        words="saw: blade",
        page="how many cuts a blade makes, and its price: blades get a line of the order",
        default=Packed(Fraction(0)),
        unsaid="no blades are counted",
        what="a blade's cuts",
    )
    # A saw that leans one way only leans to the left (common practice, no source).
    saw_bevels = BevelsSetting(
        words="saw: bevels",
        page="to which side the blade's top leans: left, right or both",
        default=Bevels.LEFT,
        unsaid="left",
        rules=("bevels",),
    )
    # For this row and the next, nothing means no limit.
    saw_stands = LengthSetting(
        words="saw: stands",
        page="the tallest trim that the saw cuts standing at the fence; taller lies flat",
        default=NOTHING,
        unsaid="any height",
        what="what the saw cuts standing",
        from_nothing=True,
        rules=("stands",),
    )
    saw_crosscuts = LengthSetting(
        words="saw: crosscuts",
        page="the widest trim that the saw cuts square lying flat; at a mitre it is less",
        default=NOTHING,
        unsaid="any width",
        what="what the saw cuts lying flat",
        from_nothing=True,
        rules=("crosscuts",),
    )
    # A tenth more than the pieces come to: common practice, no source.
    spare = NumberSetting(
        words="spare",
        page="stock besides, in percent of all pieces, in whole sticks",
        default=Fraction(10),
        unsaid="10 %",
        what="the spare allowance",
        least=0,
        most=100,
    )
    # No sales tax is as high as half the price; more is a slip of the pen (no source).
    tax = NumberSetting(
        words="tax",
        page="sales tax on the order's goods, in percent; it gets a line of its own",
        default=NOTHING,
        unsaid="the order leaves its line blank",
        what="the sales tax",
        least=0,
        most=50,
    )
    spare_covers = Switch(
        words="spare covers any one piece spoiled",
        page="of each trim, enough is left over to cut any one piece again",
        default=False,
        unsaid="a percentage",
        on="spare_covers",
    )
    joint_price = PriceSetting(
        words="splices: a joint costs",
        page="a joint more than a wall needs is made where it saves more than this",
        default=None,
        unsaid="no more joints than are needed",
    )
    # A nail in each stud, and studs stand so (common practice, no source). Metric frames have a
    # spacing of their own, not 16 in turned into millimetres.
    nail_every = LengthSetting(
        words="nails: every",
        page="how far apart nails are at most",
        default=Fraction(16),
        metric=400 * MM,
        unsaid="16 in, 400 mm in a metric file",
        what="nail spacing",
    )
    # Through the trim and the board and still well into the stud (common practice, no source).
    nail_long = LengthSetting(
        words="nails: … long",
        page="a nail's length",
        default=Fraction(2),
        metric=50 * MM,
        unsaid="2 in, 50 mm",
        what="a nail",
    )
    # What a planed two-by-four is thick, in inches and in millimetres (common practice, no source).
    nail_plate = LengthSetting(
        words="nails: plate",
        page="the bottom plate's thickness: where nails bite",
        default=Fraction(3, 2),
        metric=38 * MM,
        unsaid="1 1/2 in, 38 mm",
        what="a plate",
        from_nothing=True,
    )
    nail_floor = LengthSetting(
        words="nails: floor",
        page="the finished floor's thickness",
        default=NOTHING,
        unsaid="nothing",
        what="a floor's thickness",
        from_nothing=True,
    )
    # The board that is usual on walls (common practice, no source).
    nail_wallboard = LengthSetting(
        words="nails: wallboard",
        page="the wallboard's thickness, which a nail goes through",
        default=Fraction(1, 2),
        metric=Fraction(25, 2) * MM,
        unsaid="1/2 in, 12.5 mm",
        what="wallboard",
        from_nothing=True,
    )
    nail_box = PackedSetting(
        words="nails: box of",
        page="how many nails a box holds, and its price",
        default=Packed(Fraction(1000)),
        unsaid="1000, without a price",
        what="a box",
    )
    # What a fingertip smooths out of a tube cut to fit the gap (common practice, no source).
    caulk_bead = LengthSetting(
        words="caulk: bead",
        page="a caulk bead's width",
        default=Fraction(3, 16),
        metric=5 * MM,
        unsaid="3/16 in, 5 mm",
        what="a bead",
    )
    # What is printed on the usual tube, about 300 ml (common practice, no source).
    caulk_tube = PackedSetting(
        words="caulk: tube",
        page="what a tube of caulk holds, and its price",
        default=Packed(Fraction(101, 10)),
        unsaid="10.1 fl oz, without a price",
        what="a tube",
    )
    # What stays in the tube and on the rag (common practice, no source).
    caulk_waste = NumberSetting(
        words="caulk: waste",
        page="the caulk that is lost, in percent",
        default=Fraction(10),
        unsaid="10 %",
        what="caulk lost",
        least=0,
        most=100,
    )
    filler_tub = PackedSetting(
        words="filler: tub",
        page="what a tub of filler holds, and its price",
        default=Packed(Fraction(8)),
        unsaid="8 fl oz, without a price",
        what="a tub",
    )
    # A tub of nothing says that none is used: filler then goes into the nail holes too.
    putty_tub = PackedSetting(
        words="putty: tub",
        page="what a tub of putty holds, which then fills the nail holes, and its price",
        default=Packed(Fraction(0)),
        unsaid="nail holes are filled with filler",
        what="a tub",
    )
    glue_bottle = PackedSetting(
        words="glue: bottle",
        page="what a bottle of glue for outside corners, scarfs and returns holds, and its price",
        default=Packed(Fraction(0)),
        unsaid="no glue is counted",
        what="a bottle",
    )
    # Backs are primed only where the file asks for it, so a can holds nothing until it says what.
    primer_can = PackedSetting(
        words="primer: backs, can",
        page="backs and bottom edges get a coat of primer; what a can holds, and its price",
        default=Packed(Fraction(0), unit=VolumeUnit.QUART),
        metric=Packed(Fraction(0), unit=VolumeUnit.LITRE),
        unsaid="backs are not primed",
        what="a can",
    )
    # Primed trim takes two (common practice, no source).
    paint_coats = NumberSetting(
        words="paint: … coats",
        page="how often the trim is painted",
        default=Fraction(2),
        unsaid="2",
        what="coats",
        least=0,
        most=10,
    )
    paint_spread = SpreadSetting(
        words="paint: … sqft a gallon, sqm a litre",
        page="how far the paint goes, one coat",
        default=_PAINT,
        unsaid="350 sqft a gallon",
        rules=("paint_spread", "paint_spread_metric"),
        what="a spread rate",
        most=2000,
    )
    paint_can = PackedSetting(
        words="paint: can",
        page="what a can of paint holds, and its price",
        default=Packed(Fraction(1), unit=VolumeUnit.QUART),
        metric=Packed(Fraction(1), unit=VolumeUnit.LITRE),
        unsaid="1 quart, 1 litre in a metric file, without a price",
        what="a can",
    )
