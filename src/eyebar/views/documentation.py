"""The documentation sheet: a description written from the record, with prompts for what only a
historian can find.

Made from a `history-sheet` and a `history` document, and a `history-how` one where there is one.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from eyebar.views import documentation_words as words
from eyebar.views import report_words, rounding, section_words, sheet_words
from eyebar.views.blocks import Blanks, Block, Figure, Paragraph, Points, Rows, Section, table
from eyebar.views.columns import Document, text
from eyebar.views.history import DetailRow, told
from eyebar.views.how import how_it_works

Figures = Mapping[str, Sequence[Figure]]
"""Heading -> the drawings that stand under it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberRow:
    """Bars that are built alike."""

    kind: str = text("Member", "What the bars do in the truss.")
    section: str = text("As built, in inches", "All pieces with their sizes.")
    metal: str = text("Metal", "What they are made of.")
    bars: str = text("Bars", "Their names.")


@dataclass(frozen=True, slots=True, kw_only=True)
class LaterRow:
    """One thing that came later."""

    when: str = text("When", "Day or year; empty where nobody knows.")
    what: str = text("What", "What was done or found.")
    parts: str = text("Where", "The parts.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What a documentation sheet is made from; `no_how` says why it does not tell how it works,
    `missing` which drawings are not there."""

    sheet: Document
    history: Document
    how: Document | None
    no_how: str
    figures: Figures
    missing: tuple[str, ...] = ()


def title(sheet: Document) -> str:
    """`Documentation sheet: the Quillmarsh Bridge`."""
    return f"{words.KIND}: {report_words.with_article(sheet['bridge']['name'])}"


def documentation(of: Told) -> tuple[Section, ...]:
    """The sections of the sheet."""
    sheet = of.sheet
    return (
        Section(heading=words.IDENTITY, blocks=(
            Rows(headings=words.ASKED_AND_TOLD, rows=_identity(sheet)),
        )),
        Section(heading=words.SIGNIFICANCE, blocks=(
            Points(points=words.ASKED_OF_SIGNIFICANCE), Blanks(captions=("", "")),
        )),
        Section(heading=words.HISTORY, blocks=(Points(points=words.ASKED_OF_HISTORY),)),
        Section(heading=words.LATER, blocks=tuple(_later(sheet)), rank=2),
        Section(heading=words.DESCRIPTION, blocks=()),
        *_described(of),
        Section(heading=words.AGE, blocks=tuple(_age(of.history))),
        *_how(of),
        Section(heading=words.SOURCES, blocks=(
            Points(points=(*_sources(sheet), *of.missing)), Points(points=words.ASKED_OF_SOURCES),
            Blanks(captions=words.SIGNED),
        )),
    )


def attached(drawings: Sequence[Figure]) -> Section:
    """Whole sheets, for a paper that has no pages of their size."""
    return Section(
        heading=words.ATTACHED,
        blocks=tuple(drawings) or (Paragraph(text=words.NO_DRAWING),),
    )


def _identity(sheet: Document) -> tuple[tuple[str, str], ...]:
    return (
        ("Name", sheet["bridge"]["name"]), ("Number", sheet["bridge"]["number"] or words.UNKNOWN),
        ("Place", sheet["place"] or words.OPEN), ("Coordinates", words.OPEN),
        ("Built", f"{sheet['built']}, by the record" if sheet["built"] else words.UNKNOWN),
        ("Designer", words.OPEN), ("Maker and builder", words.OPEN),
        ("Owner", sheet["owner"] or words.OPEN), ("Present use", words.OPEN),
        ("As on", sheet_words.long_date(sheet["date"])),
    )


def _later(sheet: Document) -> Iterator[Block]:
    rows = [
        LaterRow(when=_when(one["when"]), what=one["what"], parts=", ".join(one["parts"]))
        for one in sheet["alterations"]
    ]
    if rows:
        yield table(LaterRow, rows, caption="Changes and finds, by date", shares=(2, 5, 3))
    else:
        yield Paragraph(text=words.NO_LATER)
    if sheet["unlike"]:
        yield Paragraph(text=words.UNLIKE)
        yield Points(points=tuple(f"{one['part']}: {one['reason']}." for one in sheet["unlike"]))


def _when(iso: str) -> str:
    return sheet_words.long_date(iso) if "-" in iso else iso


def _described(of: Told) -> Iterator[Section]:
    sheet = of.sheet
    yield Section(rank=2, heading=words.GENERAL, blocks=(
        *(Paragraph(text=one) for one in general(sheet)), *of.figures.get(words.GENERAL, ()),
    ))
    yield Section(rank=2, heading=words.MEMBERS, blocks=tuple(_members(sheet["trusses"])))
    yield Section(rank=2, heading=words.JOINTS, blocks=(Points(points=tuple(joints(sheet))),))
    yield Section(rank=2, heading=words.FLOOR, blocks=(
        Points(points=tuple(map(part_words, sheet["floor"]))), *of.figures.get(words.FLOOR, ()),
    ))
    yield Section(rank=2, heading=words.BRACING, blocks=(
        Points(points=tuple(map(part_words, sheet["bracing"]))) if sheet["bracing"]
        else Paragraph(text=words.NO_BRACING),
    ))
    yield Section(rank=2, heading=words.ENDS, blocks=(
        Paragraph(text=_ends(sheet["ends"])), Points(points=words.ASKED_OF_ENDS),
    ))
    seen = tuple(f"{what}: {shape}." for what, shape in sheet["details"].items())
    yield Section(rank=2, heading=words.DETAILS, blocks=(
        Points(points=(*seen, *words.ASKED_OF_DETAILS)),
    ))
    yield Section(rank=2, heading=words.CONDITION, blocks=(
        Paragraph(text=_condition(sheet["condition"])),
    ))


def general(sheet: Document) -> Iterator[str]:
    """The whole bridge in a few sentences."""
    alike: dict[tuple[object, ...], list[Document]] = {}
    for truss in sheet["trusses"]:
        key = (truss["form"], tuple(truss["panels_in"]), truss["depth_in"], truss["floor_on"])
        alike.setdefault(key, []).append(truss)
    for trusses in alike.values():
        yield _trusses(trusses)
    floor_on = sheet["trusses"][0]["floor_on"]
    yield {"upper": words.DECK, None: words.NEITHER}.get(
        floor_on, words.PLACES.get((floor_on, sheet["overhead"]), "")
    )
    yield _road(sheet["road"], len(sheet["trusses"]))
    if sheet["note"]:
        yield f"The record notes: {sheet['note']}."


def _trusses(trusses: Sequence[Document]) -> str:
    one = trusses[0]
    names = " and ".join(truss["truss"] for truss in trusses)
    pinned = "pin-connected " if one["pins"] else ""
    several = "trusses" if len(trusses) > 1 else "truss"
    form = (
        f"{pinned}{one['form']} {several}" if one["form"]
        else f"{pinned}{several} of none of the known forms"
    )
    lead = (
        f"The {names} trusses are alike: {form}." if len(trusses) > 1
        else f"The {names} truss is a {form}."
    )
    span = sheet_words.length(sum(one["panels_in"]))
    return (
        f"{lead} {'Each' if len(trusses) > 1 else 'It'} has {_panels(one['panels_in'])}, "
        f"{span} between end panel points, and is {sheet_words.length(one['depth_in'])} deep "
        "between the centres of its joints."
    )


def _panels(lengths: Sequence[float]) -> str:
    runs = [
        f"{len(list(alike))} of {length}"
        for length, alike in groupby(map(sheet_words.length, lengths))
    ]
    return f"{report_words.count_of(len(lengths), 'panel')} ({', '.join(runs)})"


def _road(road: Document | None, trusses: int) -> str:
    if road is None:
        return "The width of the road was not measured."
    apart = (
        f" The trusses stand {sheet_words.length(road['truss_spacing_ft'] * 12.0)} apart, from "
        "centre to centre." if trusses > 1 else ""
    )
    return (
        f"The road is {sheet_words.length(road['clear_width_ft'] * 12.0)} wide between its "
        f"curbs.{apart}"
    )


def _members(trusses: Sequence[Document]) -> Iterator[Block]:
    """One table; where trusses differ, the bars of a row stand under their trusses' names."""
    rows: dict[tuple[str, str, str], dict[str, str]] = {}
    for truss in trusses:
        for one in truss["members"]:
            key = one["kind"], section_of(one), one["metal"]
            rows.setdefault(key, {})[truss["truss"]] = ", ".join(one["bars"])
    names = [truss["truss"] for truss in trusses]
    yield table(
        MemberRow,
        [
            MemberRow(kind=kind, section=section, metal=metal, bars=_on(bars, names))
            for (kind, section, metal), bars in rows.items()
        ],
        caption=f"Members of the {' and '.join(names)} {'trusses' if names[1:] else 'truss'}",
        shares=(2, 6, 2, 3),
    )


def _on(bars: Mapping[str, str], trusses: Sequence[str]) -> str:
    """The bars of a row, once where they are the same in every truss."""
    if len({*bars.values()}) == 1 and len(bars) == len(trusses):
        return next(iter(bars.values()))
    return "; ".join(f"{truss}: {named}" for truss, named in bars.items())


def section_of(member: Document) -> str:
    """The section of bars that are built alike, and what was welded to them."""
    welded = f"; welded to it later: {member['welded']}" if member["welded"] else ""
    return section_words.sentence(member) + welded


def joints(sheet: Document) -> Iterator[str]:
    """How members are joined."""
    alike: dict[str, list[Document]] = {}
    for truss in sheet["trusses"]:
        alike.setdefault(str(truss["pins"]), []).append(truss)
    for same in alike.values():
        where = "" if len(alike) == 1 else f" of the {same[0]['truss']} truss"
        yield from (
            f"Pins{where} of {one['diameter'] or 'a size not measured'} at "
            f"{', '.join(one['joints'])}." for one in same[0]["pins"]
        )
        if not same[0]["pins"]:
            yield words.NO_PINS
    yield from map(part_words, sheet["joints"])


def part_words(one: Document) -> str:
    """A part of floor, bracing or joints: what is recorded of it, and its section."""
    said = ", ".join(
        name if value == "yes" else value if name == "kind" else f"{name} {value}"
        for name, value in one["recorded"].items()
    )
    pieces = section_words.sentence(one) if one["pieces"] else ""
    told = "; ".join(filter(None, (said, pieces and f"in inches: {pieces}")))
    return f"{one['part'].capitalize()}: {told or 'no more is recorded'}."


def _ends(ends: Document) -> str:
    bearing = f" From the {ends['zero']} the road runs on a bearing of {ends['bearing']}." if (
        ends["bearing"]) else ""
    skew = f" The line of bearings is skew by {ends['skew']}." if (
        ends["skew"] and not ends["skew"].startswith("0 ")) else ""
    return (
        f"Panel points are counted from the {ends['zero']}; the other end is the "
        f"{ends['other']}.{bearing}{skew}"
    )


def _condition(codes: Document) -> str:
    told = ", ".join(
        f"{name} {'not given' if code is None else code}" for name, code in codes.items()
    )
    return f"Codes of the national inspection, 9 the best: {told}."


def _age(history: Document) -> Iterator[Block]:
    view = told(history)
    yield from (Paragraph(text=one) for one in (*view.forms, view.age))
    if view.contradictions:
        yield Points(points=view.contradictions)
    if view.details:
        yield table(DetailRow, view.details, caption="What tells the age", shares=(3, 0, 0, 6))
    yield Points(points=view.cautions)


def _how(of: Told) -> Iterator[Section]:
    if of.how is None:
        yield Section(heading=words.HOW, blocks=(Paragraph(text=of.no_how),))
        return
    yield Section(heading=words.HOW, blocks=tuple(
        Paragraph(text=one) for one in of.how["cautions"]
    ))
    (first, *rest) = how_it_works(of.how).trusses
    for chapter in first.chapters:
        yield Section(rank=2, heading=chapter.heading, blocks=(
            *of.figures.get(chapter.heading, ()),
            *(Paragraph(text=one) for one in chapter.sentences),
        ))
    if rest:
        yield Section(rank=2, heading="The other trusses", blocks=(Paragraph(
            text=f"Told above: {first.title}. The figures of the others differ; "
            "'eyebar history RECORD --how' tells them."
        ),))


def _sources(sheet: Document) -> Iterator[str]:
    yield (
        f"The bridge's record, {sheet['record_hash'][:12]}, as on "
        f"{sheet_words.long_date(sheet['date'])}, read by eyebar {sheet['version']}."
    )
    for one in sheet["inspections"]:
        yield (
            f"Inspection of {sheet_words.long_date(one['date'])} by {one['by']}, "
            f"{report_words.count_of(one['readings'], 'reading')}."
        )
    if sheet["not_measured"]:
        yield (
            f"{rounding.plain(sheet['not_measured'])} parts have sizes that nobody has measured."
        )
    yield from sheet["cautions"]
