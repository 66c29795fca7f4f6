"""Documents that sheets are drawn from: of the demos, each made once, and of trusses of any length.
"""

from functools import cache
from typing import Any

from eyebar.documents.drawn import drawn_of, standing_across
from eyebar.documents.influence import influence_of
from eyebar.documents.opened import Opened, opened
from eyebar.documents.proportion import proportion_of
from tests.documents import demos
from tests.drawings import made

Document = dict[str, Any]
PUSHING = ("end post", "top chord", "post")


@cache
def bridge(name: str) -> Opened:
    """A demo bridge, opened."""
    return opened(demos.record(name))


@cache
def drawn(name: str) -> Document:
    """The `drawn` document of a demo."""
    return drawn_of(bridge(name))


@cache
def standing(name: str) -> Document:
    """A truck across the road of a demo, worst for its first truss."""
    return standing_across(bridge(name), "Type 3S2", drawn(name)["trusses"][0]["truss"])


@cache
def influence(name: str, part: str) -> Document:
    """The `influence` document of a bar of a demo."""
    return influence_of(bridge(name), part)


@cache
def proportion() -> Document:
    """The `proportion` document of the demo that is cheapest to rate."""
    return proportion_of(bridge("wrenmallow"))


def section(*pieces: tuple[str, dict[str, float | None]]) -> Document:
    """A section by its pieces: upright rectangles side by side."""
    found = []
    for i, (name, sizes) in enumerate(pieces):
        high, wide = (size or 0.0 for size in list(sizes.values())[:2])
        left = 2.0 * i * wide
        outline = [[left, 0.0], [left + wide, 0.0], [left + wide, high], [left, high]]
        found.append({"name": name, "sizes_in": sizes, "outline_in": outline})
    return {"shape": pieces[0][0].split(" ")[0], "apart_known": False, "pieces": found}


def eyebars(width: float, thickness: float, number: int = 2) -> Document:
    """A set of eyebars."""
    sizes: dict[str, float | None] = {"width": width, "thickness": thickness}
    return section(*((f"eyebar {i + 1}", sizes) for i in range(number)))


def truss_of(grid: made.GRID) -> Document:
    """The `drawn` document of a truss without a floor: sections invented, alike by kind."""
    joints, bars = grid
    lower = sorted((one for one in joints if one[0] == "L"), key=lambda one: int(one[1:]))
    return {
        "format": "eyebar/drawn/1", "date": "2026-06-09", "version": "0", "record_hash": "0" * 64,
        "bridge": {"name": "Sedgebarrow Ford Bridge (invented)", "number": "03-02"},
        "owner": "", "place": "", "road": None, "floor": None, "across": None, "rules": [],
        "cautions": made.CAUTIONS,
        "trusses": [{
            "truss": "upstream", "joints": joints,
            "floor_joints": [[joint, joints[joint][0] / 12.0] for joint in lower],
            "supports": {lower[0]: [True, True], lower[-1]: [False, True]},
            "pins": dict.fromkeys(joints, 2.75),
            "bars": {f"{one}-{other}": _bar((one, other), kind, i)
                     for i, (one, other, kind) in enumerate(bars)},
        }],
    }


def _bar(ends: tuple[str, str], kind: str, i: int) -> Document:
    built = eyebars(2.5 + i % 3 / 4, 0.75)
    return {
        "part": f"upstream/{'-'.join(ends)}", "kind": kind, "ends": list(ends),
        "length_in": 180.0, "can_push": kind in PUSHING, "can_pull": True, "broken": False,
        "not_rated": "", "readings": [], "as_built": built, "left": built, "area_in2": 4.0,
        "left_in2": 4.0,
    }
