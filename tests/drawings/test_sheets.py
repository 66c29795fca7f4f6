"""The drawn sheets: lettering apart on every demo, parts by their addresses, sound files."""

from typing import Any
from xml.etree import ElementTree as ET

import pytest

from eyebar.drawings.elevation_sheet import elevation_sheet
from eyebar.drawings.framed import FramedSheet
from eyebar.drawings.ink import identity
from eyebar.drawings.sign_sheet import sign_sheet
from eyebar.drawings.sizes import FREE, STANDARD, sheets_of
from eyebar.errors import OutOfRange, Unknown
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


@pytest.mark.parametrize("panels", [3, 4, 6, 9, 13, 20, 28, 40])
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
