import pytest

from eyebar.addresses import (
    Address,
    address,
    bar_address,
    bar_name,
    bars_of,
    joint_of_place,
    nearest_part,
    place_on_part,
)
from eyebar.errors import Unreadable
from eyebar.terms import Kind

# One spelling for each: upper joint first, along a chord the lower number first (house plan, 3).
SPELLINGS = [
    ("upstream/U2-L4", "upstream/U2-L4"),
    ("upstream/L4-U2", "upstream/U2-L4"),
    ("upstream/L3-L2", "upstream/L2-L3"),
    ("upstream/U10-U9", "upstream/U9-U10"),
    ("upstream/L2-M3", "upstream/M3-L2"),
    ("up stream / U2-L4", "up stream/U2-L4"),
    ("upstream/L4-U2 loose", "upstream/U2-L4 loose"),
    ("upstream/L4/pin", "upstream/L4/pin"),
    ("upstream/L4/hanger", "upstream/L4/hanger"),
    ("upstream/L0/bearing", "upstream/L0/bearing"),
    ("floor/panel 6/stringer 4", "floor/panel 6/stringer 4"),
    ("floor/L5/floorbeam", "floor/L5/floorbeam"),
    ("floor/deck", "floor/deck"),
    ("upstream/L4-U2 @ head  L4", "upstream/U2-L4 @ head L4"),
    ("floor/deck@mid", "floor/deck @ mid"),
    ("upstream/U2-L4 @ 4 ft 6 in from L4", "upstream/U2-L4 @ 4 ft 6 in from L4"),
]


@pytest.mark.parametrize(("written", "spelled"), SPELLINGS)
def test_every_part_has_one_spelling(written: str, spelled: str) -> None:
    found = address(written)
    assert str(found) == spelled
    assert address(spelled) == found


def test_the_last_piece_of_a_bars_address_is_its_name() -> None:
    assert address("upstream/L4-U2").name == "U2-L4"
    assert address("upstream/L4-U2 loose @ mid").name == "U2-L4 loose"
    assert bar_address("upstream", "L4-U2") == address("upstream/U2-L4")


def test_an_address_tells_what_it_knows_of_the_part() -> None:
    assert address("floor/panel 6/stringer 4") == Address(
        kind=Kind.STRINGER, panel=6, stringer=4
    )
    assert address("upstream/L4/pin").kind is Kind.PIN
    # What kind of bar it is, the record knows; the address does not.
    assert address("upstream/U2-L4").kind is None


REFUSED = [
    ("U2-L4", "is not the address of a part", "upstream/U2-L4"),
    ("upstream/U2", "is not the name of a bar", "U2-L4"),
    ("upstream/U2-U2", "begins and ends at the same joint", "U2-L4"),
    ("upstream/U2-L4-L5", "is not the name of a bar", "U2-L4"),
    ("upstream/L4/pinn", "names no part at joint L4", "did you mean 'pin'?"),
    ("upstream/L4/pin/head", "names no part at joint L4", "pin"),
    ("floor/L5/floorbem", "names no part of the floor", "floor/L5/floorbeam"),
    ("floor/panel 0/stringer 4", "names no part of the floor", "floor/panel 6/stringer 4"),
    ("upstream/", "is not the address of a part", "upstream/U2-L4"),
    ("up:stream/U2-L4", "cannot be the name of a truss", "letters"),
    ("upstream/4/pin", "cannot be the name of a joint", "L4"),
    ("upstream/U2-L4 @", "has no place after the @", "@ mid"),
    ("upstream/U2-L4 @ heads L4", "is not a place on a part", "did you mean 'head L4'?"),
    ("upstream/U2-L4 @ middle", "is not a place on a part", "mid"),
]


@pytest.mark.parametrize(("text", "rule", "cure"), REFUSED)
def test_what_names_no_part_is_refused_with_the_cure(text: str, rule: str, cure: str) -> None:
    with pytest.raises(Unreadable) as refused:
        address(text)
    assert rule in refused.value.rule
    assert cure in refused.value.cure


def test_a_run_stands_for_the_bars_between_neighbouring_joints() -> None:
    assert bars_of("L0..L3") == ("L0-L1", "L1-L2", "L2-L3")
    assert bars_of("U9..U7") == ("U7-U8", "U8-U9")
    assert bars_of("L4-U2") == ("U2-L4",)


@pytest.mark.parametrize("text", ["L0..U4", "L0..L0", "L0..", "L..L4", "L0..L900", "L0..L2..L4"])
def test_what_is_no_run_of_bars_is_refused(text: str) -> None:
    with pytest.raises(Unreadable):
        bars_of(text)


def test_joints_of_other_letters_stand_between_upper_and_lower() -> None:
    assert bar_name("L1-A1") == "A1-L1"
    assert bar_name("A1-U1") == "U1-A1"
    assert bar_name("B2-A3") == "A3-B2"


def test_a_place_names_its_joint_if_it_has_one() -> None:
    assert joint_of_place("head L4") == "L4"
    assert joint_of_place("4 ft 6 in from U2") == "U2"
    assert joint_of_place("mid") == ""


def test_a_distance_of_a_place_must_be_a_length() -> None:
    with pytest.raises(Unreadable) as refused:
        place_on_part("4 from L4")
    assert "has no unit" in refused.value.rule


def test_the_nearest_part_is_the_cure_for_one_that_is_not_there() -> None:
    known = ("upstream/U2-L4", "downstream/U2-L4")
    assert nearest_part("upstream/U2-L44", known) == "did you mean 'upstream/U2-L4'?"
    assert nearest_part("q", known) == "look at the bars of the members"
