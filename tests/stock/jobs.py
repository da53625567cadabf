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


def small_of_every_shape(seed: int) -> Problem:
    """A few parts; lengths free, limited, at two prices or in packs; rests; spare."""
    random = Random(seed)
    lean = random.random() < 0.3
    parts = []
    for number in range(random.randint(1, 5)):
        leans = [random.choice((-6, 0, 0, 6)) if lean else 0 for _ in range(2)]
        parts.append(Part(f"p{number}", random.randint(14, 90), *leans))
    lengths = [random.randint(60, 120) for _ in range(random.randint(1, 2))]
    prices = [random.randint(20, 50) for _ in range(2)]
    blanks = [Blank("steady", max(lengths[0], 93), random.choice((0, *prices * 3)))]
    for number in range(random.randint(1, 3)):
        pack = random.choice((1, 1, 1, 2, 3))
        price = random.choice((0, *prices, *prices)) * pack * random.choice((8, 9, 10)) // 10
        blanks.append(
            Blank(
                f"b{number}",
                random.choice((*lengths, blanks[0].length)),
                price,
                pack,
                random.choice((None, 1, 2, 3)),
                random.random() < 0.4 and pack == 1,
            )
        )
    return Problem(
        "base",
        tuple(parts),
        tuple(blanks),
        kerf=random.choice((0, 1, 2)),
        end_waste=random.choice((0, 0, 1)),
        spare=random.choice((0, 0, 0, 60, 130)),
    )
