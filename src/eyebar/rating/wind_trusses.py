"""Forces in the trusses' own bars that stand beside those of the wind: dead load, vehicles."""

from collections.abc import Mapping
from dataclasses import dataclass

from eyebar.bridge.parts import Bridge, Truss
from eyebar.errors import Unstable
from eyebar.loads import impact, joint_loads, shares
from eyebar.loads.wind import span_ft
from eyebar.office import Values
from eyebar.rating.kept import loaded_states
from eyebar.rating.live import dead_load_forces, live_forces
from eyebar.rating.stiffness import stiffness_areas
from eyebar.terms import Kind, Method
from eyebar.vehicles import Vehicle


@dataclass(frozen=True, slots=True, kw_only=True)
class TrussForces:
    """Forces of one truss's bars without wind [kip], pull positive: `dead` by itself, and what a
    vehicle adds at most with its shock (`pulled`) and at least (`pushed`). `weight` of the truss
    with all that it carries [kip]."""

    dead: Mapping[str, float]
    pulled: Mapping[str, float]
    pushed: Mapping[str, float]
    weight: float


def truss_forces(
    bridge: Bridge, vehicles: Mapping[str, Vehicle], values: Values
) -> tuple[dict[str, TrussForces], str]:
    """Truss -> its forces; and why there are none, where there are none."""
    if bridge.unknown_loads:
        return {}, f"weights not measured: {', '.join(bridge.unknown_loads)}"
    found = {}
    for truss in bridge.trusses:
        try:
            found[truss.name] = _of_truss(bridge, truss, vehicles, values)
        except Unstable as reason:
            return {}, str(reason)
    return found, ""


def _of_truss(
    bridge: Bridge, truss: Truss, vehicles: Mapping[str, Vehicle], values: Values
) -> TrussForces:
    states, _ = loaded_states(bridge, truss)
    loaded = states.get("measured", states["none"])
    across = {
        name: shares(bridge.road, truss.name, vehicle, values).one_lane
        for name, vehicle in vehicles.items()
        if vehicle.width_ft <= bridge.road.clear_width_ft
    }
    live = live_forces(loaded, {name: vehicles[name] for name in across}, across)
    span = span_ft(truss)
    pulled, pushed = dict.fromkeys(loaded.model.names, 0.0), dict.fromkeys(loaded.model.names, 0.0)
    for name, forces in live.items():
        if forces.lost:
            raise Unstable(forces.lost.sentence, truss=truss.name)
        for i, bar in enumerate(truss.bars):
            shock = 1.0 + impact(
                method=Method.ALLOWABLE_STRESS, vehicle_class=vehicles[name].vehicle_class,
                metal=bar.material.metal, loaded_length_ft=span, span_ft=span,
                surface=bridge.road.surface, values=values,
            )
            pulled[bar.name] = max(pulled[bar.name], shock * float(forces.greatest[i]))
            pushed[bar.name] = min(pushed[bar.name], shock * float(forces.least[i]))
    areas, _ = stiffness_areas(truss)
    loads = joint_loads(truss, bridge.weights[truss.name], areas)
    return TrussForces(
        dead=dead_load_forces(loaded), pulled=pulled, pushed=pushed,
        weight=sum(dc + dw for dc, dw in loads.values()),
    )


def least_thrusts(bridge: Bridge, forces: Mapping[str, TrussForces]) -> dict[str, float]:
    """End post -> its push under dead load, the less of both trusses [kip]."""
    names = [bar.name for bar in bridge.trusses[0].bars if bar.kind is Kind.END_POST]
    return {
        name: min((max(-one.dead.get(name, 0.0), 0.0) for one in forces.values()), default=0.0)
        for name in names
    }
