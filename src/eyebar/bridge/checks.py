"""Where a record and its form of truss do not agree, all of it at once.

What can be told without laying out the truss the record has told by itself; here stands the rest:
bars that the form has not, or that no group has, kinds that do not fit, what cannot push.
"""

from collections.abc import Iterator, Mapping

from eyebar.bridge.laid import Laid, fault, laid_out
from eyebar.bridge.members import Member, member
from eyebar.errors import Fault, did_you_mean
from eyebar.record import Record, SectionEntry
from eyebar.terms import BAR_KINDS, Kind

CURB_TOLERANCE = 1.0
"""Curbs and clear width may miss the trusses' distance by an inch."""


def form_faults(record: Record) -> tuple[Fault, ...]:
    """What is wrong with a record once its trusses are laid out, in the order of its lines."""
    found: dict[tuple[str, str, str], Fault] = {}
    laid = {truss: laid_out(record, truss) for truss in record.trusses.names}
    for one in (
        *(one for truss, its in laid.items() for one in _truss_faults(record, truss, its)),
        *_missing_bars(record, laid), *_curb_faults(record),
    ):
        found.setdefault((one.where, one.got, one.rule), one)
    return tuple(sorted(found.values(), key=lambda one: one.line or 0))


def pushes(said: Member) -> bool | None:
    """Whether a bar can push; None where neither its kind nor its section nor the record tells.

    Eyebars and rods go slack instead, and a counter is there to pull unless the record says that
    it pushes, as the counterbraces of a Howe truss do.
    """
    if _slender(said.section):
        return False
    if said.kind is Kind.COUNTER:
        return bool(said.can_push)
    if said.can_push is not None or said.section.given is not None:
        return said.can_push
    return True


def _slender(section: SectionEntry) -> bool:
    return section.eyebars is not None or section.rods is not None or section.loop_rods is not None


def _truss_faults(record: Record, truss: str, laid: Laid) -> Iterator[Fault]:
    yield from laid.faults
    if not laid.layout.joints:
        return
    for bar, group in laid.groups.items():
        said = member(record, truss, bar, group)
        yield from _bar_faults(record, laid, said)


def _missing_bars(record: Record, laid: Mapping[str, Laid]) -> Iterator[Fault]:
    """Bars of the form that no group has; said once where both trusses miss the same."""
    missing = {
        truss: tuple(bar for bar in its.layout.bars if bar not in its.groups)
        for truss, its in laid.items()
    }
    alike = len(set(missing.values())) == 1
    for truss, bars in missing.items():
        if bars:
            of = "" if alike else f" of the {truss} truss"
            yield fault(
                record, ("members",), f"has no group for {', '.join(bars)}{of}",
                cure="add each to the bars of the group that it is like",
            )


def _bar_faults(record: Record, laid: Laid, said: Member) -> Iterator[Fault]:
    layout = laid.layout
    by_form = record.trusses.form
    if said.bar not in layout.bars:
        if by_form is not None and all(joint in layout.joints for joint in said.bar.split("-")):
            panels = len(layout.floor_joints) - 1
            yield fault(
                record, ("members", said.group, "bars"),
                f"is no bar of a {by_form} truss of {panels} panels", got=said.bar,
                cure=f"{did_you_mean(said.bar, layout.bars)} a counter stands under 'counters' too",
            )
        return
    kinds = layout.bars[said.bar].kinds
    if by_form is not None and said.kind not in kinds:
        yield fault(
            record, (*said.path, "kind"), f"is not what {said.bar} is: a {kinds[0]}",
            got=said.kind, cure=f"write '{kinds[0]}', or put the bar into another group",
        )
    elif said.kind not in BAR_KINDS:
        yield fault(
            record, (*said.path, "kind"), f"is no bar of a truss, as {said.bar} is",
            got=said.kind, cure=f"write one of: {', '.join(BAR_KINDS)}",
        )
    if said.can_push and pushes(said) is False:
        yield fault(
            record, (*said.path, "can push"), f"cannot be: {said.bar} would buckle or go slack",
            got="true", cure="leave it out: eyebars and rods only pull",
        )
    if pushes(said) is False and not said.can_pull:
        yield fault(
            record, said.path, f"leaves {said.bar} nothing to do: it can neither push nor pull",
            cure="leave 'can pull: false' out",
        )
    if pushes(said) is None:
        yield fault(
            record, said.path, f"does not tell whether {said.bar} can push",
            cure="write 'can push: true' or 'can push: false'",
        )


def _curb_faults(record: Record) -> Iterator[Fault]:
    """Curbs that leave another width than the clear one between them."""
    floor, names = record.floor, record.trusses.names
    curbs = {
        truss: curb.number for truss, curb in floor.curbs.items()
        if truss in names and curb is not None
    }
    if not floor.curbs:
        yield fault(
            record, ("floor",), "gives no curb", cure=f"write 'curb to {names[0]} truss: 1 ft'"
        )
    spacing, clear = record.trusses.spacing, floor.clear_width
    if len(curbs) == len(names) > 1 and spacing is not None and clear is not None:
        between = spacing.number - sum(curbs.values())
        if abs(between - clear.number) > CURB_TOLERANCE:
            yield fault(
                record, ("floor", "clear width"),
                f"does not fit: the curbs leave {between / 12:g} ft between them",
                got=clear,
                cure="measure the curbs and the distance of the trusses again",
            )
