"""The bars and blocks of one truss rated for all vehicles."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from eyebar.analysis.loaded import dead_forces
from eyebar.analysis.model import Floats
from eyebar.bridge.parts import Bar, Bridge, Truss
from eyebar.errors import OutOfRange
from eyebar.loads import (
    Shares,
    dead_sets,
    impact,
    lane_cases,
    live_factor,
    shares,
    worst_case,
)
from eyebar.rating.asked import Way
from eyebar.rating.blocks import METHODS, block_parts, block_strengths, no_rule
from eyebar.rating.entries import Answer, entries
from eyebar.rating.families import Family, families_of
from eyebar.rating.kept import Kept, State
from eyebar.rating.lookup import Candidate, Lookup, Question, least
from eyebar.rating.pin_checks import METHODS as PIN_METHODS
from eyebar.rating.pins import Asked
from eyebar.rating.pins import Way as PinWay
from eyebar.rating.rated import NO_RULE, PartRating, RatedPart
from eyebar.rating.strengths import Strengths
from eyebar.terms import Combine, Metal, Method
from eyebar.vehicles import Vehicle

DEAD_ALONE = (1.0, 1.0)


class By(NamedTuple):
    """What a question is answered by: the lookup, and the limits for a factor on DC."""

    lookup: Lookup
    strengths: Callable[[Question, float], Strengths]


class TrussRating:
    """Rates the bars of one truss; `all` answers with the ratings of each bar."""

    def __init__(
        self, bridge: Bridge, truss: Truss, *, kept: Kept, states: Sequence[State]
    ) -> None:
        self.bridge, self.truss, self.values = bridge, truss, kept.values
        self.states, self.table, self.wanted = states, kept.table, kept.wanted
        self.ways: dict[str, tuple[Way, ...]] = {}
        stations = [station for _, station in truss.floor_joints]
        self.span_ft = stations[-1] - stations[0]
        self.lookup = Lookup(
            values=kept.values, roadway=bridge.road, span_ft=self.span_ft, bars=truss.bars
        )
        self.pairs = {
            method: list(dict.fromkeys(
                (one.dc, one.dw) for one in dead_sets(
                    method, surfacing_measured=bridge.road.surfacing_measured, values=kept.values
                )
            ))
            for method in Method
        }
        self.dead: Floats = dead_forces(states[0].loaded, *DEAD_ALONE)
        self.questions: list[tuple[Question, tuple[Family, ...]]] = []
        self.asked: tuple[Asked, ...] = ()
        self.refused: list[list[PartRating]] = []

    def all(
        self, vehicles: Mapping[str, Vehicle], stopped: frozenset[str]
    ) -> list[list[PartRating]]:
        """For each bar its ratings, vehicle by vehicle; blocks that are `stopped` are not rated."""
        self.ways = self._ways(vehicles, stopped)
        families = {name: families_of(v, self._axle_impact(v)) for name, v in vehicles.items()}
        for state in self.states:
            state.sweeps.add(
                (family, pair)
                for name, vehicle in vehicles.items()
                for family in families[name]
                for method in dict.fromkeys(way[0] for way in self.ways[name])
                for pair in self.pairs[method]
            )
        refused: dict[str, str] = {}
        for name, vehicle in vehicles.items():
            try:
                across = shares(self.bridge.road, self.truss.name, vehicle, self.values)
            except OutOfRange as wide:
                refused[name] = str(wide)
                continue
            self.questions += [
                (question, families[name])
                for question in self._questions(vehicle, across, self.ways[name])
            ]
        by = By(self.lookup, self._strengths)
        answers = [self._answer(*question, by) for question in self.questions]
        self.refused = self._refused(refused)
        self.asked = tuple(map(_asked, answers))
        rows = [*entries(answers, self.dead), *self.refused]
        return [
            [self._by_rule(bar, one) for one in column]
            for bar, column in zip(self.truss.bars, zip(*rows, strict=True), strict=True)
        ]

    def _by_rule(self, bar: Bar, rating: PartRating) -> PartRating:
        """The rating; none, and why, where its method has no rule for the bar."""
        if (bar.address, rating.method) not in self.table.without_rule:
            return rating
        return PartRating(
            vehicle=rating.vehicle, method=rating.method, level=rating.level, factor=None,
            reason=NO_RULE, dead=rating.dead, live_factor=rating.live_factor, share=rating.share,
            lanes=rating.lanes,
        )

    def blocks(self, stopped: frozenset[str]) -> list[RatedPart]:
        """The blocks at the joints with their ratings, all but those that are `stopped`."""
        both = block_strengths(self.truss, self.values, stopped)
        rows = []
        for one in both:
            by = By(replace(
                self.lookup, bars=one.bars(), shocks={}, by_lengths={}, at_passages={}
            ), one.of)
            rows.append(entries(
                [self._answer(question, families, by) for question, families in self.questions
                 if question.method in METHODS],
                self.dead,
            ))
        everywhere = [
            *(no_rule(one) for one, _ in self.questions if one.method not in METHODS),
            *(row[0] for row in self.refused),
        ]
        return block_parts(both, rows, everywhere) if both else []

    def _strengths(self, question: Question, dead_factor_dc: float) -> Strengths:
        """Limits of the bars themselves."""
        return self.table.of(self.truss.bars, question.method, question.level, dead_factor_dc)

    def _questions(
        self, vehicle: Vehicle, across: Shares, ways: Sequence[Way]
    ) -> list[Question]:
        return [
            Question(
                vehicle=vehicle, method=method, level=level,
                live_factor=live_factor(
                    method=method, level=level, vehicle_class=vehicle.vehicle_class,
                    trucks_a_day=self.bridge.road.trucks_a_day, values=self.values,
                ),
                case=worst_case(lane_cases(across, method, self.values)),
            )
            for method, level in ways
        ]

    def _ways(
        self, vehicles: Mapping[str, Vehicle], stopped: frozenset[str]
    ) -> dict[str, tuple[Way, ...]]:
        """Vehicle -> the ways that count here. Strengths by all are asked for, so that a bar is not
        rated where any refuses it."""
        every = {name: self.wanted.of(vehicle) for name, vehicle in vehicles.items()}
        if not self.wanted.pairs:
            return every
        for method, level in dict.fromkeys(way for ways in every.values() for way in ways):
            for dc, _ in self.pairs[method]:
                self.table.of(self.truss.bars, method, level, dc)
        bars = {bar.address for bar in self.truss.bars}
        without = {method for address, method in self.table.without_rule if address in bars}
        if self.truss.pins:
            without |= set(Method) - set(PIN_METHODS)
        if block_strengths(self.truss, self.values, stopped):
            without |= set(Method) - set(METHODS)
        if self.wanted.unruled(lambda way: way[0] not in without):
            return every
        return {name: self.wanted.of_ruled(vehicle) for name, vehicle in vehicles.items()}

    def _refused(self, refused: Mapping[str, str]) -> list[list[PartRating]]:
        """Ratings of vehicles that are too wide for the road: none, with the reason."""
        return [
            [
                PartRating(
                    vehicle=name, method=method, level=level, factor=None, reason=reason
                )
            ] * len(self.truss.bars)
            for name, reason in refused.items()
            for method, level in self.ways[name]
        ]

    def _axle_impact(self, vehicle: Vehicle) -> float:
        """Impact on the axles of a vehicle whose lane load is added without it."""
        if vehicle.combine is not Combine.SUM or vehicle.lane_impact:
            return 0.0
        return impact(
            method=Method.LOAD_AND_RESISTANCE, vehicle_class=vehicle.vehicle_class,
            metal=Metal.STEEL, loaded_length_ft=0.0, span_ft=self.span_ft,
            surface=self.bridge.road.surface, values=self.values,
            pace=self.bridge.road.use.pace,
        )

    def _answer(self, question: Question, families: Sequence[Family], by: By) -> Answer:
        """All candidates of a question, and the least for each bar."""
        candidates: list[Candidate] = []
        scales: list[float] = []
        pulls: list[str] = []
        for state in self.states:
            for pair in self.pairs[question.method]:
                strengths = by.strengths(question, pair[0])
                for family in families:
                    scale = state.sweeps.scale(family)
                    for swept in state.sweeps.of(family, pair):
                        found = by.lookup.candidates(
                            state.sweeps, swept, strengths, question, scale=scale
                        )
                        candidates += found
                        scales += [scale] * len(found)
                        pulls += [state.pull] * len(found)
        return Answer(
            question=question, candidates=candidates, scales=scales, pulls=pulls,
            chosen=least(candidates),
        )


def _asked(answer: Answer) -> Asked:
    """A question with every sweep on which bars were looked for, each once."""
    ways = {
        id(one.swept): PinWay(pull, one.swept, scale)
        for one, scale, pull in zip(
            answer.candidates, answer.scales, answer.pulls, strict=True
        )
    }
    return Asked(question=answer.question, ways=tuple(ways.values()))
