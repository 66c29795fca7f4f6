"""The `force-table` document: all bar forces of a truss, wherever a vehicle stands on it."""

from typing import Any

from eyebar.analysis.loaded import LoadedTruss
from eyebar.bridge.parts import Truss
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading
from eyebar.documents.vehicles import vehicle_objects
from eyebar.errors import NotMeasured, OutOfRange, Unknown, nearest
from eyebar.loads import shares
from eyebar.rating import loaded_states
from eyebar.rating.force_table import ForceTable, force_table
from eyebar.rating.live import dead_load_forces
from eyebar.terms import Direction
from eyebar.vehicles import Vehicle, spread_over


def force_table_document(
    one: Opened, truss: str, vehicle: str, *, way: Direction = Direction.UP
) -> dict[str, Any]:
    """The force table of one truss under one vehicle in one direction.

    Raises Unknown, NotMeasured where a weight of the floor is unknown, OutOfRange for a vehicle
    that has no axles or is too wide, Unstable.
    """
    chosen, drawn = _vehicle(one, vehicle), _truss(one, truss)
    if one.bridge.unknown_loads:
        raise NotMeasured("the floor", f"weight ({', '.join(one.bridge.unknown_loads)})")
    states, assumed = loaded_states(one.bridge, drawn)
    loaded = states.get("measured", states["none"])
    share = shares(one.bridge.road, drawn.name, chosen, one.values).one_lane
    table = force_table(loaded, chosen, way, share)
    return {
        **heading("force-table", 1, one),
        "truss": drawn.name,
        "vehicle": vehicle_objects([chosen])[0],
        "direction": way.value,
        "share": share,
        "spacing_ft": list(chosen.least_spacings_ft),
        "behind_front_ft": list(chosen.behind_front_ft()),
        "stations_ft": [[joint, ft] for joint, ft in drawn.floor_joints],
        "dead_kip": dead_load_forces(loaded),
        **_rows(loaded, table),
        "cautions": [CAUTION, NOT_ASSUMED_SOUND, *one.bridge.rules, *assumed],
        **closing(one),
    }


def _rows(loaded: LoadedTruss, table: ForceTable) -> dict[str, Any]:
    lost = table.lost
    return {
        "bars": list(loaded.model.names),
        "rows": [
            {"front_axle_ft": at, "forces_kip": forces}
            for at, forces in zip(table.front_ft.tolist(), table.forces.tolist(), strict=True)
        ],
        "slack_empty": list(table.empty),
        "slack_between": [list(names) for names in table.slack],
        "no_equilibrium": lost and {"reason": lost.sentence, "panel": lost.panel},
    }


def _truss(one: Opened, name: str) -> Truss:
    known = {truss.name: truss for truss in one.bridge.trusses}
    if name not in known:
        raise Unknown("truss", name, near=nearest(name, known), where=one.bridge.name)
    return known[name]


def _vehicle(one: Opened, name: str) -> Vehicle:
    if name not in one.vehicles:
        raise Unknown("vehicle", name, near=nearest(name, one.vehicles))
    chosen = spread_over(one.vehicles[name], one.bridge.road.clear_width_ft)
    if not chosen.axles_kip:
        raise OutOfRange("number of axles", 0, "at least one: a load by area has no place")
    if chosen.width_ft > one.bridge.road.clear_width_ft:
        raise OutOfRange(
            f"width of {name}", f"{chosen.width_ft:g} ft",
            f"at most the clear width of the road, {one.bridge.road.clear_width_ft:g} ft",
        )
    return chosen
