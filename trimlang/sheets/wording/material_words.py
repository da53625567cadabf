"""Names supplies, materials and a trim's section in a sheet's language and units."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM, Unit, decimal_text, steps_nearest
from trimlang.lengths.units import VolumeUnit, far_unit, in_cubic_inches, in_inches
from trimlang.marking import N_
from trimlang.planning.layout import CutStick
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Gap, Job, Trim
from trimlang.survey.sticks import MinimumOrder
from trimlang.takeoff.supplies import Consumable, Supply

SUPPLIES: Final = {
    Consumable.NAILS: N_("nails"),
    Consumable.CAULK: N_("painter's caulk"),
    Consumable.FILLER: N_("filler"),
    Consumable.PAINT: N_("paint"),
    Consumable.PUTTY: N_("putty"),
    Consumable.GLUE: N_("wood glue"),
    Consumable.PRIMER: N_("primer"),
    Consumable.BLADE: N_("saw blade"),
}
"""What is bought besides trim, by the takeoff's names."""

PACKAGES: Final = {
    Consumable.NAILS: N_("box of {size}"),
    Consumable.CAULK: N_("{size} fl oz tube"),
    Consumable.FILLER: N_("{size} fl oz tub"),
    Consumable.PUTTY: N_("{size} fl oz tub"),
    Consumable.GLUE: N_("{size} fl oz bottle"),
    Consumable.BLADE: N_("each"),
    "quart": N_("{size} quart can"),
    "gallon": N_("{size} gallon can"),
    "litre": N_("{size} litre can"),
}

MATERIALS: Final = (
    N_("alder"),
    N_("ash"),
    N_("beech"),
    N_("birch"),
    N_("cedar"),
    N_("cherry"),
    N_("fir"),
    N_("hardwood"),
    N_("hemlock"),
    N_("larch"),
    N_("mahogany"),
    N_("maple"),
    N_("mdf"),
    N_("oak"),
    N_("oiled"),
    N_("painted"),
    N_("pine"),
    N_("plywood"),
    N_("poplar"),
    N_("prefinished"),
    N_("primed"),
    N_("pvc"),
    N_("raw"),
    N_("solid"),
    N_("spruce"),
    N_("stained"),
    N_("unfinished"),
    N_("veneered"),
    N_("walnut"),
    N_("white"),
)
"""Common words for a trim's material; any other word is printed as the user wrote it."""

_KNOWN: Final = frozenset(MATERIALS)

FINISHES: Final = frozenset(
    {"oiled", "painted", "prefinished", "primed", "raw", "stained", "unfinished"}
)
"""Those that say what was done to the wood; all others say what wood it is."""


def material(word: str, pen: Pen) -> str:
    """Say a material's word in the sheet's language."""
    # A file may write MDF or mdf; the catalogues have one form.
    plain = word.casefold()
    if plain not in _KNOWN:
        return word
    said = pen.words(plain)
    # Where the language has the same word, or none, the user's own capitals stay.
    return word if said == plain else said


def species_and_finish(trim: Trim, pen: Pen) -> tuple[str, str]:
    """Say what a trim is made of and how it comes finished; empty where the job does not say."""
    # The file lists wood and finish in one row of words, in any order, as a price tag does.
    of_finish = [word.casefold() in FINISHES for word in trim.material]
    species, finish = (
        ", ".join(
            material(word, pen)
            for word, is_finish in zip(trim.material, of_finish, strict=True)
            if is_finish is wanted
        )
        for wanted in (False, True)
    )
    return species, finish


def name(supply: Supply, pen: Pen) -> str:
    """Say what the supply is; a block has the name that the user gave it."""
    if supply.what is Consumable.BLOCK:
        return words_of_block(supply, pen)
    return pen.words(SUPPLIES[supply.what])


def words_of_block(supply: Supply, pen: Pen) -> str:
    """Say a block's name and sizes: ``plinth, 3 in wide, 7 in tall, 1 1/8 in thick``."""
    sizes = (
        N_("{size} wide"),
        N_("{size} tall"),
        N_("{size} thick"),
    )
    facts = dict(supply.facts)
    said = [
        pen.words(text, size=pen.length(facts[key]))
        for text, key in zip(sizes, ("wide", "tall", "thick"), strict=True)
        # A size that the file does not give is left out, not printed as nothing.
        if key in facts
    ]
    return ", ".join((supply.called, *said))


def package(supply: Supply, pen: Pen) -> str:
    """Say what one package is: ``box of 1000``, ``8 fl oz tub``."""
    if supply.what is Consumable.BLOCK:
        return pen.words("each")
    # Nails, caulk and filler come in one kind of package each; paint goes by the size of its can.
    kind = PACKAGES.get(supply.what) or PACKAGES.get(supply.size_unit)
    if kind is None:
        return supply.package
    return pen.words(kind, size=pen.decimal(supply.size, 2))


def need(supply: Supply, pen: Pen) -> str:
    """Say how much of it the job takes, and what that is worked out from."""
    words, facts = pen.words, dict(supply.facts)
    if supply.what is Consumable.BLOCK:
        return words("{n} in the rooms, none besides", n=decimal_text(supply.need, 0))
    if supply.what is Consumable.NAILS:
        return words(
            "{n} nails; {long} 18-gauge brads, every {every} at most",
            n=decimal_text(supply.need, 0),
            long=nail(facts["long"], pen),
            every=nail(facts["every"], pen),
        )
    if supply.what is Consumable.CAULK:
        return words(
            "{length} of bead; paintable, {bead} bead, {reach} a tube",
            length=pen.run_of(facts["length"]),
            bead=nail(facts["bead"], pen),
            reach=pen.run_of(facts["reach"]),
        )
    if supply.what is Consumable.FILLER:
        text = N_("{need} fl oz; {holes} nail holes, {seams} scarfs and outside corners")
        # Where putty fills the holes there are none left for filler.
        if not facts["holes"]:
            text = N_("{need} fl oz; {seams} scarfs and outside corners")
        return words(
            text,
            need=_at_least_a_tenth(supply.need, pen),
            holes=decimal_text(facts["holes"], 0),
            seams=decimal_text(facts["seams"], 0),
        )
    if supply.what is Consumable.PUTTY:
        return words(
            "{need} fl oz; {holes} nail holes",
            need=_at_least_a_tenth(supply.need, pen),
            holes=decimal_text(facts["holes"], 0),
        )
    if supply.what is Consumable.GLUE:
        return words(
            "{need} fl oz; {joints} outside corners, scarfs and returns",
            need=_at_least_a_tenth(supply.need, pen),
            joints=decimal_text(facts["joints"], 0),
        )
    if supply.what is Consumable.BLADE:
        return words(
            "{cuts} cuts, two a piece; a blade makes {each}",
            cuts=decimal_text(facts["cuts"], 0),
            each=decimal_text(facts["each"], 0),
        )
    metric = pen.unit is Unit.MM
    # The takeoff counts in square and cubic inches.
    area = facts["area"] / in_inches(Fraction(1), far_unit(pen.unit)) ** 2
    volume = facts["volume"] / in_cubic_inches(
        Fraction(1), VolumeUnit.LITRE if metric else VolumeUnit.GALLON
    )
    text = N_("{volume} gallons; {coats} coats on {area} sq ft of face and edge")
    if metric:
        text = N_("{volume} litres; {coats} coats on {area} m² of face and edge")
    if supply.what is Consumable.PRIMER:
        text = N_("{volume} gallons; one coat on {area} sq ft of backs and bottom edges")
        if metric:
            text = N_("{volume} litres; one coat on {area} m² of backs and bottom edges")
    return words(
        text,
        volume=_at_least_a_tenth(volume, pen),
        coats=pen.decimal(facts.get("coats", Fraction(1)), 1),
        area=pen.decimal(area, 1),
    )


def nail(inches: Fraction, pen: Pen) -> str:
    """Write a nominal size, on a metric sheet to the half millimetre."""
    # Half a millimetre: nails and board are sold in such sizes, whatever the tape shows.
    return pen.length(steps_nearest(inches, MM / 2) if pen.unit is Unit.MM else inches)


def _at_least_a_tenth(amount: Fraction, pen: Pen) -> str:
    # So that no need is printed as 0.
    return pen.decimal(max(amount, Fraction(1, 10)), 1)


def section(trim: Trim, job: Job, pen: Pen) -> tuple[str, ...]:
    """Say a trim's section as it is sold: a crown and a casing by width, any other by height."""
    words = pen.words
    said: list[str] = []
    if trim.thickness:
        said.append(words("{size} thick", size=pen.length(trim.thickness)))
    if trim.height:
        size = pen.length(trim.height)
        # What the code calls the height of a crown or casing, the yard calls its width.
        wide = trim.spring is not None or trim.name in _casings(job)
        said.append(words("{size} wide", size=size) if wide else words("{size} tall", size=size))
    if trim.spring is not None:
        said.append(words("spring {angle}", angle=pen.angle(trim.spring)))
    return tuple(said)


def bends_to(trim: Trim, job: Job, pen: Pen) -> str:
    """Say the radius that flexible trim must bend to; empty where it bends round no wall.

    It is cast or milled for a radius, which a yard asks for (common practice, no source).
    """
    if not trim.flexible:
        return ""
    runs = (run for room in job.rooms for run in room.runs if trim.name in run.trims)
    radii = [run.curve.radius for run in runs if run.curve is not None]
    return str(pen.mark(min(radii))) if radii else ""


def _casings(job: Job) -> set[str | None]:
    gaps = (gap for room in job.rooms for gap in room.walk if isinstance(gap, Gap))
    return {
        name
        for gap in gaps
        for name in (gap.casing, gap.head, gap.trimmings.stool, gap.trimmings.backband)
    }


def least_order(trim: Trim, pen: Pen) -> str:
    """Say what the yard sells of a trim at least: sticks, money, or both; empty: anything."""
    said = _least(trim.minimum, pen)
    said += [
        pen.words("{least} in all of {supplier}", least=text, supplier=trim.supplier)
        for text in _least(trim.minimum_in_all, pen)
        if trim.supplier is not None
    ]
    return ", ".join(said)


def _least(least: MinimumOrder, pen: Pen) -> list[str]:
    said = [pen.words("{n} sticks", n=least.sticks)] if least.sticks else []
    return [*said, pen.money(least.spent)] if least.spent else said


def stick(cut: CutStick, pen: Pen) -> str:
    """Say what a stick is by its length: ``12 ft stick``, ``38 in shop offcut``."""
    if cut.on_hand:
        return f"{pen.offcut(cut.length)} {pen.words('shop offcut')}"
    return f"{pen.stick(cut.length)} {pen.words('stick')}"


def of_batch(batch: str, pen: Pen) -> str:
    """Say behind a stick which colour batch it is of; empty where the file names none."""
    return pen.words(", batch {batch}", batch=batch) if batch else ""
