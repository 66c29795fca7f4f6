"""Trusses solved again from the `forces` document alone, by least complementary energy.

Nothing here knows how the package finds a force or a factor: it reads what anyone may read.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from eyebar.analysis.model import ModelBar
from eyebar.terms import BAR_KINDS
from tests.analysis.oracles import (
    Floats,
    LeastEnergy,
    Statics,
    axles_at,
    end_of_equilibrium,
    least_energy,
    road_loads,
    statics,
)
from tests.analysis.trusses import Drawing
from tests.documents import demos

NOTHING_KIP = 1e-6
"""A force under this is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Resolved:
    """One truss of a `forces` document, ready to be solved; `dc`, `dw` (d,) are its dead loads."""

    drawing: Drawing
    equilibrium: Statics
    energy: LeastEnergy
    dc: Floats
    dw: Floats
    vehicles: Mapping[str, Any]

    def number(self, bar: str) -> int:
        """Place of a bar in the force arrays."""
        return self.drawing.names.index(bar)

    def dead(self, factors: Mapping[str, float]) -> Floats:
        """(d,) factored dead load."""
        return factors["dc"] * self.dc + factors["dw"] * self.dw

    def axles(self, vehicle: str, at: Mapping[str, Any]) -> Floats:
        """(d,) the axles of a vehicle at a place, all of them on this truss."""
        forward = {"up": 1, "down": -1}[at["direction"]]
        train = axles_at(
            self.vehicles[vehicle]["axles_kip"], at["spacing_ft"], at["front_axle_ft"], forward
        )
        return self.equilibrium.loads(road_loads(self.drawing, train))

    def forces(self, loads: Floats) -> Floats:
        """(n,) forces under loads; equilibrium must be there."""
        found = self.energy.forces(loads)
        assert found is not None, "no equilibrium"
        return found

    def sure_forces(self, working: frozenset[str], loads: Floats) -> Mapping[str, float] | None:
        """Bar -> force with these bars working whatever their sign; None if they are too few."""
        only = _both_ways(self.drawing, working)
        if only is None:
            return None
        found = only.forces(loads)
        assert found is not None
        names = [name for name in self.drawing.names if name in working]
        return dict(zip(names, found.tolist(), strict=True))

    def working(self, loads: Floats) -> frozenset[str]:
        """Bars that work under loads: those that can push, and others that pull."""
        return frozenset(
            bar.name for bar, force in zip(self.drawing.bars, self.forces(loads), strict=True)
            if bar.can_push or force > NOTHING_KIP
        )

    def end(self, dead: Floats, live: Floats) -> float:
        """The greatest multiple of `live` that any forces with the right signs can carry."""
        return end_of_equilibrium(self.drawing, dead, live, 1e4)

    def places(self, vehicle: str, step_ft: float, spacings: int) -> Iterator[dict[str, Any]]:
        """Places of a vehicle all along the bridge, both ways, at so many sizes of its spacing."""
        axles = self.vehicles[vehicle]["spacings_ft"]
        least = [s[0] if isinstance(s, list) else s for s in axles]
        most = [s[1] if isinstance(s, list) else s for s in axles]
        span = float(self.drawing.stations_ft[-1])
        for part in np.linspace(0.0, 1.0, spacings) if least != most else [0.0]:
            spacing = [a + float(part) * (b - a) for a, b in zip(least, most, strict=True)]
            for along in np.arange(0.0, span + sum(spacing) + step_ft, step_ft):
                for way, front in (("up", float(along)), ("down", span - float(along))):
                    yield {"front_axle_ft": front, "direction": way, "spacing_ft": spacing}


def resolved(truss: Mapping[str, Any], vehicles: list[dict[str, Any]]) -> Resolved:
    """A truss of a `forces` document with the vehicles of that document."""
    drawing = Drawing(
        joints={joint: (x, y) for joint, (x, y) in truss["joints"].items()},
        bars=tuple(
            ModelBar(
                name=name, ends=tuple(bar["ends"]), area=bar["area_in2"],
                modulus=bar["modulus_ksi"], can_push=bar["can_push"], can_pull=bar["can_pull"],
                initial_kip=bar["initial_kip"], gap_in=bar["gap_in"],
            )
            for name, bar in truss["bars"].items()
        ),
        supports={joint: tuple(held) for joint, held in truss["supports"].items()},
        floor_joints=tuple(joint for joint, _ in truss["floor_joints"]),
    )
    stations = [station for _, station in truss["floor_joints"]]
    assert np.allclose(stations, drawing.stations_ft, rtol=0.0, atol=1e-9)
    equilibrium = statics(drawing)
    dc, dw = (
        equilibrium.loads({joint: load[kind] for joint, load in truss["dead_loads"].items()})
        for kind in ("dc_kip", "dw_kip")
    )
    return Resolved(
        drawing=drawing, equilibrium=equilibrium, energy=least_energy(drawing), dc=dc, dw=dw,
        vehicles={one["name"]: one for one in vehicles},
    )


_known: dict[tuple[int, frozenset[str]], LeastEnergy | None] = {}


def _both_ways(drawing: Drawing, working: frozenset[str]) -> LeastEnergy | None:
    """Least energy of some bars of a drawing, all of them working both ways, each set made once."""
    key = (id(drawing), working)
    if key not in _known:
        left = drawing.without(*(name for name in drawing.names if name not in working))
        bars = tuple(replace(b, can_push=True, initial_kip=0.0, gap_in=0.0) for b in left.bars)
        matrix = statics(replace(left, bars=bars)).matrix
        enough = np.linalg.matrix_rank(matrix) == len(matrix)
        _known[key] = least_energy(replace(left, bars=bars)) if enough else None
    return _known[key]


@cache
def trusses(name: str) -> Mapping[str, Resolved]:
    """Truss -> it, solved anew from the `forces` document of a demo bridge."""
    document = demos.forces(name)
    return {
        truss["truss"]: resolved(truss, document["vehicles"]) for truss in document["trusses"]
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class Rated:
    """One rating of a `rate` document with the truss on which it can be tried."""

    part: Mapping[str, Any]
    rating: Mapping[str, Any]
    truss: Resolved

    @property
    def bar(self) -> int:
        """The part's place in the force arrays."""
        return self.truss.number(bar_of(self.part["part"]))

    @property
    def dead(self) -> Floats:
        """(d,) its factored dead load."""
        return self.truss.dead(self.rating["dead_factors"])

    @property
    def on_the_axles(self) -> float:
        """All that multiplies the axles but the factor itself."""
        rating = self.rating
        product: float = rating["live_factor"] * (1.0 + rating["impact"]) * rating["share"]
        return product

    def axles(self, at: Mapping[str, Any]) -> Floats:
        """(d,) all that the vehicle at a place brings when it has grown by 1."""
        return self.on_the_axles * self.truss.axles(self.rating["vehicle"], at)

    @property
    def is_of_axles(self) -> bool:
        """Whether the load is a train alone at a place that is told, without any lane load."""
        alone = self.truss.vehicles[self.rating["vehicle"]]["combine"] != "sum"
        return alone and self.rating["at"] is not None

    def __str__(self) -> str:
        return " ".join(
            (self.part["part"], *(self.rating[key] for key in ("vehicle", "method", "level")))
        )


def ratings(name: str) -> Iterator[Rated]:
    """Every rating with a factor of a bar of a demo bridge."""
    for part in demos.rate(name)["parts"]:
        if part["kind"] not in BAR_KINDS:
            continue
        for rating in part.get("ratings", ()):
            if rating["factor"] is not None:
                yield Rated(part=part, rating=rating, truss=trusses(name)[part["truss"]])


def pin_ratings(name: str) -> Iterator[Rated]:
    """Every rating with a factor of a pin of a demo bridge."""
    for part in demos.rate(name)["parts"]:
        if part["kind"] == "pin":
            for rating in part.get("ratings", ()):
                if rating["factor"] is not None:
                    yield Rated(part=part, rating=rating, truss=trusses(name)[part["truss"]])


def bar_of(address: str) -> str:
    """The bar's name: the last piece of a part's address."""
    return address.rsplit("/", 1)[-1]

