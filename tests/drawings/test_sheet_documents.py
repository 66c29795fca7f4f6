"""The documents that sheets are drawn from are as their schemas say."""

import json
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents.drawn import drawn_of
from eyebar.documents.schemas import document_read, schema
from tests.documents import demos
from tests.drawings import made, sheets


def faults(kind: str, document: Any) -> list[str]:
    """What a schema says against a document, out of its JSON text and read back."""
    read = document_read(json.dumps(document, allow_nan=False))
    return [fault.message[:200] for fault in Draft202012Validator(schema(kind)).iter_errors(read)]


@pytest.mark.parametrize("name", demos.NAMES)
def test_what_is_drawn_is_as_its_schema_says(name: str) -> None:
    assert not faults("drawn", drawn_of(sheets.bridge(name), sheets.standing(name)))


def test_a_made_truss_lines_and_proportions_are_as_their_schemas_say() -> None:
    assert not faults("drawn", sheets.truss_of(made.pratt(5)))
    assert not faults("influence", sheets.influence("wrenmallow", "north/U1-L1"))
    assert not faults("proportion", sheets.proportion())


def test_a_strange_key_breaks_the_schema() -> None:
    document = sheets.truss_of(made.pratt(5))
    document["trusses"][0]["colour"] = "red"
    assert faults("drawn", document)
