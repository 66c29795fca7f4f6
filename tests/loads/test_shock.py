import pytest

from eyebar.errors import OutOfRange
from eyebar.loads.shock import impact, impact_of_length, loaded_length_ft
from eyebar.office import office_values, shipped_values
from eyebar.terms import Kind, Metal, Method, VehicleClass

VALUES = shipped_values()


def shock(
    method: Method, *, of: VehicleClass = VehicleClass.SINGLE, metal: Metal = Metal.STEEL,
    length_ft: float = 100.0, span_ft: float = 100.0, surface: str = "smooth",
) -> float:
    return impact(
        method=method, vehicle_class=of, metal=metal, loaded_length_ft=length_ft,
        span_ft=span_ft, surface=surface, values=VALUES,
    )


@pytest.mark.parametrize(
    ("length_ft", "fraction"),
    [
        # By hand: 50 / (L + 125), and 0.30 up to 41.67 ft.
        (0.0, 0.3), (16.0, 0.3), (41.0, 0.3), (60.0, 50 / 185), (80.0, 50 / 205),
        (100.0, 50 / 225), (120.0, 50 / 245), (150.0, 50 / 275),
    ],
)
@pytest.mark.parametrize("method", [Method.ALLOWABLE_STRESS, Method.LOAD_FACTOR])
def test_impact_of_the_older_methods_falls_with_the_loaded_length(
    method: Method, length_ft: float, fraction: float
) -> None:
    assert shock(method, length_ft=length_ft) == pytest.approx(fraction)


@pytest.mark.parametrize("length_ft", [-1.0, float("nan")])
def test_a_length_below_nothing_is_refused(length_ft: float) -> None:
    with pytest.raises(OutOfRange, match="loaded length"):
        impact_of_length(length_ft, 0.3)


def test_timber_is_not_shaken_by_the_older_methods_and_half_by_the_new_one() -> None:
    # Standard Specifications 3.8.1 and LRFD 3.6.2.3 (early editions), from memory.
    assert shock(Method.LOAD_FACTOR, metal=Metal.TIMBER) == 0.0
    assert shock(
        Method.LOAD_AND_RESISTANCE, metal=Metal.TIMBER, surface="rough"
    ) == pytest.approx(0.165)


@pytest.mark.parametrize(
    ("surface", "fraction"), [("smooth", 0.1), ("minor depressions", 0.2), ("rough", 0.33)]
)
@pytest.mark.parametrize("of", [VehicleClass.SINGLE, VehicleClass.EMERGENCY])
def test_impact_by_load_and_resistance_goes_by_the_roads_surface(
    of: VehicleClass, surface: str, fraction: float
) -> None:
    # Manual for Bridge Evaluation Table C6A.4.4.3-1, from memory.
    assert shock(Method.LOAD_AND_RESISTANCE, of=of, surface=surface) == fraction


@pytest.mark.parametrize(("span_ft", "fraction"), [(40.0, 0.33), (40.1, 0.1)])
def test_short_spans_keep_the_whole_shock(span_ft: float, fraction: float) -> None:
    assert shock(Method.LOAD_AND_RESISTANCE, span_ft=span_ft) == fraction


def test_the_design_load_keeps_the_whole_shock_on_any_road() -> None:
    assert shock(Method.LOAD_AND_RESISTANCE, of=VehicleClass.DESIGN) == 0.33


def test_a_surface_that_nobody_knows_is_refused() -> None:
    with pytest.raises(OutOfRange, match="road surface is 'bumpy'"):
        shock(Method.LOAD_AND_RESISTANCE, surface="bumpy")


@pytest.mark.parametrize("kind", [Kind.TOP_CHORD, Kind.BOTTOM_CHORD])
def test_a_chord_is_loaded_over_the_whole_span(kind: Kind) -> None:
    assert loaded_length_ft(kind, span_ft=150.0, like_signed_ft=90.0) == 150.0


@pytest.mark.parametrize("kind", [Kind.DIAGONAL, Kind.POST, Kind.HIP_VERTICAL, Kind.END_POST])
def test_a_web_bar_is_loaded_over_its_like_signed_length(kind: Kind) -> None:
    assert loaded_length_ft(kind, span_ft=150.0, like_signed_ft=90.0) == 90.0


def test_the_office_sets_the_cap() -> None:
    values = office_values(exceptions={"impact.older methods.greatest": (0.25, "1", "trial")})
    assert impact(
        method=Method.LOAD_FACTOR, vehicle_class=VehicleClass.DESIGN, metal=Metal.STEEL,
        loaded_length_ft=20.0, span_ft=20.0, surface="smooth", values=values,
    ) == 0.25
