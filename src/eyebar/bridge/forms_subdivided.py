"""Subdivided trusses: Pratts of long panels, each halved, with joints in the middle of diagonals.

The Baltimore truss has level chords, the Pennsylvania (Pettit) truss an upper chord of many slopes.
A main panel reaches from one even panel point to the next; in the middle of its diagonal M is held
by a sub-strut from below or a sub-tie from above, and carries the floor there by a sub-vertical.
"""

from collections.abc import Iterator

from eyebar.bridge.forms import LaidBar, Layout, Sizes, bar, both_halves, chord, hung, laid
from eyebar.bridge.forms_pratt import ROD_OR_POST, hip_vertical
from eyebar.terms import EndPosts, FloorOn, Kind, SubMembers

MainPanel = tuple[int, int, int]
"""A main panel by the panel points at its upper joint, its middle and its lower joint."""


def baltimore(sizes: Sizes) -> Layout:
    """A Pratt truss of level chords and halved panels; of a curved chord it is a Pennsylvania."""
    if sizes.end_posts is EndPosts.NONE:
        return hung(_rising, sizes)
    panels = [(a, a + 1, a + 2) for a in _main_points(sizes)]
    return _subdivided(sizes, panels, ("post", Kind.POST))


def _rising(sizes: Sizes) -> Layout:
    """The same with diagonals that rise towards the middle: what hangs is this turned over."""
    panels = [(a + 2, a + 1, a) for a in _main_points(sizes)]
    return _subdivided(sizes, panels, ("vertical rod", *ROD_OR_POST))


def _main_points(sizes: Sizes) -> list[int]:
    """The even panel points from which main panels of the half at end 0 begin."""
    first = 0 if sizes.end_posts is EndPosts.VERTICAL else 2
    return [a for a in range(first, sizes.count, 2) if 2 * a + 4 <= sizes.count]


def _subdivided(
    sizes: Sizes, panels: list[MainPanel], vertical: tuple[str, *tuple[Kind, ...]]
) -> Layout:
    count = sizes.count
    middle = [count // 2 - 1] if count % 4 else []
    halves = [*_ends(sizes), *(half for panel in panels for half in _panel(panel, sizes))]
    for a in middle:
        halves += _all_four((a, a + 1, a + 2), "middle half", Kind.COUNTER, Kind.DIAGONAL)
    bars = [
        *chord("U", _upper(sizes)), *chord("L", _lower(sizes)), *both_halves(halves, count),
        *_verticals(sizes, *vertical), *_sub_verticals(sizes),
    ]
    possible = [
        half for panel in panels for half in _all_four(panel, "counter", Kind.COUNTER)
    ]
    return laid(_joints(sizes, panels), bars, sizes, both_halves(possible, count))


def _panel(panel: MainPanel, sizes: Sizes) -> Iterator[LaidBar]:
    """The diagonal's two halves, and the sub-strut or sub-tie that holds their joint."""
    upper, middle, lower = panel
    yield bar(f"U{upper}", f"M{middle}", "diagonal", Kind.DIAGONAL)
    yield bar(f"M{middle}", f"L{lower}", "diagonal", Kind.DIAGONAL)
    if sizes.sub_members is SubMembers.STRUTS:
        yield bar(f"M{middle}", f"L{upper}", "sub-strut", Kind.DIAGONAL)
    else:
        yield bar(f"U{lower}", f"M{middle}", "sub-tie", Kind.DIAGONAL)


def _all_four(panel: MainPanel, called: str, *kinds: Kind) -> Iterator[LaidBar]:
    """The halves of both diagonals of a main panel."""
    first, middle, last = panel
    for main in (first, last):
        yield bar(f"U{main}", f"M{middle}", called, *kinds)
        yield bar(f"M{middle}", f"L{main}", called, *kinds)


def _ends(sizes: Sizes) -> Iterator[LaidBar]:
    """The end post; where it leans it is halved too, and its middle is always held from below."""
    if sizes.end_posts is EndPosts.VERTICAL:
        yield bar("U0", "L0", "end post", Kind.END_POST)
        return
    yield bar("U2", "M1", "end post", Kind.END_POST)
    yield bar("M1", "L0", "end post", Kind.END_POST)
    yield bar("M1", "L2", "sub-strut", Kind.DIAGONAL)


def _verticals(sizes: Sizes, called: str, *kinds: Kind) -> Iterator[LaidBar]:
    leaning = sizes.end_posts is EndPosts.INCLINED
    for i in range(2, sizes.count, 2):
        if leaning and i in (2, sizes.count - 2):
            yield hip_vertical(i, sizes)
        else:
            yield bar(f"U{i}", f"L{i}", called, *kinds)


def _sub_verticals(sizes: Sizes) -> Iterator[LaidBar]:
    """From M down to the floor, or up to it."""
    for i in range(1, sizes.count, 2):
        if sizes.floor is FloorOn.LOWER:
            yield bar(f"M{i}", f"L{i}", "sub-vertical", Kind.HIP_VERTICAL)
        else:
            yield bar(f"U{i}", f"M{i}", "sub-post", Kind.POST)


def _upper(sizes: Sizes) -> range:
    return sizes.tops if sizes.floor is FloorOn.UPPER else range(
        0 if sizes.end_posts is EndPosts.VERTICAL else 2, sizes.tops.stop, 2)


def _lower(sizes: Sizes) -> range:
    return range(0, sizes.count + 1, 1 if sizes.floor is FloorOn.LOWER else 2)


def _joints(sizes: Sizes, panels: list[MainPanel]) -> dict[str, tuple[float, float]]:
    """Lower, middle and upper joints; M on the straight line of its diagonal or end post."""
    count, stations = sizes.count, sizes.stations
    upper = {f"U{i}": (stations[i], sizes.depths[f"U{i}"]) for i in _upper(sizes)}
    tops = {i: sizes.depths[f"U{i}"] for i in _upper(sizes)}
    lines = {middle: (high, low) for high, middle, low in panels}
    if sizes.end_posts is EndPosts.INCLINED:
        lines[1] = (2, 0)
    lines |= {count - middle: (count - high, count - low) for middle, (high, low) in lines.items()}
    height = {}
    for middle, (high, low) in lines.items():
        run = (stations[middle] - stations[low]) / (stations[high] - stations[low])
        height[middle] = tops[high] * run
    if count % 4:
        centre = count // 2
        height[centre] = (tops[centre - 1] + tops[centre + 1]) / 4.0
    return {
        **{f"L{i}": (stations[i], 0.0) for i in _lower(sizes)},
        **{f"M{i}": (stations[i], height[i]) for i in range(1, count, 2)},
        **upper,
    }
