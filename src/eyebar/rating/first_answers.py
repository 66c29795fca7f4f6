"""Who may cross on the road as it is used: one more rating, and no conditions looked for."""

from collections.abc import Sequence
from dataclasses import replace

from eyebar.bridge.parts import ANY_USE, Bridge
from eyebar.rating.crossing import Crossing, Must, Rater, Way, allows, begun, open_still
from eyebar.rating.kept import Kept
from eyebar.rating.posted import posted_for
from eyebar.rating.posting import wanted_by
from eyebar.rating.rated import BridgeRating
from eyebar.terms import Answer, Combine, Condition
from eyebar.vehicles import Vehicle

NOT_LOOKED_FOR = "not as the road is used"
SHUT = "the bridge is closed, or may have to be"
NOT_ALL_OVER = "not rated here"


def first_answers(
    bridge: Bridge, rating: BridgeRating, kept: Kept, asked: Sequence[Vehicle]
) -> tuple[Crossing, ...]:
    """A yes for each vehicle that may cross as it comes, with a permit where only the sign holds it
    off; for every other a no, with the reason.

    `rating` is the bridge's own, `kept` what it left. Loads by area are not rated: their answer is
    no. Nothing is rated for a bridge that is closed or may have to be: there the answer is no too.
    """
    rater = Rater(bridge=bridge, kept=replace(kept, wanted=wanted_by(kept.values)))
    clear = bridge.road.clear_width_ft
    posting, values = rating.posting, kept.values
    shut = posting.closed is not False
    rated = [] if shut else [
        one for one in asked if one.combine is not Combine.AREA and one.width_ft <= clear
    ]
    factors = rater.least(rated, ANY_USE)
    least = dict(zip([one.name for one in rated], factors, strict=True))
    found = []
    for one in asked:
        answer = begun(
            one, least.get(one.name), posted_for(one, posting, values),
            clear_ft=clear, shut=SHUT if shut else "",
        )
        found.append(_answered(answer) if open_still(answer) else answer)
    return tuple(found)


def _answered(one: Crossing) -> Crossing:
    """An answer that is still open: what is over the sign alone may cross with a permit."""
    if one.vehicle.combine is Combine.AREA:
        return replace(one, reason=NOT_ALL_OVER)
    if not allows(one.by):
        return replace(one, reason=NOT_LOOKED_FOR)
    permit = Way(
        conditions=(Must(condition=Condition.PERMIT),), vehicle=one.vehicle, use=ANY_USE, by=one.by
    )
    return replace(one, answer=Answer.CONDITIONS, ways=(permit,))
