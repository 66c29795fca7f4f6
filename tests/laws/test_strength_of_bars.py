"""What holds for the strength of every bar, whatever its sizes.

Rust never raises the pull of a bar, nor the push of a straight column that loses evenly; a longer
column is never the stronger; lacing that yields never makes a column stronger; neither does an
offset, crookedness or a worse condition.
"""

from dataclasses import replace

from hypothesis import assume, given
from hypothesis import strategies as st

from eyebar.resistance import Condition
from eyebar.sections.shapes import (
    Channel,
    Channels,
    Eyebar,
    Eyebars,
    Lacing,
    Plate,
    Rod,
    Rods,
    RodShape,
    Thread,
    Toes,
)
from eyebar.terms import Level, Method
from tests.resistance.bars import EVERY_LEVEL, bar, greatest_pull, greatest_push, limits_of

By = tuple[Method, Level]
LEVELS = st.sampled_from(EVERY_LEVEL)
PARTS = st.floats(0.5, 1.0)
HAIR = 1 + 1e-12
"""What rounding may make of two equal limits."""


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high)


@st.composite
def eyebar(draw: st.DrawFn) -> Eyebar:
    width = draw(between(2.0, 6.0))
    hole = draw(between(1.5, 4.0))
    return Eyebar(
        width=width, thickness=draw(between(0.5, 2.0)), hole=hole,
        head=hole + draw(between(1.0, 9.0)), beyond=draw(st.none() | between(0.5, 4.0)),
        head_thickness=draw(st.none() | between(0.5, 2.0)),
    )


@st.composite
def channel(draw: st.DrawFn) -> Channel:
    return Channel(
        depth=draw(between(5.0, 12.0)), web=draw(between(0.2, 0.5)),
        flange=draw(between(1.75, 3.5)), flange_thickness=draw(between(0.25, 0.5)),
    )


@st.composite
def laced(draw: st.DrawFn) -> Channels:
    one = draw(channel())
    lacing = Lacing(
        bar=Plate(width=draw(between(1.5, 2.5)), thickness=draw(between(0.25, 0.5))),
        pitch=draw(between(6.0, 20.0)), planes=2,
    )
    return Channels(
        near=one, far=one, apart=draw(between(5.0, 12.0)), toes=Toes.OUT, lacing=lacing
    )


def rusted(one: float | None, part: float) -> float | None:
    return None if one is None else one * part


@given(
    bars=st.lists(eyebar(), min_size=1, max_size=4), parts=st.tuples(*[PARTS] * 5),
    level=LEVELS, place=st.integers(0, 3),
)
def test_rust_on_one_eyebar_never_raises_the_pull_of_the_set(
    bars: list[Eyebar], parts: tuple[float, ...], level: By, place: int
) -> None:
    # Condition: the bar is pulled through its centre, and no hole is worn out to the end.
    place %= len(bars)
    one = bars[place]
    beyond = ((one.head or 0) - (one.hole or 0)) / 2 if one.beyond is None else one.beyond
    assume((one.hole or 0) / parts[3] - (one.hole or 0) < beyond)
    head = max((one.head or 0) * parts[2], (one.hole or 0) / parts[3] + 0.01)
    worn = replace(
        one, thickness=rusted(one.thickness, parts[0]), width=rusted(one.width, parts[1]),
        head=min(head, one.head or 0), hole=(one.hole or 0) / parts[3],
        beyond=rusted(one.beyond, parts[2]), head_thickness=rusted(one.head_thickness, parts[4]),
    )
    assume((worn.head or 0) > (worn.hole or 0))
    before = Eyebars(bars=tuple(bars))
    after = Eyebars(bars=(*bars[:place], worn, *bars[place + 1:]))
    assert greatest_pull(bar(before, left=after, can_push=False), *level) <= (
        greatest_pull(bar(before, can_push=False), *level) * HAIR
    )


@given(
    size=between(0.75, 2.0), root=between(0.6, 2.2), parts=st.tuples(PARTS, PARTS), level=LEVELS,
    number=st.integers(1, 3),
)
def test_rust_on_one_rod_never_raises_the_pull_of_the_set(
    size: float, root: float, parts: tuple[float, float], level: By, number: int
) -> None:
    one = Rod(shape=RodShape.ROUND, size=size, threads=Thread.UPSET, root_diameter=root)
    worn = replace(one, size=size * parts[0], root_diameter=root * parts[1])
    before = Rods(rods=(one,) * number)
    after = Rods(rods=(worn, *before.rods[1:]))
    assert greatest_pull(bar(before, left=after, can_push=False), *level) <= (
        greatest_pull(bar(before, can_push=False), *level) * HAIR
    )


@given(section=laced(), part=PARTS, length=between(60.0, 400.0), level=LEVELS)
def test_even_rust_never_raises_the_push_of_a_straight_laced_column(
    section: Channels, part: float, length: float, level: By
) -> None:
    # Condition: both channels lose alike in web and flanges, and nothing bends the column.
    one = section.near
    worn = replace(
        one, web=rusted(one.web, part), flange_thickness=rusted(one.flange_thickness, part)
    )
    left = replace(section, near=worn, far=worn)
    # The lacing bar is left out: its shear goes with the slenderness, not with the area.
    sound = limits_of(bar(section, length=length), *level)
    rusty = limits_of(bar(section, left=left, length=length), *level)
    for check, limit in rusty.items():
        if check != "lacing bar":
            assert abs(limit.force) <= abs(sound[check].force) * HAIR


@given(
    section=laced(), lengths=st.tuples(between(60.0, 400.0), between(1.0, 2.0)), level=LEVELS,
    bent=st.tuples(between(-1.0, 1.0), st.just(0.0)) | st.tuples(st.just(0.0), between(0.0, 1.0)),
    bow=between(0.0, 1.0),
)
def test_a_longer_column_is_never_the_stronger(
    section: Channels, lengths: tuple[float, float], level: By, bent: tuple[float, float],
    bow: float,
) -> None:
    # Condition: the weight does not relieve a pin offset (the longer bar might gain by it): either
    # the pins lie beside the centre or the bar leans, not both.
    length, times = lengths
    offset, inclined = bent
    checks = [
        limits_of(
            bar(section, length=size, run=inclined * size, pin_offset=offset, bow=bow), *level
        )
        for size in (length, length * times)
    ]
    for check, limit in checks[1].items():
        if limit.sense < 0 and check != "lacing bar":
            assert -limit.force <= -checks[0][check].force * HAIR + 1e-9


@given(section=laced(), length=between(60.0, 400.0), level=LEVELS, weaker=PARTS)
def test_lacing_that_yields_never_makes_a_column_stronger(
    section: Channels, length: float, level: By, weaker: float
) -> None:
    # Condition: the lacing's width alone differs; as stiff ties a cover plate of no thickness.
    lacing = section.lacing
    assert lacing is not None
    thin = replace(lacing, bar=replace(lacing.bar, width=rusted(lacing.bar.width, weaker)))
    stiff = replace(section, lacing=None, cover=Plate(width=8.0, thickness=0.0))
    check = "column out of the plane of the truss"
    forces = [
        -limits_of(bar(one, length=length), *level)[check].force
        for one in (replace(section, lacing=thin), section, stiff)
    ]
    assert forces[0] <= forces[1] * HAIR
    assert forces[1] < forces[2]


@given(
    section=laced(), length=between(60.0, 300.0), level=LEVELS,
    offsets=st.tuples(between(0.0, 2.0), between(0.0, 1.0)), bow=between(0.0, 1.0),
)
def test_more_offset_or_more_crookedness_never_makes_a_bar_stronger(
    section: Channels, length: float, level: By, offsets: tuple[float, float], bow: float
) -> None:
    # Condition: no weight bends the bar the other way (it stands upright).
    small, more = offsets
    straight = greatest_push(bar(section, length=length, pin_offset=small), *level)
    assert greatest_push(bar(section, length=length, pin_offset=small + more), *level) <= (
        straight * HAIR
    )
    assert greatest_push(bar(section, length=length, pin_offset=small, bow=bow), *level) <= (
        straight * HAIR
    )


@given(
    code=st.integers(1, 9), worse=st.integers(0, 8), one=eyebar(), number=st.integers(1, 4),
)
def test_a_worse_condition_never_raises_a_strength(
    code: int, worse: int, one: Eyebar, number: int
) -> None:
    worse = min(code, worse)
    section = bar(Eyebars(bars=(one,) * number), can_push=False)
    pulls = [
        greatest_pull(
            section, *EVERY_LEVEL[-1],
            condition=Condition(superstructure_condition=found, loss_measured=False),
        )
        for found in (code, worse, None)
    ]
    assert pulls[1] <= pulls[0] * HAIR
    assert pulls[2] <= pulls[1] * HAIR
