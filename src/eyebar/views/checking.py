"""What `check` says of a record without faults."""

from dataclasses import dataclass

from eyebar.views.columns import Document, text


@dataclass(frozen=True, slots=True, kw_only=True)
class PartNotRated:
    """One part that will not be rated as the record stands."""

    part: str = text("Part", "Address of the part.")
    reason: str = text("Not rated because", "What is missing.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A record without faults."""

    verdict: str = text("Verdict", "That there is no fault, and what the record holds.")
    rules: tuple[str, ...] = text("Decided", "The rules by which the state on the date was made.")
    not_rated: tuple[PartNotRated, ...] = text("Not rated", "Parts that lack a measurement.")


def checked(document: Document) -> Checked:
    """The view of a `check` document."""
    bridge, trusses, bars = document["bridge"], document["trusses"], document["bars"]
    name = ", ".join(filter(None, (bridge["name"], bridge["number"])))
    return Checked(
        verdict=f"No fault. {name}, as on {document['date']}: {trusses} trusses, {bars} bars.",
        rules=tuple(document["rules"]),
        not_rated=tuple(
            PartNotRated(part=one["part"], reason=one["not_rated"]) for one in document["not_rated"]
        ),
    )
