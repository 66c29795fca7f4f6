"""The `history-how` document: how each truss carries its load, told from its own forces."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.bridge.parts import Truss
from eyebar.documents.forces import forces_of
from eyebar.documents.opened import (
    CAUTION,
    NOT_ASSUMED_SOUND,
    Opened,
    closing,
    heading,
    opened,
)
from eyebar.history import lines_of, recognised
from eyebar.history.how import How, Loaded, Worked, how
from eyebar.record import Record

NO_ADVICE = (
    "This tells how the truss was made to work, from forces without factors and shock. Whether it "
    "is strong enough is not told here; the rating does that."
)


def how_document(
    record: Path | Record, *, on: date | None = None, office: Path | None = None
) -> dict[str, Any]:
    """How the trusses of a bridge work. Raises as `forces_document` does."""
    return how_of(opened(record, on=on, office=office))


def how_of(one: Opened, forces: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """The document of a record that has been opened, and of its forces where they are there."""
    solved = forces or forces_of(one)
    by_name = {truss["truss"]: truss for truss in solved["trusses"]}
    return {
        **heading("history-how", 1, one),
        "trusses": [_truss(truss, by_name[truss.name]) for truss in one.bridge.trusses],
        "cautions": [NO_ADVICE, CAUTION, NOT_ASSUMED_SOUND],
        **closing(one),
    }


def _truss(truss: Truss, solved: Mapping[str, Any]) -> dict[str, Any]:
    loaded = _loaded(truss, solved)
    return {
        "truss": truss.name,
        "form": recognised(lines_of(
            truss.joints, (bar.ends for bar in (*truss.bars, *truss.broken))
        )).form,
        "joints": {name: list(place) for name, place in truss.joints.items()},
        "vehicles": [name for name, bars in solved["live"].items() if bars is not None],
        **_told(how(loaded)),
    }


def _loaded(truss: Truss, solved: Mapping[str, Any]) -> Loaded:
    kinds = {bar.name: bar.kind for bar in truss.bars}
    live = [bars for bars in solved["live"].values() if bars is not None]
    bars = []
    for name, bar in solved["bars"].items():
        dead = solved["dead"][name]
        bars.append(Worked(
            name=name, kind=kinds[name], ends=(bar["ends"][0], bar["ends"][1]),
            area=bar["area_in2"], modulus=bar["modulus_ksi"], can_push=bar["can_push"], dead=dead,
            least=dead + min((one[name]["min"] for one in live), default=0.0),
            greatest=dead + max((one[name]["max"] for one in live), default=0.0),
        ))
    return Loaded(
        joints=truss.joints, bars=tuple(bars), supports=tuple(truss.supports),
        loads={
            joint: load["dc_kip"] + load["dw_kip"] for joint, load in solved["dead_loads"].items()
        },
    )


def _told(found: How) -> dict[str, Any]:
    panel, middle = found.panel, found.middle
    return {
        "weight_kip": found.weight,
        "rests_kip": dict(found.rests),
        "bars": [
            {
                "bar": bar.name, "kind": str(bar.kind), "ends": list(bar.ends),
                "area_in2": bar.area, "can_push": bar.can_push, "dead_kip": bar.dead,
                "least_kip": bar.least, "greatest_kip": bar.greatest,
            }
            for bar in found.bars
        ],
        "panel": panel and {
            "diagonal": panel.diagonal, "corner": panel.corner, "high": panel.high,
            "low": panel.low, "run_in": panel.run, "rise_in": panel.rise,
            "square": panel.square, "stretch_in": panel.stretch,
            "works_in": panel.works,
        },
        "middle": middle and {
            "upright": middle.upright, "moment_kip_in": middle.moment, "depth_in": middle.depth,
            "chord_kip": middle.push, "upper": middle.upper, "lower": middle.lower,
            "near": list(middle.near),
        },
        "webs": [
            {
                "first": list(web.first), "bars": [list(bar) for bar in web.bars],
                "panel_points": list(web.below), "brings_kip": web.brings,
            }
            for web in found.webs
        ],
        "grown": [
            {"kind": str(one.kind), "slight": one.slight, "stout": one.stout}
            for one in found.grown
        ],
    }
