"""The stress sheet: lettering apart, bars by their addresses, sound XML, the same bytes."""

import re
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from eyebar.drawings import Sheet, stress_sheet
from eyebar.drawings.ink import identity
from eyebar.drawings.lettering import RUST
from eyebar.errors import Unknown
from eyebar.terms import Leaf
from tests.drawings import made
from tests.drawings.apart import faults

SVG = "{http://www.w3.org/2000/svg}"
FORMS = (made.pratt, made.double_pratt, made.parker, made.warren)
HOSTILE = '<b> & "Quillmarsh" \' \u202e \u05d2\u05e9\u05e8 \u0645\u062c\u0627\u0632 ]]> \x07'


def sheet(form: Any, panels: int, leaf: Leaf = Leaf.SHEET, **changes: Any) -> Sheet:
    rate, forces = made.documents(form(panels), **changes)
    return stress_sheet(rate, forces, leaf=leaf)


def groups(svg: str) -> dict[str, ET.Element]:
    """Address -> group of the part."""
    root = ET.fromstring(svg)
    found = (one for one in root.iter(f"{SVG}g") if "data-part" in one.attrib)
    return {one.attrib["data-part"]: one for one in found}


def said(svg: str) -> str:
    """All that is lettered."""
    texts = ET.fromstring(svg).iter(f"{SVG}text")
    return " ".join("".join(text.itertext()) for text in texts)


@pytest.mark.parametrize("panels", range(3, 41))
def test_no_lettering_touches_another_or_lies_across_a_line(panels: int) -> None:
    one = sheet(FORMS[panels % len(FORMS)], panels)
    assert faults(one) == []
    # Every panel point has its name, and every bar its figures, beside it or in the table.
    names = {"".join(run.text for run in text.runs) for text in one.letterings}
    assert {f"L{i}" for i in range(panels + 1)} <= names
    assert {f"U{i}" for i in range(1, panels)} <= names
    lettered = said(one.svg)
    assert all(bar.figures.dead in lettered for bar in one.bars)


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("panels", [3, 9, 40])
def test_a_page_of_the_field_book_is_as_clear(form: Any, panels: int) -> None:
    one = sheet(form, panels, Leaf.FIELD_BOOK)
    assert faults(one) == []
    lettered = said(one.svg)
    assert all(bar.figures.bar in lettered for bar in one.bars)


@pytest.mark.parametrize("form", FORMS)
def test_all_figures_of_ten_panels_find_room_beside_their_bars(form: Any) -> None:
    one = sheet(form, 10)
    for bar in one.bars:
        inside = "".join(groups(one.svg)[bar.figures.part].itertext())
        assert bar.figures.dead in inside
        assert bar.figures.live in inside


def test_what_finds_no_room_stands_in_a_table_by_the_name_of_its_bar() -> None:
    one = sheet(made.warren, 40)
    within = groups(one.svg)
    missing = [
        bar.figures for bar in one.bars
        if f">{bar.figures.dead}<" not in ET.tostring(within[bar.figures.part], "unicode")
    ]
    assert missing
    lettered = said(one.svg)
    assert "find no room" in lettered.lower()
    assert all(f"{figures.bar} {figures.dead}" in lettered for figures in missing)


def test_every_bar_and_pin_has_a_group_with_its_address_a_title_and_a_description() -> None:
    one = sheet(made.double_pratt, 9)
    found = groups(one.svg)
    for bar in one.bars:
        group = found[bar.figures.part]
        assert group.attrib["id"] == identity(bar.figures.part)
        assert group.attrib["role"]
        assert group.attrib["aria-label"] == bar.figures.part
        assert group.findtext(f"{SVG}title") == bar.figures.part
        assert "Dead load" in (group.findtext(f"{SVG}desc") or "")
    assert "not rated" in (found["upstream/U4/pin"].findtext(f"{SVG}desc") or "").lower()
    assert len({group.attrib["id"] for group in found.values()}) == len(found)


def test_the_sheet_as_a_whole_has_a_title_and_says_the_answer_first() -> None:
    root = ET.fromstring(sheet(made.pratt, 6).svg)
    assert root.attrib["role"].startswith("graphics-document")
    assert "upstream" in (root.findtext(f"{SVG}title") or "")
    assert (root.findtext(f"{SVG}desc") or "").startswith("PROVISIONAL WEIGHT LIMIT 6 TONS")


@pytest.mark.parametrize(
    ("part", "name"),
    [
        # By hand: / becomes a dot; what is no letter, figure or hyphen its number (32 = 20 hex).
        ("upstream/U2-L4", "upstream.U2-L4"),
        ("up stream/U2-L4 loose", "up_20_stream.U2-L4_20_loose"),
        ("a_b/U1-L1", "a_5f_b.U1-L1"),
    ],
)
def test_an_address_becomes_a_name_that_xml_allows(part: str, name: str) -> None:
    assert identity(part) == name


def test_a_part_leads_where_its_link_says() -> None:
    rate, forces = made.documents(made.pratt(5))
    svg = stress_sheet(rate, forces, link=lambda part: f"/parts?of={part}&see=1").svg
    links = {one.attrib["href"] for one in ET.fromstring(svg).iter(f"{SVG}a")}
    assert "/parts?of=upstream/U1-L0&see=1" in links
    assert "<a " not in sheet(made.pratt, 5).svg


@pytest.mark.parametrize("leaf", Leaf)
def test_the_same_documents_give_the_same_bytes(leaf: Leaf) -> None:
    assert sheet(made.parker, 8, leaf).svg == sheet(made.parker, 8, leaf).svg


@pytest.mark.parametrize("leaf", Leaf)
def test_a_hostile_name_is_lettering_and_nothing_else(leaf: Leaf) -> None:
    one = sheet(made.pratt, 6, leaf, name=HOSTILE)
    assert faults(one) == []
    assert "\u202e" not in one.svg
    assert "\x07" not in one.svg
    root = ET.fromstring(one.svg)
    assert not list(root.iter(f"{SVG}b"))
    assert '<b> & "Quillmarsh" \' \u05d2\u05e9\u05e8' in said(one.svg)
    assert "\u05d2\u05e9\u05e8" in (root.findtext(f"{SVG}title") or "")


def test_a_long_name_stays_within_the_border() -> None:
    one = sheet(made.pratt, 6, name="Sedgebarrow Ford " * 30)
    assert faults(one) == []
    assert all(text.box.bounds[0] > 0 and text.box.bounds[2] < one.width for text in one.letterings)


def test_all_ink_lies_on_the_sheet() -> None:
    for form in FORMS:
        one = sheet(form, 12)
        for text in one.letterings:
            left, top, right, bottom = text.box.bounds
            assert 0 < left < right < one.width
            assert 0 < top < bottom < one.height


def test_pushed_bars_are_hollow_pulled_ones_solid_and_slack_ones_broken() -> None:
    found = groups(sheet(made.pratt, 6).svg)

    def lines(part: str) -> list[ET.Element]:
        return [one for one in found[part].iter(f"{SVG}line") if one.attrib["stroke"] != "none"]

    # By hand, from the forces of the made truss: the top chord is pushed, a diagonal pulled, a
    # counter without dead force slack.
    assert len(lines("upstream/U2-U3")) == 2
    assert len(lines("upstream/U1-L2")) == 1
    assert "stroke-dasharray" not in lines("upstream/U1-L2")[0].attrib
    assert "stroke-dasharray" in lines("upstream/U3-L2")[0].attrib


def test_what_governs_is_marked_by_the_accent_and_in_words() -> None:
    one = sheet(made.pratt, 6, governs="upstream/U1-L2")
    found = groups(one.svg)
    marked = ET.tostring(found["upstream/U1-L2"], encoding="unicode")
    assert RUST in marked
    assert "governs" in "".join(found["upstream/U1-L2"].itertext())
    assert "It governs the posting." in (found["upstream/U1-L2"].findtext(f"{SVG}desc") or "")
    assert RUST not in ET.tostring(found["upstream/U5-L4"], encoding="unicode")
    assert "Governed by upstream/U1-L2" in said(one.svg)


def test_a_pin_that_governs_has_the_accent() -> None:
    found = groups(sheet(made.pratt, 6, governs="upstream/L3/pin").svg)
    assert RUST in ET.tostring(found["upstream/L3/pin"], encoding="unicode")
    assert RUST not in ET.tostring(found["upstream/L2/pin"], encoding="unicode")


def test_what_governs_elsewhere_is_said_to_stand_elsewhere() -> None:
    lettered = said(sheet(made.pratt, 6, governs="floor/panel 3/stringer 2").svg)
    assert "no part of this truss" in lettered
    assert "no part of this truss" not in said(sheet(made.pratt, 6).svg)


def test_a_broken_bar_is_drawn_and_named_and_carries_no_figure() -> None:
    one = sheet(made.pratt, 7, broken=["U3-L4"])
    assert faults(one) == []
    group = groups(one.svg)["upstream/U3-L4"]
    assert "declared broken" in (group.findtext(f"{SVG}desc") or "")
    assert "".join(group.find(f"{SVG}text").itertext()) == "not rated"  # type: ignore[union-attr]
    assert len(group.findall(f"{SVG}text")) == 1


def test_two_bars_between_the_same_joints_stand_side_by_side() -> None:
    rate, forces = made.documents(made.double_pratt(8))
    truss = forces["trusses"][0]
    truss["bars"]["U2-L4 loose"] = truss["bars"]["U2-L4"]
    truss["dead"]["U2-L4 loose"] = 0.0
    truss["live"]["Type 3"]["U2-L4 loose"] = truss["live"]["Type 3"]["U2-L4"]
    one = stress_sheet(rate, forces)
    assert faults(one) == []
    bars = {bar.figures.bar: bar for bar in one.bars}
    assert bars["U2-L4"].start != bars["U2-L4 loose"].start
    assert "upstream/U2-L4 loose" in groups(one.svg)


@pytest.mark.parametrize("leaf", Leaf)
def test_a_bridge_to_be_closed_says_so_before_anything_else(leaf: Leaf) -> None:
    rate, forces = made.documents(made.pratt(6))
    rate["posting"] = made.posting(
        "upstream/U1-L2", closed=True, single_tons=None, combination_tons=None, exact_tons=2.4,
        sign={"designation": "R11-2", "legend": "PROVISIONAL BRIDGE CLOSED"},
    )
    rate["cautions"] = ["Close this bridge: three tons.", *rate["cautions"]]
    one = stress_sheet(rate, forces, leaf=leaf)
    assert faults(one) == []
    assert said(one.svg).startswith("CLOSE THIS BRIDGE")
    assert "Close this bridge: three tons." in said(one.svg)


def test_the_sign_holds_its_legend_and_the_word_provisional() -> None:
    lettered = said(sheet(made.pratt, 6).svg)
    legend = ("WEIGHT LIMIT", "6 TONS SINGLE UNIT", "9 TONS COMBINATION", "PROVISIONAL", "R12-5")
    assert all(words in lettered for words in legend)


def test_without_a_sign_the_posting_stands_in_words() -> None:
    rate, forces = made.documents(made.pratt(6))
    rate["posting"] = made.posting("", provisional=False, governed_by=None, sign=None)
    assert "No weight limit needed" in said(stress_sheet(rate, forces).svg)


def test_the_cautions_stand_on_every_leaf() -> None:
    for leaf in Leaf:
        lettered = said(sheet(made.pratt, 6, leaf).svg)
        assert all(caution in lettered for caution in made.CAUTIONS[:2])
        assert "not signed" in lettered


def test_the_dimensions_and_the_scale_are_stated() -> None:
    # By hand: six panels of 15 ft are 90 ft, 22 ft deep; 90 ft at 1/8 inch are 11 1/4 inches.
    lettered = said(sheet(made.pratt, 6).svg)
    assert "90 ft between end pins, 6 panels" in lettered
    assert lettered.count("15 ft") == 6
    assert "22 ft" in lettered
    assert re.search(r"1/8 inch to the foot, where the sheet is 17 inches", lettered)


def test_an_unknown_truss_or_vehicle_is_refused_with_the_nearest() -> None:
    rate, forces = made.documents(made.pratt(6))
    with pytest.raises(Unknown) as refusal:
        stress_sheet(rate, forces, truss="upsteam")
    assert refusal.value.near == "upstream"
    with pytest.raises(Unknown):
        stress_sheet(rate, forces, vehicle="Type 9")
