"""The sentences for people, with the numbers put in."""

from eyebar.views import rounding
from eyebar.views.columns import Document

CLOSE = "Close this bridge"
NO_LIMIT = "No weight limit needed"

METHODS = {
    "allowable-stress": "allowable stress",
    "load-factor": "load factor",
    "load-and-resistance": "load and resistance",
}
"""The methods as they are said in a sentence."""


def posting_line(posting: Document) -> str:
    """The posting on one line: `WEIGHT LIMIT 6 TONS`, or `Close this bridge`.

    A sign's legend holds the word PROVISIONAL itself while parts that carry traffic are not rated.
    Where several signs stand together the first is said; `emergency` says the other.
    """
    if posting["closed"]:
        return CLOSE
    if posting["sign"]:
        first, *_ = posting["sign"]["legend"].split("; ")
        return " ".join(first.split())
    return f"{NO_LIMIT} by the parts that are rated" if posting["provisional"] else NO_LIMIT


def exact(posting: Document) -> str:
    """The load on which closing is decided; empty where it is far from that."""
    if posting["closed"] is False or posting["exact_tons"] is None:
        return ""
    tons = rounding.safe_tons(posting["exact_tons"])
    level = "" if posting["closed"] else " at the operating level"
    return f"The least safe load of a single vehicle{level} is {tons} tons."


def standing(method: str, level: str) -> str:
    """By which method and level: `load and resistance, legal`."""
    return f"{METHODS.get(method, method)}, {level}"


def governed(posting: Document) -> str:
    """What governs the posting, in a sentence."""
    by = posting["governed_by"]
    if not by:
        return "No part is rated, so nothing governs."
    return (
        f"Governed by {by['part']}: {by['check']}, under {by['vehicle']} "
        f"({standing(by['method'], by['level'])})."
    )


def emergency(posting: Document) -> str:
    """The limits of emergency vehicles; empty where they need none."""
    limits_of = posting["emergency"]
    if not limits_of or all(tons is None for tons in limits_of.values()):
        return ""
    named = [
        f"{name} {rounding.limit(limits_of[key])} tons"
        for key, name in (
            ("single_axle_tons", "single axle"),
            ("tandem_tons", "tandem"),
            ("gross_tons", "gross"),
        )
        if limits_of[key] is not None
    ]
    return f"Emergency vehicles: {', '.join(named)}."


def provisional(posting: Document) -> str:
    """Why the posting is provisional; empty where it is not."""
    if not posting["provisional"]:
        return ""
    count, proposed = len(posting["not_rated"]), len(posting.get("provisional_parts", ()))
    said = []
    if count:
        parts = "part that carries traffic is" if count == 1 else "parts that carry traffic are"
        said.append(f"{count} {parts} not rated")
    if proposed:
        parts = "part is" if proposed == 1 else "parts are"
        said.append(f"{proposed} {parts} rated by what was proposed and not measured")
    return f"Provisional: {', '.join(said)}."


def unconfirmed(names: list[str]) -> str:
    """How many of the values used nobody has confirmed; empty where all are."""
    if not names:
        return ""
    values = "value" if len(names) == 1 else "values"
    return f"{len(names)} {values} used here nobody has confirmed yet."


def place(at: Document | None) -> str:
    """Where a vehicle stands: `57.3 ft up`, the front axle's station and the way it travels."""
    return f"{rounding.feet(at['front_axle_ft'])} ft {at['direction']}" if at else rounding.NOTHING


def answer(rating: Document) -> str:
    """The factor of a part in a sentence."""
    where = f", the front axle at {place(rating['at'])}" if rating["at"] else ""
    tons = "" if rating["tons"] is None else f" ({rounding.tons(rating['tons'])} tons)"
    if rating["factor"] is None:
        return f"No factor: {rating['reason']}."
    return f"Factor {rounding.factor(rating['factor'])}{tons}: {rating['check']}{where}."


def event(one: Document) -> str:
    """A bar that changes its state as the load grows."""
    return f"at {rounding.factor(one['factor'])} times the vehicle {one['bar']} goes {one['goes']}"


def plural(kind: str) -> str:
    """Several of a kind: `stringers`, `hip verticals`, `pins`."""
    return f"{kind}s"


def limits(posting: Document) -> str:
    """The limits in words: `8 tons`, `10 tons alone and 18 tons in combination`, `no limit`."""
    single, combination = posting["single_tons"], posting["combination_tons"]
    if posting["closed"]:
        return "closed"
    if posting["closed"] is None:
        return "owner decides" if posting["governed_by"] else "not rated"
    if single is None and combination is None:
        return "no limit"
    if single == combination:
        return f"{single} tons"
    if combination is None:
        return f"{single} tons for single vehicles"
    said = [f"{single} tons for single vehicles"] if single is not None else []
    return " and ".join([*said, f"{combination} tons for combinations"])


def limits_short(posting: Document) -> str:
    """The limits for a narrow column: `8`, or `10 / 18` for single and combination."""
    single, combination = posting["single_tons"], posting["combination_tons"]
    if single is None and combination is None:
        return limits(posting)
    if single == combination:
        return str(single)
    return " / ".join("none" if tons is None else str(tons) for tons in (single, combination))


def if_no_limit(what: str, posting: Document) -> str:
    """`If the stringers were no limit, upstream/U3-L3 (column) would hold it at 8 tons.`"""
    by = posting["governed_by"]
    if not by:
        return f"If {what} were no limit, no other part that is rated would hold it."
    held = limits(posting)
    who = f"{by['part']} ({by['check']})"
    if held == "no limit":
        return f"If {what} were no limit, no weight limit would be needed; {who} would be next."
    if held == "closed":
        return f"If {what} were no limit, {who} would still close the bridge."
    if held == "owner decides":
        return f"If {what} were no limit, {who} would still leave the owner to close or to post."
    return f"If {what} were no limit, {who} would hold it at {held}."
