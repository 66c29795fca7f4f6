"""The floor as it is on a date: stringers, floorbeams, hangers, deck, bearings.

Units as in `parts`. Across the road a `place_ft` is counted from the centre line of the truss that
the record names first; along a beam a distance is counted from its first end: a stringer's joint
nearer end 0, a floorbeam's end at the first truss.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from eyebar.bridge.floor_joined import Anchors, BeamEnds, Fastening, Yoke
from eyebar.bridge.parts import Bar, Material
from eyebar.sections.shapes import Section


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """What a stick of the floor is made of: by species and grade, or by values given.

    Values are reference values [ksi], dry and for the normal duration, None where the office's
    table has them by `species` and `grade`. `wet`: damp in use; `incised` for the preservative.
    """

    name: str
    species: str
    grade: str
    wet: bool
    incised: bool
    bending: float | None = None
    shear: float | None = None
    across: float | None = None
    modulus: float | None = None
    source: str = ""


MadeOf = Material | Timber


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A stretch of a beam, from `begin_ft` to `end_ft` along it, and its section as it is left."""

    begin_ft: float
    end_ft: float
    section: Section


@dataclass(frozen=True, slots=True, kw_only=True)
class Stringer:
    """One stringer of one panel.

    `ends` are its joints, `begin_ft` and `end_ft` their stations. `gaps_ft`: to the next stringers
    that work on either side, None at an edge. `unheld` is the length over which nothing holds its
    compressed edge [in], 0 where the deck holds it all along, None where not recorded. `run_ft` are
    the spans of the beam that runs on over floorbeams, `run_place` which of them this one is.
    """

    address: str
    panel: int
    number: int
    ends: tuple[str, str]
    begin_ft: float
    end_ft: float
    place_ft: float
    gaps_ft: tuple[float | None, float | None]
    as_built: Section
    stretches: tuple[Stretch, ...]
    made_of: MadeOf
    unheld: float | None
    beam_ends: BeamEnds
    weight_kip_per_ft: float
    run_ft: tuple[float, ...] = ()
    run_place: int = 0
    not_rated: str = ""
    readings: tuple[str, ...] = ()

    @property
    def span_ft(self) -> float:
        """Its span, from floorbeam to floorbeam."""
        return self.end_ft - self.begin_ft

    @property
    def continuous(self) -> bool:
        """Whether it runs on over a floorbeam."""
        return len(self.run_ft) > 1


@dataclass(frozen=True, slots=True, kw_only=True)
class TrussRods:
    """Rods that truss a beam from below: fastened at its ends, bent round posts at `posts_ft`.

    `drop` from the beam's middle line to the rods [in]; `rods` all of them together; `post` the
    area of one post [in2] with its modulus [ksi], None where it is taken as stiff.
    """

    bar: Bar
    posts_ft: tuple[float, ...]
    drop: float | None
    post_area: float | None = None
    post_modulus: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Floorbeam:
    """The floorbeam at a panel point, `station_ft` along the road.

    `before_ft` and `behind_ft` are the panels on its two sides. It spans from truss to truss,
    `span_ft` square to the road; on a skew bridge it is longer, `slant` times, as it joins the
    trusses' joints of one name. `riveted`: to the posts, so that it has no hangers.
    """

    address: str
    joint: str
    station_ft: float
    before_ft: float
    behind_ft: float
    span_ft: float
    as_built: Section
    stretches: tuple[Stretch, ...]
    made_of: MadeOf
    unheld: float | None
    beam_ends: BeamEnds
    weight_kip_per_ft: float
    stringers_ft: tuple[float, ...]
    """Places of the stringers that sit on it; empty where the deck lies on it."""
    riveted: bool = False
    slant: float = 1.0
    truss_rods: TrussRods | None = None
    not_rated: str = ""
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanger:
    """What hangs the end of a floorbeam from a truss's joint.

    `bar` has its section (all legs, plates or bars together) and metal. `bent` marks rods bent over
    the pin: `inside` is the clear width between their legs, `leg` the length of a leg, `pin` the
    pin's diameter; plates have a `hole` for it and metal `beyond` that [in]. `off_centre` [in] is
    how far the beam hangs beside the middle of legs that stand `apart`. Where the beam is riveted
    to the post, `fastening` is all there is.
    """

    address: str
    truss: str
    joint: str
    station_ft: float
    before_ft: float
    behind_ft: float
    bar: Bar | None
    bent: bool = False
    inside: float | None = None
    leg: float | None = None
    pin: float | None = None
    pin_yield: float | None = None
    hole: float | None = None
    beyond: float | None = None
    off_centre: float = 0.0
    apart: float | None = None
    fastening: Fastening | None = None
    yoke: Yoke | None = None
    made_of: Material | None = None
    not_rated: str = ""
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bars:
    """The main bars on one face of a slab [in]: diameter as it is left and as `built` (of `square`
    ones the side), from bar to bar, cover from the slab's face as built; their yield stress [ksi].
    """

    diameter: float | None
    built: float | None
    every: float | None
    cover: float | None
    square: bool
    yield_stress: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Deck:
    """The deck that the wheels stand on.

    `kind` and `runs` in the record's words; `thickness` as it is left, `built` as it was [in];
    `clear` distance between its supports [in], `support` half of whose width may count. `modulus`
    is the section modulus for an inch of width [in2] of a deck of steel, `bars_apart` the spacing
    of a grating's main bars. `continuous`: it runs on over more than two spans; `joined`: panels or
    laminations that run on or are tied together. Of a slab: strength of its `concrete` [ksi], its
    `lower` and `upper` main bars.
    """

    address: str
    kind: str
    runs: str
    thickness: float | None
    built: float | None
    plank_width: float | None
    clear: float | None
    support: float | None
    made_of: MadeOf | None
    continuous: bool
    joined: bool
    modulus: float | None = None
    bars_apart: float | None = None
    concrete: float | None = None
    lower: Bars | None = None
    upper: Bars | None = None
    not_rated: str = ""
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rollers:
    """A nest of rollers: how many, diameter and length of one [in]."""

    number: int
    diameter: float | None
    length: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shoe:
    """What an end of a truss stands on.

    Plate on its seat [in], pressure that the seat may bear [ksi] with its source; rollers under it;
    `anchors` that hold it down, None where none are recorded.
    """

    address: str
    truss: str
    joint: str
    at_zero: bool
    plate: tuple[float | None, float | None] | None
    allowed: float | None
    source: str
    rollers: Rollers | None
    material: Material | None
    anchors: Anchors | None = None
    not_rated: str = ""
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """What lies on the floor between the curbs: weight by area over a width on the middle line."""

    name: str
    kip_per_ft2: float
    width_ft: float
    wearing: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Sidewalk:
    """A sidewalk beside a truss, its middle `place_ft` across; weight by area is dead load."""

    truss: str
    place_ft: float
    width_ft: float
    kip_per_ft2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Bracket:
    """What carries a sidewalk outside a truss at a joint, as a cantilever from the post.

    It carries `long_ft` of a walk `width_ft` wide, whose middle is `arm` [in] from where it
    springs; `unheld` is its length to the walk's edge [in]. The walk weighs `kip_per_ft2`.
    """

    address: str
    truss: str
    joint: str
    station_ft: float
    long_ft: float
    width_ft: float
    arm: float | None
    unheld: float | None
    kip_per_ft2: float
    left: Section
    made_of: Material
    not_rated: str = ""
    readings: tuple[str, ...] = ()


FloorPart = Stringer | Floorbeam | Hanger | Deck | Shoe | Bracket


@dataclass(frozen=True, slots=True, kw_only=True)
class Floor:
    """The whole floor: its parts, and what lies on it.

    `curb_ft` is the place of the curb at the first truss; `guard_kip_per_ft` the weight of one
    curb. `unknown`: weights that nobody measured, in words; no part of the floor is rated then.
    """

    curb_ft: float
    clear_width_ft: float
    truss_ft: Mapping[str, float]
    """Truss -> place of its centre line."""
    layers: tuple[Layer, ...]
    guard_kip_per_ft: float
    sidewalks: tuple[Sidewalk, ...]
    stringers: tuple[Stringer, ...]
    floorbeams: tuple[Floorbeam, ...]
    hangers: tuple[Hanger, ...]
    deck: Deck | None
    shoes: tuple[Shoe, ...]
    brackets: tuple[Bracket, ...] = ()
    deck_word: str = ""
    """The deck's row among the shares of a wheel line, without what it lies on."""
    stringers_of_timber: bool = True
    unknown: tuple[str, ...] = ()

    @property
    def parts(self) -> tuple[FloorPart, ...]:
        """Every part that is recorded."""
        deck = () if self.deck is None else (self.deck,)
        return (*self.floorbeams, *self.stringers, *deck, *self.hangers, *self.shoes,
                *self.brackets)
