"""The tables of parts, forces, vehicles and values, and the working of a part."""

import dataclasses

import pytest

from eyebar.errors import Unknown
from eyebar.terms import Level, Method
from eyebar.views import (
    checking,
    crossing,
    details,
    documentation,
    forces,
    given,
    how,
    not_measured,
    not_rated,
    posting,
    rating,
    register,
    use,
    values,
    vehicles,
    weakest,
    working,
)
from eyebar.views.columns import cells, columns
from tests.views import samples

# Expected strings by hand from the samples and the rules of rounding.

VIEWS = (
    checking.Checked, forces.ForceRow, forces.ForceTable, not_measured.NotMeasuredRow,
    not_rated.NotRatedRow, posting.Posting,
    rating.RatingRow, rating.RatingTable, values.ValueRow, vehicles.VehicleRow, working.Working,
    crossing.BoardRow, crossing.Said, use.UseRow, weakest.WeakRow, weakest.WeakList,
    register.RegisterRow, register.RevisionRow, register.InspectionRow, register.DecisionRow,
    register.EventRow, register.RegisterReadingRow, register.ChangeRow, given.RatingIssued,
    given.SignUp, given.SlipGiven, given.FileKept,
    documentation.MemberRow, documentation.LaterRow,
    details.SharedRow, details.LikeRow, details.SharedDetails,
    how.HowChapter, how.HowTruss, how.HowItWorks,
)


@pytest.mark.parametrize("view", VIEWS)
def test_every_field_of_a_view_has_a_heading_and_a_sentence_of_help(view: type) -> None:
    assert dataclasses.is_dataclass(view)
    for column in columns(view):
        assert column.heading
        assert column.help.endswith(".")


def test_the_weakest_part_stands_first_by_the_posting_method() -> None:
    table = rating.rating_table(samples.rate(), rating.Choice())
    assert table.standing == "load and resistance, legal"
    assert [row.part for row in table.rows] == [
        "upstream/U2-L4", "upstream/U1-L1", "upstream/U4-L4",
    ]
    assert cells(table.rows[0]) == [
        "upstream/U2-L4", "Type 3", "0.46", "11.4", "head of the eyebar", "18.3", "21.9",
    ]


def test_a_part_without_a_rule_by_the_method_says_by_which_it_counts() -> None:
    row = rating.rating_table(samples.rate(), rating.Choice()).rows[1]
    assert row.check == "head of the eyebar (allowable stress, operating)"


def test_a_chosen_vehicle_method_and_level_stand_alone() -> None:
    by_vehicle = rating.rating_table(samples.rate(), rating.Choice(vehicle="SU4"))
    assert [row.factor for row in by_vehicle.rows] == ["0.50"]
    choice = rating.Choice(method=Method.ALLOWABLE_STRESS, level=Level.OPERATING)
    by_method = rating.rating_table(samples.rate(), choice)
    assert [row.factor for row in by_method.rows] == ["0.39", "0.90"]
    nowhere = rating.rating_table(samples.rate(), rating.Choice(level=Level.PERMIT))
    assert nowhere.rows == ()
    with pytest.raises(Unknown, match="did you mean 'SU4'"):
        rating.rating_table(samples.rate(), rating.Choice(vehicle="su4"))


def test_parts_not_rated_are_gathered_by_their_reason() -> None:
    (row,) = rating.rating_table(samples.rate(), rating.Choice()).not_rated
    assert cells(row) == [
        "pins are not rated yet", "4", "upstream/L1/pin, upstream/L2/pin, upstream/L3/pin, ...",
    ]


def test_trusses_with_the_same_forces_share_a_table() -> None:
    tables = forces.force_tables(samples.forces(), None)
    assert [table.trusses for table in tables] == ["upstream and downstream", "third"]


def test_the_extremes_name_their_vehicle_and_its_place() -> None:
    bottom, top = forces.force_tables(samples.forces(), None)[0].rows
    assert cells(bottom) == ["L0-L1", "30.0", "0.0", "-", "-", "22.0", "H20", "57.2 ft up"]
    assert cells(top) == ["U1-U2", "-44.4", "-31.3", "Type 3", "57.2 ft up", "0.0", "-", "-"]


def test_a_vehicle_without_equilibrium_is_left_out_with_the_reason() -> None:
    table = forces.force_tables(samples.forces(), None)[0]
    assert table.left_out == ("EV3: no equilibrium (panel 5)",)
    alone = forces.force_tables(samples.forces(), "EV3")[0]
    assert cells(alone.rows[0]) == ["L0-L1", "30.0", "-", "-", "-", "-", "-", "-"]


def test_an_unknown_vehicle_is_refused_with_the_nearest_known() -> None:
    with pytest.raises(Unknown, match="did you mean 'Type 3'"):
        forces.force_tables(samples.forces(), "type3")


def test_a_vehicle_is_shown_axle_by_axle() -> None:
    row, snow = vehicles.vehicle_rows(samples.vehicles())
    assert cells(snow) == ["snow*", "everyday", "-", "30 lb/ft2", "", "-", "no"]
    assert cells(row) == [
        "HS20", "design", "36.0", "8 32 32", "14 14 to 30",
        "0.64 + 18 or 26, greater", "no",
    ]


def test_a_value_is_shown_with_its_standing() -> None:
    (row,) = values.value_rows(samples.rate())
    assert cells(row) == [
        "phi.tension.yield", "0.95", "1", "shipped", "no", "LRFD 6.5.4.2, from memory",
    ]


def test_the_working_shows_symbols_numbers_and_source_under_their_procedure() -> None:
    view = working.working(samples.explain())
    assert view.title == (
        "upstream/U2-L4 | diagonal | Type 3 | load and resistance, legal | 2026-06-09"
    )
    assert view.answer == (
        "Factor 0.46 (11.4 tons): head of the eyebar, the front axle at 57.2 ft up."
    )
    assert view.steps == (
        "head of an eyebar (by proportion)",
        "   gross yield",
        "      P = F_y × A",
        "      P = 26 ksi × 2.5 in2 = 65 kip",
        "      source: mechanics",
        "   tries: n = 3",
    )
    assert view.remarks == ("a round head is taken", "caliper, 2026-06-09")
    assert view.events == ("at 0.31 times the vehicle U5-L3 goes taut",)


def test_a_step_with_the_same_numbers_is_said_once() -> None:
    document = samples.explain()
    document["steps"] = [*document["steps"], *document["steps"][0]["steps"]]
    assert working.working(document).steps[-1] == "tries: n = 3"
    assert sum("65 kip" in line for line in working.working(document).steps) == 1


def test_a_force_that_rounds_to_nothing_names_no_vehicle() -> None:
    document = samples.forces()
    document["trusses"][0]["live"]["H20"]["L0-L1"] = {
        "min": -0.04, "max": 22.0, "min_at": samples.AT, "max_at": samples.AT,
    }
    bottom = forces.force_tables(document, None)[0].rows[0]
    assert (bottom.least, bottom.least_vehicle, bottom.least_at) == ("0.0", "-", "-")


def test_a_rating_without_a_factor_gives_its_reason() -> None:
    document = samples.explain()
    document["rating"] = samples.rating(factor=None, reason="no live effect", tons=None, at=None)
    assert working.working(document).answer == "No factor: no live effect."


def test_a_record_without_faults_is_summed_up() -> None:
    document = {
        "bridge": {"name": "Sedgebarrow Ford Bridge (invented)", "number": ""},
        "date": "2026-06-09", "trusses": 2, "bars": 40, "rules": ["the latest reading counts"],
        "not_measured": [
            {"part": f"upstream/{bar}", "what": ["width", "thickness"]}
            for bar in ("U1", "U2", "U3")
        ],
        "not_rated": [{"part": "upstream/U2-L4", "not_rated": "thickness not measured"}],
    }
    view = checking.checked(document)
    assert cells(view.not_measured[0]) == [
        "width, thickness", "3", "upstream/U1, upstream/U2, upstream/U3",
    ]
    assert view.verdict == (
        "No fault. Sedgebarrow Ford Bridge (invented), as on 2026-06-09: 2 trusses, 40 bars."
    )
    assert cells(view.not_rated[0]) == ["thickness not measured", "1", "upstream/U2-L4"]


def test_a_reason_that_names_its_part_is_gathered_with_its_like() -> None:
    rows = not_rated.not_rated_rows(
        {"part": part, "not_rated": f"thickness of {part} not measured"}
        for part in ("upstream/U2-L4", "downstream/U2-L4")
    )
    assert [cells(row) for row in rows] == [
        ["thickness not measured", "2", "upstream/U2-L4, downstream/U2-L4"],
    ]
