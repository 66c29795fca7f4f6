"""What a vehicle brings to a panel point along the road: two panels of stringers rest there."""

from dataclasses import dataclass, field

import numpy as np

from eyebar.bridge.floor_parts import Floor
from eyebar.formula import Symbol, formula, note
from eyebar.loads.continuous import (
    REACTION,
    ContinuousBeam,
    Extremes,
    lane_extremes,
    train_extremes,
)
from eyebar.loads.trains import Floats
from eyebar.rating.floor_context import FloorContext, lane_alone, lane_beside
from eyebar.rating.floor_facts import FloorFacts
from eyebar.rating.floor_search import Found, Wish, sections
from eyebar.vehicles import Vehicle


@formula(
    "r = 1 - z / l",
    result=Symbol("part of an axle that comes to the panel point", "1"),
    z=Symbol("from the panel point to the axle", "ft", "away_ft", low=0.0, high=12.0),
    l=Symbol("panel it stands on", "ft", "panel_ft", low=12.0, high=25.0),
    source="statics: stringers as simple spans",
)
def panel_ordinate(away_ft: float, panel_ft: float) -> float:
    """Part of an axle that comes to the panel point [1].

    Lengths [ft]; scalars or arrays. Limits: the axle on the panel.
    """
    return 1.0 - away_ft / panel_ft


@formula(
    "R = w * (a + b) / 2",
    result=Symbol("what a uniform load brings to the panel point", "kip"),
    w=Symbol("uniform load", "kip/ft", "kip_per_ft"),
    a=Symbol("panel before the joint", "ft", "before_ft"),
    b=Symbol("panel behind the joint", "ft", "behind_ft"),
    source="statics: stringers as simple spans",
)
def panels_load(kip_per_ft: float, before_ft: float, behind_ft: float) -> float:
    """What a uniform load on both panels brings to the panel point [kip].

    Load [kip/ft], panels [ft]; scalars or arrays. Limits: none.
    """
    return kip_per_ft * (before_ft + behind_ft) / 2.0


@dataclass(slots=True, kw_only=True)
class PanelPoint:
    """A panel point at a station [ft], the panels on its two sides; the stringers' beam that runs
    on over it, and which of its spans begins here, where there is one."""

    context: FloorContext
    station_ft: float
    before_ft: float
    behind_ft: float
    run: ContinuousBeam | None = None
    span: int = 0
    trains: dict[tuple[object, ...], Extremes] = field(default_factory=dict)
    known_lanes: dict[bool, Floats] = field(default_factory=dict)
    """Whether for shear -> what the lane load of each vehicle brings (v,) [kip]."""

    @property
    def at_run_ft(self) -> float:
        """Where the panel point is on the beam that runs on."""
        return 0.0 if self.run is None else float(self.run.supports_ft[self.span])

    def key(self) -> tuple[object, ...]:
        """What its loads depend on."""
        return (self.before_ft, self.behind_ft, self.run and self.run.spans_ft, self.span)

    @property
    def dead_length_ft(self) -> float:
        """Length of a uniform dead load that comes to it."""
        if self.run is None:
            return panels_load(1.0, self.before_ft, self.behind_ft)
        unit = [1.0] * len(self.run.spans_ft)
        return self.run.uniform(REACTION, self.at_run_ft, self.span, unit)

    def loads(self, wish: Wish, *, shear: bool) -> list[tuple[Floats, Floats, Found]]:
        """(v,) what axles and lane load bring to the panel point [kip], the lane load over 1 +
        impact where it has none, with the places behind them; impossible ones -inf.

        `shear`: the lane load's single weight is that for shear.
        """
        rows, of = wish.asked.rows, self.context.spans.of
        nothing, count = sections(0.0, len(rows)), len(rows)
        if shear not in self.known_lanes:
            self.known_lanes[shear] = np.array([
                self._lane(one, shear=shear) for one in self.context.vehicles.values()
            ])
        lanes = self.known_lanes[shear][rows]
        if self.run is None:
            greatest = self.context.spans.reaction(self.before_ft, self.behind_ft)
            axles = greatest.effect[rows]
            found = Found(
                factor=nothing, section=nothing, axle=greatest.axle[rows].tolist(),
                way=greatest.way[rows].tolist(),
            )
        else:
            trains = [self._train(one) for one in self.context.listed(rows.tolist())]
            axles = np.array([one.greatest for one in trains])
            found = Found(
                factor=nothing, section=nothing, way=[one.greatest_at[1] for one in trains],
                front=[one.greatest_at[0] - self.at_run_ft for one in trains],
                spacings=[one.greatest_at[2] for one in trains],
            )
        both = [(axles, np.where(of.beside[rows] > 0.0, lanes / wish.over, 0.0), found)]
        alone = of.alone[rows]
        if alone.any():
            both.append((
                np.zeros(count), np.where(alone, lanes, -np.inf),
                Found(factor=nothing, section=nothing, lane_only=[True] * count),
            ))
        return both

    def _train(self, vehicle: Vehicle) -> Extremes:
        assert self.run is not None
        key = (vehicle.axles_kip, vehicle.spacings_ft)
        if key not in self.trains:
            self.trains[key] = train_extremes(
                self.run, vehicle, effect=REACTION, section_ft=self.at_run_ft, span=self.span
            )
        return self.trains[key]

    def _lane(self, vehicle: Vehicle, *, shear: bool) -> float:
        """What the lane load brings [kip]."""
        if not (lane_alone(vehicle) or lane_beside(vehicle, 0.0)):
            return 0.0
        point = (vehicle.lane_point_kip or (0.0, 0.0))[1 if shear else 0]
        if self.run is None:
            return panels_load(vehicle.lane_kip_per_ft, self.before_ft, self.behind_ft) + point
        return lane_extremes(
            self.run, kip_per_ft=vehicle.lane_kip_per_ft, point_kip=point, effect=REACTION,
            section_ft=self.at_run_ft, span=self.span,
        )[0]

    def whole(
        self, facts: FloorFacts, vehicle: Vehicle, shock: float, *, shear: bool
    ) -> tuple[float, float]:
        """What the axles of the facts and the lane load with them bring to the panel point [kip],
        the lane load over 1 + impact where it has none."""
        lane = self._lane(vehicle, shear=shear)
        if facts.lane_only:
            found = 0.0
        elif self.run is not None:
            found = self._train(vehicle).greatest
        else:
            behind = vehicle.behind_front_ft()
            found = 0.0
            for far, axle in zip(behind, vehicle.axles_kip, strict=True):
                away = facts.way * (behind[facts.axle] - far)
                panel = self.before_ft if away < 0.0 else self.behind_ft
                if abs(away) < panel:
                    found += axle * panel_ordinate(abs(away), panel)
        if not facts.lane_only:
            note("what the axles bring to the panel point", "R", found, "kip")
            beside = lane_beside(vehicle, 0.0) > 0.0
            lane = lane / (1.0 if vehicle.lane_impact else 1.0 + shock) if beside else 0.0
        if lane:
            note("what the lane load brings to the panel point", "R_l", lane, "kip")
        return found, lane


def panel_point(
    context: FloorContext, *, panel_before: int, station_ft: float, before_ft: float,
    behind_ft: float,
) -> PanelPoint:
    """A panel point; where a stringer runs on over it, all are taken to."""
    run, span = _run_over(context.floor, panel_before)
    return PanelPoint(
        context=context, station_ft=station_ft, before_ft=before_ft, behind_ft=behind_ft, run=run,
        span=span,
    )


def _run_over(floor: Floor, panel_before: int) -> tuple[ContinuousBeam | None, int]:
    """The beam that runs on over the joint behind a panel, and its span that begins there."""
    for one in floor.stringers:
        runs = one.continuous and one.run_place + 1 < len(one.run_ft)
        if one.panel == panel_before and runs:
            return ContinuousBeam(spans_ft=one.run_ft), one.run_place + 1
    return None, 0
