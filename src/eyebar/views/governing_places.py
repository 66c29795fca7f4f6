"""The places that govern: where one vehicle does most to a bar, and where its ratings stand.

The places of forces are rows of a `force-table` document; those of ratings are what the `rate`
document recorded of the ratings. Nothing is rated for a mark.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from eyebar.terms import Kind, Level, Method
from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.rating import Choice, governing
from eyebar.views.standing import NOTHING_KIP, bound_for, forces_at
from eyebar.views.stress_sheet import signed

LETTERS = "ABCDEF"
FORCE, RATING = "force", "rating"
WORST = "Worst part of the bridge"
RatedPart = tuple[Document, Document]
"""A rating that governs a part, and the part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GoverningPlace:
    """One place, and what governs there; a place on another ruler has no letter."""

    letter: str = text("Mark", "The letter on the ruler; empty where the place is on another.")
    shape: str = text("Shape", "Of the mark: round for a force, square for a rating.")
    name: str = text("Place", "What governs, in a few words.")
    said: str = text("In words", "The figure, the place, and what the figure holds.")
    front_ft: float | None = figure("Front axle", "Its station [ft]; none where no place governs.")
    truss: str = text("Truss", "The truss whose ruler has the place.")
    way: str = text("Way", "The way of the vehicle there.")
    force_kip: float | None = figure("Force", "Force of the chosen bar there, where it is marked.")


def governing_places(table: Document, rate: Document, bar: str = "") -> tuple[GoverningPlace, ...]:
    """The places for the vehicle of a `force-table` document: of a bar, and of the whole bridge.

    First the bar's greatest force each way and its rating, then the worst part of the bridge.
    """
    rated = _rated_parts(rate, table["vehicle"]["name"])
    found = [*(_of_bar(table, rate, bar, rated) if bar else ()), *_of_bridge(table, rated)]
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    letters = iter(LETTERS)
    placed = []
    for one in found:
        on_it = (
            one.front_ft is not None
            and (one.truss, one.way) == (table["truss"], table["direction"])
            and fronts[0] <= one.front_ft <= fronts[-1]
        )
        if not on_it or one.front_ft is None:
            placed.append(one)
            continue
        force = forces_at(table, one.front_ft)[table["bars"].index(bar)] if bar else None
        placed.append(replace(one, letter=next(letters), force_kip=force))
    return tuple(placed)


def _of_bar(
    table: Document, rate: Document, bar: str, rated: Sequence[RatedPart]
) -> Iterator[GoverningPlace]:
    number, dead = table["bars"].index(bar), table["dead_kip"][bar]
    rows = [(row["forces_kip"][number], row["front_axle_ft"]) for row in table["rows"]]
    for toward, chosen, way in (("pull", max, 1.0), ("push", min, -1.0)):
        force, at = chosen(rows, key=lambda one: one[0])
        if way * (force - dead) < NOTHING_KIP:
            continue
        yield GoverningPlace(
            letter="", shape=FORCE, name=f"{bar} most towards {toward}", front_ft=at,
            said=f"{signed(force)} kip with dead load, front axle at {rounding.feet(at)} ft",
            truss=table["truss"], way=table["direction"], force_kip=None,
        )
    if not rated:
        return
    part = next(one for one in rate["parts"] if one["part"] == f"{table['truss']}/{bar}")
    rating = next((rating for rating, one in rated if one is part), None)
    name = f"Rating of {bar}"
    if rating is None:
        why = part.get("not_rated") or "no rule under this vehicle"
        yield _nowhere(table, name, f"not rated: {why}")
    else:
        yield _rated(table, name, part, rating)


def _of_bridge(table: Document, rated: Sequence[RatedPart]) -> Iterator[GoverningPlace]:
    """The worst part; where its place is on another ruler, also the worst on this one."""
    if not rated:
        vehicle = table["vehicle"]["name"]
        yield _nowhere(table, WORST, f"no part is rated for {vehicle}, so that no place of "
                       "it is known to govern")
        return
    here = table["truss"], table["direction"]

    def order(one: RatedPart) -> tuple[float, bool, str]:
        rating, part = one
        return round(rating["factor"], 9), not _stands_on(rating, part, here), part["part"]

    rating, part = min(rated, key=order)
    yield _rated(table, f"{WORST}, {part['part']}", part, rating)
    on_this = [one for one in rated if _stands_on(*one, here)]
    if on_this and not _stands_on(rating, part, here):
        rating, part = min(on_this, key=order)
        yield _rated(table, f"Worst part on this ruler, {part['part']}", part, rating)


def _stands_on(rating: Document, part: Document, here: tuple[str, str]) -> bool:
    """Whether a rating's place is on the ruler of a truss and a way; the floor is on every one."""
    truss, way = here
    at = rating["at"]
    return at is not None and at["direction"] == way and part["truss"] in (truss, None)


def _rated_parts(rate: Document, vehicle: str) -> list[RatedPart]:
    """The parts that are rated for a vehicle, by one method and level; none where it was not rated.

    The posting's own; where it rates no such vehicle, as of a design load, its operating and then
    its inventory level.
    """
    method = Method(rate["posting"]["method"])
    for choice in (
        Choice(vehicle=vehicle),
        *(Choice(method=method, level=level, vehicle=vehicle)
          for level in (Level.OPERATING, Level.INVENTORY)),
    ):
        rated = [
            (rating, part) for part in rate["parts"]
            if (rating := governing(part, choice, rate["posting"])) is not None
        ]
        if rated:
            return rated
    return []


def _nowhere(table: Document, name: str, said: str) -> GoverningPlace:
    return GoverningPlace(
        letter="", shape=RATING, name=name, said=said, front_ft=None, truss=table["truss"],
        way=table["direction"], force_kip=None,
    )


def _rated(
    table: Document, name: str, part: Document, rating: Document
) -> GoverningPlace:
    at = rating["at"]
    return GoverningPlace(
        letter="", shape=RATING, name=name, force_kip=None,
        front_ft=None if at is None else at["front_axle_ft"],
        truss=part["truss"] or table["truss"], way=at["direction"] if at else table["direction"],
        said="; ".join(filter(None, (
            f"factor {rounding.factor(rating['factor'])}, {rating['check']}, "
            f"{words.standing(rating['method'], rating['level'])}",
            _where(table, part, rating),
        ))),
    )


def _where(table: Document, part: Document, rating: Document) -> str:
    """Where the vehicle stands for a rating, or why no place of it counts."""
    at = rating["at"]
    if at is None:
        if rating["check"] == "dead load":
            return "dead load alone is too much, so no place of the vehicle governs"
        if rating["check"].startswith("lane load:"):
            return "a lane load governs, which has no place"
        if part["kind"] == Kind.DECK:
            return "a wheel may stand anywhere on it"
        return "no place of the vehicle is recorded with it"
    said = f"front axle at {rounding.feet(at['front_axle_ft'])} ft"
    if at["direction"] != table["direction"]:
        said += f", bound for {bound_for(table, at['direction'])}"
    if at["spacing_ft"] != table["spacing_ft"]:
        apart = ", ".join(f"{one:g}" for one in at["spacing_ft"])
        said += f", its axles {apart} ft apart"
    return said
