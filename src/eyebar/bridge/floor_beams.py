"""Stringers and floorbeams of a record on a date."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from eyebar.bridge.floor_joined import BeamEnds
from eyebar.bridge.floor_left import beam_left
from eyebar.bridge.floor_parts import Floorbeam, MadeOf, Stringer, TrussRods
from eyebar.bridge.floor_said import (
    FloorWords,
    SaidOfBeam,
    beam_ends,
    floorbeam_said,
    stringer_said,
    unheld,
)
from eyebar.bridge.parts import Bar, Truss
from eyebar.bridge.shaped import shaped
from eyebar.bridge.shaped_built import size
from eyebar.errors import NotMeasured, OutOfRange
from eyebar.record import Record
from eyebar.record.floor_members import BeamEnd, TaperEntry, TrussRodsEntry
from eyebar.sections.amounts import measured
from eyebar.sections.properties import area
from eyebar.sections.shapes import Plate, PlatesAndAngles, Rolled, Section, Timbers
from eyebar.terms import Kind
from eyebar.units import Dimension

SIZE = "size not recorded"
INCHES = 12.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A panel of the floor: number from 1, its joints, their stations [ft]."""

    number: int
    joints: tuple[str, str]
    begin_ft: float
    end_ft: float


def panels_of(trusses: Sequence[Truss]) -> tuple[Panel, ...]:
    """The panels of the floor, from end 0, where the middle of the road crosses them."""
    stations = [[station for _, station in truss.floor_joints] for truss in trusses]
    middle = [sum(of) / len(of) for of in zip(*stations, strict=False)]
    names = [joint for joint, _ in trusses[0].floor_joints]
    return tuple(
        Panel(number=number, joints=joints, begin_ft=begin, end_ft=end)
        for number, (joints, (begin, end)) in enumerate(
            zip(pairwise(names), pairwise(middle), strict=False), 1
        )
    )


def slant_of(record: Record) -> float:
    """How much longer a floorbeam of a skew bridge is than its trusses are apart [1]."""
    skew = record.ends.skew
    return 1.0 if skew is None else 1.0 / math.cos(math.radians(skew.number))


def stringer_places(record: Record, middle_ft: float) -> tuple[Fraction, ...] | str:
    """Places of the stringers across the road [ft], or why they are not known.

    They are exact, so that stringers alike have gaps alike to the bit.
    """
    stringers = record.floor.stringers
    if stringers.number is None:
        return "number of stringers not measured"
    gaps = stringers.spacings
    if gaps is None and stringers.spacing is not None:
        gaps = (stringers.spacing,) * (stringers.number - 1)
    if gaps is None and stringers.number > 1:
        return "spacing of stringers not recorded"
    between = [gap.exact / 12 for gap in gaps or ()]
    first = Fraction(middle_ft) - sum(between, Fraction(0)) / 2
    if stringers.first is not None:
        first = stringers.first.exact / 12
    return tuple(first + sum(between[:i], Fraction(0)) for i in range(stringers.number))


def declared(words: FloorWords, part: str) -> str:
    """What was found or decided of a part for which it is not rated."""
    state = words.state(part)
    if state.broken is not None:
        return f"declared broken on {state.broken.date}"
    return state.crack or state.gap


def stringers_of(
    words: FloorWords, panels: Sequence[Panel], places_ft: Sequence[Fraction]
) -> tuple[tuple[Stringer, ...], dict[str, str]]:
    """The stringers that are recorded, and address -> why one is not."""
    found: list[Stringer] = []
    refused: dict[str, str] = {}
    broken = {
        (panel.number, i) for panel in panels for i in range(len(places_ft))
        if words.state(_address(panel, i)).broken is not None
    }
    for panel in panels:
        for i, place in enumerate(places_ft):
            part = _address(panel, i)
            said = stringer_said(words.record, panel.number, part)
            built = said.section() if (repaired := words.state(part).section) is None else shaped(
                repaired)
            if built is None:
                refused[part] = SIZE
                continue
            made = words.state(part).material or said.get("material")
            try:
                made_of = words.made_of(str(made) if made is not None else None)
                ends = beam_ends(words, said)
            except NotMeasured as missing:
                refused[part] = f"{missing.what} of {part} not recorded"
                continue
            found.append(_stringer(
                words, panel, i, place_ft=float(place), said=said, ends=ends, built=built,
                made_of=made_of,
                gaps=_gaps(places_ft, i, {j for number, j in broken if number == panel.number}),
                run=_run(words.record, panel, panels, {number for number, j in broken if j == i}),
            ))
    return tuple(found), refused


def _address(panel: Panel, i: int) -> str:
    return f"floor/panel {panel.number}/stringer {i + 1}"


def _gaps(
    places_ft: Sequence[Fraction], i: int, broken: set[int]
) -> tuple[float | None, float | None]:
    """Distances to the next stringers that work on either side [ft]."""
    before = [float(places_ft[i] - places_ft[j]) for j in range(i) if j not in broken]
    behind = [float(places_ft[j] - places_ft[i]) for j in range(i + 1, len(places_ft))
              if j not in broken]
    return (min(before) if before else None, min(behind) if behind else None)


def _stringer(
    words: FloorWords, panel: Panel, i: int, *, place_ft: float, said: SaidOfBeam, ends: BeamEnds,
    built: Section, made_of: MadeOf, gaps: tuple[float | None, float | None],
    run: tuple[tuple[float, ...], int],
) -> Stringer:
    part, span = _address(panel, i), panel.end_ft - panel.begin_ft
    state = words.state(part)
    one = Stringer(
        address=part, panel=panel.number, number=i + 1, ends=panel.joints,
        begin_ft=panel.begin_ft, end_ft=panel.end_ft, place_ft=place_ft, gaps_ft=gaps,
        as_built=built, stretches=(), made_of=made_of, unheld=unheld(said, span),
        beam_ends=ends, weight_kip_per_ft=_weight(words.record, built, span),
        run_ft=run[0], run_place=run[1], not_rated=declared(words, part),
    )
    try:
        left = beam_left(part, built, state.readings, ends=panel.joints, span_ft=span)
    except OutOfRange as refused:
        return replace(one, not_rated=one.not_rated or f"a reading does not fit it: {refused}")
    return replace(one, stretches=left.stretches, readings=left.readings)


def _run(
    record: Record, panel: Panel, panels: Sequence[Panel], broken: set[int]
) -> tuple[tuple[float, ...], int]:
    """Spans of the beam that runs on, and which of them this panel is; it ends at a panel where it
    is `broken`."""
    stringers = record.floor.stringers
    if not stringers.continuous:
        return (), 0
    cut = set(stringers.cut_at or ())
    run: list[Panel] = []
    for one in panels:
        ends = one.joints[0] in cut or one.number in broken or one.number - 1 in broken
        if run and ends:
            if panel in run:
                break
            run = []
        run.append(one)
    return tuple(one.end_ft - one.begin_ft for one in run), run.index(panel)


def _weight(record: Record, built: Section, span_ft: float) -> float:
    """Weight of a stringer along it [kip/ft]; 0 where it is not known, which the floor says."""
    weight = record.floor.stringers.weight
    if weight is None:
        return 0.0
    if weight.dimension is Dimension.LINE_LOAD:
        return weight.in_unit("kip/ft")
    if weight.dimension is Dimension.FORCE:
        return weight.in_unit("kip") / span_ft
    try:
        return weight.in_unit("kip/ft3") * area(built) / INCHES**2
    except NotMeasured:
        return 0.0


def floorbeams_of(
    words: FloorWords, panels: Sequence[Panel], joints: Sequence[str], *, span_ft: float,
    places_ft: Sequence[float],
) -> tuple[tuple[Floorbeam, ...], dict[str, str]]:
    """The floorbeams that are recorded, and address -> why one is not."""
    found: list[Floorbeam] = []
    refused: dict[str, str] = {}
    slant = slant_of(words.record)
    for before, behind in pairwise(panels):
        joint = before.joints[1]
        part = f"floor/{joint}/floorbeam"
        if joint not in joints:
            continue
        said = floorbeam_said(words.record, part)
        state = words.state(part)
        built = said.section() if state.section is None else shaped(state.section)
        if built is None:
            refused[part] = SIZE
            continue
        made = state.material or said.get("material")
        try:
            made_of = words.made_of(str(made) if made is not None else None)
            rods = _rods(words, said, part)
        except NotMeasured as missing:
            refused[part] = f"{missing.what} of {part} not recorded"
            continue
        one = Floorbeam(
            address=part, joint=joint, station_ft=before.end_ft,
            before_ft=before.end_ft - before.begin_ft, behind_ft=behind.end_ft - behind.begin_ft,
            span_ft=span_ft, as_built=built, stretches=(), made_of=made_of,
            unheld=_along(unheld(said, span_ft, places_ft), slant), slant=slant,
            beam_ends=beam_ends(words, said),
            weight_kip_per_ft=_beam_weight(words.record, span_ft),
            stringers_ft=tuple(places_ft), riveted=said.get("ends") is BeamEnd.RIVETED,
            truss_rods=rods, not_rated=declared(words, part),
        )
        found.append(_left(words, one, said))
    return tuple(found), refused


def _along(across: float | None, slant: float) -> float | None:
    return None if across is None else across * slant


def _left(words: FloorWords, beam: Floorbeam, said: SaidOfBeam) -> Floorbeam:
    """The floorbeam as it is left."""
    taper = said.get("taper")

    def deep(near_ft: float, section: Section) -> Section:
        assert isinstance(taper, TaperEntry)
        at_ends = measured(size(taper.at_ends), "depth at the ends")
        return with_depth(section, at_ends, near_ft / taper.over.in_unit("ft"))

    try:
        left = beam_left(
            beam.address, beam.as_built, words.state(beam.address).readings,
            ends=words.record.trusses.names, span_ft=beam.span_ft,
            deep=None if taper is None else deep,
        )
    except OutOfRange as refused:
        reason = f"a reading does not fit it: {refused}"
        return replace(beam, not_rated=beam.not_rated or reason)
    except NotMeasured as missing:
        reason = f"{missing.what} of {beam.address} not measured"
        return replace(beam, not_rated=beam.not_rated or reason)
    return replace(beam, stretches=left.stretches, readings=left.readings)


def with_depth(section: Section, at_ends: float, part: float) -> Section:
    """A section as deep as it is at a part (0 to 1) of its taper. Raises NotMeasured."""
    match section:
        case Rolled():
            whole = measured(section.depth, "depth")
            return replace(section, depth=at_ends + min(part, 1.0) * (whole - at_ends))
        case PlatesAndAngles(middle=Plate() as web):
            whole = measured(web.width, "depth of the web")
            deep = at_ends + min(part, 1.0) * (whole - at_ends)
            return replace(section, middle=replace(web, width=deep))
        case Timbers():
            whole = measured(section.sticks[0].depth, "depth")
            deep = at_ends + min(part, 1.0) * (whole - at_ends)
            return Timbers(sticks=tuple(replace(one, depth=deep) for one in section.sticks))
        case _:
            raise NotMeasured("", "depth along it, for a section that is no beam's,")


def _beam_weight(record: Record, span_ft: float) -> float:
    """Weight of a floorbeam along it [kip/ft]."""
    beams = record.floor.floorbeams
    length_ft = span_ft if beams.length is None else beams.length.in_unit("ft")
    if beams.weight is None or beams.weight.dimension is Dimension.DENSITY:
        return 0.0
    if beams.weight.dimension is Dimension.LINE_LOAD:
        return beams.weight.in_unit("kip/ft")
    return beams.weight.in_unit("kip") / length_ft


def _rods(words: FloorWords, said: SaidOfBeam, part: str) -> TrussRods | None:
    """The rods that truss a floorbeam. Raises NotMeasured."""
    entry = said.get("truss_rods")
    if not isinstance(entry, TrussRodsEntry):
        return None
    section, metal = shaped(entry.section), words.metal(entry.material)
    post = None if entry.post_material is None else words.metal(entry.post_material).modulus
    return TrussRods(
        bar=Bar(
            name="truss rods", address=part, kind=Kind.FLOORBEAM, ends=("", ""), length=1.0,
            length_in_plane=1.0, length_out_of_plane=1.0, as_built=section, left=section,
            material=metal, can_push=False, can_pull=True,
        ),
        posts_ft=tuple(place.in_unit("ft") for place in entry.posts_at), drop=size(entry.drop),
        post_area=size(entry.post_area), post_modulus=post,
    )
