"""The table of forces, bar by bar: dead load, and the extremes under the vehicles."""

from dataclasses import dataclass

from eyebar.errors import Unknown, nearest
from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceRow:
    """One bar: its force under dead load, and the least and greatest that vehicles add."""

    bar: str = text("Bar", "Name of the bar.")
    dead: str = figure("Dead kip", "Force under dead load, without factors; pull is positive.")
    least: str = figure("Least kip", "The most push that a vehicle adds, without impact.")
    least_vehicle: str = text("Vehicle", "The vehicle that adds it.")
    least_at: str = text("At", "Station of its front axle from end 0, and the way it travels.")
    greatest: str = figure("Greatest kip", "The most pull that a vehicle adds, without impact.")
    greatest_vehicle: str = text("Vehicle", "The vehicle that adds it.")
    greatest_at: str = text("At", "Station of its front axle from end 0, and the way it travels.")


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceTable:
    """The forces of one truss, or of several that are alike."""

    trusses: str = text("Truss", "The truss; several names where their forces are the same.")
    rows: tuple[ForceRow, ...] = text("Bars", "One row for each bar.")
    left_out: tuple[str, ...] = text("Left out", "Vehicles without equilibrium, and why.")


def force_tables(document: Document, vehicle: str | None) -> tuple[ForceTable, ...]:
    """The tables of a `forces` document, for one vehicle or (None) the worst of all.

    Trusses with the same forces share a table. Raises Unknown for a vehicle that is not there.
    """
    known = [one["name"] for one in document["vehicles"]]
    if vehicle is not None and vehicle not in known:
        raise Unknown("vehicle", vehicle, near=nearest(vehicle, known))
    tables: dict[tuple[tuple[ForceRow, ...], tuple[str, ...]], list[str]] = {}
    for truss in document["trusses"]:
        contents = (_rows(truss, vehicle), _left_out(truss, vehicle))
        tables.setdefault(contents, []).append(truss["truss"])
    return tuple(
        ForceTable(trusses=" and ".join(names), rows=rows, left_out=left_out)
        for (rows, left_out), names in tables.items()
    )


def _rows(truss: Document, vehicle: str | None) -> tuple[ForceRow, ...]:
    live = {
        name: bars
        for name, bars in truss["live"].items()
        if bars is not None and vehicle in (None, name)
    }
    return tuple(_row(bar, dead, live) for bar, dead in truss["dead"].items())


def _row(bar: str, dead: float, live: Document) -> ForceRow:
    least, least_vehicle, least_at = _extreme(bar, live, "min")
    greatest, greatest_vehicle, greatest_at = _extreme(bar, live, "max")
    return ForceRow(
        bar=bar,
        dead=rounding.kip(dead),
        least=least,
        least_vehicle=least_vehicle,
        least_at=least_at,
        greatest=greatest,
        greatest_vehicle=greatest_vehicle,
        greatest_at=greatest_at,
    )


def _extreme(bar: str, live: Document, which: str) -> tuple[str, str, str]:
    """A bar's force, the vehicle that makes it and where; the last two only where there is any."""
    vehicle = max(live, key=lambda name: abs(live[name][bar][which]), default=None)
    if vehicle is None:
        return rounding.NOTHING, rounding.NOTHING, rounding.NOTHING
    force = rounding.kip(live[vehicle][bar][which])
    if force == rounding.kip(0.0):
        return force, rounding.NOTHING, rounding.NOTHING
    return force, vehicle, words.place(live[vehicle][bar][f"{which}_at"])


def _left_out(truss: Document, vehicle: str | None) -> tuple[str, ...]:
    return tuple(
        f"{name}: {why['reason']} ({why['panel']})"
        for name, why in truss.get("no_equilibrium", {}).items()
        if vehicle in (None, name)
    )
