"""Check a finished plan against the definition of its problem.

Written from ``problem.py`` alone: nothing here comes from the planner, so a
mistake there is not repeated here.
"""

from __future__ import annotations

from collections import Counter

from trimlang.stock.problem import Blank, Part, Plan, Problem, Status, Stick


def faults(plan: Plan) -> tuple[str, ...]:
    """Return everything that is wrong with a plan, in words; empty for a sound plan."""
    problem = plan.problem
    blanks = {blank.key: blank for blank in problem.blanks}
    parts = {part.id: part for part in problem.parts}
    return (
        *_faults_in_parts(plan, parts),
        *_faults_in_sticks(plan, parts, blanks),
        *_faults_in_buying(plan, blanks),
        *_faults_in_minimum(plan, blanks),
        *_faults_in_bundles(plan),
        *_faults_in_batches(plan, parts, blanks),
        *_faults_in_claims(plan, parts, blanks),
        *_faults_in_reserve(plan, parts, blanks),
    )


def _faults_in_parts(plan: Plan, parts: dict[str, Part]) -> list[str]:
    """Check that every part is cut exactly once, and none that was not asked for."""
    # Counted over all sticks, since a part may be missing on one and stand twice on another.
    cut = Counter(name for stick in plan.sticks for name in stick.parts)
    found = [f"part {name} is not cut" for name in parts if name not in cut]
    found += [f"part {name} is cut {times} times" for name, times in cut.items() if times > 1]
    found += [f"part {name} was not asked for" for name in cut if name not in parts]
    return found


def _laid_length(stick: Stick, parts: dict[str, Part], kerf: int) -> int:
    """Return the length from the left point of the first piece to the right point of the last."""
    reach = 0
    before: Part | None = None
    for name in stick.parts:
        piece = parts[name]
        if before is not None:
            reach += kerf
            a, b = before.right_lean, piece.left_lean
            # Two ends that lean the same way (both positive, or both negative) overlap by the
            # smaller lean.
            reach -= max(min(a, b), min(-a, -b), 0)
        reach += piece.length
        before = piece
    return reach


def _faults_in_sticks(plan: Plan, parts: dict[str, Part], blanks: dict[str, Blank]) -> list[str]:
    """Check that sticks are of known blanks, not empty, and long enough for their pieces."""
    found = []
    for place, stick in enumerate(plan.sticks):
        if not stick.parts:
            found.append(f"stick {place} has no pieces")
        if stick.blank not in blanks:
            found.append(f"stick {place} is of an unknown blank {stick.blank}")
            continue
        # Reported above as not asked for; its length is unknown.
        if any(name not in parts for name in stick.parts):
            continue
        between = blanks[stick.blank].length - 2 * plan.problem.end_waste
        over = _laid_length(stick, parts, plan.problem.kerf) - between
        if over > 0:
            found.append(f"stick {place} is overfilled by {over}")
    return found


def _faults_in_buying(plan: Plan, blanks: dict[str, Blank]) -> list[str]:
    """Check that purchases cover the sticks cut and the spare, and stay within the limits."""
    problem = plan.problem
    found = []
    taken: Counter[str] = Counter()
    cost = 0
    for purchase in plan.purchases:
        blank = blanks.get(purchase.blank)
        if blank is None:
            found.append(f"unknown blank {purchase.blank} is bought")
            continue
        if purchase.packs < 0:
            found.append(f"{purchase.packs} of {blank.key} are bought")
        taken[blank.key] += purchase.packs * blank.pack
        cost += purchase.packs * blank.price
    # What is bought and not cut stays whole; only whole sticks count as spare.
    used = Counter(stick.blank for stick in plan.sticks)
    whole = 0
    # Limits hold for all that is taken of a blank, from however many purchases.
    for blank in problem.blanks:
        if blank.limit is not None and taken[blank.key] > blank.limit:
            found.append(f"{taken[blank.key]} of {blank.key} are taken, of {blank.limit}")
        left = taken[blank.key] - used[blank.key]
        if left < 0:
            found.append(f"{-left} more of {blank.key} are cut than are taken")
        elif not blank.on_hand:
            whole += left * blank.length
    if whole < problem.spare:
        found.append(f"whole sticks for spare are {whole} long together, of {problem.spare}")
    if cost != plan.cost:
        found.append(f"the purchases cost {cost}, not {plan.cost}")
    return found


def _faults_in_minimum(plan: Plan, blanks: dict[str, Blank]) -> list[str]:
    """Check that the yard sells so little, where anything is bought of it."""
    sticks = spent = 0
    for purchase in plan.purchases:
        blank = blanks.get(purchase.blank)
        if blank is not None and not blank.on_hand:
            sticks += purchase.packs * blank.pack
            spent += purchase.packs * blank.price
    found = []
    if 0 < sticks < plan.problem.least_sticks:
        found.append(f"{sticks} sticks are bought, of {plan.problem.least_sticks} at least")
    if sticks and spent < plan.problem.least_spent:
        found.append(f"the yard gets {spent}, of {plan.problem.least_spent} at least")
    return found


def _faults_in_bundles(plan: Plan) -> list[str]:
    """Check that of each bundle as many packs of every blank are bought."""
    packs: Counter[str] = Counter()
    for purchase in plan.purchases:
        packs[purchase.blank] += purchase.packs
    bundles: dict[str, set[int]] = {}
    for blank in plan.problem.blanks:
        if blank.bundle:
            bundles.setdefault(blank.bundle, set()).add(packs[blank.key])
    return [
        f"bundle {bundle} is bought in part"
        for bundle, counts in bundles.items()
        if len(counts) > 1
    ]


def _faults_in_batches(plan: Plan, parts: dict[str, Part], blanks: dict[str, Blank]) -> list[str]:
    """Check that all pieces of a group are cut from one batch."""
    batches: dict[str, set[str]] = {}
    for stick in plan.sticks:
        if stick.blank in blanks:
            for name in stick.parts:
                if name in parts and parts[name].group:
                    batches.setdefault(parts[name].group, set()).add(blanks[stick.blank].batch)
    return [
        f"the pieces of {group} are of {len(found)} batches"
        for group, found in batches.items()
        if len(found) > 1
    ]


def _faults_in_claims(plan: Plan, parts: dict[str, Part], blanks: dict[str, Blank]) -> list[str]:
    """Check that no bound is above what was reached, and that the status agrees with them."""
    found = []
    if plan.bound > plan.cost:
        found.append(f"the bound {plan.bound} is above the cost {plan.cost}")
    if (plan.status is Status.PROVEN) != (plan.bound == plan.cost):
        found.append(f"'{plan.status}' with a cost of {plan.cost} and a bound of {plan.bound}")
    if plan.stick_bound > len(plan.sticks):
        found.append(f"{len(plan.sticks)} sticks are cut, fewer than {plan.stick_bound}")
    # With a stick or a piece that is unknown nothing can be measured; that it is unknown was told
    # above.
    known = all(s.blank in blanks and all(p in parts for p in s.parts) for s in plan.sticks)
    if plan.sticks and known and plan.offcuts:
        rests = tuple(_rest(plan.problem, stick, parts, blanks) for stick in plan.sticks)
        if plan.offcuts != rests:
            found.append("the offcuts are not what the sticks leave")
    return found


def _rest(problem: Problem, stick: Stick, parts: dict[str, Part], blanks: dict[str, Blank]) -> int:
    """Return what is left of a stick behind a last kerf."""
    between = blanks[stick.blank].length - 2 * problem.end_waste
    return max(between - _laid_length(stick, parts, problem.kerf) - problem.kerf, 0)


def _faults_in_reserve(plan: Plan, parts: dict[str, Part], blanks: dict[str, Blank]) -> list[str]:
    """Check that something left can hold the longest piece, where any one may be spoiled."""
    problem = plan.problem
    known = all(s.blank in blanks and all(p in parts for p in s.parts) for s in plan.sticks)
    if not problem.survive_loss or not known:
        return []
    rests = [_rest(problem, stick, parts, blanks) for stick in plan.sticks]
    used = Counter(stick.blank for stick in plan.sticks)
    taken: Counter[str] = Counter()
    for purchase in plan.purchases:
        if purchase.blank in blanks:
            taken[purchase.blank] += purchase.packs * blanks[purchase.blank].pack
    # A whole stick that is left holds a spoiled piece as well as a rest does.
    rests += [blanks[key].length - 2 * problem.end_waste for key in taken if taken[key] > used[key]]
    longest = max(problem.lost, *(part.length for part in parts.values()), 0)
    if max(rests, default=0) < longest:
        return [f"a spoiled piece of {longest} could not be cut again"]
    return []
