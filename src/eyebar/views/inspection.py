"""The rows of an inspection sheet: part by part, place by place, with the last reading beside."""

from collections.abc import Iterator
from dataclasses import dataclass

from eyebar.views import section_words, sheet_words
from eyebar.views.columns import Document, text
from eyebar.views.member_sheet import known_members


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One thing to be read at one place of a part."""

    place: str = text("Place", "Where on the part.")
    what: str = text("What", "What is measured.")
    built: str = text("As built", "The size as built, in inches; empty where it has none.")
    last: str = text("Last", "The last reading up to the date, and its year; empty for none.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PartAsked:
    """A part with all that is to be read on it."""

    part: str = text("Part", "Its address.")
    said: str = text("What it is", "Its kind and its section in short.")
    rows: tuple[Asked, ...] = text("Rows", "What is to be read.")


Reading = tuple[str, Document]
"""A date and a reading of a `describe` document."""


def inspection_parts(
    drawn: Document, described: Document, wanted: str = ""
) -> tuple[PartAsked, ...]:
    """The parts of the bridge in order: trusses bar by bar, their pins, the floor.

    `wanted` is the beginning of addresses: `upstream`, `floor/panel 6`; empty for all.
    """
    last = _last(described)
    found = [
        PartAsked(part=part, said=f"{one['kind']}, {section_words.short(one['as_built'])}",
                  rows=tuple(_rows(one, last.pop(part, {}))))
        for part, one in known_members(drawn).items()
    ]
    for truss in drawn["trusses"]:
        for joint in truss["joints"]:
            part = f"{truss['truss']}/{joint}/pin"
            known = truss["pins"].get(joint)
            said = "pin" if known is None else f"pin, counted with {section_words.size(known)} in"
            rows = _filled([("", "diameter", "")], last.pop(part, {}))
            found.append(PartAsked(part=part, said=said, rows=tuple(rows)))
    deck = (drawn["floor"] or {}).get("deck")
    if deck is not None:
        rows = _filled([("", "deck thickness", section_words.size(deck["built_in"])),
                        ("", "surfacing thickness", "")], last.pop(deck["part"], {}))
        found.append(PartAsked(part=deck["part"], said=deck["kind"], rows=tuple(rows)))
    found += [
        PartAsked(part=part, said="read before", rows=tuple(_filled([], own)))
        for part, own in last.items()
    ]
    return tuple(one for one in found if one.part.startswith(wanted) and one.rows)


Key = tuple[str, str]


def _last(described: Document) -> dict[str, dict[Key, Reading]]:
    """Part -> (place, what) -> the last reading, of the worst piece where several were read."""
    found: dict[str, dict[Key, Reading]] = {}
    for inspection in described["inspections"]:
        for reading in inspection["readings"]:
            key = reading["place"], _named(reading)
            found.setdefault(reading["part"], {})[key] = inspection["date"], reading
    return found


def _named(reading: Document) -> str:
    piece = f", piece {reading['piece']}" if reading["piece"] else ""
    return f"{reading['what']}{piece}"


def _rows(one: Document, last: dict[Key, Reading]) -> list[Asked]:
    """Sizes at mid-length, heads or ends at both joints, crookedness of what can push."""
    pieces = one["as_built"]["pieces"]
    first = pieces[0]["name"].rsplit(" ", 1)[0] if pieces else ""
    wanted: list[tuple[str, str, str]] = []
    seen: set[tuple[str, str]] = set()
    for piece in pieces:
        name = piece["name"].removeprefix("near ").removeprefix("far ")
        plate = f"{name} " if name in ("cover plate", "bottom plate") else ""
        for size, inches in piece["sizes_in"].items():
            if _thins(size, first) and (plate, size) not in seen:
                seen.add((plate, size))
                wanted.append(("mid", f"{plate}{size}", section_words.size(inches)))
    ends = [str(end) for end in one.get("ends", ())]
    if first.startswith("eyebar"):
        thickness = section_words.size(pieces[0]["sizes_in"].get("thickness"))
        wanted += [(f"head {end}", "thickness", thickness) for end in ends]
    elif "root diameter" in (pieces[0]["sizes_in"] if pieces else {}):
        root = section_words.size(pieces[0]["sizes_in"]["root diameter"])
        wanted.append(("thread", "diameter", root))
    if "can_push" in one and not one["can_push"]:
        wanted.append(("", "tight or loose", ""))
    if one.get("can_push"):
        wanted.append(("mid", "bow", "0"))
    return list(_filled(wanted, last))


def _thins(size: str, piece: str) -> bool:
    """Whether rust or rot changes a size of a piece enough to be read each time."""
    words = ("thickness", "web", "diameter", "side")
    if piece.startswith("stick"):
        return True
    return any(size == word or size.endswith(f" {word}") for word in words) and (
        size != "root diameter"
    )


def _filled(
    wanted: list[tuple[str, str, str]], last: dict[Key, Reading]
) -> Iterator[Asked]:
    """The rows asked for with their last readings, then readings at other places."""
    rest = dict(last)
    for place, what, built in wanted:
        yield Asked(place=place, what=what, built=built, last=_said(rest.pop((place, what), None)))
    for (place, what), reading in rest.items():
        yield Asked(place=place, what=what, built="", last=_said(reading))


def _said(reading: Reading | None) -> str:
    if reading is None:
        return ""
    day, one = reading
    note = f" ({one['note']})" if one["note"] else ""
    return f"{one['value']}, {day[:4]}{note}"


def title(wanted: str) -> str:
    """The title of the sheets."""
    return f"Inspection of {wanted}" if wanted else "Inspection sheet"


def long_date(document: Document) -> str:
    """The date up to which readings are shown."""
    return sheet_words.long_date(document["date"])
