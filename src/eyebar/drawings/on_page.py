"""A truss for a page of the workbench: figures along the bars, every part a link, one chosen.

Made from a `rate` and a `forces` document; the page's style sheet brings letters and the accent.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from eyebar.drawings.elevation import ASIDE, Frame, Link, elevation, has_room
from eyebar.drawings.floor_sheet import plan
from eyebar.drawings.framed import Room
from eyebar.drawings.ink import Group, Ink, content, number, written
from eyebar.drawings.measured import truss_size
from eyebar.drawings.member_sheet import HOW, section
from eyebar.drawings.paper import UNITS_PER_INCH, Scale
from eyebar.drawings.small import sign_alone
from eyebar.errors import Unknown
from eyebar.views.member_sheet import member_of, member_view
from eyebar.views.stress_sheet import chosen_truss, sheet_view

WIDTH = 1320.0
EDGE = 8.0
DEEPEST = 330.0
"""The most room that a truss takes in height, so that a desk shows the part under it too."""
SMALL = Room(left=0.0, top=0.0, width=420.0, height=420.0, narrow=False)
BROAD = Room(left=0.0, top=0.0, width=WIDTH, height=420.0, narrow=False)
FIGURES = (13.0, 12.0, 11.0, 10.0, 9.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPage:
    """A drawing laid out and written once, nothing in it chosen; which part is, alone differs."""

    ink: tuple[Ink, ...]
    plain: tuple[str, ...]
    """Each ink as an element."""
    size: tuple[float, float]
    name: str
    words: tuple[str, str]

    def svg(self, chosen: str = "") -> str:
        """The drawing with one part chosen."""
        body = (
            written(_looked(one, chosen)) if isinstance(one, Group) and one.part == chosen
            else plain for one, plain in zip(self.ink, self.plain, strict=True)
        )
        return _element(body, self.size, name=self.name, words=self.words)


def _on_page(
    ink: Sequence[Ink], size: tuple[float, float], *, name: str, words: tuple[str, str]
) -> OnPage:
    return OnPage(
        ink=tuple(ink), plain=tuple(written(_looked(one, "")) for one in ink), size=size, name=name,
        words=words,
    )


def truss_on_page(
    rate: Mapping[str, Any], forces: Mapping[str, Any], *, truss: str, link: Link
) -> OnPage:
    """One truss of the documents. Raises Unknown."""
    rate, forces = dict(rate), dict(forces)
    view = sheet_view(rate, forces, truss=truss)
    shape = chosen_truss(rate, forces, truss)
    length, depth = truss_size(shape)
    per_inch = min((WIDTH - 2 * (ASIDE + EDGE)) / length, DEEPEST / max(depth, 1.0))
    scale = Scale(
        inches_to_the_foot=Fraction(per_inch * 12.0 / UNITS_PER_INCH).limit_denominator(10000),
        said="to fit the page",
    )
    frames = [
        Frame(middle=WIDTH / 2, top=0.0, inside=(EDGE, WIDTH - EDGE), scale=scale, figures=size)
        for size in FIGURES
    ]
    frame = next((one for one in frames if has_room(view, shape, one)), frames[-1])
    # The accent is the chosen part's; what governs the page says in words.
    drawn = elevation(replace(view, governs=""), shape, frame, link)
    return _on_page(
        drawn.ink, (WIDTH, drawn.bottom + EDGE), name="truss",
        words=(f"The {truss} truss", " ".join((view.posting, view.governed))),
    )


def page_svg(
    ink: Sequence[Ink], size: tuple[float, float], *, name: str, words: tuple[str, str],
    more: str = "",
) -> str:
    """An element for a page: no style within it, which the page's policy forbids; `words` are its
    title and what it says, `name` its identity, `more` further attributes."""
    return _element(map(written, ink), size, name=name, words=words, more=more)


def _element(
    body: Iterable[str], size: tuple[float, float], *, name: str, words: tuple[str, str],
    more: str = "",
) -> str:
    (width, height), (title, said) = size, words
    return (
        f'<svg id="{name}" viewBox="0 0 {number(width)} {number(height)}"{more} '
        f'role="graphics-document document" aria-labelledby="{name}-title {name}-said" '
        f'fill="none"><title id="{name}-title">{content(title)}</title>'
        f'<desc id="{name}-said">{content(said)}</desc>\n'
        + "\n".join(body) + "\n</svg>"
    )


def sign_on_page(posting: Mapping[str, Any]) -> str:
    """The signs of a posting as they will stand at the roadside; empty where none is needed."""
    if not posting["sign"]:
        return ""
    printed = sign_alone(posting)
    return page_svg(
        printed.ink, (printed.width, printed.height), name="sign",
        words=(printed.title, printed.said),
        more=f' width="{number(printed.width)}" height="{number(printed.height)}"',
    )


def member_on_page(document: Mapping[str, Any], part: str) -> str:
    """The section of a member of a `drawn` document, its loss hatched; empty where none is known.
    """
    try:
        view, bar = member_view(dict(document), part), member_of(dict(document), part)
    except Unknown:
        return ""
    if not any(piece["outline_in"] for piece in bar["as_built"]["pieces"]):
        return ""
    drawing = section(bar, view, SMALL)
    return "" if drawing is None else page_svg(
        drawing.ink, (SMALL.width, drawing.bottom + EDGE), name="section",
        words=(f"Section of {part}", f"{view.area} {HOW}"),
    )


def floor_on_page(document: Mapping[str, Any], *, link: Link) -> OnPage | None:
    """The floor of a `drawn` document in plan, every part a link; None where it is not recorded."""
    if document["road"] is None or not document["floor"] or not document["floor"]["stringers"]:
        return None
    drawing = plan(document, BROAD)
    return None if drawing is None else _on_page(
        [_linked(one, link) for one in drawing.ink], (BROAD.width, drawing.bottom + EDGE),
        name="floor", words=("The floor in plan", "Stringers and floorbeams as seen from above."),
    )


def _linked(one: Ink, link: Link) -> Ink:
    """A part with the address that it leads to, also of parts within parts."""
    if not isinstance(one, Group):
        return one
    children = tuple(_linked(child, link) for child in one.children)
    return replace(one, children=children, href=link(one.part) if one.part else "")


def _looked(one: Ink, chosen: str) -> Ink:
    """A part with the name by which the style sheet knows it."""
    if isinstance(one, Group) and one.part:
        return replace(one, look="part chosen" if one.part == chosen else "part")
    return one
