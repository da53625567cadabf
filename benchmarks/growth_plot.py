"""Draw how time grows with the number of pieces, as SVG and nothing else."""

from collections.abc import Sequence
from math import ceil, floor, log10

WIDTH, HEIGHT = 640, 400
LEFT, RIGHT, TOP, BOTTOM = 70, 20, 30, 50


def svg(points: Sequence[tuple[int, float]]) -> str:
    """Both axes logarithmic; points are (pieces, seconds)."""
    low_x, high_x = log10(min(p for p, _ in points)), log10(max(p for p, _ in points))
    low_y = floor(log10(min(s for _, s in points)))
    high_y = max(ceil(log10(max(s for _, s in points))), low_y + 1)

    def x(pieces: float) -> float:
        return LEFT + (log10(pieces) - low_x) / (high_x - low_x) * (WIDTH - LEFT - RIGHT)

    def y(seconds: float) -> float:
        return (
            HEIGHT - BOTTOM - (log10(seconds) - low_y) / (high_y - low_y) * (HEIGHT - TOP - BOTTOM)
        )

    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}"'
        ' font-family="sans-serif" font-size="12">',
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="white"/>',
        f'<text x="{LEFT}" y="18">Seconds to a plan, by pieces (60 sizes, one core)</text>',
    ]
    for power in range(low_y, high_y + 1):
        at = y(10.0**power)
        lines.append(
            f'<path d="M{LEFT} {at:.1f}H{WIDTH - RIGHT}" stroke="#ccc"/>'
            f'<text x="{LEFT - 8}" y="{at + 4:.1f}" text-anchor="end">{10.0**power:g}</text>'
        )
    for pieces, _ in points:
        at = x(pieces)
        lines.append(
            f'<path d="M{at:.1f} {HEIGHT - BOTTOM}v5" stroke="black"/>'
            f'<text x="{at:.1f}" y="{HEIGHT - BOTTOM + 20}" text-anchor="middle">{pieces}</text>'
        )
    path = " ".join(f"{x(pieces):.1f},{y(seconds):.1f}" for pieces, seconds in points)
    lines.append(f'<polyline points="{path}" fill="none" stroke="black" stroke-width="1.5"/>')
    lines += [
        f'<circle cx="{x(pieces):.1f}" cy="{y(seconds):.1f}" r="3"/>' for pieces, seconds in points
    ]
    lines.append(
        f'<text x="{(LEFT + WIDTH - RIGHT) / 2:.0f}" y="{HEIGHT - 10}"'
        ' text-anchor="middle">pieces</text></svg>'
    )
    return "\n".join(lines) + "\n"
