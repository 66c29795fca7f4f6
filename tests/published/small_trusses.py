"""Textbook trusses of a few bars: joints in the source's own units, all bars working."""

from collections.abc import Mapping, Sequence

from tests.analysis.trusses import Drawing, bar

HELD = (True, True)
"""A joint that cannot move."""


def truss(
    joints: Mapping[str, tuple[float, float]],
    bars: Sequence[tuple[str, float]],
    modulus: float,
    supports: Mapping[str, tuple[bool, bool]],
) -> Drawing:
    """A truss from bars as (name, area), each named after its joints."""
    drawn = tuple(bar(*name.split("-"), area, modulus) for name, area in bars)
    return Drawing(joints=joints, bars=drawn, supports=supports, floor_joints=tuple(joints))
