"""What a form of truss is laid out from, what comes of it, and the pieces that forms share.

Joints are named as `record/form_joints.py` says; a bar is named upper joint first. Lengths in
inches, stations in feet. A form that hangs from the ends of its upper chord is another one upside
down: `hung` lays that out and turns it over.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise

from eyebar.addresses import bar_name, ends_of
from eyebar.record.layout import mirrored_joint
from eyebar.terms import EndPosts, FloorOn, Kind, SubMembers

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidBar:
    """One bar as the form lays it: `kinds` are what it may be called, the form's own word first.

    `called` is what the trade calls it, which tells more than the closed list of kinds does.
    """

    name: str
    ends: tuple[str, str]
    kinds: tuple[Kind, ...]
    called: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A truss as its form lays it out, before anything is known of its sections.

    `joints` [in]; `floor_joints` (joint, station in feet); `misplaced` the counters asked for that
    cross no panel as a counter of this form does.
    """

    joints: Mapping[str, Point]
    bars: Mapping[str, LaidBar]
    floor_joints: tuple[tuple[str, float], ...]
    misplaced: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizes:
    """What a form is laid out from: panels from end 0 [in], depths by joint [in], and its kind.

    `hip` is the distance along the road from the bearing to the hip of a half-hip truss [in].
    """

    panels: Sequence[float]
    depths: Mapping[str, float]
    counters: tuple[str, ...] = ()
    end_posts: EndPosts = EndPosts.INCLINED
    floor: FloorOn = FloorOn.LOWER
    hip: float = 0.0
    sub_members: SubMembers = SubMembers.STRUTS

    @property
    def count(self) -> int:
        """How many panels there are."""
        return len(self.panels)

    @property
    def stations(self) -> tuple[float, ...]:
        """The panel points from end 0 [in]."""
        return (0.0, *accumulate(self.panels))

    @property
    def tops(self) -> range:
        """The panel points over which an upper joint stands, where one stands over each."""
        full = self.end_posts is EndPosts.VERTICAL
        return range(self.count + 1) if full else range(1, self.count)


def bar(first: str, second: str, called: str, *kinds: Kind) -> LaidBar:
    """A bar between two joints, its name in the one spelling."""
    name = bar_name(f"{first}-{second}")
    return LaidBar(name=name, ends=ends_of(name), kinds=kinds, called=called)


def both_halves(bars: Iterable[LaidBar], count: int, letters: str = "") -> Iterator[LaidBar]:
    """Bars and their mirror images; `letters` as `mirrored_joint` has them."""
    for one in bars:
        yield one
        first, second = (mirrored_joint(joint, count, letters) for joint in one.ends)
        yield bar(first, second, one.called, *one.kinds)


def chord(letter: str, numbers: Iterable[int]) -> Iterator[LaidBar]:
    """The bars of a chord from joint to joint: `U` above, `L` below."""
    called, kind = ("top chord", Kind.TOP_CHORD) if letter == "U" else (
        "bottom chord", Kind.BOTTOM_CHORD)
    for i, j in pairwise(numbers):
        yield bar(f"{letter}{i}", f"{letter}{j}", called, kind)


def over_panel_points(sizes: Sizes) -> dict[str, Point]:
    """The lower joints on a level line, the upper ones over them."""
    stations = sizes.stations
    lower = {f"L{i}": (station, 0.0) for i, station in enumerate(stations)}
    return lower | {f"U{i}": (stations[i], sizes.depths[f"U{i}"]) for i in sizes.tops}


def laid(
    joints: Mapping[str, Point], bars: Iterable[LaidBar], sizes: Sizes,
    counters: Iterable[LaidBar] = (),
) -> Layout:
    """The layout of joints and bars, with those of the possible counters that are asked for."""
    found = {one.name: one for one in bars}
    possible = {one.name: one for one in counters if one.name not in found}
    misplaced = []
    for name in sizes.counters:
        if name in possible:
            found[name] = possible[name]
        elif name not in found or Kind.COUNTER not in found[name].kinds:
            misplaced.append(name)
    return Layout(
        joints=dict(joints), bars=found, misplaced=tuple(misplaced),
        floor_joints=tuple(
            (joint, joints[joint][0] / 12.0) for joint in _floor(joints, sizes)
        ),
    )


def _floor(joints: Mapping[str, Point], sizes: Sizes) -> list[str]:
    """The joints of the chord that carries the floor; the abutments where it ends short of them."""
    letter = "L" if sizes.floor is FloorOn.LOWER else "U"
    of_chord = [joint for joint in joints if joint[0] == letter]
    ends = [] if letter == "L" or "U0" in joints else ["L0", f"L{sizes.count}"]
    return sorted((*of_chord, *ends), key=lambda joint: joints[joint][0])


def hung(form: Callable[[Sizes], Layout], sizes: Sizes) -> Layout:
    """A form turned over about the line of its bearings: it hangs from the ends of its upper chord.

    What pulled pushes then, and the other way round; so ties become struts and posts rods.
    """
    upright = form(replace(
        sizes, end_posts=EndPosts.INCLINED, floor=FloorOn.LOWER,
        depths={_over(joint): depth for joint, depth in sizes.depths.items()},
        counters=tuple(_bar_over(counter) for counter in sizes.counters),
        sub_members=SubMembers.TIES if sizes.sub_members is SubMembers.STRUTS
        else SubMembers.STRUTS,
    ))
    turned = (_bar_turned(one) for one in upright.bars.values())
    return Layout(
        joints={_over(joint): (x, -y) for joint, (x, y) in upright.joints.items()},
        bars={one.name: one for one in turned},
        floor_joints=tuple((_over(joint), station) for joint, station in upright.floor_joints),
        misplaced=tuple(_bar_over(counter) for counter in upright.misplaced),
    )


_LETTERS = {"U": "L", "L": "U"}
_PAIRS = (
    ("top chord", "bottom chord"), ("hip vertical", "post"), ("vertical rod", "post"),
    ("hanger", "post"), ("king rod", "king post"), ("queen rod", "queen post"),
    ("sub-vertical", "sub-post"), ("sub-strut", "sub-tie"), ("brace", "diagonal"),
    ("counterbrace", "counter"),
)
CALLED_HUNG = {
    **dict(_PAIRS), **{under: upper for upper, under in _PAIRS}, "post": "vertical rod",
    "end post": "end diagonal", "middle counter": "brace",
}
"""What a bar is called -> what its image is called in the truss turned over."""
_KINDS_HUNG = {
    Kind.TOP_CHORD: Kind.BOTTOM_CHORD, Kind.BOTTOM_CHORD: Kind.TOP_CHORD,
    Kind.HIP_VERTICAL: Kind.POST, Kind.POST: Kind.HIP_VERTICAL, Kind.END_POST: Kind.DIAGONAL,
}


def _over(joint: str) -> str:
    return _LETTERS.get(joint[:1], joint[:1]) + joint[1:]


def _bar_over(name: str) -> str:
    return bar_name("-".join(_over(joint) for joint in ends_of(name)))


def _bar_turned(one: LaidBar) -> LaidBar:
    first, second = one.ends
    kinds = dict.fromkeys(_KINDS_HUNG.get(kind, kind) for kind in one.kinds)
    return bar(_over(first), _over(second), CALLED_HUNG.get(one.called, one.called), *kinds)
