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


def condition(one: Document) -> str:
    """One condition of a crossing in a sentence without its stop."""
    return {
        "alone": "nothing else is on the bridge",
        "middle": "it keeps to the middle of the roadway, at most "
        f"{_plain(one['within_ft'])} ft to either side",
        "walking pace": "it goes at walking pace and does not brake or change gear on the bridge",
        "axles spread": f"its axles are drawn out to {_plain(one['spacing_ft'])} ft",
        "fewer tons": f"it weighs no more than {_plain(one['tons'])} tons in all, less by the "
        "same part on every axle",
        "less by area": f"no more than {_plain(one['psf'])} lb to the square foot anywhere",
        "permit": "the owner has given a permit, as it is over the posted weight",
    }[one["condition"]]


def condition_short(one: Document) -> str:
    """One condition in a few words, for a board."""
    return {
        "alone": "alone", "middle": "in the middle", "walking pace": "at walking pace",
        "axles spread": f"axles spread to {_plain(one['spacing_ft'])} ft",
        "fewer tons": f"{_plain(one['tons'])} tons in all",
        "less by area": f"{_plain(one['psf'])} lb/ft2", "permit": "with a permit",
    }[one["condition"]]


def _plain(value: float | None) -> str:
    return rounding.NOTHING if value is None else rounding.plain(value)


def crossing(one: Document, posting: Document) -> str:
    """The answer for one vehicle: `yes.`, `yes, if ...`, `no: ...`; a yes that is provisional."""
    if one["answer"] == "no":
        return f"no: {one['reason']}."
    yes = "provisionally yes" if posting["provisional"] else "yes"
    return f"{yes}." if one["answer"] == "yes" else f"{yes}, if the conditions below are kept."


def way(one: Document, number: int) -> str:
    """A set of conditions: `If nothing else is on the bridge: factor 1.06.`"""
    musts = [condition(each) for each in one["conditions"]]
    several = ", and ".join([", ".join(musts[:-1]), musts[-1]]) if musts[1:] else musts[0]
    begin = "Or if" if number > 1 else "If"
    decided = "" if one["decided_by"] is None else f", {one['decided_by']} ({one['check']})"
    return f"{begin} {several}: factor {rounding.factor(one['factor'])}{decided}."


def sign_says(one: Document, posting: Document) -> str:
    """What the sign says of a vehicle, whatever its axles do."""
    if posting["closed"]:
        return "The sign says no: the bridge is closed."
    if one["posted_tons"] is None:
        return "The sign says nothing of it."
    if one["above_posting"]:
        return f"The sign says no: {one['above_posting']}."
    return f"The sign lets it pass: it is within the limit of {one['posted_tons']} tons."


def axles_say(one: Document) -> str:
    """What the rating says of a vehicle, whatever the sign does."""
    if one["factor"] is None:
        return "No part is rated for it."
    verdict = "yes" if one["factor"] >= 1.0 else "no"
    return (
        f"Its loads say {verdict}: factor {rounding.factor(one['factor'])}, decided by "
        f"{one['decided_by']} ({one['check']}; {standing(one['method'], one['level'])})."
    )


def figures_from(one: Document) -> str:
    """Where a vehicle's figures come from, and which are assumed."""
    assumed = f" Assumed: {', '.join(one['assumed'])}." if one["assumed"] else ""
    return f"Its figures: {one['source']}.{assumed}"
