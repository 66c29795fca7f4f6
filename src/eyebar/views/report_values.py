"""The sections of a report on what stands behind it: assumptions, values, and the proof."""

import hashlib
from dataclasses import dataclass

import orjson

from eyebar.views import report_words, signed, words
from eyebar.views.blocks import Block, Paragraph, Points, Rows, Section, table
from eyebar.views.columns import Document, text
from eyebar.views.signed import InRegister
from eyebar.views.values import value_rows


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceRow:
    """The values that one source gives."""

    values: str = text("Values", "Name, figure and unit of each; of the record's, the reason.")
    source: str = text("Source", "Where they come from.")


def source_rows(used: list[Document]) -> tuple[SourceRow, ...]:
    """The values of a document gathered by source."""
    by_source: dict[str, list[str]] = {}
    for one, row in zip(used, value_rows({"values_used": used}), strict=True):
        unit = "" if row.unit in ("1", "") else f" {row.unit}"
        layer = "" if one["layer"] == "shipped" else f" (of the {one['layer']})"
        by_source.setdefault(row.source, []).append(f"{row.name} {row.value}{unit}{layer}")
    return tuple(
        SourceRow(values="; ".join(named), source=source) for source, named in by_source.items()
    )


def assumed(rate: Document) -> Section:
    """What was assumed and decided in making the result, in the result's own sentences."""
    return Section(heading="Assumptions and cautions", blocks=(
        Points(points=report_words.folded(rate["cautions"])),
    ))


def values(rate: Document) -> Section:
    """The values laid over the shipped ones, and all that nobody has confirmed."""
    used = rate["values_used"]
    over = [one for one in used if one["layer"] != "shipped"]
    unsure = [one for one in used if not one["confirmed"]]
    blocks: list[Block] = [
        Paragraph(text=f"{report_words.count_of(len(used), 'value')} used; "
                  f"{len(over)} of the office or the record; "
                  f"{words.unconfirmed(rate['unconfirmed']) or 'all confirmed.'}"),
        Paragraph(text=report_words.ABOUT_VALUES),
    ]
    for caption, chosen in (("Laid over the shipped values", over),
                            ("Confirmed by nobody yet", unsure)):
        if chosen:
            blocks.append(table(SourceRow, source_rows(chosen), caption=caption, shares=(5, 4)))
    return Section(heading="Values overridden and unconfirmed", blocks=tuple(blocks))


def fingerprint(document: Document) -> str:
    """SHA-256 of a document's JSON text, keys in order, without spaces."""
    text = orjson.dumps(document, option=orjson.OPT_SORT_KEYS | orjson.OPT_SERIALIZE_NUMPY)
    return hashlib.sha256(text).hexdigest()


def proof(
    rate: Document, result: str, command: str, register: InRegister | None = None
) -> Section:
    """By what the paper can be proven to belong to its record; `result` is the rating's
    fingerprint."""
    return Section(heading="Record, result and version", blocks=(
        Rows(headings=report_words.OF_THE_PAPER, rows=(
            ("Record, SHA-256", rate["record_hash"]),
            ("Result, SHA-256", result),
            ("Made by", f"eyebar {rate['version']}"),
            *signed.rows(register),
        )),
        Paragraph(text=report_words.verified_by(command)),
        *([Paragraph(text=signed.ON_PAPER)] if register else []),
    ))
