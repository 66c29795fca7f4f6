"""The sizes that nobody has measured, gathered by what is asked."""

from collections.abc import Iterable
from dataclasses import dataclass

from eyebar.views.columns import Document, figure, text
from eyebar.views.not_rated import first_few


@dataclass(frozen=True, slots=True, kw_only=True)
class NotMeasuredRow:
    """The parts of which the same sizes are not measured."""

    what: str = text("Not measured", "The sizes that nobody has measured.")
    count: str = figure("Parts", "Of how many parts.")
    parts: str = text("Which", "Their addresses, the first few.")


def not_measured_rows(parts: Iterable[Document]) -> tuple[NotMeasuredRow, ...]:
    """One row for each set of sizes, from objects with `part` and `what`."""
    asked: dict[str, list[str]] = {}
    for one in parts:
        asked.setdefault(", ".join(one["what"]), []).append(one["part"])
    return tuple(
        NotMeasuredRow(what=what, count=str(len(addresses)), parts=first_few(addresses))
        for what, addresses in asked.items()
    )
