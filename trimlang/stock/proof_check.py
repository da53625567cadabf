"""Check the proof of a plan's bound, as ``verify.py`` checks the plan itself.

Nothing here, nor in what it asks, comes from the planner: a certificate is judged by the
problem alone, so a mistake there is not repeated here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from trimlang.stock.certificate import Certificate, RackClaim, Shape, WorthClaim
from trimlang.stock.cheaper_mix import CheaperMix, Claim, GivenUpError
from trimlang.stock.problem import Plan, Problem, Status
from trimlang.stock.stick_tops import StickTops


def checked_plan(plan: Plan) -> Plan:
    """The plan as it may be printed: a bound that its certificate does not show is not kept."""
    wrong = doubts(plan)
    if not wrong:
        return plan
    bound = 0
    status = Status.PROVEN if plan.cost == 0 else Status.GAP
    if plan.status is Status.UNPROVEN:
        status = Status.UNPROVEN
    return replace(plan, bound=bound, status=status, proof="", doubt="; ".join(wrong))


def doubts(plan: Plan) -> tuple[str, ...]:
    """Why the bound of a plan is not shown by its certificate, in words; empty: it is shown."""
    if plan.bound <= 0:
        return ()
    certificate = plan.certificate
    if certificate is None:
        return ("no certificate comes with the bound",)
    if certificate.bound < plan.bound:
        return (f"the certificate is for {certificate.bound}, not for {plan.bound}",)
    return _Check(plan.problem, certificate).faults(plan.bound)


class _Check:
    """One certificate beside its problem."""

    def __init__(self, problem: Problem, certificate: Certificate) -> None:
        self._problem, self._certificate = problem, certificate
        self._counts: Counter[Shape] = Counter(
            (part.length, part.left_lean, part.right_lean) for part in problem.parts
        )
        # a spoiled piece may be cut from what is spare
        if problem.survive_loss and not problem.spare and problem.parts:
            self._counts[max(part.length for part in problem.parts), 0, 0] += 1

    def faults(self, bound: int) -> tuple[str, ...]:
        """Why no plan need cost so much; empty: each does."""
        problem, certificate = self._problem, self._certificate
        lengths = certificate.lengths
        if certificate.step < 1 or len(set(lengths)) < len(lengths):
            return ("the certificate has no grid, or names a length twice",)
        every = [*certificate.worths, *(rack.worth for rack in certificate.racks)]
        sized = len(certificate.shapes), len(lengths)
        if any((len(one.of_shape), len(one.of_length)) != sized for one in every):
            return ("a worth leaves out a shape or a length",)
        shapes = [self._counts.get(shape, 0) for shape in certificate.shapes]
        if len(set(certificate.shapes)) < len(shapes):
            return ("the certificate names a shape twice",)
        claims = [
            Claim(worth.of_length, sum(map(int.__mul__, worth.of_shape, shapes)))
            for worth in certificate.worths
        ]
        racks = [rack.of_length for rack in certificate.racks]
        try:
            self._mixes = mixes = CheaperMix(problem, lengths, claims, racks)
            cheaper = mixes.below(bound)
        except ValueError:
            return ("the certificate leaves out a length of stick",)
        except GivenUpError:
            return ("there are too many mixes of sticks to check",)
        if cheaper is not None:
            return (f"nothing rules out a mix that costs less than {bound}: {cheaper}",)
        used = [certificate.worths[place] for place in mixes.used]
        small = [certificate.racks[place] for place in sorted(mixes.racks_used)]
        return (
            *self._false_worths([*used, *(rack.worth for rack in small)]),
            *self._racks_that_do(small),
        )

    def _tops(self) -> tuple[StickTops, int]:
        """What checks worths, and how many pieces' shapes no worth names."""
        problem, shapes = self._problem, self._certificate.shapes
        counts = {shape: self._counts.get(shape, 0) for shape in shapes}
        others = {shape: n for shape, n in self._counts.items() if shape not in counts}
        ends = 2 * problem.end_waste - problem.kerf
        # of a length that cannot be had nothing need be true
        had = self._mixes.had
        rooms = [length - ends if length in had else -1 for length in self._certificate.lengths]
        tops = StickTops({**counts, **others}, rooms, problem.kerf, self._certificate.step)
        return tops, len(others)

    def _false_worths(self, worths: Sequence[WorthClaim]) -> tuple[str, ...]:
        # a piece that no worth names may lie anywhere and is worth nothing
        tops, others = self._tops()
        rest = (0,) * others
        return tuple(
            f"some stick can be worth more than the certificate says: {worth.of_length}"
            for worth in worths
            if not tops.hold((*worth.of_shape, *rest), worth.of_length, worth.once)
        )

    def _racks_that_do(self, racks: Sequence[RackClaim]) -> tuple[str, ...]:
        """Those that are not shown to hold too little, in words."""
        if not racks:
            return ()
        if self._certificate.step > 1:
            return ("racks are not checked on a coarser grid",)
        tops, others = self._tops()
        rest = (0,) * others
        return tuple(
            f"it is not shown that these sticks hold too little: {rack.of_length}"
            for rack in racks
            if not tops.too_little(
                (*rack.worth.of_shape, *rest), rack.worth.of_length, rack.of_length
            )
        )


__all__ = ["checked_plan", "doubts"]
