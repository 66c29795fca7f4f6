"""How the floor's beams end and hang: copes, rivets, anchors, yokes. Units as in `parts`."""

from dataclasses import dataclass, field

from eyebar.bridge.parts import Material
from eyebar.sections.joined import Group, Rivets
from eyebar.sections.shapes import Section


@dataclass(frozen=True, slots=True, kw_only=True)
class Cope:
    """What is cut from a beam's upper edge at its end [in]; `both` edges alike."""

    depth: float | None
    length: float | None
    both: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastening:
    """The rivets of a beam's end, how they stand, and the thinner of what they hold [in]. `post`
    are those through what the end is riveted to, where they are recorded."""

    rivets: Rivets
    thinner: float | None
    group: Group
    post: "Fastening | None" = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Anchors:
    """Bolts that hold an end down: how many, diameter at the root of the thread [in], metal."""

    number: int
    root: float | None
    material: Material = field(hash=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class BeamEnds:
    """How a beam ends, both ends alike: length along it of its seat, or of the plate that it hangs
    on [in], with `seat_recorded` whether the record speaks of it, `stiffened` whether its web is,
    from flange to flange; its cope; its rivets; depth of timber cut away over the seat [in]; what
    holds it down."""

    seat: float | None = None
    seat_recorded: bool = False
    stiffened: bool = False
    cope: Cope | None = None
    fastening: Fastening | None = None
    notch: float | None = 0.0
    anchors: Anchors | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Yoke:
    """What lies under a floorbeam on the nuts of its hanger: `number` plates laid flat, width and
    thickness [in], or beams alike. `on_it`: width of the floorbeam that lies on it [in]."""

    plate: tuple[float | None, float | None] | None
    section: Section | None
    number: int
    material: Material = field(hash=False)
    on_it: float | None
