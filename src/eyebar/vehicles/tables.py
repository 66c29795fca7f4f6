"""Vehicles as they stand in a table: the shipped ones, and those of an office.

A table is TOML, `[[vehicle]]` for each; an office's `vehicles.toml` adds vehicles, and one that has
a shipped name takes its place.
"""

from collections.abc import Callable, Mapping
from functools import cache
from importlib.resources import files
from math import isfinite
from pathlib import Path
from types import MappingProxyType
from typing import Any

from eyebar.errors import BadRecord, Fault, did_you_mean
from eyebar.sources import Row, confirmation, table_rows
from eyebar.terms import Combine, VehicleClass
from eyebar.vehicles.vehicle import Spacing, Vehicle

OFFICE_FILE = "vehicles.toml"
SHIPPED_FILES = (OFFICE_FILE, "everyday.toml")
FIGURES = ("axles", "spacings", "gauge", "width", "load")
"""Figures of a vehicle that may be assumed, in words."""
POSTED_AS = (VehicleClass.SINGLE, VehicleClass.COMBINATION, VehicleClass.EMERGENCY)
SINGLE = VehicleClass.SINGLE
HEAVIEST_PSF = 1000.0

MOST_AXLES = 60
HEAVIEST_AXLE_KIP = 1000.0
LONGEST_SPACING_FT = 500.0
WIDEST_FT = 60.0
"""Beyond these a figure is taken for a slip of the pen."""


def _is_number(got: Any) -> bool:
    return isinstance(got, int | float) and not isinstance(got, bool) and isfinite(got)


def _within(limit: float) -> Callable[[Any], bool]:
    return lambda got: _is_number(got) and 0.0 < got <= limit


_axle = _within(HEAVIEST_AXLE_KIP)
_distance = _within(LONGEST_SPACING_FT)
_width = _within(WIDEST_FT)
_area = _within(HEAVIEST_PSF)


def _is_spacing(got: Any) -> bool:
    if not isinstance(got, list):
        return _distance(got)
    return len(got) == 2 and all(map(_distance, got)) and got[0] < got[1]


def _list_of(one: Callable[[Any], bool], *, fewest: int) -> Callable[[Any], bool]:
    return lambda got: (
        isinstance(got, list) and fewest <= len(got) <= MOST_AXLES and all(map(one, got))
    )


_RULES: Mapping[str, tuple[Callable[[Any], bool], str]] = {
    "name": (lambda got: isinstance(got, str) and bool(got.strip()), "must be a name"),
    "class": (
        lambda got: got in list(VehicleClass),
        f"must be one of {', '.join(VehicleClass)}",
    ),
    "axles_kip": (
        _list_of(_axle, fewest=1),
        f"must be 1 to {MOST_AXLES} weights, each over 0 and up to {HEAVIEST_AXLE_KIP:g} kip",
    ),
    "spacings_ft": (
        _list_of(_is_spacing, fewest=0),
        "must be distances, or [least, greatest] for a varied one, "
        f"each over 0 and up to {LONGEST_SPACING_FT:g} ft",
    ),
    "gauge_ft": (_width, f"must be over 0 and up to {WIDEST_FT:g} ft"),
    "width_ft": (_width, f"must be over 0 and up to {WIDEST_FT:g} ft"),
    "source": (
        lambda got: isinstance(got, str) and bool(got.strip()),
        "must say where the vehicle comes from",
    ),
    "lane_kip_per_ft": (_axle, "must be over 0 and in kip/ft"),
    "lane_point_kip": (
        lambda got: isinstance(got, list) and len(got) == 2 and all(map(_axle, got)),
        "must be two weights over 0, for moment and for shear, in kip",
    ),
    "combine": (lambda got: got in list(Combine), f"must be one of {', '.join(Combine)}"),
    "lane_impact": (lambda got: isinstance(got, bool), "must be true or false"),
    "area_psf": (_area, f"must be over 0 and up to {HEAVIEST_PSF:g} lb/ft2"),
    "empty_axles_kip": (
        _list_of(_axle, fewest=1),
        f"must be 1 to {MOST_AXLES} weights, each over 0 and up to {HEAVIEST_AXLE_KIP:g} kip",
    ),
    "posted_as": (lambda got: got in list(POSTED_AS), f"must be one of {', '.join(POSTED_AS)}"),
    "assumed": (
        lambda got: isinstance(got, list) and all(one in FIGURES for one in got),
        f"must be a list of some of {', '.join(FIGURES)}",
    ),
}
_OF_AXLES = ("axles_kip", "spacings_ft", "gauge_ft", "width_ft")
_OPTIONAL = (
    "lane_kip_per_ft", "lane_point_kip", "combine", "lane_impact", "area_psf", "empty_axles_kip",
    "posted_as", "assumed",
)
_LIKE = "like"
_FIELDS = (*_RULES, "confirmed", _LIKE)


@cache
def shipped_vehicles() -> Mapping[str, Vehicle]:
    """The vehicles of the package, name -> vehicle, in the order of the table; frozen."""
    found: dict[str, Vehicle] = {}
    for file in SHIPPED_FILES:
        content = (files("eyebar.vehicles") / file).read_bytes()
        found |= vehicles_read(content, file=file, layer="shipped")
    return MappingProxyType(found)


def vehicles_with(folder: Path | None) -> Mapping[str, Vehicle]:
    """The shipped vehicles with those of an office's folder laid over them; frozen.

    Raises BadRecord with all faults of the folder's `vehicles.toml`, or where there is no folder; a
    folder without such a file is fine.
    """
    if folder is not None and not folder.is_dir():
        cure = "an office's folder holds vehicles.toml, values.toml, policy.toml, all or some"
        raise BadRecord(str(folder), (Fault(where="", rule="is not a folder", cure=cure),))
    if folder is None or not (folder / OFFICE_FILE).is_file():
        return shipped_vehicles()
    path = folder / OFFICE_FILE
    return vehicles_of(path, shipped_vehicles(), layer="office")


def vehicles_of(path: Path, known: Mapping[str, Vehicle], *, layer: str) -> Mapping[str, Vehicle]:
    """Those of a file laid over the known ones; frozen. Raises BadRecord, and OSError as open."""
    own = vehicles_read(path.read_bytes(), file=str(path), layer=layer, known=known)
    return MappingProxyType({**known, **own})


def vehicles_read(
    content: bytes, *, file: str, layer: str, known: Mapping[str, Vehicle] | None = None
) -> Mapping[str, Vehicle]:
    """The vehicles of one table, name -> vehicle; frozen. Raises BadRecord with all its faults.

    A row that is `like` a known vehicle takes from it what it does not give: so a scale ticket
    replaces the weights alone.
    """
    faults: list[Fault] = []
    vehicles: dict[str, Vehicle] = {}
    for written in table_rows(content, file=file, heading="vehicle"):
        row, unknown = _completed(written, {**(known or {}), **vehicles})
        if unknown:
            faults.append(unknown)
            continue
        found = _row_faults(row)
        faults += found
        if found:
            continue
        vehicle = _vehicle(row.fields, layer)
        if vehicle.name in vehicles:
            rule = "stands in this table twice"
            faults.append(Fault(where=f"vehicle > {vehicle.name}", rule=rule, line=row.line))
        vehicles[vehicle.name] = vehicle
    if faults:
        raise BadRecord(file, tuple(faults))
    return MappingProxyType(vehicles)


def _completed(row: Row, known: Mapping[str, Vehicle]) -> tuple[Row, Fault | None]:
    """A row with what it takes from the vehicle that it is like; and what is wrong with that."""
    like = row.fields.get(_LIKE)
    if like is None:
        return row, None
    if not isinstance(like, str) or like not in known:
        where = f"vehicle > {row.fields.get('name', '(no name)')} > {_LIKE}"
        cure = did_you_mean(str(like), known)
        return row, Fault(where=where, rule="is no known vehicle", got=repr(like), cure=cure,
                          line=row.line)
    given = {key: of for key, of in row.fields.items() if key != _LIKE}
    base = {key: of for key, of in _written(known[like]).items() if key not in given}
    if "axles_kip" in given and "empty_axles_kip" not in given:
        # What a truck weighs empty is not told by what another weighs empty.
        base.pop("empty_axles_kip", None)
    measured = {"axles_kip": "axles", "spacings_ft": "spacings", "gauge_ft": "gauge",
                "width_ft": "width", "area_psf": "load"}
    still = [one for one in base.get("assumed", ()) if one not in (
        measured[key] for key in given if key in measured)]
    if "assumed" in base:
        base["assumed"] = still
    return Row(fields={**base, **given}, line=row.line), None


def _written(vehicle: Vehicle) -> dict[str, Any]:
    """A vehicle as the fields of a row; without name, source and confirmation."""
    found: dict[str, Any] = {"class": str(vehicle.vehicle_class)}
    if vehicle.combine is Combine.AREA:
        found["area_psf"] = vehicle.area_psf
    else:
        found |= {
            "axles_kip": list(vehicle.axles_kip),
            "spacings_ft": [list(s) if isinstance(s, tuple) else s for s in vehicle.spacings_ft],
            "gauge_ft": vehicle.gauge_ft, "width_ft": vehicle.width_ft,
            "combine": str(vehicle.combine),
        }
    if vehicle.lane_kip_per_ft and vehicle.combine is not Combine.AREA:
        found["lane_kip_per_ft"] = vehicle.lane_kip_per_ft
    if vehicle.lane_point_kip is not None:
        found["lane_point_kip"] = list(vehicle.lane_point_kip)
    if vehicle.empty_axles_kip:
        found["empty_axles_kip"] = list(vehicle.empty_axles_kip)
    return {
        **found, "lane_impact": vehicle.lane_impact, "posted_as": str(vehicle.posted_as),
        "assumed": list(vehicle.assumed),
    }


def _row_faults(row: Row) -> list[Fault]:
    fields = row.fields
    place = f"vehicle > {fields.get('name', '(no name)')}"

    def fault(name: str, rule: str, got: str = "", cure: str = "") -> Fault:
        return Fault(where=f"{place} > {name}", rule=rule, got=got, cure=cure, line=row.line)

    faults = [
        fault(name, "is unknown", cure=did_you_mean(name, _FIELDS))
        for name in fields if name not in _FIELDS
    ]
    faults += [
        fault(name, "is missing")
        for name in _needed(fields) if name not in fields
    ]
    faults += [
        fault(name, rule, got=repr(fields[name]))
        for name, (right, rule) in _RULES.items() if name in fields and not right(fields[name])
    ]
    if "confirmed" in fields:
        faults += [fault(one.where, one.rule, one.got, one.cure)
                   for one in confirmation(fields["confirmed"])[2]]
    return faults or [fault(name, rule) for name, rule in _contradictions(fields)]


def _needed(fields: Mapping[str, Any]) -> tuple[str, ...]:
    """The fields that a row must have: a load by area has no axles."""
    left_out = _OF_AXLES if "area_psf" in fields else ()
    return tuple(
        one for one in (*_RULES, "confirmed") if one not in _OPTIONAL and one not in left_out
    )


def _contradictions(fields: Mapping[str, Any]) -> list[tuple[str, str]]:
    """Fields that are right each for itself and wrong together: (name, rule)."""
    if "area_psf" in fields:
        strange = (*_OF_AXLES, "lane_kip_per_ft", "lane_point_kip", "combine", "empty_axles_kip")
        return [
            (name, "has no place where a load is by area") for name in strange if name in fields
        ]
    wrong = []
    if fields.get("combine") == Combine.AREA:
        wrong.append(("area_psf", "is missing, but combine is area"))
    empty = fields.get("empty_axles_kip")
    if empty is not None and (
        len(empty) != len(fields["axles_kip"])
        or any(a > b for a, b in zip(empty, fields["axles_kip"], strict=False))
    ):
        wrong.append(("empty_axles_kip", "must be as many as the axles, none heavier than loaded"))
    axles, spacings = len(fields["axles_kip"]), len(fields["spacings_ft"])
    if spacings != axles - 1:
        count = f"{axles} axles and {spacings} spacings"
        wrong.append(("spacings_ft", f"must be one fewer than the axles, but there are {count}"))
    if sum(isinstance(spacing, list) for spacing in fields["spacings_ft"]) > 1:
        wrong.append(("spacings_ft", "holds several that vary; one spacing at most may vary"))
    if fields["width_ft"] < fields["gauge_ft"]:
        wrong.append(("width_ft", "must be no less than the gauge"))
    lane, combine = fields.get("lane_kip_per_ft"), fields.get("combine", Combine.NONE)
    if lane is None and (combine != Combine.NONE or "lane_point_kip" in fields):
        wrong.append(("lane_kip_per_ft", "is missing, but a lane load is spoken of"))
    if lane is not None and combine == Combine.NONE:
        wrong.append(("combine", "must be greater or sum where there is a lane load"))
    return wrong


def _vehicle(fields: Mapping[str, Any], layer: str) -> Vehicle:
    confirmed, by_whom, _ = confirmation(fields["confirmed"])
    point = fields.get("lane_point_kip")
    by_area = "area_psf" in fields
    kind = VehicleClass(fields["class"])
    return Vehicle(
        name=fields["name"].strip(),
        vehicle_class=kind,
        axles_kip=tuple(map(float, fields.get("axles_kip", ()))),
        spacings_ft=tuple(map(_spacing, fields.get("spacings_ft", ()))),
        gauge_ft=float(fields.get("gauge_ft", 0.0)),
        width_ft=float(fields.get("width_ft", 0.0)),
        lane_kip_per_ft=float(fields.get("lane_kip_per_ft", 0.0)),
        lane_point_kip=None if point is None else (float(point[0]), float(point[1])),
        combine=Combine.AREA if by_area else Combine(fields.get("combine", Combine.NONE)),
        lane_impact=fields.get("lane_impact", False),
        source=fields["source"],
        confirmed=confirmed, confirmation=by_whom, layer=layer,
        area_psf=float(fields.get("area_psf", 0.0)),
        empty_axles_kip=tuple(map(float, fields.get("empty_axles_kip", ()))),
        posted_as=VehicleClass(fields.get("posted_as", kind if kind in POSTED_AS else SINGLE)),
        assumed=tuple(fields.get("assumed", ())),
    )


def _spacing(written: float | list[float]) -> Spacing:
    if isinstance(written, list):
        return float(written[0]), float(written[1])
    return float(written)
