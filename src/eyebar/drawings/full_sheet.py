"""The stress sheet for a desk: title above, the elevation, and a band of blocks below."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.elevation import (
    ASIDE,
    Elevation,
    Frame,
    Link,
    elevation,
    has_room,
)
from eyebar.drawings.force_table import force_table
from eyebar.drawings.key import key_block
from eyebar.drawings.measured import truss_size
from eyebar.drawings.paper import SHEETS, UNITS_PER_INCH, Paper, Scale, drawing_scale
from eyebar.drawings.title_block import border, signs, title, title_block, verdict
from eyebar.errors import OutOfRange
from eyebar.views import sheet_words
from eyebar.views.stress_sheet import StressSheet

FIGURES = (12.0, 11.0, 10.0, 9.0)
"""Sizes of the figures along the bars, the largest first."""
GAP = 26.0
"""Between the border and what stands inside, and more between blocks."""
WIDEST_BAND = 1900.0
"""Blocks wider than theirs would be tiring to read."""
BAND = (0.205, 0.295, 0.22, 0.28)
"""How key, verdict, sign and title block share the band."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Job:
    """What is drawn, on which paper, at which scale."""

    view: StressSheet
    truss: Mapping[str, Any]
    link: Link | None
    paper: Paper
    frame: Frame

    @property
    def inside(self) -> Place:
        """The place within the border."""
        left = self.paper.margin + GAP
        return Place(left=left, top=0.0, width=self.paper.width - 2 * left)

    def elevation(self, lower: float = 0.0) -> Elevation:
        """The truss drawn, so much lower than its frame says."""
        frame = replace(self.frame, top=self.frame.top + lower)
        return elevation(self.view, self.truss, frame, self.link)


def full_sheet(
    view: StressSheet, truss: Mapping[str, Any], link: Link | None,
    papers: Sequence[Paper] = SHEETS,
) -> Laid:
    """The narrowest sheet on which all figures find room, lettered as large as they do.

    On the widest, what finds no room at the smallest size goes into a table. Raises OutOfRange
    where a standard sheet has no room for all that.
    """
    for paper in papers:
        frames = [_frame(view, truss, paper, size) for size in FIGURES]
        if not has_room(view, truss, frames[-1]):
            continue
        frame = next(one for one in frames if has_room(view, truss, one))
        laid = _shared_out(_Job(view=view, truss=truss, link=link, paper=paper, frame=frame))
        if laid is not None:
            return laid
    last = _shared_out(_Job(view=view, truss=truss, link=link, paper=paper, frame=frames[-1]))
    if last is None:
        raise OutOfRange("size of sheet", paper.name, "large enough that all lettering finds room")
    return last


def _frame(view: StressSheet, truss: Mapping[str, Any], paper: Paper, size: float) -> Frame:
    inner = paper.width - 2 * paper.margin - 2 * ASIDE
    scale = drawing_scale(truss_size(truss), (inner, paper.deepest_in * UNITS_PER_INCH))
    title = 142.0 if view.closed else 100.0
    return Frame(
        middle=paper.width / 2, top=paper.margin + title, scale=scale, figures=size,
        inside=(paper.margin + GAP / 2, paper.width - paper.margin - GAP / 2),
    )


def _shared_out(job: _Job) -> Laid | None:
    """The sheet, what is left of its height shared out above and below the truss; None where it
    has not enough."""
    laid = _composed(job, 0.0)
    spare = job.paper.cut(laid.height) - laid.height
    if spare < -1e-6:
        return None
    return _composed(job, spare) if spare > 0 else laid


def _composed(job: _Job, spare: float) -> Laid:
    """Title above, elevation, table where one is needed, and the band of blocks below."""
    drawn = job.elevation(spare * 0.42)
    table = Drawn(ink=(), bottom=drawn.bottom)
    if drawn.without_room:
        place = job.inside.below(drawn.bottom + 30 + spare * 0.25)
        table = force_table(drawn.without_room, sheet_words.TABLE, place)
    share = 0.33 if drawn.without_room else 0.58
    band = _band(
        job.view, job.inside.below(table.bottom + 36 + spare * share), job.paper, job.frame.scale
    )
    height = band.bottom + GAP + job.paper.margin
    ink = (
        *border(job.paper, height), *title(job.view, job.paper), *drawn.ink, *table.ink,
        *band.ink,
    )
    return Laid(paper=job.paper, height=height, ink=ink, bars=drawn.bars)


def _band(view: StressSheet, place: Place, paper: Paper, scale: Scale) -> Drawn:
    """Key, verdict, sign and title block side by side."""
    free = min(place.width, WIDEST_BAND) - 3 * GAP * 1.4
    left = place.left + (place.width - free - 3 * GAP * 1.4) / 2
    places = []
    for share in BAND:
        places.append(Place(left=left, top=place.top, width=share * free))
        left += share * free + GAP * 1.4
    drawn = [
        key_block(view.bars, sheet_words.FIGURES, places[0]),
        verdict(view, places[1]),
        signs(view, places[2]),
        title_block(view, places[3], paper, scale),
    ]
    return Drawn(ink=blocks.stacked(drawn), bottom=max(one.bottom for one in drawn))
