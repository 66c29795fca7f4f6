"""DXF files, read back by the library that is not ours, audited, and measured."""

import io
import math
from typing import Any

import ezdxf
import pytest
from ezdxf.lldxf.const import DXFError

from eyebar.drawings.dxf_file import APPLICATION
from eyebar.drawings.dxf_sheets import cross_section_dxf, elevation_dxf, floor_dxf
from eyebar.errors import NotMeasured, Unknown
from tests.documents import demos
from tests.drawings import made, sheets

INCHES = 1  # $INSUNITS of the DXF reference


def read(written: bytes) -> Any:
    """The file, read back; audited clean; in inches."""
    document = ezdxf.read(io.StringIO(written.decode("utf-8")))
    audit = document.audit()
    assert not audit.errors
    assert not audit.fixes
    assert document.header["$INSUNITS"] == INCHES
    return document.modelspace()


def part(entity: Any) -> str:
    """The address that an entity carries."""
    try:
        return str(entity.get_xdata(APPLICATION)[0].value)
    except DXFError:
        return ""


def of(space: Any, layer: str, kind: str) -> dict[str, Any]:
    """Address -> entity of a kind on a layer."""
    return {part(one): one for one in space.query(kind) if one.dxf.layer == layer}


@pytest.mark.parametrize("name", demos.NAMES)
def test_an_elevation_has_every_bar_as_long_as_it_is(name: str) -> None:
    document = sheets.drawn(name)
    truss = document["trusses"][0]
    space = read(elevation_dxf(document))
    lines = of(space, "CENTRE LINES", "LINE")
    assert set(lines) == {bar["part"] for bar in truss["bars"].values()}
    for bar in truss["bars"].values():
        line = lines[bar["part"]]
        assert math.dist(line.dxf.start, line.dxf.end) == pytest.approx(bar["length_in"])
    pins = of(space, "PINS", "CIRCLE")
    assert {one.dxf.radius * 2 for one in pins.values()} == set(truss["pins"].values())


def test_measured_by_hand_on_the_elevation_of_quillmarsh() -> None:
    # By hand from the record: ten panels of 15 ft, 26 ft deep; end posts of 30.017 ft; the top
    # chord 9 in and 1/4 in of cover plate broad.
    space = read(elevation_dxf(sheets.drawn("quillmarsh")))
    measured = {one.get_measurement() for one in space.query("DIMENSION")}
    assert {round(one, 6) for one in measured} == {180.0, 1800.0, 312.0}
    post = of(space, "CENTRE LINES", "LINE")["upstream/U1-L0"]
    assert math.dist(post.dxf.start, post.dxf.end) == pytest.approx(12 * math.hypot(15.0, 26.0))
    chord = of(space, "MEMBERS", "LWPOLYLINE")["upstream/U1-U2"]
    ys = [point[1] for point in chord.get_points("xy")]
    assert max(ys) - min(ys) == pytest.approx(9.25)
    # A slanting one too: its end is as long as the section is high, 9 in and 5/16 in.
    corners = of(space, "MEMBERS", "LWPOLYLINE")["upstream/U1-L0"].get_points("xy")
    assert math.dist(corners[0], corners[3]) == pytest.approx(9.3125)


@pytest.mark.parametrize("name", demos.NAMES)
def test_a_plan_has_every_beam_where_it_lies(name: str) -> None:
    document = sheets.drawn(name)
    space = read(floor_dxf(document))
    stringers = of(space, "STRINGERS", "LWPOLYLINE")
    for one in document["floor"]["stringers"]:
        xs, ys = zip(*stringers[one["part"]].get_points("xy"), strict=True)
        assert (min(xs) / 12, max(xs) / 12) == pytest.approx((one["begin_ft"], one["end_ft"]))
        assert (min(ys) + max(ys)) / 24 == pytest.approx(one["place_ft"])
    assert set(of(space, "FLOORBEAMS", "LWPOLYLINE")) == {
        one["part"] for one in document["floor"]["floorbeams"]
    }


def test_measured_by_hand_across_quillmarsh() -> None:
    # By hand from the record: trusses 18 ft apart, curbs 1 ft from them; eight sticks of 6 in x
    # 12 in; a truck 8 ft 6 in wide.
    space = read(cross_section_dxf(sheets.drawn("quillmarsh"), sheets.standing("quillmarsh")))
    trusses = of(space, "CENTRE LINES", "LINE")
    assert {round(one.dxf.start.x, 6) for one in trusses.values()} == {0.0, 216.0}
    sticks = of(space, "STRINGERS", "LWPOLYLINE")
    assert len(sticks) == 8
    for one in sticks.values():
        xs, ys = zip(*one.get_points("xy"), strict=True)
        assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx((6.0, 12.0))
    vehicle = [one for one in space.query("LWPOLYLINE") if one.dxf.layer == "VEHICLE"]
    breadths = {round(max(x for x, _ in one.get_points("xy"))
                      - min(x for x, _ in one.get_points("xy")), 6) for one in vehicle}
    assert breadths == {20.0, 102.0}


def test_the_same_document_gives_the_same_bytes() -> None:
    document = sheets.drawn("wrenmallow")
    assert floor_dxf(document) == floor_dxf(document)


def test_what_was_never_measured_is_refused() -> None:
    document = sheets.truss_of(made.pratt(5))
    assert read(elevation_dxf(document))
    for refused in (floor_dxf, lambda one: cross_section_dxf(one, None)):
        with pytest.raises(NotMeasured):
            refused(document)
    with pytest.raises(Unknown, match="upstream"):
        elevation_dxf(document, "upstrem")
