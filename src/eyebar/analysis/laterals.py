"""A lateral truss: two chords, crossed braces that pull and do not push, struts between them.

Wind stands on the windward chord alone, so that every strut carries its own panel's wind across:
the safe side.
"""

from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.formula import Symbol, formula, procedure

SHEAR = Symbol("shear of the panel", "kip", "shear", low=0.1, high=50.0)
SPACING = Symbol("distance of the trusses", "in", "spacing", low=120.0, high=300.0)


@formula(
    "F = V * sqrt(a**2 + b**2) / b",
    result=Symbol("pull of the brace that works", "kip"),
    V=SHEAR,
    a=Symbol("length of the panel along the chord", "in", "panel", low=60.0, high=300.0),
    b=SPACING,
    source="statics: the cut across a panel",
)
def brace_pull(shear: float, panel: float, spacing: float) -> float:
    """Pull of the one of two crossed braces that works [kip].

    Shear [kip], lengths [in]. Scalars or arrays. Limits: spacing above 0.
    """
    return float(shear * (panel**2 + spacing**2) ** 0.5 / spacing)


@formula(
    "F = M / b",
    result=Symbol("force of a chord from wind", "kip"),
    M=Symbol("moment of the lateral truss at the joint across", "kip in", "moment", low=0.0,
             high=9000.0),
    b=SPACING,
    source="statics: moments about the joint that brace and other chord share",
)
def chord_force(moment: float, spacing: float) -> float:
    """Force of a chord from wind, by moments [kip].

    Moment [kip in], spacing [in]. Scalars or arrays. Limits: spacing above 0.
    """
    return moment / spacing


@dataclass(frozen=True, slots=True, kw_only=True)
class LateralTruss:
    """Stations of the joints [in], spacing of the chords [in], steady and moving wind at every
    joint [kip], and the braces of each panel that work (1: begins at the windward chord nearer end
    0); `rigid`: whether a brace may push where its fellow is gone."""

    stations: tuple[float, ...]
    spacing: float
    steady: tuple[float, ...]
    moving: tuple[float, ...]
    working: tuple[tuple[int, ...], ...]
    rigid: tuple[bool, ...]

    def __post_init__(self) -> None:
        joints = len(self.stations)
        if joints < 2 or not self.spacing > 0.0 or {
            len(self.steady), len(self.moving), len(self.working) + 1, len(self.rigid) + 1,
        } != {joints}:
            raise OutOfRange("lateral truss", f"{joints} joints", "two or more, alike in all")


@dataclass(frozen=True, slots=True, kw_only=True)
class LateralForces:
    """Forces of a lateral truss [kip].

    By panel: greatest `shear` of either sign, `pull` and `push` of a brace, `windward` push and
    `leeward` pull of the chords, `carried`: whether a brace that can is there. By joint: `struts`
    push. `reactions` at the two ends under all of the wind, `applied` that wind.
    """

    shear: tuple[float, ...]
    pull: tuple[float, ...]
    push: tuple[float, ...]
    windward: tuple[float, ...]
    leeward: tuple[float, ...]
    carried: tuple[bool, ...]
    struts: tuple[float, ...]
    reactions: tuple[float, float]
    applied: float


@procedure(
    "lateral truss with crossed braces",
    source="statics, as textbooks of 1900 have it; moving wind covers whole panels up to the joint "
    "looked at (J. A. L. Waddell, De Pontibus (1898), p. 221)",
    steps=(
        "shear of every panel under the steady wind, with the moving wind on the one side of it, "
        "then on the other",
        "the brace that this shear pulls; its fellow is slack, or pushes where it alone is there",
        "chords by moments at the joint across, under all of the wind",
        "struts by the joints of the windward chord, for each stand of the moving wind",
    ),
)
def lateral_forces(truss: LateralTruss) -> LateralForces:
    """Greatest forces of every panel and strut [kip], wind from one side.

    Lengths [in], forces [kip]. Scalars. Limits: simply supported at its two ends.
    """
    joints = len(truss.stations)
    full = tuple(a + b for a, b in zip(truss.steady, truss.moving, strict=True))
    patterns = [full]
    for joint in range(joints):
        patterns += [_with(truss, range(joint, joints)), _with(truss, range(joint + 1))]
    shears = [_shears(truss.stations, loads) for loads in patterns]
    pull, push, carried, greatest = [], [], [], []
    for panel in range(joints - 1):
        here = [one[panel] for one in shears]
        found = _braces(truss, panel, max(*here, 0.0), max(*(-one for one in here), 0.0))
        pull.append(found[0])
        push.append(found[1])
        carried.append(found[2])
        greatest.append(max(here, key=abs))
    windward, leeward = _chords(truss, full)
    loads_and_shears = list(zip(patterns, shears, strict=True))
    struts = [
        max(_strut(loads, shear, joint) for loads, shear in loads_and_shears)
        for joint in range(joints)
    ]
    first = _reaction(truss.stations, full)
    return LateralForces(
        shear=tuple(greatest), pull=tuple(pull), push=tuple(push), windward=windward,
        leeward=leeward, carried=tuple(carried), struts=tuple(struts),
        reactions=(first, sum(full) - first), applied=sum(full),
    )


def _with(truss: LateralTruss, there: range) -> tuple[float, ...]:
    return tuple(
        steady + (moving if joint in there else 0.0)
        for joint, (steady, moving) in enumerate(zip(truss.steady, truss.moving, strict=True))
    )


def _reaction(stations: tuple[float, ...], loads: tuple[float, ...]) -> float:
    """What the first end holds [kip]."""
    last = stations[-1]
    whole = last - stations[0]
    return sum(load * (last - x) / whole for load, x in zip(loads, stations, strict=True))


def _shears(stations: tuple[float, ...], loads: tuple[float, ...]) -> tuple[float, ...]:
    """Shear of every panel, positive where the first end holds more than stands before it [kip]."""
    shear = _reaction(stations, loads)
    found = []
    for load in loads[:-1]:
        shear -= load
        found.append(shear)
    return tuple(found)


def _braces(
    truss: LateralTruss, panel: int, forth: float, back: float
) -> tuple[float, float, bool]:
    """Pull and push of the braces of a panel, and whether they carry its shears of both signs."""
    length = truss.stations[panel + 1] - truss.stations[panel]
    pull = push = 0.0
    carried = True
    for shear, wanted in ((forth, 1), (back, 2)):
        if not shear > 0.0:
            continue
        force = brace_pull(shear, length, truss.spacing)
        other = 3 - wanted
        if wanted in truss.working[panel]:
            pull = max(pull, force)
        elif other in truss.working[panel] and truss.rigid[panel]:
            push = max(push, force)
        else:
            carried = False
    return pull, push, carried


def _chords(
    truss: LateralTruss, loads: tuple[float, ...]
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Push of the windward and pull of the leeward chord in every panel."""
    shears = _shears(truss.stations, loads)
    moments = [0.0]
    for panel, shear in enumerate(shears):
        length = truss.stations[panel + 1] - truss.stations[panel]
        moments.append(moments[-1] + shear * length)
    windward, leeward = [], []
    for panel, shear in enumerate(shears):
        near, far = moments[panel], moments[panel + 1]
        # The brace that pulls runs from the windward chord to the joint nearer mid-span.
        across, along = (far, near) if shear >= 0.0 else (near, far)
        windward.append(chord_force(across, truss.spacing))
        leeward.append(chord_force(along, truss.spacing))
    return tuple(windward), tuple(leeward)


def _strut(loads: tuple[float, ...], shears: tuple[float, ...], joint: int) -> float:
    """Push of the strut at a joint: its own wind, and what braces pull at its windward end."""
    before = -shears[joint - 1] if joint > 0 else 0.0
    behind = shears[joint] if joint < len(shears) else 0.0
    return loads[joint] + max(before, 0.0) + max(behind, 0.0)
