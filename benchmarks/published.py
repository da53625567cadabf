"""Read the published bin-packing instances from a folder (see its own README)."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from trimlang.stock.problem import Blank, Part, Problem


@dataclass(frozen=True, slots=True)
class Instance:
    """One stick length and the pieces; ``published`` is the best number of sticks known."""

    name: str
    room: int
    lengths: tuple[int, ...]
    published: int | None = None

    @property
    def problem(self) -> Problem:
        parts = tuple(Part(f"p{i}", length) for i, length in enumerate(self.lengths))
        return Problem(self.name, parts, (Blank("stick", self.room, 1),))


def instance_sets(folder: Path) -> dict[str, list[Instance]]:
    names = ("u250", "u500", "u1000", "t60", "t120", "t249", "t501")
    sets = {
        f"Falkenauer {name}": list(_falkenauer(folder / f"falkenauer-binpack{number}.txt"))
        for number, name in enumerate(names, start=2)
    }
    sets["Hard28"] = list(_hard28(folder / "hard28.txt"))
    sets["Scholl set 3"] = [
        _scholl(path) for path in sorted((folder / "scholl-set3").glob("*.BPP"))
    ]
    # Sizes with their numbers, a folder a set, as the library BPPLIB has them: by T. Gschwind and
    # S. Irnich (GI), by M. Delorme and M. Iori (AI, ANI).
    for name in ("GI", "AI", "ANI"):
        sets[name] = [_counted(path) for path in sorted((folder / name).glob("*.txt"))]
    return {name: instances for name, instances in sets.items() if instances}


def _falkenauer(path: Path) -> Iterator[Instance]:
    words = iter(path.read_text().split())
    for _ in range(int(next(words))):
        name, room = next(words), next(words)
        pieces, published = int(next(words)), int(next(words))
        sizes = [next(words) for _ in range(pieces)]
        # The triplets are written with one decimal.
        scale = 10 if any("." in word for word in (room, *sizes)) else 1
        lengths = tuple(round(float(word) * scale) for word in sizes)
        yield Instance(name, round(float(room) * scale), lengths, published)


def _hard28(path: Path) -> Iterator[Instance]:
    words = iter(re.findall(r"'[^']*'|\d+", path.read_text()))
    for word in words:
        sizes, room = int(next(words)), int(next(words))
        lengths: list[int] = []
        for _ in range(sizes):
            length = int(next(words))
            lengths += [length] * int(next(words))
        yield Instance(word.strip("'").replace(" ", ""), room, tuple(lengths))


def _counted(path: Path) -> Instance:
    _, room, *sizes = map(int, path.read_text().split())
    pairs = zip(sizes[::2], sizes[1::2], strict=True)
    return Instance(path.stem, room, tuple(size for size, count in pairs for _ in range(count)))


def _scholl(path: Path) -> Instance:
    count, room, *lengths = map(int, path.read_text().split())
    return Instance(path.stem, room, tuple(lengths[:count]))
