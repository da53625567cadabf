"""Check the proof of a plan's bound, as ``verify.py`` checks the plan itself.

Nothing here, nor in what it asks, comes from the planner: a certificate is judged by the
problem alone, so a mistake there is not repeated here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from trimlang.stock.certificate import Certificate, RackClaim, Shape, WorthClaim
from trimlang.stock.checking.cheaper_mix import CheaperMix, Claim, GivenUpError
from trimlang.stock.checking.stick_tops import StickTops
from trimlang.stock.problem import Part, Plan, Problem, Status


def checked_plan(plan: Plan) -> Plan:
    """Return the plan as it may be printed: only so much of its bound is kept as is shown."""
    wrong = doubts(plan)
    if not wrong:
        return plan
    bound = 0
    if plan.certificate is not None:
        bound = min(_Check(plan.problem, plan.certificate).by_one_worth(), plan.cost)
    status = Status.PROVEN if bound == plan.cost else Status.GAP
    if plan.status is Status.UNPROVEN:
        status = Status.UNPROVEN
    return replace(plan, bound=bound, status=status, proof="", doubt="; ".join(wrong))


def doubts(plan: Plan) -> tuple[str, ...]:
    """Return why its certificate does not show a plan's bound, in words; empty: it does."""
    # Nothing is claimed.
    if plan.bound <= 0:
        return ()
    certificate = plan.certificate
    if certificate is None:
        return ("no certificate comes with the bound",)
    if certificate.bound < plan.bound:
        return (f"the certificate is for {certificate.bound}, not for {plan.bound}",)
    if not certificate.cases:
        return _Check(plan.problem, certificate).faults(plan.bound)
    ways = _with_room_for_a_loss(plan.problem)
    if len(ways) != len(certificate.cases):
        return ("the certificate leaves out a way to keep room for a spoiled piece",)
    return tuple(
        fault
        for problem, case in zip(ways, certificate.cases, strict=True)
        for fault in _Check(problem, case).faults(plan.bound)
    )


def _with_room_for_a_loss(problem: Problem) -> tuple[Problem, ...]:
    """Return the problems of which every plan of a problem with both kinds of spare solves one.

    In each some part stands for the room that is kept: one as long as the longest on a rest, or
    one as long as a stick that stays whole.  Bought, that stick counts as spare too.
    """
    alone = replace(problem, survive_loss=False)
    longest = problem.longest_lost
    ways = [replace(alone, parts=(*problem.parts, Part("\0", max(longest, 1))))]
    for length, on_hand in sorted({(blank.length, blank.on_hand) for blank in problem.blanks}):
        room = length - 2 * problem.end_waste
        if room >= max(longest, 1):
            spare = problem.spare if on_hand else max(problem.spare - length, 0)
            ways.append(replace(alone, parts=(*problem.parts, Part("\0", room)), spare=spare))
    return tuple(ways)


class _Check:
    """Checks one certificate against its problem."""

    def __init__(self, problem: Problem, certificate: Certificate) -> None:
        self._problem, self._certificate = problem, certificate
        self._counts: Counter[Shape] = Counter(
            (part.length, part.left_lean, part.right_lean) for part in problem.parts
        )
        # With spare sticks, a spoiled piece may be cut from one of them: then no room is kept for
        # it.
        if problem.survive_loss and not problem.spare and problem.longest_lost:
            self._counts[problem.longest_lost, 0, 0] += 1

    def faults(self, bound: int) -> tuple[str, ...]:
        """Return what is missing in the proof that each plan costs so much; empty: nothing is."""
        wrong = self._misshapen()
        if wrong:
            return wrong
        mixes, certificate = self._mixes(), self._certificate
        if mixes is None:
            return ("the certificate leaves out a length of stick",)
        try:
            cheaper = mixes.below(bound)
        except GivenUpError:
            return ("there are too many mixes of sticks to check",)
        if cheaper is not None:
            return (f"nothing rules out a mix that costs less than {bound}: {cheaper}",)
        used = [certificate.worths[place] for place in mixes.used]
        small = [certificate.racks[place] for place in sorted(mixes.racks_used)]
        return (
            *self._false_worths([*used, *(rack.worth for rack in small)], mixes.obtainable),
            *self._racks_that_do(small, mixes.obtainable),
        )

    def by_one_worth(self) -> int:
        """Return the greatest bound that a single worth shows."""
        mixes = None if self._misshapen() else self._mixes()
        if mixes is None:
            return 0
        worths = self._certificate.worths
        alone = sorted(((mixes.alone(place), place) for place in range(len(worths))), reverse=True)
        return next(
            (
                bound
                for bound, place in alone
                if not self._false_worths([worths[place]], mixes.obtainable)
            ),
            0,
        )

    def _misshapen(self) -> tuple[str, ...]:
        certificate = self._certificate
        shapes, lengths = certificate.shapes, certificate.lengths
        if certificate.step < 1 or len(set(lengths)) < len(lengths):
            return ("the certificate has no grid, or names a length twice",)
        if len(set(shapes)) < len(shapes):
            return ("the certificate names a shape twice",)
        every = [*certificate.worths, *(rack.worth for rack in certificate.racks)]
        sized = len(shapes), len(lengths)
        if any((len(one.of_shape), len(one.of_length)) != sized for one in every):
            return ("a worth leaves out a shape or a length",)
        return ()

    def _mixes(self) -> CheaperMix | None:
        """Return the search for mixes that the worths allow; None: a length is missing."""
        certificate = self._certificate
        counts = [self._counts.get(shape, 0) for shape in certificate.shapes]
        claims = [
            Claim(worth.of_length, sum(map(int.__mul__, worth.of_shape, counts)))
            for worth in certificate.worths
        ]
        racks = [rack.of_length for rack in certificate.racks]
        try:
            return CheaperMix(self._problem, certificate.lengths, claims, racks)
        # What is not claimed of a length might be a stick that holds anything.
        except ValueError:
            return None

    def _tops(self, obtainable: set[int]) -> tuple[StickTops, int]:
        """What checks worths, and how many pieces' shapes no worth names."""
        problem, shapes = self._problem, self._certificate.shapes
        counts = {shape: self._counts.get(shape, 0) for shape in shapes}
        others = {shape: n for shape, n in self._counts.items() if shape not in counts}
        ends = 2 * problem.end_waste - problem.kerf
        # Of a length that is neither sold nor in hand any claim will do: a room of -1 holds
        # nothing.
        rooms = [
            length - ends if length in obtainable else -1 for length in self._certificate.lengths
        ]
        tops = StickTops({**counts, **others}, rooms, problem.kerf, self._certificate.step)
        return tops, len(others)

    def _false_worths(self, worths: Sequence[WorthClaim], obtainable: set[int]) -> tuple[str, ...]:
        # A piece that the certificate does not name may lie on any stick and is worth nothing.
        tops, others = self._tops(obtainable)
        rest = (0,) * others
        return tuple(
            f"some stick can be worth more than the certificate says: {worth.of_length}"
            for worth in worths
            if not tops.hold((*worth.of_shape, *rest), worth.of_length)
        )

    def _racks_that_do(self, racks: Sequence[RackClaim], obtainable: set[int]) -> tuple[str, ...]:
        """Return the racks that are not shown to hold too little, in words."""
        if not racks:
            return ()
        if self._certificate.step > 1:
            return ("racks are not checked on a coarser grid",)
        tops, others = self._tops(obtainable)
        rest = (0,) * others
        return tuple(
            f"it is not shown that these sticks hold too little: {rack.of_length}"
            for rack in racks
            if not tops.too_little(
                (*rack.worth.of_shape, *rest), rack.worth.of_length, rack.of_length
            )
        )


__all__ = ["checked_plan", "doubts"]
