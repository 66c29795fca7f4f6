"""The layout of each truss of a record: by its form, or joint by joint; halves mirrored."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from eyebar.addresses import ends_of
from eyebar.bridge.forms import LaidBar, Layout, double_intersection_pratt, pratt
from eyebar.errors import Fault, OutOfRange, did_you_mean
from eyebar.record import Form, Record, TrussesEntry
from eyebar.record.layout import (
    bars_in,
    floor_joints,
    mirrored_bar,
    mirrored_joint,
    panel_count,
)

FORMS: Mapping[Form, Callable[..., Layout]] = {
    Form.PRATT: pratt,
    Form.DOUBLE_INTERSECTION_PRATT: double_intersection_pratt,
}
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
    layout, wrong = _with_floor(record, layout)
    return Laid(layout=layout, groups=groups, faults=(*faults, *wrong))


def _by_form(record: Record) -> tuple[Layout, list[Fault]]:
    trusses = record.trusses
    panels = _panels(trusses)
    depths, faults = _depths(record, len(panels))
    if faults or trusses.form is None:
        return EMPTY, faults
    counters = list(trusses.counters)
    if trusses.mirrored:
        images = [mirrored_bar(bar, len(panels)) for bar in counters]
        counters += [bar for bar in images if bar not in counters]
    try:
        layout = FORMS[trusses.form](panels, depths, counters)
    except OutOfRange as refused:
        return EMPTY, [
            fault(record, ("trusses", "panels"), f"panels are not {refused.limit}",
                  got=refused.got, cure="look at the form and the panels")
        ]
    return layout, [
        fault(record, ("trusses", "counters"),
              f"is no counter of a {trusses.form} truss of {len(panels)} panels", got=counter,
              cure="name a diagonal that crosses a main one, upper joint first")
        for counter in layout.misplaced
    ]


def _panels(trusses: TrussesEntry) -> list[float]:
    """All panels [in]; of a mirrored record the half is doubled, round a middle panel if any."""
    half = [panel.number for panel in trusses.panels or ()]
    if not trusses.mirrored:
        return half
    middle = []
    if trusses.span is not None and panel_count(trusses) % 2:
        middle = [trusses.span.number - 2 * sum(half)]
    return [*half, *middle, *reversed(half)]


def _depths(record: Record, count: int) -> tuple[dict[str, float], list[Fault]]:
    """Upper joint -> depth [in]."""
    trusses = record.trusses
    upper = [f"U{i}" for i in range(1, count)]
    if trusses.depth is not None:
        return dict.fromkeys(upper, trusses.depth.number), []
    given = {joint: depth.number for joint, depth in (trusses.depths or {}).items()}
    if trusses.mirrored:
        given = {**{mirrored_joint(joint, count): y for joint, y in given.items()}, **given}
    faults = [
        fault(record, ("trusses", "depths", joint), "is no upper joint of this truss", got=joint,
              cure=did_you_mean(joint, upper))
        for joint in trusses.depths or {} if joint not in upper
    ]
    missing = [joint for joint in upper if joint not in given]
    if missing:
        faults.append(
            fault(record, ("trusses", "depths"), f"gives no depth at {', '.join(missing)}",
                  cure="write the depth at every upper joint")
        )
    return given, faults


def _by_joints(record: Record, groups: Mapping[str, str]) -> tuple[Layout, list[Fault]]:
    """Given joint by joint, a truss has the bars that its members name."""
    trusses = record.trusses
    joints = {joint: (x.number, y.number) for joint, (x, y) in (trusses.joints or {}).items()}
    if trusses.mirrored and trusses.span is not None:
        count, span = panel_count(trusses), trusses.span.number
        images = {mirrored_joint(joint, count): (span - x, y) for joint, (x, y) in joints.items()}
        joints = {**images, **joints}
    bars = {
        bar: LaidBar(name=bar, ends=ends_of(bar), kinds=(record.members[group].kind,))
        for bar, group in groups.items() if all(joint in joints for joint in ends_of(bar))
    }
    return Layout(joints=joints, bars=bars, floor_joints=()), []


def _with_floor(record: Record, layout: Layout) -> tuple[Layout, list[Fault]]:
    """The layout with its floor joints, which go on from end 0 without turning back."""
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
        (joint, layout.joints[joint][0] / 12.0) for joint in floor if joint in layout.joints
    )
    faults += [
        fault(record, path, f"does not lie beyond {before}", got=joint,
              cure="name the floor's joints in order, from end 0")
        for (before, first), (joint, second) in pairwise(stations) if second <= first
    ]
    if len(stations) < LEAST_FLOOR_JOINTS and not faults:
        faults.append(fault(record, path, "has fewer than two joints"))
    return replace(layout, floor_joints=stations), faults
