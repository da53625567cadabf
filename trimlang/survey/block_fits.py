"""Whether blocks and a backband fit the casing that they go with, and the trim beside it."""

from __future__ import annotations

from collections.abc import Container, Mapping
from dataclasses import replace
from fractions import Fraction

from trimlang.language import facts, tree
from trimlang.lengths.tape import NOTHING, Unit, length_text
from trimlang.settings.table import Settings
from trimlang.survey.in_front import height_below
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings
from trimlang.survey.on_walls import CasingBlock, Trimmings


def beside_opening(
    casing: Trim, trimmings: Trimmings, trims: Mapping[str, Trim], settings: Settings
) -> Fraction:
    """Return how much wall a casing takes up at one side of its opening, at the floor (inches).

    That is its reveal, and the wider of the casing with its backband and the plinth below it,
    whose inner edges are in line.
    """
    leg = casing_with_band(casing, trimmings, trims, settings)
    plinth = trimmings.plinth.wide if trimmings.plinth is not None else NOTHING
    return settings.reveal + max(leg, plinth)


def casing_with_band(
    casing: Trim, trimmings: Trimmings, trims: Mapping[str, Trim], settings: Settings
) -> Fraction:
    """Return how wide a leg is with its backband, which laps over the casing's edge (inches)."""
    wide = casing.height or NOTHING
    if trimmings.backband is None:
        return wide
    return wide + (trims[trimmings.backband].height or NOTHING) - settings.backband_lap


def check_blocks(
    line: tree.GapLine,
    cased: tuple[str, ...],
    trimmings: Trimmings,
    *,
    trims: Mapping[str, Trim],
    settings: Settings,
    findings: Findings,
    on_floor: Container[str],
) -> None:
    """Report blocks and backbands that cannot be as an opening's line says."""
    # The reader lets each kind of fact through once on a line, so its type finds it.
    said = {type(fact): fact for fact in line.facts}
    casing = trims[cased[0]]
    leg = casing_with_band(casing, trimmings, trims, settings)
    if trimmings.backband is not None:
        span = said[facts.Backbanded].span
        # A band that is all lap would stand on the casing and show no edge of its own.
        band = trims[trimmings.backband]
        if (band.height or NOTHING) <= settings.backband_lap:
            lap = length_text(settings.backband_lap, settings.unit)
            findings.say("T437", span, trim=band.name, lap=lap)
        # A band cannot step round a head that lies over the legs or sticks out past them.
        butts = len(cased) > 1 or settings.head_butt
        if trimmings.head or (butts and settings.head_overhang):
            findings.say("T435", span)
    if trimmings.plinth is not None:
        span = said[facts.Plinthed].span
        # A plinth stands on the floor below a leg; where a stool or a fourth side is, the legs end
        # above it.
        if trimmings.stool is not None or trimmings.four_sides:
            findings.say("T431", span)
        plinth, fact = trimmings.plinth, said[facts.Plinthed]
        _wide_enough(plinth, plinth.wide, leg, fact, settings.unit, findings)
        # A cap ends at the plinth too, with its top above the base that it lies on.
        beside = [
            replace(trim, height=trim.height and trim.height + height_below(trim, trims, on_floor))
            for name, trim in trims.items()
            if name in on_floor
        ]
        _stands_out(trimmings.plinth, (casing, *beside), said[facts.Plinthed], settings, findings)
    if trimmings.corner_block is not None:
        block, fact = trimmings.corner_block, said[facts.CornerBlocked]
        # A corner block takes the place of the corner, so both members end square at it and must be
        # of one width: a head of its own or a band outside would have nothing to meet there.
        if len(cased) > 1 or trimmings.head or trimmings.backband is not None:
            findings.say("T432", fact.span)
        wide = casing.height or NOTHING
        _wide_enough(block, min(block.wide, block.tall), wide, fact, settings.unit, findings)
        # The block's middle is where the members cross: what is wider than they are reaches inwards
        # as well.
        over = (max(block.wide, block.tall) - wide) / 2
        if over > settings.reveal:
            sizes = {"over": over, "reveal": settings.reveal}
            texts = {name: length_text(size, settings.unit) for name, size in sizes.items()}
            findings.say("T433", fact.span, block=block.name, **texts)


def _wide_enough(
    block: CasingBlock,
    size: Fraction,
    leg: Fraction,
    fact: facts.Fact,
    unit: Unit,
    findings: Findings,
) -> None:
    if size < leg:
        texts = {"own": length_text(size, unit), "its": length_text(leg, unit)}
        findings.say("T430", fact.span, block=block.name, **texts)


def _stands_out(
    plinth: CasingBlock,
    beside: tuple[Trim, ...],
    fact: facts.Fact,
    settings: Settings,
    findings: Findings,
) -> None:
    """Report a plinth that is lower or thinner than what ends at it; the first one tells enough."""
    # Trims of the floor end at its side; the casing, the first of them, stands on it.
    for trim in beside:
        for own, its, word in (
            (plinth.tall, trim.height if trim is not beside[0] else None, "tall"),
            (plinth.thickness, trim.thickness, "thick"),
        ):
            if own is not None and its is not None and its > own:
                texts = {"own": own, "its": its}
                sizes = {name: length_text(size, settings.unit) for name, size in texts.items()}
                findings.say(
                    "T434", fact.span, block=plinth.name, trim=trim.name, word=word, **sizes
                )
                return
