"""How one very truss carries its load: the facts behind the words and the drawing.

Forces come from outside, solved; here is asked only what they tell of the truss. Inch, kip; tension
is positive.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist, hypot

from eyebar.formula import Symbol, formula
from eyebar.history.form import recognised
from eyebar.history.lines import Lines, lines_of
from eyebar.history.webs import Web, webs
from eyebar.terms import Form, Kind

LEAN = 1.0
"""By how much a panel is thought to lean [in]."""
ABOUT = 0.15
"""A chord's force that is so near to moment / depth is told as about the same."""
UNLIKE = 0.05
"""Areas that differ less count as one size."""

DOUBLE = (Form.DOUBLE_INTERSECTION_PRATT, Form.DOUBLE_INTERSECTION_WARREN)
"""Forms with two webs over each other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A bar and what it does: its force under dead load, the least and the greatest with a vehicle.

    `area` as built [in2], `modulus` [ksi].
    """

    name: str
    kind: Kind
    ends: tuple[str, str]
    area: float
    modulus: float
    can_push: bool
    dead: float
    least: float
    greatest: float

    @property
    def most(self) -> float:
        """The force of greatest size."""
        return max(self.dead, self.least, self.greatest, key=abs)


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A slanting bar and the corner beside it: three sides that cannot change their shape.

    If its ends leaned `LEAN` past each other along the road it would have to change its length by
    `stretch`; under its greatest force it changes it by `works` [in]. `square`: the corner is one.
    """

    diagonal: str
    corner: str
    high: str
    low: str
    run: float
    rise: float
    square: bool
    stretch: float
    works: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Middle:
    """What bends the truss at the upright nearest to its middle, and what the chords make of it.

    `moment` of the dead load [kip-in], `depth` [in] between the chords, `push` their quotient;
    `upper` and `lower` are the bars of the chords there, `near` those whose force is about that.
    """

    upright: str
    moment: float
    depth: float
    push: float
    upper: str
    lower: str
    near: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Grown:
    """The slightest and the stoutest bar of one kind."""

    kind: Kind
    slight: str
    stout: str


@dataclass(frozen=True, slots=True, kw_only=True)
class How:
    """All that is told of one truss; None where it has no such thing.

    `weight` of the dead load [kip] and what of it rests on the ends, by their joints.
    """

    bars: tuple[Worked, ...]
    weight: float
    rests: Mapping[str, float]
    panel: Panel | None
    middle: Middle | None
    webs: tuple[Web, ...]
    grown: tuple[Grown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """A truss as it was solved: joints [in], bars, supports, dead loads (joint -> kip down)."""

    joints: Mapping[str, tuple[float, float]]
    bars: tuple[Worked, ...]
    supports: Sequence[str]
    loads: Mapping[str, float]

    @property
    def lines(self) -> Lines:
        """Its lines."""
        return lines_of(self.joints, (bar.ends for bar in self.bars))


def how(truss: Loaded) -> How:
    """What forces and lines of a truss tell of how it works."""
    lines = truss.lines
    return How(
        bars=truss.bars,
        weight=sum(truss.loads.values()),
        rests=_rests(truss),
        panel=_panel(truss, lines),
        middle=_middle(truss, lines),
        webs=_webs(truss, lines),
        grown=tuple(_grown(truss.bars)),
    )


@formula(
    "e = sqrt((a + l)**2 + h**2) - sqrt(a**2 + h**2)",
    result=Symbol("growth of the diagonal", "in"),
    a=Symbol("run of a diagonal along the road", "in", "run", low=20.0, high=400.0),
    h=Symbol("rise of a diagonal", "in", "rise", low=50.0, high=500.0),
    l=Symbol("lean of its panel", "in", "lean", low=0.1, high=3.0),
    source="geometry: the diagonal is the long side of a right triangle with run and rise",
)
def growth_of_diagonal(run: float, rise: float, lean: float) -> float:
    """By how much a diagonal would have to grow for its panel to lean [in].

    Run, rise and lean [in]. Scalars or arrays. Limits: none.
    """
    return hypot(run + lean, rise) - hypot(run, rise)


@formula(
    "F = M / h",
    result=Symbol("push of the upper chord, pull of the lower one", "kip"),
    M=Symbol("moment of the load over the middle", "kip in", "moment", low=100.0, high=90000.0),
    h=Symbol("distance between the chords", "in", "between_chords", low=50.0, high=500.0),
    source="equilibrium of one half of a truss whose chords are level there",
)
def chord_force(moment: float, between_chords: float) -> float:
    """Force of two level chords that hold a moment as a couple [kip].

    Moment [kip-in], distance between the chords [in]. Scalars or arrays. Limits: none.
    """
    return moment / between_chords


def _webs(truss: Loaded, lines: Lines) -> tuple[Web, ...]:
    if recognised(lines).form not in DOUBLE:
        return ()
    dead: dict[tuple[str, str], float] = {}
    for bar in truss.bars:  # a set of which a piece is loose is two bars between the same joints
        dead[bar.ends] = dead.get(bar.ends, 0.0) + bar.dead
    return webs(lines, dead)


def _ends(truss: Loaded) -> tuple[str, str]:
    """The two joints that rest on the banks, end 0 first."""
    first, *_, last = sorted(truss.supports, key=lambda joint: truss.joints[joint][0])
    return first, last


def _rests(truss: Loaded) -> dict[str, float]:
    """What of the dead load rests on each end, by moments about end 0."""
    first, last = _ends(truss)
    start, stop = truss.joints[first][0], truss.joints[last][0]
    turning = sum(load * (truss.joints[joint][0] - start) for joint, load in truss.loads.items())
    there = turning / (stop - start)
    return {first: sum(truss.loads.values()) - there, last: there}


def _panel(truss: Loaded, lines: Lines) -> Panel | None:
    """The slanting bar in the half at end 0 that works most; a diagonal beside a post before one
    beside other bars, and an end post only where there is no diagonal."""
    found = [one for bar in truss.bars if (one := _cornered(bar, truss))]
    near = [one for one in found if truss.joints[one.low][0] <= lines.middle + 1.0] or found
    kinds = {bar.name: bar.kind for bar in truss.bars}
    return max(near, default=None, key=lambda one: (
        kinds[one.diagonal] is Kind.DIAGONAL, one.square, round(one.works, 6)
    ))


def _cornered(bar: Worked, truss: Loaded) -> Panel | None:
    """A slanting bar with a joint that bars or a straight chord join to both its ends."""
    if bar.kind not in (Kind.DIAGONAL, Kind.END_POST):
        return None
    low, high = sorted(bar.ends, key=lambda joint: truss.joints[joint][1])
    (x, y), (u, v) = truss.joints[low], truss.joints[high]
    if v - y < 1.0 or abs(u - x) < 1.0:
        return None
    under = _under(truss, high, low)
    corner = under or _third(truss, high, low)
    if corner is None:
        return None
    run, rise, length = abs(u - x), v - y, dist((x, y), (u, v))
    return Panel(
        diagonal=bar.name, corner=corner, high=high, low=low, run=run, rise=rise,
        square=under is not None, stretch=growth_of_diagonal(run, rise, LEAN),
        works=abs(bar.most) * length / (bar.area * bar.modulus),
    )


def _under(truss: Loaded, high: str, low: str) -> str | None:
    """The joint under `high`, at the level of `low`, at the foot of a post."""
    (u, _), (_, y) = truss.joints[high], truss.joints[low]
    return next((
        one for one, (a, b) in truss.joints.items()
        if abs(a - u) < 1.0 and abs(b - y) < 1.0
        and any({one, high} == {*bar.ends} and bar.can_push for bar in truss.bars)
    ), None)


def _third(truss: Loaded, high: str, low: str) -> str | None:
    """A joint with a bar to each of the two."""
    pairs = {frozenset(bar.ends) for bar in truss.bars}
    return next((
        one for one in truss.joints
        if frozenset((one, high)) in pairs and frozenset((one, low)) in pairs
    ), None)


def _middle(truss: Loaded, lines: Lines) -> Middle | None:
    """The upright nearest to the middle, where both chords carry about moment / depth."""
    named = {frozenset(bar.ends): bar for bar in truss.bars}
    upright = min(
        lines.verticals, default=None,
        key=lambda bar: (round(abs(truss.joints[bar[0]][0] - lines.middle), 1),
                         truss.joints[bar[0]][0]),
    )
    if upright is None:
        return None
    low, high = sorted(upright, key=lambda joint: truss.joints[joint][1])
    depth = truss.joints[high][1] - truss.joints[low][1]
    moment = _moment(truss, truss.joints[low][0])
    push = chord_force(moment, depth)
    upper = _chord_bar(truss, lines.upper, high)
    lower = _chord_bar(truss, lines.lower, low)
    if upper is None or lower is None or push <= 0.0:
        return None
    near = tuple(
        bar.name for bar in (upper, lower) if abs(abs(bar.dead) - push) <= ABOUT * push
    )
    return Middle(
        upright=named[frozenset(upright)].name, moment=moment, depth=depth, push=push,
        upper=upper.name, lower=lower.name, near=near,
    ) if near else None


def _moment(truss: Loaded, at: float) -> float:
    """Moment of the dead load over a place, as over a simple beam [kip-in]."""
    first, _ = _ends(truss)
    start = truss.joints[first][0]
    before = sum(
        load * (at - truss.joints[joint][0]) for joint, load in truss.loads.items()
        if truss.joints[joint][0] < at
    )
    return _rests(truss)[first] * (at - start) - before


def _chord_bar(truss: Loaded, edge: Sequence[str], joint: str) -> Worked | None:
    """The bar of an edge at a joint that works most."""
    of_edge = {frozenset(pair) for pair in pairwise(edge)}
    return max(
        (bar for bar in truss.bars if joint in bar.ends and frozenset(bar.ends) in of_edge),
        key=lambda bar: round(abs(bar.dead), 6), default=None,
    )


def _grown(bars: Sequence[Worked]) -> Iterable[Grown]:
    """Kinds whose bars are not all of one size, with the slightest and the stoutest of each."""
    for kind in (Kind.BOTTOM_CHORD, Kind.TOP_CHORD, Kind.DIAGONAL, Kind.POST):
        alike = [bar for bar in bars if bar.kind is kind]
        if len(alike) < 2:
            continue
        slight, stout = min(alike, key=_stoutness), max(alike, key=_stoutness)
        if stout.area > slight.area * (1.0 + UNLIKE) and stout.most * slight.most > 0.0:
            yield Grown(kind=kind, slight=slight.name, stout=stout.name)


def _stoutness(bar: Worked) -> tuple[float, float]:
    return round(bar.area, 3), round(abs(bar.most), 3)
