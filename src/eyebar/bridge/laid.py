"""The layout of each truss of a record: by its form, or joint by joint; halves mirrored."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from eyebar.addresses import ends_of
from eyebar.bridge.depths import depths_of
from eyebar.bridge.form_rules import FORMS, broken_rules, broken_shape, shape_rule
from eyebar.bridge.forms import LaidBar, Layout, Sizes
from eyebar.errors import Fault
from eyebar.record import Record, TrussesEntry
from eyebar.record.form_joints import depth_joints
from eyebar.record.layout import all_counters, bars_in, floor_joints, images_of, panel_count
from eyebar.record.tree import Path
from eyebar.terms import Form

EMPTY = Layout(joints={}, bars={}, floor_joints=())
LEAST_FLOOR_JOINTS = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A truss laid out, bar -> its group, and what is wrong with the layout."""

    layout: Layout
    groups: Mapping[str, str]
    faults: tuple[Fault, ...] = ()


def fault(
    record: Record, path: Path, rule: str, *, got: object = "", cure: str = ""
) -> Fault:
    """A fault of a record, with its place in words and its line."""
    return record.fault(path, rule, got=got or None, cure=cure)


def laid_out(record: Record, truss: str) -> Laid:
    """One truss of a record, both halves spelled out; faults are named, never raised."""
    groups = bars_in(record, truss)
    if record.trusses.joints is None:
        layout, faults = _by_form(record)
    else:
        layout, faults = _by_joints(record, groups)
    layout, wrong = _with_floor(record, layout, stagger_ft(record, truss))
    return Laid(layout=layout, groups=groups, faults=(*faults, *wrong))


def stagger_ft(record: Record, truss: str) -> float:
    """How much further from end 0 a truss stands than the middle of a skew bridge does [ft].

    Half the distance of the trusses times the tangent of the skew: back for the truss named first,
    forward for the other. A skew or a distance that nobody measured staggers nothing.
    """
    skew, spacing = record.ends.skew, record.trusses.spacing
    names = record.trusses.names
    if skew is None or spacing is None or len(names) == 1:
        return 0.0
    ahead = spacing.in_unit("ft") / 2.0 * math.tan(math.radians(skew.number))
    return ahead if truss == names[1] else -ahead


def said_of_layout(record: Record) -> tuple[str, ...]:
    """What must be said of how the trusses are laid out: an open panel, a skew, in sentences."""
    trusses = record.trusses
    crossing = {"U1-L2", "U2-L1"} & set(all_counters(trusses))
    if trusses.form is Form.QUEEN_POST and not crossing:
        return (
            "queen post with an open middle panel: it stands by the stiffness of its chords alone,"
            " which is not counted on here; with pin joints it can move, and no forces are found",
            *_said_of_skew(record),
        )
    return _said_of_skew(record)


def _said_of_skew(record: Record) -> tuple[str, ...]:
    """The sentence by which a skew bridge, or one of unknown skew, tells how it is taken."""
    ends = record.ends
    if ends.skew is None:
        if "skew" in ends.model_fields_set:
            return ("skew not measured: the bridge is taken as square to its road",)
        return ()
    ahead = stagger_ft(record, record.trusses.names[-1])
    if not ahead:
        return ()
    first, second = record.trusses.names
    if ahead < 0.0:
        first, second = second, first
    return (
        f"skew of {ends.skew}: station 0 lies where the middle of the road crosses the line of"
        f" bearings at end 0; the panel points of the {second} truss stand {abs(ahead):.2f} ft"
        f" further along the road than from there, those of the {first} truss as much nearer, and"
        " each truss takes an axle as it stands to its own panel points",
    )


def _by_form(record: Record) -> tuple[Layout, list[Fault]]:
    """The layout of a form. Depths that are missing do not hide what else is wrong with it."""
    trusses = record.trusses
    if trusses.form is None:
        return EMPTY, []
    panels = _panels(trusses)
    given, missing = depths_of(trusses, panels)
    depths = {**dict.fromkeys(depth_joints(trusses.pattern(len(panels))), 1.0), **given}
    faults = [
        fault(record, ("trusses", *path), rule, got=got, cure=cure)
        for path, rule, got, cure in missing
    ]
    sizes = Sizes(
        panels=panels, counters=all_counters(trusses), depths=depths,
        end_posts=trusses.end_posts, floor=trusses.floor_on,
        hip=0.0 if trusses.hip is None else trusses.hip.number,
        sub_members=trusses.sub_members,
    )
    broken = tuple(broken_rules(trusses.form, sizes))
    layout = EMPTY if broken else FORMS[trusses.form].lay(sizes)
    if not broken and not missing:
        broken = tuple(broken_shape(trusses.form, sizes, layout))
    for what, got, limit in broken:
        rule, cure = shape_rule(what, limit)
        faults.append(fault(record, ("trusses", what), rule, got=got, cure=cure))
    return layout, faults


def _panels(trusses: TrussesEntry) -> list[float]:
    """All panels [in]; of a mirrored record the half is doubled, round a middle panel if any."""
    half = [panel.number for panel in trusses.panels or ()]
    if not trusses.mirrored:
        return half
    middle = []
    if trusses.span is not None and panel_count(trusses) % 2:
        middle = [trusses.span.number - 2 * sum(half)]
    return [*half, *middle, *reversed(half)]


def _by_joints(record: Record, groups: Mapping[str, str]) -> tuple[Layout, list[Fault]]:
    """Given joint by joint, a truss has the bars that its members name."""
    trusses = record.trusses
    joints = {joint: (x.number, y.number) for joint, (x, y) in (trusses.joints or {}).items()}
    if trusses.mirrored and trusses.span is not None:
        span = trusses.span.number
        names = images_of(trusses, joints)
        images = {
            name: (span - x, y) for name, (x, y) in zip(names, joints.values(), strict=True)
        }
        joints = {**images, **joints}
    bars = {
        bar: LaidBar(name=bar, ends=ends_of(bar), kinds=(record.members[group].kind,))
        for bar, group in groups.items() if all(joint in joints for joint in ends_of(bar))
    }
    return Layout(joints=joints, bars=bars, floor_joints=()), []


def _with_floor(
    record: Record, layout: Layout, ahead_ft: float
) -> tuple[Layout, list[Fault]]:
    """The layout with its floor joints, which go on from end 0 without turning back. One that is
    no joint the record has told.

    Their stations are those of the road, along which a truss of a skew bridge stands ahead.
    """
    if not layout.joints:
        return layout, []
    path = ("trusses", "floor")
    floor = floor_joints(record.trusses)
    stations = tuple(
        (joint, layout.joints[joint][0] / 12.0 + ahead_ft)
        for joint in floor if joint in layout.joints
    )
    faults = [
        fault(record, path, f"does not lie beyond {before}", got=joint,
              cure="name the floor's joints in order, from end 0")
        for (before, first), (joint, second) in pairwise(stations) if second <= first
    ]
    if len(floor) < LEAST_FLOOR_JOINTS:
        faults.append(fault(record, path, "has fewer than two joints"))
    return replace(layout, floor_joints=stations), faults
