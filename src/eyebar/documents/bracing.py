"""The `bracing` document: the bridge under wind, and what holds its upper chords sideways."""

import math
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Bridge
from eyebar.documents.opened import (
    CAUTION,
    NOT_ASSUMED_SOUND,
    Opened,
    closing,
    heading,
    opened,
)
from eyebar.loads.wind import INCHES, POUNDS, RULES, SOURCES, Wind
from eyebar.rating.wind import Overturning, WindChecks, wind_checks
from eyebar.rating.wind_members import Stood
from eyebar.rating.wind_paths import FramePath, LateralPath, WindPath
from eyebar.rating.wind_posts import HeldPost
from eyebar.rating.wind_strength import LEVEL, METHOD, Verdict
from eyebar.record import Record
from eyebar.terms import Kind

ALONG_THE_TOP = (Kind.TOP_CHORD, Kind.END_POST)
BESIDE = (
    "What the bracing stands is told beside the rating: no factor and no posting rests on it."
)
FLOOR_HELPS = (
    "The floor's own stiffness is not counted: planks and stringers help the laterals, by how much "
    "nobody knows. A lower chord that goes slack under wind has not failed."
)
LIGHT = (
    "Light bridges often fall short of these rules and have stood: a margin under 1 calls for an "
    "engineer's judgement before it calls for work."
)


def bracing_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """The bracing of a bridge under wind, part by part.

    Raises BadRecord; OutOfRange, Unknown for an office's values that cannot be used.
    """
    return bracing_of(opened(record, on=on, office=office))


def bracing_of(one: Opened) -> dict[str, Any]:
    """The document of a record that has been opened. Raises as `bracing_document` does."""
    values = one.values.watched()
    names = values.names("wind.beside")
    found = wind_checks(one.bridge, values, one.vehicles)
    spacing = one.bridge.bracing and one.bridge.bracing.spacing
    return {
        **heading("bracing", 1, one),
        "overhead": found.overhead,
        "not_followed": found.reason,
        "method": str(METHOD), "level": str(LEVEL),
        "more_stress": values.number("wind.more stress"),
        "beside": list(names),
        "spacing_ft": spacing and spacing / INCHES,
        "rules": [_rule(one, rule, found) for rule in RULES],
        "winds": [_wind(wind) for wind in found.winds],
        "exposed": _exposed(one.bridge, found),
        "held": list(_held(found.bridge or one.bridge)),
        "laterals": [
            _lateral(path, lateral) for path in found.paths for lateral in path.laterals.values()
        ],
        "frames": [_frame(path, frame) for path in found.paths for frame in path.frames],
        "broken_paths": list(found.broken),
        "posts": [_post(post) for post in found.posts],
        "overturning": [_turning(each) for each in found.overturning],
        "members": [_member(stood) for stood in found.stood],
        "unconfirmed": [row.name for row in values.unconfirmed(sorted(values.used))],
        "cautions": [
            CAUTION, NOT_ASSUMED_SOUND, BESIDE, FLOOR_HELPS, LIGHT, *one.bridge.rules,
            *(one.bridge.bracing.rules if one.bridge.bracing else ()),
        ],
        **closing(one),
    }


def _rule(one: Opened, rule: str, found: WindChecks) -> dict[str, Any]:
    rows = [one.values[f"wind.{rule}.{name}"] for name in SOURCES[rule]]
    return {
        "rule": rule, "sources": list(dict.fromkeys(row.source for row in rows)),
        "confirmed": all(row.confirmed for row in rows),
        "not_used": (found.unknown_rules or {}).get(rule, ""),
    }


def _wind(wind: Wind) -> dict[str, Any]:
    return {
        "rule": wind.rule, "state": wind.state,
        "upper_lb_per_ft": wind.upper * POUNDS, "lower_lb_per_ft": wind.lower * POUNDS,
        "moving_lb_per_ft": wind.moving * POUNDS, "pressure_psf": wind.pressure,
        "lift_psf": wind.lift * POUNDS,
    }


def _exposed(bridge: Bridge, found: WindChecks) -> dict[str, Any] | None:
    if found.area is None:
        return None
    names = [truss.name for truss in bridge.trusses]
    return {
        "trusses": [
            {"truss": name, "upper_ft2": upper, "lower_ft2": lower}
            for name, upper, lower in zip(
                names, found.area.upper_ft2, found.area.lower_ft2, strict=True
            )
        ],
        "floor_ft2": found.area.floor_ft2, "railing_ft2": found.area.railing_ft2,
    }


def _held(bridge: Bridge) -> Iterator[dict[str, Any]]:
    """How far upper chords and end posts run unheld sideways."""
    for truss in bridge.trusses:
        for bar in truss.bars:
            if bar.kind in ALONG_THE_TOP:
                yield {
                    "part": bar.address, "kind": str(bar.kind), "length_ft": bar.length / INCHES,
                    "sideways_ft": bar.length_out_of_plane / INCHES,
                    "effective": bool(bar.on_posts), "not_rated": bar.not_rated,
                }


def _about(path: WindPath) -> dict[str, Any]:
    return {"rule": path.wind.rule, "state": path.wind.state, "windward": path.windward}


def _lateral(path: WindPath, lateral: LateralPath) -> dict[str, Any]:
    forces, joints = lateral.forces, lateral.laterals.joints
    return {
        **_about(path),
        "plane": lateral.level,
        "joints": list(joints),
        "stations_ft": [station / INCHES for station in lateral.laterals.stations],
        "applied_kip": forces.applied,
        "reactions_kip": list(forces.reactions),
        "panels": [
            {
                "part": panel.address, "ends": [joints[i], joints[i + 1]],
                "shear_kip": forces.shear[i], "pull_kip": forces.pull[i],
                "push_kip": forces.push[i], "windward_push_kip": forces.windward[i],
                "leeward_pull_kip": forces.leeward[i], "carried": forces.carried[i],
            }
            for i, panel in enumerate(lateral.laterals.panels)
        ],
        "struts": [
            {"joint": joint, "push_kip": push, "missing": joint in lateral.unstrutted}
            for joint, push in zip(joints, forces.struts, strict=True)
        ],
    }


def _frame(path: WindPath, frame: FramePath) -> dict[str, Any]:
    forces, portal = frame.forces, frame.portal
    return {
        **_about(path),
        "joint": frame.at.joint, "post": frame.post, "form": frame.at.form,
        "portal": frame.at.portal, "wind_kip": frame.wind,
        "length_ft": portal.length / INCHES, "down_ft": portal.down / INCHES,
        "along_ft": portal.along / INCHES, "still_ft": forces.still / INCHES,
        "shear_kip": forces.shear, "thrust_kip": forces.thrust,
        "foot_kip_ft": forces.foot / INCHES, "fastening_kip_ft": forces.fastening / INCHES,
        "knee_kip": forces.knee, "strut_push_kip": forces.strut,
        "strut_pull_kip": forces.strut_pull,
        "strut_moment_kip_ft": forces.strut_moment / INCHES, "web_shear_kip": forces.web_shear,
    }


def _post(post: HeldPost) -> dict[str, Any]:
    return {
        "truss": post.truss, "joint": post.joint, "bar": post.bar, "asked": post.rule,
        "force_kip": post.force, "post_moment_kip_ft": post.post_moment / INCHES,
        "joint_moment_kip_ft": post.joint_moment / INCHES, "outrigger_kip": post.outrigger,
        "checks": [
            {"of": name, **_verdict(verdict)} for name, verdict in post.verdicts.items()
        ],
    }


def _turning(each: Overturning) -> dict[str, Any]:
    return {
        "rule": each.rule, "windward": each.windward, "turning_kip_ft": each.turning,
        "holding_kip_ft": each.holding, "factor": each.factor,
    }


def _member(stood: Stood) -> dict[str, Any]:
    return {
        "part": stood.part, "what": stood.what, "rule": stood.rule, "state": stood.state,
        "windward": stood.windward, "steady_kip": stood.steady, "wind_kip": stood.wind,
        "moment_kip_ft": stood.moment / INCHES, **_verdict(stood.verdict),
    }


def _verdict(verdict: Verdict) -> dict[str, Any]:
    margin = verdict.margin
    return {
        "check": verdict.check, "capacity_kip": verdict.capacity, "use": verdict.use,
        "margin": None if margin is None or math.isinf(margin) else margin,
        "stands": None if margin is None else margin >= 1.0,
        "not_judged": verdict.unknown, "remarks": list(verdict.remarks),
    }
