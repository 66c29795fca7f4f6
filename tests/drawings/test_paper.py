"""Sheets are cut to need, and scales are those of a drawing office."""

import pytest

from eyebar.drawings.paper import (
    FIELD_BOOK,
    SCALES,
    SHEETS,
    UNITS_PER_INCH,
    drawing_scale,
    ruler_step_ft,
)


@pytest.mark.parametrize(
    ("span_ft", "room_in", "said"),
    [
        # By hand: 150 ft at 3/32 inch to the foot are 14.06 inches, at 1/10 inch 15 inches.
        (150.0, 15.0, "10 feet to the inch"),
        (150.0, 14.9, "3/32 inch to the foot"),
        (150.0, 14.0, "12 feet to the inch"),
        # 36 ft at 3/8 inch to the foot are 13.5 inches, at 1/2 inch 18 inches.
        (36.0, 14.0, "3/8 inch to the foot"),
        (560.0, 35.0, "1/16 inch to the foot"),
    ],
)
def test_the_largest_scale_that_fits_is_taken(span_ft: float, room_in: float, said: str) -> None:
    room = room_in * UNITS_PER_INCH, 1e9
    assert drawing_scale((span_ft * 12.0, 100.0), room).said == said


def test_a_deep_truss_is_bound_by_its_depth() -> None:
    # By hand: 24 ft at 1/8 inch to the foot are 3 inches.
    room = 1e9, 3.0 * UNITS_PER_INCH
    assert drawing_scale((100.0, 24.0 * 12.0), room).said == "1/8 inch to the foot"


def test_scales_go_from_large_to_small() -> None:
    sizes = [scale.inches_to_the_foot for scale in SCALES]
    assert sizes == sorted(sizes, reverse=True)
    assert len(set(sizes)) == len(sizes)


def test_a_sheet_is_cut_to_the_next_half_inch() -> None:
    # By hand: 12.2 inches are cut at 12.5; 7 inches are fewer than a sheet has.
    assert SHEETS[0].cut(12.2 * UNITS_PER_INCH) == 12.5 * UNITS_PER_INCH
    assert SHEETS[0].cut(7.0 * UNITS_PER_INCH) == 11.0 * UNITS_PER_INCH
    assert FIELD_BOOK.cut(7.0 * UNITS_PER_INCH) == 7.0 * UNITS_PER_INCH


def test_the_marks_of_the_ruler_are_whole_feet_far_enough_apart() -> None:
    # By hand: at 1/8 inch to the foot a foot is 12 units: 4 feet would do, 5 is the next round one.
    scale = next(one for one in SCALES if one.said == "1/8 inch to the foot")
    assert ruler_step_ft(scale, 44.0) == 5
