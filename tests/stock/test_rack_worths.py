"""A worth close to a rack leaves few patterns, and always those of a plan that there is."""

from dataclasses import replace
from random import Random

from trimlang.stock.patterns.relaxation import Relaxation
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.stock.search.rack_worths import RackWorths
from trimlang.stock.search.sifting import sifted
from trimlang.stock.sticks.timber import Pattern, Timber, timber_of

ROOM = 1_000
STICKS = 12
MOST = 20_000


def program(timber: Timber) -> Relaxation:
    """Return the linear program with each piece alone on a stick."""
    return Relaxation(timber, [(0, (size,)) for size in range(len(timber.sizes))], lambda: 60.0)


def filled(random: Random) -> tuple[Timber, set[Pattern]]:
    """Return pieces that fill so many sticks without waste, and the patterns that do."""
    cut = []
    for _ in range(STICKS):
        long = random.randint(400, 700)
        short = random.randint(50, ROOM - long - 50)
        cut.append((long, short, ROOM - long - short))
    parts = [Part(f"p{n}", length) for n, length in enumerate(sum(cut, ()))]
    timber = timber_of(Problem("base", tuple(parts), (Blank("a", ROOM, 1),)))
    size_of = {size.length: number for number, size in enumerate(timber.sizes)}
    return timber, {tuple(sorted(size_of[length] for length in stick)) for stick in cut}


def test_a_worth_from_amid_the_best_leaves_fewer_patterns_than_a_corner() -> None:
    left_amid, left_at_corners = 0, 0
    for seed in range(12):
        timber, plan = filled(Random(seed))
        relaxation = program(timber)
        worths = RackWorths(timber, relaxation, lambda: 60.0)
        assert worths.short([STICKS]) is None
        corner, fresh = None, 1
        while fresh:
            corner, fresh = relaxation.priced(relaxation.solve()[2])
        assert corner is not None
        amid = worths.tightest([STICKS])
        assert amid is not None
        for worth in (amid, corner):
            assert worth.slack([STICKS]) >= 0
        found = sifted(timber, amid, [STICKS], MOST)
        others = sifted(timber, corner, [STICKS], MOST)
        assert found is not None
        assert others is not None
        assert plan <= {pattern for _, pattern in found}, seed
        left_amid, left_at_corners = left_amid + len(found), left_at_corners + len(others)
    assert left_amid < left_at_corners / 2, (left_amid, left_at_corners)


def test_asking_for_a_worth_leaves_the_next_answer_as_it_was() -> None:
    timber, _ = filled(Random(0))
    relaxation = program(timber)
    RackWorths(timber, relaxation, lambda: 60.0).short([STICKS])
    value, columns, _ = relaxation.solve()
    relaxation.central_duals()
    again, same, _ = relaxation.solve()
    assert again == value
    assert list(same) == list(columns)


def test_a_stick_that_the_rack_has_none_of_takes_no_digits_from_the_others() -> None:
    for seed in range(6):
        timber, _ = filled(Random(seed))
        longer = Blank("b", 2 * ROOM, 2)
        both = timber_of(replace(timber.problem, blanks=(longer, *timber.problem.blanks)))
        relaxation = Relaxation(both, [(1, (n,)) for n in range(len(both.sizes))], lambda: 60.0)
        worths = RackWorths(both, relaxation, lambda: 60.0)
        assert worths.short([0, STICKS]) is None
        worth = worths.tightest([0, STICKS])
        assert worth is not None
        assert worth.needed > 10**11, seed
