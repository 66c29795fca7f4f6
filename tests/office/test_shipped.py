import pytest

from eyebar.office import shipped_values
from eyebar.office.shipped import shipped_rows
from eyebar.vehicles import shipped_vehicles

ROWS, LIMITS = shipped_rows()


@pytest.mark.parametrize("name", list(ROWS))
def test_every_row_has_unit_source_and_standing(name: str) -> None:
    row = ROWS[name]
    assert row.unit
    assert row.source.strip()
    assert isinstance(row.confirmed, bool)
    assert row.layer == "shipped"


@pytest.mark.parametrize("name", list(ROWS))
def test_a_value_from_memory_is_never_called_confirmed(name: str) -> None:
    row = ROWS[name]
    unread = row.source.endswith("from memory") or row.source.startswith("assumption")
    assert row.confirmed != unread


@pytest.mark.parametrize("name", list(ROWS))
def test_a_row_keeps_its_own_limits(name: str) -> None:
    value, limits = ROWS[name].value, LIMITS[name]
    if isinstance(value, float):
        assert limits.least is None or value >= limits.least
        assert limits.greatest is None or value <= limits.greatest
        assert not limits.choices
    elif isinstance(value, str):
        assert value in limits.choices
    else:
        assert set(value) <= set(shipped_vehicles())


@pytest.mark.parametrize(
    ("name", "value", "unit"),
    [
        # Manual for Bridge Evaluation, Standard Specifications, LRFD specifications, from memory:
        # written down here a second time, from the tables of the three methods.
        ("dead factor.load-factor.greatest.dc", 1.3, "1"),
        ("dead factor.load-and-resistance.greatest.dc", 1.25, "1"),
        ("dead factor.load-and-resistance.greatest.dw", 1.5, "1"),
        ("dead factor.load-and-resistance.greatest.dw measured", 1.25, "1"),
        ("dead factor.load-and-resistance.least.dc", 0.9, "1"),
        ("dead factor.load-and-resistance.least.dw", 0.65, "1"),
        ("live factor.load-factor.inventory", 2.17, "1"),
        ("live factor.load-factor.operating", 1.3, "1"),
        ("live factor.design.inventory", 1.75, "1"),
        ("live factor.design.operating", 1.35, "1"),
        ("live factor.legal.low traffic", 1.3, "1"),
        ("live factor.legal.high traffic", 1.45, "1"),
        ("yield.wrought iron", 26.0, "ksi"),
        ("yield.steel.before 1905", 26.0, "ksi"),
        ("yield.steel.1905 to 1936", 30.0, "ksi"),
        ("yield.steel.1936 to 1963", 33.0, "ksi"),
        ("yield.steel.after 1963", 36.0, "ksi"),
        ("tensile.wrought iron", 48.0, "ksi"),
        # Purdue University and Indiana DOT, SPR-2655, p. 139, printed "27,900 ksi".
        ("modulus.wrought iron", 27_900.0, "ksi"),
        # Textbook p. 187: the posting formula's constants, and the floor of the two factors.
        ("posting.formula.taken off", 0.3, "1"),
        ("posting.formula.divided by", 0.7, "1"),
        ("condition and system.least product", 0.85, "1"),
        # 23 CFR 650.313, from memory.
        ("posting.closing limit", 3.0, "tons"),
    ],
)
def test_a_figure_is_the_one_of_its_source(name: str, value: float, unit: str) -> None:
    assert (ROWS[name].value, ROWS[name].unit) == (value, unit)


def test_the_formulas_constants_close_at_a_factor_of_one() -> None:
    # By hand: W / 0.7 (1 - 0.3) = W, so the posting formula meets the vehicle's own weight.
    values = shipped_values()
    left = 1.0 - values.number("posting.formula.taken off")
    assert left == pytest.approx(values.number("posting.formula.divided by"))


def test_no_shipped_value_can_be_changed_by_a_caller() -> None:
    with pytest.raises(TypeError):
        shipped_values().rows["traffic.low"] = ROWS["traffic.high"]  # type: ignore[index]
