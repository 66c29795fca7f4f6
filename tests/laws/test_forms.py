"""Laws of the forces in every form, each with its condition.

All bars work both ways here: what goes slack is the matter of other laws.
"""

from collections.abc import Iterator

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.bridge.forms import Layout
from eyebar.record.form_joints import Pattern, between
from eyebar.record.form_words import CURVED, SUBDIVIDED
from eyebar.record.layout import mirrored_bar, mirrored_joint
from eyebar.terms import EndPosts, FloorOn, Form, Kind, SubMembers
from tests.analysis.solving import at_rest
from tests.bridge.forms import (
    bearings,
    called,
    counts,
    drawing,
    equilibrium,
    forces,
    form,
    redundancy,
    ways,
)

Way = dict[str, object]
MOST = 10
some = settings(deadline=None, max_examples=60)


def stable_cases() -> list[tuple[Form, Way]]:
    return [(word, how) for word in Form for how in ways(word)]


def laid(word: Form, count: int, how: Way) -> Layout:
    """The form; a queen post with one of its diagonals, without which it does not stand."""
    counters = ("U1-L2",) if word is Form.QUEEN_POST and how["end_posts"] is not EndPosts.NONE \
        else ("U2-L1",) if word is Form.QUEEN_POST else ()
    return form(word, count, counters=counters, **how)


@st.composite
def layouts(draw: st.DrawFn) -> Layout:
    word, how = draw(st.sampled_from(stable_cases()))
    return laid(word, draw(st.sampled_from(counts(word, MOST))), how)


@st.composite
def weights(draw: st.DrawFn, layout: Layout) -> dict[str, float]:
    return {joint: draw(st.floats(0.0, 20.0)) for joint, _ in layout.floor_joints}


@some
@given(st.data(), layouts())
def test_every_joint_is_in_equilibrium_and_the_reactions_equal_the_loads(
    data: st.DataObject, layout: Layout
) -> None:
    down = data.draw(weights(layout))
    found = at_rest(drawing(layout), down)
    matrix, free = equilibrium(layout)
    along = np.array([found[name] for name in layout.bars])
    hung = np.array([down.get(joint, 0.0) if axis else 0.0 for joint, axis in free])
    assert matrix @ along == pytest.approx(hung, abs=1e-6)
    first, last = bearings(layout)
    (x0, _), (x1, _) = layout.joints[first], layout.joints[last]
    moment = sum(kip * (layout.joints[joint][0] - x0) for joint, kip in down.items())
    far = -sum(
        found[name] * rise / run
        for name, (rise, run) in slopes_at(layout, last)
    )
    assert far + down.get(last, 0.0) == pytest.approx(moment / (x1 - x0), abs=1e-6)


def slopes_at(layout: Layout, joint: str) -> Iterator[tuple[str, tuple[float, float]]]:
    """Bars at a joint with (rise away from it, length)."""
    x, y = layout.joints[joint]
    for bar in layout.bars.values():
        if joint in bar.ends:
            other = bar.ends[1] if bar.ends[0] == joint else bar.ends[0]
            ox, oy = layout.joints[other]
            yield bar.name, (oy - y, float(np.hypot(ox - x, oy - y)))


@some
@given(st.data())
def test_a_mirrored_load_has_mirrored_forces(data: st.DataObject) -> None:
    # Condition: both halves alike, which a queen post with one diagonal is not.
    word, how = data.draw(st.sampled_from(
        [case for case in stable_cases() if case[0] is not Form.QUEEN_POST]))
    count = data.draw(st.sampled_from(counts(word, MOST)))
    layout = laid(word, count, how)
    letters = between(Pattern(
        form=word, count=count, end_posts=how["end_posts"], floor=how["floor"]))
    down = data.draw(weights(layout))
    turned = {mirrored_joint(joint, count, letters): kip for joint, kip in down.items()}
    drawn = drawing(layout)
    here, there = at_rest(drawn, down), at_rest(drawn, turned)
    for name, force in here.items():
        image = mirrored_bar(name, count, letters)
        assert there[image] == pytest.approx(force, abs=1e-6), name


def full(layout: Layout) -> dict[str, float]:
    """Forces under 10 kip on every floor joint."""
    return at_rest(drawing(layout), {joint: 10.0 for joint, _ in layout.floor_joints})


@pytest.mark.parametrize("word", Form)
def test_under_full_load_the_upper_chord_is_pushed_and_the_lower_one_pulled(word: Form) -> None:
    # Common practice. Condition: equal loads on all panels; of a queen post and of bars that carry
    # none by joints (chords over upright posts), not less than nothing.
    for how in ways(word):
        for count in counts(word, MOST):
            layout = laid(word, count, how)
            for name, force in full(layout).items():
                kind = layout.bars[name].kinds[0]
                if kind in (Kind.TOP_CHORD, Kind.END_POST):
                    assert force <= 1e-9, (how, count, name)
                if kind is Kind.BOTTOM_CHORD:
                    assert force >= -1e-9, (how, count, name)


@pytest.mark.parametrize("word", [Form.PRATT, Form.HALF_HIP_PRATT, Form.BALTIMORE])
def test_in_level_pratts_diagonals_pull_and_posts_push(word: Form) -> None:
    # Common practice. Condition: level chords, full load, determinate (no panel crossed); what
    # hangs under a hip pulls, and in a subdivided deck, where no floor hangs there, it pulls too,
    # for the sub-struts stand on its foot.
    for how in ways(word):
        for count in counts(word, 14):
            layout = laid(word, count, how)
            if redundancy(layout):
                continue
            hips = {"U2-L2", f"U{count - 2}-L{count - 2}"} if word in SUBDIVIDED else set()
            for name, force in full(layout).items():
                trade = layout.bars[name].called
                if trade in ("diagonal", "hip diagonal", "end diagonal", "sub-tie",
                             "hip vertical", "sub-vertical"):
                    assert force >= -1e-9, (how, count, name)
                if trade in ("post", "sub-post", "sub-strut") and name not in hips:
                    assert force <= 1e-9, (how, count, name)


def test_in_a_howe_braces_push_and_rods_pull() -> None:
    # Common practice. Condition: level chords, full load, an even number of panels.
    for how in ways(Form.HOWE):
        for count in range(4, 11, 2):
            layout = laid(Form.HOWE, count, how)
            for name, force in full(layout).items():
                if layout.bars[name].called == "brace":
                    assert force <= 1e-9, (how, count, name)
                if layout.bars[name].called in ("vertical rod", "hip vertical"):
                    assert force >= -1e-9, (how, count, name)


def test_in_a_warren_web_bars_push_and_pull_in_turn() -> None:
    # Common practice. Condition: full load; from the bearing inwards, bar after bar.
    for count in range(2, 11):
        found = full(form(Form.WARREN, count))
        inward = [f"U{i}-L{j}" for i in range(1, count + 1) for j in (i - 1, i)][: count]
        signs = [np.sign(found[name]) for name in inward if abs(found[name]) > 1e-9]
        assert signs == [(-1.0) ** (i + 1) for i in range(len(signs))]


@pytest.mark.parametrize("word", [Form.PRATT, Form.HOWE, Form.WARREN, Form.WARREN_WITH_VERTICALS])
def test_web_forces_fall_from_the_ends_to_the_middle_and_chord_forces_grow(word: Form) -> None:
    # Common practice. Condition: one web of one slope, level chords, equal loads, even panels.
    for count in range(4, 11, 2):
        layout = form(word, count)
        found = full(layout)
        web = [
            abs(found[bar.name]) for bar in layout.bars.values()
            if bar.kinds[0] in (Kind.DIAGONAL, Kind.END_POST)
        ]
        x = [
            np.mean([layout.joints[joint][0] for joint in bar.ends])
            for bar in layout.bars.values() if bar.kinds[0] in (Kind.DIAGONAL, Kind.END_POST)
        ]
        half = sorted((at, force) for at, force in zip(x, web, strict=True) if at < 90.0 * count)
        assert (np.diff([force for _, force in half]) <= 1e-9).all()
        chord = [found[f"L{i}-L{i + 1}"] for i in range(count // 2)]
        assert chord == pytest.approx(sorted(chord))


@some
@given(st.data())
def test_a_chord_takes_the_moment_over_its_depth(data: st.DataObject) -> None:
    # By moments, Ritter's section. Condition: one web, one diagonal a panel, falling inwards from
    # U(i): the lower chord of panel i to i + 1 in the left half has its moment about U(i).
    word = data.draw(st.sampled_from([Form.PRATT, Form.PARKER, Form.BOWSTRING]))
    count = data.draw(st.sampled_from([4, 6, 8, 10]))
    panels = data.draw(st.lists(st.floats(120.0, 300.0), min_size=count, max_size=count))
    layout = form(word, panels)
    down = data.draw(weights(layout))
    found = forces(layout, down)
    span = layout.joints[f"L{count}"][0]
    inner = {joint: kip for joint, kip in down.items() if joint not in ("L0", f"L{count}")}
    reaction = sum(k * (span - layout.joints[j][0]) / span for j, k in inner.items())
    for i in range(1, count // 2):
        x, depth = layout.joints[f"U{i}"]
        moment = reaction * x - sum(
            kip * (x - layout.joints[joint][0]) for joint, kip in inner.items()
            if layout.joints[joint][0] < x
        )
        assert found[f"L{i}-L{i + 1}"] * depth == pytest.approx(moment, rel=1e-7, abs=1e-5)


def test_posts_of_a_curved_chord_may_pull_and_that_is_right() -> None:
    # Burr 1902, section 112: under full load the post P3 of his curved-chord truss is pulled by
    # 12,000 lb, P2 and P4 pushed by as much.
    depths = {f"U{i}": 12.0 * d for i, d in enumerate((27, 36, 40, 40, 40, 36, 27), start=1)}
    layout = form(Form.PARKER, [360.0] * 8, depths=depths)
    down = {f"L{i}": 84.0 for i in range(1, 8)} | {f"U{i}": 12.0 for i in range(1, 8)}
    found = forces(layout, down)
    assert found["U3-L3"] == pytest.approx(12.0)
    assert found["U2-L2"] == pytest.approx(-12.0)


@some
@given(st.data())
def test_subdividing_leaves_the_long_panels_chords_as_they_were(data: st.DataObject) -> None:
    # By sections through the long panels beside their even points. Condition: determinate, and
    # loads on the even panel points alone: then sub-members rest and the truss is a plain Pratt.
    sub = data.draw(st.sampled_from(SubMembers))
    count = data.draw(st.sampled_from([8, 12]))
    kips = [data.draw(st.floats(0.0, 20.0)) for _ in range(count // 2 - 1)]
    halved = form(Form.BALTIMORE, count, sub_members=sub)
    plain = form(Form.PRATT, [360.0] * (count // 2))
    assert redundancy(halved) == redundancy(plain) == 0
    fine = forces(halved, {f"L{2 * (i + 1)}": kip for i, kip in enumerate(kips)})
    coarse = forces(plain, {f"L{i + 1}": kip for i, kip in enumerate(kips)})
    for name in called(halved, "sub-strut") | called(halved, "sub-tie"):
        assert fine[name] == pytest.approx(0.0, abs=1e-7)
    for i in range(1, count // 2 - 1):
        assert fine[f"U{2 * i}-U{2 * i + 2}"] == pytest.approx(coarse[f"U{i}-U{i + 1}"], abs=1e-7)
        assert fine[f"L{2 * i}-L{2 * i + 1}"] == pytest.approx(coarse[f"L{i}-L{i + 1}"], abs=1e-7)


@some
@given(st.data())
def test_a_truss_turned_over_has_the_opposite_forces_of_its_counterpart(
    data: st.DataObject,
) -> None:
    # Law: turned over about the line of its bearings, a truss under the same loads on the same
    # panel points has every force of its counterpart with the other sign. Condition: determinate.
    word, other = data.draw(st.sampled_from([
        (Form.PRATT, Form.HOWE), (Form.HOWE, Form.PRATT), (Form.WARREN, Form.WARREN),
        (Form.KING_POST, Form.KING_POST),
        (Form.WARREN_WITH_VERTICALS, Form.WARREN_WITH_VERTICALS),
    ]))
    count = 2 if word is Form.KING_POST else data.draw(st.sampled_from([4, 6, 8]))
    hanging = form(word, count, end_posts=EndPosts.NONE, floor=FloorOn.UPPER)
    standing = form(other, count)
    kips = {i: data.draw(st.floats(0.0, 20.0)) for i in range(count + 1)}
    above = forces(hanging, {f"U{i}": kip for i, kip in kips.items()})
    below = forces(standing, {f"L{i}": kip for i, kip in kips.items()})
    turn = str.maketrans("UL", "LU")
    by_ends = {frozenset(bar.ends): below[bar.name] for bar in standing.bars.values()}
    for bar in hanging.bars.values():
        image = frozenset(joint.translate(turn) for joint in bar.ends)
        assert above[bar.name] == pytest.approx(-by_ends[image], abs=1e-7)


def test_every_form_is_under_these_laws() -> None:
    assert {word for word, _ in stable_cases()} == set(Form)
    assert set(SUBDIVIDED) < set(Form)
    assert set(CURVED) < set(Form)
