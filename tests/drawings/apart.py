"""Whether outlines on a sheet are apart: by corners, without the code that placed the lettering."""

from collections.abc import Sequence
from itertools import pairwise

from eyebar.drawings import Picture, Sheet
from eyebar.drawings.boxes import Box
from eyebar.drawings.ink import lines

Corners = tuple[tuple[float, float], ...]
Named = tuple[str, Corners]


def apart(one: Corners, other: Corners) -> bool:
    """Whether a line along a side of either outline has all of the other beyond it.

    Outlines with straight sides and no hollows are apart exactly then (the separating axis).
    """
    return _beyond_a_side(one, other) or _beyond_a_side(other, one)


def _beyond_a_side(one: Corners, other: Corners) -> bool:
    for (x1, y1), (x2, y2) in pairwise((*one, one[0])):
        inside = [(x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) for x, y in one]
        beyond = [(x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) for x, y in other]
        if max(inside) < min(beyond) or min(inside) > max(beyond):
            return True
    return False


def met(ones: Sequence[Named], others: Sequence[Named]) -> list[str]:
    """Names of all pairs that are not apart; a sweep from left to right leaves out the far ones."""
    events = sorted(
        [(min(x for x, _ in corners), 0, i) for i, (_, corners) in enumerate(ones)]
        + [(min(x for x, _ in corners), 1, i) for i, (_, corners) in enumerate(others)]
    )
    found, open_ones, open_others = [], set[int](), set[int]()
    for left, kind, i in events:
        here, mine, theirs = (
            (ones[i], open_ones, open_others) if kind == 0 else (others[i], open_others, open_ones)
        )
        against = others if kind == 0 else ones
        passed = {j for j in theirs if max(x for x, _ in against[j][1]) < left}
        theirs -= passed
        found += [
            f"{here[0]} | {against[j][0]}" for j in theirs if not apart(here[1], against[j][1])
        ]
        mine.add(i)
    return found


def lettering(sheet: Sheet | Picture) -> list[Named]:
    """All lettering of a sheet."""
    return [
        ("".join(run.text for run in one.runs), one.box.corners) for one in sheet.letterings
    ]


def drawn(sheet: Sheet | Picture) -> list[Named]:
    """All bars, and every line, edge and circle of a sheet."""
    bars = [(bar.figures.bar, bar.box.corners) for bar in sheet.bars]
    return [*bars, *((_place(box), box.corners) for box in lines(*sheet.ink))]


def faults(sheet: Sheet | Picture) -> list[str]:
    """Letterings that touch each other, or lie across a bar or any other line."""
    named = lettering(sheet)
    pairs = met(named, named)
    for name, _ in named:
        pairs.remove(f"{name} | {name}")  # each meets itself once in the sweep
    return [*pairs, *met(named, drawn(sheet))]


def _place(box: Box) -> str:
    return f"line at {box.x:.0f}, {box.y:.0f}"
