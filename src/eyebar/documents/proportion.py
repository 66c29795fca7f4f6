"""The `proportion` document: bar by bar, the metal given, the metal needed, and what rust left."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND, Opened, closing, heading, opened
from eyebar.errors import NotMeasured, Unknown, nearest
from eyebar.history.proportion import metal_left, metal_needed
from eyebar.rating import PartRating, RatedPart, rated_bridge
from eyebar.record import Record
from eyebar.sections.properties import area
from eyebar.terms import Kind
from eyebar.vehicles import Vehicle

GROUPS = {
    Kind.TOP_CHORD: "upper chord", Kind.END_POST: "upper chord", Kind.BOTTOM_CHORD: "lower chord",
}


def proportion_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None,
    truss: str | None = None, vehicle: str | None = None,
) -> dict[str, Any]:
    """Metal given and needed of one truss, the first unless named, under the worst of the vehicles
    by which the office posts, unless one is named.

    Raises BadRecord, Unknown, Unstable, OutOfRange.
    """
    return proportion_of(opened(record, on=on, office=office), truss, vehicle)


def proportion_of(
    one: Opened, truss: str | None = None, vehicle: str | None = None
) -> dict[str, Any]:
    """The document of a record that has been opened."""
    shown, vehicles = _truss(one, truss), _vehicles(one, vehicle)
    now = _rated(one, one.bridge, shown, vehicles)
    built = _rated(one, _as_built(one.bridge), shown, vehicles)
    method, level = built["method"], built["level"]
    return {
        **heading("proportion", 1, one),
        "truss": shown.name,
        "method": method,
        "level": level,
        "vehicles": list(vehicles),
        "bars": [
            _bar(shown, bar, built["parts"].get(bar.address), now["parts"].get(bar.address))
            for bar in sorted(shown.bars, key=lambda bar: _middle_ft(shown, bar))
        ],
        "cautions": [CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def _truss(one: Opened, name: str | None) -> Truss:
    known = {truss.name: truss for truss in one.bridge.trusses}
    wanted = name or next(iter(known))
    if wanted not in known:
        raise Unknown("truss", wanted, near=nearest(wanted, known))
    return known[wanted]


def _vehicles(one: Opened, name: str | None) -> Mapping[str, Vehicle]:
    names = [name] if name else one.values.names("posting.vehicles")
    for wanted in names:
        if wanted not in one.vehicles:
            raise Unknown("vehicle", wanted, near=nearest(wanted, one.vehicles))
    return {wanted: one.vehicles[wanted] for wanted in names}


def _as_built(bridge: Bridge) -> Bridge:
    """The bridge before anything was lost: sections as built, straight, nothing gone."""
    return replace(bridge, trusses=tuple(
        replace(truss, bars=tuple(
            replace(bar, left=bar.as_built, bow=0.0, readings=()) for bar in truss.bars
        ))
        for truss in bridge.trusses
    ))


def _rated(
    one: Opened, bridge: Bridge, truss: Truss, vehicles: Mapping[str, Vehicle]
) -> dict[str, Any]:
    """The bars' ratings by the method by which the bridge is posted; without pins and floor."""
    alone = replace(bridge, floor=None, others=(), trusses=tuple(
        replace(each, pins=()) for each in bridge.trusses if each.name == truss.name
    ))
    rating = rated_bridge(alone, one.values, vehicles)
    method, level = rating.posting.method, rating.posting.level
    return {
        "method": str(method), "level": str(level),
        "parts": {
            part.address: (part, _least(part, (method, level))) for part in rating.parts
        },
    }


def _least(part: RatedPart, by: tuple[Any, Any]) -> PartRating | None:
    rated = [one for one in part.ratings
             if (one.method, one.level) == by and one.factor is not None
             and one.limit_kip and one.facts is not None]
    return min(rated, key=lambda one: one.factor or 0.0, default=None)


def _middle_ft(truss: Truss, bar: Bar) -> float:
    return sum(truss.joints[end][0] for end in bar.ends) / 24.0


NOTHING = 1e-6
"""A force under this part of its limit is none."""
Known = tuple[RatedPart, PartRating | None] | None


def _bar(truss: Truss, bar: Bar, built: Known, now: Known) -> dict[str, Any]:
    head = {
        "part": bar.address, "bar": bar.name, "kind": str(bar.kind),
        "group": GROUPS.get(bar.kind, "web"), "middle_ft": _middle_ft(truss, bar),
    }
    try:
        provided = area(bar.as_built)
    except NotMeasured as unknown:
        return {**head, "not_compared": str(unknown)}
    if built is None or built[1] is None:
        reason = built[0].not_rated if built else "not rated"
        return {**head, "not_compared": reason or "no vehicle works it towards a limit"}
    then = built[1]
    limit = float(then.limit_kip or 0.0)
    force = _force(then)
    if abs(force) <= NOTHING * abs(limit):
        return {**head, "not_compared": "slack until another bar has let go"}
    left, why = None, ""
    if now is None or now[1] is None:
        why = (now[0].not_rated if now else "") or "not rated now"
    elif float(now[1].limit_kip or 0.0) * limit <= 0:
        why = "limited in the other sense now"
    else:
        left = metal_left(provided, float(now[1].limit_kip or 0.0), limit)
    return {
        **head, "vehicle": then.vehicle, "check": then.check, "force_kip": force,
        "limit_kip": limit, "provided_in2": provided,
        "needed_in2": max(0.0, metal_needed(provided, force, limit)), "left_in2": left,
        "left_unknown": why,
    }


def _force(rating: PartRating) -> float:
    """The force under factored dead load and the vehicle with its factor and shock [kip]."""
    dead = rating.facts.factored_dead if rating.facts else 0.0
    return dead + rating.live_factor * (1.0 + rating.impact) * (rating.live or 0.0)
