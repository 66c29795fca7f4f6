"""The rating of a whole bridge on a date."""

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
    lanes,
    live_factor,
    shares,
    worst_case,
)
from eyebar.office import Values
from eyebar.rating.asked import Ways, ways_of
from eyebar.rating.blocks import METHODS, block_parts, block_strengths, no_rule, unrated_blocks
from eyebar.rating.entries import Answer, entries
from eyebar.rating.families import Family, families_of
from eyebar.rating.floor import rated_floor
from eyebar.rating.half_through import held_by_posts
from eyebar.rating.kept import Kept, State, kept_for
from eyebar.rating.lookup import Candidate, Lookup, Question, least
from eyebar.rating.pins import SAID, Asked, Way, pin_parts, unrated_pins
from eyebar.rating.posting import Governing, posting, ways
from eyebar.rating.rated import NO_RULE, BridgeRating, PartRating, RatedPart
from eyebar.rating.strengths import Strengths
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle

DEAD_ALONE = (1.0, 1.0)


def rated_bridge(
    bridge: Bridge, values: Values, vehicles: Mapping[str, Vehicle], kept: Kept | None = None
) -> BridgeRating:
    """Every bar of a bridge rated for every vehicle by every method with a rule; the posting.

    `kept` is of an earlier rating of the same bridge by the same values, and is added to. Raises
    Unstable, OutOfRange and NotMeasured where no forces can be found at all.
    """
    kept = kept or kept_for(bridge, values)
    values, table = kept.values, kept.table
    cautions = list(bridge.rules)
    as_read, states_of = bridge, kept.states_of
    bridge, _, said = held_by_posts(
        bridge, lambda truss: states_of(as_read, truss)[0][0].loaded, values
    )
    cautions += said
    if bridge.roadway is not None:
        cautions += filter(None, [lanes(bridge.road, values).caution])
    stopped = frozenset(other.address for other in bridge.others)
    parts: list[RatedPart] = []
    for truss in bridge.trusses:
        ratings: list[list[PartRating]] = [[] for _ in truss.bars]
        more: list[RatedPart] = []
        if bridge.unknown_loads:
            # Without the floor's weight no force is known: nothing is looked for.
            table.not_rated.update({bar.address: bar.not_rated for bar in truss.bars})
            reason = f"dead load not known: {'; '.join(bridge.unknown_loads)}"
            more = [*unrated_pins(truss, reason), *unrated_blocks(truss, stopped, reason)]
        else:
            states, assumed = kept.states_of(bridge, truss)
            cautions += assumed
            its = _TrussRating(bridge, truss, kept=kept, states=states)
            ratings = its.all(vehicles)
            if truss.pins:
                refused = [row[0] for row in its.refused]
                more += pin_parts(bridge, truss, (its.asked, refused), kept.pins)
                cautions.append(SAID)
            more += its.blocks(stopped)
        parts += [
            RatedPart(
                address=bar.address, truss=truss.name, kind=bar.kind, bar=bar,
                not_rated=table.not_rated.get(bar.address, ""),
                ratings=() if bar.address in table.not_rated else tuple(ratings[i]),
            )
            for i, bar in enumerate(truss.bars)
        ]
        parts += [
            RatedPart(
                address=bar.address, truss=truss.name, kind=bar.kind, bar=bar,
                not_rated=bar.not_rated or "declared broken",
            )
            for bar in truss.broken
        ]
        parts += more
    parts += rated_floor(bridge, values, vehicles, kept.condition, wanted=kept.wanted)
    parts += [
        RatedPart(address=o.address, truss=o.truss, kind=o.kind, not_rated=o.not_rated)
        for o in bridge.others
    ]
    posted = posting(
        governing(parts, vehicles, values),
        not_rated=[part.address for part in parts if part.not_rated],
        provisional_parts=[part.address for part in parts if part.provisional], values=values,
    )
    return BridgeRating(
        bridge=bridge, parts=tuple(parts), posting=posted,
        values_used=tuple(sorted(values.used)),
        unconfirmed=tuple(row.name for row in values.unconfirmed(values.used)),
        cautions=tuple(dict.fromkeys(cautions)),
        values_hash=values.digest(),
        weights={name: vehicle.weight_tons for name, vehicle in vehicles.items()},
    )


class By(NamedTuple):
    """What a question is answered by: the lookup, and the limits for a factor on DC."""

    lookup: Lookup
    strengths: Callable[[Question, float], Strengths]


class _TrussRating:
    """Rates the bars of one truss; `all` answers with the ratings of each bar."""

    def __init__(
        self, bridge: Bridge, truss: Truss, *, kept: Kept, states: Sequence[State]
    ) -> None:
        self.bridge, self.truss, self.values = bridge, truss, kept.values
        self.states, self.table, self.wanted = states, kept.table, kept.wanted
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

    def all(self, vehicles: Mapping[str, Vehicle]) -> list[list[PartRating]]:
        """For each bar its ratings, vehicle by vehicle."""
        families = {name: families_of(v, self._axle_impact(v)) for name, v in vehicles.items()}
        for state in self.states:
            state.sweeps.add(
                (family, pair)
                for name, vehicle in vehicles.items()
                for family in families[name]
                for method in dict.fromkeys(way[0] for way in self._ways(vehicle))
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
                (question, families[name]) for question in self._questions(vehicle, across)
            ]
        by = By(self.lookup, self._strengths)
        answers = [self._answer(*question, by) for question in self.questions]
        self.refused = self._refused(vehicles, refused)
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

    def _questions(self, vehicle: Vehicle, across: Shares) -> list[Question]:
        return [
            Question(
                vehicle=vehicle, method=method, level=level,
                live_factor=live_factor(
                    method=method, level=level, vehicle_class=vehicle.vehicle_class,
                    trucks_a_day=self.bridge.road.trucks_a_day, values=self.values,
                ),
                case=worst_case(lane_cases(across, method, self.values)),
            )
            for method, level in self._ways(vehicle)
        ]

    def _ways(self, vehicle: Vehicle) -> tuple[tuple[Method, Level], ...]:
        return ways_of(vehicle, self.wanted)

    def _refused(
        self, vehicles: Mapping[str, Vehicle], refused: Mapping[str, str]
    ) -> list[list[PartRating]]:
        """Ratings of vehicles that are too wide for the road: none, with the reason."""
        return [
            [
                PartRating(
                    vehicle=name, method=method, level=level, factor=None, reason=reason
                )
            ] * len(self.truss.bars)
            for name, reason in refused.items()
            for method, level in self._ways(vehicles[name])
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
        id(one.swept): Way(pull, one.swept, scale)
        for one, scale, pull in zip(
            answer.candidates, answer.scales, answer.pulls, strict=True
        )
    }
    return Asked(question=answer.question, ways=tuple(ways.values()))


def governing(
    parts: Sequence[RatedPart], vehicles: Mapping[str, Vehicle], values: Values
) -> list[Governing]:
    """What the posting reads: the ratings of the vehicles that set it and of emergency ones by its
    methods and levels."""
    wanted = {
        *values.names("posting.vehicles"), *values.names("posting.emergency vehicles")
    } & set(vehicles)
    return factors_of(
        parts, {name: vehicles[name] for name in vehicles if name in wanted}, ways(values)
    )


def factors_of(
    parts: Sequence[RatedPart], vehicles: Mapping[str, Vehicle], by: Ways = frozenset()
) -> list[Governing]:
    """Every rating of some vehicles by a method that has a rule for the part; `by` are the methods
    and levels that alone are wanted, empty for all."""
    return [
        Governing(
            vehicle=vehicles[rating.vehicle], factor=rating.factor, method=rating.method,
            level=rating.level, part=part.address, check=rating.check,
        )
        for part in parts
        for rating in part.ratings
        if rating.vehicle in vehicles and rating.reason != NO_RULE
        and (not by or (rating.method, rating.level) in by)
    ]


