"""The `history-sheet` document: what the record tells for a documentation sheet.

Sizes of floor and bracing stand as they were written; nothing here is rated.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from itertools import pairwise
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.documents.check import sizes_not_measured
from eyebar.documents.describe import CODES, condition_codes
from eyebar.documents.opened import Opened, closing, heading, opened
from eyebar.history import lines_of, recognised
from eyebar.record import Record
from eyebar.record.fields import Entry
from eyebar.record.pins import BOTH_TRUSSES
from eyebar.sections.outlines import figure
from eyebar.sections.shapes import Section

NOT_COMPLETE = (
    "The description is written from the record and is as good as it; the drawings are to scale "
    "from the record's sizes, and no photograph is in them."
)
NOT_SIGNIFICANT = (
    "Whether the bridge is of historic worth, and why, is for the historian and the state's office "
    "to say."
)


def sheet_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """What a documentation sheet tells of a bridge. Raises BadRecord."""
    return sheet_of(opened(record, on=on, office=office))


def sheet_of(one: Opened) -> dict[str, Any]:
    """The document of a record that has been opened."""
    record, bridge = one.record, one.bridge
    codes = condition_codes(record, bridge.on)
    return {
        **heading("history-sheet", 1, one),
        "owner": bridge.owner, "place": bridge.place, "built": bridge.built,
        "note": str(record.note or ""),
        "ends": {
            "zero": str(record.ends.zero), "other": str(record.ends.other),
            "skew": str(record.ends.skew or ""), "bearing": str(record.ends.bearing or ""),
        },
        "overhead": record.bracing.overhead if record.bracing else None,
        "road": bridge.roadway and {
            "clear_width_ft": bridge.roadway.clear_width_ft,
            "truss_spacing_ft": bridge.roadway.truss_spacing_ft,
        },
        "trusses": [_truss(truss, record) for truss in bridge.trusses],
        "joints": list(_joints(record)),
        "floor": list(_floor(one)),
        "bracing": list(_bracing(record)),
        "details": dict(record.details),
        "alterations": list(_alterations(record, bridge)),
        "unlike": [
            {"part": address, "reason": str(override.reason)}
            for address, override in record.overrides.items()
        ],
        "inspections": [
            {"date": found.date.isoformat(), "by": str(found.by), "readings": len(found.readings)}
            for found in sorted(record.inspections, key=lambda one: one.date)
            if found.date <= bridge.on
        ],
        "condition": {name: codes[name] for name in CODES},
        "not_measured": len(sizes_not_measured(record)),
        "cautions": [NOT_COMPLETE, NOT_SIGNIFICANT],
        **closing(one),
    }


def _truss(truss: Truss, record: Record) -> dict[str, Any]:
    bars = (*truss.bars, *truss.broken)
    heights = [y for _, y in truss.joints.values()]
    floor = [truss.joints[joint] for joint, _ in truss.floor_joints]
    levels = {round(y - min(heights), 1) for _, y in floor}
    return {
        "truss": truss.name,
        "form": recognised(lines_of(truss.joints, (bar.ends for bar in bars))).form,
        "panels_in": [after[0] - before[0] for before, after in pairwise(floor)],
        "depth_in": max(heights) - min(heights),
        "floor_on": "lower" if levels == {0.0}
        else "upper" if levels == {round(max(heights) - min(heights), 1)} else None,
        "members": _members(bars),
        "pins": _pins(record, truss.name),
    }


def _members(bars: Sequence[Bar]) -> list[dict[str, Any]]:
    """Bars of one kind, section and metal together."""
    found: dict[tuple[str, str, str], list[Bar]] = {}
    for bar in bars:
        found.setdefault((str(bar.kind), str(_pieces(bar.as_built)), bar.material.name), []).append(
            bar
        )
    return [
        {
            "kind": str(alike[0].kind), "bars": [bar.name for bar in alike],
            "metal": str(alike[0].material.metal), "pieces": _pieces(alike[0].as_built),
            "welded": alike[0].welded,
        }
        for alike in found.values()
    ]


def _pieces(section: Section) -> list[dict[str, Any]]:
    return [
        {"name": piece.name, "sizes_in": dict(piece.sizes)} for piece in figure(section).pieces
    ]


def _pins(record: Record, truss: str) -> list[dict[str, Any]]:
    """Pins of one diameter together, as built: wear is left out."""
    found: dict[str, list[str]] = {}
    for pin in record.pins.values():
        if pin.truss in (BOTH_TRUSSES, truss):
            found.setdefault(str(pin.diameter or ""), []).extend(pin.joints)
    return [{"diameter": size, "joints": joints} for size, joints in found.items()]


def _joints(record: Record) -> Iterable[dict[str, Any]]:
    """How members are joined, beside the pins."""
    for name, group in record.members.items():
        if group.spliced_at:
            yield _part(f"{name} spliced", {"at": ", ".join(group.spliced_at)})
        if group.ends:
            yield _part(f"{name}, ends", {"fixing": str(group.ends)})
    for name, block in record.joint_blocks.items():
        metal = record.materials[block.material].metal if block.material in record.materials else (
            block.material
        )
        yield _part(name, {"at": ", ".join(block.joints), "metal": str(metal)})


def _floor(one: Opened) -> Iterable[dict[str, Any]]:
    record, floor = one.record.floor, one.bridge.floor
    yield _part("deck", _written(record.deck, "kind", "thickness", "runs", "plank_width"))
    if record.surfacing:
        yield _part("surfacing", _written(record.surfacing, "kind", "thickness", "width"))
    first = floor.stringers[0].as_built if floor and floor.stringers else None
    yield _part("stringers", _written(record.stringers, "number", "spacing", "size"), first)
    beams = floor.floorbeams if floor else ()
    yield _part(
        "floorbeams", {
            **({"number": str(len(beams))} if beams else {}),
            **_written(record.floorbeams, "length", "ends"),
        },
        beams[0].as_built if beams else None,
    )
    if record.hangers and record.hangers.section:
        yield _part("hangers", _written(record.hangers, "bent", "leg", "pin"))
    for truss, walk in record.sidewalks.items():
        yield _part(f"sidewalk at the {truss} truss", _written(walk, "width"))
    if record.railing:
        yield _part("railing", {"on": "both sides"})


def _bracing(record: Record) -> Iterable[dict[str, Any]]:
    bracing = record.bracing
    if bracing is None:
        return
    for end in ("zero", "other"):
        portal = bracing.portals and getattr(bracing.portals, end)
        if portal:
            yield _part(f"portal at {getattr(record.ends, end)}", _written(portal, "form", "depth"))
    for name, strut in bracing.struts.items():
        yield _part(f"struts, {name}", {"at": ", ".join(strut.at)})
    for name in ("top_laterals", "bottom_laterals"):
        laterals = getattr(bracing, name)
        if laterals:
            yield _part(name.replace("_", " "), {
                "at": ", ".join(laterals.joints) if laterals.joints else "every joint of the chord"
            })
    if bracing.cross_frames:
        yield _part("posts and floorbeams", {
            **_written(bracing.cross_frames, "joint"),
            **({"outriggers": "yes"} if bracing.cross_frames.outrigger else {}),
        })


def _part(part: str, recorded: Mapping[str, str], section: Section | None = None) -> dict[str, Any]:
    return {
        "part": part, "recorded": dict(recorded),
        "pieces": [] if section is None else _pieces(section),
    }


def _written(entry: Entry, *names: str) -> dict[str, str]:
    """Keys of an entry with their values as they were written; those not given are left out."""
    found = {}
    for name in names:
        value = getattr(entry, name)
        if value is None or value is False:
            continue
        found[name.replace("_", " ")] = "yes" if value is True else str(value)
    return found


def _alterations(record: Record, bridge: Bridge) -> Iterable[dict[str, Any]]:
    """What came later, by its year: metal younger than the bridge, what was decided and done."""
    found = []
    for name, material in record.materials.items():
        if material.built and bridge.built and material.built > bridge.built:
            of = [group for group, one in record.members.items() if one.material == name]
            found.append(_altered(str(material.built), f"{material.metal} ({name})", of))
    for name, group in record.members.items():
        if group.welded:
            found.append(_altered("", f"welded later: {group.welded}", [name]))
    for made in record.decisions:
        if made.date <= bridge.on:
            said = ": ".join(filter(None, (str(made.what), str(made.note or ""))))
            found.append(_altered(made.date.isoformat(), said, [made.part.part]))
    return sorted(found, key=lambda one: (not one["when"], one["when"]))


def _altered(when: str, what: str, parts: list[str]) -> dict[str, Any]:
    return {"when": when, "what": what, "parts": parts}
