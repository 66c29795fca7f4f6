"""Dead load on each truss besides its own bars: floor, railing, pipes, bracing.

What runs along the bridge is a weight per foot of one truss; a floorbeam hangs at its joint. What
lies between the curbs is shared by the lever rule, as its middle lies between the trusses.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from eyebar.bridge.parts import Weight
from eyebar.bridge.timeline import Findings
from eyebar.formula import Symbol, formula
from eyebar.record import FloorEntry, What
from eyebar.record.words import SurfacingKind
from eyebar.units import Dimension, Quantity

INCHES_PER_FOOT = 12.0


@formula(
    "s = 1 - (c + w / 2) / B",
    result=Symbol("part of the floor's weight that one truss carries", "1"),
    c=Symbol("from the truss to the face of its curb", "ft", "curb_ft", low=0.0, high=6.0),
    w=Symbol("clear width", "ft", "clear_width_ft", low=8.0, high=24.0),
    B=Symbol("distance between the trusses", "ft", "truss_spacing_ft", low=10.0, high=40.0),
    source="lever rule: the floor's middle between two trusses",
)
def floor_share(curb_ft: float, clear_width_ft: float, truss_spacing_ft: float) -> float:
    """Part of the weight between the curbs that one truss carries [1].

    Distances [ft]. Scalars or arrays. Limits: trusses apart.
    """
    return 1.0 - (curb_ft + clear_width_ft / 2.0) / truss_spacing_ft


@dataclass(frozen=True, slots=True, kw_only=True)
class Across:
    """The road across, as one truss sees it [ft], and how far the floor runs along."""

    truss: str
    curb_ft: float
    clear_width_ft: float
    spacing_ft: float
    span_ft: float
    floor_joints: tuple[str, ...]
    beam_joints: tuple[str, ...]
    """Those of the floor's joints that have a floorbeam: all but those over the bearings."""

    @property
    def share(self) -> float:
        """Part of the floor's weight that this truss carries."""
        return floor_share(self.curb_ft, self.clear_width_ft, self.spacing_ft)


def weights_on(
    across: Across, floor: FloorEntry, findings: Findings
) -> tuple[tuple[Weight, ...], tuple[str, ...]]:
    """The dead load items of one truss, and what of them nobody measured, in words.

    `findings` are the readings on the deck up to the date: the greatest of the latest readings of
    the surfacing holds, and of the deck the thicker of built and read.
    """
    items: list[Weight] = []
    unknown: list[str] = []
    lines, unweighed = _lines(floor, across)
    for found in (
        *(_sheet(one, across) for one in sheets(floor, findings)),
        _stringers(floor, across),
        _floorbeams(floor, across),
    ):
        if isinstance(found, str):
            unknown.append(found)
        else:
            items.append(found)
    return (*items, *lines), (*unknown, *unweighed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A layer on the floor: its weight by volume or by area, its thickness, its width; None where
    not measured, of the width where it is the clear width."""

    name: str
    weight: Quantity
    thickness: Quantity | None
    width: Quantity | None
    wearing: bool

    @property
    def kip_per_ft2(self) -> float | None:
        """Its weight by area; None where its thickness was not measured."""
        if self.weight.dimension is Dimension.SURFACE_LOAD:
            return self.weight.in_unit("kip/ft2")
        if self.thickness is None:
            return None
        return self.weight.in_unit("kip/ft3") * self.thickness.in_unit("ft")


def sheets(floor: FloorEntry, findings: Findings) -> tuple[Sheet, ...]:
    """The layers that lie between the curbs, by the readings on the deck up to the date."""
    read = _thicknesses(findings)
    deck, surfacing = floor.deck, floor.surfacing
    found = [Sheet(
        name="deck", weight=deck.weight, width=deck.width, wearing=False,
        thickness=_thicker(deck.thickness, read.get(What.DECK_THICKNESS)),
    )]
    if surfacing is not None and surfacing.kind is not SurfacingKind.NONE:
        found.append(Sheet(
            name="surfacing", weight=surfacing.weight, width=surfacing.width, wearing=True,
            thickness=read.get(What.SURFACING_THICKNESS) or surfacing.thickness,
        ))
    return tuple(found)


def _thicknesses(findings: Findings) -> Mapping[What, Quantity]:
    """What was read -> the greatest of its latest readings, one for each place."""
    latest: dict[tuple[What, str], Quantity] = {}
    for _, reading in findings:
        latest[reading.what, reading.place or reading.part.place] = reading.value
    greatest: dict[What, Quantity] = {}
    for (what, _), value in latest.items():
        if what not in greatest or value.exact > greatest[what].exact:
            greatest[what] = value
    return greatest


def _thicker(built: Quantity | None, read: Quantity | None) -> Quantity | None:
    known = [one for one in (built, read) if one is not None]
    return max(known, key=lambda one: one.exact, default=None)


def _sheet(sheet: Sheet, across: Across) -> Weight | str:
    """A layer on the floor as far as one truss carries it."""
    width = sheet.width
    width_ft = across.clear_width_ft if width is None else width.in_unit("ft")
    kip_per_ft2 = sheet.kip_per_ft2
    if kip_per_ft2 is None:
        return f"thickness of {sheet.name} not measured"
    words = f"{width_ft:g} ft x {sheet.weight}"
    if sheet.weight.dimension is not Dimension.SURFACE_LOAD:
        words = f"{sheet.thickness} x {words}"
    return _along(sheet.name, kip_per_ft2 * width_ft, words, across.share, wearing=sheet.wearing)


def _stringers(floor: FloorEntry, across: Across) -> Weight | str:
    stringers = floor.stringers
    weight, count = stringers.weight, stringers.number
    if count is None:
        return "number of stringers not measured"
    if weight is None:
        return "weight of stringers not measured"
    match weight.dimension:
        case Dimension.LINE_LOAD:
            one, words = weight.in_unit("kip/ft"), f"{weight}"
        case Dimension.FORCE:
            panels = len(across.floor_joints) - 1
            one = weight.in_unit("kip") * panels / across.span_ft
            words = f"{weight} x {panels} panels / {across.span_ft:g} ft"
        case _:
            size = stringers.size
            if size is None or size.width is None or size.thickness is None:
                return "size of stringers not measured"
            area_ft2 = size.width.in_unit("ft") * size.thickness.in_unit("ft")
            one, words = weight.in_unit("kip/ft3") * area_ft2, f"{size} x {weight}"
    return _along("stringers", count * one, f"{count} x {words}", across.share)


def _floorbeams(floor: FloorEntry, across: Across) -> Weight | str:
    """One at each floor joint but those over the bearings, half of it to each truss."""
    beams = floor.floorbeams
    if beams.weight is None:
        return "weight of floorbeams not measured"
    length_ft = across.spacing_ft if beams.length is None else beams.length.in_unit("ft")
    if beams.weight.dimension is Dimension.FORCE:
        whole, words = beams.weight.in_unit("kip"), f"{beams.weight}"
    elif beams.weight.dimension is Dimension.DENSITY:
        return "size of floorbeams not recorded, only their weight by volume"
    else:
        whole = beams.weight.in_unit("kip/ft") * length_ft
        words = f"{beams.weight} x {length_ft:g} ft"
    return Weight(
        name="floorbeams", kip_per_ft=0.0, wearing=False,
        kip_at_joints=dict.fromkeys(across.beam_joints, whole / 2.0),
        working=f"{words} / 2 = {whole / 2.0:.4g} kip at each joint that has one",
    )


def _lines(floor: FloorEntry, across: Across) -> tuple[list[Weight], list[str]]:
    """What runs along: the railing of this side, pipes, bracing, sidewalks; what has no weight."""
    found: list[Weight] = []
    unknown: list[str] = []
    rail = floor.railing
    if rail is not None and rail.weight is not None:
        found.append(
            _along("railing", rail.weight.in_unit("kip/ft"), f"{rail.weight} on this side", 1.0)
        )
    elif rail is not None:
        unknown.append("weight of railing not measured")
    guards = floor.wheel_guards
    if guards is not None and guards.weight is not None:
        along = 2.0 * guards.weight.in_unit("kip/ft")
        found.append(_along("wheel guards", along, f"2 x {guards.weight}", across.share))
    elif guards is not None:
        unknown.append("weight of wheel guards not measured")
    found += _sidewalks(floor, across)
    bracing = {} if floor.bracing is None else {"bracing": floor.bracing}
    for group, wearing in ((floor.utilities, True), (floor.others, False), (bracing, False)):
        for name, line in group.items():
            if line.truss not in (None, across.truss):
                continue
            if line.weight is None:
                unknown.append(f"weight of {name} not measured")
                continue
            share = 0.5 if line.truss is None else 1.0
            found.append(_along(name, line.weight.in_unit("kip/ft"), f"{line.weight}", share,
                                wearing=wearing))
    return found, unknown


def _sidewalks(floor: FloorEntry, across: Across) -> list[Weight]:
    """Sidewalks as far as this truss carries them; of one outside the other truss, nothing."""
    found = []
    for truss, walk in floor.sidewalks.items():
        whole = walk.weight.in_unit("kip/ft2") * walk.width.in_unit("ft")
        middle = walk.from_truss.in_unit("ft") + walk.width.in_unit("ft") / 2.0
        part = middle / across.spacing_ft * (1.0 if walk.outside else -1.0)
        share = 1.0 + part if truss == across.truss else max(-part, 0.0)
        if share > 0.0:
            words = f"{walk.width} x {walk.weight}"
            found.append(_along(f"sidewalk, {truss}", whole, words, share))
    return found


def _along(
    name: str, whole: float, words: str, share: float, *, wearing: bool = False
) -> Weight:
    """A weight along the bridge [kip/ft] as far as one truss carries it."""
    part = "" if share == 1.0 else f" x {share:.4g}"
    return Weight(
        name=name, kip_per_ft=whole * share, kip_at_joints={}, wearing=wearing,
        working=f"{words}{part} = {whole * share:.4g} kip/ft",
    )
