"""What the use of the road is worth, in a table."""

from dataclasses import dataclass

from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text

USES = {
    "curb": "a curb that holds traffic to the middle",
    "walking pace": "every vehicle at walking pace",
    "one at a time": "one vehicle on the bridge at a time",
    "bare deck": "the surfacing taken off",
    "together": "all of them together",
}
"""The uses as they are said to people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UseRow:
    """One use of the road, and the posting then."""

    use: str = text("Use of the road", "The rule, the curb, or what is taken off.")
    limit: str = text("Posting then, tons", "One figure, or single / combination.")
    exact: str = figure("Exact tons", "The least safe load of a single vehicle then.")
    gained: str = figure("Gained", "By how many tons that is more than today.")
    governed: str = text("Governed by", "The part that would govern then.")


def use_rows(document: Document) -> tuple[UseRow, ...]:
    """The rows of a `use` document, today's posting first."""
    now = document["posting"]
    return (
        UseRow(
            use="as it is used today", limit=words.limits_short(now),
            exact=rounding.safe_tons(now["exact_tons"]), gained=rounding.NOTHING,
            governed=_part(now),
        ),
        *(_row(one) for one in document["uses"]),
    )


def _row(one: Document) -> UseRow:
    then = one["then"]
    if then is None:
        return UseRow(use=USES[one["use"]], limit=one["not_here"], exact=rounding.NOTHING,
                      gained=rounding.NOTHING, governed=rounding.NOTHING)
    return UseRow(
        use=USES[one["use"]], limit=words.limits_short(then),
        exact=rounding.safe_tons(then["exact_tons"]), gained=rounding.safe_tons(one["gained_tons"]),
        governed=_part(then),
    )


def _part(posting: Document) -> str:
    return str(posting["governed_by"]["part"]) if posting["governed_by"] else rounding.NOTHING
