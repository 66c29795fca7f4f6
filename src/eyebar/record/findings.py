"""What was found and decided, by date: inspections, their readings, decisions."""

from typing import Annotated, Self

from pydantic import BeforeValidator, model_validator

from eyebar.addresses import Address
from eyebar.errors import with_article
from eyebar.record.fields import (
    Code,
    Count,
    Day,
    Distance,
    Entry,
    Force,
    Measure,
    Part,
    Picture,
    Place,
    Text,
    refusal,
    word,
)
from eyebar.record.sections import SectionEntry
from eyebar.record.words import WHAT_CURES, Decided, What

WhatWord = Annotated[What, BeforeValidator(word(What, WHAT_CURES))]
DecidedWord = Annotated[Decided, BeforeValidator(word(Decided))]


class ConditionEntry(Entry):
    """Condition codes of the national inspection, 0 to 9."""

    deck: Code | None = None
    superstructure: Code | None = None
    substructure: Code | None = None


class ReadingEntry(Entry):
    """One thing that was measured on one part."""

    part: Part
    place: Place = ""
    what: WhatWord
    value: Measure
    gauge: Text | None = None
    plus_minus: Measure | None = None
    piece: Count | None = None
    """Which eyebar, rod, channel or plate of the set, counted from the road side."""
    note: Text | None = None
    photographs: tuple[Picture, ...] = ()

    @property
    def address(self) -> Address:
        """The part, with the place of the reading on it."""
        return self.part.at(self.place) if self.place else self.part

    @model_validator(mode="after")
    def _measure_fits(self) -> Self:
        for found in (self.value, self.plus_minus):
            if found and found.dimension is not self.what.dimension:
                raise refusal(found, f"is {with_article(found.dimension)}",
                              f"{with_article(self.what)} is {with_article(self.what.dimension)}")
        if self.place and self.part.place:
            raise refusal(self.place, "gives a second place", "write the place once")
        return self


class InspectionEntry(Entry):
    """What was found on one day."""

    date: Day
    by: Text
    note: Text | None = None
    condition: ConditionEntry | None = None
    """Codes given on that day; they stand until the next."""
    readings: tuple[ReadingEntry, ...] = ()
    photographs: tuple[Picture, ...] = ()


class DecisionEntry(Entry):
    """What was decided, or done, on one day about one part."""

    date: Day
    what: DecidedWord
    part: Part
    by: Text | None = None
    note: Text | None = None
    section: SectionEntry | None = None
    """The part's section after a repair."""
    material: Text | None = None
    pieces: tuple[Count, ...] | None = None
    """Which pieces of the set are loose, cracked or broken; left out: all."""
    gap: Distance | None = None
    """How far a loose bar or piece stretches before it works."""
    pull: Force | None = None
    """The pull under dead load that was measured and accepted."""
    plus_minus: Force | None = None
