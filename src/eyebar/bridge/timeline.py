"""What was found and decided on one part up to a date.

A repair that gives a new section replaces the old one, and readings taken before that day are
dropped. A repair without a section sets a loose, broken or cracked bar right, and no more: the iron
is as thin as it was read. Readings of the day itself are kept.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from eyebar.addresses import LOOSE
from eyebar.record import Decided, DecisionEntry, ReadingEntry, Record, SectionEntry, What

Findings = tuple[tuple[date, ReadingEntry], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartState:
    """A part on a date: what was decided about it that still stands, and its readings.

    `section` and `material` are those of a repair, or None; `broken` and `loose` are the decisions
    in force, `crack` and `gap` what to say of one that was found and that nothing has mended.
    """

    section: SectionEntry | None = None
    material: str | None = None
    broken: DecisionEntry | None = None
    loose: DecisionEntry | None = None
    pull: DecisionEntry | None = None
    crack: str = ""
    gap: str = ""
    readings: Findings = ()
    rules: tuple[str, ...] = field(default=())


def latest_entry(record: Record) -> date | None:
    """The date of the latest inspection or decision; None where there is none."""
    dates = [one.date for one in record.inspections] + [one.date for one in record.decisions]
    return max(dates, default=None)


def readings_by_part(record: Record, on: date) -> Mapping[str, Findings]:
    """Part -> its readings up to a date, the oldest first."""
    found: dict[str, list[tuple[date, ReadingEntry]]] = {}
    for inspection in sorted(record.inspections, key=lambda one: one.date):
        if inspection.date <= on:
            for reading in inspection.readings:
                part = _whole_bar(reading.part.part)
                found.setdefault(part, []).append((inspection.date, reading))
    return {part: tuple(readings) for part, readings in found.items()}


def decisions_by_part(record: Record, on: date) -> Mapping[str, tuple[DecisionEntry, ...]]:
    """Part -> the decisions on it up to a date, the oldest first."""
    found: dict[str, list[DecisionEntry]] = {}
    for decision in sorted(record.decisions, key=lambda one: one.date):
        if decision.date <= on:
            found.setdefault(_whole_bar(decision.part.part), []).append(decision)
    return {part: tuple(decisions) for part, decisions in found.items()}


def part_state(
    part: str, readings: Findings, decisions: Iterable[DecisionEntry]
) -> PartState:
    """The state that decisions, in order, and readings leave a part in."""
    section: SectionEntry | None = None
    material: str | None = None
    standing: dict[Decided, DecisionEntry] = {}
    renewed: date | None = None
    mended: date | None = None
    rules = []
    for decision in decisions:
        if decision.what is not Decided.REPAIR:
            standing[decision.what] = _standing(standing.get(decision.what), decision)
            continue
        standing.clear()
        mended = decision.date
        if decision.section is not None:
            section, renewed = decision.section, decision.date
            material = decision.material or material
            rules.append(f"{part}: replaced on {decision.date}; readings before it are dropped")
        else:
            rules.append(
                f"{part}: repaired on {decision.date} without a new section: what was loose, broken"
                " or cracked is taken as set right, readings before it still hold"
            )
    kept = tuple(
        (day, reading) for day, reading in readings if renewed is None or day >= renewed
    )
    loose = standing.get(Decided.LOOSE)
    rules += _pulls(part, kept, standing.get(Decided.PULL_ACCEPTED))
    return PartState(
        section=section, material=material, broken=standing.get(Decided.BROKEN), loose=loose,
        pull=standing.get(Decided.PULL_ACCEPTED),
        crack=_crack(standing.get(Decided.CRACK_FOUND), _last(What.CRACK, kept, mended)),
        gap="" if loose is not None else _gap(_last(What.GAP, kept, mended)),
        readings=kept, rules=tuple(rules),
    )


def _standing(before: DecisionEntry | None, decision: DecisionEntry) -> DecisionEntry:
    """What holds after a decision of one sort: it takes the place of one on the same pieces.

    Those that were decided on before and are not named again stay as they are; where gaps differ
    the widest holds for all, and where one is not known none of them works.
    """
    if before is None or decision.pieces is None:
        return decision
    if before.pieces is not None and set(before.pieces) <= set(decision.pieces):
        return decision
    pieces = None if before.pieces is None else tuple(sorted({*before.pieces, *decision.pieces}))
    gaps = (before.gap, decision.gap)
    gap = None if None in gaps else max(gaps, key=lambda one: one.exact if one else 0)
    return decision.model_copy(update={"pieces": pieces, "gap": gap})


def _whole_bar(part: str) -> str:
    """What is said of the loose pieces of a bar is kept with the bar."""
    return part.removesuffix(LOOSE)


def _last(what: What, readings: Findings, mended: date | None) -> date | None:
    """The day of the latest reading of this, if no repair came after it."""
    days = [
        day for day, reading in readings
        if reading.what is what and (mended is None or day >= mended)
    ]
    return max(days, default=None)


def _crack(decided: DecisionEntry | None, read: date | None) -> str:
    if decided is not None:
        return f"cracked, found on {decided.date}: repair it, or declare it broken"
    if read is not None:
        return f"a crack was read on {read}: decide on it, repair the bar, or declare it broken"
    return ""


def _gap(read: date | None) -> str:
    if read is None:
        return ""
    return f"a gap was read on {read}: declare the bar loose, or repair it"


def _pulls(part: str, readings: Findings, accepted: DecisionEntry | None) -> list[str]:
    """A pull that was read and not accepted is not used."""
    if accepted is not None:
        return []
    return [
        f"{part}: a pull of {reading.value} was read on {day}; it is not used until it is accepted"
        for day, reading in readings if reading.what is What.PULL
    ]


def superstructure_code(record: Record, on: date) -> int | None:
    """The superstructure's code: the latest given up to the date, else the record's own."""
    given = [
        (inspection.date, inspection.condition.superstructure)
        for inspection in record.inspections
        if inspection.date <= on and inspection.condition is not None
        and inspection.condition.superstructure is not None
    ]
    return max(given)[1] if given else record.condition.superstructure
