"""The paper of a bridge that cannot be rated: what is missing, and how to bring it."""

from collections.abc import Iterable
from dataclasses import dataclass

from eyebar.errors import Fault
from eyebar.views.blocks import Block, Paragraph, Points, Section, table
from eyebar.views.columns import Document, figure, text

TITLE = "What a load rating still needs"
NOT_RATED = "This bridge is not rated. No load can be called safe."
FAULTS = (
    "The record has faults; each stands with its line, the rule, and how to mend it. Nothing was "
    "calculated from it."
)
NOT_STABLE = "The trusses as recorded find no equilibrium."
NOT_SIGNED = "There is no rating here to sign."


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultRow:
    """One fault of a record."""

    line: str = figure("Line", "The line of the record.")
    where: str = text("Where", "The place in the record.")
    fault: str = text("What is wrong", "What was found, and the rule.")
    cure: str = text("Cure", "What to write.")


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedRow:
    """Sizes to be measured, or reasons to be cleared, with all the parts that wait for them."""

    what: str = text("Missing", "What is not measured, or why parts are not rated.")
    count: str = figure("Parts", "How many parts.")
    parts: str = text("Which", "All of them.")


def of_faults(faults: Iterable[Fault]) -> tuple[Section, ...]:
    """The faults of a record."""
    rows = [
        FaultRow(
            line="" if one.line is None else str(one.line), where=one.where,
            fault=f"{one.got} {one.rule}".strip(), cure=one.cure,
        )
        for one in faults
    ]
    return (Section(heading="Faults of the record", blocks=(
        Paragraph(text=FAULTS),
        table(FaultRow, rows, caption=f"{len(rows)} faults" if len(rows) != 1 else "One fault",
              shares=(0, 3, 4, 4)),
    )),)


def of_refusal(refusal: str) -> tuple[Section, ...]:
    """A truss that cannot stand as it is recorded."""
    return (Section(heading="Why it is not rated", blocks=(
        Paragraph(text=NOT_STABLE), Paragraph(text=refusal, tone="accent"),
    )),)


def of_documents(rate: Document, describe: Document) -> tuple[Section, ...]:
    """A record without faults of which no part can be rated: every reason, every open size."""
    reasons = _asked((one["part"], one.get("not_rated", "")) for one in rate["parts"])
    sizes = _asked((one["part"], ", ".join(one["what"])) for one in describe["not_measured"])
    blocks: list[Block] = []
    if describe["unknown_loads"]:
        blocks.append(Paragraph(text="Without these weights no part can be rated:", tone="strong"))
        blocks.append(Points(points=tuple(describe["unknown_loads"])))
    for caption, rows in (("To be measured", sizes), ("Not rated because", reasons)):
        if rows:
            blocks.append(table(AskedRow, rows, caption=caption, shares=(4, 0, 6)))
    return (Section(heading="What is missing", blocks=tuple(blocks)),)


def _asked(pairs: Iterable[tuple[str, str]]) -> list[AskedRow]:
    found: dict[str, list[str]] = {}
    for part, why in pairs:
        if why:
            found.setdefault(why.replace(f" of {part}", ""), []).append(part)
    return [
        AskedRow(what=what, count=str(len(parts)), parts=", ".join(parts))
        for what, parts in found.items()
    ]
