"""The table of forces that find no room along their bars."""

from collections.abc import Sequence

from eyebar.drawings.blocks import Drawn, Place, heading
from eyebar.drawings.boxes import Point
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import HAIR, Ink, Line
from eyebar.drawings.lettering import FAINT, INK, RUST, fitted, on_line, run
from eyebar.views.stress_sheet import NO_FORCE, BarFigures

SIZE = 11.5
ROW = 16.5
COLUMNS = (0.0, 86.0, 127.0, 168.0)
"""Where the name starts, and where the three figures end."""
WIDTH = 168.0
APART = 18.0
FEWEST = 6
"""Rows of a column, where there are several."""
HEADINGS = ("bar", "dead", "to pull", "to push")


def force_table(bars: Sequence[BarFigures], title: str, place: Place) -> Drawn:
    """The bars in as many columns as the place has room for, read downwards."""
    head = heading(title, place)
    rows = [row for bar in bars for row in _rows_of(bar)]
    fit = max(1, int((place.width + APART) // (WIDTH + APART)))
    deep = max(-(-len(rows) // fit), min(FEWEST, len(rows)))
    fit = -(-len(rows) // deep)
    step = min((place.width - WIDTH) / max(1, fit - 1), WIDTH + 3 * APART)
    margin = (place.width - WIDTH - (fit - 1) * step) / 2
    ink: list[Ink] = [*head.ink]
    for first in range(0, len(rows), deep):
        left = place.left + margin + first // deep * step
        ink += _headings((left, head.bottom + 4))
        for i, (bar, mark) in enumerate(rows[first:first + deep]):
            ink += _row(bar, mark, (left, head.bottom + 4 + (i + 1) * ROW + 3))
    return Drawn(ink=tuple(ink), bottom=head.bottom + (deep + 1) * ROW + 4)


def _rows_of(bar: BarFigures) -> list[tuple[BarFigures, str]]:
    """A bar's row of figures, and one for its mark where it has one."""
    return [(bar, ""), *([(bar, bar.mark)] if bar.mark else [])]


def _headings(at: Point) -> list[Ink]:
    x, y = at
    ink: list[Ink] = [
        on_line((run(word, SIZE, Face.SLANTED),), (x + column, y), share=0.0 if i == 0 else 1.0,
                colour=FAINT)
        for i, (word, column) in enumerate(zip(HEADINGS, COLUMNS, strict=True))
    ]
    return [*ink, Line(start=(x, y + 5), end=(x + WIDTH, y + 5), weight=HAIR)]


def _row(bar: BarFigures, mark: str, at: Point) -> list[Ink]:
    x, y = at
    colour = RUST if bar.mark == "governs" else INK
    if mark:
        return [on_line((run(f"the bar above {_said(mark)}", SIZE, Face.SLANTED),), (x, y),
                        colour=colour)]
    name = fitted(run(bar.bar, SIZE), COLUMNS[1] - 36)
    figures = [(bar.dead, Face.UPRIGHT), (bar.pull, Face.SLANTED), (bar.push, Face.SLANTED)]
    ink: list[Ink] = [on_line((name,), (x, y), colour=colour)]
    for (figure, face), column in zip(figures, COLUMNS[1:], strict=True):
        shown = "·" if figure == NO_FORCE and face is Face.SLANTED else figure
        ink.append(on_line((run(shown, SIZE, face),), (x + column, y), share=1.0, colour=colour))
    return ink


def _said(mark: str) -> str:
    return f"is {mark}" if mark == "not rated" else mark
