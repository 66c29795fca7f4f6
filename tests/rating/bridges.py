"""Small bridges whose forces anyone can find with a pencil."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from math import hypot
from typing import Any

from eyebar.bridge.parts import Bar, Bridge, Material, Roadway, Truss, Weight
from eyebar.office import Values, shipped_values
from eyebar.rating import BridgeRating, PartRating, RatedPart, rated_bridge
from eyebar.sections.shapes import Eyebar, Eyebars, Given, Section
from eyebar.terms import Combine, Kind, Level, Metal, Method, VehicleClass
from eyebar.vehicles import Vehicle, shipped_vehicles

IRON = Material(
    name="bar iron", metal=Metal.WROUGHT_IRON, yield_stress=26.0, tensile_strength=48.0,
    modulus=27_900.0, density=0.0, sources={},
)
"""Without weight: a bridge weighs what it is told to."""

STRONG = Given(
    area=40.0, net_area=40.0, r_x=12.0, r_y=12.0, top=8.0, bottom=8.0, source="made"
)
"""So strong that no other bar of a test is stronger."""

PAIR = Eyebars(bars=(Eyebar(width=3.0, thickness=0.75, head=7.0, hole=2.5),) * 2)
"""Two bars 3 in x 3/4 in, 4.5 in2 together, their heads the stronger."""

SPREAD_FT = 24.0

ASR_INVENTORY = (Method.ALLOWABLE_STRESS, Level.INVENTORY)
ASR_OPERATING = (Method.ALLOWABLE_STRESS, Level.OPERATING)
LFR_INVENTORY = (Method.LOAD_FACTOR, Level.INVENTORY)
LFR_OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
LEGAL = (Method.LOAD_AND_RESISTANCE, Level.LEGAL)


def bar(name: str, kind: Kind, section: Section = STRONG, **more: Any) -> Bar:
    """A bar named after its joints; its lengths come with the truss."""
    ends = name.partition(" ")[0].split("-")
    usual: dict[str, Any] = {
        "name": name, "address": name, "kind": kind, "ends": tuple(ends),
        "length": 1.0, "length_in_plane": 1.0, "length_out_of_plane": 1.0, "run": 0.0,
        "as_built": section, "left": section, "material": IRON,
        "can_push": not isinstance(section, Eyebars), "can_pull": True,
    }
    return Bar(**{**usual, **more})


def pratt(
    panels: int, *, panel_ft: float = 15.0, depth_ft: float = 20.0, name: str = "near",
    bars: Mapping[str, Mapping[str, Any]] | None = None, more: tuple[Bar, ...] = (),
    slender: bool = False,
) -> Truss:
    """A Pratt through truss whose diagonals fall to the middle; `bars` name -> what differs in it.

    `slender` diagonals cannot push. `more` are bars that are added.
    """
    n, half = panels, panels // 2
    made = [bar(f"L{i}-L{i + 1}", Kind.BOTTOM_CHORD) for i in range(n)]
    made += [bar(f"U{i}-U{i + 1}", Kind.TOP_CHORD) for i in range(1, n - 1)]
    made += [bar("U1-L0", Kind.END_POST), bar(f"U{n - 1}-L{n}", Kind.END_POST)]
    made += [bar(f"U{i}-L{i}", Kind.HIP_VERTICAL if i in (1, n - 1) else Kind.POST)
             for i in range(1, n)]
    falling = [(i, i + 1) for i in range(1, half)] + [(n - i, n - i - 1) for i in range(1, half)]
    made += [bar(f"U{i}-L{j}", Kind.DIAGONAL, can_push=not slender) for i, j in falling]
    given = dict(bars or {})
    made = [replace(one, **_left_as_built(given.pop(one.name, {}))) for one in made]
    assert not given, f"no such bars: {given}"
    joints = {f"L{i}": (12.0 * panel_ft * i, 0.0) for i in range(n + 1)}
    joints |= {f"U{i}": (12.0 * panel_ft * i, 12.0 * depth_ft) for i in range(1, n)}
    return Truss(
        name=name, joints=joints, broken=(),
        bars=tuple(_between(one, joints, name) for one in (*made, *more)),
        floor_joints=tuple((f"L{i}", panel_ft * i) for i in range(n + 1)),
        supports={"L0": (True, True), f"L{n}": (False, True)},
    )


def _left_as_built(changes: Mapping[str, Any]) -> dict[str, Any]:
    """What differs in a bar; a section that is given is what is left too, eyebars cannot push."""
    section = changes.get("as_built")
    if section is None:
        return dict(changes)
    return {"left": section, "can_push": not isinstance(section, Eyebars), **changes}


def _between(one: Bar, joints: Mapping[str, tuple[float, float]], truss: str) -> Bar:
    (x, y), (u, v) = (joints[joint] for joint in one.ends)
    length = hypot(u - x, v - y)
    return replace(
        one, address=f"{truss}/{one.name}", length=length, length_in_plane=length,
        length_out_of_plane=length,
    )


def road(*trusses: str, **more: Any) -> Roadway:
    """One lane of 16 ft between trusses 18 ft apart, rough, with little traffic."""
    usual: dict[str, Any] = {
        "clear_width_ft": 16.0, "truss_spacing_ft": 18.0, "curb_ft": dict.fromkeys(trusses, 1.0),
        "lanes_given": None, "surface": "rough", "surfacing_measured": False,
        "trucks_a_day": 20.0,
    }
    return Roadway(**{**usual, **more})


def dead(kip_a_panel: float, truss: Truss, *, wearing: bool = False) -> Weight:
    """So many kips on every inner floor joint."""
    inner = [joint for joint, _ in truss.floor_joints[1:-1]]
    return Weight(
        name="weight", kip_per_ft=0.0, kip_at_joints=dict.fromkeys(inner, kip_a_panel),
        wearing=wearing, working="made",
    )


def bridge(
    *trusses: Truss, kip_a_panel: float, roadway: Roadway | None = None, **more: Any
) -> Bridge:
    """A bridge of these trusses, each with so many kips on every inner floor joint."""
    names = [truss.name for truss in trusses]
    usual: dict[str, Any] = {
        "name": "Made Bridge (invented)", "number": "0", "owner": "", "place": "", "built": 1890,
        "on": date(2026, 1, 1), "trusses": trusses,
        "weights": {truss.name: (dead(kip_a_panel, truss),) for truss in trusses},
        "roadway": roadway or road(*names), "others": (), "superstructure_condition": 6,
        "condition_measured": False,
    }
    return Bridge(**{**usual, **more})


def vehicle(
    name: str, axles_kip: tuple[float, ...], spacings_ft: tuple[Any, ...] = (), **more: Any
) -> Vehicle:
    """A single vehicle of these axles."""
    usual: dict[str, Any] = {
        "name": name, "vehicle_class": VehicleClass.SINGLE, "axles_kip": axles_kip,
        "spacings_ft": spacings_ft, "gauge_ft": 6.0, "width_ft": 8.5, "combine": Combine.NONE,
        "source": "made", "confirmed": False,
    }
    return Vehicle(**{**usual, **more})


H15 = shipped_vehicles()["H15"]
TRUCK = vehicle("15-ton truck", H15.axles_kip, H15.spacings_ft)
"""The axles of H15 as a legal load."""
WHEEL = vehicle("one axle", (10.0,))
"""Ten kips on one axle."""


def values(numbers: Mapping[str, float] | None = None) -> Values:
    """The shipped values without an allowance for details, some numbers replaced."""
    found = shipped_values()
    rows = dict(found.rows)
    for name, number in {"allowance for details": 0.0, **(numbers or {})}.items():
        rows[name] = replace(rows[name], value=number)
    return replace(found, rows=rows)


def rated(of: Bridge, *vehicles: Vehicle, by: Values | None = None) -> BridgeRating:
    """A bridge rated for some vehicles."""
    return rated_bridge(of, by or values(), {one.name: one for one in vehicles})


def part(found: BridgeRating, address: str) -> RatedPart:
    """One part of a rating."""
    return next(one for one in found.parts if one.address == address)


def rating(
    found: BridgeRating, address: str, by: tuple[Method, Level], vehicle: str = "15-ton truck"
) -> PartRating:
    """One rating of one part."""
    (one,) = [
        r for r in part(found, address).ratings
        if (r.method, r.level) == by and r.vehicle == vehicle
    ]
    return one
