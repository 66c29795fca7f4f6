"""The layout of each truss of a record: by its form, or joint by joint; halves mirrored."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from eyebar.addresses import ends_of
from eyebar.bridge.depths import depths_of
from eyebar.bridge.form_rules import layout_of
from eyebar.bridge.forms import LaidBar, Layout, Sizes
from eyebar.errors import Fault, OutOfRange, did_you_mean
from eyebar.record import Record, TrussesEntry
from eyebar.record.layout import (
    bars_in,
    floor_joints,
    images_of,
    letters_between,
    mirrored_bar,
    panel_count,
)

EMPTY = Layout(joints={}, bars={}, floor_joints=())
LEAST_FLOOR_JOINTS = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A truss laid out, bar -> its group, and what is wrong with the layout."""

    layout: Layout
    groups: Mapping[str, str]
    faults: tuple[Fault, ...] = ()


def fault(
    record: Record, path: Sequence[str | int], rule: str, *, got: object = "", cure: str = ""
) -> Fault:
    """A fault of a record, with its place in words and its line."""
    where = " > ".join(str(step + 1) if isinstance(step, int) else step for step in path)
    return Fault(
        where=where, rule=rule, got=f"'{got}'" if got else "", cure=cure,
        line=record.line_of(*path),
    )


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


def said_of_skew(record: Record) -> tuple[str, ...]:
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


CURES = {
    "panels": "look at the form and the panels",
    "end posts": "write how this truss ends, or lay it out joint by joint",
    "floor": "write the chord that carries the floor, or lay it out joint by joint",
    "hip": "measure from the bearing to the hip, along the road",
    "depths": "look at the depths and at the word for the form",
}
"""What of the form a layout was refused for -> what to do about it."""


def _by_form(record: Record) -> tuple[Layout, list[Fault]]:
    trusses = record.trusses
    panels = _panels(trusses)
    depths, missing = depths_of(trusses, panels)
    if missing or trusses.form is None:
        return EMPTY, [
            fault(record, ("trusses", *path), rule, got=got, cure=cure)
            for path, rule, got, cure in missing
        ]
    try:
        layout = layout_of(trusses.form, Sizes(
            panels=panels, depths=depths, counters=_counters(trusses),
            end_posts=trusses.end_posts, floor=trusses.floor_on,
            hip=0.0 if trusses.hip is None else trusses.hip.number,
            sub_members=trusses.sub_members,
        ))
    except OutOfRange as refused:
        return EMPTY, [
            fault(record, ("trusses", refused.what),
                  f"{'panels are' if refused.what == 'panels' else 'is'} not {refused.limit}",
                  got=refused.got, cure=CURES[refused.what])
        ]
    return layout, [
        fault(record, ("trusses", "counters"),
              f"is no counter of a {trusses.form} truss of {len(panels)} panels", got=counter,
              cure="name a diagonal that crosses a main one, upper joint first")
        for counter in layout.misplaced
    ]


def _counters(trusses: TrussesEntry) -> tuple[str, ...]:
    """The counters named, and of a mirrored record their images."""
    named = trusses.counters
    if not trusses.mirrored:
        return named
    count, letters = panel_count(trusses), letters_between(trusses)
    images = (mirrored_bar(counter, count, letters) for counter in named)
    return tuple(dict.fromkeys((*named, *images)))


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
    """The layout with its floor joints, which go on from end 0 without turning back.

    Their stations are those of the road, along which a truss of a skew bridge stands ahead.
    """
    if not layout.joints:
        return layout, []
    path = ("trusses", "floor")
    floor = floor_joints(record.trusses)
    faults = [
        fault(record, path, "is no joint of the truss", got=joint,
              cure=did_you_mean(joint, layout.joints))
        for joint in floor if joint not in layout.joints
    ]
    stations = tuple(
        (joint, layout.joints[joint][0] / 12.0 + ahead_ft)
        for joint in floor if joint in layout.joints
    )
    faults += [
        fault(record, path, f"does not lie beyond {before}", got=joint,
              cure="name the floor's joints in order, from end 0")
        for (before, first), (joint, second) in pairwise(stations) if second <= first
    ]
    if len(stations) < LEAST_FLOOR_JOINTS and not faults:
        faults.append(fault(record, path, "has fewer than two joints"))
    return replace(layout, floor_joints=stations), faults
