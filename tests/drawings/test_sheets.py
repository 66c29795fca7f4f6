"""The drawn sheets: lettering apart on every demo, parts by their addresses, sound files."""

import math
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from eyebar.drawings.across import cross_section
from eyebar.drawings.cross_section_sheet import cross_section_sheet
from eyebar.drawings.elevation_sheet import elevation_sheet
from eyebar.drawings.floor_sheet import floor_sheet
from eyebar.drawings.framed import FramedSheet
from eyebar.drawings.hatching import STEP, hatched
from eyebar.drawings.ink import identity
from eyebar.drawings.lettering import RUST
from eyebar.drawings.member_sheet import member_sheet
from eyebar.drawings.sign_sheet import sign_sheet
from eyebar.drawings.sizes import FREE, STANDARD, sheets_of
from eyebar.errors import NotMeasured, OutOfRange, Unknown
from tests.documents import demos
from tests.drawings import made, sheets
from tests.drawings.apart import faults

SVG = "{http://www.w3.org/2000/svg}"
NARROW = sheets_of(None, narrow=True)
FORMS = (made.pratt, made.double_pratt, made.parker, made.warren)


def parts(sheet: FramedSheet) -> dict[str, ET.Element]:
    """Address -> group; each id once."""
    root = ET.fromstring(sheet.svg)
    assert root.findtext(f"{SVG}title")
    assert root.findtext(f"{SVG}desc")
    groups = [one for one in root.iter(f"{SVG}g") if "data-part" in one.attrib]
    identities = [one.attrib["id"] for one in root.iter() if "id" in one.attrib]
    assert len(identities) == len(set(identities))
    assert all(one.attrib["id"] == identity(one.attrib["data-part"]) for one in groups)
    return {one.attrib["data-part"]: one for one in groups}


def sound(sheet: FramedSheet) -> None:
    """Lettering apart and on the sheet."""
    assert faults(sheet) == []
    width, height = sheet.laid.paper.width, sheet.laid.height
    for text in sheet.letterings:
        left, top, right, bottom = text.box.bounds
        assert 0 < left < right < width
        assert 0 < top < bottom < height


def lettered(sheet: FramedSheet) -> str:
    """All that is lettered."""
    texts = ET.fromstring(sheet.svg).iter(f"{SVG}text")
    return " ".join("".join(text.itertext()) for text in texts)


@pytest.mark.parametrize("papers", [FREE, NARROW])
@pytest.mark.parametrize("name", demos.NAMES)
def test_an_elevation_has_every_bar_with_its_mark(name: str, papers: Any) -> None:
    document = sheets.drawn(name)
    sheet = elevation_sheet(document, papers)
    sound(sheet)
    found = parts(sheet)
    for bar in document["trusses"][0]["bars"].values():
        group = found[bar["part"]]
        assert "in" in (group.findtext(f"{SVG}desc") or "")
    words = lettered(sheet)
    assert all(bar in words for bar in document["trusses"][0]["bars"])


@pytest.mark.parametrize("panels", [3, 4, 7, 14, 40])
def test_elevations_of_any_length_are_clear(panels: int) -> None:
    document = sheets.truss_of(FORMS[panels % len(FORMS)](panels))
    sound(elevation_sheet(document, FREE))
    sound(elevation_sheet(document, NARROW))


def test_sections_stand_along_the_bars_where_the_sheet_has_room() -> None:
    # By hand: two bars of 2 1/2 by 3/4 in.
    sheet = elevation_sheet(sheets.truss_of(made.pratt(5)), sheets_of("ANSI D"))
    sound(sheet)
    assert "2 eyebars 2 1/2 × 3/4" in lettered(sheet)


@pytest.mark.parametrize("papers", [FREE, NARROW])
def test_the_sign_stands_alone_with_what_governs(papers: Any) -> None:
    rate = demos.rate("wrenmallow")  # to be closed, and cheapest to rate
    sheet = sign_sheet(rate, papers)
    sound(sheet)
    assert "posting" in parts(sheet)
    words = lettered(sheet)
    assert "licensed engineer" in words
    assert rate["posting"]["closed"]
    assert "CLOSE THIS BRIDGE" in words


def test_a_provisional_sign_says_so_inside_its_plate() -> None:
    rate, _ = made.documents(made.pratt(5))
    group = parts(sign_sheet(rate, FREE))["posting"]
    assert "PROVISIONAL" in "".join(group.itertext())


@pytest.mark.parametrize(
    ("asked", "name"),
    [("ANSI B", "ANSI B"), ("ansi-b", "ANSI B"), ("a3", "A3"), ("ARCH E1", "ARCH E1")],
)
def test_a_size_is_known_by_its_name(asked: str, name: str) -> None:
    assert [one.name for one in sheets_of(asked)] == [name]


def test_an_unknown_size_is_refused_with_the_nearest() -> None:
    with pytest.raises(Unknown, match="did you mean 'ANSI B'"):
        sheets_of("ANSI BB")


def test_sizes_of_sheets_are_those_of_the_standards() -> None:
    # Published: ANSI/ASME Y14.1 and ISO 216; 841 mm / 25.4 = 33.11 in.
    assert (STANDARD["ANSI D"].width_in, STANDARD["ANSI D"].height_in) == (34.0, 22.0)
    assert STANDARD["A1"].width_in == pytest.approx(33.11, abs=0.005)


def test_what_finds_no_room_is_refused_not_crowded() -> None:
    document = sheets.truss_of(made.warren(40))
    with pytest.raises(OutOfRange, match="large enough"):
        elevation_sheet(document, sheets_of("ANSI A"))


def test_the_sheet_says_its_scale_and_that_nobody_signed() -> None:
    words = lettered(elevation_sheet(sheets.drawn("wrenmallow"), sheets_of("A3")))
    assert "where the sheet is A3" in words
    assert "not signed" in words


MEMBERS = {
    # What each shows: rust on a cover plate, on one bar of four, a beam of angles, a stick.
    "quillmarsh": ("downstream/U1-L0", "upstream/L4-L5", "floor/L5/floorbeam",
                   "floor/panel 6/stringer 4", "upstream/U3-L5"),
    "wrenmallow": ("north/U0-L1", "south/U1-L1", "floor/L3/floorbeam"),
    "dovetansy": ("west/U1-L1", "floor/panel 4/stringer 2"),
}


@pytest.mark.parametrize("papers", [FREE, NARROW])
@pytest.mark.parametrize(("name", "part"), [(n, p) for n, ps in MEMBERS.items() for p in ps])
def test_a_member_is_drawn_as_it_was_and_as_it_is_left(name: str, part: str, papers: Any) -> None:
    sheet = member_sheet(sheets.drawn(name), part, papers)
    sound(sheet)
    assert part in parts(sheet)
    assert "Section of" in lettered(sheet)


def test_a_cover_plate_thinned_by_a_sixteenth_has_its_loss_hatched_and_counted() -> None:
    # By hand: 14 in of width, 5/16 to 1/4 in: 0.875 of 2 × (0.3125 × 9 + 2 × 2.1875 × 0.375) +
    # 14 × 0.3125 = 13.28 square inches, 6.6 percent.
    sheet = member_sheet(sheets.drawn("quillmarsh"), "downstream/U1-L0", FREE)
    words = lettered(sheet)
    assert "Area 13.28 square inches as built, 12.41 left: 6.6 percent is gone." in words
    hatches = [
        one for one in parts(sheet)["downstream/U1-L0"].iter(f"{SVG}line")
        if one.attrib.get("stroke") == RUST
    ]
    assert len(hatches) > 4  # more than the broken outline
    whole = member_sheet(sheets.drawn("quillmarsh"), "upstream/U1-L0", FREE)
    assert RUST not in ET.tostring(parts(whole)["upstream/U1-L0"], encoding="unicode")


def test_strokes_fill_what_is_gone_and_nothing_else() -> None:
    # By hand: a square of side 20 of which the right half is left: strokes lie in the left half,
    # and their length times their distance is the area, 200, within one stroke of the corners.
    built = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)]
    strokes = list(hatched(built, [(10.0, 0.0), (20.0, 0.0), (20.0, 20.0), (10.0, 20.0)]))
    assert all(x <= 10.0 + 1e-6 for one in strokes for x, _ in (one.start, one.end))
    assert math.fsum(math.dist(one.start, one.end) for one in strokes) * STEP == pytest.approx(
        200.0, rel=0.08
    )


def test_an_unknown_member_is_refused_with_the_nearest() -> None:
    with pytest.raises(Unknown, match="did you mean 'upstream/U2-L4'"):
        member_sheet(sheets.drawn("quillmarsh"), "upstream/U2-L44", FREE)


@pytest.mark.parametrize("papers", [FREE, NARROW])
@pytest.mark.parametrize("name", demos.NAMES)
def test_floors_in_plan_and_across_have_every_part(name: str, papers: Any) -> None:
    document = sheets.drawn(name)
    plan = floor_sheet(document, papers)
    sound(plan)
    floor = document["floor"]
    found = parts(plan)
    assert {one["part"] for one in (*floor["floorbeams"], *floor["stringers"])} <= set(found)
    across = cross_section_sheet(document, sheets.standing(name), papers)
    sound(across)
    assert {"floor/deck", "vehicle"} <= set(parts(across))


def test_a_vehicle_stands_across_where_its_loads_are_reckoned() -> None:
    # By hand: Quillmarsh, curb 1 ft from the truss, wheel line 2 ft from the curb, gauge 6 ft:
    # 3 and 9 ft; of 18 ft between trusses the near one takes (15/18 + 9/18) / 2 = 2/3.
    across = sheets.standing("quillmarsh")
    assert across["wheels_ft"] == pytest.approx([3.0, 9.0])
    assert across["share"] == pytest.approx(2 / 3)
    found = cross_section(sheets.drawn("quillmarsh"), across)
    body = next(one for one in found.solids if one.layer == "vehicle" and len(
        {y for _, y in one.points}) == 2 and max(y for _, y in one.points) > 100)
    # By hand: 8 ft 6 in wide about the middle of the wheel lines, 6 ft from the truss.
    assert [min(x for x, _ in body.points), max(x for x, _ in body.points)] == [21.0, 123.0]


def test_a_road_that_nobody_measured_has_no_cross_section() -> None:
    with pytest.raises(NotMeasured):
        cross_section_sheet(sheets.truss_of(made.pratt(5)), None, FREE)
    with pytest.raises(NotMeasured):
        floor_sheet(sheets.truss_of(made.pratt(5)), FREE)
