"""The floor of a bridge on a date, as far as the record tells of it."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from eyebar.bridge.floor_beams import floorbeams_of, panels_of, stringer_places, stringers_of
from eyebar.bridge.floor_brackets import brackets_of
from eyebar.bridge.floor_ends import deck_of, deck_word, hangers_of, shoes_of
from eyebar.bridge.floor_parts import (
    Bracket,
    Floor,
    Floorbeam,
    Hanger,
    Layer,
    Shoe,
    Sidewalk,
    Timber,
)
from eyebar.bridge.floor_said import FloorWords
from eyebar.bridge.others import UNPLACED, beam_joints
from eyebar.bridge.parts import Roadway, Truss
from eyebar.bridge.weights import sheets
from eyebar.record import Record
from eyebar.units import Quantity

DECK = "floor/deck"


def floor_on(
    words: FloorWords, trusses: Sequence[Truss], roadway: Roadway | None,
    unknown: tuple[str, ...],
) -> tuple[Floor | None, dict[str, str]]:
    """The floor, and address -> why a part of it is not rated: what is not recorded is not there.

    `unknown` are weights that nobody measured. None where the road's widths were not.
    """
    if roadway is None:
        return None, {}
    record, first = words.record, trusses[0]
    names = record.trusses.names
    curb = roadway.curb_ft[names[0]]
    middle = curb + roadway.clear_width_ft / 2.0
    panels = panels_of(trusses)
    places = stringer_places(record, middle)
    refused: dict[str, str] = {}
    findings = words.readings.get(DECK, ())
    known = () if isinstance(places, str) else places
    stringers, missing = stringers_of(words, panels, known)
    refused |= missing
    beams: tuple[Floorbeam, ...] = ()
    if not isinstance(places, str):
        beams, missing = floorbeams_of(
            words, panels, beam_joints(first), span_ft=roadway.truss_spacing_ft,
            places_ft=[float(place) for place in places],
        )
        refused |= missing
    hangers: list[Hanger] = []
    shoes: list[Shoe] = []
    for truss in trusses:
        hung = [joint for joint in beam_joints(truss) if not joint.startswith("U")]
        some, missing = hangers_of(words, truss, {one.joint: one for one in beams}, hung)
        hangers += some
        refused |= missing
        stand, missing = shoes_of(words, truss)
        shoes += stand
        refused |= missing
    brackets: list[Bracket] = []
    for truss in trusses:
        arms, missing = brackets_of(words, truss)
        brackets += arms
        refused |= missing
    deck, why = deck_of(words, findings, stringers)
    if why:
        refused[DECK] = why
    of_timber = all(isinstance(one.made_of, Timber) for one in stringers)
    return Floor(
        curb_ft=curb, clear_width_ft=roadway.clear_width_ft,
        truss_ft={name: i * roadway.truss_spacing_ft for i, name in enumerate(names)},
        layers=_layers(record, words, roadway), guard_kip_per_ft=_guards(record),
        sidewalks=_sidewalks(record, roadway), stringers=stringers, floorbeams=beams,
        hangers=tuple(hangers), deck=deck, shoes=tuple(shoes),
        brackets=tuple(brackets),
        deck_word=deck_word(record.floor.deck, findings, on_timber=of_timber),
        stringers_of_timber=of_timber, unknown=unknown,
    ), _reasons(places, refused)


def _reasons(places: tuple[Fraction, ...] | str, refused: Mapping[str, str]) -> dict[str, str]:
    """Why parts are not rated; where the stringers' places are not known, neither are others."""
    return {**refused, UNPLACED: places} if isinstance(places, str) else dict(refused)


def _layers(record: Record, words: FloorWords, roadway: Roadway) -> tuple[Layer, ...]:
    found = []
    for sheet in sheets(record.floor, words.readings.get(DECK, ())):
        width: Quantity | None = sheet.width
        weight = sheet.kip_per_ft2
        if weight is not None:
            found.append(Layer(
                name=sheet.name, kip_per_ft2=weight, wearing=sheet.wearing,
                width_ft=roadway.clear_width_ft if width is None else width.in_unit("ft"),
            ))
    return tuple(found)


def _guards(record: Record) -> float:
    guards = record.floor.wheel_guards
    return 0.0 if guards is None or guards.weight is None else guards.weight.in_unit("kip/ft")


def _sidewalks(record: Record, roadway: Roadway) -> tuple[Sidewalk, ...]:
    found = []
    for truss, walk in record.floor.sidewalks.items():
        width = walk.width.in_unit("ft")
        away = walk.from_truss.in_unit("ft") + width / 2.0
        first = truss == record.trusses.names[0]
        outward = -1.0 if walk.outside else 1.0
        place = outward * away if first else roadway.truss_spacing_ft - outward * away
        found.append(Sidewalk(
            truss=truss, place_ft=place, width_ft=width,
            kip_per_ft2=walk.weight.in_unit("kip/ft2"),
        ))
    return tuple(found)
