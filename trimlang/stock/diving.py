"""The steps of a dive, and how they are taken back."""

from __future__ import annotations

from dataclasses import dataclass

from trimlang.stock.timber import Pattern

#: Other patterns tried first at one step before the step before it is undone.
OTHERS = 3


@dataclass(slots=True)
class Step:
    """One step of a dive: what was wanted before it, and the patterns to keep."""

    demand: tuple[int, ...]
    left: tuple[int, ...]
    done: int
    ranked: tuple[tuple[int, Pattern], ...]
    width: int
    first: int = 0

    def chosen(self) -> tuple[tuple[int, Pattern], ...]:
        """The patterns that this step keeps."""
        return self.ranked[self.first : self.first + self.width]

    def narrow(self) -> bool:
        """Keep fewer patterns, then another one; False when there is no other."""
        if self.width > 1:
            self.width //= 2
            return True
        self.first += 1
        return self.first < min(len(self.ranked), OTHERS + 1)


def retreat(steps: list[Step]) -> Step | None:
    """Narrow the last step that can be, undoing those after it."""
    while steps:
        if steps[-1].narrow():
            return steps[-1]
        steps.pop()
    return None
