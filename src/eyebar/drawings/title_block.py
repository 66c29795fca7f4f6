"""What stands around the drawing: title, verdict, sign, title block, border."""

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.dimensions import ruler
from eyebar.drawings.fonts import Face
from eyebar.drawings.ink import FINE, HEAVY, Ink, Plate
from eyebar.drawings.lettering import fitted, on_line, run
from eyebar.drawings.paper import Paper, Scale
from eyebar.drawings.roadside import roadside
from eyebar.views.stress_sheet import StressSheet

CAPTION = 66.0
"""Room for the captions of the title block."""


def title(view: StressSheet, paper: Paper) -> tuple[Ink, ...]:
    """The title over the drawing; before it, in the largest letters, that a bridge is closed."""
    middle, level = paper.width / 2, paper.margin + 56.0
    ink: list[Ink] = []
    if view.closed:
        word = run(view.closed.upper(), 30.0, Face.STRONG, spread=5.0)
        ink.append(on_line((word,), (middle, level), share=0.5))
        level += 42.0
    inner = paper.width - 2 * paper.margin - 80.0
    name = fitted(run(view.title.upper(), 25.0, Face.STRONG, spread=4.2), inner)
    under = run(
        f"Stress sheet of the {view.truss} truss, as on {view.date}", 15.0, Face.SLANTED, spread=0.3
    )
    return (
        *ink,
        on_line((name,), (middle, level), share=0.5),
        *blocks.swelled_rule(middle, level + 16.0, 300.0),
        on_line((fitted(under, inner),), (middle, level + 37.0), share=0.5),
    )


def verdict(view: StressSheet, place: Place) -> Drawn:
    """What the rating says of the bridge, under its heading."""
    head = blocks.heading("What the bridge may carry", place)
    said = blocks.verdict(view, place.below(head.bottom - 4))
    return Drawn(ink=(*head.ink, *said.ink), bottom=said.bottom)


def signs(view: StressSheet, place: Place) -> Drawn:
    """The sign as it will stand, under its heading; the posting in words where there is none."""
    head = blocks.heading("The sign as it will stand", place)
    below = place.below(head.bottom + 4)
    if not view.signs:
        said = blocks.text_block(view.posting, below)
    else:
        said = roadside(view.signs, view.designation, below)
    return Drawn(ink=(*head.ink, *said.ink), bottom=said.bottom)


def rows(view: StressSheet, paper: Paper, scale: Scale) -> tuple[tuple[str, str], ...]:
    """What is drawn: of what, when, under which load, in which units, how large."""
    return (
        ("Bridge", view.title),
        ("Number", view.number or "none"),
        ("Truss", f"{view.truss}, in elevation"),
        ("As on", view.date),
        ("Live load", view.live_load),
        ("Units", "kip of 1,000 lb; feet and inches"),
        ("Scale", f"{scale.said}, where the sheet is {paper.said}"),
    )


def title_block(view: StressSheet, place: Place, paper: Paper, scale: Scale) -> Drawn:
    """The rows, a ruler to the sheet's scale, how it was drawn, and that nobody has signed."""
    inner = Place(left=place.left + 14, top=place.top + 10, width=place.width - 28)
    drawn = blocks.rows_with_captions(rows(view, paper, scale), inner, CAPTION)
    ruled = ruler(scale, (inner.left + CAPTION, drawn.bottom + 6), inner.width - CAPTION - 30)
    rest = blocks.rows_with_captions(
        (
            ("Drawn", "panel points and lengths to scale; breadth of bars, pins and bearings not; "
             f"by {view.source}"),
            ("Signed", "not signed; to be checked and signed by a licensed engineer"),
        ),
        inner.below(drawn.bottom + 26), CAPTION,
    )
    bottom = rest.bottom + 8
    return Drawn(
        ink=(
            Plate(left=place.left, top=place.top, right=place.left + place.width, bottom=bottom,
                  weight=FINE),
            *drawn.ink, *ruled, *rest.ink,
        ),
        bottom=bottom,
    )


def border(paper: Paper, height: float) -> tuple[Ink, ...]:
    """A heavy line with a fine one inside."""
    return tuple(
        Plate(
            left=paper.margin + off, top=paper.margin + off, right=paper.width - paper.margin - off,
            bottom=height - paper.margin - off, weight=weight,
        )
        for off, weight in ((0.0, HEAVY), (5.0, FINE))
    )
