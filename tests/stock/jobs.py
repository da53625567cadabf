"""Invented problems for the planner's tests."""

from random import Random

from trimlang.stock.problem import Blank, Part, Problem


def plain(lengths: list[int], stick: int, price: int = 1, short: int = 0) -> Problem:
    parts = tuple(Part(f"p{i}", length) for i, length in enumerate(lengths))
    return Problem("base", parts, (Blank("stick", stick, price),), short=short)


def triplets(sticks: int, seed: int) -> Problem:
    """Parts that fill ``sticks`` sticks exactly, three to each: the optimum is known."""
    random = Random(seed)
    lengths: list[int] = []
    for _ in range(sticks):
        first = random.randint(380, 490)
        second = random.randint(251, (1000 - first) // 2)
        lengths += [first, second, 1000 - first - second]
    random.shuffle(lengths)
    return plain(lengths, 1000)


def small_priced(seed: int) -> Problem:
    """A few parts; two or three priced lengths, a pack, rests, limits, kerf and spare."""
    random = Random(seed)
    parts = tuple(Part(f"p{i}", random.randint(5, 60)) for i in range(random.randint(2, 9)))
    blanks = [Blank("long", 70, random.randint(60, 80))]
    blanks.append(Blank("short", random.randint(35, 50), random.randint(30, 50), limit=4))
    if random.random() < 0.6:
        blanks.append(Blank("bundle", 70, random.randint(150, 230), pack=3))
    if random.random() < 0.6:
        blanks.append(Blank("rack", random.randint(20, 65), random.choice((0, 0, 5)), 1, 2, True))
    return Problem(
        "base",
        parts,
        tuple(blanks),
        kerf=random.choice((0, 1, 2)),
        end_waste=random.choice((0, 0, 1)),
        spare=random.choice((0, 0, 0, 60)),
    )


def house(pieces: int, seed: int) -> Problem:
    """One trim of a house in 1/32 in: four lengths, a pack, rests on the rack, a saw."""
    random = Random(seed)
    foot = 12 * 32
    parts = tuple(
        Part(f"p{i}", random.choice((random.randint(64, 1500), random.randint(1500, 6000))))
        for i in range(pieces)
    )
    blanks = (
        Blank("8 ft", 8 * foot, 1120),
        Blank("10 ft", 10 * foot, 1440),
        Blank("12 ft", 12 * foot, 1740),
        Blank("16 ft", 16 * foot, 2410),
        Blank("ten of 12 ft", 12 * foot, 16200, pack=10),
        Blank("rack a", 61 * 32 + 16, 0, limit=2, on_hand=True),
        Blank("rack b", 40 * 32, 0, limit=3, on_hand=True),
    )
    return Problem("base", parts, blanks, kerf=3, end_waste=8, short=6 * 32)
