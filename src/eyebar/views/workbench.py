"""Pages of the workbench: the list of bridges, a bridge with one part chosen, and their tables."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.rating import Choice, governing
from eyebar.views.report_bridge import ReadingRow, reading_row

NOT_RATED = "not rated yet"
PLACES = ("overdue", "due within 90 days", "")
SOON_DAYS = 90
MONTHS_A_YEAR = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class BridgeRow:
    """One bridge of the list."""

    handle: str = text("Bridge", "The handle by which the register knows the bridge.")
    name: str = text("Name", "The name that its record gives it, and where it stands.")
    place: str = text("Place", "Where it stands.")
    posting: str = text("Posting", "The posting of the latest rating that was issued.")
    weakest: str = text("Weakest part", "The part that governs it.")
    measured: str = text("Measured", "Day of the last inspection.")
    due: str = text("Inspect by", "When the office's interval is over; what is overdue is said.")
    issued: str = text("Rated", "Date of the latest rating issued, and whether it is signed.")


SORTS = {
    "name": ("name", "handle"), "posting": ("exact_tons", "handle"),
    "measured": ("last_inspection", "handle"), "due": ("last_inspection", "handle"),
    "issued": ("rated", "handle"),
}
"""Sort -> what of a bridge it goes by; the first comes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BridgeList:
    """The bridges that a search finds, in an order."""

    rows: tuple[BridgeRow, ...] = text("Bridges", "One row for each bridge.")
    count: int = figure("Bridges", "How many there are in the register.")
    find: str = text("Find", "What was searched for.")
    sort: str = text("Order", "What they are ordered by.")


def bridge_list(
    document: Document, *, find: str, sort: str, today: date, months: tuple[float, float]
) -> BridgeList:
    """The list of a `register-list` document; `months` between inspections, and where one is poor.
    """
    wanted = find.casefold().split()
    order = SORTS.get(sort, SORTS["name"])
    found = [
        one for one in document["bridges"]
        if all(word in _searched(one) for word in wanted)
    ]
    found.sort(key=lambda one: tuple(_ordered(one, key) for key in order))
    return BridgeList(
        rows=tuple(_row(one, today, months) for one in found),
        count=len(document["bridges"]), find=find, sort=sort if sort in SORTS else "name",
    )


def _searched(one: Document) -> str:
    rating = one["rating"] or {}
    pieces = (one["handle"], one["name"], one["number"], one["place"],
              rating.get("posting", NOT_RATED), rating.get("governed_by") or "")
    return " ".join(pieces).casefold()


def _ordered(one: Document, key: str) -> tuple[bool, str | float]:
    """What a bridge is ordered by; one that has it not comes last, one that is to close first."""
    rating = one["rating"]
    if key == "exact_tons":
        tons = rating["exact_tons"] if rating else None
        return tons is None, tons or 0.0
    if key == "rated":
        return rating is None, rating["date"] if rating else ""
    value = one[key]
    return value is None, (value or "").casefold()


def _row(one: Document, today: date, months: tuple[float, float]) -> BridgeRow:
    rating = one["rating"]
    interval = months[1] if is_poor(one["condition"]) else months[0]
    return BridgeRow(
        handle=one["handle"], name=one["name"], place=one["place"],
        posting=rating["posting"] if rating else NOT_RATED,
        weakest=(rating["governed_by"] or rounding.NOTHING) if rating else rounding.NOTHING,
        measured=one["last_inspection"] or "never",
        due=due_words(one["last_inspection"], today, interval),
        issued=f"{rating['date']}, {'signed' if rating['signed'] else 'draft'}" if rating else "",
    )


POOR, POOR_TRUSS = 3, 4


def is_poor(condition: Document) -> bool:
    """Whether a bridge is inspected more often: any code of 3 or lower, or 4 of the superstructure,
    whose trusses bring it down with any of their bars."""
    codes = [code for code in condition.values() if code is not None]
    truss = condition["superstructure"]
    return any(code <= POOR for code in codes) or (truss is not None and truss <= POOR_TRUSS)


def due_words(last: str | None, today: date, interval_months: float) -> str:
    """The day by which the next inspection is due, and what must be said of it."""
    if last is None:
        return "overdue: never inspected"
    day = months_after(date.fromisoformat(last), round(interval_months))
    if day < today:
        return f"{day.isoformat()}, overdue"
    soon = (day - today).days <= SOON_DAYS
    return f"{day.isoformat()}, within {SOON_DAYS} days" if soon else day.isoformat()


def months_after(day: date, months: int) -> date:
    """The same day so many months later, or the last day of a month that has no such day."""
    year, month = divmod(day.year * MONTHS_A_YEAR + day.month - 1 + months, MONTHS_A_YEAR)
    for number in range(day.day, 27, -1):
        try:
            return date(year, month + 1, number)
        except ValueError:
            continue
    return date(year, month + 1, min(day.day, 28))


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """What stands at the head of every page of a bridge."""

    handle: str = text("Bridge", "Its handle.")
    name: str = text("Name", "Its name.")
    under: str = text("Under it", "Number, form, year, and the date of its state.")
    state: str = text("State", "Revision, and whether a rating of it is signed.")
    line: str = text("Posting", "The posting on one line.")
    closed: str = text("Closed", "Empty, unless the bridge is to be closed.")
    provisional: str = text("Provisional", "How many parts are not rated; mostly empty.")
    cautions: tuple[str, ...] = text("Cautions", "What belongs to every use of the result.")


def bridge_heading(
    rate: Document, describe: Document, *, handle: str, revision: int, signed: str
) -> Heading:
    """The heading of a bridge from its `rate` and `describe` documents."""
    form = describe["form"] or "given joint by joint"
    panels = describe["trusses"][0]["panels"]
    return Heading(
        handle=handle, name=rate["bridge"]["name"],
        under=", ".join(filter(None, (
            rate["bridge"]["number"] and f"No. {rate['bridge']['number']}", f"{form}",
            f"{panels} panels, {rounding.feet(describe['trusses'][0]['span_ft'])} ft",
            str(describe["built"] or ""), f"state of {rate['date']}",
        ))),
        state=f"Revision {revision}, {signed}",
        line=words.posting_line(rate["posting"]),
        closed=words.CLOSE if rate["posting"]["closed"] else "",
        provisional=words.provisional(rate["posting"]),
        cautions=tuple(rate["cautions"]),
    )


def heading_without(
    name: str, why: str, *, handle: str, revision: int, cautions: tuple[str, ...]
) -> Heading:
    """The heading of a bridge that cannot be rated."""
    first, *more = why.splitlines()
    return Heading(
        handle=handle, name=name, under="", state=f"Revision {revision}",
        line="It cannot be rated: no load can be called safe", closed="",
        provisional=first + (f" (and {len(more)} more)" if more else ""), cautions=cautions,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """The ratings of a part under one vehicle."""

    vehicle: str = text("Vehicle", "Under which vehicle.")
    factors: tuple[str, ...] = text("Factors", "One for each method and level that has a rule.")
    tons: str = figure("Tons", "What such a vehicle may weigh by the posting's method.")
    check: str = text("Check", "What is reached first.")
    at: str = text("Where", "Where the vehicle stands then.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PartShown:
    """One part of a bridge, chosen."""

    part: str = text("Part", "Its address.")
    kind: str = text("Kind", "What it is.")
    answer: str = text("Answer", "Its least factor, or why it is not rated.")
    heads: tuple[str, ...] = text("Methods", "Method and level of each column of factors.")
    rows: tuple[PartRow, ...] = text("Ratings", "By vehicle.")
    readings: tuple[ReadingRow, ...] = text("Readings", "What was read of it, by date.")
    dates: tuple[str, ...] = text("Dates", "Day of each reading.")
    forces: tuple[tuple[str, str], ...] = text("Forces", "Dead load, and most by vehicles.")
    load: tuple[str, str, str, str] | None = text("Load", "Truss, vehicle, way, place of the worst")


def part_shown(rate: Document, describe: Document, forces: Document | None, part: str) -> PartShown:
    """One part from the documents of its bridge; it must be among those of the rating."""
    found = next(one for one in rate["parts"] if one["part"] == part)
    ratings = found.get("ratings", [])
    heads = tuple(dict.fromkeys(
        words.standing(one["method"], one["level"]) for one in ratings if one["factor"] is not None
    ))
    posted = rate["posting"]["method"], rate["posting"]["level"]
    vehicles = tuple(dict.fromkeys(one["vehicle"] for one in ratings))
    dated = [
        (inspection["date"], reading) for inspection in describe["inspections"]
        for reading in inspection["readings"] if reading["part"] == part
    ]
    worst = governing(found, Choice(vehicle=None), rate["posting"])
    return PartShown(
        part=part, kind=found["kind"],
        answer=words.answer(worst) if worst else f"Not rated: {found.get('not_rated', '')}",
        heads=heads,
        rows=tuple(_part_row(vehicle, ratings, heads, posted) for vehicle in vehicles),
        readings=tuple(reading_row(reading) for _, reading in dated),
        dates=tuple(day for day, _ in dated),
        forces=_forces(found, forces), load=_load(found, worst),
    )


def _part_row(
    vehicle: str, ratings: Sequence[Document], heads: Sequence[str], posted: tuple[str, str]
) -> PartRow:
    mine = [one for one in ratings if one["vehicle"] == vehicle]
    by_head = {words.standing(one["method"], one["level"]): one for one in mine}
    shown = min(mine, key=lambda one: (
        one["factor"] is None, (one["method"], one["level"]) != posted, one["factor"] or 0.0
    ))
    return PartRow(
        vehicle=vehicle,
        factors=tuple(
            rounding.factor(by_head[head]["factor"]) if head in by_head else rounding.NOTHING
            for head in heads
        ),
        tons=rounding.tons(shown["tons"]), check=shown["check"] or shown.get("reason", ""),
        at=words.place(shown["at"]),
    )


def _forces(part: Document, forces: Document | None) -> tuple[tuple[str, str], ...]:
    """The force under dead load of a bar, and the most that any vehicle changes it either way."""
    if forces is None:
        return ()
    truss, _, bar = part["part"].partition("/")
    found = next((one for one in forces["trusses"] if one["truss"] == truss), None)
    if found is None or bar not in found["dead"]:
        return ()
    rows = [("Dead load", f"{rounding.kip(found['dead'][bar])} kip")]
    live = {name: bars[bar] for name, bars in found["live"].items() if bars}
    for side, chosen in (("max", max), ("min", min)):
        if not live:
            continue
        name = chosen(live, key=lambda one: live[one][side])
        at = live[name][f"{side}_at"]
        if at is not None:
            toward = "pull" if side == "max" else "push"
            rows.append((f"Most towards {toward}", f"{rounding.kip(live[name][side])} kip, {name}, "
                         f"{words.place(at)}"))
    return tuple(rows)


def _load(part: Document, worst: Document | None) -> tuple[str, str, str, str] | None:
    """Where to look at the worst vehicle standing: for bars of a truss alone."""
    if worst is None or worst["at"] is None or "-" not in part["part"]:
        return None
    at = worst["at"]
    return part["truss"], worst["vehicle"], at["direction"], f"{at['front_axle_ft']:.9g}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartGroup:
    """Parts of one kind on one truss or in the floor, with a word to each."""

    name: str = text("Kind", "The kind of part, and where.")
    parts: tuple[tuple[str, str], ...] = text("Parts", "Address, and factor or why there is none.")
    open: bool = text("Open", "Whether the part that was chosen is among them.")


def part_groups(rate: Document, chosen: str) -> tuple[PartGroup, ...]:
    """All parts of a `rate` document by truss and kind: a list beside the drawing."""
    found: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for one in rate["parts"]:
        by = governing(one, Choice(vehicle=None), rate["posting"])
        said = "not rated" if by is None else rounding.factor(by["factor"])
        found.setdefault((one["truss"] or "floor", one["kind"]), []).append((one["part"], said))
    return tuple(
        PartGroup(
            name=f"{words.plural(kind).capitalize()}, {where}", parts=tuple(parts),
            open=any(part == chosen for part, _ in parts),
        )
        for (where, kind), parts in found.items()
    )
