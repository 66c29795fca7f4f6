"""The sections of a report on the ratings: part by part, the weakest, and the whole bridge."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from eyebar.terms import BAR_KINDS, Kind
from eyebar.views import report_words, rounding, words
from eyebar.views.blocks import Block, Paragraph, Points, Section, table
from eyebar.views.columns import Document, figure, text
from eyebar.views.not_rated import NotRatedRow, not_rated_rows
from eyebar.views.rating import Choice, RatingRow, governing, rating_table

WEAKEST = 12
"""How many parts stand among the weakest."""

FLOOR = (Kind.STRINGER, Kind.FLOORBEAM, Kind.HANGER, Kind.DECK, Kind.BEARING,
         Kind.BRACKET)
BRACING = (Kind.STRUT, Kind.LATERAL)

GROUPS: tuple[tuple[str, Collection[str]], ...] = (
    ("Bars of the trusses", BAR_KINDS), ("Pins", (Kind.PIN,)), ("Floor and bearings", FLOOR),
    ("Joint blocks", (Kind.JOINT_BLOCK,)), ("Bracing", BRACING),
)
"""The groups in which parts are told of, in order."""

OTHERS = "Other parts"

SHARES = (4, 2, 0, 0, 5, 0, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastRow:
    """The least factor of the whole bridge for one vehicle, by one method at one level."""

    vehicle: str = text("Vehicle", "The vehicle.")
    factor: str = figure("Factor", "The least of all parts.")
    tons: str = figure("Tons", "The factor times the vehicle's weight.")
    part: str = text("Part", "The part that has it.")
    check: str = text("Check", "What is reached first.")


@dataclass(frozen=True, slots=True, kw_only=True)
class WeakRow:
    """One of the weakest parts."""

    part: str = text("Part", "Its address and kind.")
    factor: str = figure("Factor", "The least of the posting's vehicles.")
    check: str = text("Reached first", "The check, and the vehicle.")
    at: str = text("Vehicle at", "Station of the front axle [ft] and the way it travels.")
    capacity: str = figure("Capacity", "In its unit.")
    path: str = text("On the way", "Bars that change their state as the load grows.")


def group_of(kind: str) -> str:
    """The group that a kind of part is told of in."""
    return next((heading for heading, kinds in GROUPS if kind in kinds), OTHERS)


def weakest_parts(rate: Document) -> list[tuple[Document, Document]]:
    """The parts with their governing ratings, weakest first; alike parts of the floor once."""
    posting = rate["posting"]
    found = [
        (part, rating) for part in rate["parts"]
        if (rating := governing(part, Choice(), posting)) is not None
    ]
    found.sort(key=lambda pair: float(pair[1]["factor"]))
    seen: set[tuple[object, ...]] = set()
    kept = []
    for part, rating in found:
        key = (part["kind"], rating["vehicle"], rating["factor"], rating["check"])
        if part["kind"] not in FLOOR or key not in seen:
            kept.append((part, rating))
        seen.add(key)
    return kept


def weakest(rate: Document) -> Section:
    """The weakest parts in detail."""
    rows = [_weak(part, rating) for part, rating in weakest_parts(rate)[:WEAKEST]]
    blocks: list[Block] = [Paragraph(text=report_words.ABOUT_WEAKEST)]
    if rows:
        blocks.append(table(WeakRow, rows, caption="The weakest parts", shares=(4, 0, 4, 2, 0, 4)))
    return Section(heading="The weakest parts", blocks=tuple(blocks))


def _weak(part: Document, rating: Document) -> WeakRow:
    return WeakRow(
        part=f"{part['part']} ({part['kind']})",
        factor=rounding.factor(rating["factor"]),
        check=f"{rating['check']}, under {rating['vehicle']}",
        at=words.place(rating["at"]),
        capacity=rounding.capacity(rating["capacity"], rating["unit"]),
        path="; ".join(words.event(one) for one in rating["events"]) or "no bar changes",
    )


def by_part(rate: Document) -> Section:
    """All parts, group by group, each with its least factor, and those that are not rated."""
    blocks: list[Block] = [Paragraph(text=report_words.ABOUT_RATINGS)]
    for heading, kinds in GROUPS:
        blocks += _group(rate, heading, kinds)
    others = {kind for _, kinds in GROUPS for kind in kinds}
    rest = {part["kind"] for part in rate["parts"]} - others
    blocks += _group(rate, OTHERS, rest)
    return Section(heading="Ratings by part", blocks=tuple(blocks))


def _group(rate: Document, heading: str, kinds: Collection[str]) -> Iterator[Block]:
    parts = [part for part in rate["parts"] if part["kind"] in kinds]
    made = rating_table({**rate, "parts": parts}, Choice())
    if made.rows:
        yield table(
            RatingRow, made.rows, caption=f"{heading}: {made.standing}", shares=SHARES
        )
    open_parts = not_rated_rows(parts)
    if open_parts:
        yield table(
            NotRatedRow, open_parts, caption=f"{heading}: not rated", shares=(4, 0, 5)
        )
    proposed = [part for part in parts if part.get("provisional")]
    if proposed:
        yield Points(points=tuple(dict.fromkeys(
            f"{part['part']}: {part['provisional']}" for part in proposed
        )))


def whole(rate: Document) -> Section:
    """The least factor of the bridge for every vehicle, method and level."""
    least: dict[tuple[str, str, str], tuple[float, Document, Document]] = {}
    for part in rate["parts"]:
        for rating in part.get("ratings", ()):
            if rating["factor"] is None:
                continue
            key = (rating["method"], rating["level"], rating["vehicle"])
            if key not in least or rating["factor"] < least[key][0]:
                least[key] = (rating["factor"], part, rating)
    tables: dict[str, list[LeastRow]] = {}
    for (method, level, vehicle), (factor, part, rating) in least.items():
        tables.setdefault(words.standing(method, level), []).append(LeastRow(
            vehicle=vehicle, factor=rounding.factor(factor), tons=rounding.tons(rating["tons"]),
            part=part["part"], check=rating["check"],
        ))
    blocks: list[Block] = [
        table(LeastRow, rows, caption=f"Least factors by {standing}", shares=(2, 0, 0, 4, 6))
        for standing, rows in tables.items()
    ]
    return Section(
        heading="The bridge under every vehicle",
        blocks=tuple(blocks or [Paragraph(text=report_words.NOT_A_PART_RATED, tone="accent")]),
    )
