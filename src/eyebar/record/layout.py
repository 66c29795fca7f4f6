"""Which joints and bars a record speaks of, the mirror images of a half that is given included.

With `mirrored: true` the panels, depths, joints and bars are those of the half at end 0. What the
span leaves between the two halves is a middle panel; a joint at mid-span is its own image.
"""

import re
from collections.abc import Mapping
from datetime import date

from eyebar.addresses import bar_name, ends_of
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
    """All joints of a truss: those given and their images, or L0 to Ln, U1 to Un-1 of a form."""
    count = panel_count(trusses)
    if trusses.joints is None:
        return (*(f"L{i}" for i in range(count + 1)), *(f"U{i}" for i in range(1, count)))
    if not trusses.mirrored:
        return tuple(trusses.joints)
    images = (mirrored_joint(joint, count) for joint in trusses.joints)
    return tuple(dict.fromkeys((*trusses.joints, *images)))


def floor_joints(trusses: TrussesEntry) -> tuple[str, ...]:
    """The joints that carry the floor, from end 0; of a form, the lower chord's."""
    count = panel_count(trusses)
    if trusses.floor is None:
        return tuple(f"L{i}" for i in range(count + 1))
    if not trusses.mirrored:
        return trusses.floor
    images = (mirrored_joint(joint, count) for joint in reversed(trusses.floor))
    return tuple(dict.fromkeys((*trusses.floor, *images)))


def bars_in(record: Record, truss: str) -> Mapping[str, str]:
    """Bar -> name of its group, for one truss; a bar named by itself before any image."""
    groups = {
        name: group for name, group in record.members.items()
        if group.truss in (BOTH_TRUSSES, truss)
    }
    found = {bar: name for name, group in groups.items() for bar in group.bars}
    if record.trusses.mirrored:
        count = panel_count(record.trusses)
        for name, group in groups.items():
            for bar in group.bars:
                found.setdefault(mirrored_bar(bar, count), name)
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


def mirrored_joint(joint: str, count: int) -> str:
    """The mirror image of a joint: `L3` of ten panels is `L7`; one without a number is its own."""
    found = _NUMBERED.fullmatch(joint)
    if not found or int(found[2]) > count:
        return joint
    return f"{found[1]}{count - int(found[2])}"


def mirrored_bar(bar: str, count: int) -> str:
    """The mirror image of a bar: `U1-L2` of ten panels is `U9-L8`."""
    ends = [mirrored_joint(joint, count) for joint in ends_of(bar)]
    return bar if ends[0] == ends[1] else bar_name("-".join(ends))
