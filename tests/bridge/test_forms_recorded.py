"""Forms as a record gives them: floor, ends, counters that push, braces that cannot pull."""

from collections.abc import Iterable
from pathlib import Path

import pytest

from eyebar.bridge.parts import Bridge
from eyebar.documents.check import check_document
from eyebar.errors import BadRecord
from eyebar.terms import Form, Kind, RoadPlace
from tests.bridge.begun_bridges import begun_bridge, begun_text


def others(found: Bridge, kind: Kind) -> set[str]:
    return {part.address for part in found.others if part.kind is kind}


def faults(folder: Path, text: str, *changes: tuple[str, str]) -> str:
    """What `eyebar check` says of a record with some of its text replaced."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    file = folder / "form.yaml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(BadRecord) as caught:
        check_document(file)
    return str(caught.value)


def joints(names: Iterable[str], item: str) -> set[str]:
    return {f"floor/{name}/{item}" for name in names}


def test_floorbeams_sit_at_every_joint_of_the_floor_but_those_over_the_bearings() -> None:
    # By hand, four panels: a through truss has three, a deck on upright posts five.
    through = begun_bridge(Form.PRATT, 4)
    assert others(through, Kind.FLOORBEAM) == joints(("L1", "L2", "L3"), "floorbeam")
    upright = begun_bridge(Form.PRATT, 4, ("  floor: on", "  end posts: vertical\n  floor: on"),
                           ("bars: [U1-L0, U3-L4]", "bars: [U0-L0, U4-L4]"),
                           ("bars: [U1..U3]", "bars: [U0..U4]"),
                           ("bars: [U1-L2, U3-L2]", "bars: [U0-L1, U1-L2, U3-L2, U4-L3]"),
                           place=RoadPlace.DECK)
    assert others(upright, Kind.FLOORBEAM) == joints(
        ("U0", "U1", "U2", "U3", "U4"), "floorbeam")
    for truss in upright.trusses:
        (beams,) = [w for w in upright.weights[truss.name] if w.name == "floorbeams"]
        assert set(beams.kip_at_joints) == {"U0", "U1", "U2", "U3", "U4"}
        assert set(truss.supports) == {"L0", "L4"}


def test_a_floor_that_lies_on_a_chord_hangs_from_nothing() -> None:
    assert others(begun_bridge(Form.PRATT, 4), Kind.HANGER)
    assert not others(begun_bridge(Form.PRATT, 4, place=RoadPlace.DECK), Kind.HANGER)


def test_a_truss_that_hangs_rests_on_the_ends_of_its_upper_chord() -> None:
    found = begun_bridge(Form.PARKER, 6, place=RoadPlace.DECK)
    for truss in found.trusses:
        assert set(truss.supports) == {"U0", "U6"}
        assert truss.joints["U0"] == (0.0, 0.0)
        assert truss.joints["L3"][1] < truss.joints["L1"][1] < 0.0


def test_a_floor_may_be_named_joint_by_joint_beside_a_form() -> None:
    # By hand: every second panel point carries a floorbeam.
    found = begun_bridge(Form.PRATT, 6, ("  bearings:", "  floor: [L0, L2, L4, L6]\n  bearings:"))
    assert [joint for joint, _ in found.trusses[0].floor_joints] == ["L0", "L2", "L4", "L6"]


def test_counterbraces_push_where_the_record_says_so() -> None:
    found = begun_bridge(Form.HOWE, 6, counters="U1-L2, U5-L4")
    counters = [bar for bar in found.trusses[0].bars if bar.kind is Kind.COUNTER]
    assert {bar.name for bar in counters} == {"U1-L2", "U5-L4"}
    assert all(bar.can_push for bar in counters)
    only = begun_bridge(Form.HOWE, 6, ("    can push: true\n", ""), counters="U1-L2, U5-L4")
    assert not any(bar.can_push for bar in only.trusses[0].bars if bar.kind is Kind.COUNTER)


def test_braces_that_butt_against_their_blocks_only_push() -> None:
    comment = "    # can pull: false           where it only butts against its blocks\n"
    found = begun_bridge(Form.HOWE, 6, (comment, "    can pull: false\n"))
    braces = [bar for bar in found.trusses[0].bars if bar.kind is Kind.DIAGONAL]
    assert len(braces) == 4
    assert all(bar.can_push and not bar.can_pull for bar in braces)


def test_a_bar_that_can_neither_push_nor_pull_is_refused(tmp_path: Path) -> None:
    text = begun_text(Form.PRATT, 6)
    said = faults(tmp_path, text, ("    bars: [U1-L2, U5-L4, U2-L3, U4-L3]\n",
                         "    bars: [U1-L2, U5-L4, U2-L3, U4-L3]\n    can pull: false\n"))
    assert "leaves U1-L2, U5-L4, U2-L3, U4-L3 nothing to do: they can neither push nor pull" in said


@pytest.mark.parametrize(
    ("word", "change", "said"),
    [
        (Form.PRATT, ("panels: 6 at 15 ft", "panels: 2 at 15 ft"), "'2' panels must be 3 or more"),
        (Form.PRATT, ("  bearings:", "  end posts: none\n  bearings:"),
         "'on the lower chord' must be on the upper chord where a truss hangs"),
        (Form.PRATT, ("  bearings:", "  end posts: leaning\n  bearings:"), "'leaning'"),
        (Form.PRATT, ("  bearings:", "  floor: on top\n  bearings:"), "'on top'"),
        (Form.PRATT, ("  bearings:", "  sub members: sub-ties\n  bearings:"),
         "stand only in a subdivided truss"),
        (Form.PRATT, ("form: Pratt", "form: Whipple"),
         "did you mean 'double-intersection Pratt'?"),
        (Form.PRATT, ("form: Pratt", "form: half-hip Pratt"), "is needed of a half-hip truss"),
        (Form.WARREN, ("bars: [U1..U6]", "bars: [U1..U7]"), "U7"),
        (Form.BALTIMORE, ("kind: hip vertical", "kind: post"), "are: hip verticals"),
    ],
)
def test_what_does_not_fit_a_form_is_told_with_its_cure(
    tmp_path: Path, word: Form, change: tuple[str, str], said: str
) -> None:
    assert said in faults(tmp_path, begun_text(word, 6), change)


def test_half_of_a_warren_is_the_whole() -> None:
    # By hand, six panels: U3 over the third is the image of U4, L2 of L4.
    whole = begun_bridge(Form.WARREN, 6)
    half = begun_bridge(
        Form.WARREN, 6, ("panels: 6 at 15 ft", "panels: 3 at 15 ft\n  mirrored: true"),
        ("bars: [U1..U6]", "bars: [U1..U4]"), ("bars: [L0..L6]", "bars: [L0..L3]"),
        ("bars: [U1-L0, U6-L6]", "bars: [U1-L0]"),
        ("bars: [U1-L1, U2-L1, U2-L2, U3-L2, U3-L3, U4-L3, U4-L4, U5-L4, U5-L5, U6-L5]",
         "bars: [U1-L1, U2-L1, U2-L2, U3-L2, U3-L3]"),
    )
    assert {bar.name for bar in half.trusses[0].bars} == {
        bar.name for bar in whole.trusses[0].bars}
    assert half.trusses[0].joints == whole.trusses[0].joints
