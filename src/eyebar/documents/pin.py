"""What the `explain` document says of a pin: its packing, and what acts along it."""

from typing import Any

import numpy as np

from eyebar.bridge.parts import Bridge, Pin
from eyebar.office import Values
from eyebar.rating import PartRating
from eyebar.rating.pin_checks import pin_check, pin_rows
from eyebar.rating.pin_working import reached, rules_of


def pin_object(
    bridge: Bridge, pin: Pin, rating: PartRating, values: Values
) -> dict[str, Any] | None:
    """A pin with the forces under which its check is reached; None where there are none.

    Pairs are horizontal and upright; a load towards higher stations, or up, is positive.
    """
    if rating.pin_facts is None:
        return None
    rows, forces = pin_rows(pin), reached(rating.pin_facts)
    used = pin_check(rows, rules_of(bridge, rating, values)).ratios(forces)
    # Checks stand group by group, each with one figure a bearing.
    most = used.reshape(-1, len(pin.packing)).max(axis=0)
    along = {
        "load_kip": rows.loads @ forces, "shear_kip": rows.shears @ forces,
        "moment_kip_in": rows.moments @ forces, "spread_moment_kip_in": rows.eased @ forces,
    }
    return {
        "diameter_in": pin.diameter,
        "half": pin.whole < 1.0,
        "proposed": pin.proposed,
        "forces_kip": dict(zip(rows.bars, np.asarray(forces).tolist(), strict=True)),
        "bearings": [
            {
                "bars": list(one.bars),
                "hung": one.hung,
                "middle": one.middle,
                "along_in": one.along,
                "thickness_in": one.thickness,
                "share": one.share,
                **{name: row[i].tolist() for name, row in along.items()},
                "used": float(most[i]),
            }
            for i, one in enumerate(pin.packing)
        ],
    }
