"""The page on the record cannot go stale: its pieces are read, and it names every key and word."""

import re
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path

import pytest

from eyebar.record import Record
from eyebar.record.bracing import Bases, FrameJoint, PortalForm
from eyebar.record.checking import not_measured
from eyebar.record.fields import Entry
from eyebar.record.floor_members import BeamEnd, Grade, HeldBy, PlanksRun, Species
from eyebar.record.words import (
    Bearing,
    Decided,
    DeckKind,
    EndFixing,
    RoadSurface,
    SurfacingKind,
    What,
)
from eyebar.sections.shapes import RodShape, RolledShape, Thread, Toes
from eyebar.terms import CurveShape, EndPosts, FloorOn, Form, SubMembers
from tests.record.field_book import read

PAGE = (Path(__file__).parents[2] / "docs" / "record.md").read_text(encoding="utf-8")
PIECES = re.findall(r"```yaml\n(.*?)```", PAGE, re.DOTALL)
INSTEAD = "# in place of"
"""How a piece begins that shows another way to say the same."""


def models(model: type[Entry] = Entry) -> Iterator[type[Entry]]:
    for below in model.__subclasses__():
        yield below
        yield from models(below)


def whole_record() -> Record:
    return read("\n".join(piece for piece in PIECES if not piece.startswith(INSTEAD)))


def test_the_pieces_of_the_page_make_one_record() -> None:
    record = whole_record()
    assert record.name == "Fennimoor Bridge (invented)"
    assert {group.section.shape for group in record.members.values()} == {
        "channels", "eyebars", "loop rods", "rolled", "plates", "given", "rods",
    }
    assert not_measured(record) == ()


def test_overrides_of_the_floor_may_stand_in_the_place_of_the_others() -> None:
    (instead,) = [one for one in PIECES if one.startswith(f"{INSTEAD} overrides")]
    (above,) = [one for one in PIECES if one.startswith("overrides:")]
    record = read("\n".join(
        instead if one == above else one for one in PIECES if one == above
        or not one.startswith(INSTEAD)
    ))
    assert record.overrides["floor/panel 2/stringer 4"].stringer is not None
    assert record.overrides["upstream/L0/bearing"].shoe is not None


def test_the_bracing_of_a_half_through_bridge_may_stand_in_the_place_of_the_other() -> None:
    (instead,) = [one for one in PIECES if one.startswith(f"{INSTEAD} bracing")]
    (above,) = [one for one in PIECES if one.startswith("bracing:")]
    record = read("\n".join(
        instead if one == above else one for one in PIECES if one == above
        or not one.startswith(INSTEAD)
    ))
    assert record.bracing is not None
    assert record.bracing.frames["U2"].joint is FrameJoint.GUSSET


def test_the_page_names_every_key_of_the_format() -> None:
    keys = {
        str(field.alias) for model in models() for field in model.model_fields.values()
    } - {"curbs"}
    missing = [key for key in keys if not re.search(rf"(?<![\w-]){re.escape(key)}(?![\w-])", PAGE)]
    assert not missing, missing


@pytest.mark.parametrize(
    "words",
    [Bases, FrameJoint, PortalForm, BeamEnd, Bearing, CurveShape, Decided, DeckKind,
     EndFixing, EndPosts, FloorOn, Form, Grade,
     HeldBy, PlanksRun, RoadSurface, Species, SubMembers, SurfacingKind, What, RodShape,
     RolledShape, Thread, Toes],
)
def test_the_page_names_every_word_of_the_closed_lists(words: type[StrEnum]) -> None:
    missing = [word for word in words if not re.search(rf"(?<!\w){re.escape(word)}(?!\w)", PAGE)]
    assert not missing, missing
