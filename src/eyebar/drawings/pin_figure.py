"""Pins as figures for a page of words: packing and diagrams of those that govern.

For a report, from a bridge that has been rated once:

    of = gathered(record)
    for one in pin_figures(of.rate, of.explain):
        one.printed.svg    # forces, shears and moments to be set between the margins
        one.view.rows      # the same in figures, bearing by bearing
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from eyebar.drawings.blocks import Place
from eyebar.drawings.pin_diagrams import pin_diagrams
from eyebar.drawings.printed import Printed
from eyebar.drawings.small import EDGE, WIDTH
from eyebar.views.pin_sheet import PinSheet, governing_pins, pin_sheet

DEEPEST = 190.0
"""The pin's diameter on the page, so that a figure takes no more than three quarters of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinFigure:
    """A pin's drawing without title or table, and the view that says these in words."""

    part: str
    printed: Printed
    view: PinSheet


def pin_figures(
    rate: Mapping[str, Any], explain: Callable[[str], Mapping[str, Any]]
) -> tuple[PinFigure, ...]:
    """The pin with the least factor of each truss of a `rate` document; `explain` makes a part's
    document. None for a truss none of whose pins is rated."""
    return tuple(pin_figure(explain(part)) for part in governing_pins(dict(rate)))


def pin_figure(document: Mapping[str, Any]) -> PinFigure:
    """The figure of a pin from its `explain` document. Raises Unknown where nothing acts on it."""
    view = pin_sheet(dict(document))
    place = Place(left=EDGE, top=EDGE, width=WIDTH - 2 * EDGE)
    made = pin_diagrams(document["pin"], view, place, deepest=DEEPEST)
    return PinFigure(
        part=document["part"], view=view, printed=Printed(
            ink=made.drawn.ink, width=WIDTH, height=made.drawn.bottom + EDGE, title=view.part,
            said=f"{view.load}. {view.answer} What bears on the pin is drawn {made.scale}.",
        ),
    )
