"""All parts by safe load, the weakest first; and what the posting were without each as a limit.

A part's safe load is the least that any vehicle of the posting may weigh on it, by the rule of the
method that rated it. What the posting would be if a part were no limit is the posting made again of
all other parts, by the same function.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from eyebar.office import Values
from eyebar.rating.posting import (
    Governing,
    Loads,
    Posting,
    SafeLoad,
    loads_of,
    posting_by,
)
from eyebar.rating.rate import governing
from eyebar.rating.rated import BridgeRating
from eyebar.terms import Kind, Level, Method
from eyebar.vehicles import Vehicle

ALIKE_TONS = 1e-6
"""Safe loads that differ by less are of parts alike [ton]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weak:
    """Parts alike: one kind, one check under one vehicle, one safe load.

    `safe_tons` is None where the parts may carry every vehicle of the posting as it is. `by` is the
    factor behind it, or the least factor. `without` is the posting if these parts were no limit,
    `without_kind` if none of their kind were.
    """

    parts: tuple[str, ...]
    kind: Kind
    safe_tons: float | None
    by: Governing
    without: Posting
    without_kind: Posting


def weakest(
    rating: BridgeRating, vehicles: Mapping[str, Vehicle], values: Values
) -> tuple[Weak, ...]:
    """The rated parts that a vehicle of the posting acts on, parts alike together."""
    counting = loads_of(governing(rating.parts, vehicles, values), values)
    kinds = {part.address: part.kind for part in rating.parts}
    groups: dict[tuple[object, ...], list[str]] = {}
    first: dict[tuple[object, ...], tuple[float | None, Governing]] = {}
    for address, safe, by in _by_part(counting.chosen, values):
        tons = None if safe is None else round(safe / ALIKE_TONS)
        key = (kinds[address], by.vehicle.name, by.check, tons, round(by.factor or 0.0, 9))
        groups.setdefault(key, []).append(address)
        first.setdefault(key, (safe, by))
    order = sorted(groups, key=lambda key: _order(*first[key]))
    alone: dict[frozenset[str], Posting] = {frozenset(): rating.posting}
    setting = _setting(counting)

    def without(parts: Iterable[str]) -> Posting:
        named = frozenset(parts)
        left_out = named if named & setting else frozenset()
        if left_out not in alone:
            made = rating.posting
            # As provisional as it was.
            alone[left_out] = posting_by(
                counting.without(left_out), not_rated=made.not_rated,
                provisional_parts=made.provisional_parts, values=values,
            )
        return alone[left_out]

    return tuple(
        Weak(
            parts=tuple(groups[key]), kind=kinds[groups[key][0]], safe_tons=first[key][0],
            by=first[key][1], without=without(groups[key]),
            without_kind=without(
                part for part, kind in kinds.items() if kind is kinds[groups[key][0]]
            ),
        )
        for key in order
    )


def _by_part(
    loads: Iterable[SafeLoad], values: Values
) -> list[tuple[str, float | None, Governing]]:
    """(part, safe load, the factor behind it) of every part that a vehicle acts on."""
    wanted = set(values.names("posting.vehicles"))
    found: dict[str, list[SafeLoad]] = {}
    for load in loads:
        if load.of.vehicle.name in wanted and load.of.factor is not None:
            found.setdefault(load.of.part, []).append(load)
    rows: list[tuple[str, float | None, Governing]] = []
    for address, several in found.items():
        restricting = [load for load in several if load.of.restricts]
        if restricting:
            least = min(restricting, key=lambda load: (load.tons, load.of.factor or 0.0))
            rows.append((address, least.tons, least.of))
        else:
            rows.append((address, None, min(several, key=_factor).of))
    return rows


def _factor(load: SafeLoad) -> float:
    return load.of.factor or 0.0


def _setting(counting: Loads) -> frozenset[str]:
    """Parts with the least factor of any vehicle by any method: leaving out none of them changes
    nothing of the posting."""
    least: dict[tuple[str, Method, Level], list[Governing]] = {}
    for one in (load.of for load in (*counting.chosen, *counting.deciding)):
        if one.factor is not None:
            least.setdefault((one.vehicle.name, one.method, one.level), []).append(one)
    return frozenset(
        one.part
        for several in least.values()
        for bottom in [min(one.factor or 0.0 for one in several)]
        for one in several
        if one.factor == bottom
    )


def _order(safe: float | None, by: Governing) -> tuple[float, float, str]:
    return float("inf") if safe is None else round(safe, 9), round(by.factor or 0.0, 9), by.part
