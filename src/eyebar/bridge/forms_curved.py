"""Trusses whose chords meet over the bearings: bowstring and lenticular."""

from collections.abc import Iterator
from dataclasses import replace

from eyebar.bridge.forms import LaidBar, Layout, Sizes, bar, chord, laid, over_panel_points
from eyebar.bridge.forms_pratt import ROD_OR_POST, crossing, falling, leaning_ends
from eyebar.terms import Kind

ARCH = (Kind.TOP_CHORD, Kind.END_POST)
"""The first length of an arched chord leans like an end post and is called by either word."""


def bowstring(sizes: Sizes) -> Layout:
    """An arched upper chord whose thrust a level lower chord ties, verticals, and diagonals.

    Laid out are the diagonals that fall towards the middle; those across them are its counters.
    """
    return laid(
        over_panel_points(sizes), _arched(sizes), sizes,
        crossing(sizes, "counter", Kind.COUNTER, Kind.DIAGONAL),
    )


def lenticular(sizes: Sizes) -> Layout:
    """An arched upper chord and a lower one that sags, which meet over the bearings.

    Depths are measured from the line between the bearings, up to U and down to L.
    """
    joints = over_panel_points(sizes)
    for i in range(1, sizes.count):
        joints[f"L{i}"] = (sizes.stations[i], -sizes.depths[f"L{i}"])
    return laid(
        joints, _arched(sizes), sizes,
        crossing(sizes, "counter", Kind.COUNTER, Kind.DIAGONAL),
    )


def _arched(sizes: Sizes) -> Iterator[LaidBar]:
    count = sizes.count
    yield from chord("U", sizes.tops)
    yield from chord("L", range(count + 1))
    for one in leaning_ends(sizes):
        yield replace(one, called="top chord", kinds=ARCH)
    for i in range(1, count):
        yield bar(f"U{i}", f"L{i}", "vertical", *ROD_OR_POST)
    yield from falling(sizes, 1)
