"""Real documents against their schemas, and read back."""

import json
from typing import Any

import jsonschema_rs
import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.documents.schemas import document_read, schema
from eyebar.errors import OutOfRange
from eyebar.terms import BAR_KINDS, VehicleClass
from tests.documents import demos

each = pytest.mark.parametrize("name", demos.NAMES)


def explained(name: str) -> demos.Document:
    """The working of the part that governs a demo."""
    return demos.explain(name, demos.rate(name)["posting"]["governed_by"]["part"])


OF_A_BRIDGE = {
    "rate": demos.rate, "forces": demos.forces, "check": demos.check, "explain": explained,
    "describe": demos.describe, "history-how": demos.how,
}


def faults(kind: str, document: Any) -> list[str]:
    """What a schema says against a document; the quick validator says whether, the other what."""
    if jsonschema_rs.is_valid(schema(kind), document):
        return []
    return [
        f"{'/'.join(map(str, fault.absolute_path))}: {fault.message[:200]}"
        for fault in Draft202012Validator(schema(kind)).iter_errors(document)
    ]


@each
@pytest.mark.parametrize("kind", OF_A_BRIDGE)
def test_the_documents_of_a_bridge_are_as_their_schemas_say(kind: str, name: str) -> None:
    assert not faults(kind, OF_A_BRIDGE[kind](name))


def test_the_vehicles_are_as_their_schema_says() -> None:
    assert not faults("vehicles", demos.vehicles())


def test_a_refusal_is_as_its_schema_says() -> None:
    answer = CliRunner().invoke(app, ["rate", "nowhere.yaml", "--json"])
    assert answer.exit_code == 1
    assert not faults("error", json.loads(answer.stdout))


def test_faults_of_a_record_are_as_their_schema_says(tmp_path: Any) -> None:
    record = tmp_path / "slip.yaml"
    text = demos.record("quillmarsh").read_text(encoding="utf-8")
    record.write_text(text.replace("depth: 26 ft", "depth: 26"), encoding="utf-8")
    answer = CliRunner().invoke(app, ["check", str(record), "--json"])
    found = json.loads(answer.stdout)
    assert found["code"] == "bad-record"
    assert not faults("error", found)


def test_a_schema_is_broken_by_a_strange_key_a_wrong_word_and_a_missing_figure() -> None:
    document = demos.vehicles()
    first = document["vehicles"][0]
    for broken in (
        {**first, "colour": "red"}, {**first, "combine": "both"},
        {key: value for key, value in first.items() if key != "gauge_ft"},
    ):
        assert faults("vehicles", {**document, "vehicles": [broken]})


def test_a_rating_without_a_factor_must_say_why() -> None:
    document = demos.rate("quillmarsh")
    part = document["parts"][0]
    for reason, found in (({}, True), ({"reason": "too wide"}, False)):
        rating = {**part["ratings"][0], "factor": None, **reason}
        parts = [{**part, "ratings": [rating]}]
        assert bool(faults("rate", {**document, "parts": parts})) is found


@each
@pytest.mark.parametrize("kind", OF_A_BRIDGE)
def test_a_document_read_back_is_the_document(kind: str, name: str) -> None:
    document = OF_A_BRIDGE[kind](name)
    text = json.dumps(document)
    assert document_read(text) == document
    assert json.dumps(document_read(text)) == text


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ('{"format": "eyebar/rate/2"}', "eyebar/rate/2"),
        ('{"format": "other/rate/1"}', "other/rate/1"),
        ("{}", "None"),
        ("[1, 2]", "None"),
        ("not json", "not JSON"),
    ],
)
def test_a_text_of_another_kind_or_a_newer_version_is_refused(text: str, what: str) -> None:
    with pytest.raises(OutOfRange, match=what):
        document_read(text)


@each
def test_both_trusses_are_written_out_and_every_part_names_one_of_them_or_none(name: str) -> None:
    trusses = [truss["truss"] for truss in demos.forces(name)["trusses"]]
    assert len(trusses) == len(set(trusses)) == 2
    assert {part["truss"] for part in demos.rate(name)["parts"]} == {*trusses, None}


@each
def test_the_last_piece_of_a_rated_parts_address_is_a_bar_of_its_truss(name: str) -> None:
    bars = {truss["truss"]: set(truss["bars"]) for truss in demos.forces(name)["trusses"]}
    for part in demos.rate(name)["parts"]:
        if "ratings" in part and part["kind"] in BAR_KINDS:
            truss, bar = part["part"].split("/")
            assert truss == part["truss"]
            assert bar in bars[truss]


@each
def test_every_part_is_rated_once_for_each_vehicle_method_and_level(name: str) -> None:
    vehicles = {
        one["name"]: one for one in demos.vehicles()["vehicles"]
        if one["class"] != VehicleClass.EVERYDAY
    }
    older = {(m, lv) for m in ("allowable-stress", "load-factor")
             for lv in ("inventory", "operating")}
    legal = {("load-and-resistance", "legal")}
    design = {("load-and-resistance", lv) for lv in ("inventory", "operating")}
    wanted = {
        (vehicle, *by)
        for vehicle, one in vehicles.items()
        for by in (design if one["combine"] == "sum"
                   else older if one["class"] == "design" else older | legal)
    }
    for part in demos.rate(name)["parts"]:
        if "ratings" in part:
            rated = [(r["vehicle"], r["method"], r["level"]) for r in part["ratings"]]
            assert len(rated) == len(set(rated))
            assert set(rated) == wanted


@each
def test_parts_not_rated_and_parts_only_proposed_make_the_posting_provisional(name: str) -> None:
    document = demos.rate(name)
    not_rated = {part["part"]: part["kind"] for part in document["parts"] if "not_rated" in part}
    rated = {part["kind"] for part in document["parts"] if part.get("ratings")}
    assert {"hanger", "floorbeam", "stringer", "deck", "bearing"} <= {*not_rated.values(), *rated}
    posting = document["posting"]
    only_proposed = [part["part"] for part in document["parts"] if "provisional" in part]
    assert set(posting["not_rated"]) <= set(not_rated)
    assert posting["provisional_parts"] == only_proposed
    assert posting["provisional"] is bool(posting["not_rated"] or only_proposed)
    # One of the demos has parts that nobody measured.
    assert posting["provisional"] is (name == "wrenmallow")
    assert ("PROVISIONAL" in posting["sign"]["legend"]) <= posting["provisional"]


@each
def test_every_value_that_was_read_says_whence_and_whether_it_is_confirmed(name: str) -> None:
    document = demos.rate(name)
    unconfirmed = {row["name"] for row in document["values_used"] if not row["confirmed"]}
    assert unconfirmed == set(document["unconfirmed"])
    assert all(row["source"] for row in document["values_used"])


@each
def test_the_cautions_stand_in_every_document_on_a_bridge(name: str) -> None:
    for make in OF_A_BRIDGE.values():
        said = " ".join(make(name)["cautions"])
        assert "licensed engineer" in said
        assert "What is not measured is not assumed sound." in said
