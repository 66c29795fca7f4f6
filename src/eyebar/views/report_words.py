"""The sentences of a report, with the numbers put in."""

from collections.abc import Sequence

from eyebar.views import rounding, words
from eyebar.views.columns import Document
from eyebar.views.sheet_words import long_date

TITLE = "Load rating"
ABOUT_WORKING = (
    "Each formula stands in symbols with their meaning where it first comes in the working of a "
    "part, then with its numbers, its result and its source; with the same numbers it is shown "
    "once. Numbers are rounded to four digits here, and were not rounded in the calculation."
)
ABOUT_RATINGS = (
    "A factor says how many times the vehicle the part carries beside the dead load, by the method "
    "and level of the posting; each part stands with the vehicle that gives it the least. Forces "
    "are kip, pull is positive; a stress says so."
)
ABOUT_WEAKEST = (
    "The least factor of each part, what is reached first, and where the vehicle stands: the "
    "station of its front axle, in feet from end 0, and the way it travels (up: towards higher "
    "stations)."
)
ABOUT_PINS = (
    "Of each truss the pin with the least factor. The figure shows what bears on it from the "
    "outside to scale, then forces, shears and moments in the horizontal and the upright plane "
    "under the factored loads at which the check is reached."
)
BOARD = "Who may cross"
ABOUT_BOARD = "Vehicles of every day, by the method and level of the posting"
NO_CONDITIONS = (
    "A no here is without conditions: whether walking pace, the middle of the road or less load "
    "would make it safe was not looked for, and loads all over the road, such as a herd or snow, "
    "were not rated. The command cross does both, and so does a report made with --board "
    "conditions."
)
ABOUT_VALUES = (
    "A value that nobody has confirmed against the standard itself is marked so; whoever signs "
    "takes it on."
)
ABOUT_INVENTORY = (
    "What this rating gives for the federal record. The pairing of old numbers and newer ids, and "
    "the codes, are to be checked against the guide in force; a dash means that this rating does "
    "not tell."
)
NOT_A_PART_RATED = "No part of this bridge is rated. No load can be called safe."
NOTHING_MAY_CROSS = "Nothing may cross: the bridge is to be closed."
UNDECIDED = "Nothing may cross until the owner has decided: to close the bridge, or to post it low."
AXLES_TOO = (
    "{} are {}; whether their axles may cross too is answered one by one by the command cross."
)
NOTHING_OPEN = "Every part that carries traffic is rated."
HEADINGS = {
    "crossing": "Who may cross",
    "open": "What was not measured",
    "changes": "What changed since the earlier result",
    "working": "Working",
}
PAGE, OF = "page", "of"
OF_THE_BRIDGE = "Of the bridge", "As recorded"
OF_THE_CROSSING = "Of the crossing", "As asked and rated"
NO_MUST = "None beside what holds for everybody."
OF_TIMBER = "Timber", "Species and grade"
OF_THE_PAPER = "Of this paper", "Fingerprint or version"
VERIFY = "eyebar report --verify FILE.pdf RECORD"
UNSIGNED = "Not valid until a licensed engineer has checked and signed it."
SIGNATURE = ("Name", "Licence number and state", "Date", "Signature")
MANY = 5
"""As many parts of which the same is said are told together."""
AT_ONCE = 50
"""Parts in one sentence: longer ones would be cut."""
NO_READINGS = "The record has no inspection up to this date."


def folded(sentences: Sequence[str]) -> tuple[str, ...]:
    """Sentences on parts, `upstream/U2-L4: said`: what is said of many parts alike stands once,
    with all of them behind it, where the first of them stood."""
    said: dict[str, list[str]] = {}
    for one in sentences:
        part, _, rest = one.partition(": ")
        if rest:
            said.setdefault(rest, []).append(part)
    found: dict[str, None] = {}
    for one in sentences:
        _, _, rest = one.partition(": ")
        parts = said.get(rest, [])
        if len(parts) < MANY:
            found[one] = None
            continue
        for begin in range(0, len(parts), AT_ONCE):
            some = parts[begin:begin + AT_ONCE]
            found[f"{rest} ({len(some)}): {', '.join(some)}"] = None
    return tuple(found)


def title(rate: Document) -> str:
    """The name of the paper: `Load rating of the ...`."""
    return f"{TITLE} of {with_article(rate['bridge']['name'])}"


def with_article(name: str) -> str:
    """`the Quillmarsh Bridge`; a name that begins with its article keeps it."""
    return name if name.lower().startswith("the ") else f"the {name}"


def as_on(rate: Document) -> str:
    """The state of the bridge on which the rating rests."""
    return f"As the bridge stood on {long_date(rate['date'])}."


def foot(rate: Document) -> str:
    """What stands at the foot of every page."""
    bridge = ", ".join(filter(None, (rate["bridge"]["name"], rate["bridge"]["number"])))
    return (
        f"{bridge} · as on {long_date(rate['date'])} · record {rate['record_hash'][:12]} · "
        f"eyebar {rate['version']}"
    )


def closing(posting: Document) -> str:
    """What a bridge must do that cannot carry three tons; empty else."""
    if posting["closed"]:
        return "CLOSE THIS BRIDGE."
    return ""


def count_of(count: int, one: str, many: str = "") -> str:
    """`1 part`, `3 parts`."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def crossing(posting: Document, everyday: Sequence[Document]) -> tuple[str, ...]:
    """Which vehicles of every day the sign holds off, and which it lets by."""
    if posting["governed_by"] is None:
        return (NOT_A_PART_RATED,)
    if posting["closed"] is not False:
        return (NOTHING_MAY_CROSS if posting["closed"] else UNDECIDED,)
    over = [_weighed(one) for one in everyday if one["above"]]
    within = [_weighed(one) for one in everyday if not one["above"]]
    said = []
    if over:
        said.append(f"Over the sign, and so not without the owner's permit: {', '.join(over)}.")
    if within:
        limited = posting["single_tons"] is not None or posting["combination_tons"] is not None
        where = "Within the weight of the sign" if limited else "Limited by no sign"
        said.append(AXLES_TOO.format(where, ", ".join(within)))
    return tuple(said)


def _weighed(one: Document) -> str:
    return f"{one['vehicle']} ({rounding.tons(one['tons'])} tons)"


def not_rated_in_short(posting: Document) -> str:
    """How many parts that carry traffic are not rated, in a sentence for an owner."""
    count = len(posting["not_rated"])
    if not count and posting["provisional_parts"]:
        return f"{NOTHING_OPEN} {words.provisional(posting)}"
    if not count:
        return NOTHING_OPEN
    parts = "part that carries" if count == 1 else "parts that carry"
    return (
        f"{count} {parts} traffic could not be rated. What is not measured is not assumed sound: "
        "until it is, the posting is provisional."
    )


def by_which(rate: Document, method: str, level: str) -> str:
    """The method and the level of the posting."""
    return f"Rated by {words.standing(method, level)}; {len(rate['parts'])} parts looked at."


def path(rating: Document) -> str:
    """The way of the load to its limit, told in words; empty where no bar changes its state."""
    if not rating["events"]:
        return ""
    told = "; ".join(words.event(one).removeprefix("at ") for one in rating["events"])
    return f"As the load grows on its place: at {told}."


def plain_formula(rating: Document) -> str:
    """What the plain formula would have said, where it says something else."""
    if rating["plain_factor"] is None or rating["factor"] is None:
        return ""
    plain, factor = rounding.factor(rating["plain_factor"]), rounding.factor(rating["factor"])
    if plain == factor:
        return ""
    return f"The plain formula, with no bar changing its state on the way, would say {plain}."


def dead_load(kip_per_ft: float, kip_at_joints: float) -> str:
    """How much an item of dead load is, on one truss."""
    said = []
    if kip_per_ft:
        said.append(f"{kip_per_ft:.4g} kip/ft")
    if kip_at_joints:
        said.append(f"{rounding.kip(kip_at_joints)} kip at joints")
    return " and ".join(said) or "nothing"


def verified_by(command: str) -> str:
    """How the paper is proven to belong to its record."""
    return (
        f"This paper is made by a program from a record and can be made again, byte for byte: "
        f"{command} does so, and says whether this file belongs to the record."
    )
