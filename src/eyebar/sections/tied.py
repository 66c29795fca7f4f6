"""The two halves of a built-up member and what ties them: lacing, battens, plates.

A member laced across the truss has a near and a far half, one laced in the plane of the truss an
upper and a lower one; a box of four angles is tied both ways.
"""

from dataclasses import dataclass

from eyebar.sections.built import Angles, Channels, Placed, PlatesAndAngles, Spread
from eyebar.sections.composed import angles_parts, channels_parts, plates_and_angles_parts
from eyebar.sections.gathered import Part, free_to_slant, gathered
from eyebar.sections.pieces import Battens, Lacing
from eyebar.sections.shapes import Section


@dataclass(frozen=True, slots=True, kw_only=True)
class Half:
    """One half of a tied member.

    `area` [in2]; `arm` the distance of its centre from the centre of the whole [in]; `inertia`
    about its own axis, parallel to the one that the ties weaken [in4], `reach` the distance of its
    farther fibre from that axis [in]; `radius` the least radius of gyration of a piece of it, as it
    bends between two fastenings [in].
    """

    name: str
    area: float
    arm: float
    inertia: float
    reach: float
    radius: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Tied:
    """Two halves, near and far or upper and lower, and what ties them.

    Ties spread `across` weaken the member out of the plane of the truss, ties spread in the plane
    weaken it there. `plates` counts the plates that close a side.
    """

    spread: Spread
    halves: tuple[Half, Half]
    lacing: Lacing | None
    battens: Battens | None
    plates: int

    @property
    def distance(self) -> float:
        """Distance between the centres of the two halves [in]."""
        return self.halves[0].arm + self.halves[1].arm

    @property
    def radius(self) -> float:
        """Least radius of gyration of a piece between two fastenings [in]."""
        return min(half.radius for half in self.halves)


def tied_of(section: Section) -> tuple[Tied, ...]:
    """The ways in which a section is tied; none for what is solid or not tied at all.

    Raises NotMeasured (part left empty), OutOfRange.
    """
    match section:
        case Channels():
            near, far, *_ = parts = channels_parts(section)
            plates = sum(plate is not None for plate in (section.cover, section.bottom))
            return (_tied(section, Spread.ACROSS, parts, ((near,), (far,)), plates),)
        case PlatesAndAngles(middle=None):
            parts = plates_and_angles_parts(section)
            sides = _named(parts, "near"), _named(parts, "far")
            plates = sum(plate is not None for plate in (section.cover, section.bottom))
            return (_tied(section, Spread.ACROSS, parts, sides, plates),)
        case Angles(placed=Placed.LACED):
            parts = angles_parts(section)
            return (_tied(section, section.spread, parts, _angles(parts, section.spread), 0),)
        case Angles(placed=Placed.BOX):
            parts = angles_parts(section)
            return tuple(
                _tied(section, spread, parts, _angles(parts, spread), 0)
                for spread in (Spread.ACROSS, Spread.UPRIGHT)
            )
        case _:
            return ()


Parts = tuple[Part, ...]


def _named(parts: Parts, word: str) -> Parts:
    return tuple(part for part in parts if word in part.name.split())


def _angles(parts: Parts, spread: Spread) -> tuple[Parts, Parts]:
    words = ("near", "far") if spread is Spread.ACROSS else ("lower", "upper")
    first, second = (_named(parts, word) for word in words)
    return first, second


def _tied(
    section: Channels | PlatesAndAngles | Angles, spread: Spread, parts: Parts,
    halves: tuple[Parts, Parts], plates: int,
) -> Tied:
    whole = gathered(parts)
    first, second = (
        _half(half, spread, centre=whole.x if spread is Spread.ACROSS else whole.y)
        for half in halves
    )
    return Tied(
        spread=spread, halves=(first, second), lacing=section.lacing, battens=section.battens,
        plates=plates,
    )


def _half(parts: Parts, spread: Spread, *, centre: float) -> Half:
    sums = gathered(parts)
    across = spread is Spread.ACROSS
    # Two angles of one half meet at the fastenings only; web and angles are riveted together.
    webbed = any("web" in part.name for part in parts)
    pieces = (parts,) if webbed else tuple((part,) for part in parts)
    return Half(
        name=" and ".join(part.name for part in parts), area=sums.area,
        arm=abs((sums.x if across else sums.y) - centre), inertia=sums.i_y if across else sums.i_x,
        reach=max(sums.right - sums.x, sums.x - sums.left) if across
        else max(sums.top - sums.y, sums.y - sums.bottom),
        radius=min(free_to_slant(gathered(piece)).r_least for piece in pieces),
    )
