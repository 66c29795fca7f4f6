"""The sections of a report on the bridge: what it is, of what, what was read, what it weighs.

Made from a `describe` document, and the vehicles from a `forces` document or a `vehicles` one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.views import report_words, rounding
from eyebar.views.blocks import Block, Paragraph, Points, Rows, Section, table
from eyebar.views.columns import Document, figure, text
from eyebar.views.not_measured import NotMeasuredRow, not_measured_rows
from eyebar.views.sheet_words import long_date
from eyebar.views.vehicles import VehicleRow, vehicle_rows

UNKNOWN = "not known"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRow:
    """One thing that was measured."""

    part: str = text("Part", "Address of the part, and the place on it.")
    what: str = text("Measured", "What was measured, and on which piece.")
    value: str = figure("Value", "As it was written down.")
    sure: str = figure("±", "How sure it is.")
    gauge: str = text("Gauge", "With what it was measured.")
    note: str = text("Note", "What was noted beside it.")


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialRow:
    """One material of the bars."""

    name: str = text("Material", "Its name in the record, and what it is.")
    yielding: str = figure("Yield ksi", "Yield stress.")
    tensile: str = figure("Tensile ksi", "Tensile strength.")
    modulus: str = figure("Modulus ksi", "Modulus of elasticity.")
    coupons: str = figure("Coupons", "How many were tested.")
    source: str = text("Source", "Whence its strength is.")


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightRow:
    """One item of the dead load on a truss."""

    name: str = text("Item", "What it is; with the trusses that carry it.")
    amount: str = figure("On one truss", "Along the floor, or at its joints.")
    wearing: str = text("Kind", "Whether it stays, or may be laid on and taken off.")
    working: str = text("How it came about", "The figure's working in one line.")


def described(describe: Document) -> Section:
    """What the bridge is."""
    trusses, road, codes = describe["trusses"], describe["road"], describe["condition"]
    rows = [
        ("Bridge", ", ".join(filter(None, (describe["bridge"]["name"],
                                           describe["bridge"]["number"])))),
        ("Place", describe["place"]),
        ("Owner", describe["owner"]),
        ("Built", str(describe["built"] or UNKNOWN)),
        ("Form", describe["form"] or "given joint by joint"),
        *((f"Truss {one['truss']}", _truss(one)) for one in trusses),
        ("Road", "width not measured" if road is None else _road(road)),
        ("Condition codes", ", ".join(
            f"{name} {UNKNOWN if code is None else code}" for name, code in codes.items()
        )),
        ("As on", long_date(describe["date"])),
    ]
    return Section(heading="The bridge", blocks=(
        Rows(headings=report_words.OF_THE_BRIDGE,
             rows=tuple((name, said) for name, said in rows if said)),
        Points(points=report_words.folded(describe["rules"])),
    ))


def _truss(one: Document) -> str:
    return (
        f"{report_words.count_of(one['panels'], 'panel')}, {rounding.feet(one['span_ft'])} ft "
        f"between end panel points, {rounding.feet(one['depth_ft'])} ft deep, "
        f"{report_words.count_of(one['bars'], 'bar')}"
    )


def _road(road: Document) -> str:
    trucks = road["trucks_a_day"]
    busy = "traffic not counted" if trucks is None else (
        f"{rounding.plain(trucks)} trucks a day in one direction"
    )
    return (
        f"{rounding.feet(road['clear_width_ft'])} ft between curbs, trusses "
        f"{rounding.feet(road['truss_spacing_ft'])} ft apart; surface: {road['surface']}; {busy}"
    )


def readings(describe: Document) -> Section:
    """What was read on which day, and what was decided since."""
    blocks: list[Block] = []
    for one in describe["inspections"]:
        head = f"{long_date(one['date'])}, by {one['by']}" + (one["note"] and f": {one['note']}")
        blocks.append(Paragraph(text=head, tone="strong"))
        if one["readings"]:
            blocks.append(table(
                ReadingRow, [reading_row(found) for found in one["readings"]],
                caption=f"Read on {long_date(one['date'])}", shares=(4, 4, 0, 0, 2, 3),
            ))
    if not describe["inspections"]:
        blocks.append(Paragraph(text=report_words.NO_READINGS))
    if describe["decisions"]:
        blocks.append(Paragraph(text="Decided or done", tone="strong"))
        blocks.append(Points(points=tuple(_decision(one) for one in describe["decisions"])))
    missing = not_measured_rows(describe["not_measured"])
    if missing:
        blocks.append(table(
            NotMeasuredRow, missing, caption="Sizes that nobody has measured", shares=(3, 0, 4)
        ))
    return Section(heading="Readings and decisions", blocks=tuple(blocks))


def reading_row(one: Document) -> ReadingRow:
    """One reading of a `describe` document."""
    piece = f", piece {one['piece']}" if one["piece"] else ""
    return ReadingRow(
        part=f"{one['part']} @ {one['place']}" if one["place"] else one["part"],
        what=one["what"] + piece, value=one["value"], sure=one["plus_minus"],
        gauge=one["gauge"], note=one["note"],
    )


def _decision(one: Document) -> str:
    by = f", by {one['by']}" if one["by"] else ""
    note = f": {one['note']}" if one["note"] else ""
    return f"{long_date(one['date'])}{by}: {one['what']}, {one['part']}{note}."


def materials(describe: Document) -> Section:
    """What the bars are made of, and where their strengths come from."""
    blocks: list[Block] = [table(
        MaterialRow, [_material(one) for one in describe["materials"]],
        caption="Materials of the bars", shares=(3, 0, 0, 0, 0, 5),
    )]
    if describe["timbers"]:
        blocks.append(Rows(headings=report_words.OF_TIMBER, rows=tuple(
            (one["name"], ", ".join(filter(None, (one["species"], one["grade"]))) or UNKNOWN)
            for one in describe["timbers"]
        )))
    return Section(heading="Materials and their strength", blocks=tuple(blocks))


def _material(one: Document) -> MaterialRow:
    sources = dict.fromkeys(said["source"] for said in one["sources"])
    return MaterialRow(
        name=f"{one['name']} ({one['metal']})", yielding=rounding.plain(one["yield_ksi"]),
        tensile=rounding.plain(one["tensile_ksi"]), modulus=rounding.plain(one["modulus_ksi"]),
        coupons=str(one["coupons"]), source="; ".join(sources),
    )


def loads(describe: Document, vehicles: Document) -> Section:
    """The dead load item by item, and the vehicles."""
    rows: dict[tuple[str, ...], list[str]] = {}
    for one in describe["dead_loads"]:
        key = (
            one["name"], report_words.dead_load(one["kip_per_ft"], one["kip_at_joints"]),
            "wearing" if one["wearing"] else "stays", one["working"],
        )
        rows.setdefault(key, []).append(one["truss"])
    trusses = [one["truss"] for one in describe["trusses"]]
    blocks: list[Block] = [
        table(
            WeightRow,
            [
                WeightRow(name=_on(name, on, trusses), amount=amount, wearing=kind, working=working)
                for (name, amount, kind, working), on in rows.items()
            ],
            caption="Dead load on one truss, beside the weight of its own bars",
            shares=(3, 0, 1, 6),
        ),
    ]
    if describe["unknown_loads"]:
        blocks.append(Paragraph(
            text=f"Not known: {', '.join(describe['unknown_loads'])}. No part is rated while it is "
            "not.", tone="accent",
        ))
    blocks.append(table(
        VehicleRow, vehicle_rows(vehicles), caption="The vehicles",
    ))
    return Section(heading="Loads", blocks=tuple(blocks))


def _on(name: str, on: Sequence[str], trusses: Sequence[str]) -> str:
    return name if list(on) == list(trusses) else f"{name} ({' and '.join(on)})"
