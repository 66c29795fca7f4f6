"""The lines of a truss as one sees them from the road: two chords, what stands between them.

Nothing is known here but joints and which of them a bar joins: no names, no kinds, no sizes.
Lengths in inches; the first coordinate runs along the road, the second one up.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import hypot

from eyebar.bridge.straight import Point, Side, straight_sides
from eyebar.errors import OutOfRange

Bar = tuple[str, str]

CAMBER = 0.0015
"""Part of the span by which a chord may miss its joints and still be drawn straight."""
TAPED = 1.25
"""The same [in] in a short truss: both ends and the joint taped half an inch wrong, and more."""
UPRIGHT = 0.08
"""Run of a bar to its length up to which it counts as standing upright (about 5 degrees)."""


@dataclass(frozen=True)
class Lines:
    """Joints by name, and the bars as pairs of them.

    Raises OutOfRange where a bar ends on no joint, or where there is no way along a chord.
    """

    joints: Mapping[str, Point]
    bars: tuple[Bar, ...]

    def __post_init__(self) -> None:
        for bar in self.bars:
            for joint in bar:
                if joint not in self.joints:
                    raise OutOfRange("joint of a bar", joint, "one of the truss's joints")
        if not self.bars:
            raise OutOfRange("bars", 0, "at least one")

    @cached_property
    def span(self) -> float:
        """Between the outermost joints."""
        along = [x for x, _ in self.joints.values()]
        return max(along) - min(along)

    @cached_property
    def middle(self) -> float:
        """Half-way along."""
        along = [x for x, _ in self.joints.values()]
        return (max(along) + min(along)) / 2.0

    @cached_property
    def lower(self) -> tuple[str, ...]:
        """Joints of the lower edge from the left to the right."""
        return self._edge(-1.0)

    @cached_property
    def upper(self) -> tuple[str, ...]:
        """Joints of the upper edge from the left to the right; end posts that lean are in it."""
        return self._edge(1.0)

    @cached_property
    def inner(self) -> frozenset[str]:
        """Joints on neither edge that a bar ends on."""
        met = {joint for bar in self.bars for joint in bar}
        return frozenset(met.difference(self.lower, self.upper))

    @cached_property
    def verticals(self) -> tuple[Bar, ...]:
        """Bars that stand upright between the edges, those at the very ends apart."""
        return tuple(
            bar for bar in self._web
            if self.upright(bar) and not self._at_an_end(bar)
        )

    @cached_property
    def diagonals(self) -> tuple[Bar, ...]:
        """Bars that lean between the edges; end posts are part of an edge and not here."""
        return tuple(bar for bar in self._web if not self.upright(bar))

    @cached_property
    def leaning(self) -> tuple[bool, bool]:
        """Whether both edges meet in one joint at the left end, and at the right end."""
        return self.lower[0] == self.upper[0], self.lower[-1] == self.upper[-1]

    def upright(self, bar: Bar) -> bool:
        """Whether a bar stands upright."""
        (x, y), (u, v) = (self.joints[joint] for joint in bar)
        return abs(u - x) <= UPRIGHT * hypot(u - x, v - y)

    def turned_over(self) -> "Lines":
        """The same upside down."""
        return Lines({joint: (x, -y) for joint, (x, y) in self.joints.items()}, self.bars)

    def passes(self, bar: Bar) -> int:
        """How many verticals a diagonal crosses between its ends."""
        return sum(self.crosses(bar, other) for other in self.verticals)

    def crosses(self, one: Bar, other: Bar) -> bool:
        """Whether two bars cross between their ends."""
        if not {*one}.isdisjoint(other):
            return False
        a, b = (self.joints[joint] for joint in one)
        c, d = (self.joints[joint] for joint in other)
        return _side(a, b, c) * _side(a, b, d) < 0.0 and _side(c, d, a) * _side(c, d, b) < 0.0

    def falls(self, bar: Bar) -> bool | None:
        """Whether a diagonal falls towards the middle; None where it reaches across it alike."""
        (x, _), (u, _) = sorted((self.joints[joint] for joint in bar), key=lambda at: -at[1])
        high, low = abs(x - self.middle), abs(u - self.middle)
        return None if abs(high - low) <= UPRIGHT * abs(u - x) else high > low

    def sides(self, edge: Sequence[str]) -> tuple[Side, ...]:
        """The straight sides of an edge; joints that stand on a straight line are not counted."""
        within = max(TAPED, CAMBER * self.span)
        return straight_sides([self.joints[joint] for joint in edge], within)

    @cached_property
    def _web(self) -> tuple[Bar, ...]:
        edges = {
            frozenset(pair) for edge in (self.lower, self.upper) for pair in pairwise(edge)
        }
        return tuple(bar for bar in self.bars if frozenset(bar) not in edges)

    def _at_an_end(self, bar: Bar) -> bool:
        ends = ({self.lower[0], self.upper[0]}, {self.lower[-1], self.upper[-1]})
        return {*bar} in ends

    def _edge(self, up: float) -> tuple[str, ...]:
        """From the outermost joint on the left along the bar that turns least from the edge."""
        least = min(x for x, _ in self.joints.values())
        near = UPRIGHT / 10.0 * self.span
        start = max(
            (joint for joint, (x, _) in self.joints.items() if x <= least + near),
            key=lambda joint: up * self.joints[joint][1],
        )
        edge = [start]
        while ahead := self._onward[edge[-1]]:
            edge.append(max(ahead, key=lambda joint: up * self.slope(edge[-1], joint)))
        if self.joints[edge[-1]][0] < least + self.span - near:
            raise OutOfRange("edge of the truss", f"one that stops at {edge[-1]}",
                             "a way from bar to bar from one end to the other")
        return tuple(edge)

    @cached_property
    def _onward(self) -> Mapping[str, tuple[str, ...]]:
        """Joint -> the next ones to the right from which a way leads on to the end."""
        ahead: dict[str, list[str]] = {joint: [] for joint in self.joints}
        for bar in self.bars:
            if not self.upright(bar):
                first, second = sorted(bar, key=lambda joint: self.joints[joint][0])
                ahead[first].append(second)
        last = max(x for x, _ in self.joints.values()) - UPRIGHT / 10.0 * self.span
        onward: dict[str, tuple[str, ...]] = {}
        for joint in sorted(self.joints, key=lambda joint: -self.joints[joint][0]):
            onward[joint] = tuple(
                other for other in ahead[joint]
                if onward[other] or self.joints[other][0] >= last
            )
        return onward

    def slope(self, joint: str, other: str) -> float:
        """How steeply it goes up from one joint to another, further to the right."""
        (x, y), (u, v) = self.joints[joint], self.joints[other]
        return (v - y) / (u - x)


def mirrored(seen: Lines) -> Lines:
    """A truss of which one half alone was seen, from an end to a joint in the middle.

    The last panel point that was seen is taken as the middle, and what stands there stays.
    """
    middle = max(x for x, _ in seen.joints.values())
    near = UPRIGHT / 10.0 * seen.span
    image = {
        joint: joint if x > middle - near else f"{joint}'" for joint, (x, _) in seen.joints.items()
    }
    joints = {
        **seen.joints,
        **{image[joint]: (2.0 * middle - x, y) for joint, (x, y) in seen.joints.items()
           if image[joint] != joint},
    }
    across = [(joint, image[joint]) for joint in _cut_off(seen)]
    bars = dict.fromkeys((*seen.bars, *((image[a], image[b]) for a, b in seen.bars), *across))
    return Lines(joints, tuple(bars))


def _cut_off(seen: Lines) -> list[str]:
    """The joint whose chord runs on over the middle, where the middle has a joint on one alone."""
    last, *below = seen.lower[::-1]
    if seen.upper[-1] != last or not below:
        return []
    before = (seen.upper[-2], below[0])
    steep = [abs(seen.slope(joint, last)) for joint in before]
    return [before[steep.index(max(steep))]] if steep[0] != steep[1] else []


def lines_of(joints: Mapping[str, Point], bars: Iterable[Bar]) -> Lines:
    """Lines from joints and pairs of them, each pair once."""
    once = {frozenset(bar): bar for bar in bars}
    return Lines(dict(joints), tuple(once.values()))


def _side(a: Point, b: Point, c: Point) -> float:
    """On which side of the line from `a` to `b` a point lies; 0 within a hair of it."""
    run, rise = b[0] - a[0], b[1] - a[1]
    found = run * (c[1] - a[1]) - rise * (c[0] - a[0])
    return 0.0 if abs(found) <= 1e-6 * (run * run + rise * rise) else found
