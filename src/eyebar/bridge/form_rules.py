"""What each form of truss allows, and a layout from its sizes once all of that holds."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from eyebar.bridge.forms import Layout, Point, Sizes
from eyebar.bridge.forms_curved import bowstring, lenticular
from eyebar.bridge.forms_pratt import double_intersection_pratt, half_hip_pratt, howe, pratt
from eyebar.bridge.forms_subdivided import baltimore
from eyebar.bridge.forms_triangular import (
    double_intersection_warren,
    king_post,
    queen_post,
    warren,
    warren_with_verticals,
)
from eyebar.bridge.straight import straight_sides
from eyebar.terms import EndPosts, FloorOn, Form

ANY_END = tuple(EndPosts)
LEANING = (EndPosts.INCLINED,)
LEANING_OR_HUNG = (EndPosts.INCLINED, EndPosts.NONE)
LOWER = (FloorOn.LOWER,)
EITHER = tuple(FloorOn)
MOST_PANELS = 200
STRAIGHT = 1.0
"""A chord that misses its joint by an inch still counts as straight there: depths are taped."""
SLOPES_OF_A_CAMELBACK = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class FormRule:
    """How a form is laid out, and what it allows: panels from `least` to `most`, ends, floors."""

    lay: Callable[[Sizes], Layout]
    least: int
    most: int = MOST_PANELS
    even: bool = False
    end_posts: tuple[EndPosts, ...] = ANY_END
    floors: tuple[FloorOn, ...] = EITHER

    @property
    def panels(self) -> str:
        """The numbers of panels that it allows, in words."""
        if self.least == self.most:
            return f"{self.least} for this form"
        return f"{'an even number, ' if self.even else ''}{self.least} or more for this form"


FORMS: Mapping[Form, FormRule] = {
    Form.KING_POST: FormRule(lay=king_post, least=2, most=2, end_posts=LEANING_OR_HUNG),
    Form.QUEEN_POST: FormRule(lay=queen_post, least=3, most=3, end_posts=LEANING_OR_HUNG),
    Form.PRATT: FormRule(lay=pratt, least=3),
    Form.HALF_HIP_PRATT: FormRule(lay=half_hip_pratt, least=3, end_posts=LEANING, floors=LOWER),
    Form.SMALL_PRATT: FormRule(lay=pratt, least=3, most=3),
    Form.DOUBLE_INTERSECTION_PRATT: FormRule(lay=double_intersection_pratt, least=6),
    Form.PARKER: FormRule(lay=pratt, least=4),
    Form.CAMELBACK: FormRule(lay=pratt, least=5, end_posts=LEANING_OR_HUNG),
    Form.WARREN: FormRule(lay=warren, least=2),
    Form.WARREN_WITH_VERTICALS: FormRule(lay=warren_with_verticals, least=3),
    Form.DOUBLE_INTERSECTION_WARREN: FormRule(lay=double_intersection_warren, least=4),
    Form.HOWE: FormRule(lay=howe, least=3),
    Form.BALTIMORE: FormRule(lay=baltimore, least=6, even=True),
    Form.PENNSYLVANIA: FormRule(lay=baltimore, least=8, even=True, end_posts=LEANING_OR_HUNG),
    Form.BOWSTRING: FormRule(lay=bowstring, least=4, end_posts=LEANING, floors=LOWER),
    Form.LENTICULAR: FormRule(lay=lenticular, least=4, end_posts=LEANING),
}


CURES = {
    "panels": "look at the form and the panels",
    "end posts": "write how this truss ends, or lay it out joint by joint",
    "floor": "write the chord that carries the floor, or lay it out joint by joint",
    "hip": "measure from the bearing to the hip, along the road",
    "depths": "look at the depths and at the word for the form",
}
"""What of a shape was refused -> what to do about it."""


def shape_rule(what: str, limit: str) -> tuple[str, str]:
    """(rule, cure) in the words of a fault, of something of a shape that breaks its limit."""
    return f"{'panels must' if what == 'panels' else 'must'} be {limit}", CURES[what]


def broken_rules(form: Form, sizes: Sizes) -> Iterator[tuple[str, object, str]]:
    """(what, got, limit) of every rule of the form that sizes break, before it is laid out."""
    rule = FORMS[form]
    if not rule.least <= sizes.count <= rule.most or (rule.even and sizes.count % 2):
        yield "panels", sizes.count, rule.panels
    if sizes.end_posts not in rule.end_posts:
        yield "end posts", sizes.end_posts, f"{' or '.join(rule.end_posts)} for this form"
    if sizes.floor not in rule.floors:
        yield "floor", sizes.floor, f"{' or '.join(rule.floors)} for this form"
    elif sizes.end_posts is EndPosts.NONE and sizes.floor is not FloorOn.UPPER:
        yield "floor", sizes.floor, "on the upper chord where a truss hangs from its ends"
    if form is Form.HALF_HIP_PRATT and sizes.panels:
        end = min(sizes.panels[0], sizes.panels[-1])
        if not 0.0 < sizes.hip < end:
            yield "hip", f"{sizes.hip / 12:g} ft", f"less than the end panel's {end / 12:g} ft"


def broken_shape(
    form: Form, sizes: Sizes, layout: Layout
) -> Iterator[tuple[str, object, str]]:
    """What only the drawing shows: a floor on a chord that is not level, slopes of another form."""
    hangs = sizes.end_posts is EndPosts.NONE
    curved = _chord(layout, "L" if hangs else "U")
    level = len(curved) < 2 or (
        len(straight_sides(curved, STRAIGHT)) == 1
        and abs(curved[0][1] - curved[-1][1]) <= STRAIGHT
    )
    on_curve = sizes.floor is FloorOn.UPPER and not hangs and form is not Form.LENTICULAR
    if on_curve and not level:
        yield "floor", sizes.floor, (
            "on the lower chord where the upper one is not level; a deck truss has its curve below:"
            " 'end posts: none' with the depths of the lower joints"
        )
    if form in (Form.PARKER, Form.PENNSYLVANIA) and level:
        yield "depths", "the same at every joint", "those of a curved chord for this form"
    if form is Form.CAMELBACK:
        ends = ("U0", f"U{sizes.count}") if hangs else ("L0", f"L{sizes.count}")
        first, last = (layout.joints[joint] for joint in ends)
        found = len(straight_sides([first, *curved, last], STRAIGHT))
        if found != SLOPES_OF_A_CAMELBACK:
            yield "depths", f"on {found} slopes", "on five, the end posts' included, of a Camelback"


def _chord(layout: Layout, letter: str) -> list[Point]:
    return sorted(point for joint, point in layout.joints.items() if joint[0] == letter)
