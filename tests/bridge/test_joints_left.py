"""Pin plates and splices as readings leave them; a jaw that nobody measured."""

import pytest

from eyebar.bridge.parts import Bar, Bridge
from eyebar.sections.pieces import Plate
from tests.bridge.plain import bar_of, bridge, refused

SPLICED = "    spliced at: [U3]\n"
JOINED = SPLICED + (
    "    pin plates: {plate: 8 in x 1/2 in, hole: 2 1/2 in, beyond hole: 3 in}\n"
    "    splice: {butted: false, plates: [6 in x 3/8 in, 5 in x 1/4 in]}\n"
)
NO_READINGS = "    readings: []\n"


def read(*readings: str, part: str = "left/U2-U3", later: tuple[str, ...] = ()) -> Bridge:
    """The bridge with a chord that has pin plates and a splice, and readings of one or two days."""
    said = "".join(f"      - {{part: {part}, {one}}}\n" for one in readings)
    text = f"    readings:\n{said}" if readings else NO_READINGS
    if later:
        said = "".join(f"      - {{part: {part}, {one}}}\n" for one in later)
        text += f"  - date: 2024-06-01\n    by: crew\n    readings:\n{said}"
    return bridge((SPLICED, JOINED), (NO_READINGS, text))


def chord(found: Bridge, truss: str = "left") -> Bar:
    return bar_of(found, "U2-U3", truss)


def test_readings_thin_the_pin_plates_of_the_bar_that_was_read() -> None:
    found = read(
        "place: pin plate U2, what: pin plate thickness, value: 3/8 in",
        "place: pin plate U3, what: pin plate thickness, value: 7/16 in",
        "what: pin plate width, value: 7 1/2 in",
    )
    plates = chord(found).pin_plates
    # The weaker of both ends governs.
    assert plates is not None
    assert plates.plate == Plate(width=7.5, thickness=0.375)
    assert any("pin plate thickness 3/8 in" in one for one in chord(found).readings)
    other = chord(found, "right").pin_plates
    assert other is not None
    assert other.plate == Plate(width=8.0, thickness=0.5)


def test_the_latest_reading_at_a_place_holds() -> None:
    first = "place: pin plate U2, what: pin plate thickness, value: 3/8 in"
    found = read(first, later=(first.replace("3/8", "7/16"),))
    plates = chord(found).pin_plates
    assert plates is not None
    assert plates.plate == Plate(width=8.0, thickness=0.4375)


@pytest.mark.parametrize(
    ("readings", "hole", "beyond"),
    [
        # By hand: worn 1/4 in long, so 3 - 1/4 in is left beyond the pin.
        (("what: pin plate hole, value: 2 3/4 in",), 2.75, 2.75),
        (("what: pin plate hole, value: 2 3/4 in",
          "what: pin plate beyond hole, value: 2 in"), 2.75, 2.0),
        (("what: pin plate beyond hole, value: 2 1/2 in",), 2.5, 2.5),
    ],
)
def test_a_hole_worn_long_has_lost_what_it_grew_by_beyond_the_pin(
    readings: tuple[str, ...], hole: float, beyond: float
) -> None:
    plates = chord(read(*readings)).pin_plates
    assert plates is not None
    assert (plates.hole, plates.beyond) == (hole, beyond)


def test_no_plate_of_a_splice_is_better_than_the_worst_that_was_read() -> None:
    found = read("what: splice plate thickness, value: 5/16 in",
                 "what: splice plate width, value: 5 1/2 in")
    splice = chord(found).splice
    assert splice is not None
    assert splice.plates == (
        Plate(width=5.5, thickness=0.3125), Plate(width=5.0, thickness=0.25),
    )


def test_such_readings_leave_the_section_of_the_bar_alone() -> None:
    bar = chord(read("what: pin plate thickness, value: 1/8 in"))
    assert bar.left == bar.as_built


def test_a_jaw_that_was_not_measured_is_not_rated() -> None:
    found = bridge((SPLICED, f"{SPLICED}    jaw: not measured\n"))
    assert chord(found).not_rated == "length of its jaws not measured"
    told = bridge(
        (SPLICED, f"{SPLICED}    jaw: not measured\n"),
        ("\nfloor:\n", "\noverrides:\n  left/U2-U3: {jaw: 7 in, reason: seen}\n\nfloor:\n"),
    )
    assert (chord(told).not_rated, chord(told).jaw) == ("", 7.0)
    assert chord(told, "right").not_rated == "length of its jaws not measured"
    assert chord(bridge()).not_rated == ""


@pytest.mark.parametrize(
    ("part", "reading", "said"),
    [
        ("left/U2-U3", "what: pin plate thickness, value: 5/8 in",
         "is more than the pin plate thickness as built, '1/2 in'"),
        ("left/U2-U3", "what: pin plate hole, value: 2 in", "is less than the hole as built"),
        ("left/U2-U3", "what: pin plate hole, value: 8 in", "is a hole no narrower than"),
        ("left/U2-U3", "what: splice plate thickness, value: 1/2 in",
         "is more than the splice plate thickness as built, '3/8 in'"),
        ("left/U2-U3", "what: splice plate width, value: 5 in, piece: 2", "tells nothing here"),
        ("left/U2-L2", "what: pin plate width, value: 5 in",
         "is of something that the record does not have there; write 'pin plates' into"),
        ("left/U2-L2", "what: splice plate width, value: 5 in", "write 'splice' into"),
    ],
)
def test_a_reading_of_a_joint_that_cannot_be_is_told(part: str, reading: str, said: str) -> None:
    text = f"    readings:\n      - {{part: {part}, {reading}}}\n"
    assert said in refused((SPLICED, JOINED), (NO_READINGS, text))
