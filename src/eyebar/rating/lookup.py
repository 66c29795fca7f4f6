"""The least factor of every bar for one vehicle, method and level, and where it arises.

A factor is the least multiple at which the part's own check is reached, over all places, both
directions, lanes, and the greatest and the least dead load, all other parts staying elastic; or the
multiple at which the truss finds no equilibrium, where that comes first.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.analysis.passage import Passages, ended, sets_before
from eyebar.analysis.paths import Ints
from eyebar.bridge.parts import Bar, Roadway
from eyebar.loads import LaneCase, impact, loaded_length_ft
from eyebar.office import Values
from eyebar.rating.families import Sweeps, Swept
from eyebar.rating.formulas import rating_factor
from eyebar.rating.safe_load import ALIKE
from eyebar.rating.strengths import Strengths
from eyebar.terms import Level, Method, VehicleClass
from eyebar.vehicles import Vehicle


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What was asked: a vehicle by a method at a level, with what multiplies its axles."""

    vehicle: Vehicle
    method: Method
    level: Level
    live_factor: float
    case: LaneCase


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """One way in which bars may reach their limits: a sweep looked up in one sense (0: the end of
    equilibrium), with factors, impacts and like-signed loaded lengths [ft] of all bars (n,)."""

    swept: Swept
    sense: int
    found: Passages | None
    strengths: Strengths
    factor: Floats
    impact: Floats
    loaded_ft: Floats


@dataclass(slots=True)
class Lookup:
    """Looks sweeps up against strengths; keeps what does not depend on the vehicle's size."""

    values: Values
    roadway: Roadway
    span_ft: float
    bars: tuple[Bar, ...]
    shocks: dict[tuple[object, ...], float] = field(default_factory=dict)
    by_lengths: dict[tuple[object, ...], Floats] = field(default_factory=dict)
    at_passages: dict[tuple[object, ...], tuple[Passages, Floats, Floats]] = field(
        default_factory=dict
    )

    def candidates(
        self, sweeps: Sweeps, swept: Swept, strengths: Strengths, question: Question,
        *, scale: float,
    ) -> list[Candidate]:
        """The candidates of one sweep: pull, push, and the end of equilibrium."""
        method, share = question.method, question.case.total
        about = (method, question.vehicle.vehicle_class)
        live_factor = question.live_factor
        found = []
        for sense in (1, -1):
            passage = sweeps.passages(
                swept, strengths.of(sense)[0], sense, strengths.about
            )
            lengths, shock = self._shocks(swept, passage, sense, about)
            factor = rating_factor(
                multiple=passage.multiple, scale=scale, live_factor=live_factor, impact=shock,
                share=share,
            )
            found.append(Candidate(
                swept=swept, sense=sense, found=passage, strengths=strengths, impact=shock,
                loaded_ft=lengths, factor=np.where(swept.bars, factor, np.inf),
            ))
        multiple, _, _ = ended(swept.sweep)
        if np.isfinite(multiple):
            # The load that overturns the web is short: web bars have their greatest impact.
            lengths = np.zeros(len(self.bars))
            shock = self._impacts(lengths, about)
            factor = rating_factor(
                multiple=multiple, scale=scale, live_factor=live_factor, impact=shock,
                share=share,
            )
            found.append(Candidate(
                swept=swept, sense=0, found=None, strengths=strengths, impact=shock,
                loaded_ft=lengths, factor=np.where(swept.bars, factor, np.inf),
            ))
        return found

    def _shocks(
        self, swept: Swept, passage: Passages, sense: int, about: tuple[Method, VehicleClass]
    ) -> tuple[Floats, Floats]:
        """(n,) loaded length [ft] and impact of each bar where it passes its limit."""
        key = (id(passage), *about)
        if key not in self.at_passages:
            lengths = self._lengths(swept, passage, sense, about[0])
            # Kept with the passage, whose number stays its own only as long as it is there.
            self.at_passages[key] = passage, lengths, self._impacts(lengths, about)
        return self.at_passages[key][1:]

    def _lengths(
        self, swept: Swept, passage: Passages, sense: int, method: Method
    ) -> Floats:
        """(n,) like-signed length [ft] of each bar in the set in which its limit is reached."""
        lengths = np.zeros(len(self.bars))
        if method is Method.LOAD_AND_RESISTANCE:
            return lengths
        numbers = sets_before(swept.sweep, passage.edge)
        for number in np.unique(numbers[numbers >= 0]):
            rows = numbers == number
            lengths[rows] = swept.loaded.lines.loaded_ft(int(number), sense)[rows]
        return lengths

    def _impacts(self, lengths: Floats, about: tuple[Method, VehicleClass]) -> Floats:
        """(n,) impact of each bar by its loaded length."""
        key = (*about, lengths.tobytes())
        if key not in self.by_lengths:
            self.by_lengths[key] = np.array([
                self._shock(bar, length, about)
                for bar, length in zip(self.bars, lengths.tolist(), strict=True)
            ])
        return self.by_lengths[key]

    def _shock(
        self, bar: Bar, like_signed_ft: float, about: tuple[Method, VehicleClass]
    ) -> float:
        key = (*about, bar.kind, bar.material.metal, like_signed_ft)
        if key not in self.shocks:
            self.shocks[key] = impact_on(
                bar, like_signed_ft, method=about[0], vehicle_class=about[1],
                roadway=self.roadway, span_ft=self.span_ft, values=self.values,
            )
        return self.shocks[key]


def impact_on(
    bar: Bar, like_signed_ft: float, *, method: Method, vehicle_class: VehicleClass,
    roadway: Roadway, span_ft: float, values: Values,
) -> float:
    """Impact on a bar [1]; `like_signed_ft` is the length on which a weight acts in its sense."""
    return impact(
        method=method, vehicle_class=vehicle_class, metal=bar.material.metal,
        loaded_length_ft=loaded_length_ft(
            bar.kind, span_ft=span_ft, like_signed_ft=like_signed_ft
        ),
        span_ft=span_ft, surface=roadway.surface, values=values, pace=roadway.use.pace,
    )


def least(candidates: Sequence[Candidate]) -> Ints:
    """(n,) the candidate with the least factor of each bar, the earlier one where two are alike."""
    factors = np.stack([one.factor for one in candidates])
    bottom = factors.min(axis=0)
    best: Ints = (factors <= bottom + ALIKE * np.abs(bottom)).argmax(axis=0)
    return best


