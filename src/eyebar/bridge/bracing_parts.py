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
class Brace:
    """One strut, or the two crossed braces of a panel.

    `bar` is one brace as it is left, None where not all of it is known (`unknown` says what is
    not); `gone` are the pieces that are broken or loose. Piece 1 of two crossed braces begins at
    the first truss nearer end 0.
    """

    address: str
    bar: Bar | None = None
    unknown: str = ""
    gone: tuple[int, ...] = ()
    can_push: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Laterals:
    """Crossed braces between the trusses: `joints` in order from end 0, their `stations` along the
    chord [in], and one Brace for each panel between two of them."""

    joints: tuple[str, ...]
    stations: tuple[float, ...]
    panels: tuple[Brace, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Knee:
    """A brace from a strut down to a post: `along` the strut from the truss, `down` the post [in].
    """

    along: float
    down: float
    bar: Bar | None = None
    unknown: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Transverse:
    """A portal, or a strut with or without knees, at one joint of the upper chord.

    `form` in the record's word; `depth` of a lattice or plate from its upper to its lower flange;
    `foot_width` over which the foot of an end post bears across the truss [in], None where not
    measured: the foot is then a hinge. `strut` is the strut, or one flange.
    """

    joint: str
    form: str
    strut: Brace
    depth: float | None = None
    knee: Knee | None = None
    foot_width: float | None = None
    portal: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Bracing:
    """The bracing of a bridge: braces, and of a half-through one its cross frames, by truss, joint.

    `spacing` of the trusses [in], None where not measured. `hinged` are the joints at which the
    upper chord is cut, by truss; `bases_held`: whether the feet of its end posts are held upright.
    """

    overhead: bool
    spacing: float | None
    frames: Mapping[str, Mapping[str, CrossFrame]] = field(default_factory=dict)
    hinged: Mapping[str, frozenset[str]] = field(default_factory=dict)
    bases_held: bool = False
    rules: tuple[str, ...] = ()
    transverse: Mapping[str, Transverse] = field(default_factory=dict)
    """Joint of the upper chord -> the portal or strut there."""
    top_laterals: Laterals | None = None
    bottom_laterals: Laterals | None = None
