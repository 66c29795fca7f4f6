"""Built-up sections as they are written: angles, plates and angles, flanged segments, timber."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Self

from pydantic import BeforeValidator, InstanceOf, model_validator

from eyebar.errors import Unreadable
from eyebar.record.fields import (
    GREATEST_SIZE,
    NOT_MEASURED,
    Count,
    Entry,
    SidesField,
    Size,
    read,
    refusal,
    word,
)
from eyebar.sections.shapes import Placed, Toes
from eyebar.units import Dimension, Quantity, quantity

PlacedWord = Annotated[Placed, BeforeValidator(word(Placed))]
ToesWord = Annotated[Toes, BeforeValidator(word(Toes))]
ANGLE_EXAMPLE = "write it like '3 in x 2 1/2 in x 5/16 in': upright leg, level leg, thickness"


@dataclass(frozen=True, slots=True)
class Legs:
    """A size of an angle, `3 in x 2 1/2 in x 5/16 in`; what is not measured is None."""

    text: str
    upright: Quantity | None
    level: Quantity | None
    thickness: Quantity | None

    def __str__(self) -> str:
        return self.text


def _legs(got: object) -> object:
    """An angle by its upright leg, its level leg and their thickness, or not measured."""
    if isinstance(got, Legs):
        return got
    if got is None or (isinstance(got, str) and got.strip() == NOT_MEASURED):
        return Legs(NOT_MEASURED, None, None, None)

    def legs(text: str) -> Legs:
        sides = [side.strip() for side in re.split(r"[xX×]", text)]
        if len(sides) != 3 or not all(sides):
            raise Unreadable(text, "is not the size of an angle", ANGLE_EXAMPLE)
        upright, level, thickness = (_side(side) for side in sides)
        if thickness and any(leg and leg.exact <= thickness.exact for leg in (upright, level)):
            raise Unreadable(text, "is an angle with a leg no longer than it is thick",
                             ANGLE_EXAMPLE)
        return Legs(text, upright, level, thickness)

    return read(got, legs)


def _side(text: str) -> Quantity | None:
    if text == NOT_MEASURED:
        return None
    found = quantity(text, Dimension.LENGTH, greatest=GREATEST_SIZE)
    if found.exact <= 0:
        raise Unreadable(text, "is not greater than zero", f"write its size, or {NOT_MEASURED!r}")
    return found


LegsField = Annotated[InstanceOf[Legs], BeforeValidator(_legs)]
Gap = Annotated[
    InstanceOf[Quantity] | None,
    BeforeValidator(
        lambda got: None if got is None or got == NOT_MEASURED else got if isinstance(got, Quantity)
        else read(got, lambda text: quantity(text, Dimension.LENGTH, greatest=GREATEST_SIZE))
    ),
]
"""A small distance that may be zero [in]; None where not measured."""

NEEDS: Mapping[Placed, tuple[tuple[int, ...], tuple[str, ...]]] = {
    Placed.SINGLE: ((1,), ()),
    Placed.BACK_TO_BACK: ((2,), ("apart",)),
    Placed.STAR: ((2, 4), ("apart",)),
    Placed.LACED: ((2, 4), ("toes",)),
    Placed.BOX: ((4,), ("backs", "backs across")),
}
"""How angles are placed -> how many there may be, and what must be said of where they stand."""
WHERE = ("apart", "backs", "backs across", "toes")


class AngleSizes(Entry):
    """Like angles, by themselves or as one member."""

    number: Count
    size: LegsField
    """Upright leg, level leg, thickness."""
    placed: PlacedWord
    apart: Gap = None
    """Between their backs: back to back, in a star, and between the pairs of four laced ones."""
    backs: Size = None
    """Between the backs of angles one above the other."""
    backs_across: Size = None
    """Between the backs of angles side by side."""
    toes: ToesWord | None = None
    """Of laced angles: `in` with the backs outside, `out` with the backs facing."""

    @model_validator(mode="after")
    def _as_placed(self) -> Self:
        numbers, needed = NEEDS[self.placed]
        if self.number not in numbers:
            raise refusal(self.number, f"is not how many angles are placed '{self.placed}'",
                          f"write {' or '.join(map(str, numbers))}")
        needed = (*needed, *self._laced()) if self.placed is Placed.LACED else needed
        for key in WHERE:
            said = key.replace(" ", "_") in self.model_fields_set
            if key in needed and not said:
                raise refusal(self.placed, f"needs '{key}'",
                              f"write '{key}:' with its size, or '{key}: {NOT_MEASURED}'")
            if said and key not in needed:
                raise refusal(key, f"has no sense for angles placed '{self.placed}'",
                              "leave it out")
        return self

    def _laced(self) -> tuple[str, ...]:
        """What must be said of laced angles: one distance, and that between pairs."""
        across = "backs_across" in self.model_fields_set
        if across == ("backs" in self.model_fields_set):
            raise refusal(self.placed, "needs one of 'backs' and 'backs across'",
                          "write 'backs' for angles one above the other, 'backs across' for angles"
                          " side by side")
        return ("backs across" if across else "backs", *(("apart",) if self.number == 4 else ()))


class PlateAngleSizes(Entry):
    """Web plates with angles along their edges."""

    webs: Count
    """Two, or one in the middle."""
    web: SidesField
    """Depth and thickness of one."""
    top_angles: LegsField | None = None
    """One on each side of the member; left out: none."""
    bottom_angles: LegsField | None = None
    apart: Size = None
    """Between the inner faces of two webs."""
    toes: ToesWord | None = None
    """On which face of two webs the angles are: `out` or `in`."""

    @model_validator(mode="after")
    def _one_web_or_two(self) -> Self:
        if self.webs > 2:
            raise refusal(self.webs, "is more than two webs", "write 1 or 2")
        for key in ("apart", "toes"):
            said = key in self.model_fields_set
            if self.webs == 2 and not said:
                raise refusal("2 webs", f"need '{key}'", f"write '{key}:'")
            if self.webs == 1 and said:
                raise refusal(key, "has no sense for one web", "leave it out")
        return self


class FlangedSegmentSizes(Entry):
    """A round hollow column of like segments riveted through their flanges."""

    number: Count
    inside_diameter: Size
    thickness: Size
    """Of the curved wall."""
    flange: Size
    """How far the flanges project from the wall."""
    flange_thickness: Size
    """Of one flange."""

    @model_validator(mode="after")
    def _four_six_or_eight(self) -> Self:
        if self.number not in (4, 6, 8):
            raise refusal(self.number, "is no number of segments that were rolled for columns",
                          "write 4, 6 or 8; another column is 'given' by its properties")
        return self


class TimberSizes(Entry):
    """Like sticks of timber side by side."""

    number: Count = 1
    width: Size
    """Across the truss."""
    depth: Size
    """In the plane of the truss."""


class HoleSizes(Entry):
    """Access holes along the middle of a plate."""

    width: Size
    length: Size
    spacing: Size
    """From centre to centre."""


class ClevisSizes(Entry):
    """The fork at a rod's end, of two like jaws."""

    width: Size
    """Across the hole."""
    thickness: Size
    """Of one jaw."""
    hole: Size
    beyond_hole: Size = None
    """Left out for a round jaw."""
