"""The lack of fit that gives a bar the pull that was measured under dead load."""

from collections.abc import Mapping

import numpy as np

from eyebar.analysis.model import Floats, Model
from eyebar.analysis.paths import SlackSets, paths, solved, starting_sets, ties_split
from eyebar.errors import OutOfRange

GREATEST_KIP = 1e4
ROUNDS = 50
SETTLED_KIP = 1e-9


def lack_of_fit(model: Model, dead: Floats, pulls: Mapping[str, float]) -> dict[str, float]:
    """Bar -> `initial_kip` for which each bar carries its measured pull under dead load.

    Parameters: `dead` (e,) element forces under dead load with all bars working and no lack of fit;
    `pulls` bar -> pull [kip], over 0. One bar after the other is tightened along its own path until
    none moves. Raises `OutOfRange` where no lack of fit gives a pull.
    """
    sets = SlackSets(model)
    column = {model.bars[bar].name: e for e, bar in enumerate(model.element_bar)}
    found = dict.fromkeys(pulls, 0.0)
    projection = np.eye(len(model.stiffness)) - model.influence @ model.equilibrium
    for _ in range(ROUNDS):
        moved = 0.0
        for bar, pull in pulls.items():
            others = sum(
                (projection[:, column[b]] * kip for b, kip in found.items() if b != bar),
                start=np.zeros(len(dead)),
            )
            fixed = dead + model.fixed_forces + ties_split(model) + others
            kip = _tightened(
                sets, fixed, projection[:, column[bar]], element=column[bar], bar=bar, pull=pull
            )
            moved = max(moved, abs(kip - found[bar]))
            found[bar] = kip
        if moved < SETTLED_KIP:
            return found
    raise OutOfRange("measured pulls", dict(pulls), "such that one lack of fit gives them all")


def _tightened(
    sets: SlackSets,
    fixed: Floats,
    unit: Floats,
    *,
    element: int,
    bar: str,
    pull: float,
) -> float:
    """Lack of fit [kip] at which the element's force is the pull, tightened or slackened from 0."""
    start = starting_sets(sets, fixed[None])[0]
    if start is None:
        raise OutOfRange(f"pull of {bar}", pull, "in a truss that stands under its dead load")
    now, _ = solved(sets.model, sets.sets[start], fixed[None])
    way = 1.0 if now[0, element] < pull else -1.0
    walked = paths(
        sets, fixed[None], way * unit[None], start=np.array([start]), cap=GREATEST_KIP
    )
    # A bar's force never falls as the bar is tightened: energy is convex.
    force = walked.forces[0, :, element]
    past = np.flatnonzero(way * (force - pull) >= 0.0)
    if not len(past):
        raise OutOfRange(f"pull of {bar}", pull, "one that a lack of fit can give")
    k = int(past[0])
    if k == 0:
        return 0.0
    rise = (pull - force[k - 1]) / (force[k] - force[k - 1])
    multiple = walked.multiple[0]
    return way * float(multiple[k - 1] + rise * (multiple[k] - multiple[k - 1]))
