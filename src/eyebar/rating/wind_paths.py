"""How wind goes down a bridge: laterals, portals, sway frames, by one rule in one state."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from eyebar.analysis.laterals import LateralForces, LateralTruss, lateral_forces
from eyebar.analysis.portals import KNEES, STRUT, Portal, PortalForces, portal_forces
from eyebar.bridge.bracing_parts import Bracing, Laterals, Transverse
from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.errors import OutOfRange
from eyebar.loads.wind import INCHES, Wind
from eyebar.office import Values
from eyebar.terms import Kind

TOP = "top"
BOTTOM = "bottom"
NO_LATERALS = "no {} laterals are recorded: nothing known carries this wind along the bridge"
NO_SPACING = "distance of the trusses not measured"
SHORT = "the {} laterals do not run from end to end"


@dataclass(frozen=True, slots=True, kw_only=True)
class LateralPath:
    """The laterals of one level under one wind, from one side.

    `loads` the steady wind at every joint [kip]; `unstrutted` the inner joints that have no strut
    that works.
    """

    level: str
    windward: str
    laterals: Laterals
    forces: LateralForces
    loads: tuple[float, ...]
    unstrutted: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FramePath:
    """A portal, or the sway frame of a strut with knees, under one wind."""

    at: Transverse
    portal: Portal
    wind: float
    forces: PortalForces
    windward: str
    post: str
    """The end post or post that bends, by name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WindPath:
    """Everything that one wind does on its way down, from one side, and what cannot be followed:
    `broken` level or joint -> why."""

    wind: Wind
    windward: str
    laterals: Mapping[str, LateralPath]
    frames: tuple[FramePath, ...]
    broken: Mapping[str, str] = field(default_factory=dict)

    def transferred(self, truss: Truss) -> float:
        """What the portals' thrust adds to the pull of the leeward lower chord [kip]."""
        found = 0.0
        for frame in self.frames:
            if frame.at.portal:
                bar = named(truss, frame.post)
                run = abs(truss.joints[bar.ends[0]][0] - truss.joints[bar.ends[1]][0])
                found = max(found, frame.forces.thrust * run / bar.length)
        return found


def named(truss: Truss, bar: str) -> Bar:
    """A bar of a truss by its name."""
    return next(one for one in (*truss.bars, *truss.broken) if one.name == bar)


def under(truss: Truss, joint: str, kinds: Sequence[Kind]) -> Bar | None:
    """The bar of one of these kinds that begins at an upper joint."""
    return next(
        (bar for bar in truss.bars if bar.kind in kinds and bar.ends[0] == joint), None
    )


def upper_length_ft(bridge: Bridge) -> float:
    """Length of upper chord that its wind spreads over: its own, and half of each end post's run.
    """
    truss = bridge.trusses[0]
    upper = [x for joint, (x, _) in truss.joints.items() if joint.startswith("U")]
    if not upper:
        return 0.0
    low, high = min(upper), max(upper)
    first, last = (truss.joints[joint][0] for joint, _ in (
        truss.floor_joints[0], truss.floor_joints[-1]
    ))
    return (high - low + (abs(low - first) + abs(last - high)) / 2.0) / INCHES


def wind_path(
    bridge: Bridge, wind: Wind, windward: str, *, thrusts: Mapping[str, float], values: Values
) -> WindPath:
    """One wind's way down. `thrusts`: end post -> push under dead load alone, the less of both
    trusses [kip]."""
    bracing = bridge.bracing
    assert bracing is not None
    laterals: dict[str, LateralPath] = {}
    broken: dict[str, str] = {}
    frames: list[FramePath] = []
    for level in (TOP, BOTTOM) if bracing.overhead else (BOTTOM,):
        found = _lateral(bridge, bracing, wind, level=level, windward=windward)
        if isinstance(found, str):
            broken[level] = found
        else:
            laterals[level] = found
    if TOP in laterals:
        for joint, reaction in _reactions(laterals[TOP]):
            frame = _portal(bridge, bracing, joint, wind=reaction, thrusts=thrusts,
                            windward=windward)
            if isinstance(frame, str):
                broken[joint] = frame
            else:
                frames.append(frame)
        frames += _sways(bridge, bracing, laterals[TOP], values)
    return WindPath(
        wind=wind, windward=windward, laterals=laterals, frames=tuple(frames), broken=broken
    )


def _reactions(path: LateralPath) -> tuple[tuple[str, float], ...]:
    joints = path.laterals.joints
    return tuple(zip((joints[0], joints[-1]), path.forces.reactions, strict=True))


def _lateral(
    bridge: Bridge, bracing: Bracing, wind: Wind, *, level: str, windward: str
) -> LateralPath | str:
    """One level of laterals; where it cannot be followed, why."""
    laterals = bracing.top_laterals if level == TOP else bracing.bottom_laterals
    truss = bridge.trusses[0]
    if laterals is None:
        return NO_LATERALS.format(level)
    if bracing.spacing is None:
        return NO_SPACING
    ends = {laterals.joints[0], laterals.joints[-1]}
    wanted = _ends(truss, level)
    if ends != wanted:
        return SHORT.format(level)
    steady, moving = _loads(bridge, bracing, wind, level=level, laterals=laterals)
    first = windward == bridge.trusses[0].name
    forces = lateral_forces(LateralTruss(
        stations=laterals.stations, spacing=bracing.spacing, steady=steady, moving=moving,
        working=tuple(
            tuple(
                piece if first else 3 - piece for piece in (1, 2) if piece not in panel.gone
            )
            for panel in laterals.panels
        ),
        rigid=tuple(panel.can_push for panel in laterals.panels),
    ))
    return LateralPath(
        level=level, windward=windward, laterals=laterals, forces=forces, loads=steady,
        unstrutted=_unstrutted(bracing, laterals) if level == TOP else (),
    )


def _ends(truss: Truss, level: str) -> set[str]:
    """The joints between which laterals of a level must run."""
    if level == BOTTOM:
        return {truss.floor_joints[0][0], truss.floor_joints[-1][0]}
    upper = sorted((x, joint) for joint, (x, _) in truss.joints.items() if joint.startswith("U"))
    return {upper[0][1], upper[-1][1]}


def _unstrutted(bracing: Bracing, laterals: Laterals) -> tuple[str, ...]:
    return tuple(
        joint for joint in laterals.joints[1:-1]
        if (found := bracing.transverse.get(joint)) is None or 1 in found.strut.gone
    )


def _loads(
    bridge: Bridge, bracing: Bracing, wind: Wind, *, level: str, laterals: Laterals
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Steady and moving wind at every joint of the laterals [kip]."""
    halves = _tributary_ft(laterals.stations)
    if level == TOP:
        before, behind = _end_posts_ft(bridge.trusses[0], laterals)
        halves[0] += before / 2.0
        halves[-1] += behind / 2.0
        return tuple(wind.upper * one for one in halves), (0.0,) * len(halves)
    steady = wind.lower
    if not bracing.overhead:
        # Nothing overhead carries the upper chord's wind: the posts bring it down to the floor.
        steady += wind.upper * upper_length_ft(bridge) / (laterals.stations[-1] / INCHES)
    return tuple(steady * one for one in halves), tuple(wind.moving * one for one in halves)


def _tributary_ft(stations: Sequence[float]) -> list[float]:
    halves = [0.0] * len(stations)
    for i, (a, b) in enumerate(pairwise(stations)):
        halves[i] += (b - a) / 2.0 / INCHES
        halves[i + 1] += (b - a) / 2.0 / INCHES
    return halves


def _end_posts_ft(truss: Truss, laterals: Laterals) -> tuple[float, float]:
    """Runs of the two end panels beyond the laterals [ft]."""
    first, last = truss.floor_joints[0][0], truss.floor_joints[-1][0]
    at = truss.joints
    return (
        abs(at[laterals.joints[0]][0] - at[first][0]) / INCHES,
        abs(at[last][0] - at[laterals.joints[-1]][0]) / INCHES,
    )


def _portal(
    bridge: Bridge, bracing: Bracing, joint: str, *, wind: float, thrusts: Mapping[str, float],
    windward: str,
) -> FramePath | str:
    """The portal that takes the laterals' reaction at a joint; else why none does."""
    found = bracing.transverse.get(joint)
    if found is None or not found.portal:
        return f"no portal stands at {joint}, where the top laterals end"
    if 1 in found.strut.gone:
        return f"the portal at {joint} is broken or loose"
    post = under(bridge.trusses[0], joint, (Kind.END_POST,))
    if post is None:
        return f"no end post stands under the portal at {joint}"
    return _frame(found, post, bracing, wind=wind, thrust=thrusts.get(post.name, 0.0),
                  windward=windward)


def _frame(
    at: Transverse, post: Bar, bracing: Bracing, *, wind: float, thrust: float, windward: str
) -> FramePath | str:
    knee = at.knee
    if at.form == KNEES and knee is None:
        return f"the knees at {at.joint} are not recorded"
    if at.form not in (KNEES, STRUT) and at.depth is None:
        return f"depth of the portal at {at.joint} not measured"
    assert bracing.spacing is not None
    down = along = 0.0
    if at.form == KNEES and knee is not None:
        down, along = knee.down, knee.along
    elif at.form != STRUT:
        down = at.depth or 0.0
    try:
        hinged = Portal(
            form=at.form, length=post.length, spacing=bracing.spacing, down=down, along=along
        )
        least = max(thrust - portal_forces(hinged, wind).thrust, 0.0)
        portal = Portal(
            form=at.form, length=post.length, spacing=bracing.spacing, down=down, along=along,
            thrust=least, foot_width=at.foot_width or 0.0,
        )
    except OutOfRange as reason:
        return str(reason)
    return FramePath(
        at=at, portal=portal, wind=wind, forces=portal_forces(portal, wind), windward=windward,
        post=post.name,
    )


def _sways(
    bridge: Bridge, bracing: Bracing, path: LateralPath, values: Values
) -> list[FramePath]:
    """Struts with knees between the portals: each takes a part of its panel's wind down."""
    part = values.number("wind.through sway frames")
    found = []
    for joint, load in zip(path.laterals.joints[1:-1], path.loads[1:-1], strict=True):
        at = bracing.transverse.get(joint)
        post = under(bridge.trusses[0], joint, (Kind.POST, Kind.HIP_VERTICAL))
        if at is None or at.knee is None or post is None or 1 in at.strut.gone:
            continue
        frame = _frame(at, post, bracing, wind=part * load, thrust=0.0, windward=path.windward)
        if isinstance(frame, FramePath):
            found.append(frame)
    return found
