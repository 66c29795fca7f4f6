"""What a part that wind presses on is worth, and how many times that wind it stands.

By allowable stress at inventory, with the office's more for wind. What is always there, and what
vehicles add, is not multiplied: the margin is on the wind alone.
"""

import math
from dataclasses import dataclass, field

from eyebar.bridge.parts import Bar
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.formula import Symbol, formula
from eyebar.office import Values
from eyebar.rating.strengths import StrengthTable
from eyebar.resistance import Condition, Limit, limits
from eyebar.resistance.bent_column import amplifying, bent
from eyebar.resistance.moments import moment_strength, use_in_two_planes
from eyebar.resistance.rules import Rules, rules
from eyebar.resistance.whole_column import column
from eyebar.sections.properties import properties
from eyebar.terms import Level, Method

METHOD = Method.ALLOWABLE_STRESS
LEVEL = Level.INVENTORY
BEYOND = 1e3
"""A margin over this is not looked for: the wind does nothing to the part."""
NEAR = 1e-10
DEAD_FACTOR = 1.0


@formula(
    "m = (C - D) / W",
    result=Symbol("how many times the wind the part stands", "1"),
    C=Symbol("force that the part may take, more for wind counted", "kip", "capacity", low=10.0,
             high=200.0),
    D=Symbol("force of that sense without wind", "kip", "steady", low=-50.0, high=10.0),
    W=Symbol("force of that sense by the wind", "kip", "wind", low=0.5, high=50.0),
    source="definition",
)
def margin_of_wind(capacity: float, steady: float, wind: float) -> float:
    """How many times the wind a part stands [1].

    Forces [kip]. Scalars. Limits: wind above 0.
    """
    return (capacity - steady) / wind


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """Whether a part stands the wind: `use` at the whole wind and `margin` how many times it, with
    the `check` that is reached and its `capacity` in kip (None where moments take part in it).
    `unknown`: why it is not judged."""

    check: str = ""
    capacity: float | None = None
    use: float | None = None
    margin: float | None = None
    unknown: str = ""
    remarks: tuple[str, ...] = ()


@dataclass(slots=True)
class Judge:
    """Verdicts on the parts of one bridge."""

    values: Values
    condition: Condition
    more: float
    """How much more than the allowable stress the office lets the load bring [1]."""
    table: StrengthTable = field(init=False)

    def __post_init__(self) -> None:
        self.table = StrengthTable(self.values, self.condition)

    def along(self, bar: Bar, steady: float, wind: float) -> Verdict:
        """A part pulled or pushed: forces signed, pull positive [kip]."""
        sense = 1 if wind > 0.0 else -1
        found = self._limit(bar, sense)
        if isinstance(found, Verdict):
            return found
        capacity = self.more * abs(found.force)
        margin = max(margin_of_wind(capacity, steady * sense, abs(wind)), 0.0)
        return Verdict(
            check=found.check, capacity=capacity, use=(steady + wind) * sense / capacity,
            margin=margin, remarks=found.remarks,
        )

    def _limit(self, bar: Bar, sense: int) -> Limit | Verdict:
        row = self.table.of((bar,), METHOD, LEVEL, DEAD_FACTOR)
        if bar.address in self.table.not_rated:
            return Verdict(unknown=self.table.not_rated[bar.address])
        found = row.of(sense)[1][0]
        if found is None:
            return Verdict(check="cannot push" if sense < 0 else "cannot pull", capacity=0.0,
                           margin=0.0)
        return found

    def bent(
        self, bar: Bar, *, push: float, wind_push: float, moment: float, across: bool
    ) -> Verdict:
        """A part that wind pushes and bends, `across` the truss or in its own plane.

        Pushes [kip], the moment by wind [kip in].
        """
        try:
            held = self._bending(bar, across=across)
        except NotMeasured as missing:
            return Verdict(unknown=f"{missing.what} of {bar.address} not measured")
        except OutOfRange as reason:
            return Verdict(unknown=f"no strength can be found: {reason}")
        use = _use(held, push + wind_push, moment)
        return Verdict(
            check="push and bending by wind", use=None if math.isinf(use) else use,
            margin=_margin(held, push, wind_push, moment),
        )

    def bending(self, bar: Bar) -> float:
        """Moment across the truss that a bar may take, more for wind counted [kip in].

        Raises NotMeasured."""
        shape = properties(bar.left)
        found = rules(METHOD, LEVEL, values=self.values, condition=self.condition,
                      section=bar.left)
        return self.more * moment_strength(
            found, bar.material.yield_stress, shape.i_y, shape.side
        )

    def _bending(self, bar: Bar, *, across: bool) -> "_Bending":
        if bar.not_rated:
            raise OutOfRange(bar.address, bar.not_rated, "rated")
        found_rules = rules(
            METHOD, LEVEL, values=self.values, condition=self.condition, section=bar.left
        )
        pushes = [
            one for one in self._pushes(bar) if one.unit == "kip" and one.sense < 0
        ]
        if not pushes:
            raise OutOfRange(bar.address, "no strength in push", "a bar that can push")
        straight = min(abs(one.force) for one in pushes)
        return _held(bar, found_rules, self, straight=straight, across=across)

    def _pushes(self, bar: Bar) -> tuple[Limit, ...]:
        return limits(
            bar, method=METHOD, level=LEVEL, dead_factor_dc=DEAD_FACTOR, values=self.values,
            condition=self.condition,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bending:
    """A bar that is pushed and bent, every strength with its more for wind; kip, inch."""

    column: float
    weight: float
    support: float
    offset: float
    bow: float
    strength: float
    buckling: float
    side_strength: float
    side_buckling: float
    across: bool


def _held(
    bar: Bar, found_rules: Rules, judge: Judge, *, straight: float, across: bool
) -> _Bending:
    found = column(bar, found_rules, judge.values)
    moments, _ = bent(found, straight=straight, dead_factor_dc=DEAD_FACTOR)
    shape, more = found.shape, judge.more
    stress = found.plates.yields(lambda: bar.material.yield_stress)
    upright = moment_strength(found_rules, stress, shape.i_x, max(shape.top, shape.bottom))
    aside = moment_strength(found_rules, stress, shape.i_y, shape.side)
    buckling, side_buckling = amplifying(found)
    return _Bending(
        column=more * straight, strength=more * upright, buckling=more * buckling,
        weight=0.0 if moments is None else moments.weight,
        support=0.0 if moments is None else abs(moments.support),
        offset=0.0 if moments is None else moments.offset,
        bow=0.0 if moments is None else moments.bow,
        side_strength=more * aside, side_buckling=more * side_buckling, across=across,
    )


def _use(held: _Bending, thrust: float, moment: float) -> float:
    """Use of the part [1]; infinity where it would buckle."""
    thrust = max(thrust, 0.0)
    if thrust >= min(held.buckling, held.side_buckling):
        return math.inf
    # Between its ends the thrust beside the centre takes off the weight's moment; at them it stands
    # alone. Where the wind bends most is somewhere between: the more of both.
    ends = thrust * abs(held.offset) + held.support
    own = max(abs(held.weight - thrust * held.offset), ends) + thrust * held.bow
    return use_in_two_planes(
        axial=1.0, thrust=thrust, column=held.column, bending=1.0,
        moment=own + (0.0 if held.across else moment), moment_strength=held.strength,
        buckling=held.buckling, side_moment=moment if held.across else 0.0,
        side_strength=held.side_strength, side_buckling=held.side_buckling,
    )


def _margin(held: _Bending, push: float, wind_push: float, moment: float) -> float:
    """The multiple of the wind at which the part is used up, by halving; it grows with the wind."""
    low, high = 0.0, BEYOND
    if _use(held, push, 0.0) >= 1.0:
        return 0.0
    if _use(held, push + high * wind_push, high * moment) < 1.0:
        return high
    while high - low > NEAR * max(high, 1.0):
        middle = (low + high) / 2.0
        if _use(held, push + middle * wind_push, middle * moment) < 1.0:
            low = middle
        else:
            high = middle
    return low
