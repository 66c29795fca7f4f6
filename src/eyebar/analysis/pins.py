"""A pin as a beam on the bars that bear on it: moments and shears along it, in both planes.

Bars pull and push a pin at the middle of their bearings. A pin carries at each joint what its bars
leave over: the load hung on it, which goes to the bearing of the hanger, post or shoe. All forces
are of one place of the load together. Moments and shears are linear in the bars' forces, their
resultants convex, so what `convex.py` says holds for them.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.errors import OutOfRange

BALANCED = 1e-6
"""A packing is out of balance where a bar's shares differ from its whole by more than this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PinBearing:
    """One bearing on a pin, counted from its outer end.

    `along` [in] the middle of the bearing, `thickness` [in]; `bar` the bar's name, or empty for the
    bearing that takes what the bars leave over; `share` [1] its part of that force.
    """

    bar: str
    along: float
    thickness: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PinBeam:
    """Moments and shears of one pin as rows of the forces (b,) of its bars.

    With k bearings: `loads` (k, 2, b) force on the pin at each bearing, `moments` (k, 2, b) at the
    middle of each, `eased` (k, 2, b) the same with every load spread over its thickness,
    `shears` (k, 2, b) just beyond each. The planes are (horizontal, upright); pull is positive.
    """

    bars: tuple[str, ...]
    bearings: tuple[PinBearing, ...]
    loads: Floats
    moments: Floats
    eased: Floats
    shears: Floats


def pin_beam(
    directions: dict[str, tuple[float, float]], bearings: Sequence[PinBearing], *, whole: float,
    pin: str,
) -> PinBeam:
    """The beam of a pin.

    Parameters: `directions` bar -> unit vector (x, y) from this joint to the bar's other end;
    `bearings` from the outer end inwards; `whole` the part of every force that they must carry: 1
    for a pin given over its whole length, 1/2 for one half of a pin alike on both sides.
    Raises OutOfRange where the shares of a bar, or of what is left over, do not make that part, and
    where a pin given over its whole length is left with a moment that no bar can hold.
    """
    bars = tuple(directions)
    _refuse_imbalance(bars, bearings, whole, pin)
    ordered = sorted(bearings, key=lambda one: one.along)
    along = np.array([one.along for one in ordered])
    loads = np.zeros((len(ordered), 2, len(bars)))
    rest = -np.array([directions[bar] for bar in bars]).T.reshape(2, len(bars))
    for row, one in enumerate(ordered):
        if one.bar:
            column = bars.index(one.bar)
            loads[row, :, column] = one.share * np.array(directions[one.bar])
        else:
            loads[row] = one.share * rest
    if whole == 1.0:
        loads += _against_tilting(directions, ordered, loads, pin)
    arm = np.maximum(along[:, None] - along[None, :], 0.0)
    moments = np.einsum("kj,jpb->kpb", arm, loads)
    thickness = np.array([one.thickness for one in ordered])
    return PinBeam(
        bars=bars,
        bearings=tuple(ordered),
        loads=loads,
        moments=moments,
        eased=moments + loads * (thickness / 8.0)[:, None, None],
        shears=np.cumsum(loads, axis=0),
    )


def _against_tilting(
    directions: dict[str, tuple[float, float]], bearings: Sequence[PinBearing], loads: Floats,
    pin: str,
) -> Floats:
    """(k, 2, b) what the shares change by, so that no moment is left beyond a whole pin's end.

    A pin whose bars do not lie alike on both sides tilts until it is in balance: a piece of a bar
    that lies z beside the middle of its bar's pieces is stretched by z times the tilt along the
    bar, and pulls more by as much, all pieces alike stiff. Raises OutOfRange where no bar can hold
    it.
    """
    along = np.array([one.along for one in bearings])
    left = ((along[-1] - along)[:, None, None] * loads).sum(axis=0)
    scale = np.abs(loads).max() * (along[-1] - along[0])
    if np.abs(left).max() <= BALANCED * scale:
        return np.zeros_like(loads)
    named = [one.bar for one in bearings]
    toward = np.array([directions.get(bar, (0.0, 1.0)) for bar in named])
    beside = along - np.array([along[[bar == one for one in named]].mean() for bar in named])
    # The load hung on the pin holds it only where nothing else does.
    for beside_of in (np.where([bool(bar) for bar in named], beside, 0.0), beside):
        holding = np.einsum("k,kp,kq->pq", beside_of**2, toward, toward)
        tilt = np.linalg.pinv(holding, rcond=BALANCED, hermitian=True) @ left
        if np.abs(holding @ tilt - left).max() <= BALANCED * scale:
            more: Floats = np.einsum("k,kp,kq,qb->kpb", beside_of, toward, toward, tilt)
            return more
    raise OutOfRange(
        f"packing of {pin}", "a moment left beyond its end", "bars on both sides that hold it"
    )


def _refuse_imbalance(
    bars: tuple[str, ...], bearings: Sequence[PinBearing], whole: float, pin: str
) -> None:
    for bar in (*bars, ""):
        got = sum(one.share for one in bearings if one.bar == bar)
        if bar == "" and not got:
            continue
        if abs(got - whole) > BALANCED:
            name = bar or "the load hung on the pin"
            raise OutOfRange(
                f"share of {name} in the packing of {pin}", f"{got:g}",
                f"{whole:g}, or the pin is out of balance by {got - whole:+g} of that force",
            )
    strangers = {one.bar for one in bearings} - set(bars) - {""}
    if strangers:
        raise OutOfRange(
            f"packing of {pin}", f"a bearing of {sorted(strangers)[0]}", "of the bars at its joint"
        )


def resultants(rows: Floats, forces: Floats) -> Floats:
    """(..., k) resultants of the two planes, rows (k, 2, b) on forces (..., b)."""
    both = np.einsum("kpb,...b->...kp", rows, forces)
    size: Floats = np.hypot(both[..., 0], both[..., 1])
    return size
