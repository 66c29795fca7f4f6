"""The table of parts with their factors, and the parts that are not rated."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from eyebar.errors import Unknown, nearest
from eyebar.terms import Kind, Level, Method
from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.not_rated import NotRatedRow, not_rated_rows


@dataclass(frozen=True, slots=True, kw_only=True)
class RatingRow:
    """One part and the least of its factors."""

    part: str = text("Part", "Address of the part.")
    vehicle: str = text("Vehicle", "The vehicle with the least factor.")
    factor: str = figure("Factor", "How many times the vehicle the part carries beside dead load.")
    tons: str = figure("Tons", "The factor times the vehicle's weight.")
    check: str = text("Check", "What is reached first.")
    dead: str = figure(
        "Dead kip", "Force under dead load, without factors; pull is positive. A stress says so."
    )
    live: str = figure(
        "Live kip", "Force under the vehicle, without factors and impact. A stress says so."
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Which ratings a table is made of: None stands for the posting's own: its
    method, its level, the vehicles that set it."""

    method: Method | None = None
    level: Level | None = None
    vehicle: str | None = None

    def takes(self, rating: Document, posting: Document) -> bool:
        """Whether one entry of a part's ratings belongs to the choice."""
        return (
            rating["method"] == (self.method or posting["method"])
            and rating["level"] == (self.level or posting["level"])
            and (
                rating["vehicle"] in posting["vehicles"]
                if self.vehicle is None
                else rating["vehicle"] == self.vehicle
            )
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class RatingTable:
    """The rated parts, weakest first, and those that are not rated."""

    standing: str = text("By", "Method and level of the factors.")
    rows: tuple[RatingRow, ...] = text("Parts", "One row for each rated part, weakest first.")
    not_rated: tuple[NotRatedRow, ...] = text("Not rated", "One row for each reason.")


def governing(part: Document, choice: Choice, posting: Document) -> Document | None:
    """The least of a part's chosen ratings; None where the choice has no factor for it.

    A part that the posting's method has no rule for counts by allowable stress at operating, as it
    does in the posting, unless a method or a level was asked for.
    """
    fallback = Choice(
        method=Method.ALLOWABLE_STRESS, level=Level.OPERATING, vehicle=choice.vehicle
    )
    asked = choice.method is not None or choice.level is not None
    for one in (choice,) if asked else (choice, fallback):
        found: list[Document] = [
            rating
            for rating in part.get("ratings", ())
            if rating["factor"] is not None and one.takes(rating, posting)
        ]
        if found:
            return min(found, key=lambda rating: float(rating["factor"]))
    return None


def rating_table(document: Document, choice: Choice) -> RatingTable:
    """The table of a `rate` document for one choice of method, level and vehicle.

    Raises Unknown for a vehicle that no part was rated for.
    """
    posting = document["posting"]
    rated = [rating for part in document["parts"] for rating in part.get("ratings", ())]
    known = dict.fromkeys(rating["vehicle"] for rating in rated)
    if choice.vehicle is not None and choice.vehicle not in known:
        raise Unknown("vehicle", choice.vehicle, near=nearest(choice.vehicle, known))
    chosen = [
        (part, rating)
        for part in document["parts"]
        if (rating := governing(part, choice, posting)) is not None
    ]
    chosen.sort(key=lambda pair: float(pair[1]["factor"]))
    method, level = choice.method or posting["method"], choice.level or posting["level"]
    return RatingTable(
        standing=words.standing(method, level),
        rows=tuple(
            _row(part, rating, (method, level), alike)
            for part, rating, alike in _gathered(chosen)
        ),
        not_rated=not_rated_rows(document["parts"]),
    )


OF_FLOOR = (Kind.STRINGER, Kind.FLOORBEAM, Kind.HANGER, Kind.DECK, Kind.BEARING,
            Kind.BRACKET)
"""Kinds of which many are alike: they share a row. Their dead and live are in their own unit."""


def _gathered(
    chosen: list[tuple[Document, Document]],
) -> Iterator[tuple[Document, Document, int]]:
    """Parts with their ratings, and how many more of the floor are alike."""
    alike: dict[tuple[object, ...], int] = Counter()
    first: list[tuple[Document, Document, tuple[object, ...]]] = []
    for number, (part, rating) in enumerate(chosen):
        key: tuple[object, ...] = (number,)
        if part["kind"] in OF_FLOOR:
            key = (part["kind"], rating["vehicle"], rating["factor"], rating["check"])
        if key not in alike:
            first.append((part, rating, key))
        alike[key] += 1
    for part, rating, key in first:
        yield part, rating, alike[key] - 1


def _amount(part: Document, rating: Document, key: str) -> str:
    if part["kind"] in OF_FLOOR:
        return rounding.amount(rating[key], rating["unit"])
    return rounding.kip(rating[key])


def _row(
    part: Document, rating: Document, asked: tuple[str, str], alike: int
) -> RatingRow:
    by = (rating["method"], rating["level"])
    check = rating["check"] if by == asked else f"{rating['check']} ({words.standing(*by)})"
    return RatingRow(
        part=f"{part['part']} and {alike} alike" if alike else part["part"],
        vehicle=rating["vehicle"],
        factor=rounding.factor(rating["factor"]),
        tons=rounding.tons(rating["tons"]),
        check=check,
        dead=_amount(part, rating, "dead"),
        live=_amount(part, rating, "live"),
    )
