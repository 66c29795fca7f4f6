"""What `check` says of a record without faults."""

from dataclasses import dataclass

from eyebar.views.columns import Document, text
from eyebar.views.not_measured import NotMeasuredRow, not_measured_rows
from eyebar.views.not_rated import NotRatedRow, not_rated_rows


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A record without faults."""

    verdict: str = text("Verdict", "That there is no fault, and what the record holds.")
    rules: tuple[str, ...] = text("Decided", "The rules by which the state on the date was made.")
    not_measured: tuple[NotMeasuredRow, ...] = text(
        "Not measured", "Sizes that nobody has measured: questions that are open."
    )
    not_rated: tuple[NotRatedRow, ...] = text("Not rated", "Parts that will have no factor.")


def checked(document: Document) -> Checked:
    """The view of a `check` document."""
    bridge, trusses, bars = document["bridge"], document["trusses"], document["bars"]
    name = ", ".join(filter(None, (bridge["name"], bridge["number"])))
    return Checked(
        verdict=f"No fault. {name}, as on {document['date']}: {trusses} trusses, {bars} bars.",
        rules=tuple(document["rules"]),
        not_measured=not_measured_rows(document["not_measured"]),
        not_rated=not_rated_rows(document["not_rated"]),
    )
