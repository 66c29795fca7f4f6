"""Where a truss loses its equilibrium, in words: the panel and the counter that is missing."""

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import END, Ints, SlackSet, SlackSets, lowered


@dataclass(frozen=True, slots=True, kw_only=True)
class Collapse:
    """A mechanism of a truss with slack bars: its panel, the bar that would stop it, in words."""

    panel: str
    missing: str
    slack: tuple[str, ...]
    sentence: str


def collapse(
    model: Model,
    slack: SlackSet,
    last: int,
    floor_joints: tuple[str, ...],
) -> Collapse:
    """What moves when the one-way element `last` lets go too, those of `slack` being slack already.

    The counter that is missing is the line between two joints, not joined by a bar and as many
    panels long as the truss's own one-way diagonals, that the motion stretches most for its length;
    where the slack diagonals end in the middle of a halved panel, a line that ends there too.
    """
    members = np.append(slack.members, last)
    matrix = model.slack_matrix[np.ix_(members, members)]
    _, shapes = np.linalg.eigh(matrix)
    motion = shapes[:, 0] * (1.0 if shapes[-1, 0] > 0 else -1.0)
    moved = _joint_motion(model, members, motion)
    names = tuple(
        model.bars[model.element_bar[model.unilateral[i]]].name
        for i, size in zip(members, motion, strict=True)
        if abs(size) > 1e-6
    )
    halved = {
        joint for bar in model.bars if bar.name in names for joint in bar.ends
        if _within(model, joint)
    }
    missing = (_stretched(model, moved, halved) if halved else "") or _stretched(model, moved)
    panel = _panel(model, names, missing, floor_joints)
    stop = f"; a counter {missing} would hold it" if missing else ""
    return Collapse(
        panel=panel,
        missing=missing,
        slack=names,
        sentence=f"panel {panel} can shear, for {_unable(model, names)}{stop}",
    )


def _unable(model: Model, names: tuple[str, ...]) -> str:
    """What the slack bars cannot do, in words."""
    pushed = {bar.name for bar in model.bars if not bar.can_pull}
    said = (
        (", ".join(name for name in names if (name in pushed) is only_push), word)
        for only_push, word in ((False, "push"), (True, "pull"))
    )
    return " and ".join(f"{bars} cannot {word}" for bars, word in said if bars)


def collapse_under(sets: SlackSets, forces: Floats, floor_joints: tuple[str, ...]) -> Collapse:
    """What moves under loads (e,) that no set of working bars can carry.

    The forces are raised until every one-way bar works, then lowered until the mechanism shows.
    """
    walked = lowered(sets, forces)
    last = walked.count[0] - 1
    slack = sets.sets[int(walked.sets[0, last])]
    return collapse(sets.model, slack, END - int(walked.event[0, last]), floor_joints)


def _joint_motion(model: Model, members: Ints, motion: Floats) -> dict[str, Floats]:
    """Joint -> (dx, dy) of the mechanism in which the slack elements shorten."""
    elements = model.unilateral[members]
    gaps = np.zeros(len(model.stiffness))
    gaps[elements] = motion / model.root[members] * model.sense[members]
    # Forces of the gaps with joints held are balanced by moving the joints.
    stiff = (model.equilibrium * model.stiffness) @ model.equilibrium.T
    moved = np.linalg.solve(stiff, -model.equilibrium @ (model.stiffness * gaps))
    result = {joint: np.zeros(2) for joint in model.joints}
    for (joint, axis), row in model.directions.items():
        result[joint][axis] = moved[row]
    return result


def _within(model: Model, joint: str) -> bool:
    """Whether a joint lies inside the web: bars run above it, and others or joints below."""
    x, y = model.joints[joint]
    heights = [h for name, (there, h) in model.joints.items() if there == x and name != joint]
    for bar in model.bars:
        (x1, y1), (x2, y2) = sorted(model.joints[end] for end in bar.ends)
        if joint not in bar.ends and x1 < x < x2:
            heights.append(y1 + (y2 - y1) * (x - x1) / (x2 - x1))
    return any(h > y for h in heights) and any(h < y for h in heights)


def _stretched(
    model: Model, moved: dict[str, Floats], ending: Collection[str] | None = None
) -> str:
    """The line that the motion stretches most; only of those `ending` at some joints, if given."""
    joined = {frozenset(bar.ends) for bar in model.bars}
    columns = sorted({round(x, 6) for x, _ in model.joints.values()})
    place = {x: i for i, x in enumerate(columns)}
    spans = [
        abs(place[round(model.joints[a][0], 6)] - place[round(model.joints[b][0], 6)])
        for a, b in (bar.ends for bar in model.bars if not (bar.can_push and bar.can_pull))
        if model.joints[a][1] != model.joints[b][1]
    ]
    usual = max(set(spans) - {0} or {1}, key=spans.count)
    best, name = 0.0, ""
    joints = sorted(model.joints, key=lambda j: (-model.joints[j][1], model.joints[j][0]))
    for i, upper in enumerate(joints):
        for lower in joints[i + 1 :]:
            a, b = np.array(model.joints[upper]), np.array(model.joints[lower])
            apart = abs(place[round(a[0], 6)] - place[round(b[0], 6)])
            if frozenset((upper, lower)) in joined or apart != usual or a[1] == b[1]:
                continue
            if ending is not None and not {upper, lower} & {*ending}:
                continue
            along = (b - a) / np.hypot(*(b - a))
            stretch = float(along @ (moved[lower] - moved[upper]) / np.hypot(*(b - a)))
            if stretch > best * (1 + 1e-9):
                best, name = stretch, f"{upper}-{lower}"
    return name


def _panel(
    model: Model, slack: tuple[str, ...], missing: str, floor_joints: tuple[str, ...]
) -> str:
    """The floor panel that most of the slack bars cross, by its two floor joints; of several, the
    one nearest to the middle of the missing counter."""
    stations = np.array([model.joints[joint][0] for joint in floor_joints])
    middles = 0.5 * (stations[:-1] + stations[1:])
    spans = [
        sorted(model.joints[end][0] for end in bar.ends) for bar in model.bars if bar.name in slack
    ]
    crossed = sum((((a < middles) & (middles < b)).astype(int) for a, b in spans), 0 * middles)
    where = missing.split("-") if missing else floor_joints
    away = np.abs(middles - np.mean([model.joints[joint][0] for joint in where]))
    i = int(np.lexsort((away, -crossed))[0])
    return f"{floor_joints[i]}-{floor_joints[i + 1]}"
