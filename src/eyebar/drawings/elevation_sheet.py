"""The elevation of one truss: dimensions, a mark and the section on every bar, and the schedule."""

from collections.abc import Mapping, Sequence
from typing import Any

from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.elevation import (
    ASIDE,
    NARROW_ASIDE,
    NARROW_HUNG_ASIDE,
    Elevation,
    Frame,
    Link,
    elevation,
    has_room,
)
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.measured import STRINGS, hung, truss_size
from eyebar.drawings.paper import Paper, drawing_scale
from eyebar.drawings.tables import Column, Row, table
from eyebar.views import drawn
from eyebar.views.drawn import MemberMark
from eyebar.views.stress_sheet import StressSheet

SIZES = (12.0, 11.0, 10.0, 9.0)
"""Of the marks and sections along the bars, the largest first."""
AROUND = 34.0 + 24.0 + STRINGS[1] + 66.0
"""Height that names, stones and strings take beside the truss."""
COLUMNS = (
    Column(heading="Mark", share=0.11), Column(heading="Member", share=0.18),
    Column(heading="Section as built, inches", share=0.41), Column(heading="Bars", share=0.3),
)
HOW = ("Panel points and lengths are to scale; breadth of bars, pins and bearings is not. Broad "
       "and hollow can push, thin and solid only pulls.")


def elevation_sheet(
    document: Mapping[str, Any], papers: Sequence[Paper], *, truss: str | None = None,
    link: Link | None = None,
) -> FramedSheet:
    """The elevation from a `drawn` document.

    With its sections along the bars where a sheet has room for them, else with marks alone. Raises
    Unknown for a truss that is not there, OutOfRange for a sheet too small.
    """
    whole = dict(document)
    shown = drawn.chosen(whole, truss)
    views = [drawn.elevation_view(whole, shown, sections=yes) for yes in (True, False)]
    marks = drawn.marks(shown)

    def draw(room: Room) -> Drawing | None:
        if room.narrow:
            return _narrow(views[0], shown, room, link)
        return next(filter(None, (_wide(view, shown, room, link) for view in views)), None)

    half = (len(marks) + 1) // 2
    parts = [marks] if len(marks) < 5 else [marks[:half], marks[half:]]
    return framed(Content(
        bridge=views[0].title, number=views[0].number, date=views[0].date,
        title=f"Elevation of the {shown['truss']} truss", units=drawn.UNITS,
        source=views[0].source, how=HOW, draw=draw,
        said=f"{drawn.NOT_RATED_HERE} " + " ".join(
            f"{one.mark}: {one.kind}, {one.section} ({', '.join(one.bars)})." for one in marks
        ),
        blocks=tuple(_schedule(part, i) for i, part in enumerate(parts)),
    ), papers)


def _schedule(marks: Sequence[MemberMark], i: int) -> Any:
    def block(place: Place) -> Drawn:
        return table(COLUMNS, [
            Row(cells=(one.mark, one.kind, one.section, ", ".join(one.bars))) for one in marks
        ], place, title="Members by their marks" + (", continued" if i else ""))

    return block


def _wide(
    view: StressSheet, truss: Mapping[str, Any], room: Room, link: Link | None
) -> Drawing | None:
    size = truss_size(truss)
    fit = room.width - 2 * ASIDE, room.height - AROUND
    if min(fit) <= 0:
        return None
    scale = drawing_scale(size, fit)
    for lettering in SIZES:
        frame = Frame(
            middle=room.middle, top=room.top, scale=scale, figures=lettering,
            inside=(room.left, room.right),
        )
        if has_room(view, truss, frame):
            return _drawing(elevation(view, truss, frame, link), frame)
    return None


def _narrow(
    view: StressSheet, truss: Mapping[str, Any], room: Room, link: Link | None
) -> Drawing:
    aside = NARROW_HUNG_ASIDE if hung(truss) else NARROW_ASIDE
    scale = drawing_scale(truss_size(truss), (room.width - 2 * aside, room.height))
    frame = Frame(
        middle=room.middle, top=room.top, scale=scale, figures=0.0, aside=aside,
        inside=(room.left, room.right),
    )
    return _drawing(elevation(view, truss, frame, link), frame)


def _drawing(found: Elevation, frame: Frame) -> Drawing:
    return Drawing(ink=found.ink, bottom=found.bottom, scale=frame.scale)
