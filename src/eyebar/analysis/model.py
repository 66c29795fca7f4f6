"""A plane pin-jointed truss as arrays, with all its bars working.

Every bar is one or two *elements*, each of which works both ways or only one way. A bar with a gap
that can both push and pull is a pair: one element that only pulls, one that only pushes.

Forces of a truss whose bars may go slack follow from the forces with all bars working and from what
a unit of slackness in one element does to the others (`slack_effect`); so the stiffness matrix is
factorised once, and a set of slack bars costs no more than a matrix of its own size.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from eyebar.errors import OutOfRange, Unstable

Floats = NDArray[np.float64]

MECHANISM_TOLERANCE = 1e-11
"""A stiffness matrix is singular when its least eigenvalue is under this part of its greatest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ModelBar:
    """One bar as the analysis needs it: area [in2], modulus [ksi], lack of fit [kip] or gap [in].

    `initial_kip` is the force with all joints held where they are unloaded; `gap_in` is the stretch
    (or shortening) before the bar begins to work. One of them at most is other than zero.
    """

    name: str
    ends: tuple[str, str]
    area: float
    modulus: float
    can_push: bool = True
    can_pull: bool = True
    initial_kip: float = 0.0
    gap_in: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Model:
    """A truss ready to be solved; arrays are read-only.

    With n bars, e elements, m one-way elements and d free directions:

    `element_bar` (e,) bar of each element; `unilateral` (m,) element of each one-way element;
    `sense` (m,) +1 where it only pulls, -1 where it only pushes; `stiffness` (e,) EA/L [kip/in];
    `influence` (e, d) force in each element for a unit load, all elements working;
    `fixed_forces` (e,) forces from lack of fit and gaps alone [kip], all elements working;
    `root` (m,) root of the stiffness of the one-way elements; `slack_effect` (m, e) force added to
    each element by a slackness 1/root of one-way element i, in its sense; `slack_matrix` (m, m) the
    same on the one-way elements, in their senses and over their roots: a part of an orthogonal
    projection, so symmetrical, never negative, of the rank of the truss's redundancy.
    """

    bars: tuple[ModelBar, ...]
    joints: Mapping[str, tuple[float, float]]
    supports: Mapping[str, tuple[bool, bool]]
    directions: Mapping[tuple[str, int], int]
    lengths: Floats
    element_bar: NDArray[np.intp]
    unilateral: NDArray[np.intp]
    sense: Floats
    stiffness: Floats
    equilibrium: Floats
    influence: Floats
    fixed_forces: Floats
    root: Floats
    slack_effect: Floats
    slack_matrix: Floats

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the bars, in the order of the force arrays."""
        return tuple(bar.name for bar in self.bars)

    def loads(self, down: Mapping[str, float]) -> Floats:
        """Load vector (d,) of weights hung on joints [kip, down]; weights on supports vanish."""
        vector = np.zeros(len(self.directions))
        for joint, weight in down.items():
            row = self.directions.get((joint, 1))
            if row is not None:
                vector[row] -= weight
        return vector

    def bar_forces(self, elements: Floats) -> Floats:
        """Forces of the bars (..., n) from forces of the elements (..., e)."""
        if len(self.element_bar) == len(self.bars):
            return elements
        gathering = np.zeros((elements.shape[-1], len(self.bars)))
        gathering[np.arange(elements.shape[-1]), self.element_bar] = 1.0
        total: Floats = elements @ gathering
        return total


def model_of(
    joints: Mapping[str, tuple[float, float]],
    bars: Sequence[ModelBar],
    supports: Mapping[str, tuple[bool, bool]],
    *,
    truss: str = "",
) -> Model:
    """The model of a truss.

    Parameters: `joints` name -> (x, y) [in]; `bars`; `supports` joint -> (x held, y held).
    Raises `OutOfRange` for a bar without length, area or modulus, and `Unstable` where the truss
    is a mechanism even with all bars working, naming a joint and its bars.
    """
    ends = np.array([[joints[a], joints[b]] for a, b in (bar.ends for bar in bars)], dtype=float)
    vectors = ends[:, 1] - ends[:, 0]
    lengths = np.hypot(vectors[:, 0], vectors[:, 1])
    _refuse_senseless(bars, lengths)
    directions = _free_directions(joints, supports)
    cosines = vectors / lengths[:, None]

    elements = [pair for index, bar in enumerate(bars) for pair in _elements(index, bar)]
    element_bar = np.array([index for index, _, _ in elements], dtype=np.intp)
    one_way = np.array([sense for _, sense, _ in elements])
    bar_stiffness = np.array([b.area * b.modulus for b in bars]) / lengths
    stiffness = bar_stiffness[element_bar]
    initial = np.array(
        [
            bars[i].initial_kip - side * stiffness[e] * bars[i].gap_in
            for e, (i, _, side) in enumerate(elements)
        ]
    )
    equilibrium = _equilibrium_matrix(bars, cosines, directions)[:, element_bar]
    matrix = (equilibrium * stiffness) @ equilibrium.T
    _refuse_mechanism(matrix, directions, bars, truss)
    influence = stiffness[:, None] * np.linalg.solve(matrix, equilibrium).T
    projection = np.eye(len(elements)) - influence @ equilibrium
    unilateral = np.flatnonzero(one_way)
    sense = one_way[unilateral].astype(float)
    # A slackness s of element i adds stiffness_i * s to its force with the joints held. Measured as
    # s * root(stiffness), with forces over root(stiffness), their mutual effect is symmetrical.
    root = np.sqrt(stiffness[unilateral])
    effect = (projection[:, unilateral] * (root * sense)).T
    slack_matrix = effect[:, unilateral] * sense / root
    return Model(
        bars=tuple(bars),
        joints=dict(joints),
        supports=dict(supports),
        directions=directions,
        lengths=_frozen(lengths),
        element_bar=element_bar,
        unilateral=unilateral,
        sense=_frozen(sense),
        stiffness=_frozen(stiffness),
        equilibrium=_frozen(equilibrium),
        influence=_frozen(influence),
        fixed_forces=_frozen(projection @ initial),
        root=_frozen(root),
        slack_effect=_frozen(effect),
        slack_matrix=_frozen(slack_matrix),
    )


def _frozen(array: Floats) -> Floats:
    array.setflags(write=False)
    return array


def _refuse_senseless(bars: Sequence[ModelBar], lengths: Floats) -> None:
    for bar, length in zip(bars, lengths, strict=True):
        if not length > 0:
            raise OutOfRange(f"length of bar {bar.name}", length, "greater than zero")
        if not bar.area * bar.modulus > 0:
            raise OutOfRange(f"stiffness of bar {bar.name}", bar.area * bar.modulus, "over zero")
        if not (bar.can_push or bar.can_pull):
            raise OutOfRange(f"bar {bar.name}", "unable to push or pull", "able to do one of them")
        if bar.initial_kip and bar.gap_in:
            raise OutOfRange(
                f"bar {bar.name}", "given a lack of fit and a gap", "given one of them"
            )


def _free_directions(
    joints: Mapping[str, tuple[float, float]],
    supports: Mapping[str, tuple[bool, bool]],
) -> dict[tuple[str, int], int]:
    free = [
        (joint, axis)
        for joint in joints
        for axis in (0, 1)
        if not supports.get(joint, (False, False))[axis]
    ]
    return {direction: row for row, direction in enumerate(free)}


def _elements(index: int, bar: ModelBar) -> list[tuple[int, int, int]]:
    """(bar, sense, side of the gap): sense 0 works both ways, side 0 has no gap."""
    if bar.can_push and bar.can_pull:
        return [(index, 1, 1), (index, -1, -1)] if bar.gap_in else [(index, 0, 0)]
    sense = 1 if bar.can_pull else -1
    return [(index, sense, sense)]


def _equilibrium_matrix(
    bars: Sequence[ModelBar],
    cosines: Floats,
    directions: Mapping[tuple[str, int], int],
) -> Floats:
    """(d, n): loads that a unit pull in each bar balances, so that equilibrium @ forces = loads."""
    matrix = np.zeros((len(directions), len(bars)))
    for column, bar in enumerate(bars):
        for end, sign in zip(bar.ends, (-1.0, 1.0), strict=True):
            for axis in (0, 1):
                row = directions.get((end, axis))
                if row is not None:
                    matrix[row, column] += sign * cosines[column, axis]
    return matrix


def _refuse_mechanism(
    matrix: Floats,
    directions: Mapping[tuple[str, int], int],
    bars: Sequence[ModelBar],
    truss: str,
) -> None:
    values, shapes = np.linalg.eigh(matrix) if len(matrix) else (np.ones(1), np.zeros((0, 1)))
    if values[0] > MECHANISM_TOLERANCE * values[-1]:
        return
    names = list(directions)
    joint, axis = names[int(np.argmax(np.abs(shapes[:, 0])))]
    there = tuple(bar.name for bar in bars if joint in bar.ends)
    way = ("sideways", "up and down")[axis]
    of = f"truss {truss}" if truss else "truss"
    raise Unstable(
        f"{of} is unstable: joint {joint} can move {way}; no bar resists it "
        f"(bars there: {', '.join(there) or 'none'}); add the missing bar or support to the record",
        truss=truss,
        joint=joint,
        bars=there,
    )
