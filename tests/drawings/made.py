"""Documents of trusses with any number of panels, by hand: the forces are invented, not solved."""

from collections.abc import Callable, Iterable
from typing import Any

Document = dict[str, Any]

AT = {"front_axle_ft": 40.0, "direction": "up", "spacing_ft": [15.0, 4.0]}
CAUTIONS = ["This is a calculation.", "What is not measured is not assumed sound.", "a rule"]
GRID = tuple[dict[str, list[float]], list[tuple[str, str, str]]]
"""Joints, and bars as (first joint, second joint, kind)."""


def chords(panels: int, heights: Callable[[int], float], panel_ft: float) -> GRID:
    """Panel points and the two chords with the end posts; the upper chord starts one panel in."""
    joints = {f"L{i}": [i * panel_ft * 12.0, 0.0] for i in range(panels + 1)}
    joints |= {f"U{i}": [i * panel_ft * 12.0, heights(i) * 12.0] for i in range(1, panels)}
    bars = [("U1", "L0", "end post"), (f"U{panels - 1}", f"L{panels}", "end post")]
    bars += [(f"U{i}", f"U{i + 1}", "top chord") for i in range(1, panels - 1)]
    bars += [(f"L{i}", f"L{i + 1}", "bottom chord") for i in range(panels)]
    return joints, bars


def pratt(panels: int, panel_ft: float = 15.0, depth_ft: float = 22.0) -> GRID:
    """Posts, diagonals that fall to the middle, and counters in the two middle panels."""
    joints, bars = chords(panels, lambda _: depth_ft, panel_ft)
    bars += [(f"U{i}", f"L{i}", "hip vertical" if i in (1, panels - 1) else "post")
             for i in range(1, panels)]
    middle = panels / 2
    for i in range(1, panels - 1):
        falls, rises = (f"U{i}", f"L{i + 1}"), (f"U{i + 1}", f"L{i}")
        main, other = (falls, rises) if i + 0.5 < middle else (rises, falls)
        bars.append((*main, "diagonal"))
        if abs(i + 0.5 - middle) <= 1.5:
            bars.append((*other, "counter"))
    return joints, bars


def double_pratt(panels: int, panel_ft: float = 15.0, depth_ft: float = 28.0) -> GRID:
    """Diagonals over two panels each, crossing a post, and as many counters in the middle."""
    joints, bars = chords(panels, lambda _: depth_ft, panel_ft)
    bars += [(f"U{i}", f"L{i}", "post") for i in range(1, panels)]
    bars += [("U1", "L2", "diagonal"), (f"U{panels - 1}", f"L{panels - 2}", "diagonal")]
    for i in range(1, panels - 2):
        falls, rises = (f"U{i}", f"L{i + 2}"), (f"U{i + 2}", f"L{i}")
        main, other = (falls, rises) if i + 1 < panels / 2 else (rises, falls)
        bars.append((*main, "diagonal"))
        if abs(i + 1 - panels / 2) < 2:
            bars.append((*other, "counter"))
    return joints, bars


def parker(panels: int, panel_ft: float = 18.0, depth_ft: float = 30.0) -> GRID:
    """A Pratt whose upper chord is bent at every panel point."""
    def height(i: int) -> float:
        off = abs(2 * i - panels) / panels
        return depth_ft * (1.0 - 0.45 * off * off)

    joints, bars = pratt(panels, panel_ft, depth_ft)
    for name, place in joints.items():
        if name.startswith("U"):
            place[1] = height(int(name[1:])) * 12.0
    return joints, bars


def warren(panels: int, panel_ft: float = 14.0, depth_ft: float = 12.0) -> GRID:
    """Two systems of diagonals that cross in every panel, without posts."""
    joints, bars = chords(panels, lambda _: depth_ft, panel_ft)
    bars += [(f"U{i}", f"L{i + 1}", "diagonal") for i in range(1, panels)]
    bars += [(f"U{i}", f"L{i - 1}", "diagonal") for i in range(2, panels)]
    return joints, [bar for bar in bars if bar[1] != f"L{panels}" or bar[2] != "diagonal"]


def documents(
    grid: GRID, *, name: str = "Sedgebarrow Ford Bridge (invented)", governs: str = "",
    broken: Iterable[str] = (), floor: Iterable[str] = (), ends: tuple[str, str] | None = None,
) -> tuple[Document, Document]:
    """The `rate` and `forces` documents of a truss; `governs` is an address.

    The floor lies on the lower joints, and the truss rests on the outermost, unless named.
    """
    joints, bars = grid
    named = [(f"{one}-{other}", one, other, kind) for one, other, kind in bars]
    gone = set(broken)
    kept = [bar for bar in named if bar[0] not in gone]
    lower = sorted((joint for joint in joints if joint[0] == "L"), key=lambda one: int(one[1:]))
    floor = list(floor) or lower
    first, last = ends or (lower[0], lower[-1])
    truss = {
        "truss": "upstream", "joints": joints,
        "floor_joints": [[joint, joints[joint][0] / 12.0] for joint in floor],
        "bars": {bar: _bar(one, other, kind) for bar, one, other, kind in kept},
        "supports": {first: [True, True], last: [False, True]},
        "dead": {bar: _dead(i, kind) for i, (bar, *_, kind) in enumerate(kept)},
        "live": {
            "Type 3": {bar: _live(i, kind) for i, (bar, *_, kind) in enumerate(kept)},
            "EV3": None,
        },
        "no_equilibrium": {"EV3": {"reason": "no equilibrium", "panel": "panel 5"}},
    }
    parts = [
        {"part": f"upstream/{bar}", "truss": "upstream", "kind": kind,
         **({"not_rated": "declared broken"} if bar in gone else {"ratings": [_rating()]})}
        for bar, *_, kind in named
    ]
    parts += [
        {"part": f"upstream/{joint}/pin", "truss": "upstream", "kind": "pin",
         "not_rated": "not rated by this version"} for joint in joints
    ]
    forces = {
        "format": "eyebar/forces/1", "bridge": {"name": name, "number": "03-02"},
        "date": "2026-06-09", "trusses": [truss], "vehicles": [{"name": "Type 3"}, {"name": "EV3"}],
        "cautions": CAUTIONS, "record_hash": "0" * 64, "version": "0",
    }
    rate = {
        "format": "eyebar/rate/1", "bridge": {"name": name, "number": "03-02"},
        "date": "2026-06-09", "parts": parts, "values_used": [], "unconfirmed": [],
        "cautions": CAUTIONS, "record_hash": "0" * 64, "version": "0",
        "posting": posting(governs or parts[0]["part"]),
    }
    return rate, forces


def posting(governs: str, **changes: Any) -> Document:
    """A posting of six tons."""
    return {
        "closed": False, "provisional": True, "not_rated": ["upstream/L1/pin"], "single_tons": 6,
        "combination_tons": 9, "exact_tons": 6.7421,
        "emergency": {"single_axle_tons": None, "tandem_tons": None, "gross_tons": None},
        "method": "load-and-resistance", "level": "legal", "vehicles": ["Type 3"],
        "governed_by": {
            "part": governs, "check": "yield of the body", "vehicle": "Type 3",
            "method": "load-and-resistance", "level": "legal",
        },
        "sign": {
            "designation": "R12-5",
            "legend": "PROVISIONAL WEIGHT LIMIT 6 TONS SINGLE UNIT, 9 TONS COMBINATION",
        },
        **changes,
    }


def _bar(one: str, other: str, kind: str) -> Document:
    pushes = kind in ("end post", "top chord", "post")
    return {
        "ends": [one, other], "area_in2": 12.0 if kind in ("end post", "top chord") else 4.0,
        "modulus_ksi": 28000.0, "can_push": pushes, "can_pull": True, "initial_kip": 0.0,
        "gap_in": 0.0,
    }


def _dead(i: int, kind: str) -> float:
    """Forces of three figures before the point in the chords: the widest lettering there is."""
    if kind == "counter":
        return 0.0
    size = 100.0 + 7.3 * (i % 11) if "chord" in kind or kind == "end post" else 8.0 + 3.1 * (i % 9)
    return -size if kind in ("end post", "top chord", "post") else size


def _live(i: int, kind: str) -> Document:
    least = -12.4 - i % 7 if kind in ("post", "diagonal", "top chord", "end post") else 0.0
    greatest = 10.1 + i % 5 if kind in ("post", "diagonal", "counter", "bottom chord") else 0.0
    return {
        "min": least, "max": greatest, "min_at": AT if least else None,
        "max_at": AT if greatest else None,
    }


def _rating() -> Document:
    return {
        "vehicle": "Type 3", "method": "load-and-resistance", "level": "legal", "factor": 0.81,
        "tons": 20.25, "check": "yield of the body", "limit_kip": 60.0, "at": AT,
    }
