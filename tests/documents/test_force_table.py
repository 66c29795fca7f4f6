"""The `force-table` document against its schema, and read back."""

import json

import jsonschema
import pytest

from eyebar.documents.force_table import force_table_document
from eyebar.documents.opened import opened
from eyebar.documents.schemas import document_read, schema
from eyebar.terms import Direction
from tests.documents import demos


@pytest.mark.parametrize("way", list(Direction))
def test_the_document_is_as_its_schema_says_and_is_read_back(way: Direction) -> None:
    one = opened(demos.record("wrenmallow"))
    document = force_table_document(one, "north", "milk truck", way=way)
    text = json.dumps(document, allow_nan=False)
    assert document_read(text) == document
    jsonschema.validate(document, schema("force-table"))
    assert len(document["slack_between"]) == len(document["rows"]) - 1
    assert all(len(row["forces_kip"]) == len(document["bars"]) for row in document["rows"])
