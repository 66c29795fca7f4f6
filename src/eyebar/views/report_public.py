"""What commissioners and neighbours read: two pages of short sentences with the numbers in them.

Written to be read by a twelve-year-old; a test measures how hard they are.
"""

import math
from dataclasses import dataclass

from eyebar.terms import Kind
from eyebar.views import report_words, rounding
from eyebar.views.blocks import Paragraph, Points, Section
from eyebar.views.columns import Document, text
from eyebar.views.rating import Choice, governing
from eyebar.views.report_words import with_article

TITLE = "What this bridge can carry"
POUNDS_IN_A_TON = 2000

WHAT_IT_IS: dict[str, str] = {
    Kind.END_POST: "a leaning bar at the end of a truss",
    Kind.TOP_CHORD: "a bar along the top of a truss",
    Kind.BOTTOM_CHORD: "a bar along the bottom of a truss",
    Kind.POST: "a bar that stands upright in a truss",
    Kind.HIP_VERTICAL: "an upright bar near the end of a truss, which holds up the floor",
    Kind.DIAGONAL: "a slanting bar in a truss",
    Kind.COUNTER: "a slanting bar in a truss that works only at times",
    Kind.PIN: "a round pin that joins bars",
    Kind.HANGER: "a hanger, which holds up a beam of the floor",
    Kind.FLOORBEAM: "a big beam that runs under the road from side to side",
    Kind.STRINGER: "a beam under the planks that runs along the road",
    Kind.DECK: "the deck, the planks you drive on",
    Kind.BEARING: "the seat on which the end of a truss rests",
    Kind.BRACKET: "an arm that holds up the sidewalk",
    Kind.JOINT_BLOCK: "a block in which bars meet",
    Kind.STRUT: "a bar that keeps the trusses upright",
    Kind.LATERAL: "a bar that keeps the trusses straight",
}
"""A kind of part in plain words."""

HOW = (
    "When a truck drives on, its wheels press on the floor. Beams under the floor bring the load "
    "to the two sides of the bridge. On each side stands a frame of bars. It is called a truss. "
    "Pins join the bars at their ends.",
    "The truss brings the load to the banks. Each bar helps in its own way. Some bars are pushed "
    "from both ends. They must be stiff, or they would bend. Other bars are pulled from both ends, "
    "like a rope. A rope can pull, but it can not push.",
    "In the drawing a pushed bar is broad and hollow, and its arrows meet. A pulled bar is one "
    "thin line, and its arrows part. A bar with a broken line is slack until a truck comes.",
)
WEAKEST = "A bridge is as strong as its weakest part."
NOTHING_KNOWN = (
    "We could not check one part of this bridge. Too much has not been measured. So we can not say "
    "that any load is safe."
)
CHECK = "An engineer with a license must check this work and sign it. Until then it does not count."


@dataclass(frozen=True, slots=True, kw_only=True)
class Public:
    """The two pages; every field is ready to be set."""

    kind: str = text("Title", "What the paper tells.")
    name: str = text("Bridge", "Name of the bridge.")
    under: str = text("Under the name", "Number, place, and the state that was looked at.")
    beside_the_sign: tuple[Section, ...] = text("Who may cross", "The limit in plain words.")
    below: tuple[Section, ...] = text("Why, and next", "Why the limit is so; what is to be done.")
    beside_the_drawing: tuple[Section, ...] = text("How", "How a truss carries a load.")
    cautions: tuple[str, ...] = text("Cautions", "Sentences that belong to every use.")


def public(rate: Document, describe: Document) -> Public:
    """The pages from the `rate` and `describe` documents of a bridge."""
    place = ", ".join(filter(None, (rate["bridge"]["number"], describe["place"])))
    return Public(
        kind=TITLE,
        name=rate["bridge"]["name"],
        under=". ".join(filter(None, (place, report_words.as_on(rate)))),
        beside_the_sign=(
            Section(heading="Who may cross", blocks=(Points(points=who(rate)),)),
        ),
        below=(
            Section(heading="Why the limit is what it is", blocks=tuple(
                Paragraph(text=one) for one in why(rate)
            )),
            Section(heading="What comes next", blocks=(Points(points=later(rate)),)),
        ),
        beside_the_drawing=(
            Section(heading="How this bridge carries a load", blocks=tuple(
                Paragraph(text=one) for one in HOW
            )),
        ),
        cautions=tuple(rate["cautions"][: 2 + bool(rate["posting"]["closed"])]),
    )


def title(rate: Document) -> str:
    """The title of the file."""
    return f"{TITLE}: {with_article(rate['bridge']['name'])}"


def who(rate: Document) -> tuple[str, ...]:
    """Who may cross, in short sentences."""
    posting = rate["posting"]
    if posting["governed_by"] is None:
        return (NOTHING_KNOWN, "Keep off the bridge until it has been checked.")
    if posting["closed"]:
        return ("This bridge must be closed. It is not safe to drive on it.", _least(posting))
    if posting["closed"] is None:
        return (
            "The owner must choose. The bridge must be closed, or it must get a low limit.",
            "Until then, keep off the bridge.", _least(posting),
        )
    said = _limits(posting)
    if any(tons is not None for tons in (posting["emergency"] or {}).values()):
        said.append("Fire trucks have limits of their own. They stand on a sign beside the first.")
    if posting["provisional"]:
        said.append("These words are not final yet. See what comes next.")
    return tuple(said)


def _least(posting: Document) -> str:
    return (
        f"A bridge must hold three tons to stay open. The most we found here is "
        f"{rounding.safe_tons(posting['exact_tons'])} tons."
    )


def _limits(posting: Document) -> list[str]:
    single, combination = posting["single_tons"], posting["combination_tons"]
    if single is None and combination is None:
        return ["We found no need for a weight limit in the parts that we checked."]
    said = []
    if single == combination:
        said.append(f"You may cross if your car or truck weighs {_tons(single)} or less.")
    else:
        if single is not None:
            said.append(f"A car or truck by itself may cross if it weighs {_tons(single)} or less.")
        if combination is not None:
            said.append(f"A truck with a trailer may cross if it weighs {_tons(combination)} or "
                        "less.")
    said.append("This counts all of it: the truck, its load, and the people in it.")
    return said


def _tons(tons: float) -> str:
    """A limit in tons and in pounds."""
    whole = int(rounding.limit(tons))
    return f"{whole} tons ({whole * POUNDS_IN_A_TON:,} pounds)"


def why(rate: Document) -> tuple[str, ...]:
    """Why the limit is what it is, in short sentences."""
    by = rate["posting"]["governed_by"]
    if by is None:
        return (NOTHING_KNOWN,)
    part = next(one for one in rate["parts"] if one["part"] == by["part"])
    rating = governing(part, Choice(vehicle=by["vehicle"]), rate["posting"]) or {}
    name = " ".join(by["part"].split("/"))
    return tuple(filter(None, (
        f"{WEAKEST} Here that part is {WHAT_IT_IS.get(part['kind'], 'a part')}. On the plan its "
        f"name is {name}. {_works(rating)}".strip(),
        _share(rating),
        "Rust, wear and bent bars count as they were measured. So does the weight of the bridge, "
        "which is there day and night. What is left is what a truck may use.",
    )))


def _works(rating: Document) -> str:
    force = rating.get("limit_kip")
    if not force:
        return ""
    return "A heavy truck pulls on it." if force > 0 else "A heavy truck pushes on it."


def _share(rating: Document) -> str:
    """How much of the truck that was checked the part can hold, rounded down."""
    factor = rating.get("factor")
    if factor is None:
        return ""
    head = "We set a heavy truck on the bridge, by numbers, at each place along the road."
    if factor >= 1.0:
        return f"{head} This part can hold all of it."
    of_a_hundred = math.floor(factor * 100)
    return (
        f"{head} At the worst place this part can safely hold only {of_a_hundred} pounds out of "
        "each 100 pounds of that truck."
    )


def later(rate: Document) -> tuple[str, ...]:
    """What is still to be done, in short sentences."""
    posting = rate["posting"]
    count = len(posting["not_rated"])
    parts = "One part has" if count == 1 else f"{count} parts have"
    said = [
        f"{parts} not been checked yet. We do not guess that they are strong. They must be "
        "measured." if count else "",
        CHECK,
        "Then the owner puts up the sign." if posting["sign"] and not posting["closed"] else "",
        "Crews look at the bridge again in the next years. If a part gets worse, the limit goes "
        "down. If it is mended, the limit can go up.",
    ]
    return tuple(filter(None, said))
