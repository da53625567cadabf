"""Invented house jobs and housing blocks for the planner's benchmark."""

from random import Random

from trimlang.stock.problem import Blank, Part, Problem

FOOT = 12 * 32  # in 1/32 in


def house(pieces: int, seed: int) -> Problem:
    """One trim of a house: four priced lengths, a pack of ten, six rests, kerf, spare."""
    random = Random(seed)
    parts = []
    for number in range(pieces):
        draw = random.random()
        if draw < 0.05:
            length = 18  # a return
        elif draw < 0.2:
            length = 2 * random.randint(32, 16 * 48)
        elif draw < 0.7:
            length = 2 * random.randint(16 * 24, 16 * 100)
        else:
            length = 2 * random.randint(16 * 90, 16 * 190)
        parts.append(Part(f"p{number}", length))
    blanks = (
        Blank("8 ft", 8 * FOOT, 1120 + random.randint(-40, 40)),
        Blank("10 ft", 10 * FOOT, 1440 + random.randint(-50, 50)),
        Blank("12 ft", 12 * FOOT, 1740 + random.randint(-60, 60)),
        Blank("16 ft", 16 * FOOT, 2410 + random.randint(-80, 80)),
        Blank("ten of 12 ft", 12 * FOOT, 16000 + random.randint(-500, 500), pack=10),
        Blank("rest 61 1/2", 61 * 32 + 16, 0, limit=2, on_hand=True),
        Blank("rest 40", 40 * 32, 0, limit=3, on_hand=True),
        Blank("rest 77 1/8", 77 * 32 + 4, 0, limit=1, on_hand=True),
    )
    spare = random.choice((0, 16 * FOOT))
    return Problem("base", tuple(parts), blanks, kerf=3, end_waste=8, spare=spare, short=6 * 32)


def leaning(problem: Problem, seed: int) -> Problem:
    """The same job with mitred ends, three in-corners to one out-corner."""
    random = Random(seed)

    def lean(part: Part) -> Part:
        if part.length < 100:
            return part
        left = random.choice((18, 18, 18, -18, 0, 0))
        right = random.choice((-18, -18, -18, 18, 0, 0))
        return Part(part.id, part.length, left, right)

    return Problem(
        problem.trim,
        tuple(map(lean, problem.parts)),
        problem.blanks,
        problem.kerf,
        problem.end_waste,
        problem.spare,
        problem.short,
    )


def block(pieces: int, sizes: int, seed: int) -> Problem:
    """One trim of many alike houses: few sizes, many pieces."""
    random = Random(seed)
    lengths = random.sample(range(300, 6000), sizes)
    parts = tuple(Part(f"p{i}", random.choice(lengths)) for i in range(pieces))
    return Problem("base", parts, house(0, seed).blanks, kerf=3, end_waste=8)
