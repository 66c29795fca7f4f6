"""The places of a train of axles where one of them stands over a panel point.

Stringers are simple spans between panel points, so between two neighbouring places the panel loads
are straight lines in the train's position. An axle off the span loads nothing. A varied spacing is
a second coordinate: its places lie on lines in (position, spacing) along which either the spacing
is at one of its ends, or one axle stays over a panel point.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints
from eyebar.errors import OutOfRange
from eyebar.terms import Direction

Spacing = float | tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Places:
    """r places of one train in one direction, as lines of neighbours.

    `front_ft` (r,) station of the front axle; `spacing_ft` (r, a-1); `line` (r,) the line each lies
    on: neighbours r, r+1 on one line have straight panel loads between them; `loads` (r, p) kip
    on each floor joint, down. `varied` is the number of the spacing that varies where the lines are
    all those between which panel loads are straight in position and spacing; otherwise -1.
    """

    direction: Direction
    front_ft: Floats
    spacing_ft: Floats
    line: Ints
    loads: Floats
    varied: int = -1


def places(
    axles_kip: Sequence[float],
    spacings_ft: Sequence[Spacing],
    stations_ft: Floats,
    direction: Direction,
) -> Places:
    """All places of a train on floor joints at `stations_ft` (p,), rising.

    Raises `OutOfRange` where more than one spacing varies.
    """
    varied = [i for i, s in enumerate(spacings_ft) if isinstance(s, tuple) and s[0] < s[1]]
    least = np.array([s[0] if isinstance(s, tuple) else s for s in spacings_ft], dtype=float)
    if len(varied) > 1:
        raise OutOfRange("number of spacings that vary", len(varied), "one at most")
    forward = 1.0 if direction is Direction.UP else -1.0
    if not varied:
        behind = np.concatenate([[0.0], np.cumsum(least)])
        fronts = _sorted(stations_ft[:, None] + forward * behind)
        lines = [(fronts, np.zeros_like(fronts))]
        gap = None
    else:
        gap = varied[0]
        spread = spacings_ft[gap]
        assert isinstance(spread, tuple)
        lines = _lines(least, gap, spread, stations_ft, forward)
    front = np.concatenate([points[0] for points in lines])
    stretch = np.concatenate([points[1] for points in lines])
    number = np.repeat(np.arange(len(lines)), [len(points[0]) for points in lines])
    spacing = np.tile(least, (len(front), 1))
    if gap is not None:
        spacing[:, gap] += stretch
    behind = np.concatenate([np.zeros((len(front), 1)), np.cumsum(spacing, axis=1)], axis=1)
    loads = panel_loads(front[:, None] - forward * behind, np.asarray(axles_kip), stations_ft)
    return Places(
        direction=direction,
        front_ft=front,
        spacing_ft=spacing,
        line=number,
        loads=loads,
        varied=-1 if gap is None else gap,
    )


def _sorted(values: Floats) -> Floats:
    """Values in order, without those nearer than a hundred-millionth of a foot."""
    ordered = np.sort(values, axis=None)
    keep = np.concatenate([[True], np.diff(ordered) > 1e-8])
    kept: Floats = ordered[keep]
    return kept


def _lines(
    least: Floats,
    gap: int,
    spread: tuple[float, float],
    stations: Floats,
    forward: float,
) -> list[tuple[Floats, Floats]]:
    """Lines of places (front, spacing over its least) of a train whose spacing `gap` varies."""
    behind = np.concatenate([[0.0], np.cumsum(least)])
    ahead, rear = behind[: gap + 1], behind[gap + 1 :]
    span = spread[1] - spread[0]
    lines = []
    for end in (0.0, span):
        fronts = _sorted(stations[:, None] + forward * np.concatenate([ahead, rear + end]))
        lines.append((fronts, np.full_like(fronts, end)))
    for front in _sorted(stations[:, None] + forward * ahead):
        stretch = forward * (front - stations[:, None]) - rear
        inside = stretch[(stretch > 0) & (stretch < span)]
        points = _sorted(np.concatenate([[0.0, span], inside]))
        lines.append((np.full_like(points, front), points))
    for rearward in _sorted(stations[:, None] + forward * rear):
        # One rear axle stays over a joint: front = rearward + forward * stretch.
        stretch = forward * (stations[:, None] + forward * ahead - rearward)
        inside = stretch[(stretch > 0) & (stretch < span)]
        points = _sorted(np.concatenate([[0.0, span], inside]))
        lines.append((rearward + forward * points, points))
    return lines


def panel_loads(positions_ft: Floats, axles_kip: Floats, stations_ft: Floats) -> Floats:
    """Loads (..., p) on floor joints from axles (a,) at stations (..., a); off the span, none."""
    panel = np.clip(
        np.searchsorted(stations_ft, positions_ft, "right") - 1, 0, len(stations_ft) - 2
    )
    length = np.diff(stations_ft)[panel]
    far = (positions_ft - stations_ft[panel]) / length
    on = (far >= 0.0) & (far <= 1.0)
    loads = np.zeros((*positions_ft.shape[:-1], len(stations_ft)))
    flat = loads.reshape(-1, len(stations_ft))
    rows = np.repeat(np.arange(len(flat)), positions_ft.shape[-1])
    weight = np.where(on, axles_kip, 0.0)
    np.add.at(flat, (rows, panel.ravel()), (weight * (1.0 - far)).ravel())
    np.add.at(flat, (rows, panel.ravel() + 1), (weight * far).ravel())
    return loads
