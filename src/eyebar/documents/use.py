"""The `use` document: what rules of the road, a curb, and the asphalt taken off are worth."""

from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.opened import (
    CAUTION,
    CLOSE,
    NOT_ASSUMED_SOUND,
    closing,
    heading,
    opened,
)
from eyebar.documents.rate import if_no_limit, posting_object
from eyebar.rating.posting import Posting
from eyebar.rating.use_worth import Worth, use_worth
from eyebar.record import Record

ENFORCED = (
    "A rule is worth what is told only as long as it is kept: a curb or a fence holds, a sign asks."
)
NOT_COUNTED = "The weight of a curb that would hold traffic to the middle is not counted."


def use_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """The posting as the road is used, and under each other use.

    Raises BadRecord, Unstable, OutOfRange, NotMeasured.
    """
    one = opened(record, on=on, office=office)
    made = use_worth(one.bridge, one.values, one.rated_vehicles)
    posting = made.rating.posting
    return {
        **heading("use", 1, one),
        "posting": {
            **posting_object(posting), "vehicles": list(one.values.names("posting.vehicles")),
        },
        "uses": [_use(worth, posting) for worth in made.worths],
        "unconfirmed": [
            row.name for row in made.values.unconfirmed(sorted(made.values.used))
        ],
        "cautions": [
            *([CLOSE] if posting.closed else []), CAUTION, NOT_ASSUMED_SOUND, ENFORCED,
            NOT_COUNTED, *made.rating.cautions,
        ],
        **closing(one),
    }


def _use(worth: Worth, now: Posting) -> dict[str, Any]:
    then = worth.posting
    if then is None:
        return {"use": str(worth.use), "not_here": worth.not_here, "then": None,
                "gained_tons": None}
    gained = None
    if then.exact_tons is not None and now.exact_tons is not None:
        gained = then.exact_tons - now.exact_tons
    return {
        "use": str(worth.use), "not_here": "", "then": if_no_limit(then), "gained_tons": gained,
    }
