"""The kinds of entry in a record: how the text of one field becomes a frozen value.

Every scalar of a record arrives here as the text that was written, so that `07-19` stays a number
plate and `3.50 in` keeps its nought. What is wrong is raised with rule, got and cure.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import PurePosixPath
from typing import Annotated, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, InstanceOf
from pydantic_core import PydanticCustomError

from eyebar import addresses
from eyebar.addresses import Address
from eyebar.errors import Unreadable, did_you_mean
from eyebar.terms import Kind, Metal
from eyebar.units import Dimension, Quantity, day, measure, pair, quantity

NOT_MEASURED = "not measured"
"""What a record writes for a size that nobody has measured; it is read as None."""
GREATEST_SIZE = "12 ft"
"""The greatest side of a section."""
MOST_PANELS = 200
FIRST_YEAR = 1780
"""No iron bridge is older."""
READ = (Dimension.LENGTH, Dimension.FORCE, Dimension.AREA)
"""What a reading may be a measure of."""

Found = TypeVar("Found")


class Entry(BaseModel):
    """A block of a record: strict, frozen, unknown keys refused, keys with spaces."""

    model_config = ConfigDict(
        strict=True, frozen=True, extra="forbid", defer_build=True,
        alias_generator=lambda name: name.replace("_", " "),
    )


@dataclass(frozen=True, slots=True)
class Sides:
    """A size of two sides, `14 in x 1/4 in`; a side that is not measured is None."""

    text: str
    width: Quantity | None
    thickness: Quantity | None

    def __str__(self) -> str:
        return self.text


def refusal(got: object, rule: str, cure: str = "") -> PydanticCustomError:
    """A fault of one field, its parts kept apart."""
    return PydanticCustomError(
        "fault", "{got} {rule}; {cure}", {"got": _shown(got), "rule": rule, "cure": cure}
    )


def _shown(got: object) -> str:
    """What was found, quoted and not too long to print."""
    if isinstance(got, dict):
        return "a block of keys"
    if isinstance(got, tuple | list):
        return "a list"
    text = "nothing" if got is None else f"'{got}'"
    return text if len(text) <= 80 else text[:76] + "...'"


def read(got: object, reader: Callable[[str], Found]) -> Found:
    """What a reader of text makes of a field; anything but text is refused."""
    if not isinstance(got, str):
        raise refusal(got, "is not a text", "write one value here")
    try:
        return reader(got.strip())
    except Unreadable as unreadable:
        raise refusal(unreadable.got, unreadable.rule, unreadable.cure) from None


def _above_zero(found: Quantity) -> Quantity:
    if found.exact <= 0:
        raise Unreadable(found.text, "is not greater than zero",
                         f"write its size, or {NOT_MEASURED!r}")
    return found


def _unmeasured(got: object) -> bool:
    return got is None or (isinstance(got, str) and got.strip() == NOT_MEASURED)


def _of(
    dimension: Dimension, *, signed: bool = False, zero: bool = False, greatest: str = ""
) -> Callable[[object], object]:
    """The reader of a field of one dimension that must be known."""
    def known(text: str) -> Quantity:
        found = quantity(text, dimension, signed=signed, greatest=greatest)
        return found if signed or zero else _above_zero(found)

    return lambda got: got if isinstance(got, Quantity) else read(got, known)


def perhaps(known: Callable[[object], object]) -> Callable[[object], object]:
    """The same reader for what may not be measured: None then."""
    return lambda got: None if _unmeasured(got) else known(got)


def weighing(*dimensions: Dimension) -> Callable[[object], object]:
    """The reader of a weight that may be given in more than one way."""
    return lambda got: got if isinstance(got, Quantity) else read(
        got, lambda text: _above_zero(measure(text, *dimensions))
    )


def _sides(got: object) -> object:
    if isinstance(got, Sides):
        return got
    if _unmeasured(got):
        return Sides(NOT_MEASURED, None, None)

    def sides(text: str) -> Sides:
        first, second = (
            None if side == NOT_MEASURED
            else _above_zero(quantity(side, Dimension.LENGTH, greatest=GREATEST_SIZE))
            for side in pair(text)
        )
        return Sides(text, first, second)

    return read(got, sides)


def _panels(got: object) -> object:
    """`10 at 15 ft`, or a list of lengths, as one length for each panel."""
    if isinstance(got, str) and " at " in got:
        count, _, each = got.partition(" at ")
        if not count.strip().isdigit() or not 1 <= int(count) <= MOST_PANELS:
            raise refusal(got, f"has no count of panels from 1 to {MOST_PANELS}",
                          "write it like '10 at 15 ft'")
        return (_of(Dimension.LENGTH)(each),) * int(count)
    if isinstance(got, tuple):
        if not 1 <= len(got) <= MOST_PANELS:
            raise refusal(got, f"has not from 1 to {MOST_PANELS} panels",
                          "write one length for each panel")
        return tuple(_of(Dimension.LENGTH)(each) for each in got)
    raise refusal(got, "gives no panels", "write '10 at 15 ft', or a list of lengths")


def _whole(least: int, greatest: int) -> Callable[[object], object]:
    """The reader of a whole number between two limits."""
    def whole(got: object) -> object:
        text = str(got).strip()
        number = int(text) if text.lstrip("-").isdigit() and len(text) < 12 else None
        if number is None or isinstance(got, bool | dict | tuple):
            raise refusal(got, "is not a whole number", f"write one from {least} to {greatest}")
        if not least <= number <= greatest:
            raise refusal(got, f"is not from {least} to {greatest}", "look for a slip of the pen")
        return number

    return whole


def _number(got: object) -> object:
    """A plain finite number."""
    try:
        number = float(str(got).replace(",", ""))
    except ValueError:
        raise refusal(got, "is not a number", "write it like 1.25; the unit stands apart") from None
    if not math.isfinite(number):
        raise refusal(got, "is not a finite number", "write it like 1.25")
    return number


def _office_value(got: object) -> object:
    """A finite number, a word of policy, or a list of names."""
    if isinstance(got, tuple) and got:
        return tuple(_text(one) for one in got)
    try:
        float(str(got).replace(",", ""))
    except ValueError:
        return _text(got)
    return _number(got)


def _truth(got: object) -> object:
    if got in ("true", "false"):
        return got == "true"
    if isinstance(got, bool):
        return got
    raise refusal(got, "is neither true nor false", "write 'true' or 'false'")


def _text(got: object) -> object:
    if not isinstance(got, str) or not got.strip():
        raise refusal(got, "is not a text", "write it in words")
    return got


def word(words: type[StrEnum], cures: dict[str, str] | None = None) -> Callable[[object], object]:
    """The reader of a word from a closed list; the nearest known word is the cure."""
    def known(text: str) -> StrEnum:
        if text in tuple(words):
            return words(text)
        cure = (cures or {}).get(text) or did_you_mean(text, words)
        raise Unreadable(text, "is not a word known here", cure)

    return lambda got: got if isinstance(got, words) else read(got, known)


def _path(text: str) -> str:
    """A path of a picture inside the record's own folder."""
    path = PurePosixPath(text.replace("\\", "/"))
    if path.is_absolute() or ".." in path.parts or ":" in text or not path.parts:
        raise Unreadable(text, "leads outside the record's folder",
                         "write a path inside it, like 'photographs/L4.jpg'")
    return text


def _reader(reader: Callable[[str], object]) -> Callable[[object], object]:
    return lambda got: read(got, reader)


def _part(got: object) -> object:
    return got if isinstance(got, Address) else read(got, addresses.address)


def _run(text: str) -> str:
    """A bar in its one spelling, or a run of bars as it was written."""
    bars = addresses.bars_of(text)
    return text if ".." in text else bars[0]


def _day(got: object) -> object:
    return got if isinstance(got, date) else read(got, day)


Text = Annotated[str, BeforeValidator(_text)]
Truth = Annotated[bool, BeforeValidator(_truth)]
OfficeValue = Annotated[float | str | tuple[str, ...], BeforeValidator(_office_value)]
Day = Annotated[date, BeforeValidator(_day)]
Year = Annotated[int, BeforeValidator(_whole(FIRST_YEAR, 2200))]
UnsureYear = Annotated[int | None, BeforeValidator(perhaps(_whole(FIRST_YEAR, 2200)))]
Count = Annotated[int, BeforeValidator(_whole(1, 200))]
UnsureCount = Annotated[int | None, BeforeValidator(perhaps(_whole(1, 200)))]
Planes = Annotated[int, BeforeValidator(_whole(1, 2))]
Lanes = Annotated[int, BeforeValidator(_whole(1, 6))]
Code = Annotated[int, BeforeValidator(_whole(0, 9))]
Trucks = Annotated[int | None, BeforeValidator(perhaps(_whole(0, 100_000)))]

Length = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.LENGTH))]
"""A length greater than zero [in]."""
UnsureLength = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.LENGTH)))
]
"""The same; None where not measured."""
Distance = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.LENGTH, zero=True))]
"""A length that may be zero [in]."""
UnsureDistance = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.LENGTH, zero=True)))
]
"""The same; None where not measured."""
Coordinate = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.LENGTH, signed=True))]
"""A length that may be below zero [in]."""
UnsureCoordinate = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.LENGTH, signed=True)))
]
Offset = Annotated[
    InstanceOf[Quantity],
    BeforeValidator(_of(Dimension.LENGTH, signed=True, greatest=GREATEST_SIZE)),
]
"""A small length that may be below zero [in]."""
Size = Annotated[
    InstanceOf[Quantity] | None,
    BeforeValidator(perhaps(_of(Dimension.LENGTH, greatest=GREATEST_SIZE))),
]
"""A size of a section [in]; None where not measured."""
Area = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.AREA))]
UnsureArea = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.AREA)))
]
Force = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.FORCE, zero=True))]
"""A force not below zero [kip]."""
Stress = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.STRESS))]
UnsureStress = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.STRESS)))
]
Angle = Annotated[InstanceOf[Quantity], BeforeValidator(_of(Dimension.ANGLE, signed=True))]
UnsureAngle = Annotated[
    InstanceOf[Quantity] | None, BeforeValidator(perhaps(_of(Dimension.ANGLE, signed=True)))
]
"""None where not measured."""
Density = Annotated[InstanceOf[Quantity], BeforeValidator(weighing(Dimension.DENSITY))]
Measure = Annotated[
    InstanceOf[Quantity],
    BeforeValidator(
        lambda got: got if isinstance(got, Quantity)
        else read(got, lambda text: measure(text, *READ))
    ),
]
"""A length, a force or an area not below zero, as a reading gives it."""
SidesField = Annotated[InstanceOf[Sides], BeforeValidator(_sides)]
Panels = Annotated[tuple[InstanceOf[Quantity], ...], BeforeValidator(_panels)]

KindWord = Annotated[Kind, BeforeValidator(word(Kind))]
MetalWord = Annotated[Metal, BeforeValidator(word(Metal))]
Part = Annotated[InstanceOf[Address], BeforeValidator(_part)]
BarName = Annotated[str, BeforeValidator(_reader(addresses.bar_name))]
Run = Annotated[str, BeforeValidator(_reader(_run))]
"""One bar, or a run of bars."""
Joint = Annotated[str, BeforeValidator(_reader(addresses.joint_name))]
TrussName = Annotated[str, BeforeValidator(_reader(addresses.truss_name))]
Place = Annotated[str, BeforeValidator(_reader(addresses.place_on_part))]
Picture = Annotated[str, BeforeValidator(_reader(_path))]


def once(written: tuple[str, ...], what: str) -> tuple[str, ...]:
    """The same list; refuses a word that stands twice in it."""
    seen: set[str] = set()
    for text in written:
        if text in seen:
            raise refusal(text, f"is named twice as {what}", "leave one of them out")
        seen.add(text)
    return written
