"""What the ends of the trusses stand on: push, and uplift where the floor reaches beyond a bearing.

A truss on two bearings is a beam: of what stands so far from the other bearing an end bears that
distance over theirs, more than all of it beyond the end itself; what stands beyond the other
bearing lifts it. Each is looked at by itself: axles that relieve are left out.
"""

from dataclasses import dataclass
from typing import ClassVar

import numpy as np

from eyebar.bridge.floor_parts import Shoe
from eyebar.bridge.parts import Bridge
from eyebar.errors import NotMeasured
from eyebar.formula import note
from eyebar.loads.dead import joint_loads
from eyebar.loads.floor_dead import NONE, Pair
from eyebar.loads.reactions import beyond_ordinate, lane_beyond
from eyebar.loads.trains import Floats, Greatest
from eyebar.rating.asked import dead_factors
from eyebar.rating.floor_context import FloorContext, lane_beside
from eyebar.rating.floor_ends import TrussSide
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.rating.stiffness import stiffness_areas
from eyebar.resistance.floor_rules import Effect, Strength
from eyebar.resistance.shoes import shoe_strengths
from eyebar.terms import Level, Metal, Method
from eyebar.vehicles import Vehicle

GREATEST, LEAST = EVERY_SET


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """A stretch of floor whose loads act on a bearing alike: `long_ft` from its tip, where a load
    does most, to where it does nothing; `tip_ft` that tip, from the bearing towards the other."""

    long_ft: float
    tip_ft: float


@dataclass(slots=True, kw_only=True)
class ShoeLoads:
    """One end of a truss. `bearing_ft` is its station; the floor reaches `own_ft` beyond it and
    `far_ft` beyond the other bearing; `down` and `up` are the dead load that pushes and lifts."""

    mirrored: ClassVar[bool] = False
    context: FloorContext
    shoe: Shoe
    side: TrussSide
    bearing_ft: float
    span_ft: float
    own_ft: float
    far_ft: float
    down: Pair
    up: Pair

    def strengths(self, method: Method, level: Level) -> tuple[Strength, ...]:
        """Its strengths by a method and level. Raises NotMeasured where nothing is known to hold
        down what its dead load lifts."""
        if self.up.dc + self.up.dw >= self.down.dc + self.down.dw and self.shoe.anchors is None:
            raise NotMeasured("", "anchorage against the uplift of dead load")
        return shoe_strengths(
            self.shoe, method, level, values=self.context.values,
            condition=self.context.condition, lifts=self.far_ft > 0.0,
        )

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by the whole span."""
        return self.context.shock(
            vehicle, method, metal=Metal.STEEL, loaded_ft=self.span_ft, span_ft=self.span_ft
        )

    def sets(self) -> tuple[str, ...]:
        """Dead load holds down what would be lifted."""
        return EVERY_SET if self.far_ft > 0.0 else EVERY_SET[:1]

    def likeness(self) -> tuple[object, ...]:
        """What its ratings depend on; every end by itself."""
        return (self.shoe.address,)

    @property
    def base_ft(self) -> float:
        """Its place along the road."""
        return self.bearing_ft

    def station(self, facts: FloorFacts) -> float:
        """Where along the road the axle of the facts stands [ft]."""
        return self.bearing_ft + self._sense() * facts.section_ft

    def _sense(self) -> int:
        return 1 if self.shoe.at_zero else -1

    def reach(self, effect: Effect) -> Reach:
        """The stretch of floor that pushes, or that lifts."""
        if effect is Effect.TRUSS_UPLIFT:
            return Reach(long_ft=self.far_ft, tip_ft=self.span_ft + self.far_ft)
        return Reach(long_ft=self.span_ft + self.own_ft, tip_ft=-self.own_ft)

    def dead(self, effect: Effect, method: Method) -> Pair:
        """Dead load's push, without what would relieve it; or below nothing what holds down, with
        what lifts counted by its greatest factors beside the least of what holds [kip]."""
        if effect is not Effect.TRUSS_UPLIFT:
            return self.down
        by_set = dead_factors(
            method, surfacing_measured=self.context.roadway.surfacing_measured,
            values=self.context.values,
        )
        dc, dw = (most / least for most, least in zip(
            by_set[GREATEST], by_set[LEAST], strict=True))
        return Pair(dc=self.up.dc * dc - self.down.dc, dw=self.up.dw * dw - self.down.dw)

    def _greatest(self, reach: Reach) -> Greatest:
        """What the axles on a stretch do, the worst of them at its tip [kip, at the tip 1]."""
        return self.context.spans.shear(reach.long_ft, 0.0)

    def found(self, wish: Wish) -> list[Found]:
        """Factors of the asked vehicles for one wish."""
        strength, rows = wish.strength, wish.asked.rows
        lifts = strength.effect is Effect.TRUSS_UPLIFT
        if wish.dead != wish.asked.dead[LEAST if lifts else GREATEST]:
            return []
        of, reach = self.context.spans.of, self.reach(strength.effect)
        dead, total = self.dead(strength.effect, wish.asked.method), self.side.totals(wish)
        left = strength.capacity * strength.divisor - wish.dead[0] * dead.dc - (
            wish.dead[1] * dead.dw)
        by = reach.long_ft / self.span_ft
        greatest = self._greatest(reach)
        way = self._sense() * (-1 if lifts else 1) * greatest.way[rows]
        lane = of.beside[rows] / wish.over * reach.long_ft * by / 2.0
        place = sections(reach.tip_ft, len(rows))
        with np.errstate(invalid="ignore", divide="ignore"):
            coming: Floats = greatest.effect[rows] * by + lane
            axles = Found(
                factor=np.where(coming > 0.0, left / (wish.times * total * coming), np.inf),
                section=place, axle=greatest.axle[rows].tolist(), way=way.tolist(),
            )
            effect = (of.lane[rows] * reach.long_ft / 2.0 + of.point_shear[rows]) * by
            factor = np.where(
                of.alone[rows] & (effect > 0.0), left / (wish.times * total * effect), np.inf
            )
        return [axles, Found(factor=factor, section=place, lane_only=[True] * len(rows))]

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets."""
        case = self.side.case(vehicle, method, facts.lanes)
        assert case is not None
        effect = facts.strength.effect
        over, reach = 1.0 / facts.strength.divisor, self.reach(effect)
        long, span = reach.long_ft, self.span_ft
        if facts.lane_only:
            point = (vehicle.lane_point_kip or (0.0, 0.0))[1]
            whole = lane_beyond(vehicle.lane_kip_per_ft, long, span)
            whole += point * beyond_ordinate(long, span)
        else:
            behind = vehicle.behind_front_ft()
            way = facts.way * self._sense() * (-1 if effect is Effect.TRUSS_UPLIFT else 1)
            whole = 0.0
            for far, axle in zip(behind, vehicle.axles_kip, strict=True):
                away = way * (behind[facts.axle] - far)
                if 0.0 <= away <= long:
                    whole += axle * beyond_ordinate(long - away, span)
            if lane := lane_beside(vehicle, self.shock(vehicle, method)):
                whole += lane_beyond(lane, long, span)
        note("uplift of the whole vehicle" if effect is Effect.TRUSS_UPLIFT
             else "reaction of the whole vehicle", "R", whole, "kip")
        dead = self.dead(effect, method).times(over)
        return Met(dead=dead, live=whole * case.total * over, share=case.total)


def shoe_loads(bridge: Bridge, context: FloorContext, shoe: Shoe) -> ShoeLoads:
    """An end of a truss with its dead load: that of all joints by a simple beam's statics."""
    truss = next(one for one in bridge.trusses if one.name == shoe.truss)
    areas, _ = stiffness_areas(truss)
    ends = sorted(truss.joints[joint][0] for joint in truss.supports)
    first, last = ends[0], ends[-1]
    down = up = NONE
    for joint, (dc, dw) in joint_loads(truss, bridge.weights[truss.name], areas).items():
        along = (truss.joints[joint][0] - first) / (last - first)
        part = 1.0 - along if shoe.at_zero else along
        if part >= 0.0:
            down = down.plus(Pair(dc=dc, dw=dw).times(part))
        else:
            up = up.plus(Pair(dc=dc, dw=dw).times(-part))
    floor = sorted((truss.joints[joint][0], station) for joint, station in truss.floor_joints)
    begin, end = floor[0], floor[-1]
    out = (max(0.0, (first - begin[0]) / 12.0), max(0.0, (end[0] - last) / 12.0))
    return ShoeLoads(
        context=context, shoe=shoe, side=TrussSide(context=context, truss=shoe.truss), down=down,
        up=up, span_ft=(last - first) / 12.0,
        bearing_ft=begin[1] + out[0] if shoe.at_zero else end[1] - out[1],
        own_ft=out[0] if shoe.at_zero else out[1], far_ft=out[1] if shoe.at_zero else out[0],
    )
