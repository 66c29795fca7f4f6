"""What the proportion sheet says: metal given, needed and left, bar by bar, in square inches."""

from dataclasses import dataclass

from eyebar.views import words
from eyebar.views.columns import Document, figure, text
from eyebar.views.rounding import NOTHING

GROUPS = ("upper chord", "web", "lower chord")
HEADINGS = {
    "upper chord": "Upper chord and end posts", "web": "Web", "lower chord": "Lower chord",
}
KEY = (
    "The outline is the metal given, as built; tinted what is left of it by what it carries now; "
    "hatched what rust has eaten; the heavy stroke what is needed, in rust where it lies beyond "
    "what is left. Bars stand from end 0 over the middle to the other end."
)
RULE = (
    "Needed: the part of the body as built that would just carry the force of factored loads, at "
    "the stress that the bar bears; of a pushed bar at its slenderness as built. By the bars that "
    "work under factored dead load; pins, floor and joints are not looked at here."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ProportionRow:
    """One bar. The numbers in square inches; `why` where it is not compared."""

    bar: str = text("Bar", "Name of the bar.")
    part: str = text("Part", "Its address.")
    group: str = text("Group", "Upper chord, web or lower chord.")
    given: str = figure("Given", "Metal as built, in square inches.")
    needed: str = figure("Needed", "Metal that would just carry the force.")
    left: str = figure("Left", "Metal as built that would carry what the bar carries now.")
    why: str = text("Why", "Why it is not compared; empty where it is.")
    said: str = text("In words", "The same in a sentence.")
    short: bool = False
    """Whether less is left than needed."""
    sizes: tuple[float, float, float] = (0.0, 0.0, 0.0)
    """Given, needed, left as numbers, for the drawing."""


def proportion_rows(document: Document) -> list[ProportionRow]:
    """Every bar of the truss, from end 0."""
    return [_row(one) for one in document["bars"]]


def _row(one: Document) -> ProportionRow:
    if "not_compared" in one:
        return ProportionRow(
            bar=one["bar"], part=one["part"], group=one["group"], given=NOTHING, needed=NOTHING,
            left=NOTHING, why=one["not_compared"], said=f"Not compared: {one['not_compared']}.",
        )
    given, needed = one["provided_in2"], one["needed_in2"]
    left = one["left_in2"]
    known = 0.0 if left is None else left
    return ProportionRow(
        bar=one["bar"], part=one["part"], group=one["group"], given=f"{given:.2f}",
        needed=f"{needed:.2f}", left=NOTHING if left is None else f"{left:.2f}",
        why=one["left_unknown"], short=left is None or needed > known,
        sizes=(given, needed, known),
        said=f"Given {given:.2f}, needed {needed:.2f} under {one['vehicle']} "
             f"({one['check']}), left " + (
                 f"{left:.2f} square inches." if left is not None
                 else f"not known: {one['left_unknown']}."),
    )


def loads(document: Document) -> str:
    """Under which loads, by which method."""
    names = document["vehicles"]
    under = names[0] if len(names) == 1 else f"the worst of {', '.join(names)}, bar by bar"
    by = words.standing(document["method"], document["level"])
    return f"Under {under}, by {by}."
