"""How far the bars of a truss run unheld: between pins, between lateral points, between splices.

In the plane of the truss a bar is held at its pins. Across it, a top chord is held where the
bracing that is there and works holds it: between portals, by struts that laterals reach. In a
half-through bridge its posts hold it, which the rating solves; here its bars then run unheld from
bearing to bearing. Where the record has no bracing, a high truss's chord is held where its lateral
points say, and at both ends of its run; a low one's is not known to be held.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from eyebar.bridge.members import Member
from eyebar.terms import CHORD_KINDS, Kind

ALONG_THE_TOP = (Kind.TOP_CHORD, Kind.END_POST)
FREE_AT_ONE_END = 2.0
"""Effective length of a bar held sideways at one end only, in its own lengths."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strut:
    """A bar with its length [in], as far as holding it is concerned."""

    name: str
    ends: tuple[str, str]
    length: float
    member: Member


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What holds a bar: length across the plane [in], whether it runs on through a joint.

    `not_held` is the reason for which it cannot be rated in push; empty when there is none.
    """

    out_of_plane: float
    continuous: bool
    not_held: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sideways:
    """What the bracing does for an upper chord.

    `points` are the joints that it holds, None where the record has no bracing. `half_through`:
    nothing is overhead; `firm` then has the joints with a cross frame, and whether an outrigger
    holds its post's head. `not_held` is why nothing is known to hold the chord.
    """

    points: frozenset[str] | None = None
    half_through: bool = False
    firm: Mapping[str, bool] = field(default_factory=dict)
    not_held: str = ""


def held(
    struts: Iterable[Strut], bracing: Sideways = Sideways()
) -> tuple[Mapping[str, Held], tuple[str, ...]]:
    """Bar -> what holds it, and the rules that were followed, in sentences."""
    by_name = {strut.name: strut for strut in struts}
    if bracing.half_through:
        return _by_cross_frames(by_name, bracing.firm), ()
    top = [strut for strut in by_name.values() if strut.member.kind is Kind.TOP_CHORD]
    if bracing.points is not None:
        return _by_bracing(by_name, top, bracing), ()
    points = frozenset[str]().union(*(strut.member.lateral_points or () for strut in top))
    found = {
        name: Held(
            out_of_plane=_run(strut, top, points)
            if strut.member.kind is Kind.TOP_CHORD else strut.length * _ends_factor(strut, points),
            continuous=_continuous(strut, by_name.values()),
            not_held=_not_held(strut) or (
                bracing.not_held if strut.member.kind in ALONG_THE_TOP else ""
            ),
        )
        for name, strut in by_name.items()
    }
    return found, tuple(_rules(top))


def _by_cross_frames(
    by_name: Mapping[str, Strut], firm: Mapping[str, bool]
) -> Mapping[str, Held]:
    """Bars of a half-through truss. The head of a post, and of what else leans on the chord, is
    held where an outrigger holds it; elsewhere a post stands fast on its floorbeam, or not at all.
    """
    whole = sum(one.length for one in by_name.values() if one.member.kind in ALONG_THE_TOP)
    found = {}
    for name, strut in by_name.items():
        length, not_held = strut.length, ""
        upper = strut.ends[0]
        if strut.member.kind in ALONG_THE_TOP:
            length = whole
        elif strut.member.kind is not Kind.BOTTOM_CHORD and not firm.get(upper, False):
            length *= FREE_AT_ONE_END
            if upper not in firm:
                not_held = f"nothing recorded holds its end {upper} sideways (bracing)"
        found[name] = Held(
            out_of_plane=length, continuous=_continuous(strut, by_name.values()),
            not_held=not_held,
        )
    return found


def _by_bracing(
    by_name: Mapping[str, Strut], top: list[Strut], bracing: Sideways
) -> Mapping[str, Held]:
    """Bars of a truss whose bracing is recorded."""
    points = bracing.points or frozenset()
    found = {}
    for name, strut in by_name.items():
        chord = strut.member.kind is Kind.TOP_CHORD
        upper = strut.ends[0]
        loose_end = strut.member.kind in (Kind.POST, Kind.END_POST) and upper not in points
        found[name] = Held(
            out_of_plane=_run(strut, top, points) if chord
            else strut.length * (FREE_AT_ONE_END if loose_end else _ends_factor(strut, points)),
            continuous=_continuous(strut, by_name.values()),
            not_held=bracing.not_held if strut.member.kind in ALONG_THE_TOP else _not_held(strut),
        )
    return found


def _rules(top: list[Strut]) -> Iterable[str]:
    silent = [strut.name for strut in top if strut.member.lateral_points is None]
    if silent:
        yield (
            "lateral points of the top chord are not recorded for"
            f" {', '.join(silent)}: held sideways only where they are and at both ends of the chord"
        )


def _run(strut: Strut, top: list[Strut], points: frozenset[str]) -> float:
    """Length of the top chord between the two held joints about one bar [in]."""
    length = strut.length
    for joint in strut.ends:
        here, last = joint, strut
        while here not in points:
            onward = [other for other in top if here in other.ends and other.name != last.name]
            if len(onward) != 1:
                break
            last = onward[0]
            length += last.length
            here = last.ends[1] if last.ends[0] == here else last.ends[0]
            if last.name == strut.name:
                break
    return length


def _ends_factor(strut: Strut, top_points: frozenset[str]) -> float:
    """1 for a bar held at both ends, 2 for one held at one of them."""
    points = strut.member.lateral_points
    if points is not None:
        unheld = [joint for joint in strut.ends if joint not in points]
    elif strut.member.kind is Kind.POST and top_points:
        # A post holds nothing sideways by itself: its top stands as firm as the chord it meets.
        unheld = [strut.ends[0]] if strut.ends[0] not in top_points else []
    else:
        unheld = []
    return FREE_AT_ONE_END if unheld else 1.0


def _not_held(strut: Strut) -> str:
    points = strut.member.lateral_points
    if points is None or strut.member.kind is Kind.TOP_CHORD or points & set(strut.ends):
        return ""
    return "neither of its ends is among its lateral points"


def _continuous(strut: Strut, struts: Iterable[Strut]) -> bool:
    """True where a chord runs on through a joint without a splice, at one end at least."""
    member = strut.member
    if member.kind not in CHORD_KINDS or member.spliced_at is None:
        return False
    return any(
        other.member.spliced_at is not None
        and joint not in member.spliced_at
        and joint not in other.member.spliced_at
        for other in struts
        if other.member.kind is member.kind and other.name != strut.name
        for joint in set(strut.ends) & set(other.ends)
    )
