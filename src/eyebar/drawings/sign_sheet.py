"""The sign as it will stand, on a sheet by itself, with what governs it and the cautions."""

from collections.abc import Mapping, Sequence
from typing import Any

from eyebar.drawings import blocks
from eyebar.drawings.blocks import Drawn, Place
from eyebar.drawings.enlarged import enlarged
from eyebar.drawings.fonts import Face
from eyebar.drawings.framed import Content, Drawing, FramedSheet, Room, framed
from eyebar.drawings.ink import Group, identity
from eyebar.drawings.lettering import RUST
from eyebar.drawings.paper import Paper
from eyebar.drawings.roadside import roadside
from eyebar.views import drawn, sheet_words, words

LARGEST = 3.0
WIDTH = 330.0
"""In which the signs are set before they are enlarged."""


def sign_sheet(document: Mapping[str, Any], papers: Sequence[Paper]) -> FramedSheet:
    """The sign from a `rate` document; the posting in words where it needs none."""
    rate = dict(document)
    posting = rate["posting"]
    sign = posting["sign"] or {"legend": "", "designation": ""}
    legends = [one for one in sign["legend"].split("; ") if one]
    line = words.posting_line(posting)

    def draw(room: Room) -> Drawing | None:
        place = Place(left=0.0, top=0.0, width=WIDTH)
        if legends:
            found = roadside(legends, sign["designation"], place)
        else:
            found = blocks.text_block(line, place, size=22.0)
        times = min(LARGEST, room.width / WIDTH, (room.height - 8.0) / found.bottom)
        to = room.middle - WIDTH / 2 * times, room.top + 4.0
        ink = tuple(enlarged(one, times, (0.0, 0.0), to) for one in found.ink)
        return Drawing(
            ink=(Group(children=ink, part="posting", identity=identity("posting"), title="The sign",
                       said=line),),
            bottom=to[1] + found.bottom * times, said_scale="not to scale",
        )

    return framed(Content(
        bridge=rate["bridge"]["name"], number=rate["bridge"]["number"],
        date=sheet_words.long_date(rate["date"]), title="The sign as it will stand", units="tons",
        source=drawn.source(rate), draw=draw, said=f"{line} {words.governed(posting)}",
        blocks=(lambda place: _verdict(rate, place), lambda place: _cautions(rate, place)),
    ), papers)


def _verdict(rate: Mapping[str, Any], place: Place) -> Drawn:
    posting = dict(rate["posting"])
    said = [blocks.heading("What the bridge may carry", place)]
    closing = words.CLOSE if posting["closed"] else ""
    for text, size, face, colour in (
        (closing.upper(), 17.0, Face.STRONG, RUST),
        (words.posting_line(posting), 16.0, Face.STRONG, ""),
        (words.governed(posting), 14.0, Face.SLANTED, RUST),
        (words.exact(posting), 13.0, Face.UPRIGHT, ""),
        (words.emergency(posting), 13.0, Face.UPRIGHT, ""),
        (words.provisional(posting), 13.0, Face.UPRIGHT, ""),
    ):
        said.append(blocks.text_block(
            text or "", place.below(said[-1].bottom + (2 if text else 0)), size=size, face=face,
            **({"colour": colour} if colour else {}),
        ))
    return Drawn(ink=blocks.stacked(said), bottom=said[-1].bottom)


def _cautions(rate: Mapping[str, Any], place: Place) -> Drawn:
    said = [blocks.heading("Cautions", place)]
    for text in rate["cautions"][: 2 + bool(rate["posting"]["closed"])]:
        said.append(blocks.text_block(text, place.below(said[-1].bottom + 1), size=blocks.SMALL))
    return Drawn(ink=blocks.stacked(said), bottom=said[-1].bottom)
