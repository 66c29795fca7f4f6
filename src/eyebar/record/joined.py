"""How members are joined, as it is written: rivets, splices, pin plates, rivet holes."""

from typing import Annotated, Self

from pydantic import BeforeValidator, Field, model_validator

from eyebar.record.fields import (
    Count,
    Distance,
    Entry,
    SidesField,
    Size,
    Truth,
    UnsureDistance,
    refusal,
    word,
)
from eyebar.sections.punching import Punched

PunchedWord = Annotated[Punched, BeforeValidator(word(Punched))]


class RivetSizes(Entry):
    """Rivets that share a force."""

    number: Count
    """In a splice on one side of the joint, on pin plates those of one web."""
    diameter: Size
    sheared: Count = 1
    """On how many sections each is sheared: 1 or 2."""

    @model_validator(mode="after")
    def _once_or_twice(self) -> Self:
        if self.sheared > 2:
            raise refusal(self.sheared, "is more sections than one rivet has here", "write 1 or 2")
        return self


class EndRivetSizes(RivetSizes):
    """Rivets that hold the end of a beam: how they stand, and how far their middle is beside the
    line in which the end is held."""

    lines: Count = 1
    """Lines of them, each upright."""
    pitch: Size = None
    """From one to the next in a line."""
    gauge: Size = None
    """Between neighbouring lines."""
    off_centre: UnsureDistance = None
    """From the middle of the group to the face that holds the end; 0 in where the force passes
    through the middle."""
    thinner: Size = None
    """The thinner of what they hold; left out: the `thinner` of the beam."""

    @model_validator(mode="after")
    def _lines_alike(self) -> Self:
        if self.number % self.lines:
            raise refusal(f"{self.number} rivets", f"do not stand in {self.lines} lines alike",
                          "write the lines that are full, and only their rivets")
        return self


class SpliceEntry(Entry):
    """How a chord is joined where it is cut."""

    butted: Truth
    plates: tuple[SidesField, ...] = ()
    """Left out: none, and the joint cannot pull."""
    rivets: RivetSizes | None = None
    across: Count | None = None
    """Rivets in one row across a plate."""


class PinPlateSizes(Entry):
    """Plates that strengthen each web about the pin."""

    plate: SidesField | None = None
    hole: Size
    beyond_hole: Size
    rivets: RivetSizes | None = None


class HoleLinesEntry(Entry):
    """Lines of holes along each plate of one kind."""

    where: PunchedWord
    lines: Count
    """In each such plate."""
    gauge: Size = None
    """Between neighbouring lines; left out for a single line."""
    stagger: Distance | None = None
    """How far every other line is shifted along; left out: holes side by side."""

    @model_validator(mode="after")
    def _lines_have_a_gauge(self) -> Self:
        if self.lines > 1 and "gauge" not in self.model_fields_set:
            raise refusal(f"{self.lines} lines", "need the gauge between them",
                          "write 'gauge: 3 in', or 'gauge: not measured'")
        return self


class RivetHolesEntry(Entry):
    """The rivet holes of the section that has most of them."""

    rivet: Size
    """Diameter of the rivets."""
    holes: tuple[HoleLinesEntry, ...] = Field(min_length=1)

    @model_validator(mode="after")
    def _each_plate_once(self) -> Self:
        seen: set[Punched] = set()
        for one in self.holes:
            if one.where in seen:
                raise refusal(one.where, "is given twice", "leave one of them out")
            seen.add(one.where)
        return self
