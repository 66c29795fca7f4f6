"""The road across, as the record has it: widths, curbs, and what of them nobody measured."""

import math
from collections.abc import Mapping

from eyebar.bridge.others import beam_joints
from eyebar.bridge.parts import Roadway, Truss
from eyebar.bridge.timeline import Findings
from eyebar.bridge.weights import Across
from eyebar.record import Record, What


def unmeasured_road(record: Record) -> tuple[str, ...]:
    """What of the road's width and place nobody measured, in words."""
    known = {
        "distance between the trusses": record.trusses.spacing,
        "clear width": record.floor.clear_width,
        "distance from truss to curb": next(
            (curb for curb in record.floor.curbs.values() if curb is not None), None
        ),
    }
    return tuple(f"{what} not measured" for what, size in known.items() if size is None)


def roadway_on(record: Record, findings: Findings) -> Roadway | None:
    """The road across; None where its widths are not known. `findings` are those on the deck."""
    spacing, clear, floor = record.trusses.spacing, record.floor.clear_width, record.floor
    if spacing is None or clear is None or unmeasured_road(record):
        return None
    read = any(reading.what is What.SURFACING_THICKNESS for _, reading in findings)
    trucks = record.traffic.trucks_a_day
    return Roadway(
        clear_width_ft=clear.in_unit("ft"), truss_spacing_ft=spacing.in_unit("ft"),
        curb_ft=_curbs(record, spacing.in_unit("ft") - clear.in_unit("ft")),
        lanes_given=floor.lanes, surface=str(floor.surface),
        surfacing_measured=read or (floor.surfacing is not None and floor.surfacing.measured),
        trucks_a_day=None if trucks is None else float(trucks),
    )


def across(truss: Truss, roadway: Roadway | None) -> Across:
    """The road across as one truss sees it; where it was not measured, in widths that are none."""
    stations = [station for _, station in truss.floor_joints]
    return Across(
        truss=truss.name,
        curb_ft=math.nan if roadway is None else roadway.curb_ft[truss.name],
        clear_width_ft=math.nan if roadway is None else roadway.clear_width_ft,
        spacing_ft=math.nan if roadway is None else roadway.truss_spacing_ft,
        span_ft=stations[-1] - stations[0],
        floor_joints=tuple(joint for joint, _ in truss.floor_joints),
        beam_joints=beam_joints(truss),
    )


def _curbs(record: Record, rest_ft: float) -> Mapping[str, float]:
    """Truss -> face of its curb [ft]; of a truss that has none known, what the others leave."""
    given = {
        truss: curb.in_unit("ft") for truss, curb in record.floor.curbs.items() if curb is not None
    }
    return {
        truss: given.get(truss, rest_ft - sum(given.values())) for truss in record.trusses.names
    }
