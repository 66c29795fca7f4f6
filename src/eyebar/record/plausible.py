"""Whether the dated entries of a record can be true: parts, dates, sizes that only shrink."""

from collections.abc import Iterator
from datetime import date

from eyebar.addresses import PLACES_AT_JOINT
from eyebar.errors import Fault, did_you_mean
from eyebar.record.doubt import in_doubt
from eyebar.record.findings import DecisionEntry, ReadingEntry
from eyebar.record.joint_sizes import joint_sizes
from eyebar.record.known import Known
from eyebar.record.sections import SectionEntry
from eyebar.record.sizes import (
    MAY_GROW,
    ON_ANY_BAR,
    Sizes,
    pieces_of,
    plates_on,
    sizes_of,
    tied_together,
)
from eyebar.record.tree import Path
from eyebar.record.words import OF_JOINTS, Decided, What
from eyebar.terms import Kind

_OF_BEAMS = (
    What.DEPTH, What.WIDTH, What.THICKNESS, What.WEB, What.FLANGE, What.FLANGE_THICKNESS,
    What.FLANGE_EDGE, What.FLANGE_AT_WEB, What.TOP_ANGLE_THICKNESS, What.BOTTOM_ANGLE_THICKNESS,
    What.COVER_PLATE_WIDTH, What.COVER_PLATE_THICKNESS, What.BOTTOM_PLATE_WIDTH,
    What.BOTTOM_PLATE_THICKNESS, What.BOW, What.CRACK,
)
_OF_BRACES = (
    What.WIDTH, What.THICKNESS, What.DIAMETER, What.SIDE, What.ROOT_DIAMETER, What.DEPTH, What.WEB,
    What.FLANGE, What.FLANGE_THICKNESS, What.UPRIGHT_LEG, What.LEVEL_LEG,
    What.UPRIGHT_LEG_THICKNESS, What.LEVEL_LEG_THICKNESS,
)
ON_OTHERS = {
    Kind.PIN: (What.DIAMETER, What.HOLE, What.CRACK),
    Kind.HANGER: (What.DIAMETER, What.SIDE, What.ROOT_DIAMETER, What.WIDTH, What.THICKNESS,
                  What.CRACK, What.PULL),
    Kind.BEARING: (What.GAP, What.CRACK),
    Kind.JOINT_BLOCK: (What.CRACK,),
    Kind.FLOORBEAM: _OF_BEAMS,
    Kind.BRACKET: _OF_BEAMS,
    Kind.STRINGER: _OF_BEAMS,
    Kind.DECK: (What.DECK_THICKNESS, What.SURFACING_THICKNESS, What.DIAMETER),
    Kind.STRUT: (*_OF_BRACES, What.BOW, What.CRACK),
    Kind.LATERAL: (*_OF_BRACES, What.CRACK),
}
"""What may be read on a part that is not a bar."""

WIDTH_ABOUT = {
    What.HOLE: What.HEAD, What.CLEVIS_HOLE: What.CLEVIS_WIDTH,
    What.PIN_PLATE_HOLE: What.PIN_PLATE_WIDTH,
}
"""Holes, and the width of what is about each."""

NEEDS = {Decided.PULL_ACCEPTED: ("pull",)}
"""What a decision must say besides."""
PARTED = (Decided.BROKEN, Decided.LOOSE)
"""What may be decided of some pieces of a set."""
ON_NO_BAR = (Decided.REPAIR, Decided.CRACK_FOUND, Decided.BROKEN)
"""What may be decided of a part that is no bar."""
ALLOWED = {
    Decided.REPAIR: {"section", "material", "pull", "plus minus"},
    Decided.BROKEN: {"pieces"},
    Decided.LOOSE: {"pieces", "gap"},
    Decided.PULL_ACCEPTED: {"pull", "plus minus"},
    Decided.CRACK_FOUND: {"pieces"},
}
"""What a decision may say besides its date, part, note and who."""


def implausible(known: Known, today: date) -> Iterator[Fault]:
    """What of the dated entries cannot be true."""
    record = known.record
    if record.built is not None and record.built > today.year:
        yield known.fault(("built",), f"is after this year, {today.year}", got=record.built,
                          cure="look for a slip of the pen")
    for i, inspection in enumerate(record.inspections):
        path: Path = ("inspections", i)
        yield from _date(known, (*path, "date"), inspection.date, today)
        taken: dict[tuple[object, ...], int] = {}
        for j, reading in enumerate(inspection.readings):
            here: Path = (*path, "readings", j)
            yield from _reading(known, here, reading, inspection.date)
            key = (str(reading.address), reading.piece, reading.what)
            if key in taken:
                first = record.source.as_written((*path, "readings", taken[key]))[-1]
                yield known.fault(here, f"reads the same as reading {int(first) + 1} of that day",
                                  got=f"{reading.what} of {reading.address}",
                                  cure="give them different places or pieces, or keep the worse")
            taken.setdefault(key, j)
    for i, decision in enumerate(record.decisions):
        yield from _date(known, ("decisions", i, "date"), decision.date, today)
        yield from _decision(known, ("decisions", i), decision)


def _date(known: Known, path: Path, day: date, today: date) -> Iterator[Fault]:
    if in_doubt(known.record, *path):
        return
    if day > today:
        yield known.fault(path, f"lies in the future; today is {today}", got=day,
                          cure="write the day on which it was done")
    built = known.record.built
    if built is not None and day.year < built:
        yield known.fault(path, f"lies before the bridge was built, {built}", got=day,
                          cure="look for a slip of the pen")


def _reading(
    known: Known, path: Path, reading: ReadingEntry, day: date
) -> Iterator[Fault]:
    fault = known.part_fault((*path, "part"), reading.address)
    if fault:
        yield fault
        return
    if reading.part.bar is None:
        yield from _other_part(known, path, reading)
        return
    if reading.what in OF_JOINTS:
        yield from _of_joint(known, path, reading)
        return
    section = known.section_on(reading.part, day)
    if section is None or in_doubt(known.record, *path[:2], "date"):
        return
    pieces = pieces_of(section)
    if reading.piece is not None and reading.piece > pieces:
        yield known.fault((*path, "piece"), f"is more than the {pieces} that the part has",
                          got=reading.piece, cure=f"write 1 to {pieces}")
        return
    sizes = sizes_of(section, piece=reading.piece or 1)
    if reading.what not in sizes and reading.what not in ON_ANY_BAR:
        yield known.fault((*path, "what"), f"is not measured on {section.shape}", got=reading.what,
                          cure=did_you_mean(reading.what, (*sizes, *ON_ANY_BAR)))
        return
    yield from _which_plate(known, path, reading, section)
    yield from _against_built(known, path, reading, sizes, _what_at(section, reading))


def _of_joint(known: Known, path: Path, reading: ReadingEntry) -> Iterator[Fault]:
    """A reading of pin plates or of a splice, which the record must have."""
    sizes = joint_sizes(known, reading.part)
    if sizes is None:
        return
    if reading.what not in sizes:
        block = "splice" if reading.what.startswith("splice") else "pin plates"
        yield known.fault((*path, "what"), "is of something that the record does not have there",
                          got=reading.what, cure=f"write '{block}' into the bar's group first")
        return
    if reading.piece is not None:
        yield known.fault((*path, "piece"), "tells nothing here: the least that was read holds for"
                          " all", got=reading.piece, cure="leave it out")
    yield from _against_built(known, path, reading, sizes, reading.what)


def _which_plate(
    known: Known, path: Path, reading: ReadingEntry, section: SectionEntry
) -> Iterator[Fault]:
    """Rust packs under one plate; where a member has two, the reading must tell which."""
    plates = plates_on(section)
    place = reading.place or reading.part.place
    if reading.what is What.PACK_RUST and len(plates) > 1 and place not in plates:
        yield known.fault((*path, "place"), "does not tell which plate the rust lies under",
                          got=place or "no place",
                          cure="write " + " or ".join(f"'place: {one}'" for one in plates))
    if place in ("cover plate", "bottom plate") and place not in plates:
        yield known.fault((*path, "place"), f"is not there on {section.shape} without one",
                          got=place, cure="write another place, or the plate into the section")


def _other_part(known: Known, path: Path, reading: ReadingEntry) -> Iterator[Fault]:
    kind = reading.part.kind
    fitting = ON_OTHERS.get(kind, ()) if kind else ()
    if reading.what not in fitting:
        yield known.fault((*path, "what"), f"is not measured on a {kind}", got=reading.what,
                          cure=did_you_mean(reading.what, fitting))


def _what_at(section: SectionEntry, reading: ReadingEntry) -> What:
    """The size that a reading is one of: at an eyebar's head its width, or its own thickness."""
    eyebars, place = section.eyebars, reading.place or reading.part.place
    if eyebars is None or place.partition(" ")[0] not in PLACES_AT_JOINT:
        return reading.what
    if reading.what is What.WIDTH:
        return What.HEAD
    own = reading.what is What.THICKNESS and "head_thickness" in eyebars.model_fields_set
    return What.HEAD_THICKNESS if own else reading.what


def _against_built(
    known: Known, path: Path, reading: ReadingEntry, sizes: Sizes, what: What
) -> Iterator[Fault]:
    """Metal does not grow and holes do not shrink, by more than the reading may be out."""
    built = sizes.get(what)
    if built is None:
        return
    doubt = reading.plus_minus.exact if reading.plus_minus else 0
    if reading.what not in MAY_GROW and reading.value.exact - doubt > built.exact:
        yield known.fault(
            (*path, "value"), f"is more than the {what} as built, '{built}'",
            got=reading.value, cure="look at the gauge; or correct the section as built",
        )
    if reading.what in WIDTH_ABOUT:
        if reading.value.exact + doubt < built.exact:
            yield known.fault((*path, "value"), f"is less than the hole as built, '{built}'",
                              got=reading.value, cure="holes wear wider; look at the gauge")
        head = sizes.get(WIDTH_ABOUT[reading.what])
        if head is not None and reading.value.exact >= head.exact:
            yield known.fault((*path, "value"), f"is a hole no narrower than its head of '{head}'",
                              got=reading.value, cure="measure the hole, and the head across it")


def _decision(known: Known, path: Path, decision: DecisionEntry) -> Iterator[Fault]:
    if fault := known.part_fault((*path, "part"), decision.part):
        yield fault
        return
    given = {name.replace("_", " ") for name in decision.model_fields_set}
    told = given - {"date", "what", "part", "by", "note"}
    for key in NEEDS.get(decision.what, ()):
        if key not in told and not in_doubt(known.record, *path, key):
            yield known.fault(path, f"says '{decision.what}' and gives no '{key}'",
                              cure=f"write '{key}:' with its value")
    for key in sorted(told - ALLOWED[decision.what]):
        yield known.fault((*path, key), f"has no sense for '{decision.what}'", got=key,
                          cure="leave it out")
    braces = decision.part.kind in (Kind.STRUT, Kind.LATERAL)
    fitting = (*ON_NO_BAR, Decided.LOOSE) if braces else ON_NO_BAR
    if not decision.part.bar and decision.what not in fitting:
        yield known.fault((*path, "what"), f"cannot be decided of {decision.part}",
                          got=decision.what, cure="name a bar")
    others = () if decision.part.truss else tuple(known.record.floor.timbers)
    yield from known.material_faults((*path, "material"), decision.material, others)
    section = known.section_on(decision.part, decision.date)
    if (section is None and decision.part.bar) or in_doubt(known.record, *path, "date"):
        return
    pieces = pieces_of(section) if section else 1 + braces
    beyond = [piece for piece in decision.pieces or () if piece > pieces]
    for piece in beyond:
        yield known.fault((*path, "pieces"), f"is more than the {pieces} that the part has",
                          got=piece, cure=f"write 1 to {pieces}")
    some = 0 < len(set(decision.pieces or ())) < pieces
    if some and not beyond and section and tied_together(section) and decision.what in PARTED:
        yield known.fault(
            (*path, "pieces"), f"cannot be {decision.what} by itself: its {pieces} pieces are tied"
            " together", got=", ".join(map(str, decision.pieces or ())),
            cure="leave 'pieces' out, if it is the whole bar",
        )
