"""Small bridges for the tests of loads, given only what those loads read."""

from dataclasses import replace

from eyebar.bridge.parts import Bar, Material, Roadway, Truss, Weight
from eyebar.sections.shapes import Given
from eyebar.terms import Kind, Metal
from eyebar.vehicles import Vehicle, shipped_vehicles


def material(density: float) -> Material:
    return Material(
        name="iron", metal=Metal.WROUGHT_IRON, yield_stress=26.0, tensile_strength=48.0,
        modulus=27_900.0, density=density, sources={},
    )


def section(area: float) -> Given:
    return Given(
        area=area, net_area=None, r_x=None, r_y=None, top=None, bottom=None, source="made"
    )


def bar(one: str, other: str, *, area: float, length: float, density: float) -> Bar:
    return Bar(
        name=f"{one}-{other}", address=f"near/{one}-{other}", kind=Kind.DIAGONAL,
        ends=(one, other), length=length, length_in_plane=length, length_out_of_plane=length,
        as_built=section(area), left=section(area), material=material(density), can_push=True,
        can_pull=True,
    )


def truss(
    *bars: Bar, stations_ft: dict[str, float], broken: tuple[Bar, ...] = ()
) -> Truss:
    joints = {joint for one in (*bars, *broken) for joint in one.ends} | set(stations_ft)
    return Truss(
        name="near", joints=dict.fromkeys(sorted(joints), (0.0, 0.0)), bars=bars,
        broken=broken, floor_joints=tuple(stations_ft.items()), supports={},
    )


def weight(name: str, *, wearing: bool, **given: object) -> Weight:
    return replace(
        Weight(name=name, kip_per_ft=0.0, kip_at_joints={}, wearing=wearing, working=""),
        **given,  # type: ignore[arg-type]
    )


def road(
    clear_ft: float, *, near_ft: float = 1.0, far_ft: float = 1.0, lanes: int | None = None
) -> Roadway:
    """A road between two trusses, `near` and `far`, each so far from its curb."""
    return Roadway(
        clear_width_ft=clear_ft, truss_spacing_ft=near_ft + clear_ft + far_ft,
        curb_ft={"near": near_ft, "far": far_ft}, lanes_given=lanes, surface="smooth",
        surfacing_measured=True, trucks_a_day=20.0,
    )


def wide(gauge_ft: float, width_ft: float) -> Vehicle:
    """Type 3 on another gauge."""
    return replace(
        shipped_vehicles()["Type 3"], name="implement", gauge_ft=gauge_ft, width_ft=width_ft
    )


def train(axles_kip: tuple[float, ...], spacings_ft: tuple[float, ...]) -> Vehicle:
    return replace(
        shipped_vehicles()["Type 3"], name="train", axles_kip=axles_kip, spacings_ft=spacings_ft
    )
