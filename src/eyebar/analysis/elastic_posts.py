"""A chord in push that elastic posts hold sideways: the load at which it buckles out of its plane.

The chord is unrolled into a straight line of pieces, each with its own thrust and stiffness. Joints
are held by springs, which are the posts' heads; at some of them the line is hinged.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.errors import OutOfRange
from eyebar.formula import procedure

PARTS = 8
"""Elements of one piece: a half wave over it is then right to a few parts in 100,000."""
LOOSEST = 1e-13
"""A motion this much softer than the stiffest one is held by nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A stretch of chord between two joints: length [in], E I across the truss [kip in2], push
    [kip], which may be below zero."""

    length: float
    rigidity: float
    thrust: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ElasticChord:
    """Pieces in order, and the joints at their ends, one more than pieces.

    `springs` [kip/in]: what a joint takes to be moved sideways by an inch, infinity where it is
    held. `hinged`: whether the line is hinged there; at its two ends, whether it is free to turn.
    """

    pieces: tuple[Piece, ...]
    springs: tuple[float, ...]
    hinged: tuple[bool, ...]

    def __post_init__(self) -> None:
        joints = len(self.pieces) + 1
        if not self.pieces or len(self.springs) != joints or len(self.hinged) != joints:
            raise OutOfRange("joints of the chord", len(self.springs), "one more than its pieces")
        for piece in self.pieces:
            if not (piece.length > 0.0 and piece.rigidity > 0.0):
                raise OutOfRange("length and stiffness of a piece of chord",
                                 f"{piece.length}, {piece.rigidity}", "over zero")
        if any(not spring >= 0.0 for spring in self.springs):
            raise OutOfRange("stiffness of a post's head", min(self.springs), "0 or more")


@procedure(
    "chord on elastic posts",
    source="beam elements with their geometric stiffness, a generalised eigenvalue; the problem is "
    "F. Engesser's (1885), with the thrust of each panel as it is",
    steps=(
        "unroll the chord, with the posts' heads as springs at its joints",
        "stiffness of its pieces in bending, and what a unit of their thrust takes off it",
        "least multiple of the thrusts under which some shape needs no force to hold it",
    ),
)
def buckling_multiple(chord: ElasticChord) -> float:
    """Multiple of all thrusts at which the chord buckles sideways [1].

    Lengths [in], thrusts [kip], springs [kip/in]. 0 where something can move without being held at
    all; infinity where nothing pushes. Scalars. Limits: elastic, pieces straight.
    """
    stiffness, softening = _matrices(chord)
    values, shapes = np.linalg.eigh(stiffness)
    if values[0] <= LOOSEST * values[-1]:
        return 0.0
    scaled = shapes / np.sqrt(values)
    greatest = float(np.linalg.eigvalsh(scaled.T @ softening @ scaled)[-1])
    return 1.0 / greatest if greatest > 0.0 else float("inf")


def _matrices(chord: ElasticChord) -> tuple[Floats, Floats]:
    """Stiffness and what a unit multiple of the thrusts takes off it, (d, d) each.

    Slopes are taken times the chord's mean piece, so that all directions are lengths alike.
    """
    scale = sum(piece.length for piece in chord.pieces) / len(chord.pieces)
    rows, fixed, at_joints = _directions(chord)
    count = len(fixed)
    stiffness, softening = np.zeros((count, count)), np.zeros((count, count))
    for piece, nodes in zip(chord.pieces, rows, strict=True):
        bending, geometric = _element(piece, scale)
        for first, last in pairwise(nodes):
            here = np.ix_((*first, *last), (*first, *last))
            stiffness[here] += bending
            softening[here] += geometric
    for place, spring in zip(at_joints, chord.springs, strict=True):
        stiffness[place, place] += 0.0 if np.isinf(spring) else spring
    free = np.flatnonzero(~np.array(fixed))
    return stiffness[np.ix_(free, free)], softening[np.ix_(free, free)]


def _directions(
    chord: ElasticChord,
) -> tuple[list[list[tuple[int, int]]], list[bool], list[int]]:
    """For each piece its nodes' (place, slope); which of all directions are held; the joints'."""
    fixed: list[bool] = []

    def new(*, held: bool) -> int:
        fixed.append(held)
        return len(fixed) - 1

    joints = [new(held=bool(np.isinf(spring))) for spring in chord.springs]
    last = len(chord.pieces)
    rows: list[list[tuple[int, int]]] = []
    slope = new(held=not chord.hinged[0])
    for i in range(last):
        nodes = [(joints[i], slope)]
        nodes += [(new(held=False), new(held=False)) for _ in range(PARTS - 1)]
        end = i + 1 == last
        slope = new(held=end and not chord.hinged[-1])
        nodes.append((joints[i + 1], slope))
        rows.append(nodes)
        if not end and chord.hinged[i + 1]:
            slope = new(held=False)
    return rows, fixed, joints


def _element(piece: Piece, scale: float) -> tuple[Floats, Floats]:
    """Bending and geometric stiffness of one element of a piece, (4, 4) each."""
    part = piece.length / PARTS
    turn = part / scale
    weights = np.array([1.0, turn, 1.0, turn])
    bending = np.array([
        [12.0, 6.0, -12.0, 6.0], [6.0, 4.0, -6.0, 2.0],
        [-12.0, -6.0, 12.0, -6.0], [6.0, 2.0, -6.0, 4.0],
    ]) * piece.rigidity / part**3
    geometric = np.array([
        [36.0, 3.0, -36.0, 3.0], [3.0, 4.0, -3.0, -1.0],
        [-36.0, -3.0, 36.0, -3.0], [3.0, -1.0, -3.0, 4.0],
    ]) * piece.thrust / (30.0 * part)
    both = np.outer(weights, weights)
    return bending * both, geometric * both
