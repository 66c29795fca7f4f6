"""The board and the slip of the invented bridges, against the rating of the same bridges.

The third is to be closed by a pin; without their pins all are open.
"""

import json
from datetime import date
from functools import cache
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents.cross import cross_document
from eyebar.documents.schemas import document_read, schema
from eyebar.documents.slip import slip_document
from eyebar.errors import OutOfRange, Unknown
from eyebar.vehicles import typed_vehicle
from tests.documents import demos

DAY = date(2026, 10, 4)
each = pytest.mark.parametrize("name", demos.NAMES)
LEGAL = ("Type 3", "Type 3S2", "Type 3-3", "SU4", "SU5", "SU6", "SU7", "EV2", "EV3")


@cache
def board(name: str) -> demos.Document:
    """The board of a demo, out of the JSON text."""
    return dict(json.loads(json.dumps(cross_document(demos.without_pins(name)), allow_nan=False)))


@cache
def legal(name: str) -> demos.Document:
    """The answers for the vehicles that a rating has too."""
    return cross_document(demos.without_pins(name), LEGAL)


def faults(kind: str, document: Any) -> list[str]:
    return [
        f"{'/'.join(map(str, fault.absolute_path))}: {fault.message[:200]}"
        for fault in Draft202012Validator(schema(kind)).iter_errors(document)
    ]


def least(name: str, vehicle: str) -> float:
    """The least factor of a vehicle that counts, from the rating."""
    document = demos.rate_without_pins(name)
    posting, found = document["posting"], []
    for part in document["parts"]:
        ratings = [one for one in part.get("ratings", ()) if one["vehicle"] == vehicle
                   and one["reason" if "reason" in one else "check"] != "no rule by this method"]
        for way in ((posting["method"], posting["level"]), ("allowable-stress", "operating")):
            chosen = [one for one in ratings if (one["method"], one["level"]) == way]
            if chosen:
                found += [one["factor"] for one in chosen if one["factor"] is not None]
                break
    return float(min(found))


@each
def test_a_board_is_as_its_schema_says_and_is_read_back(name: str) -> None:
    document = board(name)
    assert not faults("cross", document)
    assert document_read(json.dumps(document)) == document


@each
def test_the_factor_is_that_of_the_rating_where_the_vehicle_is_in_both(name: str) -> None:
    for one in legal(name)["vehicles"]:
        assert one["factor"] == pytest.approx(least(name, one["vehicle"]), rel=1e-12)


@each
def test_the_posting_is_that_of_the_rating(name: str) -> None:
    assert board(name)["posting"] == demos.rate_without_pins(name)["posting"]


@each
def test_every_answer_follows_from_the_sign_and_the_factor(name: str) -> None:
    for one in (*board(name)["vehicles"], *legal(name)["vehicles"]):
        passes = one["factor"] is None or one["factor"] >= 1.0
        if one["answer"] == "yes":
            assert passes
            assert not one["above_posting"]
        if one["answer"] == "conditions":
            assert one["ways"]
            assert one["conditions"] == one["ways"][0]["conditions"]
            assert all(way["factor"] is None or way["factor"] >= 1.0 for way in one["ways"])
        if one["answer"] == "no":
            assert one["reason"]
            assert not passes or "wide" in one["reason"]


@each
def test_what_is_over_the_sign_needs_a_permit_or_fewer_tons(name: str) -> None:
    for one in board(name)["vehicles"]:
        if one["above_posting"] and one["answer"] != "no":
            for way in one["ways"]:
                words = {each["condition"] for each in way["conditions"]}
                assert words & {"permit", "fewer tons"}


@each
def test_the_board_says_who_is_assumed(name: str) -> None:
    shipped = {one["name"]: one for one in demos.vehicles()["vehicles"]}
    for one in board(name)["vehicles"]:
        assert one["assumed"] == shipped[one["vehicle"]]["assumed"]


@each
def test_the_cautions_stand_in_the_board(name: str) -> None:
    said = " ".join(board(name)["cautions"])
    assert "licensed engineer" in said
    assert "permit of the owner" in said


def test_a_vehicle_that_nobody_knows_is_refused_with_the_nearest() -> None:
    with pytest.raises(Unknown, match="did you mean 'milk truck'"):
        cross_document(demos.without_pins("wrenmallow"), ["milk trick"])


def test_a_design_load_does_not_cross() -> None:
    with pytest.raises(OutOfRange, match="a design load cannot"):
        cross_document(demos.without_pins("wrenmallow"), ["HS20"])


def test_a_gauge_wider_than_the_road_is_a_no_with_the_reason() -> None:
    wide = typed_vehicle("10 kip, 12 ft, 10 kip", gauge="20 ft")
    (one,) = cross_document(demos.without_pins("wrenmallow"), [wide])["vehicles"]
    assert one["answer"] == "no"
    assert "20 ft wide" in one["reason"]


def test_a_slip_holds_the_conditions_of_one_way_and_who_signs() -> None:
    document = slip_document(demos.without_pins("quillmarsh"), "tractor with one wagon", DAY, way=2)
    assert not faults("slip", document)
    assert document_read(json.dumps(document)) == document
    assert document["day"] == "2026-10-04"
    assert document["way"] == document["crossing"]["ways"][1]
    assert [one["role"] for one in document["signed"]] == [
        "licensed engineer", "for the owner of the bridge", "driver",
    ]
    assert document["provisional"] is True
    with pytest.raises(OutOfRange, match="from 1 to 2"):
        slip_document(demos.without_pins("quillmarsh"), "tractor with one wagon", DAY, way=3)


def test_there_is_no_slip_for_a_vehicle_whose_answer_is_no() -> None:
    with pytest.raises(OutOfRange, match="no condition that was tried"):
        slip_document(demos.without_pins("quillmarsh"), "grain cart", DAY)


def test_a_closed_bridge_answers_no_to_everything_and_gives_no_slip() -> None:
    name = "wrenmallow"
    assert demos.rate(name)["posting"]["closed"] is True
    document = cross_document(demos.record(name), ["buggy", "snow", "EV3"])
    assert not faults("cross", document)
    assert document["posting"]["closed"] is True
    assert document["cautions"][0].startswith("Close this bridge")
    for one in document["vehicles"]:
        assert (one["answer"], one["ways"]) == ("no", [])
        assert one["reason"] == "the bridge is closed"
    with pytest.raises(OutOfRange, match="the bridge is closed"):
        slip_document(demos.record(name), "buggy", DAY)
