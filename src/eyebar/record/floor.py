"""Floor and road as sizes and weights."""

import re
from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field, InstanceOf, model_validator

from eyebar.record.fields import (
    Entry,
    Lanes,
    Length,
    SidesField,
    Size,
    Text,
    TrussName,
    Truth,
    UnsureCoordinate,
    UnsureCount,
    UnsureLength,
    perhaps,
    weighing,
    word,
)
from eyebar.record.words import DeckKind, RoadSurface, SurfacingKind
from eyebar.units import Dimension, Quantity

SheetWeight = Annotated[
    InstanceOf[Quantity], BeforeValidator(weighing(Dimension.DENSITY, Dimension.SURFACE_LOAD))
]
"""A weight by volume or by area."""
BeamWeight = Annotated[
    InstanceOf[Quantity] | None,
    BeforeValidator(
        perhaps(weighing(Dimension.LINE_LOAD, Dimension.FORCE, Dimension.DENSITY))
    ),
]
"""A weight along the length, of one piece, or by volume; None where not measured."""
LineWeight = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(weighing(Dimension.LINE_LOAD)))
]
"""A weight along the bridge; None where not measured."""

SurfaceWord = Annotated[RoadSurface, BeforeValidator(word(RoadSurface))]
DeckWord = Annotated[DeckKind, BeforeValidator(word(DeckKind))]
SurfacingWord = Annotated[SurfacingKind, BeforeValidator(word(SurfacingKind))]
CURB = re.compile(r"curb to (.+) truss")
"""The key of a curb's distance, which names the truss."""


def _curbs_gathered(got: object) -> object:
    """`curb to upstream truss: 1 ft` as an entry of `curbs`."""
    if not isinstance(got, dict):
        return got
    curbs = {key: value for key, value in got.items() if CURB.fullmatch(str(key))}
    rest = {key: value for key, value in got.items() if key not in curbs}
    if curbs:
        rest["curbs"] = {CURB.fullmatch(key)[1]: value  # type: ignore[index]
                         for key, value in curbs.items()}
    return rest


class DeckEntry(Entry):
    """The deck that the wheels' floor is made of; it counts as dead load that stays."""

    kind: DeckWord
    thickness: Size
    weight: SheetWeight
    width: Length | None = None
    """Left out: the clear width."""


class SurfacingEntry(Entry):
    """What lies on the deck and may be laid on or taken off."""

    kind: SurfacingWord
    thickness: Size
    weight: SheetWeight
    measured: Truth
    """True where the thickness was measured in the field."""
    width: Length | None = None


class StringersEntry(Entry):
    """The stringers of one panel, all alike."""

    number: UnsureCount
    size: SidesField | None = None
    """Width by depth."""
    weight: BeamWeight
    """By volume (with `size`), or along the length of one."""
    material: Text
    spacing: Length | None = None


class FloorbeamsEntry(Entry):
    """The floorbeams, one at each floor joint between the ends."""

    weight: BeamWeight
    """Of one, or along its length (with `length`)."""
    length: Length | None = None


class LineWeightEntry(Entry):
    """Something that runs along the bridge."""

    weight: LineWeight
    truss: TrussName | None = None
    """The truss that carries it; left out: both alike."""


class RailingEntry(Entry):
    """The railing, along each side."""

    weight: LineWeight


class FloorEntry(Entry):
    """Floor and road, as sizes and weights."""

    clear_width: UnsureLength
    """Between the curbs."""
    curbs: Mapping[TrussName, UnsureCoordinate]
    """Truss -> from its centre line to the face of its curb."""
    deck: DeckEntry
    surfacing: SurfacingEntry | None = None
    stringers: StringersEntry
    floorbeams: FloorbeamsEntry
    railing: RailingEntry | None = None
    utilities: Mapping[str, LineWeightEntry] = Field(default_factory=dict)
    bracing: LineWeightEntry | None = None
    """Laterals, struts and portals, along the whole bridge."""
    others: Mapping[str, LineWeightEntry] = Field(default_factory=dict)
    """Sidewalks and what else stays."""
    surface: SurfaceWord
    lanes: Lanes | None = None
    """The lanes that are marked or fenced; left out: from the clear width."""

    _gathered = model_validator(mode="before")(_curbs_gathered)
