"""Which joints and bars a record speaks of, the mirror images of a half that is given included.

With `mirrored: true` the panels, depths, joints and bars are those of the half at end 0. What the
span leaves between the two halves is a middle panel; a joint at mid-span is its own image.
"""

import re
from collections.abc import Iterable, Mapping
from datetime import date
from itertools import pairwise

from eyebar.addresses import bar_name, ends_of, joint_order
from eyebar.record.form_joints import between, floor_of, joints_of
from eyebar.record.members import BOTH_TRUSSES
from eyebar.record.models import Record
from eyebar.record.sections import SectionEntry
from eyebar.record.trusses import TrussesEntry

NEAR = 1
"""Twice the half inch within which a joint counts as standing at mid-span."""
_NUMBERED = re.compile(r"(\D+)(\d+)")


def panel_count(trusses: TrussesEntry) -> int:
    """How many panels the whole truss has; by joints, as many as mirroring needs, else 0."""
    if trusses.joints is not None:
        return _panels_by_joints(trusses) if trusses.mirrored else 0
    panels = trusses.panels or ()
    if not trusses.mirrored:
        return len(panels)
    half = sum(panel.exact for panel in panels)
    middle = trusses.span is not None and trusses.span.exact - 2 * half > NEAR
    return 2 * len(panels) + (1 if middle else 0)


def _panels_by_joints(trusses: TrussesEntry) -> int:
    joints = trusses.joints or {}
    numbers = [_NUMBERED.fullmatch(joint) for joint in joints]
    last = max((int(found[2]) for found in numbers if found), default=0)
    span = trusses.span
    middle = span is not None and any(
        abs(2 * x.exact - span.exact) <= NEAR for x, _ in joints.values()
    )
    return 2 * last if middle else 2 * last + 1


def joint_names(trusses: TrussesEntry) -> tuple[str, ...]:
    """All joints of a truss: those given and their images, or those of its form."""
    if trusses.joints is None:
        return joints_of(trusses.pattern(panel_count(trusses)))
    if not trusses.mirrored:
        return tuple(trusses.joints)
    return tuple(dict.fromkeys((*trusses.joints, *images_of(trusses, trusses.joints))))


def letters_between(trusses: TrussesEntry) -> str:
    """The letters of joints that stand between panel points: `U` in a Warren truss."""
    return "" if trusses.form is None else between(trusses.pattern(panel_count(trusses)))


def images_of(trusses: TrussesEntry, joints: Iterable[str]) -> tuple[str, ...]:
    """The mirror images of joints, in the same order."""
    count, letters = panel_count(trusses), letters_between(trusses)
    return tuple(mirrored_joint(joint, count, letters) for joint in joints)


def all_counters(trusses: TrussesEntry) -> tuple[str, ...]:
    """The counters named, and of a mirrored record their images."""
    named = trusses.counters
    if not trusses.mirrored:
        return named
    count, letters = panel_count(trusses), letters_between(trusses)
    images = (mirrored_bar(counter, count, letters) for counter in named)
    return tuple(dict.fromkeys((*named, *images)))


def floor_joints(trusses: TrussesEntry) -> tuple[str, ...]:
    """The joints that carry the floor, from end 0: those named, or those of the form's chord."""
    if not isinstance(trusses.floor, tuple):
        return floor_of(trusses.pattern(panel_count(trusses)))
    if not trusses.mirrored:
        return trusses.floor
    images = images_of(trusses, reversed(trusses.floor))
    return tuple(dict.fromkeys((*trusses.floor, *images)))


def bearing_joints(trusses: TrussesEntry) -> tuple[str, str]:
    """The joints over the bearings, end 0 first: those named, else the ends of the form's truss.

    Of a truss laid out joint by joint they are the floor's first and last.
    """
    if trusses.bearings.at is not None:
        return trusses.bearings.at
    if trusses.form is None:
        floor = floor_joints(trusses)
        return floor[0], floor[-1]
    count = panel_count(trusses)
    letter = "U" if trusses.pattern(count).hung else "L"
    return f"{letter}0", f"{letter}{count}"


def lateral_panels(record: Record) -> tuple[tuple[str, str], ...]:
    """The panels that the bracing has laterals in, by their two joints, upper ones first."""
    said = record.bracing
    found: list[tuple[str, str]] = []
    for laterals, upper in (
        () if said is None else ((said.top_laterals, True), (said.bottom_laterals, False))
    ):
        if laterals is not None and laterals.joints is not None:
            found += pairwise(laterals.joints)
        elif laterals is not None and upper:
            names = (name for name in joint_names(record.trusses) if name.startswith("U"))
            found += pairwise(sorted(names, key=joint_order))
        elif laterals is not None:
            found += pairwise(floor_joints(record.trusses))
    return tuple((min(ends, key=joint_order), max(ends, key=joint_order)) for ends in found)


def bars_in(record: Record, truss: str) -> Mapping[str, str]:
    """Bar -> name of its group, for one truss; a bar named by itself before any image."""
    groups = {
        name: group for name, group in record.members.items()
        if group.truss in (BOTH_TRUSSES, truss)
    }
    found = {bar: name for name, group in groups.items() for bar in group.bars}
    if record.trusses.mirrored:
        count, letters = panel_count(record.trusses), letters_between(record.trusses)
        for name, group in groups.items():
            for bar in group.bars:
                found.setdefault(mirrored_bar(bar, count, letters), name)
    return found


def section_on(record: Record, part: str, group: str, day: date) -> SectionEntry:
    """The section of a bar of a group on a day: of its latest repair, its override or the group.

    `part` is its address, `upstream/U2-L4`. Of two repairs on one day the later in the file counts.
    """
    repairs = [
        (decision.date, i) for i, decision in enumerate(record.decisions)
        if decision.section is not None and decision.part.part == part and decision.date <= day
    ]
    repaired = record.decisions[max(repairs)[1]].section if repairs else None
    own = record.overrides.get(part)
    return repaired or (own and own.section) or record.members[group].section


def mirrored_joint(joint: str, count: int, letters: str = "") -> str:
    """The mirror image of a joint: `L3` of ten panels is `L7`; one without a number is its own.

    Of a joint whose letter is among `letters`, which stands between panel points, `U3` is `U8`.
    """
    found = _NUMBERED.fullmatch(joint)
    if not found:
        return joint
    number = count - int(found[2]) + (1 if found[1] in letters else 0)
    return f"{found[1]}{number}" if number >= 0 else joint


def mirrored_bar(bar: str, count: int, letters: str = "") -> str:
    """The mirror image of a bar: `U1-L2` of ten panels is `U9-L8`."""
    ends = [mirrored_joint(joint, count, letters) for joint in ends_of(bar)]
    return bar if ends[0] == ends[1] else bar_name("-".join(ends))
