"""A small picture of a truss as it stands under its own weight: no figures, no rating.

Made from one truss of a `forces` document, and from nothing else.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from eyebar.drawings.blocks import Laid
from eyebar.drawings.elevation import NARROW_ASIDE, NARROW_HUNG_ASIDE, Frame, elevation
from eyebar.drawings.ink import Ink, letterings
from eyebar.drawings.lettering import Lettering
from eyebar.drawings.measured import hung, truss_size
from eyebar.drawings.members import DrawnBar
from eyebar.drawings.paper import UNITS_PER_INCH, Paper, drawing_scale
from eyebar.drawings.svg_file import svg_file
from eyebar.views.stress_sheet import unrated_view

PICTURE = Paper(width_in=5.75, least_height_in=1.0, margin_in=0.0, deepest_in=2.25)
"""Lettering of it can still be read on a telephone, where a page is as wide as the screen."""
EDGE = 6.0
"""Between the edge of the picture and its ink."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture: its SVG, and its ink and bars for whoever wants to check."""

    svg: str
    ink: tuple[Ink, ...]
    bars: tuple[DrawnBar, ...]

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering on it."""
        return tuple(letterings(*self.ink))


def form_picture(truss: Mapping[str, Any], *, title: str, said: str) -> Picture:
    """The picture of one truss of a `forces` document."""
    view = unrated_view(dict(truss), title)
    aside = NARROW_HUNG_ASIDE if hung(truss) else NARROW_ASIDE
    room = PICTURE.width - 2 * (aside + EDGE), PICTURE.deepest_in * UNITS_PER_INCH
    drawn = elevation(view, truss, Frame(
        middle=PICTURE.width / 2, top=0.0, scale=drawing_scale(truss_size(truss), room),
        figures=0.0, aside=aside, inside=(EDGE, PICTURE.width - EDGE),
    ))
    laid = Laid(paper=PICTURE, height=drawn.bottom + EDGE, ink=drawn.ink, bars=drawn.bars)
    return Picture(svg=svg_file(laid, title=title, said=said), ink=drawn.ink, bars=drawn.bars)
