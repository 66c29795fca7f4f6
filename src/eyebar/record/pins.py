"""Pins and what is packed on them, as they are written."""

from typing import Annotated, Self

from pydantic import BeforeValidator, model_validator

from eyebar.addresses import bar_name
from eyebar.record.fields import (
    Distance,
    Entry,
    Joint,
    Size,
    Text,
    TrussName,
    Truth,
    once,
    read,
    refusal,
)

BOTH_TRUSSES = ""
HUNG = ("hanger", "shoe")
"""What takes the load hung on a pin, or set under it, by itself."""
POST = "post"
"""The post at the joint where it takes that load besides its own force."""


def _packed(text: str) -> str:
    return text if text in (*HUNG, POST) else bar_name(text)


def _bars(got: object) -> object:
    """One bar or word, or a list of those that bear as one."""
    written = got if isinstance(got, tuple) else (got,)
    if not written:
        raise refusal(got, "names nothing that bears on the pin", "write a bar, like 'U2-L4'")
    return once(tuple(read(one, _packed) for one in written), "on one bearing")


def _share(got: object) -> object:
    """A part of a force, `0.25` or `1/4`."""
    def part(text: str) -> float:
        over, _, under = text.partition("/")
        try:
            found = float(over) / (float(under) if under else 1.0)
        except (ValueError, ZeroDivisionError):
            found = 0.0
        if not 0.0 < found <= 1.0:
            raise refusal(text, "is no part of a force", "write it like '1/4'")
        return found

    return got if isinstance(got, float) else read(got, part)


class PackedEntry(Entry):
    """One bearing on a pin."""

    bar: Annotated[tuple[str, ...], BeforeValidator(_bars)]
    """The bar, or those that bear as one; `post`, `hanger` or `shoe` for the load hung there."""
    thickness: Size
    pin_plates: Size = None
    """Thickness of the pin plates on it, all together; left out: none."""
    clearance: Distance | None = None
    """To the next one inwards; left out: the office's."""
    share: Annotated[float | None, BeforeValidator(_share)] = None
    """Part of each of its bars' whole forces; left out: equal parts."""
    middle: Truth = False
    """True of the last one of a half packing, where it stands across the middle of the pin."""


class PinEntry(Entry):
    """Pins alike, one at each joint."""

    joints: tuple[Joint, ...]
    truss: TrussName = BOTH_TRUSSES
    """The one truss they are in; empty: both."""
    diameter: Size
    material: Text
    packing: tuple[PackedEntry, ...] = ()
    """From the outside to the middle; left out: not measured, one is proposed."""
    half: Truth = True
    """False where the packing is told from one end of the pin to the other."""
    note: Text | None = None

    @model_validator(mode="after")
    def _each_joint_once(self) -> Self:
        once(self.joints, "a joint")
        middles = [i for i, one in enumerate(self.packing) if one.middle]
        if middles and (not self.half or middles != [len(self.packing) - 1]):
            raise refusal("middle: true", "is not the last of half a packing",
                          "write what stands across the middle last, and one half alone")
        return self
