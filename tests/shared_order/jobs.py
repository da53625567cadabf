"""Invented flats that are bought for together."""

from pathlib import Path

from trimlang.compiler import check_job
from trimlang.shared_order.flat import Flat, flats

TRIM = (
    "trim base: 9/16 in thick, 5 1/4 in tall, mdf\n"
    "stock base: 12 ft at 17.40, pack of 4 8 ft at 40, 16 ft at 24.10 at most 3\n"
)


def flat(walls: str, *, trim: str = TRIM, settings: str = "spare 0 %\n") -> str:
    return f'{trim}{settings}room "Study", trim base, open walk\n{walls}\n'


def pool(*texts: str, folder: Path = Path()) -> tuple[Flat, ...]:
    """Return sound jobs as the flats of a pool: flat-1.trim and so on."""
    checked = []
    for number, text in enumerate(texts, start=1):
        path = folder / f"flat-{number}.trim"
        result = check_job(text, path=path)
        assert result.ok, result.diagnostics
        checked.append((str(path), result))
    return flats(checked)
