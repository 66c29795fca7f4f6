"""What holds the trusses sideways, as it is on a date. Units as in `parts`."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from eyebar.bridge.floor_parts import Floorbeam
from eyebar.bridge.parts import Bar


@dataclass(frozen=True, slots=True, kw_only=True)
class Outrigger:
    """A brace from the end of a long floorbeam up to a post: `foot` outside the truss, `head` above
    the floorbeam's middle [in]."""

    bar: Bar
    foot: float
    head: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossFrame:
    """Post and floorbeam under one joint of a half-through truss's upper chord.

    `beam` is the floorbeam, None where it is not known; `fastened` in the record's word, empty
    where nobody knows; `height` of the chord above the floorbeam's middle and `clear_height` of the
    post that is free to bend [in], with `assumed` what of that is no measurement.
    """

    joint: str
    post: str
    beam: Floorbeam | None
    fastened: str
    height: float
    clear_height: float
    outrigger: Outrigger | None = None
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bracing:
    """The bracing of a bridge: of a half-through one its cross frames, by truss and joint.

    `spacing` of the trusses [in], None where not measured. `hinged` are the joints at which the
    upper chord is cut, by truss; `bases_held`: whether the feet of its end posts are held upright.
    """

    overhead: bool
    spacing: float | None
    frames: Mapping[str, Mapping[str, CrossFrame]] = field(default_factory=dict)
    hinged: Mapping[str, frozenset[str]] = field(default_factory=dict)
    bases_held: bool = False
    rules: tuple[str, ...] = ()
