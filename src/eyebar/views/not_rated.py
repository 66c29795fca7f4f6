"""The parts that are not rated, gathered by the reason."""

from collections.abc import Iterable
from dataclasses import dataclass

from eyebar.views.columns import Document, figure, text

NAMED = 3
"""How many addresses stand in a row before it breaks off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotRatedRow:
    """The parts that are not rated for one reason."""

    reason: str = text("Not rated because", "Why the parts have no factor.")
    count: str = figure("Parts", "How many parts have this reason.")
    parts: str = text("Which", "Their addresses, the first few.")


def not_rated_rows(parts: Iterable[Document]) -> tuple[NotRatedRow, ...]:
    """One row for each reason, from objects with `part` and perhaps `not_rated`.

    A reason that names its own part (`thickness of upstream/U2-L4 not measured`) is gathered with
    its like by leaving the name to the last column.
    """
    reasons: dict[str, list[str]] = {}
    for one in parts:
        if one.get("not_rated"):
            reason = one["not_rated"].replace(f" of {one['part']}", "")
            reasons.setdefault(reason, []).append(one["part"])
    return tuple(
        NotRatedRow(
            reason=reason,
            count=str(len(addresses)),
            parts=first_few(addresses),
        )
        for reason, addresses in reasons.items()
    )


def first_few(addresses: list[str]) -> str:
    """The first few addresses in one line."""
    return ", ".join([*addresses[:NAMED], *(["..."] if len(addresses) > NAMED else [])])
