"""What a record says of each part of the floor: the whole floor's words, those of a group of
panels, those of the part alone, each laid over the one before."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from eyebar.bridge.floor_joined import Anchors, BeamEnds, Cope, Fastening
from eyebar.bridge.floor_parts import MadeOf, Timber
from eyebar.bridge.metals import material_of, strength_unknown
from eyebar.bridge.parts import Material
from eyebar.bridge.shaped import shaped
from eyebar.bridge.shaped_built import size
from eyebar.bridge.timeline import Findings, PartState, part_state
from eyebar.errors import NotMeasured
from eyebar.office import Values
from eyebar.record import DecisionEntry, Record, SectionEntry, Sides
from eyebar.record.fields import Entry
from eyebar.record.floor_members import (
    AnchorsEntry,
    CopeEntry,
    FlangeEntry,
    FloorbeamPart,
    HeldBy,
    StringerPart,
    TimberEntry,
)
from eyebar.record.joined import EndRivetSizes
from eyebar.record.members import MaterialEntry
from eyebar.sections.joined import Group, Rivets
from eyebar.sections.shapes import Section, Stick, Timbers
from eyebar.terms import Metal
from eyebar.units import Quantity

ALL_ALONG = (HeldBy.CONCRETE, HeldBy.NAILED_PLANKS)
INCHES = 12.0


@dataclass(slots=True, kw_only=True)
class FloorWords:
    """A record's words on its floor, with the materials they name, on a date."""

    record: Record
    materials: Mapping[str, Material]
    readings: Mapping[str, Findings]
    decisions: Mapping[str, tuple[DecisionEntry, ...]]
    values: Values
    known: dict[str, MadeOf] = field(default_factory=dict)

    def state(self, part: str) -> PartState:
        """What was read and decided of a part."""
        return part_state(part, self.readings.get(part, ()), self.decisions.get(part, ()))

    def made_of(self, name: str | None) -> MadeOf:
        """A timber of the floor, a material of the record, or a metal of the bridge's year.

        Raises NotMeasured.
        """
        if name is None:
            raise NotMeasured("", "material")
        if name not in self.known:
            timber = self.record.floor.timbers.get(name)
            self.known[name] = self._metal(name) if timber is None else _timber(name, timber)
        return self.known[name]

    def _metal(self, name: str) -> Material:
        known = self.materials.get(name)
        if known is None and name in tuple(Metal) and name != Metal.TIMBER:
            known, _ = material_of(
                name, MaterialEntry.model_validate({"metal": name}), self.record.built, self.values
            )
        if known is None or known.metal is Metal.TIMBER:
            raise NotMeasured("", "species and grade of the timber")
        if unknown := strength_unknown(known):
            raise NotMeasured("", f"strength ({unknown})")
        return known

    def metal(self, name: str | None) -> Material:
        """The same, of what cannot be of timber. Raises NotMeasured."""
        found = self.made_of(name)
        if isinstance(found, Timber):
            raise NotMeasured("", f"metal ({name} is a timber)")
        return found


def _timber(name: str, entry: TimberEntry) -> Timber:
    return Timber(
        name=name, species=str(entry.species or ""), grade=str(entry.grade or ""),
        wet=entry.wet, incised=entry.incised, bending=size(entry.bending),
        shear=size(entry.shear), across=size(entry.across_the_grain),
        modulus=size(entry.modulus), source=entry.source or "",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidOfBeam:
    """What is said of one beam, the nearest word first: entries laid over each other."""

    entries: tuple[Entry, ...]

    def get(self, name: str) -> object:
        """The nearest word on this; None where nothing is said."""
        for entry in self.entries:
            if (found := getattr(entry, name, None)) is not None:
                return found
        return None

    def told(self, name: str) -> bool:
        """Whether anything is said of a size, be it that it was not measured."""
        return any(name in entry.model_fields_set for entry in self.entries)

    def section(self) -> Section | None:
        """Its section as built: the nearest that gives one, a timber by its size or any other."""
        for entry in self.entries:
            whole = getattr(entry, "section", None)
            if isinstance(whole, SectionEntry):
                return shaped(whole)
            sides = getattr(entry, "size", None)
            if isinstance(sides, Sides):
                return Timbers(
                    sticks=(Stick(width=size(sides.width), depth=size(sides.thickness)),)
                )
        return None


def said_of(entries: Sequence[Entry | None]) -> SaidOfBeam:
    """What is said of a beam by several entries, the nearest first."""
    return SaidOfBeam(entries=tuple(entry for entry in entries if entry is not None))


def anchors(words: FloorWords, entry: object) -> Anchors | None:
    """Bolts that hold an end down; None where none are recorded. Raises NotMeasured."""
    if not isinstance(entry, AnchorsEntry):
        return None
    return Anchors(
        number=entry.number, root=size(entry.root_diameter), material=words.metal(entry.material)
    )


def beam_ends(words: FloorWords, said: SaidOfBeam) -> BeamEnds:
    """How a beam ends. Raises NotMeasured for the metal of its anchors."""
    cope, notch = said.get("cope"), said.get("notch")
    return BeamEnds(
        seat=_number(said.get("seat")), seat_recorded=said.told("seat"),
        cope=None if not isinstance(cope, CopeEntry) else Cope(
            depth=size(cope.depth), length=size(cope.length), both=cope.both
        ),
        fastening=fastening(
            said.get("rivets"), said.get("post_rivets"), said.get("thinner")
        ),
        stiffened=said.get("stiffened") is True, anchors=anchors(words, said.get("anchors")),
        notch=_number(notch) if notch is not None or said.told("notch") else 0.0,
    )


def fastening(rivets: object, post: object, thinner: object) -> Fastening | None:
    """The rivets of an end; None where nothing is said of any. Where only those through the post
    are told, they are all that is known."""
    if not isinstance(rivets, EndRivetSizes):
        return _fastening(post, None, None) if isinstance(post, EndRivetSizes) else None
    return _fastening(rivets, post, _number(thinner))


def _fastening(rivets: EndRivetSizes, post: object, thinner: float | None) -> Fastening:
    own = size(rivets.thinner)
    return Fastening(
        rivets=Rivets(number=rivets.number, diameter=size(rivets.diameter), cuts=rivets.sheared),
        thinner=thinner if own is None else own,
        group=Group(
            lines=rivets.lines, pitch=size(rivets.pitch), gauge=size(rivets.gauge),
            off_centre=size(rivets.off_centre),
        ),
        post=_fastening(post, None, None) if isinstance(post, EndRivetSizes) else None,
    )


def _number(found: object) -> float | None:
    return found.number if isinstance(found, Quantity) else None


def unheld(said: SaidOfBeam, span_ft: float, stringers_ft: Sequence[float] = ()) -> float | None:
    """Length over which nothing holds a beam's upper edge [in]; None where nothing is said."""
    flange = said.get("flange")
    if not isinstance(flange, FlangeEntry):
        return None
    if flange.held_by in ALL_ALONG:
        return 0.0
    if flange.every is not None:
        return flange.every.number
    if flange.held_by is HeldBy.STRINGERS and stringers_ft:
        marks = sorted({0.0, span_ft, *(y for y in stringers_ft if 0.0 < y < span_ft)})
        return INCHES * max(b - a for a, b in pairwise(marks))
    return INCHES * span_ft


def stringer_said(record: Record, panel: int, part: str) -> SaidOfBeam:
    """What is said of one stringer: by its own address, by its panel's group, by the floor."""
    floor = record.floor.stringers
    own = record.overrides.get(part)
    group: StringerPart | None = next(
        (one for one in floor.groups.values() if panel in one.panels), None
    )
    return said_of((own and own.stringer, group, floor))


def floorbeam_said(record: Record, part: str) -> SaidOfBeam:
    """What is said of one floorbeam."""
    own = record.overrides.get(part)
    mine: FloorbeamPart | None = own.floorbeam if own else None
    return said_of((mine, record.floor.floorbeams))
