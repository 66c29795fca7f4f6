from datetime import date

import pytest

from eyebar.record.layout import (
    bars_in,
    floor_joints,
    joint_names,
    mirrored_bar,
    mirrored_joint,
    panel_count,
    section_on,
)
from tests.record.field_book import SMALL, changed, faults_of, read

# Half of the small record: panels, bars and counters of the half at end 0.
HALF = (
    ("panels: 6 at 14 ft 6 in", "panels: 3 at 14 ft 6 in\n  mirrored: true"),
    ("bars: [U1..U5]", "bars: [U1..U3]"), ("bars: [U1-L0, U5-L6]", "bars: [U1-L0]"),
    ("bars: [L0..L6]", "bars: [L0..L3]"), ("bars: [U1-L1, U5-L5]", "bars: [U1-L1]"),
    ("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U2-L2, U3-L3]"),
    ("bars: [U1-L2, U5-L4]", "bars: [U1-L2]"), ("bars: [U2-L3, U4-L3]", "bars: [U2-L3]"),
)


def test_a_form_has_the_joints_of_its_panels() -> None:
    trusses = read(SMALL).trusses
    assert joint_names(trusses) == (
        "L0", "L1", "L2", "L3", "L4", "L5", "L6", "U1", "U2", "U3", "U4", "U5"
    )
    assert floor_joints(trusses) == ("L0", "L1", "L2", "L3", "L4", "L5", "L6")


@pytest.mark.parametrize(
    ("bar", "panels", "image"),
    # By hand: joint i of n panels is joint n - i of its mirror image.
    [("U1-L2", 10, "U9-L8"), ("U4-L6", 10, "U6-L4"), ("U5-L5", 10, "U5-L5"),
     ("L0-L1", 7, "L6-L7"), ("L3-L4", 7, "L3-L4")],
)
def test_a_bar_has_its_mirror_image(bar: str, panels: int, image: str) -> None:
    assert mirrored_bar(bar, panels) == image
    assert mirrored_bar(image, panels) == bar


def test_a_joint_without_a_number_is_its_own_image() -> None:
    assert mirrored_joint("C", 10) == "C"


def test_half_a_record_speaks_of_the_same_bars_as_the_whole() -> None:
    whole, half = read(SMALL), read(changed(*HALF))
    assert bars_in(half, "upstream") == bars_in(whole, "upstream")
    assert set(joint_names(half.trusses)) == set(joint_names(whole.trusses))


def test_an_image_takes_an_override_and_a_reading_like_any_bar() -> None:
    text = changed(*HALF, ("part: upstream/U1-L2, place: end L2", "part: upstream/U5-L4"))
    text += "overrides:\n  upstream/U5-L4: {section: {plates: [3 in x 5/8 in]}, reason: one}\n"
    (fault,) = faults_of(text)
    assert fault.rule == "is more than the 1 that the part has"


def test_what_the_span_leaves_between_the_halves_is_a_middle_panel() -> None:
    # By hand: 2 x 3 x 14.5 ft = 87 ft; a span of 101 ft 6 in leaves 14 ft 6 in.
    assert panel_count(read(changed(*HALF)).trusses) == 6
    odd = (HALF[0][0], HALF[0][1] + "\n  span: 101 ft 6 in")
    text = changed(odd, ("counters: [U4-L3, U2-L3]", "counters: []"))
    assert panel_count(read(text).trusses) == 7


def test_half_given_joint_by_joint_is_counted_from_its_joint_at_mid_span() -> None:
    joints = (
        "  joints: {L0: [0 ft, 0 ft], L1: [14 ft 6 in, 0 ft], L2: [29 ft, 0 ft],"
        " L3: [43 ft 6 in, 0 ft],\n    U1: [14 ft 6 in, 18 ft], U2: [29 ft, 18 ft],"
        " U3: [43 ft 6 in, 18 ft]}\n  floor: [L0, L1, L2, L3]\n  span: 87 ft\n  mirrored: true\n"
    )
    by_form = "  form: Pratt\n  panels: 3 at 14 ft 6 in\n  mirrored: true\n  depth: 18 ft\n"
    text = changed(*HALF).replace(by_form, joints)
    trusses = read(text).trusses
    assert panel_count(trusses) == 6
    assert floor_joints(trusses) == ("L0", "L1", "L2", "L3", "L4", "L5", "L6")
    assert set(joint_names(trusses)) == set(joint_names(read(SMALL).trusses))


def test_of_two_repairs_on_one_day_the_later_in_the_file_counts() -> None:
    repair = "  - {date: 2022-03-01, what: repair, part: upstream/U1-L2, section: {plates: [%s]}}\n"
    text = SMALL + repair % "4 in x 1/2 in" + repair % "5 in x 1/2 in"
    record = read(text)

    def width(day: date) -> str:
        plates = section_on(record, "upstream/U1-L2", "diagonals", day).plates
        assert plates is not None
        return str(plates[0].width)

    assert width(date(2022, 3, 1)) == "5 in"
    assert width(date(2022, 2, 28)) == "3 in"
