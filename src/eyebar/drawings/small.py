"""Small drawings for a page of words: a truss without figures, and the sign by itself."""

from collections.abc import Mapping
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Place
from eyebar.drawings.elevation import NARROW_ASIDE, NARROW_HUNG_ASIDE, Frame, elevation
from eyebar.drawings.measured import hung, truss_size
from eyebar.drawings.paper import drawing_scale
from eyebar.drawings.printed import Printed
from eyebar.drawings.roadside import roadside
from eyebar.views import words
from eyebar.views.stress_sheet import StressSheet

WIDTH = 640.0
"""Of a small elevation: what stands between the margins of a page."""
DEEPEST = 150.0
SIGN_WIDTH = 330.0
EDGE = 3.0


def small_elevation(
    view: StressSheet, truss: Mapping[str, Any], *, said: str | None = None
) -> Printed:
    """A truss with its panel points and lengths, bars drawn as they work, no figures along them.

    `said` tells what it shows; left out: what governs.
    """
    aside = (NARROW_HUNG_ASIDE if hung(truss) else NARROW_ASIDE) + EDGE
    scale = drawing_scale(truss_size(truss), (WIDTH - 2 * aside, DEEPEST))
    drawn = elevation(view, truss, Frame(
        middle=WIDTH / 2, top=EDGE, scale=scale, figures=0.0, aside=aside,
        inside=(EDGE, WIDTH - EDGE),
    ))
    return Printed(
        ink=drawn.ink, width=WIDTH, height=drawn.bottom + EDGE,
        title=f"The {view.truss} truss in elevation", said=view.governed if said is None else said,
    )


def sign_alone(posting: Mapping[str, Any]) -> Printed:
    """The sign of a `rate` document's posting as it will stand; else the posting in words."""
    sign = posting["sign"] or {"legend": "", "designation": ""}
    signs = [one for one in sign["legend"].split("; ") if one]
    line = words.posting_line(dict(posting))
    place = Place(left=EDGE, top=EDGE, width=SIGN_WIDTH - 2 * EDGE)
    drawn = (
        roadside(signs, sign["designation"], place) if signs
        else blocks.text_block(line, place, size=22.0)
    )
    return Printed(
        ink=drawn.ink, width=SIGN_WIDTH, height=drawn.bottom + EDGE,
        title="The sign as it will stand",
        said="; ".join((*signs, sign["designation"])) if signs else line,
    )
