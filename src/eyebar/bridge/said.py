"""What groups and overrides say of their bars, held against the form: kinds, who can push.

One word may be wrong for many bars; it is told once, with all of them.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from eyebar.bridge.forms import LaidBar
from eyebar.bridge.laid import Laid, fault
from eyebar.bridge.members import Member, member
from eyebar.bridge.shaped import shaped
from eyebar.errors import Fault, NotMeasured, OutOfRange
from eyebar.record import Record, SectionEntry
from eyebar.record.doubt import in_doubt
from eyebar.record.known import Known
from eyebar.record.tree import Path
from eyebar.sections.properties import properties
from eyebar.terms import BAR_KINDS, Kind

DECIDING = ("kind", "section", "can push", "can pull")
"""Keys of a group that decide whether its bars push and pull."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finding:
    """What is wrong with one word of the record; `rule` and `rules` for one bar and for many."""

    path: Path
    rule: str
    rules: str
    got: str = ""
    cure: str


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


def said_faults(known: Known, laid: Mapping[str, Laid]) -> Iterator[Fault]:
    """Words that do not fit the bars they are said of. Without a layout only what it takes none
    for."""
    record = known.record
    doubtful = {
        group: {key for key in DECIDING if in_doubt(record, "members", group, key)}
        for group in record.members
    }
    found: dict[_Finding, dict[str, None]] = {}
    for truss, bars in known.bars.items():
        for bar, group in bars.items():
            if f"{truss}/{bar}" in known.doubtful:
                continue
            said = member(record, truss, bar, group)
            of_form = laid[truss].layout.bars.get(bar) if truss in laid else None
            if of_form is not None and "kind" not in doubtful[group]:
                for one in _kind(said, of_form, by_form=record.trusses.form is not None):
                    found.setdefault(one, {})[bar] = None
            for one in () if doubtful[group] else _work(said):
                found.setdefault(one, {})[bar] = None
    for one, named in found.items():
        rule = one.rule if len(named) == 1 else one.rules
        yield fault(
            record, one.path, rule.format(bars=", ".join(named)), got=one.got, cure=one.cure
        )


def section_faults(record: Record) -> Iterator[Fault]:
    """Sections whose pieces do not fit each other: flanges that overlap, webs of unequal depth."""
    sections: dict[Path, SectionEntry | None] = {
        ("members", name, "section"): group.section for name, group in record.members.items()
    }
    sections |= {
        ("overrides", part, "section"): own.section for part, own in record.overrides.items()
    }
    sections |= {
        ("decisions", i, "section"): decision.section
        for i, decision in enumerate(record.decisions)
    }
    for path, section in sections.items():
        if section is None or in_doubt(record, *path):
            continue
        try:
            properties(shaped(section))
        except OutOfRange as refused:
            yield fault(record, path, f"{refused}", cure="measure it again")
        except NotMeasured:
            continue


def _kind(said: Member, laid: LaidBar, *, by_form: bool) -> Iterator[_Finding]:
    if by_form and said.kind not in laid.kinds:
        kind = laid.kinds[0]
        yield _Finding(
            path=(*said.path, "kind"), got=said.kind, rule=f"is not what {{bars}} is: a {kind}",
            rules=f"is not what {{bars}} are: {kind}s",
            cure=f"write '{kind}', or put the bar into another group",
        )
    elif said.kind not in BAR_KINDS:
        yield _Finding(
            path=(*said.path, "kind"), got=said.kind, rule="is no bar of a truss, as {bars} is",
            rules="is no bar of a truss, as {bars} are",
            cure=f"write one of: {', '.join(BAR_KINDS)}",
        )


def _work(said: Member) -> Iterator[_Finding]:
    """Bars that are said to push and cannot, or to do nothing; and where nobody says."""
    push = pushes(said)
    if said.can_push and push is False:
        rule = "cannot be: {bars} would buckle or go slack"
        yield _Finding(path=(*said.path, "can push"), got="true", rule=rule, rules=rule,
                       cure="leave it out: eyebars and rods only pull")
    if push is False and not said.can_pull:
        yield _Finding(
            path=said.path, cure="leave 'can pull: false' out",
            rule="leaves {bars} nothing to do: it can neither push nor pull",
            rules="leaves {bars} nothing to do: they can neither push nor pull",
        )
    if push is None:
        rule = "does not tell whether {bars} can push"
        yield _Finding(path=said.path, rule=rule, rules=rule,
                       cure="write 'can push: true' or 'can push: false'")
