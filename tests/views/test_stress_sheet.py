"""What a stress sheet says of each bar, and of the bridge."""

import pytest

from eyebar.errors import Unknown
from eyebar.views import stress_sheet as view
from eyebar.views.columns import columns
from tests.drawings import made

# Expected strings by hand from the made documents and the rules of rounding.


def one_bar(dead: float, can_push: bool, limit: float | None = None) -> str:
    """How a bar of that dead force is drawn, by a rating that is reached at the limit."""
    rate, forces = made.documents(made.pratt(6))
    forces["trusses"][0]["dead"]["U2-L2"] = dead
    forces["trusses"][0]["bars"]["U2-L2"]["can_push"] = can_push
    part = next(one for one in rate["parts"] if one["part"] == "upstream/U2-L2")
    part["ratings"][0]["limit_kip"] = limit
    bars = view.sheet_view(rate, forces).bars
    return next(bar.work for bar in bars if bar.bar == "U2-L2")


@pytest.mark.parametrize("shown", [view.StressSheet, view.BarFigures, view.PartWords])
def test_every_field_of_the_views_has_a_heading_and_a_sentence_of_help(shown: type) -> None:
    assert all(one.heading and one.help.endswith(".") for one in columns(shown))


@pytest.mark.parametrize(
    ("dead", "can_push", "limit", "work"),
    [
        (-9.3, True, 50.0, view.Work.PUSHED),
        (1.5, True, 50.0, view.Work.PULLED),
        (1.5, True, -20.0, view.Work.PUSHED),  # it pulls, but push is what is reached first
        (6.6, False, 50.0, view.Work.PULLED),
        (0.0, False, 50.0, view.Work.SLACK),
        (0.04, False, 50.0, view.Work.SLACK),  # shown as 0.0
        (0.0, True, -20.0, view.Work.PUSHED),
        (0.0, True, None, view.Work.PULLED),
    ],
)
def test_a_bar_is_drawn_as_it_works(
    dead: float, can_push: bool, limit: float | None, work: view.Work
) -> None:
    assert one_bar(dead, can_push, limit) == work


@pytest.mark.parametrize(
    ("force", "shown"), [(12.66, "+12.7"), (-44.64, "−44.6"), (-0.04, "0.0"), (0.0, "0.0")]
)
def test_a_force_carries_its_sign(force: float, shown: str) -> None:
    assert view.signed(force) == shown


def test_live_figures_leave_out_what_is_nothing() -> None:
    bars = {bar.bar: bar for bar in view.sheet_view(*made.documents(made.pratt(6))).bars}
    # The top chord of the made truss is changed towards push alone, the bottom chord towards pull.
    assert bars["U1-U2"].live == bars["U1-U2"].push
    assert bars["L1-L2"].live == bars["L1-L2"].pull
    assert bars["U2-L2"].live == f"{bars['U2-L2'].pull} {bars['U2-L2'].push}"


def test_the_governing_truss_is_drawn_unless_another_is_named() -> None:
    rate, forces = made.documents(made.pratt(6))
    forces["trusses"].append({**forces["trusses"][0], "truss": "downstream"})
    assert view.sheet_view(rate, forces).truss == "upstream"
    assert view.sheet_view(rate, forces, truss="downstream").truss == "downstream"
    rate["posting"] = made.posting("downstream/U1-L0")
    assert view.sheet_view(rate, forces).truss == "downstream"
    with pytest.raises(Unknown):
        view.sheet_view(rate, forces, truss="middle")


def test_the_sheet_says_on_which_vehicles_its_figures_rest() -> None:
    rate, forces = made.documents(made.pratt(6))
    forces["trusses"][0]["live"]["SU4"] = forces["trusses"][0]["live"]["Type 3"]
    everything = view.sheet_view(rate, forces)
    assert everything.live_load == "the worst of Type 3, SU4, each alone"
    assert "Without EV3: no equilibrium (panel 5)." in everything.remarks
    one = view.sheet_view(rate, forces, vehicle="Type 3")
    assert one.live_load == "Type 3"
    assert any(said.startswith("Weakest under Type 3: upstream/") for said in one.remarks)
    assert not any("EV3" in said for said in one.remarks)


def test_parts_that_are_not_rated_are_counted_by_kind() -> None:
    # By hand: six panels have 7 lower and 5 upper panel points; one counter was broken.
    sheet = view.sheet_view(*made.documents(made.pratt(6), broken=["U3-L2"]))
    assert "Not rated on this truss: 1 counter, 12 pins." in sheet.remarks
    gone = next(bar for bar in sheet.bars if bar.bar == "U3-L2")
    assert gone.work == view.Work.GONE
    assert gone.said == "It carries nothing here. Not rated: declared broken."


def test_the_date_is_written_out() -> None:
    assert view.sheet_view(*made.documents(made.pratt(6))).date == "9 June 2026"
