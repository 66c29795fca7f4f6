"""The lines of a truss that is being begun: no sizes yet, so no forces and no breadths."""

from collections.abc import Mapping, Sequence

from eyebar.drawings import joints as names
from eyebar.drawings.boxes import Box, TakenGround, strip
from eyebar.drawings.ink import MIDDLE, Ink, Line, content, number, written
from eyebar.drawings.members import PIN

WIDTH = 640.0
ASIDE = 40.0
DEEPEST = 240.0


def skeleton(
    joints: Mapping[str, tuple[float, float]], bars: Sequence[tuple[str, str]], *, title: str
) -> str:
    """SVG of panel points [in] and the bars between them, to scale, with the names."""
    xs, ys = zip(*joints.values(), strict=True)
    length, depth = max(xs) - min(xs), max(ys) - min(ys)
    k = min((WIDTH - 2 * ASIDE) / max(length, 1.0), DEEPEST / max(depth, 1.0))
    left, base = (WIDTH - length * k) / 2 - min(xs) * k, ASIDE + max(ys) * k
    points = {name: (left + x * k, base - y * k) for name, (x, y) in joints.items()}
    ground = TakenGround()
    ground.take(*(strip(points[one], points[other], 1.0) for one, other in bars))
    ground.take(*(Box(x=x, y=y, along=PIN, across=PIN) for x, y in points.values()))
    placed = names.placed_names(points, bars, ground, pin=PIN, colours={})
    ink: list[Ink] = [
        Line(start=points[one], end=points[other], weight=MIDDLE) for one, other in bars
    ]
    ink += [names.pin_ink(at, PIN) for at in points.values()]
    ink += placed.values()
    body = "\n".join(map(written, ink))
    height = base - min(ys) * k + ASIDE
    return (
        f'<svg viewBox="0 0 {number(WIDTH)} {number(height)}" role="img" '
        f'aria-label="{content(title)}" fill="none">{body}</svg>'
    )
