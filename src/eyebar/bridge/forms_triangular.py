"""King post and queen post, and the Warren family: triangles, whose bars push and pull in turn."""

from collections.abc import Iterator

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
from eyebar.bridge.forms_pratt import (
    POST_OR_ROD,
    ROD_OR_POST,
    crossing,
    frame,
    hip_vertical,
    leaning_ends,
)
from eyebar.terms import EndPosts, FloorOn, Kind


def king_post(sizes: Sizes) -> Layout:
    """Two braces that lean against each other, and the king rod that hangs from their head."""
    if sizes.end_posts is EndPosts.NONE:
        return hung(king_post, sizes)
    return laid(over_panel_points(sizes), _posts(sizes, "king rod"), sizes)


def queen_post(sizes: Sizes) -> Layout:
    """Two braces and a straining beam between them, with a queen rod under each end of it.

    The middle panel is open unless its diagonals are recorded as counters. Open, it stands only by
    the stiffness of its chords, of which a truss of pin joints has none.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(queen_post, sizes)
    crossed = crossing(sizes, "counter", Kind.COUNTER)
    return laid(over_panel_points(sizes), _posts(sizes, "queen rod"), sizes, crossed)


def warren(sizes: Sizes) -> Layout:
    """A Warren truss without verticals: U1 ... Un, each over the middle of its panel."""
    if sizes.end_posts is EndPosts.NONE:
        return hung(warren, sizes)
    count, stations = sizes.count, sizes.stations
    upright = sizes.end_posts is EndPosts.VERTICAL
    tops = range(count + 2) if upright else range(1, count + 1)
    over = {
        i: (stations[max(i - 1, 0)] + stations[min(i, count)]) / 2.0 for i in tops
    }
    joints = {f"L{i}": (station, 0.0) for i, station in enumerate(stations)}
    joints |= {f"U{i}": (over[i], sizes.depths[f"U{i}"]) for i in tops}
    called, kind = ("web diagonal", Kind.DIAGONAL) if upright else ("end post", Kind.END_POST)
    bars: list[LaidBar] = [
        *chord("U", tops), *chord("L", range(count + 1)),
        *both_halves([bar("U1", "L0", called, kind)], count, "U"),
    ]
    if upright:
        bars += both_halves([bar("U0", "L0", "end post", Kind.END_POST)], count, "U")
    for i in range(1, count + 1):
        bars += [
            bar(f"U{i}", f"L{j}", "web diagonal", Kind.DIAGONAL)
            for j in (i - 1, i) if 0 < j < count
        ]
    return laid(joints, bars, sizes)


def warren_with_verticals(sizes: Sizes) -> Layout:
    """A Warren truss with a vertical at every panel point: L0-U1, U1-L2, L2-U3 and so on.

    A vertical under the meeting of two diagonals is a hanger, one over it a post. With an odd
    number of panels the middle one has both its diagonals, else the halves would not be alike.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(warren_with_verticals, sizes)
    count = sizes.count
    half = [
        _between(i, "U" if i % 2 else "L") for i in range(1, count) if 2 * i + 2 <= count
    ]
    middle = count // 2
    if count % 2:
        half += [_between(middle, "U"), _between(middle, "L")]
    bars = [
        *frame(sizes), *leaning_ends(sizes), *both_halves(half, count), *_verticals(count),
    ]
    return laid(over_panel_points(sizes), bars, sizes)


def double_intersection_warren(sizes: Sizes) -> Layout:
    """Two Warren webs over each other: both diagonals in every panel but the two at the ends.

    Verticals hang from the hips alone. All diagonals push and pull.
    """
    if sizes.end_posts is EndPosts.NONE:
        return hung(double_intersection_warren, sizes)
    count = sizes.count
    hips = both_halves([hip_vertical(1, sizes)], count)
    crossed = (
        bar(one.ends[0], one.ends[1], "web diagonal", Kind.DIAGONAL)
        for one in crossing(sizes, "", Kind.DIAGONAL)
        if {"U0", f"U{count}"}.isdisjoint(one.ends)
    )
    bars = [*frame(sizes), *leaning_ends(sizes), *hips, *crossed]
    return laid(over_panel_points(sizes), bars, sizes)


def _posts(sizes: Sizes, called: str) -> list[LaidBar]:
    """Chords, braces, and a rod under each upper joint; under a deck a post."""
    kinds = ROD_OR_POST
    if sizes.floor is FloorOn.UPPER:
        called, kinds = called.replace("rod", "post"), POST_OR_ROD
    rods = (bar(f"U{i}", f"L{i}", called, *kinds) for i in sizes.tops)
    return [*frame(sizes), *leaning_ends(sizes), *rods]


def _between(i: int, letter: str) -> LaidBar:
    """The diagonal of the panel behind panel point `i`, from the chord of `letter` there."""
    ends = (f"U{i}", f"L{i + 1}") if letter == "U" else (f"U{i + 1}", f"L{i}")
    return bar(*ends, "web diagonal", Kind.DIAGONAL)


def _verticals(count: int) -> Iterator[LaidBar]:
    for i in range(1, count):
        hanger = min(i, count - i) % 2 == 1
        called, kinds = ("hanger", ROD_OR_POST) if hanger else ("post", POST_OR_ROD)
        yield bar(f"U{i}", f"L{i}", called, *kinds)
