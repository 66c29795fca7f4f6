import pytest

from eyebar.errors import OutOfRange
from eyebar.loads.live import levels, live_factor
from eyebar.office import shipped_values
from eyebar.terms import Level, Method, VehicleClass

VALUES = shipped_values()
RESISTANCE = Method.LOAD_AND_RESISTANCE


def factor(
    method: Method, level: Level, of: VehicleClass = VehicleClass.SINGLE,
    trucks: float | None = None,
) -> float:
    return live_factor(
        method=method, level=level, vehicle_class=of, trucks_a_day=trucks, values=VALUES
    )


@pytest.mark.parametrize(
    ("trucks", "expected"),
    [
        # By hand between 1.30 at 1,000 and 1.45 at 5,000 trucks: 1.30 + 0.15 (n - 1000) / 4000.
        (0.0, 1.3), (20.0, 1.3), (1000.0, 1.3), (2000.0, 1.3375), (3000.0, 1.375),
        (5000.0, 1.45), (9000.0, 1.45), (None, 1.45),
    ],
)
def test_the_factor_of_legal_loads_grows_with_traffic(
    trucks: float | None, expected: float
) -> None:
    for of in (VehicleClass.SINGLE, VehicleClass.COMBINATION, VehicleClass.EVERYDAY):
        assert factor(RESISTANCE, Level.LEGAL, of, trucks) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("method", "level", "of", "expected"),
    [
        # The three methods' tables, from memory.
        (RESISTANCE, Level.INVENTORY, VehicleClass.DESIGN, 1.75),
        (RESISTANCE, Level.OPERATING, VehicleClass.DESIGN, 1.35),
        (RESISTANCE, Level.LEGAL, VehicleClass.EMERGENCY, 1.3),
        (Method.LOAD_FACTOR, Level.INVENTORY, VehicleClass.DESIGN, 2.17),
        (Method.LOAD_FACTOR, Level.OPERATING, VehicleClass.SINGLE, 1.3),
        (Method.ALLOWABLE_STRESS, Level.INVENTORY, VehicleClass.SINGLE, 1.0),
        (Method.ALLOWABLE_STRESS, Level.OPERATING, VehicleClass.EMERGENCY, 1.0),
    ],
)
def test_a_factor_goes_by_method_level_and_class(
    method: Method, level: Level, of: VehicleClass, expected: float
) -> None:
    assert factor(method, level, of) == expected


@pytest.mark.parametrize("of", list(VehicleClass))
def test_the_older_methods_have_two_levels_for_every_class(of: VehicleClass) -> None:
    for method in (Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR):
        assert levels(method, of) == (Level.INVENTORY, Level.OPERATING)


@pytest.mark.parametrize("of", list(VehicleClass))
@pytest.mark.parametrize("method", list(Method))
def test_every_level_that_is_named_has_a_factor_and_no_other(
    method: Method, of: VehicleClass
) -> None:
    for level in Level:
        if level in levels(method, of):
            assert factor(method, level, of) >= 1.0
        else:
            with pytest.raises(OutOfRange, match="level of a"):
                factor(method, level, of)
