"""What holds for plates, holes, ties and open sections, whatever their sizes.

A thinner plate never carries more; more or wider holes never leave more; a longer column that
twists is never the stronger; thinner ties never raise a limit; a chord that runs on never bends
more between its joints than a hinged one; an offset at one end alone is never worse than at both.
"""

import math
from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from eyebar.bridge.parts import RunsOn, Span
from eyebar.office import shipped_values
from eyebar.resistance.column import push_of_column, thick_column_stress
from eyebar.resistance.continuity import moments_over_joints, weight_over_joints
from eyebar.resistance.punched import Hole, net_width
from eyebar.resistance.rules import rules
from eyebar.resistance.thin_plates import thin_plates
from eyebar.resistance.twisting import bending_stress, least_twisting_stress
from eyebar.sections.local import PlateStrip, StripKind
from eyebar.sections.shapes import (
    Angle,
    Angles,
    Battens,
    Channel,
    Channels,
    Placed,
    Plate,
    Toes,
)
from eyebar.sections.twist import twists
from eyebar.terms import Level, Method
from tests.resistance.bars import EVERY_LEVEL, LACED, SOUND, bar, limits_of

By = tuple[Method, Level]
LEVELS = st.sampled_from(EVERY_LEVEL)
PARTS = st.floats(0.5, 1.0)
HAIR = 1 + 1e-9
"""What rounding may make of two equal limits."""


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high)


@given(
    plate=st.tuples(st.sampled_from(list(StripKind)), between(4.0, 24.0), between(0.1, 0.75)),
    part=PARTS, rest=between(3.0, 30.0), slenderness=between(0.0, 180.0), level=LEVELS,
)
def test_a_thinner_plate_never_makes_a_column_stronger(
    plate: tuple[StripKind, float, float], part: float, rest: float, slenderness: float, level: By
) -> None:
    # Condition: the slenderness is the same (rust on one plate may move the radius of gyration).
    kind, width, thickness = plate
    ruled = rules(*level, values=shipped_values(), condition=SOUND, section=LACED)

    def push(thick: float) -> float:
        area = rest + width * thick
        strip = PlateStrip(name="plate", width=width, thickness=thick, kind=kind)
        found = thin_plates(
            [strip], shipped_values(), area=area, modulus=27_900.0, yield_stress=26.0
        )
        left = found.yields(
            lambda: thick_column_stress(
                ruled.method, slenderness, yield_stress=26.0, modulus=27_900.0
            )
        )
        assert 0.0 < left <= 26.0
        return push_of_column(
            ruled, area, slenderness, yield_stress=left, modulus=27_900.0
        )

    assert push(thickness * part) <= push(thickness) * HAIR


HOLES = st.lists(
    st.builds(Hole, along=between(0.0, 8.0), across=between(1.0, 19.0)), max_size=5
)


@given(holes=HOLES, more=HOLES, rivet=between(0.375, 0.75), wider=between(1.0, 1.25))
def test_more_holes_and_wider_ones_never_leave_more(
    holes: list[Hole], more: list[Hole], rivet: float, wider: float
) -> None:
    left = net_width(20.0, holes, rivet)
    assert net_width(20.0, [*holes, *more], rivet) <= left * HAIR
    assert net_width(20.0, holes, rivet * wider) <= left * HAIR


@given(holes=HOLES, rivet=between(0.375, 0.75))
def test_no_chain_of_holes_leaves_less_than_was_found(holes: list[Hole], rivet: float) -> None:
    # Other method: every subset of the holes, in the order of their distance across the plate.
    # Condition: no two holes exactly as far across, between which no step can be taken.
    across = sorted(holes, key=lambda hole: hole.across)
    least = 20.0
    for chosen in range(2 ** len(across)):
        chain = [hole for place, hole in enumerate(across) if chosen >> place & 1]
        if any(b.across <= a.across for a, b in pairwise(chain)):
            continue
        steps = math.fsum(
            (b.along - a.along) ** 2 / (4 * (b.across - a.across)) for a, b in pairwise(chain)
        )
        least = min(least, 20.0 - len(chain) * (rivet + 0.125) + steps)
    assert abs(net_width(20.0, holes, rivet) - least) < 1e-9


@st.composite
def angles(draw: st.DrawFn) -> Angles:
    one = Angle(
        upright=draw(between(2.5, 6.0)), level=draw(between(2.5, 6.0)),
        upright_thickness=draw(between(0.1875, 0.625)),
        level_thickness=draw(between(0.1875, 0.625)),
    )
    placed, number = draw(
        st.sampled_from(
            [(Placed.SINGLE, 1), (Placed.BACK_TO_BACK, 2), (Placed.STAR, 2), (Placed.STAR, 4)]
        )
    )
    apart = None if placed is Placed.SINGLE else draw(between(0.0, 0.5))
    return Angles(angles=(one,) * number, placed=placed, apart=apart)


@given(
    section=angles(), length=between(30.0, 200.0), longer=between(1.0, 2.0), level=LEVELS
)
def test_a_longer_open_section_is_never_the_stronger(
    section: Angles, length: float, longer: float, level: By
) -> None:
    short, long = (
        limits_of(bar(section, length=one), *level) for one in (length, length * longer)
    )
    for check, limit in long.items():
        if limit.sense < 0:
            assert -limit.force <= -short[check].force * HAIR


@given(section=angles(), length=between(30.0, 200.0))
def test_bending_and_twisting_at_once_takes_no_more_than_either(
    section: Angles, length: float
) -> None:
    # Condition: the same length about all axes; a section without an axis of symmetry bends about
    # its weakest one as well.
    (piece,) = twists(section)
    r_x, r_y = (math.sqrt(one / piece.area) for one in (piece.i_x, piece.i_y))
    stress = least_twisting_stress(
        piece, modulus=27_900.0, in_plane=length / r_x, out_of_plane=length / r_y, length=length
    )
    half = (piece.i_x + piece.i_y) / 2
    polar = 2 * half / piece.area + piece.aside**2 + piece.above**2
    twisting = 27_900.0 / 2.6 * piece.torsion / (piece.area * polar)
    assert stress <= twisting * HAIR
    swing = math.hypot((piece.i_x - piece.i_y) / 2, piece.product)
    if abs(piece.product) > 1e-6:
        least = bending_stress(27_900.0, length / math.sqrt((half - swing) / piece.area))
        assert stress <= least * HAIR


@st.composite
def battened(draw: st.DrawFn) -> Channels:
    one = Channel(
        depth=draw(between(5.0, 12.0)), web=draw(between(0.2, 0.5)),
        flange=draw(between(1.75, 3.5)), flange_thickness=draw(between(0.25, 0.5)),
    )
    return Channels(
        near=one, far=one, apart=draw(between(5.0, 12.0)), toes=Toes.OUT,
        battens=Battens(
            plate=Plate(width=10.0, thickness=draw(between(0.1875, 0.5))),
            length=draw(between(4.0, 12.0)), pitch=draw(between(14.0, 40.0)), planes=2,
        ),
    )


@given(section=battened(), part=PARTS, length=between(80.0, 300.0), level=LEVELS)
def test_thinner_battens_never_raise_a_limit(
    section: Channels, part: float, length: float, level: By
) -> None:
    ties = section.battens
    assert ties is not None
    assert ties.plate.thickness is not None
    thin = replace(
        section,
        battens=replace(ties, plate=replace(ties.plate, thickness=ties.plate.thickness * part)),
    )
    sound = limits_of(bar(section, length=length), *level)
    rusty = limits_of(bar(section, left=thin, length=length), *level)
    for check, limit in rusty.items():
        assert abs(limit.force) <= abs(sound[check].force) * HAIR


SPANS = st.lists(
    st.builds(
        Span, length=between(100.0, 300.0), run=between(60.0, 100.0), area=between(4.0, 20.0),
        density=st.just(480 / 1728), inertia=between(20.0, 300.0),
    ),
    min_size=2, max_size=8,
)


@given(spans=SPANS, place=st.integers(0, 7))
def test_moments_over_joints_keep_a_continuous_beam_whole(
    spans: list[Span], place: int
) -> None:
    # Law: beside each joint the slopes of both spans are one; slopes of a simple beam under a
    # uniform load w and moments M at its ends, both bending up: (w L^3/24 - (2 M + M') L/6) / EI.
    place %= len(spans)
    first, second = weight_over_joints(RunsOn(spans=tuple(spans), place=place), 1.0)
    assert (first == 0.0) == (place == 0)
    assert (second == 0.0) == (place == len(spans) - 1)
    if place == len(spans) - 1:
        return
    _, third = weight_over_joints(RunsOn(spans=tuple(spans), place=place + 1), 1.0)

    def slope(span: Span, here: float, there: float) -> float:
        load = span.area * span.density / 1000 * span.run * span.length**2 / 24
        return (load - (2 * here + there) * span.length / 6) / span.inertia

    left = slope(spans[place], second, first)
    right = slope(spans[place + 1], second, third)
    scale = abs(left) + abs(right) + slope(spans[place], 0.0, 0.0)
    assert abs(left + right) <= 1e-9 * scale


def test_a_beam_of_no_spans_has_no_joints_to_bend_over() -> None:
    assert moments_over_joints([]) == (0.0,)


CHORD = Channel(depth=8.0, web=0.25, flange=2.25, flange_thickness=0.375)


@given(
    offsets=st.tuples(between(0.0, 2.0), between(-1.0, 1.0)), length=between(100.0, 300.0),
    level=LEVELS,
)
def test_an_offset_at_one_end_is_never_worse_than_at_both(
    offsets: tuple[float, float], length: float, level: By
) -> None:
    # Condition: nothing else bends the bar (it stands upright).
    offset, part = offsets
    section = replace(LACED, near=CHORD, far=CHORD)
    both, one = (
        limits_of(
            bar(section, length=length, pin_offset=offset, other_pin_offset=other), *level
        )
        for other in (None, offset * part)
    )
    if "thrust with bending" in both:
        assert -one["thrust with bending"].force >= -both["thrust with bending"].force / HAIR
