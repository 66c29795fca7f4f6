"""What holds of every form, however it ends and wherever its floor lies."""

from collections.abc import Iterator

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.bridge.form_rules import FORMS
from eyebar.errors import OutOfRange
from eyebar.record.form_joints import Pattern, between, depth_joints, floor_of, joints_of
from eyebar.record.form_words import SUBDIVIDED
from eyebar.record.layout import mirrored_bar
from eyebar.terms import CHORD_KINDS, EndPosts, FloorOn, Form, Kind, SubMembers
from tests.bridge.forms import (
    bearings,
    called,
    counts,
    equilibrium,
    form,
    redundancy,
    sizes,
    ways,
)

MOST = 12
Case = tuple[Form, dict[str, object]]


def cases() -> Iterator[Case]:
    for word in Form:
        for how in ways(word):
            yield word, how


def name_of(case: object) -> str:
    if not isinstance(case, tuple):
        return str(case)
    word, how = case
    return f"{word}: {', '.join(str(one) for one in how.values())}"


every = pytest.mark.parametrize("case", list(cases()), ids=name_of)


def pattern(case: Case, count: int) -> Pattern:
    word, how = case
    return Pattern(form=word, count=count, end_posts=how["end_posts"], floor=how["floor"])


@every
def test_the_record_knows_the_joints_that_the_form_lays_out(case: Case) -> None:
    for count in counts(case[0], MOST):
        layout = form(case[0], count, **case[1])
        known = pattern(case, count)
        assert set(layout.joints) == set(joints_of(known))
        assert tuple(joint for joint, _ in layout.floor_joints) == floor_of(known)
        assert set(depth_joints(known)) <= set(layout.joints)


@every
def test_the_floor_goes_from_bearing_to_bearing(case: Case) -> None:
    # By hand: stringers rest on every panel point, and the road is as long as the panels.
    for count in counts(case[0], MOST):
        layout = form(case[0], count, **case[1])
        stations = [station for _, station in layout.floor_joints]
        assert stations[0] == 0.0
        assert stations[-1] == pytest.approx(15.0 * count)
        assert stations == sorted(stations)


@every
def test_every_bar_joins_two_joints_and_bears_their_names(case: Case) -> None:
    for count in counts(case[0], MOST):
        layout = form(case[0], count, **case[1])
        for name, bar in layout.bars.items():
            assert name == bar.name == "-".join(bar.ends)
            assert set(bar.ends) <= set(layout.joints)
            assert bar.called
            assert len(set(bar.kinds)) == len(bar.kinds) > 0
        lines = {frozenset(layout.joints[joint] for joint in b.ends) for b in layout.bars.values()}
        assert len(lines) == len(layout.bars)


@every
def test_a_form_is_its_own_mirror_image(case: Case) -> None:
    # By definition: both halves alike, kinds and names of the trade too.
    for count in counts(case[0], MOST):
        layout = form(case[0], count, **case[1])
        letters = between(pattern(case, count))
        for name, bar in layout.bars.items():
            image = layout.bars[mirrored_bar(name, count, letters)]
            assert (image.kinds, image.called) == (bar.kinds, bar.called)


def expected_redundancy(case: Case, count: int) -> int:
    """By hand: bars + 3 - 2 joints.

    Each panel of a truss of one web adds two joints and four bars; an odd middle panel that is
    crossed has a bar too many. Two webs share both chords: a double Warren has one bar too many; a
    double-intersection Pratt two, and one where the middle panel of an odd number is left open. A
    queen post lacks its middle diagonal.
    """
    word = case[0]
    if word is Form.QUEEN_POST:
        return -1
    if word in (Form.KING_POST, Form.WARREN):
        return 0
    if word is Form.DOUBLE_INTERSECTION_WARREN:
        return 1
    if word is Form.DOUBLE_INTERSECTION_PRATT:
        return 1 if count % 2 else 2
    return (count // 2 if word in SUBDIVIDED else count) % 2


@every
def test_the_statical_degree_is_that_of_the_form(case: Case) -> None:
    for count in counts(case[0], MOST):
        assert redundancy(form(case[0], count, **case[1])) == expected_redundancy(case, count)


@every
@settings(deadline=None, max_examples=12)
@given(data=st.data())
def test_a_form_stands_whatever_its_panels(case: Case, data: st.DataObject) -> None:
    # Law: pinned at one end and on rollers at the other, with all bars working both ways, every
    # joint is held: the equilibrium matrix has full rank. Not so an open queen post.
    word, how = case
    count = data.draw(st.sampled_from(counts(word, 10)))
    half = data.draw(st.lists(st.floats(120, 300), min_size=count, max_size=count))
    panels = [half[min(i, count - 1 - i)] for i in range(count)] if word is Form.CAMELBACK else half
    layout = form(word, panels, **how)
    matrix, free = equilibrium(layout)
    lacks = 1 if word is Form.QUEEN_POST else 0
    assert np.linalg.matrix_rank(matrix) == len(free) - lacks


def test_an_open_queen_post_can_move_and_a_diagonal_holds_it() -> None:
    # By hand: the rectangle of the middle panel shears; one diagonal makes two triangles of it.
    open_panel, _ = equilibrium(form(Form.QUEEN_POST, 3))
    assert np.linalg.matrix_rank(open_panel) == open_panel.shape[0] - 1
    held, _ = equilibrium(form(Form.QUEEN_POST, 3, counters=("U1-L2",)))
    assert np.linalg.matrix_rank(held) == held.shape[0] == held.shape[1]


@every
def test_chords_are_called_chords_and_ends_are_called_end_posts(case: Case) -> None:
    # Common practice: what joins two upper joints is top chord, two lower ones bottom chord; a
    # truss that stands has two end posts (of a subdivided one in two halves each), one that hangs
    # has none. The first lengths of an arch are its chord.
    word, how = case
    for count in counts(word, MOST):
        layout = form(word, count, **how)
        for bar in layout.bars.values():
            letters = {joint[0] for joint in bar.ends}
            if letters in ({"U"}, {"L"}):
                assert bar.kinds[0] in CHORD_KINDS
        ends = called(layout, "end post")
        halves = 2 if word in SUBDIVIDED and how["end_posts"] is EndPosts.INCLINED else 1
        arched = word in (Form.BOWSTRING, Form.LENTICULAR)
        assert len(ends) == (0 if how["end_posts"] is EndPosts.NONE or arched else 2 * halves)
        for joint in bearings(layout):
            assert any(joint in bar.ends for bar in layout.bars.values())


@pytest.mark.parametrize("word", Form)
def test_what_a_form_does_not_allow_is_refused_with_its_word(word: Form) -> None:
    rule = FORMS[word]
    with pytest.raises(OutOfRange, match="for this form") as refused:
        form(word, rule.least - 1)
    assert refused.value.what == "panels"
    for end_posts in set(EndPosts) - set(rule.end_posts):
        with pytest.raises(OutOfRange) as refused:
            form(word, rule.least, end_posts=end_posts, floor=FloorOn.UPPER)
        assert refused.value.what == "end posts"
    for floor in set(FloorOn) - set(rule.floors):
        with pytest.raises(OutOfRange) as refused:
            form(word, rule.least, floor=floor)
        assert refused.value.what == "floor"


@pytest.mark.parametrize("word", [Form.BALTIMORE, Form.PENNSYLVANIA])
def test_halved_panels_are_even_in_number(word: Form) -> None:
    with pytest.raises(OutOfRange, match="an even number"):
        form(word, 9)


def test_a_truss_that_hangs_cannot_carry_its_floor_below() -> None:
    with pytest.raises(OutOfRange, match="hangs from its ends") as refused:
        form(Form.PRATT, 6, end_posts=EndPosts.NONE, floor=FloorOn.LOWER)
    assert refused.value.what == "floor"


def test_a_floor_does_not_lie_on_a_chord_that_is_not_level() -> None:
    with pytest.raises(OutOfRange, match="curve below") as refused:
        form(Form.PARKER, 6, floor=FloorOn.UPPER)
    assert refused.value.what == "floor"


@pytest.mark.parametrize("hip", [0.0, 180.0, 200.0])
def test_a_hip_beyond_its_end_panel_is_refused(hip: float) -> None:
    with pytest.raises(OutOfRange, match="end panel") as refused:
        form(Form.HALF_HIP_PRATT, 4, hip=hip)
    assert refused.value.what == "hip"


def test_a_parker_with_a_level_chord_is_a_pratt() -> None:
    level = dict.fromkeys((f"U{i}" for i in range(1, 6)), 240.0)
    with pytest.raises(OutOfRange, match="curved chord"):
        form(Form.PARKER, 6, depths=level)


@pytest.mark.parametrize(
    ("depths", "slopes"),
    [
        # By hand, eight panels: the slopes of L0-U1-...-U7-L8, neighbours that are alike as one.
        ((200, 240, 240, 240, 240, 240, 200), 5),
        ((200, 220, 240, 240, 240, 220, 200), 5),  # two panels in one line
        ((200, 225, 240, 240, 240, 225, 200), 7),
        ((200, 220, 240, 260, 240, 220, 200), 4),  # a peak, no level part
        ((240, 240, 240, 240, 240, 240, 240), 3),
    ],
)
def test_a_camelback_has_five_slopes_and_no_other(depths: tuple[int, ...], slopes: int) -> None:
    # Oklahoma DOT, Spans of Time: polygonal top chord of exactly five slopes.
    at = {f"U{i}": float(depth) for i, depth in enumerate(depths, start=1)}
    if slopes == 5:
        assert form(Form.CAMELBACK, 8, depths=at).joints["U1"] == (180.0, 200.0)
    else:
        with pytest.raises(OutOfRange, match=f"on {slopes} slopes"):
            form(Form.CAMELBACK, 8, depths=at)


def test_sub_members_change_nothing_but_what_holds_the_diagonals() -> None:
    struts, ties = (
        form(Form.BALTIMORE, 12, sub_members=sub) for sub in SubMembers
    )
    differing = set(struts.bars) ^ set(ties.bars)
    assert {bar.called for bar in (*struts.bars.values(), *ties.bars.values())
            if bar.name in differing} == {"sub-strut", "sub-tie"}
    assert sizes(Form.BALTIMORE, 12).count == 12
    assert Kind.DIAGONAL in struts.bars["M3-L2"].kinds
