"""The form of a truss, recognised from its lines: which features decide, and what stays in doubt.

Rules: the state surveys of old highway bridges (definitions of each type by where diagonals fall,
what they pass, and the slopes of the upper chord), in the order given there; where two forms have
the same lines, both are said. How a chord of a bowstring is told from one that an end post meets
(`SAME_BEND`) is our own rule.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import hypot

from eyebar.bridge.form_rules import SLOPES_OF_A_CAMELBACK
from eyebar.bridge.straight import Side
from eyebar.history.lines import UPRIGHT, Bar, Lines
from eyebar.history.unlike import one_way, unlike
from eyebar.terms import Form

SAME_BEND = 1.6
"""A bowstring's chord bends at its first joint about as it does at the next; where it bends more
than so many times as much, an end post meets a chord there."""
IN_DOUBT = (1.3, 2.2)
"""Between these the bend tells little, and the answer says so."""
STRAIGHT_ON = 0.999
"""Cosine from which two bars make one straight line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recognised:
    """What the lines say.

    `form` None where they fit none of the known ones; `features` what decided, in sentences;
    `doubts` what else it may be; `same_lines` forms that cannot be told from it by lines alone.
    """

    form: Form | None
    features: tuple[str, ...]
    doubts: tuple[str, ...] = ()
    same_lines: tuple[Form, ...] = ()


@dataclass(frozen=True, slots=True)
class _Seen:
    """What the rules look at: the lines with the level chord below, and whether that turned them.

    `outer` are the straight sides of the upper edge, `chord` those of them that are no end post;
    `panels` how many the lower edge has.
    """

    lines: Lines
    hangs: bool
    outer: tuple[Side, ...]
    chord: tuple[Side, ...]
    panels: int

    @property
    def level(self) -> bool:
        """Whether the upper chord is one straight line."""
        return len(self.chord) <= 1

    def falls(self, bar: Bar) -> bool | None:
        """Whether a diagonal falls towards the middle in the truss as it stands."""
        found = self.lines.falls(bar)
        return found if found is None or not self.hangs else not found


def recognised(lines: Lines) -> Recognised:
    """The form of a truss from joints and bars alone.

    Bars of any number and spacing; skew, unequal panels and missing counters do not matter.
    Raises OutOfRange where no way leads along a chord.
    """
    seen = _seen(lines)
    rules: tuple[Callable[[_Seen], Recognised | None], ...] = (
        _halved, _lens, _few_joints, _half_hip, _triangles, _arch, _two_panels, _one_panel,
    )
    for rule in rules:
        found = rule(seen)
        if found:
            return found
    return Recognised(form=None, features=unlike(seen.lines))


def _seen(lines: Lines) -> _Seen:
    straight_below = len(lines.sides(lines.lower)) == 1
    straight_above = len(lines.sides(lines.upper)) == 1
    hangs = all(lines.leaning) and straight_above and not straight_below
    if hangs:
        lines = lines.turned_over()
    outer = lines.sides(lines.upper)
    first, last = (int(meets) for meets in lines.leaning)
    return _Seen(
        lines=lines, hangs=hangs, outer=outer, chord=outer[first:len(outer) - last],
        panels=len(lines.lower) - 1,
    )


def _halved(seen: _Seen) -> Recognised | None:
    """Joints between the chords: subdivided panels, or verticals split by half diagonals."""
    inner = seen.lines.inner
    on_diagonals = {joint for joint in inner if _runs_through(joint, seen.lines, leaning=True)}
    on_verticals = {joint for joint in inner if _runs_through(joint, seen.lines, leaning=False)}
    if on_verticals - on_diagonals:
        return Recognised(form=None, features=(
            "verticals are met in their middle by half diagonals, which make a K: unlike any "
            "known form",
        ))
    if not on_diagonals:
        return None
    halved = "diagonals are held in their middle by joints between the chords: panels are halved"
    if seen.level:
        return Recognised(form=Form.BALTIMORE, features=(halved, "the chords are level"))
    slopes = f"the chord has {_number(len(seen.chord))} slopes, end posts not counted"
    return Recognised(form=Form.PENNSYLVANIA, features=(halved, slopes))


def _lens(seen: _Seen) -> Recognised | None:
    below = len(seen.lines.sides(seen.lines.lower))
    if seen.hangs or below == 1 or len(seen.outer) == 1 or not all(seen.lines.leaning):
        return None
    return Recognised(form=Form.LENTICULAR, features=(
        "both chords are curved and meet at the ends",
    ))


def _few_joints(seen: _Seen) -> Recognised | None:
    tops = len(seen.lines.upper) - 2
    if not all(seen.lines.leaning) or tops > 2 or not seen.lines.verticals:
        return None
    if tops == 1:
        return Recognised(form=Form.KING_POST, features=(
            "one joint stands off the level chord, with a vertical to it",
        ))
    if seen.panels != 3:
        return None
    if seen.lines.diagonals:
        return Recognised(
            form=Form.SMALL_PRATT,
            features=("three panels", "diagonals in the middle panel"),
            doubts=("a queen post whose middle panel was crossed later looks the same",),
            same_lines=(Form.PRATT, Form.QUEEN_POST, Form.HOWE, Form.WARREN_WITH_VERTICALS),
        )
    return Recognised(form=Form.QUEEN_POST, features=(
        "two joints stand off the level chord", "no diagonal in the middle panel",
    ))


def _half_hip(seen: _Seen) -> Recognised | None:
    """The hip stands over no panel point, but posts stand over those further in."""
    lines = seen.lines
    if not lines.verticals or not all(lines.leaning):
        return None
    tops, lower = lines.upper[1:-1], lines.lower
    ends = ((tops[0], lower[0], lower[1]), (tops[-1], lower[-1], lower[-2]))
    within = [
        _between(lines.joints[hip][0], lines.joints[near][0], lines.joints[far][0])
        and not any(hip in bar for bar in lines.verticals)
        for hip, near, far in ends
    ]
    if not all(within):
        return None
    return Recognised(form=Form.HALF_HIP_PRATT, features=(
        "the end posts are shorter than a panel: the hip stands between the bearing and the first "
        "panel point", "no vertical hangs from the hip",
    ))


def _triangles(seen: _Seen) -> Recognised | None:
    """Diagonals that lean to and fro, with verticals or without; one web, or two across it."""
    lines = seen.lines
    hips = {lines.upper[1], lines.upper[-2]}
    inside = [bar for bar in lines.verticals if hips.isdisjoint(bar)]
    crossed = [bar for bar in lines.diagonals if _crossed(bar, lines)]
    several = sum(_mates(bar, lines) > 2 for bar in lines.diagonals)
    if not inside and 2 * several > len(lines.diagonals):
        return Recognised(form=None, features=(
            "each diagonal crosses several others, a lattice of more than two webs: unlike any "
            "known form",
        ))
    if not lines.verticals and lines.diagonals and not crossed and seen.level:
        return Recognised(form=Form.WARREN, features=(
            "diagonals lean to and fro", "there is no vertical",
        ))
    if not inside and seen.panels > 3 and 2 * len(crossed) > len(lines.diagonals):
        return Recognised(form=Form.DOUBLE_INTERSECTION_WARREN, features=(
            "two diagonals cross in every panel", "no vertical stands between the hips",
        ))
    return _to_and_fro(seen)


def _to_and_fro(seen: _Seen) -> Recognised | None:
    """A Warren with verticals: in each half, some diagonals fall towards the middle, some rise."""
    falling, rising = _votes(seen)
    both_ways = falling and rising and seen.level and abs(falling - rising) <= 2
    if not both_ways or one_way(seen.lines):
        return None
    return Recognised(form=Form.WARREN_WITH_VERTICALS, features=(
        "diagonals lean to and fro from panel to panel", "a vertical stands at the panel points",
    ))


def _arch(seen: _Seen) -> Recognised | None:
    """An upper chord in more than three sides that comes down to the bearings in one curve."""
    if not all(seen.lines.leaning) or len(seen.outer) < 4:
        return None
    bend = _first_bend(seen)
    if bend >= SAME_BEND:
        return None
    doubts = (
        "the chord bends a little more at its first joint than at the next: a curved chord on "
        "short end posts looks much the same",
    ) if bend > IN_DOUBT[0] else ()
    return Recognised(
        form=Form.BOWSTRING, doubts=doubts,
        features=(f"the upper chord comes down to the bearings in one curve of "
                  f"{_number(len(seen.outer))} sides",),
    )


def _two_panels(seen: _Seen) -> Recognised | None:
    """Diagonals that pass a vertical."""
    long = [bar for bar in seen.lines.diagonals if seen.lines.passes(bar) == 1]
    longer = [bar for bar in seen.lines.diagonals if seen.lines.passes(bar) > 1]
    if longer and 2 * len(longer) >= len(seen.lines.diagonals):
        return Recognised(form=None, features=(
            "diagonals pass more than one vertical: more than two webs, unlike any known form",
        ))
    if not long or 2 * len(long) < len(seen.lines.diagonals):
        return None
    return Recognised(form=Form.DOUBLE_INTERSECTION_PRATT, features=(
        "diagonals span two panels and pass one vertical",
    ))


def _one_panel(seen: _Seen) -> Recognised | None:
    """Verticals, and one diagonal a panel."""
    if not seen.lines.verticals or not seen.lines.diagonals or one_way(seen.lines):
        return None
    falling, rising = _votes(seen)
    doubts: tuple[str, ...] = ()
    if not falling and not rising:
        doubts = ("every panel is crossed, so the lines do not say which diagonals came first: "
                  "rods that pull make it a Pratt, timbers or struts that push a Howe",)
    elif min(falling, rising):
        doubts = ("some diagonals lean the other way without a mate across them: counters may "
                  "have lost their main diagonals, or the other way round",)
    if rising > falling:
        shape = () if seen.level else ("the chord is not level, which is rare in this form",)
        short = seen.panels in ((4, 5) if seen.hangs else (3,))
        return Recognised(
            form=Form.HOWE, doubts=doubts,
            features=("diagonals rise towards the middle", *shape),
            same_lines=(Form.WARREN_WITH_VERTICALS,) if short else (),
        )
    return _of_the_chord(seen, doubts)


def _of_the_chord(seen: _Seen, doubts: tuple[str, ...]) -> Recognised:
    """Which Pratt it is: by the slopes of the chord that is not the level one."""
    features = ["verticals, and diagonals that fall towards the middle"]
    if seen.level:
        same: tuple[Form, ...] = ()
        if seen.panels == 3:
            same = (Form.SMALL_PRATT, Form.HOWE, Form.WARREN_WITH_VERTICALS)
        if seen.panels in (4, 5) and all(seen.lines.leaning):
            same = (Form.WARREN_WITH_VERTICALS,)
            doubts = (*doubts, "so short, a Warren with verticals has the same lines: there "
                               "the diagonals are stiff, here they are bars or rods that pull")
        features.append("both chords are level")
        return Recognised(
            form=Form.PRATT, features=tuple(features), doubts=doubts, same_lines=same
        )
    count = len(seen.outer)
    if all(seen.lines.leaning) and count == SLOPES_OF_A_CAMELBACK:
        features.append("the chord and the end posts have exactly five slopes")
        return Recognised(
            form=Form.CAMELBACK, features=tuple(features), doubts=doubts, same_lines=(Form.PARKER,)
        )
    features.append(f"the chord and the ends have {_number(count)} slopes")
    if IN_DOUBT[0] < _first_bend(seen) < IN_DOUBT[1]:
        doubts = (*doubts, "the chord bends little more at the hip than elsewhere: a bowstring "
                           "looks much the same")
    return Recognised(form=Form.PARKER, features=tuple(features), doubts=doubts)


def _votes(seen: _Seen) -> tuple[int, int]:
    """(falling, rising) diagonals that no other crosses: those that came first."""
    alone = [
        seen.falls(bar) for bar in seen.lines.diagonals if not _crossed(bar, seen.lines)
    ]
    return alone.count(True), alone.count(False)


def _crossed(bar: Bar, lines: Lines) -> bool:
    return _mates(bar, lines) > 0


def _mates(bar: Bar, lines: Lines) -> int:
    """How many other diagonals one crosses."""
    return sum(lines.crosses(bar, other) for other in lines.diagonals)


def _runs_through(joint: str, lines: Lines, *, leaning: bool) -> bool:
    """Whether two bars meet at a joint in one straight line, one that leans or an upright one."""
    others = [b if a == joint else a for a, b in lines.bars if joint in (a, b)]
    x, y = lines.joints[joint]
    directions = []
    for other in others:
        u, v = lines.joints[other]
        length = hypot(u - x, v - y)
        directions.append(((u - x) / length, (v - y) / length))
    return any(
        a * c + b * d < -STRAIGHT_ON and (abs(a) > UPRIGHT) is leaning
        for i, (a, b) in enumerate(directions) for c, d in directions[i + 1:]
    )


def _first_bend(seen: _Seen) -> float:
    """Bend of the upper edge at its first joint to that at the next, by slope for each length.

    The larger of both ends; a parabola over the road gives 1.
    """
    slopes = [(v - y) / (u - x) for (x, y), (u, v) in seen.outer]
    runs = [u - x for (x, _), (u, _) in seen.outer]
    bends = [
        abs(after - before) / (first + second)
        for before, after, first, second in zip(slopes, slopes[1:], runs, runs[1:], strict=False)
    ]
    return max(bends[0] / bends[1], bends[-1] / bends[-2])


def _between(x: float, one: float, other: float) -> bool:
    least, most = sorted((one, other))
    edge = 0.1 * (most - least)
    return least + edge < x < most - edge


def _number(count: int) -> str:
    words = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
    return words[count] if count < len(words) else str(count)
