"""Trusses of every form with forces from statics alone, as documents: quick, no record needed."""

from typing import Any

from eyebar.documents.how import _told
from eyebar.history.how import Loaded, Worked, how
from eyebar.terms import Form
from tests.bridge.forms import bearings, forces, form, redundancy
from tests.history.seen import PANELS

Document = dict[str, Any]
LOAD = 10.0


def solvable(word: Form) -> bool:
    """Whether statics alone tell the forces of a form as it is drawn here."""
    return redundancy(_layout(word)) == 0


def documents(word: Form) -> tuple[Document, Document]:
    """A `history-how` document of one truss of a form, and of its `forces`, under 10 kip at each
    joint of the floor between the bearings; bars half as large again in the middle of a chord."""
    layout = _layout(word)
    first, last = bearings(layout)
    loads = {joint: LOAD for joint, _ in layout.floor_joints if joint not in (first, last)}
    dead = forces(layout, loads)
    bars = tuple(
        Worked(
            name=one.name, kind=one.kinds[0], ends=one.ends,
            area=3.0 if abs(dead[one.name]) > 30.0 else 2.0, modulus=27000.0,
            can_push=dead[one.name] < 1e-6, dead=dead[one.name], least=min(dead[one.name], 0.0),
            greatest=max(2.0 * dead[one.name], 0.0),
        )
        for one in layout.bars.values()
    )
    found = how(Loaded(joints=layout.joints, bars=bars, supports=(first, last), loads=loads))
    truss = {
        "truss": "north", "form": str(word), "vehicles": ["a truck"],
        "joints": {name: list(place) for name, place in layout.joints.items()}, **_told(found),
    }
    solved = {
        "truss": "north", "joints": truss["joints"],
        "floor_joints": [[joint, station] for joint, station in layout.floor_joints],
        "supports": {first: [True, True], last: [False, True]}, "dead": dead,
        "bars": {
            bar.name: {"ends": list(bar.ends), "area_in2": bar.area, "can_push": bar.can_push,
                       "can_pull": True}
            for bar in bars
        },
    }
    told = {"bridge": {"name": "Sedgebarrow (invented)"}, "cautions": ["One."], "trusses": [truss]}
    return told, {"trusses": [solved]}


def _layout(word: Form) -> Any:
    count = PANELS[word]
    return form(word, count if count == 3 else count - count % 2)


SOLVABLE = tuple(filter(solvable, Form))
"""The forms whose forces statics alone tell."""
