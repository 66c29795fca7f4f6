"""What the drawn sheets say: marks and sections of the members, the words of the title block."""

from collections.abc import Mapping
from dataclasses import dataclass
from string import ascii_lowercase

from eyebar.errors import Unknown, nearest
from eyebar.units import length_text
from eyebar.views import section_words, sheet_words
from eyebar.views.columns import Document, text
from eyebar.views.stress_sheet import NO_FORCE, BarFigures, PartWords, StressSheet, Work

UNITS = "feet and inches"
NOT_RATED_HERE = "A measured drawing: nothing on it is rated."


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberMark:
    """All bars of one truss that are built alike."""

    mark: str = text("Mark", "The letter that stands on the drawing.")
    kind: str = text("Member", "What the bars do in the truss.")
    section: str = text("Section as built", "All pieces with all their sizes, in inches.")
    short: str = text("Section", "The same in short.")
    bars: tuple[str, ...] = text("Bars", "Names of the bars.")


def source(document: Document) -> str:
    """Where a sheet comes from."""
    return f"by eyebar {document['version']}, record {document['record_hash'][:12]}"


def chosen(document: Document, truss: str | None) -> Document:
    """The truss of that name, or the first; raises Unknown."""
    by_name: dict[str, Document] = {one["truss"]: one for one in document["trusses"]}
    name = truss or next(iter(by_name))
    if name not in by_name:
        raise Unknown("truss", name, near=nearest(name, by_name))
    return by_name[name]


def marks(truss: Document) -> tuple[MemberMark, ...]:
    """The members by kind and section as built, in the order of the truss's bars."""
    groups: dict[tuple[str, str], list[str]] = {}
    for name, bar in truss["bars"].items():
        key = bar["kind"], section_words.sentence(bar["as_built"])
        groups.setdefault(key, []).append(name)
    return tuple(
        MemberMark(
            mark=_letter(i), kind=kind, section=section, bars=tuple(bars),
            short=section_words.short(truss["bars"][bars[0]]["as_built"]),
        )
        for i, ((kind, section), bars) in enumerate(groups.items())
    )


def _letter(i: int) -> str:
    return ascii_lowercase[i] if i < 26 else f"{_letter(i // 26 - 1)}{ascii_lowercase[i % 26]}"


def member_words(bar: Document) -> str:
    """One bar, stringer or floorbeam in sentences."""
    said = [f"{bar['kind'].capitalize()}: {section_words.sentence(bar['as_built'])}."]
    if "length_in" in bar:
        said.append(f"{length_text(bar['length_in'], nearest=16)} between its joints.")
    if bar.get("broken"):
        said.append("It is broken.")
    said += [f"Read: {one}." for one in bar["readings"]]
    return " ".join(said)


def elevation_view(document: Document, truss: Document, *, sections: bool) -> StressSheet:
    """The truss as the elevation letters it: along each bar its mark, and its section in short."""
    of_bar = {bar: one for one in marks(truss) for bar in one.bars}
    return StressSheet(
        title=document["bridge"]["name"], number=document["bridge"]["number"],
        truss=truss["truss"], date=sheet_words.long_date(document["date"]),
        bars=tuple(
            BarFigures(
                bar=name, part=bar["part"], work=_drawn_as(bar), dead=of_bar[name].mark,
                pull=of_bar[name].short if sections else " ", push=NO_FORCE,
                mark="broken" if bar["broken"] else "", said=member_words(bar),
            )
            for name, bar in truss["bars"].items()
        ),
        at_joints=tuple(
            PartWords(
                part=f"{truss['truss']}/{joint}/pin",
                said=f"Pin of {section_words.size(pin)} in.",
            )
            for joint, pin in truss["pins"].items()
        ),
        posting="", closed="", governs="", governed="", remarks=(), live_load="", signs=(),
        designation="", cautions=(), source=source(document),
    )


def _drawn_as(bar: Mapping[str, object]) -> str:
    """Broad and hollow is what can push, thin and solid what only pulls."""
    if bar["broken"]:
        return Work.GONE
    return Work.CAN_PUSH if bar["can_push"] else Work.ONLY_PULLS
