"""What the shortcut would have said: every bar working both ways, against the bars as they are.

Run it from anywhere:  python docs/examples/every_bar_both_ways.py  > docs/both-ways.md
"""

import sys
from pathlib import Path

import numpy as np

from eyebar.analysis.places import places
from eyebar.demo import bridge_records
from eyebar.documents.opened import Opened, opened
from eyebar.rating import PartRating, loaded_states, rated_bridge
from eyebar.terms import Direction, Method

VEHICLE = "Type 3"
METHOD = Method.LOAD_AND_RESISTANCE

HEAD = f"""# What the shortcut would have said

Many ratings let every bar work both ways, as if an eyebar could push. This page shows, bar by bar,
what that shortcut would have made of the demo bridge Quillmarsh (invented), upstream truss, under
the {VEHICLE} truck by load and resistance at the legal level, against the factors of `eyebar rate`.
It is made by `docs/examples/every_bar_both_ways.py`, and a test holds it to the program.

With every bar working both ways forces are linear, so the greatest lie where an axle stands over a
panel point, and the factor is (C - D) / (gL L (1 + I)) with the greatest and the least dead load.
Over 0 % the shortcut makes the bar look stronger than it is.

| bar | kind | exact | shortcut | shortcut over exact |
|---|---|---|---|---|"""


def shortcut(one: Opened, ratings: dict[str, PartRating]) -> dict[str, float]:
    """Bar -> factor with every bar working both ways, for the limits that govern exactly."""
    truss = one.bridge.trusses[0]
    loaded = loaded_states(one.bridge, truss)[0]["none"]
    vehicle = one.vehicles[VEHICLE]
    trains = [
        places(vehicle.axles_kip, vehicle.spacings_ft, loaded.lines.stations_ft, way)
        for way in Direction
    ]
    live = np.concatenate([train.loads @ loaded.lines.units for train in trains])
    found = {}
    for row, bar in enumerate(truss.bars):
        rating = ratings.get(bar.name)
        if rating is None or rating.factor is None or rating.limit is None:
            continue
        force, sense = rating.limit.force, rating.limit.sense
        worst = (sense * live[:, row]).max() * rating.share
        dead = [dc * loaded.dc[row] + dw * loaded.dw[row] for dc, dw in dead_pairs(ratings)]
        effect = rating.live_factor * (1 + rating.impact) * worst
        found[bar.name] = min((sense * force - sense * d) / effect for d in dead)
    return found


def dead_pairs(ratings: dict[str, PartRating]) -> set[tuple[float, float]]:
    """The greatest and the least dead-load factors that governed anywhere."""
    return {rating.dead_factors for rating in ratings.values()}


def page() -> str:
    """The whole page."""
    one = opened(Path(str(bridge_records()["quillmarsh"])))
    rating = rated_bridge(one.bridge, one.values, {VEHICLE: one.vehicles[VEHICLE]})
    name = one.bridge.trusses[0].name
    ratings = {
        part.address.split("/")[-1]: next(r for r in part.ratings if r.method is METHOD)
        for part in rating.parts
        if part.truss == name and part.ratings
    }
    linear = shortcut(one, ratings)
    rows = []
    for bar in one.bridge.trusses[0].bars:
        exact = ratings[bar.name].factor if bar.name in ratings else None
        if exact is None or bar.name not in linear:
            continue
        over = f"{linear[bar.name] / exact - 1:+.0%}".replace("-0%", "+0%") if exact else ""
        rows.append(
            f"| {bar.name} | {bar.kind} | {exact:.2f} | {linear[bar.name]:.2f} | {over} |"
        )
    return "\n".join([HEAD, *rows]) + "\n"


if __name__ == "__main__":
    sys.stdout.write(page())
