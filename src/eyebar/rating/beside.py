"""Vehicles that stand beside a load by area, where the office's policy says so.

The load is then lasting weight, as if laid on the deck, with the factor of what may be laid on
later (the greater one: no surfacing counts as measured), and the vehicle is rated on top of it.
"""

from dataclasses import replace

from eyebar.bridge.floor_parts import Layer
from eyebar.bridge.parts import Bridge, Weight
from eyebar.loads.across import shares
from eyebar.office import Values
from eyebar.vehicles import Vehicle


def laid_on(bridge: Bridge, load: Vehicle, values: Values) -> Bridge:
    """A bridge with a load by area all over its clear width. Raises OutOfRange, NotMeasured."""
    road, weights = bridge.road, {}
    for truss, items in bridge.weights.items():
        share = shares(road, truss, load, values).one_lane
        along = load.lane_kip_per_ft * share
        words = f"{load.area_psf:g} lb/ft2 x {road.clear_width_ft:g} ft x {share:.4g}"
        weights[truss] = (*items, Weight(
            name=load.name, kip_per_ft=along, kip_at_joints={}, wearing=True,
            working=f"{words} = {along:.4g} kip/ft",
        ))
    floor = bridge.floor
    if floor is not None:
        layer = Layer(
            name=load.name, kip_per_ft2=load.area_kip_per_ft2, width_ft=road.clear_width_ft,
            wearing=True,
        )
        floor = replace(floor, layers=(*floor.layers, layer))
    return replace(
        bridge, weights=weights, floor=floor, roadway=replace(road, surfacing_measured=False)
    )
