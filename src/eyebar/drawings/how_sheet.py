"""How a truss works, drawn and told in one column: made from a `history-how` and a `forces`
document, and from nothing else.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Laid, Place
from eyebar.drawings.elevation import NARROW_ASIDE, NARROW_HUNG_ASIDE, Frame, elevation
from eyebar.drawings.fonts import Face
from eyebar.drawings.how_sketches import frames, strip_of_sizes, two_webs
from eyebar.drawings.ink import Ink, letterings
from eyebar.drawings.lettering import Lettering, fitted, on_line, run
from eyebar.drawings.measured import hung, truss_size
from eyebar.drawings.paper import UNITS_PER_INCH, Paper, drawing_scale
from eyebar.drawings.printed import Printed
from eyebar.drawings.svg_file import svg_file
from eyebar.errors import Unknown, nearest
from eyebar.terms import CHORD_KINDS
from eyebar.views import how
from eyebar.views.columns import Document
from eyebar.views.how import HowChapter
from eyebar.views.stress_sheet import unrated_view

COLUMN = Paper(width_in=6.0, least_height_in=1.0, margin_in=0.15, deepest_in=2.25)
"""As wide as a telephone shows with letters that can be read; it stands on a page too."""
GAP = 17.0
BETWEEN = 5.0
"""Between chapters, and between the sentences of one."""
LETTER = 14.0

Maker = Callable[[Place], Drawn]


@dataclass(frozen=True, slots=True, kw_only=True)
class HowSheet:
    """The column as it was laid out, its title, and what it says in words."""

    laid: Laid
    title: str
    said: str

    @property
    def svg(self) -> str:
        """The text of its file."""
        return svg_file(self.laid, title=self.title, said=self.said)

    @property
    def letterings(self) -> tuple[Lettering, ...]:
        """All lettering on it."""
        return tuple(letterings(*self.laid.ink))


def how_sheet(
    told: Mapping[str, Any], forces: Mapping[str, Any], *, truss: str | None = None
) -> HowSheet:
    """The column for one truss, the first where none is named. Raises Unknown."""
    of = _chosen(told, truss)
    solved = next(one for one in forces["trusses"] if one["truss"] == of["truss"])
    chapters = how.chapters(of)
    inside = Place(
        left=COLUMN.margin, top=COLUMN.margin, width=COLUMN.width - 2 * COLUMN.margin
    )
    drawn = _column((
        partial(_title, told["bridge"]["name"], how.title([of])),
        partial(_elevation, solved),
        partial(_words, (how.KEY,)),
        *(partial(_chapter, one, of) for one in chapters),
        partial(blocks.text_block, " ".join(told["cautions"]), size=11.0, face=Face.SLANTED),
    ), inside)
    return HowSheet(
        laid=Laid(paper=COLUMN, height=drawn.bottom + COLUMN.margin, ink=drawn.ink, bars=()),
        title=f"{how.title([of])}: {told['bridge']['name']}",
        said=" ".join(sentence for one in chapters for sentence in one.sentences),
    )


def how_figures(
    told: Mapping[str, Any], *, truss: str | None = None
) -> dict[str, tuple[Printed, ...]]:
    """Heading of a chapter -> its sketches for a page that brings the letters."""
    of = _chosen(told, truss)
    place = Place(left=3.0, top=3.0, width=COLUMN.width - 6.0)
    return {
        one.heading: tuple(
            Printed(ink=drawn.ink, width=COLUMN.width, height=drawn.bottom + 3.0,
                    title=one.heading, said=how.SKETCHES[one.heading])
            for drawn in (maker(place) for maker in _sketches(one, of))
        )
        for one in how.chapters(of)
    }


def _chosen(told: Mapping[str, Any], truss: str | None) -> Document:
    by_name: dict[str, Document] = {one["truss"]: one for one in told["trusses"]}
    name = next(iter(by_name)) if truss is None else truss
    if name not in by_name:
        raise Unknown("truss", name, near=nearest(name, by_name))
    return by_name[name]


def _column(makers: Sequence[Maker], place: Place, *, gap: float = GAP) -> Drawn:
    """Blocks one under the other."""
    ink: list[Ink] = []
    level = place.top
    for maker in makers:
        drawn = maker(place.below(level))
        ink += drawn.ink
        level = drawn.bottom + gap
    return Drawn(ink=tuple(ink), bottom=level - gap)


def _title(bridge: str, title: str, place: Place) -> Drawn:
    middle, level = place.left + place.width / 2, place.top + 26.0
    name = fitted(run(bridge.upper(), 19.0, Face.STRONG, spread=2.4), place.width)
    under = fitted(run(title, 14.0, Face.SLANTED, spread=0.3), place.width)
    return Drawn(
        ink=(
            on_line((name,), (middle, level), share=0.5),
            *blocks.swelled_rule(middle, level + 12.0, 220.0),
            on_line((under,), (middle, level + 31.0), share=0.5),
        ),
        bottom=level + 36.0,
    )


def _elevation(solved: Mapping[str, Any], place: Place) -> Drawn:
    aside = NARROW_HUNG_ASIDE if hung(solved) else NARROW_ASIDE
    room = place.width - 2 * aside, COLUMN.deepest_in * UNITS_PER_INCH
    drawn = elevation(unrated_view(dict(solved), ""), solved, Frame(
        middle=place.left + place.width / 2, top=place.top, figures=0.0, aside=aside,
        scale=drawing_scale(truss_size(solved), room),
        inside=(place.left, place.left + place.width),
    ))
    return Drawn(ink=drawn.ink, bottom=drawn.bottom)


def _words(sentences: Sequence[str], place: Place) -> Drawn:
    return _column(
        [partial(blocks.text_block, one, size=LETTER) for one in sentences], place, gap=BETWEEN
    )


def _chapter(one: HowChapter, of: Document, place: Place) -> Drawn:
    head = blocks.heading(one.heading, place)
    rest = _column(
        [*_sketches(one, of), partial(_words, one.sentences)], place.below(head.bottom)
    )
    return Drawn(ink=(*head.ink, *rest.ink), bottom=rest.bottom)


def _sketches(one: HowChapter, of: Document) -> Iterator[Maker]:
    """What is drawn beside the words of a chapter."""
    if one.heading == how.RIGID and of["panel"]:
        yield partial(frames, of["panel"], of["joints"])
    elif one.heading == how.WEBS:
        yield partial(two_webs, of)
    elif one.heading == how.SIZES:
        for kind in dict.fromkeys(grown["kind"] for grown in of["grown"]):
            if kind in CHORD_KINDS:
                yield partial(strip_of_sizes, of, kind)
