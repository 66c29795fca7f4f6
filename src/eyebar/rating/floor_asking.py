"""What is asked of the parts of a floor, and their strengths by it."""

from dataclasses import dataclass

from eyebar.rating.asked import Asked, Wanted
from eyebar.rating.floor_context import FloorKept
from eyebar.rating.floor_search import Loads
from eyebar.resistance.floor_rules import Strength


@dataclass(frozen=True, slots=True)
class Asking:
    """What is asked of a floor's parts: everything that is wanted, and what of it counts for a part
    that has a rule by the first of every pair."""

    wanted: Wanted
    kept: FloorKept
    everything: tuple[Asked, ...]
    of_ruled: tuple[Asked, ...]

    def of(self, loads: Loads, address: str) -> tuple[Asked, ...]:
        """What is asked of one part. Raises NotMeasured and OutOfRange by any method asked."""
        if not self.wanted.pairs:
            return self.everything
        ruled = {
            (one.method, one.level) for one in self.everything
            if self.strengths(loads, address, one)
        }
        unruled = self.wanted.unruled(ruled.__contains__)
        return self.everything if unruled else self.of_ruled

    def strengths(self, loads: Loads, address: str, asked: Asked) -> tuple[Strength, ...]:
        """Strengths of one part, none where the method has no rule; found once."""
        key = (address, asked.method, asked.level)
        if key not in self.kept.strengths:
            self.kept.strengths[key] = loads.strengths(asked.method, asked.level)
        return self.kept.strengths[key]
