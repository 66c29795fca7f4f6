"""What a rating gives for the federal record: old numbers, newer ids, and what stands there."""

import csv
import io
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from eyebar.sources import table_rows
from eyebar.terms import Level, Method, VehicleClass
from eyebar.views import report_words, rounding, words
from eyebar.views.blocks import Paragraph, Section, table
from eyebar.views.columns import Document, cells, columns, figure, text

TABLE = "inventory_items.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemRow:
    """One item of the federal record."""

    old: str = text("Old item", "Number in the older guide; a dash where it had none.")
    newer: str = text("Newer id", "Id in the newer one; a dash where it has none.")
    content: str = text("Content", "What the item holds.")
    value: str = figure("Here", "What this rating gives; a dash where it gives nothing.")
    standing: str = text("Standing", "Provisional, or to be checked; and the pairing's source.")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """The documents that items are read from."""

    rate: Document
    describe: Document
    vehicles: Document

    def least(self, level: str, classes: tuple[str, ...]) -> tuple[float, Document] | None:
        """The least factor of the bridge at a level for vehicles of some classes, by the posting's
        method; by load factor or allowable stress where that has no such level."""
        named = {one["name"] for one in self.vehicles["vehicles"] if one["class"] in classes}
        for method in (self.rate["posting"]["method"], *map(str, Method)):
            found = [
                (float(rating["factor"]), rating) for part in self.rate["parts"]
                for rating in part.get("ratings", ())
                if rating["factor"] is not None and rating["vehicle"] in named
                and (rating["method"], rating["level"]) == (method, level)
            ]
            if found:
                return min(found, key=lambda pair: pair[0])
        return None

    def design(self, level: str) -> str:
        """The factor for the design load, and by which method."""
        found = self.least(level, (str(VehicleClass.DESIGN),))
        if found is None:
            return rounding.NOTHING
        factor, rating = found
        return f"{rounding.factor(factor)} ({rating['vehicle']}, {_method(rating)})"

    def legal(self) -> tuple[float, Document] | None:
        """The least factor for legal loads, at the legal level or else at operating."""
        classes = (str(VehicleClass.SINGLE), str(VehicleClass.COMBINATION))
        return self.least(str(Level.LEGAL), classes) or self.least(str(Level.OPERATING), classes)


def _method(rating: Document) -> str:
    return words.METHODS[rating["method"]]


def _status(known: _Known) -> str:
    posting = known.rate["posting"]
    if posting["governed_by"] is None:
        return rounding.NOTHING
    if posting["closed"]:
        return "K when it is closed"
    if posting["closed"] is None:
        return "owner decides: K, or P"
    limited = posting["single_tons"] is not None or posting["combination_tons"] is not None
    return "P when the sign stands, B until then" if limited else "A"


def _below_legal(known: _Known) -> str:
    """How far the operating rating lies below the legal load, as the old code has it."""
    found = known.legal()
    if found is None:
        return rounding.NOTHING
    below = 100.0 * (1.0 - found[0])
    codes = posting_codes()
    return next((code for code, percent in codes if below <= percent), codes[-1][0])


def _condition(part: str) -> Callable[[_Known], str]:
    def code(known: _Known) -> str:
        given = known.describe["condition"][part]
        return rounding.NOTHING if given is None else str(given)

    return code


def _metal(known: _Known) -> str:
    metals = dict.fromkeys(one["metal"] for one in known.describe["materials"])
    return ", ".join(metals) or rounding.NOTHING


def _posted(known: _Known) -> str:
    posting = known.rate["posting"]
    tons = [
        f"{kind} {rounding.limit(posting[key])} tons"
        for kind, key in (("single", "single_tons"), ("combination", "combination_tons"))
        if posting[key] is not None
    ]
    return ", ".join(tons) or "none"


def _width(known: _Known) -> str:
    road = known.describe["road"]
    return rounding.NOTHING if road is None else f"{rounding.feet(road['clear_width_ft'])} ft"


def _legal_factor(known: _Known) -> str:
    found = known.legal()
    return rounding.NOTHING if found is None else rounding.factor(found[0])


def _legal_load(known: _Known) -> str:
    found = known.legal()
    return rounding.NOTHING if found is None else str(found[1]["vehicle"])


FOUND: dict[str, Callable[[_Known], str]] = {
    "number": lambda known: known.rate["bridge"]["number"] or rounding.NOTHING,
    "built": lambda known: str(known.describe["built"] or rounding.NOTHING),
    "status": _status,
    "metal": _metal,
    "width": _width,
    "deck": _condition("deck"),
    "superstructure": _condition("superstructure"),
    "substructure": _condition("substructure"),
    "method": lambda known: words.standing(
        known.rate["posting"]["method"], known.rate["posting"]["level"]
    ),
    "operating": lambda known: known.design(str(Level.OPERATING)),
    "inventory": lambda known: known.design(str(Level.INVENTORY)),
    "below legal": _below_legal,
    "rated on": lambda known: str(known.rate["date"]),
    "legal factor": _legal_factor,
    "legal load": _legal_load,
    "posted": _posted,
    "tension members": lambda _: "required, until shown otherwise",
}
"""What an item holds -> how it is read from the documents."""

RECORDED = ("number", "built", "metal", "width", "deck", "superstructure", "substructure")
"""What the record says itself."""
RULED = ("method", "rated on", "tension members")
"""What no rating of a part changes; all others are provisional while parts are not rated."""


@cache
def _table() -> tuple[dict[str, object], ...]:
    content = (files("eyebar.views") / TABLE).read_bytes()
    return tuple(dict(row.fields) for row in table_rows(content, file=TABLE, heading="item"))


@cache
def posting_codes() -> tuple[tuple[str, float], ...]:
    """(code, percent below the legal load up to which it holds), the best first."""
    content = (files("eyebar.views") / "posting_codes.toml").read_bytes()
    rows = table_rows(content, file="posting_codes.toml", heading="code")
    return tuple((str(row.fields["code"]), float(row.fields["up_to_percent"])) for row in rows)


def item_rows(rate: Document, describe: Document, vehicles: Document) -> tuple[ItemRow, ...]:
    """The items of one rating."""
    known = _Known(rate=rate, describe=describe, vehicles=vehicles)
    return tuple(
        ItemRow(
            old=str(one["old"] or rounding.NOTHING), newer=str(one["newer"] or rounding.NOTHING),
            content=str(one["content"]), value=FOUND[str(one["holds"])](known),
            standing=f"{_standing(str(one['holds']), rate)}; pairing "
            f"{'confirmed' if one['confirmed'] else 'unconfirmed'}",
        )
        for one in _table()
    )


def _standing(holds: str, rate: Document) -> str:
    if holds in RECORDED:
        return "of the record"
    if holds not in RULED and rate["posting"]["provisional"]:
        return "provisional"
    return "of this rating"


def inventory(rate: Document, describe: Document, vehicles: Document) -> Section:
    """The items as a section of a report."""
    return Section(heading="Inventory items", blocks=(
        Paragraph(text=report_words.ABOUT_INVENTORY),
        table(ItemRow, item_rows(rate, describe, vehicles),
              caption="For the federal record", shares=(0, 0, 5, 0, 4)),
    ))


def inventory_file(rate: Document, describe: Document, vehicles: Document) -> str:
    """The items as comma-separated lines under their headings, with the record's hash."""
    written = io.StringIO()
    lines = csv.writer(written, lineterminator="\n")
    lines.writerow([*(one.name for one in columns(ItemRow)), "record_hash"])
    for row in item_rows(rate, describe, vehicles):
        lines.writerow([*map(_tame, cells(row)), rate["record_hash"]])
    return written.getvalue()


def _tame(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if cell[:1] in "=+@\t\r" or (cell[:1] == "-" and len(cell) > 1) else cell
