"""Limits of every bar of a truss by method, level and dead load, the nearer one in each sense."""

from collections.abc import Sequence
from dataclasses import dataclass, field, fields

import numpy as np

from eyebar.analysis.model import Floats
from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.office import Values
from eyebar.resistance import Condition, Limit, limits
from eyebar.terms import Level, Method

SAME_STRENGTH = {
    Method.ALLOWABLE_STRESS: {},
    Method.LOAD_FACTOR: {Level.INVENTORY: Level.OPERATING},
    Method.LOAD_AND_RESISTANCE: {
        Level.INVENTORY: Level.LEGAL, Level.OPERATING: Level.LEGAL, Level.PERMIT: Level.LEGAL,
    },
}
"""Levels whose strength is that of another: they differ in the load factor alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strengths:
    """Nearest limits of n bars in pull and push: `pull`, `push` (n,) [kip, both over zero, infinity
    where there is none], and the Limit behind each."""

    about: tuple[str, str]
    """Method and level."""
    pull: Floats
    push: Floats
    pull_limits: tuple[Limit | None, ...]
    push_limits: tuple[Limit | None, ...]

    def of(self, sense: int) -> tuple[Floats, tuple[Limit | None, ...]]:
        """The limits in one sense."""
        return (self.pull, self.pull_limits) if sense > 0 else (self.push, self.push_limits)


@dataclass(slots=True)
class StrengthTable:
    """Strengths of the bars of all trusses of a bridge, each kind of bar worked out once.

    `not_rated` gathers bar address -> reason, as limits are asked for; `without_rule` the bars that
    a method has no rule for.
    """

    values: Values
    condition: Condition
    not_rated: dict[str, str] = field(default_factory=dict)
    without_rule: set[tuple[str, Method]] = field(default_factory=set)
    known: dict[tuple[object, ...], tuple[Limit, ...] | NotMeasured | OutOfRange] = field(
        default_factory=dict
    )
    tables: dict[tuple[object, ...], Strengths] = field(default_factory=dict)

    def of(
        self, bars: Sequence[Bar], method: Method, level: Level, dead_factor_dc: float
    ) -> Strengths:
        """Strengths of some bars by one method and level, for a factor on DC."""
        same = SAME_STRENGTH[method].get(level, level)
        key = (bars[0].address, len(bars), method, same, dead_factor_dc)
        if key not in self.tables:
            rows = [self._limits(bar, method, same, dead_factor_dc) for bar in bars]
            self.tables[key] = _nearest(rows, (method, same))
        return self.tables[key]

    def _limits(
        self, bar: Bar, method: Method, level: Level, dead_factor_dc: float
    ) -> tuple[Limit, ...]:
        if bar.not_rated:
            self.not_rated[bar.address] = bar.not_rated
            return ()
        key = (*_likeness(bar), method, level, dead_factor_dc)
        if key not in self.known:
            try:
                self.known[key] = limits(
                    bar, method=method, level=level, dead_factor_dc=dead_factor_dc,
                    values=self.values, condition=self.condition,
                )
            except (NotMeasured, OutOfRange) as refusal:
                self.known[key] = refusal
        found = self.known[key]
        if isinstance(found, tuple):
            if not found:
                self.without_rule.add((bar.address, method))
            return found
        if isinstance(found, NotMeasured):
            self.not_rated[bar.address] = f"{found.what} of {bar.address} not measured"
        else:
            self.not_rated[bar.address] = f"no strength can be found: {found}"
        return ()


_NAMING = frozenset({"name", "address", "ends", "readings", "material"})


def _likeness(bar: Bar) -> tuple[object, ...]:
    """What the limits of a bar depend on, all but its name: bars alike in it share them."""
    return (
        id(bar.material),
        *(getattr(bar, one.name) for one in fields(bar) if one.name not in _NAMING),
    )


def _nearest(rows: Sequence[tuple[Limit, ...]], about: tuple[str, str]) -> Strengths:
    pull = [min((x for x in row if x.sense > 0), key=lambda x: x.force, default=None)
            for row in rows]
    push = [max((x for x in row if x.sense < 0), key=lambda x: x.force, default=None)
            for row in rows]
    return Strengths(
        about=about,
        pull=np.array([np.inf if x is None else x.force for x in pull]),
        push=np.array([np.inf if x is None else -x.force for x in push]),
        pull_limits=tuple(pull), push_limits=tuple(push),
    )
