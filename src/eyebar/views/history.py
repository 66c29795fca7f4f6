"""What `history` says of a bridge: its form, and its age."""

from dataclasses import dataclass

from eyebar.views.columns import Document, figure, text
from eyebar.views.rounding import plain


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailRow:
    """One detail that tells the age."""

    detail: str = text("Detail", "What was found on the bridge.")
    first: str = figure("From", "The year from which it was usual.")
    last: str = figure("To", "The year until which it was usual.")
    source: str = text("Source", "Where the years come from.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What a bridge is, and how old it may be."""

    bridge: str = text("Bridge", "Name, number and date.")
    forms: tuple[str, ...] = text("Form", "The form of each truss, from its lines alone.")
    age: str = text("Age", "The bracket of years that the details leave open.")
    details: tuple[DetailRow, ...] = text("Details", "What tells the age.")
    contradictions: tuple[str, ...] = text("Contradictions", "Where the facts disagree.")
    cautions: tuple[str, ...] = text("Cautions", "What belongs to every use of the result.")


def told(document: Document) -> Told:
    """The view of a `history` document."""
    bridge, of_age = document["bridge"], document["age"]
    name = ", ".join(filter(None, (bridge["name"], bridge["number"])))
    return Told(
        bridge=f"{name}, as on {document['date']}.",
        forms=tuple(sentence for truss in document["trusses"] for sentence in _truss(truss)),
        age=_age(of_age),
        details=tuple(
            DetailRow(
                detail=one["detail"], first=_year(one["from"]), last=_year(one["to"]),
                source=one["source"] + ("" if one["confirmed"] else " (unconfirmed)"),
            )
            for one in of_age["details"]
        ),
        contradictions=tuple(f"Contradiction: {one}." for one in of_age["contradictions"]),
        cautions=tuple(document["cautions"]),
    )


def _truss(truss: Document) -> list[str]:
    features = "; ".join(truss["features"])
    if truss["form"] is None:
        found = [f"{truss['truss']}: none of the known forms: {features}."]
    else:
        found = [f"{truss['truss']}: {truss['form']}: {features}."]
    recorded = truss["recorded_form"]
    if recorded not in (None, truss["form"], *truss["same_lines"]):
        found.append(f"{truss['truss']}: the record calls it {recorded}; look at it again.")
    found += [f"{truss['truss']}: in doubt: {doubt}." for doubt in truss["doubts"]]
    usual, span = truss["usual_span_ft"], truss["span_ft"]
    if usual and not usual[0] <= span <= usual[1]:
        found.append(
            f"{truss['truss']}: {plain(round(span, 1))} ft is outside the spans usual for this "
            f"form, {plain(usual[0])} to {plain(usual[1])} ft."
        )
    return found


def _age(of_age: Document) -> str:
    built = of_age["built"]
    year = f"The record says built {built}." if built else "The record gives no year."
    first, last = of_age["from"], of_age["to"]
    if not of_age["details"] or not (first or last):
        said = "its details exclude each other" if of_age["contradictions"] and not (
            first or last) else "no detail here tells more"
        return f"{year} By its details: {said}."
    if first and last:
        return f"{year} By its details, {first} to {last}."
    return f"{year} By its details, {f'not before {first}' if first else f'not after {last}'}."


def _year(year: int | None) -> str:
    return "" if year is None else str(year)
