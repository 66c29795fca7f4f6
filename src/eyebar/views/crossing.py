"""Who may cross: one vehicle in sentences, the board for the office wall, and a slip."""

import textwrap
from dataclasses import dataclass

from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text

PAGE = 100
"""Characters of a line of a slip."""

ANSWERS = {"yes": "yes", "conditions": "yes, if", "no": "no"}


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """One vehicle on the board."""

    vehicle: str = text("Vehicle", "Its name; * where figures of it are assumed.")
    tons: str = figure("Tons", "Gross weight; of a load by area there is none.")
    answer: str = text("Answer", "Yes, yes on conditions, or no.")
    sign: str = text("Sign", "What the sign alone says: within its limit, or over it.")
    factor: str = figure("Factor", "The least factor of any part, without conditions.")
    part: str = text("Decided by", "The part with the least factor.")
    conditions: str = text("If, or why not", "The lightest conditions, or the reason.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """One vehicle in sentences."""

    line: str = text("Answer", "The answer on one line.")
    sign: str = text("Sign", "What the sign says.")
    axles: str = text("Axles", "What the axles say: the part that decides and the factor.")
    ways: tuple[str, ...] = text("Ways", "Sets of conditions, each enough by itself.")
    provisional: str = text("Provisional", "Why the answer is provisional; empty where it is not.")
    figures: str = text("Figures", "Where the vehicle's figures come from, and which are assumed.")


def board(document: Document) -> tuple[BoardRow, ...]:
    """The board of a `cross` document."""
    return tuple(
        BoardRow(
            vehicle=one["vehicle"] + ("*" if one["assumed"] else ""),
            tons=rounding.tons(one["tons"]), answer=ANSWERS[one["answer"]], sign=_sign(one),
            factor=rounding.factor(one["factor"]), part=one["decided_by"] or rounding.NOTHING,
            conditions=_told(one),
        )
        for one in document["vehicles"]
    )


def _sign(one: Document) -> str:
    if one["posted_tons"] is None:
        return rounding.NOTHING
    return f"{'over' if one['above_posting'] else 'within'} {one['posted_tons']}"


def _told(one: Document) -> str:
    if one["answer"] == "no":
        return str(one["reason"])
    return "; ".join(words.condition_short(each) for each in one["conditions"])


def said(document: Document, one: Document) -> Said:
    """The sentences on one vehicle of a `cross` document."""
    weight = "" if one["tons"] is None else f", {rounding.tons(one['tons'])} tons"
    return Said(
        line=f"{one['vehicle']}{weight}: {words.crossing(one, document['posting'])}",
        sign=words.sign_says(one, document["posting"]), axles=words.axles_say(one),
        ways=tuple(
            words.way(each, number if len(one["ways"]) > 1 else 0)
            for number, each in enumerate(one["ways"], start=1)
        ),
        provisional=words.provisional(document["posting"]), figures=words.figures_from(one),
    )


def slip_title(document: Document) -> str:
    """What the paper is."""
    return "Slip for one crossing" + (", provisional" if document["provisional"] else "")


def conditions_of(document: Document) -> tuple[str, ...]:
    """The conditions of a slip, in sentences."""
    way = document["way"]
    return tuple(words.condition(each) for each in way["conditions"]) if way else ()


def slip_rows(document: Document) -> tuple[tuple[str, str], ...]:
    """What a slip says of bridge, day and vehicle: captions, and what is said to each."""
    bridge, vehicle, crossing = document["bridge"], document["vehicle"], document["crossing"]
    way = document["way"]
    named = ", ".join(filter(None, (bridge["name"], bridge["number"])))
    factor = way["factor"] if way else crossing["factor"]
    part = way["decided_by"] if way else crossing["decided_by"]
    return (
        ("Bridge", named),
        ("Day", document["day"]),
        ("Vehicle", vehicle["name"]),
        ("Axles", _axles(vehicle)),
        ("Sign", document["sign"] or "none needed"),
        ("State", f"as on {document['date']}, record {document['record_hash'][:12]}"),
        ("Decided", f"{part or rounding.NOTHING}, factor {rounding.factor(factor)} "
                    f"({words.standing(crossing['method'], crossing['level'])})"),
    )


def slip_lines(document: Document) -> tuple[str, ...]:
    """A slip as lines of text, to be printed and signed."""
    conditions = conditions_of(document)
    lines = (
        slip_title(document).upper(),
        "",
        *(f"{caption:10}{said}" for caption, said in slip_rows(document)),
        "",
        "It may cross once on the day" + (" if all of these are kept:" if conditions else "."),
        *(f"  [ ] {one}" for one in conditions),
        "",
        *(line for one in document["signed"] for line in _signed(one)),
        *(f"- {one}" for one in document["cautions"]),
    )
    return tuple(short for line in lines for short in _wrapped(line))


def _wrapped(line: str) -> list[str]:
    """A line within the width of a page, what runs over set in under its beginning."""
    indent = " " * (10 if line[:1].isupper() else len(line) - len(line.lstrip(" -[]")))
    return textwrap.wrap(line, PAGE, subsequent_indent=indent) or [""]


def _axles(vehicle: Document) -> str:
    if vehicle["area_psf"] is not None:
        return f"none; {rounding.plain(vehicle['area_psf'])} lb to the square foot"
    spacings = [
        " to ".join(rounding.plain(end) for end in (one if isinstance(one, list) else [one]))
        for one in vehicle["spacings_ft"]
    ]
    pieces = [f"{rounding.plain(vehicle['axles_kip'][0])} kip"]
    for spacing, axle in zip(spacings, vehicle["axles_kip"][1:], strict=True):
        pieces += [f"{spacing} ft", f"{rounding.plain(axle)} kip"]
    gauge, width = (rounding.plain(vehicle[key]) for key in ("gauge_ft", "width_ft"))
    return f"{', '.join(pieces)}; gauge {gauge} ft, width {width} ft"


def _signed(one: Document) -> tuple[str, str]:
    name, on = one["name"] or "." * 40, one["on"] or "." * 16
    return f"{one['role'].capitalize():30}{name}  on {on}", ""
