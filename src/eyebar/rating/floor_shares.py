"""What a stringer takes of a vehicle: shares of its axles, and of its lane load."""

from dataclasses import dataclass

from eyebar.bridge.floor_parts import Stringer
from eyebar.loads.slab_shares import edge_share, slab_share
from eyebar.loads.stringer_shares import StringerShares
from eyebar.loads.wheels_across import AcrossLine, mean_spacing, share_by_table
from eyebar.rating.floor_context import FloorContext
from eyebar.terms import Combine, Method
from eyebar.vehicles import Vehicle

SLAB_ON_STEEL = "concrete.on steel"
WHEEL_LINE = 0.5
"""Part of the axles on one wheel line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderSlab:
    """How a stringer stands under a slab: the spacing that counts, how many there are, and how far
    inside its curb one at an edge stands [ft]."""

    spacing_ft: float
    stringers: int
    inside_ft: float | None


def stringer_shares(
    context: FloorContext, stringer: Stringer, line: AcrossLine, vehicle: Vehicle, *, lanes: int
) -> StringerShares:
    """The shares of a stringer, its influence line across given. Raises IndexError where so many
    lanes do not fit.

    The lane load has the axles' share, as the standards have one figure for both; by the lever rule
    no less than what its strip brings, which reaches the curb where no wheel does.
    """
    key = (line, stringer.gaps_ft, context.kind(vehicle), lanes)
    if key not in context.known_shares:
        context.known_shares[key] = _found(context, stringer.gaps_ft, line, vehicle, lanes=lanes)
    return context.known_shares[key]


def _found(
    context: FloorContext, gaps_ft: tuple[float | None, float | None], line: AcrossLine,
    vehicle: Vehicle, *, lanes: int,
) -> StringerShares:
    lever = context.placings(line, vehicle)[lanes - 1].share
    strip = max(lever, context.lane_share(line, vehicle, lanes))
    before, behind = gaps_ft
    if before is None or behind is None or vehicle.combine is Combine.AREA:
        return StringerShares(axles=lever, beside=lever, lane=strip)
    part = share_by_table(
        context.floor.deck_word, mean_spacing(before, behind), lanes=lanes,
        gauge_ft=vehicle.gauge_ft, values=context.values, widest_ft=max(before, behind),
    )
    if part is None:
        return StringerShares(axles=lever, beside=lever, lane=strip)
    return StringerShares(axles=part / 2.0, beside=lever, lane=part / 2.0)


def shares_by_method(
    context: FloorContext, stringer: Stringer, found: StringerShares, vehicle: Vehicle, *,
    method: Method, lanes: int,
) -> StringerShares:
    """The same by a method, which for slabs on steel have more to say.

    The older ones give an edge stringer of four or more a least share. Load and resistance has
    formulas instead of the table, for stringers farther apart and longer than these mostly are:
    they take the greatest of a whole wheel line, the lever rule and the formulas.
    """
    under = under_slab(context, stringer)
    if under is None or vehicle.combine is Combine.AREA:
        return found
    if method is Method.LOAD_AND_RESISTANCE:
        formulas = slab_share(
            under.spacing_ft, stringer.span_ft, lanes=lanes, inside_ft=under.inside_ft,
            values=context.values,
        )
        return found.raised(max(found.axles, found.beside, WHEEL_LINE, formulas))
    number = context.values.number
    row = f"wheel share.{SLAB_ON_STEEL}.edge"
    if under.inside_ft is not None and under.stringers >= number(f"{row} from"):
        least = edge_share(under.spacing_ft, number(row), number(f"{row} beyond"))
        return found.raised(WHEEL_LINE * least)
    return found


def under_slab(context: FloorContext, stringer: Stringer) -> UnderSlab | None:
    """How a steel stringer stands under a slab of concrete; None under other decks, or alone."""
    gaps = [gap for gap in stringer.gaps_ft if gap is not None]
    if context.floor.deck_word != SLAB_ON_STEEL or not gaps:
        return None
    inside = stringer.place_ft - context.floor.curb_ft
    if stringer.gaps_ft[0] is not None:
        inside = context.floor.clear_width_ft - inside
    return UnderSlab(
        spacing_ft=round(sum(gaps) / len(gaps), 9), stringers=len(context.places(stringer.panel)),
        inside_ft=round(inside, 9) if len(gaps) == 1 else None,
    )
