"""What is known of pins already: pins alike on one sweep share it, across trusses."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from eyebar.analysis.convex import Edges, Spread, edges_of, first_passages, spread
from eyebar.analysis.passage import Passages, ended
from eyebar.analysis.paths import Ints
from eyebar.analysis.sweep import Bundle
from eyebar.bridge.parts import Pin
from eyebar.office import Values
from eyebar.rating.families import Swept
from eyebar.rating.lookup import Question
from eyebar.rating.pin_checks import (
    PinCheck,
    PinRows,
    PinRules,
    check_name,
    pin_check,
    pin_rows,
    pin_rules,
)
from eyebar.rating.strengths import SAME_STRENGTH
from eyebar.resistance import Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class Passed:
    """First passages (t,) of a pin's check on the sweeps of a bundle, and which check it is."""

    multiple: Sequence[float]
    edge: Sequence[int]
    part: Sequence[float]
    checks: Sequence[str]


@dataclass(slots=True)
class PinTable:
    """Rules, rows and passages of pins, each found once."""

    values: Values
    condition: Condition
    rules: dict[tuple[object, ...], PinRules] = field(default_factory=dict)
    rows: dict[int, PinRows] = field(default_factory=dict)
    edges: dict[int, Edges] = field(default_factory=dict)
    spreads: dict[tuple[int, tuple[str, ...]], Spread] = field(default_factory=dict)
    columns: dict[tuple[int, tuple[str, ...]], Ints] = field(default_factory=dict)
    latest: dict[tuple[int, tuple[str, ...]], Passages] = field(default_factory=dict)
    kinds: dict[tuple[object, ...], int] = field(default_factory=dict)
    numbers: dict[int, int] = field(default_factory=dict)
    passed: dict[tuple[int, int, int], Passed] = field(default_factory=dict)
    shocks: dict[tuple[object, ...], float] = field(default_factory=dict)
    lanes_sought: set[tuple[object, ...]] = field(default_factory=set)
    lanes: dict[tuple[object, ...], list[tuple[Swept, frozenset[int]]]] = field(
        default_factory=dict
    )
    """Truss, family and dead load -> sweeps of lane loads that are worst for pins of some
    numbers."""
    endings: dict[int, tuple[float, int, int]] = field(default_factory=dict)

    def rules_of(self, question: Question) -> PinRules:
        """The numbers of the question's method and level."""
        level = SAME_STRENGTH[question.method].get(question.level, question.level)
        key = (question.method, level)
        if key not in self.rules:
            self.rules[key] = pin_rules(
                question.method, level, values=self.values, condition=self.condition
            )
        return self.rules[key]

    def ended_of(self, swept: Swept) -> tuple[float, int, int]:
        """Where equilibrium ends on a sweep, as `ended` has it."""
        if id(swept) not in self.endings:
            self.endings[id(swept)] = ended(swept.sweep)
        return self.endings[id(swept)]

    def lanes_of(self, swept: Swept) -> Sequence[tuple[Swept, frozenset[int]]]:
        """The lane loads of a sweep's shape that are worst for pins, each with their numbers."""
        return self.lanes.get((id(swept.loaded), id(swept.family), swept.dead), ())

    def rows_of(self, pin: Pin) -> PinRows:
        """The rows of a pin."""
        key = self.alike(pin)
        if key not in self.rows:
            self.rows[key] = pin_rows(pin)
        return self.rows[key]

    def columns_of(self, swept: Swept, rows: PinRows) -> Ints:
        """(b,) numbers of a pin's bars in a sweep's truss."""
        key = (id(swept.loaded), rows.bars)
        if key not in self.columns:
            names = swept.loaded.model.names
            self.columns[key] = np.array([names.index(bar) for bar in rows.bars])
        return self.columns[key]

    def passed_by(self, pin: Pin, by: PinRules, swept: Swept) -> Passed:
        """The first passages of a pin on all sweeps of a bundle."""
        key = (id(swept.sweep.bundle), id(by), self.alike(pin))
        if key not in self.passed:
            rows = self.rows_of(pin)
            self.passed[key] = self._pass(pin_check(rows, by), rows, swept)
        return self.passed[key]

    def _pass(self, check: PinCheck, rows: PinRows, swept: Swept) -> Passed:
        bundle = swept.sweep.bundle
        key = (id(bundle), rows.bars)
        if key not in self.spreads:
            self.spreads[key] = spread(self._edges(bundle), self.columns_of(swept, rows))
        one = self.spreads[key]
        found = first_passages(one, check, self.latest.get(key))
        self.latest[key] = found
        edges = bundle.edges[np.maximum(found.edge, 0) + bundle.edge_at[:-1]]
        first, second = one.forces(edges[:, 0]), one.forces(edges[:, 1])
        greatest = check.ratios((first + found.part * (second - first)).T).argmax(axis=-1)
        return Passed(
            multiple=found.multiple.tolist(), edge=np.maximum(found.edge, 0).tolist(),
            part=found.part.tolist(),
            checks=[check_name(rows, check.rules, number) for number in greatest.tolist()],
        )

    def _edges(self, bundle: Bundle) -> Edges:
        if id(bundle) not in self.edges:
            self.edges[id(bundle)] = edges_of(bundle)
        return self.edges[id(bundle)]

    def alike(self, pin: Pin) -> int:
        """One number for all pins alike."""
        if id(pin) not in self.numbers:
            self.numbers[id(pin)] = self.kinds.setdefault(_likeness(pin), len(self.kinds))
        return self.numbers[id(pin)]


def _likeness(pin: Pin) -> tuple[object, ...]:
    """What the checks of a pin depend on, all but its truss."""
    return (pin.joint, pin.diameter, pin.material.yield_stress, pin.packing, pin.whole,
            tuple(pin.toward.items()))
