"""Writes what the planner found as a certificate, in the problem's own shapes and lengths."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from trimlang.stock.certificate import Certificate, RackClaim, Shape, WorthClaim
from trimlang.stock.problem import Part, Problem
from trimlang.stock.sticks.floor import Worth
from trimlang.stock.sticks.timber import Timber


def certificate_of(
    timber: Timber,
    bound: int,
    worths: Sequence[Worth],
    racks: Sequence[tuple[Sequence[int], Worth]] = (),
) -> Certificate:
    """Return why no plan of a timber costs less than a bound."""
    size_of = {part: number for number, size in enumerate(timber.sizes) for part in size.ids}
    shapes: dict[Shape, int] = {}
    for part in timber.problem.parts:
        shapes[shape_of(part)] = size_of[part.id]
    lengths = sorted({blank.length for blank in timber.problem.blanks}, reverse=True)
    places = {kind.length: number for number, kind in enumerate(timber.kinds)}
    shortest = min((size.weight for size in timber.sizes), default=0)
    for length in lengths:
        room = length - 2 * timber.problem.end_waste + timber.problem.kerf
        # No piece fits it, so it is worth nothing, whatever it is called.
        if room < shortest:
            places.pop(length, None)
        elif length not in places:
            # of no use here: it is worth no more than the next longer
            longer = min((kind for kind in places if kind > length), default=length)
            places |= {length: places[longer]} if longer in places else {}

    def claim(worth: Worth) -> WorthClaim:
        return WorthClaim(
            tuple(worth.of_size[size] for size in shapes.values()),
            tuple(worth.of_kind[places[length]] if length in places else 0 for length in lengths),
        )

    def rack(counts: Sequence[int], worth: Worth) -> RackClaim:
        by_length = dict.fromkeys(lengths, 0)
        for kind, count in zip(timber.kinds, counts, strict=True):
            by_length[kind.length] += count
        return RackClaim(tuple(by_length.values()), claim(worth))

    return Certificate(
        bound=bound,
        shapes=tuple(shapes),
        lengths=tuple(lengths),
        worths=tuple(claim(worth) for worth in worths if worth.needed > 0),
        racks=tuple(rack(*one) for one in racks),
    )


def shape_of(part: Part) -> Shape:
    """Return what pieces that are cut alike have in common."""
    return part.length, part.left_lean, part.right_lean


def of_finer_grid(
    certificate: Certificate, coarse: Problem, fine: Problem, step: int
) -> Certificate:
    """Return the certificate of a problem that was rounded for a bound, as one of the problem."""
    coarse_of = {
        shape_of(part): shape_of(rounded)
        for part, rounded in zip(fine.parts, coarse.parts, strict=True)
    }
    length_of = {
        blank.length: rounded.length
        for blank, rounded in zip(fine.blanks, coarse.blanks, strict=True)
    }
    shape_at = {shape: place for place, shape in enumerate(certificate.shapes)}
    length_at = {length: place for place, length in enumerate(certificate.lengths)}
    shapes = [shape_at[shape] for shape in coarse_of.values()]
    lengths = [length_at[length] for length in length_of.values()]

    def claim(worth: WorthClaim) -> WorthClaim:
        return WorthClaim(
            tuple(worth.of_shape[place] for place in shapes),
            tuple(worth.of_length[place] for place in lengths),
        )

    return replace(
        certificate,
        shapes=tuple(coarse_of),
        lengths=tuple(length_of),
        worths=tuple(map(claim, certificate.worths)),
        # Two lengths may have become one on the coarse grid: then a rack of it is no rack here.
        racks=(),
        step=step,
    )


__all__ = ["certificate_of", "of_finer_grid", "shape_of"]
