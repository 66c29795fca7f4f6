"""The bridge as it is on a date: frozen values, ready for loads, forces and strengths.

Units: inch, kip, ksi; stations along the road in feet where the name says so.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING

from eyebar.errors import NotMeasured
from eyebar.sections.joined import PinPlates, Splice
from eyebar.sections.punching import RivetHoles
from eyebar.sections.shapes import Section
from eyebar.terms import Kind, Metal, Pace

if TYPE_CHECKING:
    from eyebar.bridge.bracing_parts import Bracing
    from eyebar.bridge.floor_parts import Floor


@dataclass(frozen=True, slots=True, kw_only=True)
class AllowedStress:
    """Allowable stresses that a record gives where no rule has them (cast iron, timber) [ksi].

    They stand for the loads of the road as they are, moisture, duration and size counted;
    `column_modulus` is that of timber columns with its safety. None: not given.
    """

    pull: float | None
    push: float | None
    column_modulus: float | None
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a bar is made of.

    `yield_stress`, `tensile_strength`, `modulus` [ksi], `density` [lb/in3]; `sources` names, for
    each figure, where it comes from; `coupons` says how many were tested, `built` when it was made,
    0 where nobody knows.
    """

    name: str
    metal: Metal
    yield_stress: float
    tensile_strength: float
    modulus: float
    density: float
    sources: Mapping[str, str]
    coupons: int = 0
    built: int = 0
    allowed: AllowedStress | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """One bar of a chord that runs on: lengths [in], area as built [in2], `density` [lb/in3] and
    `inertia` about its level axis [in4]."""

    length: float
    run: float
    area: float
    density: float
    inertia: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RunsOn:
    """The bars of a chord between two splices, in order, and which of them (from 0) is meant."""

    spans: tuple[Span, ...]
    place: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """What the end of a bar bears on at a `joint`: a block or shoe, of cast iron as a rule.

    `area` on which it bears [in2], `allowed` stress in push that the record gives [ksi] and its
    `source`; None where not measured or not given.
    """

    joint: str
    metal: Metal
    area: float | None
    allowed: float | None
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One bar of a truss.

    `name` is also the last piece of `address`. `as_built` gives stiffness and weight, `left` gives
    strength: what the latest readings up to the date leave of it. `length` between joints [in];
    `length_in_plane` and `length_out_of_plane` are its unsupported lengths as a column.
    `initial_kip` is its lack of fit (the force with all joints held where they are unloaded),
    `gap_in` the stretch before it works: never both other than zero. `not_rated` is the reason for
    which the part is not rated (a crack, a size never measured), empty when there is none.
    """

    name: str
    address: str
    kind: Kind
    ends: tuple[str, str]
    length: float
    length_in_plane: float
    length_out_of_plane: float
    as_built: Section
    left: Section
    material: Material
    can_push: bool
    can_pull: bool
    pin_offset: float = 0.0
    """Pin below the centre of gravity as built [in]; a thrust then bends the bar upwards."""
    bow: float = 0.0
    """Measured crookedness at mid-length [in], 0 where none was found."""
    continuous: bool = False
    """True where the bar runs through without a splice at one end at least."""
    initial_kip: float = 0.0
    gap_in: float = 0.0
    run: float | None = None
    """Horizontal distance between its joints [in]: its own weight bends it by the part across it.
    None: not known, the whole length is taken, which is the safe side."""
    pull_kip: float | None = None
    """A measured pull under dead load that was accepted; None where there is none."""
    not_rated: str = ""
    readings: tuple[str, ...] = ()
    """The readings that made `left`, in words with their dates."""
    splice: Splice | None = None
    """How the bar is joined to the next at a joint where the chord is cut; None: not recorded."""
    pin_plates: PinPlates | None = None
    """The weaker of its two ends about the pins; None: not recorded."""
    jaw: float | None = None
    """Length from the pin to where the whole section begins, where flanges are cut away [in]."""
    holes: RivetHoles | None = None
    """Rivet holes of the section that has most of them; None: not recorded."""
    lacing_rivet: float | None = None
    """Diameter of the rivets that hold the lacing [in]; None: not recorded."""
    other_pin_offset: float | None = None
    """`pin_offset` at the second end where it differs [in]."""
    side_offset: float = 0.0
    """Pull or push beside the centre of gravity as built, across the truss [in]."""
    runs_on: RunsOn | None = None
    """The chord that the bar is a span of; None: hinged at both ends."""
    seats: tuple[Seat, ...] = ()
    """The blocks that its ends push on."""
    hanging: Section | None = None
    """Pieces of its set, as built, that are broken or loose and hang there: weight alone."""
    welded: str = ""
    """What was welded to it later, in words; empty where nothing was."""
    on_posts: str = ""
    """Of a bar that elastic posts hold sideways: how its `length_out_of_plane` was found, which is
    then an effective length and takes no factor; empty where it is not one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """One bearing on a pin.

    `bars` that bear there as one, without any the load hung on the pin alone (`hung`); `along` [in]
    its middle from the outer end of the packing, `thickness` [in]; `share` [1] of each force;
    `yield_stress` [ksi] the least of pin and bars.
    """

    bars: tuple[str, ...]
    hung: bool
    along: float
    thickness: float
    share: float
    yield_stress: float
    middle: bool = False
    """True where it stands across the pin's middle: to a half belongs half its thickness."""
    worn: float = 0.0
    """What has gone from the thickness where it bears [in]; it lies where it lay."""

    @property
    def name(self) -> str:
        """What bears there, in words."""
        return " and ".join((*self.bars, *(("the load hung on it",) if self.hung else ())))


@dataclass(frozen=True, slots=True, kw_only=True)
class Pin:
    """The pin at a joint, as it is left, with its packing.

    `diameter` [in]; `toward` bar -> unit vector to its other end; `whole` the part of all forces
    that the packing carries: 1/2 for one half of a pin alike on both sides. `proposed`: nobody
    measured the packing. `rules` say what was decided.
    """

    address: str
    joint: str
    diameter: float
    material: Material
    packing: tuple[Packed, ...]
    toward: Mapping[str, tuple[float, float]]
    whole: float
    proposed: bool
    rules: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Truss:
    """One truss: joints [in], bars, supports, and where the floor hangs on it."""

    name: str
    joints: Mapping[str, tuple[float, float]]
    bars: tuple[Bar, ...]
    broken: tuple[Bar, ...]
    """Bars declared broken: out of the model, not rated."""
    floor_joints: tuple[tuple[str, float], ...]
    """(joint, station in feet from end 0) in order, both end panel points included."""
    supports: Mapping[str, tuple[bool, bool]]
    """Joint -> (x held, y held)."""
    pins: tuple[Pin, ...] = ()
    """Those whose strength can be found."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """One item of the dead load on one truss: uniform along the floor, or at floor joints.

    `wearing` marks what may be laid on later or taken off (surfacing, utilities): DW; else DC.
    """

    name: str
    kip_per_ft: float
    kip_at_joints: Mapping[str, float]
    wearing: bool
    working: str
    """How the figure came about, in one line: `3 in x 16 ft x 50 lb/ft3 / 2 trusses`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What a rule or a curb holds vehicles to.

    `alone`: nothing else is on the bridge. `held_ft`: a vehicle's middle is no farther than this
    from the road's [ft], so that none stands beside it; None: anywhere. `pace`: how fast it goes.
    """

    alone: bool = False
    held_ft: float | None = None
    pace: Pace = Pace.ANY

    @property
    def one_at_a_time(self) -> bool:
        """Whether no two vehicles can stand side by side."""
        return self.alone or self.held_ft is not None


ANY_USE = Use()
"""Vehicles anywhere, beside each other, at any pace."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Roadway:
    """The road across: widths and distances in feet."""

    clear_width_ft: float
    truss_spacing_ft: float
    curb_ft: Mapping[str, float]
    """Truss name -> distance from its centre line to the face of the nearer curb [ft]."""
    lanes_given: int | None
    surface: str
    """`smooth`, `minor depressions` or `rough`."""
    surfacing_measured: bool
    trucks_a_day: float | None
    use: Use = ANY_USE
    """What vehicles are held to besides."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherPart:
    """A part that is there and carries traffic but is not a bar: pin, floor, bearing."""

    address: str
    truss: str | None
    kind: Kind
    not_rated: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bridge:
    """The whole bridge on `on`: what the calculations read, and nothing they do not."""

    name: str
    number: str
    owner: str
    place: str
    built: int | None
    on: date
    trusses: tuple[Truss, ...]
    weights: Mapping[str, tuple[Weight, ...]]
    """Truss name -> dead load items, without the truss's own weight, which its bars tell."""
    roadway: Roadway | None
    """None where its widths were not measured; `unknown_loads` then says which."""
    others: tuple[OtherPart, ...]
    superstructure_condition: int | None
    condition_measured: bool
    """True where section loss was measured, which lets the condition factor be raised."""
    unknown_loads: tuple[str, ...] = ()
    """Weights that nobody measured: no part is rated while there are any."""
    rules: tuple[str, ...] = field(default=())
    """What was decided in making this state of the record, in sentences."""
    record_hash: str = ""
    floor: "Floor | None" = None
    """The floor as far as it is recorded."""
    bracing: "Bracing | None" = None
    """What holds the trusses sideways; None where nothing of it is recorded."""

    @property
    def road(self) -> Roadway:
        """The road across. Raises NotMeasured where its widths are not known."""
        if self.roadway is None:
            raise NotMeasured("the road", "width across")
        return self.roadway
