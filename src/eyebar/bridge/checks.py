"""Where a record and its form of truss do not agree, all of it at once.

What can be told without laying out the truss the record has told by itself; here stands the rest:
bars that the form has not, or that no group has, kinds that do not fit, what cannot push. A record
with faults is looked over too: what its faults leave in doubt is not judged.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from eyebar.bridge.laid import Laid, fault, laid_out
from eyebar.bridge.said import said_faults, section_faults
from eyebar.errors import Fault, did_you_mean
from eyebar.record import Record
from eyebar.record.doubt import in_doubt, may_be
from eyebar.record.known import Known
from eyebar.record.layout import all_counters
from eyebar.record.reading import Examined
from eyebar.terms import Kind

CURB_TOLERANCE = 1.0
"""Curbs and clear width may miss the trusses' distance by an inch."""


def form_faults(known: Known, laid: Mapping[str, Laid]) -> tuple[Fault, ...]:
    """What is wrong with a record once its trusses are laid out, in the order of its lines.

    Without a layout of a truss only what it takes none for.
    """
    found = (
        *(one for its in laid.values() for one in its.faults), *_misplaced(known, laid),
        *_strange_bars(known, laid), *_missing_bars(known, laid), *said_faults(known, laid),
        *_curb_faults(known), *section_faults(known.record),
    )
    return tuple(dict.fromkeys(sorted(found, key=lambda one: one.line or 0)))


def own_faults(found: Examined) -> tuple[Fault, ...]:
    """The faults that a record tells by itself, without those that its form tells better.

    A reading on a bar that the form has and no group is no slip in the reading.
    """
    if found.record is None or not found.unplaced:
        return found.faults
    bars = {
        truss: laid_out(found.record, truss).layout.bars for truss in found.record.trusses.names
    }
    return tuple(
        fault for fault in found.faults
        if (part := found.unplaced.get(fault)) is None
        or found.record.trusses.form is None
        or "-".join(part.bar or ()) not in bars[part.truss]
    )


def _misplaced(known: Known, laid: Mapping[str, Laid]) -> Iterator[Fault]:
    """Counters that cross no panel as a counter does; one that no group has is told already."""
    record = known.record
    for truss, its in laid.items():
        for counter in its.layout.misplaced:
            if counter in record.trusses.counters and counter in known.bars[truss]:
                yield fault(
                    record, ("trusses", "counters"), f"is no counter of {_form(record, its)}",
                    got=counter, cure="name a diagonal that crosses a main one, upper joint first",
                )


def _strange_bars(known: Known, laid: Mapping[str, Laid]) -> Iterator[Fault]:
    """Bars between two joints of the form that are none of its bars."""
    record = known.record
    if record.trusses.form is None:
        return
    untold = [counter for counter in record.trusses.counters if not _has(known, counter)]
    for its in laid.values():
        strange: dict[str, list[str]] = defaultdict(list)
        for bar, group in its.groups.items():
            meant = any(may_be(counter, (bar,)) for counter in untold) or (
                in_doubt(record, "trusses", "counters") and _may_counter(record, group)
            )
            if _strange(its, bar) and bar not in its.layout.misplaced and not meant:
                strange[group].append(bar)
        for group, bars in strange.items():
            rule = "is no bar of" if len(bars) == 1 else "are no bars of"
            yield fault(
                record, ("members", group, "bars"), f"{rule} {_form(record, its)}",
                got="', '".join(bars), cure=f"{did_you_mean(bars[0], its.layout.bars)} a counter"
                " stands under 'counters' too",
            )


def _strange(its: Laid, bar: str) -> bool:
    joints = its.layout.joints
    return bar not in its.layout.bars and all(joint in joints for joint in bar.split("-"))


def _has(known: Known, bar: str) -> bool:
    return any(bar in bars for bars in known.bars.values())


def _may_counter(record: Record, group: str) -> bool:
    kind = record.members[group].kind
    return kind is Kind.COUNTER or in_doubt(record, "members", group, "kind")


def _form(record: Record, its: Laid) -> str:
    return f"a {record.trusses.form} truss of {len(its.layout.floor_joints) - 1} panels"


def _missing_bars(known: Known, laid: Mapping[str, Laid]) -> Iterator[Fault]:
    """Bars of the form that no group has; said once where both trusses miss the same.

    One that a bar astray may be meant for is not missing, nor is a counter that was told of.
    """
    if not known.trusses_known:
        return
    told = [bar for bar in all_counters(known.record.trusses) if not _has(known, bar)]
    missing = {
        truss: tuple(
            bar for bar in its.layout.bars
            if bar not in its.groups and bar not in told and not may_be(bar, _astray(known, its))
        )
        for truss, its in laid.items()
    }
    alike = len(set(missing.values())) == 1
    for truss, bars in missing.items():
        if bars:
            of = "" if alike else f" of the {truss} truss"
            yield fault(
                known.record, ("members",), f"has no group for {', '.join(bars)}{of}",
                cure="add each to the bars of the group that it is like",
            )


def _astray(known: Known, its: Laid) -> tuple[str, ...]:
    return (*known.lost, *(bar for bar in its.groups if _strange(its, bar)))


def _curb_faults(known: Known) -> Iterator[Fault]:
    """Curbs that leave another width than the clear one between them."""
    record = known.record
    floor, names = record.floor, record.trusses.names
    if any(hole[:1] == ("floor",) and str(hole[-1]).startswith(("floor", "curb"))
           for hole in record.source.holes):
        return
    if not floor.curbs:
        yield fault(
            record, ("floor",), "gives no curb", cure=f"write 'curb to {names[0]} truss: 1 ft'"
        )
    curbs = {
        truss: curb.number for truss, curb in floor.curbs.items()
        if truss in names and curb is not None
    }
    spacing, clear = record.trusses.spacing, floor.clear_width
    if spacing is None or clear is None or not known.trusses_known or any(
        in_doubt(record, *path) for path in (("trusses", "spacing"), ("floor", "clear width"))
    ):
        return
    if len(curbs) == len(names) > 1:
        between = spacing.number - sum(curbs.values())
        if abs(between - clear.number) > CURB_TOLERANCE:
            yield fault(
                record, ("floor", "clear width"),
                f"does not fit: the curbs leave {between / 12:g} ft between them",
                got=clear,
                cure="measure the curbs and the distance of the trusses again",
            )
