"""The posting: which gross weights may cross, whether the bridge is to be closed, which sign.

A safe load is found for each vehicle and part by the rule of the method that rated the part. The
limit of a kind of vehicle is the least safe load over all vehicles of the kind, once any of them
has a factor under 1. Closing is decided before any rounding.
"""

from collections.abc import Container, Iterable, Sequence
from dataclasses import dataclass, replace
from math import inf, isclose

from eyebar import signs
from eyebar.office import Values
from eyebar.rating.asked import Wanted
from eyebar.rating.safe_load import ALIKE, Governing, heaviest_group, rounded_down, safe_load
from eyebar.terms import Level, Method, VehicleClass

__all__ = ["EmergencyLimits", "Governing", "Posting", "posting"]


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyLimits:
    """Limits of emergency vehicles [tons]; None where none is needed."""

    single_axle_tons: int | None = None
    tandem_tons: int | None = None
    gross_tons: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Posting:
    """The answer to what may cross.

    `closed` is None where the owner must decide, or where nothing is rated. `exact_tons` is the
    least safe load of any one vehicle before rounding, on which closing is decided; None where no
    limit is needed. The limits are None where none is needed, and while `closed` is not False.
    `cautions` say the rules behind the figures.
    """

    closed: bool | None
    provisional: bool
    not_rated: tuple[str, ...]
    single_tons: int | None
    combination_tons: int | None
    emergency: EmergencyLimits
    exact_tons: float | None
    method: Method
    level: Level
    governed_by: Governing | None
    sign: signs.Sign | None
    cautions: tuple[str, ...]
    provisional_parts: tuple[str, ...] = ()
    """Parts that are rated by what was proposed and not measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Policy:
    """By which method and level a part is taken; by which other, where it has no rule."""

    method: Method
    level: Level
    other_method: Method
    other_level: Level

    def deciding(self) -> "_Policy":
        """The same at the level on which closing is decided."""
        by_formula = self.method is Method.LOAD_AND_RESISTANCE
        level = self.level if by_formula else Level.OPERATING
        return replace(self, level=level, other_level=Level.OPERATING)


@dataclass(frozen=True, slots=True, kw_only=True)
class SafeLoad:
    """A factor that counts, and the safe load by it [ton], without end where the vehicle does
    nothing to the part."""

    of: Governing
    tons: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Loads:
    """What a posting is made of: the loads that count, and those on which closing is decided."""

    policy: _Policy
    chosen: tuple[SafeLoad, ...]
    deciding: tuple[SafeLoad, ...]

    def without(self, parts: Container[str]) -> "Loads":
        """All of them but those of some parts."""
        chosen = tuple(one for one in self.chosen if one.of.part not in parts)
        if self.deciding is self.chosen:
            return replace(self, chosen=chosen, deciding=chosen)
        deciding = tuple(one for one in self.deciding if one.of.part not in parts)
        return replace(self, chosen=chosen, deciding=deciding)


def posting(
    factors: Iterable[Governing], *, not_rated: Sequence[str], values: Values,
    provisional_parts: Sequence[str] = (),
) -> Posting:
    """The posting from the factors of all parts, vehicles, methods and levels.

    Each part is taken by the posting's method, or by the other that the policy names where the part
    has no rule by it. `not_rated` are the parts that carry traffic and have no rating,
    `provisional_parts` those rated by what was only proposed: while there are any of either, the
    posting is provisional.
    """
    return posting_by(
        loads_of(factors, values), not_rated=not_rated, provisional_parts=provisional_parts,
        values=values,
    )


def posting_by(
    counting: Loads, *, not_rated: Sequence[str], provisional_parts: Sequence[str],
    values: Values,
) -> Posting:
    """The posting from the loads that count, as `posting` has it."""
    policy, chosen = counting.policy, counting.chosen
    light = values.number("posting.closing limit")
    setting = _of(values.names("posting.vehicles"), chosen)
    loads = _least(setting, light)
    deciding = _of(values.names("posting.vehicles"), counting.deciding)
    exact = min((load.tons for load in _least(deciding, light)), default=None)
    least = min((load.tons for load in loads), default=None)
    closed = _closed(least, exact, light)
    empty = Posting(
        closed=closed, provisional=bool(not_rated or provisional_parts),
        not_rated=tuple(not_rated), provisional_parts=tuple(provisional_parts),
        single_tons=None, combination_tons=None, emergency=EmergencyLimits(),
        exact_tons=exact if any(one.of.restricts for one in setting) else None,
        method=policy.method, level=policy.level, governed_by=_governing(loads, chosen),
        sign=None, cautions=_cautions(setting, policy, values),
    )
    if closed is not False:
        return _without_limits(empty, values, rated=bool(loads))
    emergency = _emergency(_of(values.names("posting.emergency vehicles"), chosen), values)
    return _with_limits(empty, _limits(loads, values), emergency)


def wanted_by(values: Values) -> Wanted:
    """The methods and levels that a posting looks at."""
    policy = _policy(values)
    return Wanted(tuple(
        ((one.method, one.level), (one.other_method, one.other_level))
        for one in dict.fromkeys((policy, policy.deciding()))
    ))


def counted(factors: Iterable[Governing], values: Values) -> tuple[Governing, ...]:
    """The factors that count for the posting: one method and level for each part and vehicle."""
    return _chosen(factors, _policy(values))


def loads_of(factors: Iterable[Governing], values: Values) -> Loads:
    """The loads that count for a posting, those on which closing is decided too; other factors
    change nothing of it."""
    everything, policy = tuple(factors), _policy(values)
    chosen = _loads(_chosen(everything, policy), values)
    same = policy.deciding() == policy
    return Loads(
        policy=policy, chosen=chosen,
        deciding=chosen if same else _loads(_chosen(everything, policy.deciding()), values),
    )


def _policy(values: Values) -> _Policy:
    return _Policy(
        method=Method(values.text("posting.method")),
        level=Level(values.text("posting.level")),
        other_method=Method(values.text("posting.method without rule")),
        other_level=Level(values.text("posting.level without rule")),
    )


def _chosen(factors: Iterable[Governing], policy: _Policy) -> tuple[Governing, ...]:
    """The factors that count: one method and level for each part and vehicle."""
    own: dict[tuple[str, str], list[Governing]] = {}
    other: dict[tuple[str, str], list[Governing]] = {}
    for one in factors:
        key = one.part, one.vehicle.name
        if (one.method, one.level) == (policy.method, policy.level):
            own.setdefault(key, []).append(one)
        elif (one.method, one.level) == (policy.other_method, policy.other_level):
            other.setdefault(key, []).append(one)
    return tuple(one for found in ({**other, **own}).values() for one in found)


def _loads(factors: Iterable[Governing], values: Values) -> tuple[SafeLoad, ...]:
    return tuple(
        SafeLoad(of=one, tons=inf if one.factor is None else safe_load(
            one.vehicle.weight_tons, one.factor, one.method, values
        ))
        for one in factors
    )


def _of(vehicles: Iterable[str], loads: Iterable[SafeLoad]) -> tuple[SafeLoad, ...]:
    wanted = set(vehicles)
    return tuple(one for one in loads if one.of.vehicle.name in wanted)


def _least(setting: Iterable[SafeLoad], light_tons: float) -> tuple[SafeLoad, ...]:
    """The least safe load of each vehicle over all parts, every vehicle once.

    A vehicle lighter than the closing limit that may cross as it is tells nothing of the bridge and
    is left out.
    """
    least: dict[str, SafeLoad] = {}
    for load in setting:
        one = load.of
        if one.factor is None or (not one.restricts and one.vehicle.weight_tons < light_tons):
            continue
        known = least.get(one.vehicle.name)
        if known is None or _order(load) < _order(known):
            least[one.vehicle.name] = load
    return tuple(least.values())


def _order(load: SafeLoad) -> tuple[float, float]:
    return load.tons, load.of.factor or 0.0


def _closed(least: float | None, exact: float | None, limit: float) -> bool | None:
    if least is None or exact is None:
        return None
    if exact < limit:
        return True
    return None if least < limit else False


def _limits(loads: Iterable[SafeLoad], values: Values) -> tuple[int | None, int | None]:
    """(single, combination) [tons]: one number for both where the combination's is the lower."""
    kinds: tuple[list[SafeLoad], list[SafeLoad]] = ([], [])
    for load in loads:
        vehicle = load.of.vehicle
        towing = VehicleClass.COMBINATION in (vehicle.vehicle_class, vehicle.posted_as)
        kinds[towing].append(load)
    single, combination = (
        rounded_down(min(load.tons for load in kind), values)
        if any(load.of.restricts for load in kind) else None
        for kind in kinds
    )
    if single is not None and combination is not None and combination < single:
        return combination, combination
    return single, combination


def _emergency(loads: Sequence[SafeLoad], values: Values) -> EmergencyLimits:
    """Limits of the emergency vehicles, once any of them has a factor under 1.

    Each vehicle limits its gross weight and its own heaviest axle group, single or tandem, by the
    same rule of safe load.
    """
    if not any(load.of.restricts for load in loads):
        return EmergencyLimits()
    apart = values.number("posting.tandem spacing")
    groups = {one.name: heaviest_group(one, apart) for one in (load.of.vehicle for load in loads)}
    single: list[float] = []
    tandem: list[float] = []
    for one in (load.of for load in loads):
        if one.factor is None:
            continue
        weight, axles = groups[one.vehicle.name]
        kind = single if axles == 1 else tandem
        kind.append(safe_load(weight, one.factor, one.method, values))
    return EmergencyLimits(
        single_axle_tons=rounded_down(min(single), values) if single else None,
        tandem_tons=rounded_down(min(tandem), values) if tandem else None,
        gross_tons=rounded_down(min(load.tons for load in loads), values),
    )


def _governing(loads: Sequence[SafeLoad], chosen: Iterable[SafeLoad]) -> Governing | None:
    """Of the vehicles that may not cross as they are the one with the least safe load, else the
    least factor of any that sets the posting, else of any that is rated."""
    restricting = [load for load in loads if load.of.restricts]
    if restricting:
        worst = min(restricting, key=_order)
        return next((one.of for one in chosen if _alike(one, worst)), worst.of)
    rated = [load.of for load in loads or chosen if load.of.factor is not None]
    return min(rated, key=lambda one: one.factor or 0.0, default=None)


def _alike(one: SafeLoad, other: SafeLoad) -> bool:
    """Whether only a machine's last digits tell two loads by one vehicle apart."""
    return one.of.vehicle.name == other.of.vehicle.name and all(
        isclose(a, b, rel_tol=ALIKE, abs_tol=ALIKE)
        for a, b in zip(_order(one), _order(other), strict=True)
    )


def _cautions(setting: Iterable[SafeLoad], policy: _Policy, values: Values) -> tuple[str, ...]:
    taken_off = values.number("posting.formula.taken off")
    divided_by = values.number("posting.formula.divided by")
    rules = {
        True: f"the posting formula, weight / {divided_by:g} x (factor - {taken_off:g})",
        False: "weight x factor",
    }
    by_formula = policy.method is Method.LOAD_AND_RESISTANCE
    said = [
        f"Safe loads by {policy.method} at {policy.level}: {rules[by_formula]} where the factor is "
        "under 1, the vehicle's own weight else; emergency vehicles, their axles and tandems alike."
    ]
    if any(load.of.method is not policy.method for load in setting):
        other = policy.other_method is Method.LOAD_AND_RESISTANCE
        said.append(
            f"Parts without a rule by {policy.method} are taken by {policy.other_method} at "
            f"{policy.other_level}: {rules[other]}."
        )
    return tuple(said)


def _without_limits(empty: Posting, values: Values, *, rated: bool) -> Posting:
    limit = values.number("posting.closing limit")
    if empty.closed:
        rule = f"A bridge that cannot carry {limit:g} tons is to be closed (23 CFR 650.313"
        confirmed = values["posting.closing limit"].confirmed
        rule += ")." if confirmed else ", unconfirmed)."
        return replace(empty, sign=signs.closed_sign(), cautions=(rule, *empty.cautions))
    if not rated:
        said = "No part is rated for the vehicles that set the posting: no load is called safe."
        sign: signs.Sign | None = signs.unrated_sign()
    else:
        said = (
            f"At {empty.level} the safe load is under {limit:g} tons, at {Level.OPERATING} it is "
            "not: the owner must decide between closing the bridge and posting it at "
            f"{Level.OPERATING}."
        )
        sign = signs.together(signs.undecided_sign(), provisional=empty.provisional)
    return replace(empty, sign=sign, cautions=(said, *empty.cautions))


def _with_limits(
    empty: Posting, limits: tuple[int | None, int | None], emergency: EmergencyLimits
) -> Posting:
    sign = signs.together(
        signs.weight_limit_sign(single_tons=limits[0], combination_tons=limits[1]),
        signs.emergency_sign(
            single_axle_tons=emergency.single_axle_tons, tandem_tons=emergency.tandem_tons,
            gross_tons=emergency.gross_tons,
        ),
        provisional=empty.provisional,
    )
    return replace(
        empty, single_tons=limits[0], combination_tons=limits[1], emergency=emergency, sign=sign
    )
