"""The Pratt family: verticals, and diagonals that fall towards the middle and pull.

Here too the Howe truss, its counterpart: diagonals that rise towards the middle and push. Each is
the other turned over.
"""

from collections.abc import Iterable, Iterator

from eyebar.bridge.forms import (
    LaidBar,
    Layout,
    Sizes,
    bar,
    both_halves,
    chord,
    hung,
    laid,
    over_panel_points,
)
from eyebar.terms import EndPosts, FloorOn, Kind

CROSSED = (Kind.COUNTER, Kind.DIAGONAL)
"""With an odd number of panels either diagonal of the middle one is called by either word."""
ROD_OR_POST = (Kind.HIP_VERTICAL, Kind.POST)
POST_OR_ROD = ROD_OR_POST[::-1]


def pratt(sizes: Sizes) -> Layout:
    """A single-intersection Pratt truss: one diagonal a panel, falling towards the middle.

    With an odd number of panels the middle one has both its diagonals. With a curved upper chord
    it is a Parker truss, and with one of five slopes a Camelback.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(howe, sizes)
    bars = [*frame(sizes), *verticals(sizes), *falling(sizes, sizes.tops.start)]
    return laid(over_panel_points(sizes), bars, sizes, crossing(sizes, "counter", Kind.COUNTER))


def half_hip_pratt(sizes: Sizes) -> Layout:
    """A Pratt truss whose end posts are shorter than a panel: the hip stands between panel points.

    No vertical hangs from the hip; its diagonal reaches L1, over which the first post stands. The
    hips are U0 and, of n panels, Un.
    """
    count, stations = sizes.count, sizes.stations
    joints = over_panel_points(sizes)
    joints["U0"] = (sizes.hip, sizes.depths["U0"])
    joints[f"U{count}"] = (stations[-1] - sizes.hip, sizes.depths[f"U{count}"])
    hip = [
        bar("U0", "L0", "end post", Kind.END_POST),
        bar("U0", "L1", "hip diagonal", Kind.DIAGONAL),
    ]
    bars = [
        *chord("U", range(count + 1)), *chord("L", range(count + 1)), *both_halves(hip, count),
        *(bar(f"U{i}", f"L{i}", "post", Kind.POST) for i in range(1, count)),
        *falling(sizes, 1),
    ]
    ordered = {joint: joints[joint] for joint in sorted(joints, key=_by_chord)}
    return laid(ordered, bars, sizes, crossing(sizes, "counter", Kind.COUNTER))


def howe(sizes: Sizes) -> Layout:
    """A Howe truss: braces that rise towards the middle and push, vertical rods that pull.

    With an odd number of panels the middle one has both its braces.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(pratt, sizes)
    count = sizes.count
    braces = [
        bar(f"U{i + 1}", f"L{i}", "brace", Kind.DIAGONAL)
        for i in range(1, count) if 2 * (i + 1) <= count
    ]
    middle = count // 2
    crossed = [
        bar(f"U{middle}", f"L{middle + 1}", "brace", Kind.DIAGONAL, Kind.COUNTER)
    ] if count % 2 else []
    bars = [
        *frame(sizes), *leaning_ends(sizes), *both_halves((*braces, *crossed), count),
        *(bar(f"U{i}", f"L{i}", "vertical rod", *ROD_OR_POST) for i in range(1, count)),
    ]
    return laid(
        over_panel_points(sizes), bars, sizes,
        crossing(sizes, "counterbrace", Kind.COUNTER, Kind.DIAGONAL),
    )


def double_intersection_pratt(sizes: Sizes) -> Layout:
    """A Pratt truss of two web systems: a diagonal passes one vertical and spans two panels.

    Besides these, the hip has a short diagonal to the next panel point. A main diagonal falls
    towards the middle and reaches across it only where it crosses its mirror image on the middle
    panel point itself (U4-L6 and U6-L4 of ten panels); with an odd number of panels none does, and
    what crosses the middle panel is a counter.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(_double_intersection_howe, sizes)
    count, first = sizes.count, sizes.tops.start
    diagonals = [bar(f"U{first}", f"L{first + 1}", "diagonal", Kind.DIAGONAL)]
    diagonals += [
        bar(f"U{i}", f"L{i + 2}", "diagonal", Kind.DIAGONAL)
        for i in range(first, count) if 2 * i + 2 <= count
    ]
    bars = [*frame(sizes), *verticals(sizes), *both_halves(diagonals, count)]
    return laid(over_panel_points(sizes), bars, sizes, _crossing_one_or_two(sizes))


def _double_intersection_howe(sizes: Sizes) -> Layout:
    """The double-intersection Pratt turned over, which nobody builds upright."""
    count = sizes.count
    braces = [
        bar(f"U{i + 2}", f"L{i}", "brace", Kind.DIAGONAL)
        for i in range(count) if 2 * i + 2 <= count
    ]
    bars = [
        *frame(sizes), *leaning_ends(sizes), *both_halves(braces, count),
        *(bar(f"U{i}", f"L{i}", "vertical rod", *ROD_OR_POST) for i in range(1, count)),
    ]
    return laid(over_panel_points(sizes), bars, sizes, _crossing_one_or_two(sizes))


def frame(sizes: Sizes) -> Iterator[LaidBar]:
    """Both chords, and the end posts that stand upright."""
    count = sizes.count
    yield from chord("U", sizes.tops)
    yield from chord("L", range(count + 1))
    if sizes.end_posts is EndPosts.VERTICAL:
        yield bar("U0", "L0", "end post", Kind.END_POST)
        yield bar(f"U{count}", f"L{count}", "end post", Kind.END_POST)


def leaning_ends(sizes: Sizes) -> Iterator[LaidBar]:
    """U1-L0 and its image: end posts, unless upright posts stand before them."""
    upright = sizes.end_posts is EndPosts.VERTICAL
    called, kind = ("brace", Kind.DIAGONAL) if upright else ("end post", Kind.END_POST)
    yield from both_halves([bar("U1", "L0", called, kind)], sizes.count)


def verticals(sizes: Sizes) -> Iterator[LaidBar]:
    """Posts, and under leaning end posts the hip verticals; those end posts themselves."""
    count = sizes.count
    leaning = sizes.end_posts is EndPosts.INCLINED
    if leaning:
        yield from leaning_ends(sizes)
    for i in range(1, count):
        if leaning and i in (1, count - 1):
            yield hip_vertical(i, sizes)
        else:
            yield bar(f"U{i}", f"L{i}", "post", Kind.POST)


def hip_vertical(i: int, sizes: Sizes) -> LaidBar:
    """The vertical under a hip: it hangs its floor joint; under a deck there is none to hang, and
    what a diagonal brings to its foot it must push up.
    """
    if sizes.floor is FloorOn.UPPER:
        return bar(f"U{i}", f"L{i}", "post", *POST_OR_ROD)
    return bar(f"U{i}", f"L{i}", "hip vertical", Kind.HIP_VERTICAL)


def falling(sizes: Sizes, first: int) -> Iterator[LaidBar]:
    """The diagonals of single panels from panel point `first` on, and their images."""
    count = sizes.count
    diagonals = [
        bar(f"U{i}", f"L{i + 1}", "diagonal", Kind.DIAGONAL)
        for i in range(first, count) if 2 * i + 2 <= count
    ]
    middle = count // 2
    if count % 2:
        diagonals.append(bar(f"U{middle}", f"L{middle + 1}", "middle counter", *CROSSED))
    yield from both_halves(diagonals, count)


def crossing(sizes: Sizes, called: str, *kinds: Kind) -> Iterable[LaidBar]:
    """Every diagonal of a single panel that ends on no bearing: what a counter may be."""
    last = sizes.count
    for lower in range(1, last):
        for upper in (lower - 1, lower + 1):
            if upper in sizes.tops:
                yield bar(f"U{upper}", f"L{lower}", called, *kinds)


def _crossing_one_or_two(sizes: Sizes) -> Iterable[LaidBar]:
    for lower in range(1, sizes.count):
        for upper in (lower - 2, lower - 1, lower + 1, lower + 2):
            if upper in sizes.tops:
                yield bar(f"U{upper}", f"L{lower}", "counter", Kind.COUNTER)


def _by_chord(joint: str) -> tuple[str, int]:
    return joint[0], int(joint[1:])
