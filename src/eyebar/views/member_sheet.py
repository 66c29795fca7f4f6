"""What a member's sheet says: its pieces as built and as left, what was read, the loss."""

from dataclasses import dataclass

from eyebar.errors import Unknown, nearest
from eyebar.units import length_text
from eyebar.views import section_words, sheet_words
from eyebar.views.columns import Document, text


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRow:
    """One piece with its sizes."""

    piece: str = text("Piece", "Name of the piece.")
    built: str = text("As built", "Its sizes as it was built, in inches.")
    left: str = text("Left", "What the readings leave of them, in inches.")
    lost: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberSheet:
    """The words of a member's sheet."""

    title: str
    part: str
    kind: str
    date: str
    sizes: tuple[SizeRow, ...]
    area: str
    facts: tuple[str, ...]
    readings: tuple[str, ...]


def known_members(document: Document) -> dict[str, Document]:
    """Address -> bar, stringer or floorbeam of a `drawn` document."""
    found = {bar["part"]: bar for truss in document["trusses"] for bar in truss["bars"].values()}
    floor = document["floor"]
    if floor is not None:
        found |= {one["part"]: one for one in (*floor["floorbeams"], *floor["stringers"])}
    return found


def member_of(document: Document, part: str) -> Document:
    """The member of that address; raises Unknown."""
    known = known_members(document)
    if part not in known:
        raise Unknown("member", part, near=nearest(part, known))
    return known[part]


def member_view(document: Document, part: str) -> MemberSheet:
    """The words on one member. Raises Unknown."""
    bar = member_of(document, part)
    return MemberSheet(
        title=document["bridge"]["name"], part=part, kind=bar["kind"],
        date=sheet_words.long_date(document["date"]), sizes=tuple(_sizes(bar)),
        area=_area(bar), facts=tuple(_facts(bar)), readings=tuple(bar["readings"]),
    )


def _sizes(bar: Document) -> list[SizeRow]:
    left = {piece["name"]: piece["sizes_in"] for piece in bar["left"]["pieces"]}
    rows = []
    for piece in bar["as_built"]["pieces"]:
        built, now = piece["sizes_in"], left.get(piece["name"])
        changed = {} if now is None else {
            name: size for name, size in now.items() if size != built.get(name)
        }
        rows.append(SizeRow(
            piece=piece["name"], built=_said(built), lost=now is None or bool(changed),
            left="counted as gone" if now is None else _said(changed) or "as built",
        ))
    return rows


def _said(sizes: Document) -> str:
    return ", ".join(f"{name} {section_words.size(one)}" for name, one in sizes.items())


def _area(bar: Document) -> str:
    built, left = bar["area_in2"], bar["left_in2"]
    if built is None or left is None:
        return "Its area is not known: a size of it was not measured."
    if abs(built - left) < 1e-9:
        return f"Area {built:.2f} square inches; no loss was read on the body."
    return (
        f"Area {built:.2f} square inches as built, {left:.2f} left: {100 * (1 - left / built):.1f} "
        "percent is gone."
    )


def _facts(bar: Document) -> list[str]:
    said = [f"Section: {section_words.sentence(bar['as_built'])}, in inches."]
    if "length_in" in bar:
        said.append(f"{length_text(bar['length_in'], nearest=16)} between its joints "
                    f"{' and '.join(bar['ends'])}.")
    if bar.get("broken"):
        said.append("It is declared broken.")
    if bar["not_rated"]:
        said.append(f"Not rated: {bar['not_rated']}.")
    if not bar["as_built"]["apart_known"]:
        said.append("The pieces are drawn a thickness apart: how far apart they hang is not "
                    "recorded.")
    return said
