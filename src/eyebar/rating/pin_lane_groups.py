"""The shapes of lane load that pins are asked for, and the worst load of a shape for a line."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from eyebar.analysis.influence import uniform_panel_loads, weight_at_greatest
from eyebar.analysis.loaded import LoadedTruss
from eyebar.analysis.model import Floats
from eyebar.analysis.paths import Ints
from eyebar.analysis.places import Places
from eyebar.rating.families import Family, Swept, trains_of
from eyebar.rating.pin_checks import PinRules


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneGroup:
    """Lane loads of one shape on one dead load of one truss, and the sweeps made of them."""

    loaded: LoadedTruss
    family: Family
    dead: tuple[float, float]
    trains: tuple[Places, ...]
    known: tuple[Swept, ...]

    def weigh(self, each: Floats) -> Floats:
        """(r,) what all weights come to at most, if one kip on the floor joints does `each`
        (r, p)."""
        half = np.diff(self.loaded.lines.stations_ft) * self.family.lane_kip_per_ft / 2.0
        uniform = np.append(half, 0.0) + np.insert(half, 0, 0.0)
        single = max(self.family.lane_point_kip) + sum(self.family.axles_kip)
        found: Floats = each @ uniform + single * each.max(axis=1)
        return found

    def worst(self, ordinates: Floats) -> tuple[Floats, Ints]:
        """(t r, p) the loads that are worst for influence lines (r, p), with each of t trains, and
        its places (t r,); without one -1."""
        lines, family = self.loaded.lines, self.family
        lane = uniform_panel_loads(lines.stations_ft, ordinates, family.lane_kip_per_ft)
        point = max(family.lane_point_kip)
        if point:
            lane += weight_at_greatest(ordinates, point)
        if not self.trains:
            return lane, np.full(len(lane), -1)
        places = [(ordinates @ train.loads.T).argmax(axis=1) for train in self.trains]
        both = [
            lane + train.loads[place] for train, place in zip(self.trains, places, strict=True)
        ]
        return np.concatenate(both), np.concatenate(places)


def lane_groups(
    asked: Iterable[tuple[PinRules, Sequence[Swept]]]
) -> Iterator[tuple[LaneGroup, PinRules]]:
    """The shapes of lane load among sweeps, with the rules by which they are asked for."""
    known: dict[tuple[int, int, tuple[float, float]], dict[int, Swept]] = {}
    rules: dict[tuple[int, int, tuple[float, float]], dict[int, PinRules]] = {}
    for by, ways in asked:
        for swept in ways:
            if swept.family.lane_kip_per_ft:
                key = (id(swept.loaded), id(swept.family), swept.dead)
                known.setdefault(key, {})[id(swept)] = swept
                rules.setdefault(key, {})[id(by)] = by
    for key, every in known.items():
        first = next(iter(every.values()))
        group = LaneGroup(
            loaded=first.loaded, family=first.family, dead=first.dead, known=tuple(every.values()),
            trains=tuple(trains_of(first.loaded, first.family)),
        )
        for by in rules[key].values():
            yield group, by
