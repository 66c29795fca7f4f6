"""Who may cross: yes, on conditions, or no; every set of conditions proven by rating again.

A vehicle is rated like the vehicles of a posting, by the posting's method and level, on the road as
it is used. Where a part is not strong enough the same rating is made again under rules of the road,
with the axles spread, and with less on the vehicle. Forces that were followed serve again.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import floor

from eyebar.bridge.parts import ANY_USE, Bridge, Use
from eyebar.office import Values
from eyebar.rating.beside import laid_on
from eyebar.rating.fewer_tons import Search, least_taken_off
from eyebar.rating.kept import Kept, kept_for
from eyebar.rating.posted import Posted, posted_for
from eyebar.rating.posting import Governing, Posting, counted, wanted_by
from eyebar.rating.rate import factors_of, posting_vehicles, rated_bridge, rated_parts
from eyebar.rating.rated import BridgeRating, RatedPart
from eyebar.terms import Answer, Combine, Condition, Pace
from eyebar.vehicles import Vehicle, axles_spread, loaded_by, spread_over

CLOSED = "the bridge is closed"
UNDECIDED = "the owner must decide first between closing the bridge and posting it"
UNRATED = "no part that carries traffic is rated: no load can be called safe"
TOO_WEAK = "no condition that was tried makes it safe"


@dataclass(frozen=True, slots=True, kw_only=True)
class Must:
    """One condition: `within_ft` of the road's middle, gross `tons` of the vehicle, `spacing_ft` to
    which its axles are to be spread, `psf` that a load by area may weigh; None where it is of
    another kind."""

    condition: Condition
    within_ft: float | None = None
    tons: float | None = None
    spacing_ft: float | None = None
    psf: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A set of conditions that belong together: the vehicle and the use of the road that were
    rated, and the least factor then."""

    conditions: tuple[Must, ...]
    vehicle: Vehicle
    use: Use
    by: Governing | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """The answer for one vehicle.

    `by` is the least factor on the road as it is used, None where nothing acts on any part or the
    vehicle cannot enter. `ways` are the sets of conditions, each enough by itself. `reason` says
    why the answer is no.
    """

    vehicle: Vehicle
    answer: Answer
    by: Governing | None
    posted: Posted
    ways: tuple[Way, ...] = ()
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossings:
    """The answers for some vehicles, and the rating of the bridge behind the sign."""

    rating: BridgeRating
    crossings: tuple[Crossing, ...]
    values: Values
    """With the rows that were used."""


def rules_of_the_road(values: Values) -> tuple[tuple[tuple[Condition, ...], Use], ...]:
    """Conditions that are rules of the road, the lightest first, with the use that they make."""
    held = values.number("crossing.beside the middle")
    return (
        ((Condition.ALONE,), Use(alone=True)),
        ((Condition.WALKING,), Use(pace=Pace.WALKING)),
        ((Condition.ALONE, Condition.WALKING), Use(alone=True, pace=Pace.WALKING)),
        ((Condition.ALONE, Condition.MIDDLE), Use(alone=True, held_ft=held)),
        (
            (Condition.ALONE, Condition.MIDDLE, Condition.WALKING),
            Use(alone=True, held_ft=held, pace=Pace.WALKING),
        ),
    )


def use_by_area(vehicle: Vehicle) -> Use:
    """The road under a load by area: nothing beside it; a herd walks, the rest is still."""
    return Use(alone=True, pace=Pace.WALKING if vehicle.lane_impact else Pace.STILL)


@dataclass(slots=True, kw_only=True)
class Rater:
    """Rates vehicles on one bridge under any use of its road, by the posting's method alone."""

    bridge: Bridge
    kept: Kept
    known: dict[tuple[str, Use], Governing | None] = field(default_factory=dict)

    def under(self, use: Use) -> Bridge:
        """The bridge with its road used so."""
        return replace(self.bridge, roadway=replace(self.bridge.road, use=use))

    def least(self, vehicles: Iterable[Vehicle], use: Use) -> list[Governing | None]:
        """The least factor of each vehicle over all parts; None where it acts on none."""
        wanted = {str(i): replace(one, name=str(i)) for i, one in enumerate(vehicles)}
        if not wanted:
            return []
        parts, _ = rated_parts(self.under(use), wanted, self.kept)
        return list(self.of(parts, wanted).values())

    def of(
        self, parts: Sequence[RatedPart], vehicles: Mapping[str, Vehicle]
    ) -> dict[str, Governing | None]:
        """Vehicle -> its least factor over some parts."""
        found: dict[str, Governing | None] = dict.fromkeys(vehicles)
        for one in counted(
            factors_of(parts, vehicles, self.kept.wanted.ways), self.kept.values
        ):
            before = found[one.vehicle.name]
            if one.factor is not None and (before is None or one.factor < (before.factor or 0.0)):
                found[one.vehicle.name] = one
        return found


def allows(by: Governing | None) -> bool:
    """Whether no part restricts the vehicle."""
    return by is None or not by.restricts


def crossings(
    bridge: Bridge, values: Values, asked: Sequence[Vehicle], posting_by: Mapping[str, Vehicle],
    *, beside: Sequence[Vehicle] = (),
) -> Crossings:
    """The answers for the asked vehicles; `posting_by` are the vehicles that make the posting,
    `beside` those that stand beside a load by area.

    Raises Unstable, OutOfRange and NotMeasured where no forces can be found at all.
    """
    clear = bridge.road.clear_width_ft
    laid = [spread_over(one, clear) for one in asked]
    rater = Rater(bridge=bridge, kept=kept_for(bridge, values, wanted_by(values)))
    fitting = {f"asked {i}": replace(one, name=f"asked {i}") for i, one in enumerate(laid)
               if one.width_ft <= clear and one.combine is not Combine.AREA}
    used = rater.kept.values
    setting = posting_vehicles(posting_by, used)
    rating = rated_bridge(rater.under(ANY_USE), used, {**setting, **fitting}, rater.kept)
    least, posting = rater.of(rating.parts, fitting), rating.posting
    closed = {True: CLOSED, False: "", None: UNDECIDED if posting.governed_by else UNRATED}
    shut = closed[posting.closed]
    answers = [
        begun(one, least.get(f"asked {i}"), posted_for(one, posting, used), clear_ft=clear,
              shut=shut)
        for i, one in enumerate(laid)
    ]
    if not shut:
        answers = _with_ways(rater, _areas(rater, answers), posting)
        answers = [_with_others(rater, one, beside) for one in answers]
    return Crossings(rating=rating, crossings=tuple(answers), values=used)


def begun(
    vehicle: Vehicle, by: Governing | None, posted: Posted, *, clear_ft: float, shut: str
) -> Crossing:
    """The answer without conditions: a `no` with a reason is final, one without is not."""
    wide = ""
    if vehicle.width_ft > clear_ft:
        wide = (
            f"it is {vehicle.width_ft:g} ft wide and the road is {clear_ft:g} ft clear between "
            "the curbs"
        )
    if shut or wide:
        return Crossing(vehicle=vehicle, answer=Answer.NO, by=by, posted=posted,
                        reason=shut or wide)
    if allows(by) and vehicle.combine is not Combine.AREA and not posted.above:
        return Crossing(vehicle=vehicle, answer=Answer.YES, by=by, posted=posted)
    return Crossing(vehicle=vehicle, answer=Answer.NO, by=by, posted=posted)


def open_still(one: Crossing) -> bool:
    """Whether an answer still has to be found."""
    return one.answer is Answer.NO and not one.reason


def _areas(rater: Rater, begun: Sequence[Crossing]) -> list[Crossing]:
    """Loads by area answered: as they are, or as much of them as is safe."""
    found = list(begun)
    uses: dict[Use, list[int]] = {}
    for i, one in enumerate(begun):
        if open_still(one) and one.vehicle.combine is Combine.AREA:
            uses.setdefault(use_by_area(one.vehicle), []).append(i)
    for use, numbers in uses.items():
        lighter: dict[int, Vehicle] = {}
        least = rater.least([begun[i].vehicle for i in numbers], use)
        for i, by in zip(numbers, least, strict=True):
            if allows(by):
                found[i] = replace(begun[i], answer=Answer.YES, by=by)
                continue
            found[i] = replace(begun[i], by=by, reason=TOO_WEAK)
            psf = _psf(begun[i].vehicle, by)
            if psf > 0:
                lighter[i] = loaded_by(begun[i].vehicle, psf / begun[i].vehicle.area_psf)
        proven = rater.least(lighter.values(), use)
        for (i, less), by in zip(lighter.items(), proven, strict=True):
            if allows(by):
                must = Must(condition=Condition.LESS_BY_AREA, psf=round(less.area_psf, 6))
                way = Way(conditions=(must,), vehicle=less, use=use, by=by)
                found[i] = replace(found[i], answer=Answer.CONDITIONS, ways=(way,), reason="")
    return found


def _with_others(rater: Rater, one: Crossing, beside: Sequence[Vehicle]) -> Crossing:
    """The answer for a load by area with vehicles beside it: where they are too much it may come
    alone."""
    if not beside or one.vehicle.combine is not Combine.AREA or one.answer is Answer.NO:
        return one
    load = one.ways[0].vehicle if one.ways else one.vehicle
    laid = laid_on(rater.bridge, load, rater.kept.values)
    kept = kept_for(laid, rater.kept.values, rater.kept.wanted)
    least = Rater(bridge=laid, kept=kept).least(beside, ANY_USE)
    worst = min((by for by in least if by is not None), key=_factor, default=None)
    rater.kept.values.used.update(kept.values.used)
    if allows(worst):
        return one
    alone = Must(condition=Condition.ALONE)
    ways_alone = tuple(
        replace(way, conditions=(alone, *way.conditions)) for way in one.ways
    ) or (Way(conditions=(alone,), vehicle=one.vehicle, use=use_by_area(one.vehicle), by=one.by),)
    by = worst if one.answer is Answer.YES else one.by
    return replace(one, answer=Answer.CONDITIONS, by=by, ways=ways_alone)


def _factor(by: Governing) -> float:
    return by.factor or 0.0


def _psf(vehicle: Vehicle, by: Governing | None) -> int:
    """What of a load by area is safe, as it grows with the factor, down to the whole lb/ft2."""
    factor = 0.0 if by is None or by.factor is None else by.factor
    return floor(max(factor, 0.0) * vehicle.area_psf)


def _with_ways(
    rater: Rater, begun: Sequence[Crossing], posting: Posting
) -> list[Crossing]:
    """Every answer that is still open, with the ways that were found."""
    waiting = {i: one for i, one in enumerate(begun) if open_still(one)}
    found: dict[int, list[Way]] = {i: [] for i in waiting}
    for i, one in waiting.items():
        if allows(one.by):
            found[i].append(Way(conditions=(), vehicle=one.vehicle, use=ANY_USE, by=one.by))
    weak = {i: one.vehicle for i, one in waiting.items() if not found[i]}
    strictest = _by_rules(rater, weak, found)
    spread = {
        i: axles_spread(one) for i, one in weak.items() if not found[i] and one.varied
    }
    _by_rules(rater, spread, found, with_none=True)
    bases = {i: waiting[i].by for i in weak}
    _by_fewer_tons(rater, weak, found, (bases, strictest))
    values = rater.kept.values
    answers = list(begun)
    for i, one in waiting.items():
        answers[i] = (
            replace(
                one, answer=Answer.CONDITIONS,
                ways=tuple(_permitted(way, posting, values) for way in found[i]),
            )
            if found[i] else replace(one, reason=TOO_WEAK)
        )
    return answers


def _by_rules(
    rater: Rater, vehicles: Mapping[int, Vehicle], found: dict[int, list[Way]], *,
    with_none: bool = False,
) -> dict[int, Governing | None]:
    """The lightest rules of the road under which each vehicle may cross; the strictest first, so
    that no others are tried for what they do not save. Answers with the factors under those."""
    *lighter, strictest = rules_of_the_road(rater.kept.values)
    hopeful = dict(zip(vehicles, rater.least(vehicles.values(), strictest[1]), strict=True))
    left = {i: vehicles[i] for i, by in hopeful.items() if allows(by)}
    for rules, use in (*([((), ANY_USE)] if with_none else []), *lighter):
        least = rater.least(left.values(), use)
        for (i, one), by in zip(list(left.items()), least, strict=True):
            if allows(by):
                found[i].append(_way(rules, one, use, by))
                del left[i]
    for i, one in left.items():
        found[i].append(_way(strictest[0], one, strictest[1], hopeful[i]))
    return hopeful


def _way(
    rules: tuple[Condition, ...], vehicle: Vehicle, use: Use, by: Governing | None,
    *more: Must,
) -> Way:
    spread = [
        Must(condition=Condition.SPREAD, spacing_ft=by_ft) for by_ft in vehicle.spread_to_ft
    ]
    musts = [
        Must(condition=one, within_ft=use.held_ft if one is Condition.MIDDLE else None)
        for one in rules
    ]
    return Way(conditions=(*musts, *spread, *more), vehicle=vehicle, use=use, by=by)


def _by_fewer_tons(
    rater: Rater, weak: Mapping[int, Vehicle], found: dict[int, list[Way]],
    full: tuple[Mapping[int, Governing | None], Mapping[int, Governing | None]],
) -> None:
    """Less on the vehicle: by itself where that is enough, else under the strictest rules where
    nothing else was found. `full` are the factors with all of it on, in both cases."""
    rules, use = rules_of_the_road(rater.kept.values)[-1]
    step = rater.kept.values.number("crossing.step of tons")
    loaded = {i: one for i, one in weak.items() if one.empty_axles_kip}
    alone = least_taken_off(
        [Search(number=i, vehicle=one, full=full[0][i]) for i, one in loaded.items()],
        lambda some: rater.least(some, ANY_USE), step,
    )
    rest = {i: one for i, one in loaded.items() if i not in alone and not found[i]}
    under = least_taken_off(
        [Search(number=i, vehicle=one, full=full[1][i]) for i, one in rest.items()],
        lambda some: rater.least(some, use), step,
    )
    for kind, by_rules, used in ((alone, (), ANY_USE), (under, rules, use)):
        for i, (vehicle, by) in kind.items():
            less = Must(condition=Condition.FEWER_TONS, tons=vehicle.weight_tons)
            found[i].append(_way(by_rules, vehicle, used, by, less))


def _permitted(way: Way, posting: Posting, values: Values) -> Way:
    """A way with the owner's permit where the vehicle is over the sign as it then is."""
    if not posted_for(way.vehicle, posting, values).above:
        return way
    return replace(way, conditions=(*way.conditions, Must(condition=Condition.PERMIT)))
