"""The schemas: sound themselves, and of one mind with each other, the package and the page."""

from typing import Any

import pytest
from jsonschema import Draft202012Validator

from eyebar import errors
from eyebar.documents.schemas import NAMES, schema
from eyebar.errors import Unknown
from eyebar.terms import Combine, Direction, Kind, Level, Method, VehicleClass
from tests.documents import page

each = pytest.mark.parametrize("name", NAMES)


@each
def test_a_schema_is_one_by_the_draft_it_names(name: str) -> None:
    found = schema(name)
    assert found["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(found)


@each
def test_a_document_is_known_by_its_format(name: str) -> None:
    found = schema(name)
    assert found["properties"]["format"]["const"] == f"eyebar/{name}/1"
    assert "format" in found["required"]


@each
def test_every_key_is_described(name: str) -> None:
    for one in page.objects(schema(name)):
        if "if" in one or "required" in one:
            silent = [key for key, of in one["properties"].items() if not of.get("description")]
            assert not silent


@each
def test_unknown_keys_are_refused_wherever_keys_are_listed(name: str) -> None:
    # An object that says which keys it must have is a whole one; others are conditions.
    whole = [one for one in page.objects(schema(name)) if one.get("type") == "object"]
    assert whole
    assert all(one["additionalProperties"] is False for one in whole)


def test_what_two_schemas_share_is_the_same_in_both() -> None:
    seen: dict[str, Any] = {}
    for name in NAMES:
        for part, of in schema(name).get("$defs", {}).items():
            assert seen.setdefault(part, of) == of, part


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("method", Method), ("level", Level), ("kind", Kind), ("direction", Direction),
        ("combine", Combine), ("class", VehicleClass), ("layer", ("shipped", "office", "record")),
        ("goes", ("slack", "taut")), ("pull", ("none", "measured")),
        ("unit", ("kip", "ratio", "ksi", "")),
    ],
)
def test_closed_lists_hold_the_words_of_the_package_and_no_others(key: str, words: Any) -> None:
    lists = [
        of["enum"]
        for name in NAMES
        for one in page.objects(schema(name))
        for found, of in one["properties"].items()
        if found == key and "enum" in of
    ]
    assert lists
    assert all(found == list(words) for found in lists)


def test_every_refusal_has_its_code_in_the_schema() -> None:
    codes = {
        kind.code for kind in vars(errors).values()
        if isinstance(kind, type) and issubclass(kind, errors.EyebarError)
    }
    # A file that cannot be read is no refusal of ours, but answered like one.
    assert set(schema("error")["properties"]["code"]["enum"]) == codes | {"file"}


@each
def test_the_page_tells_of_every_key(name: str) -> None:
    assert not page.keys(name) - page.told(name)


@each
def test_every_key_that_the_page_tells_of_is_there(name: str) -> None:
    known = page.keys(name) | page.closed_words(schema(name)) | {"format"}
    shared = set().union(*(page.keys(other) for other in page.ALSO[name]))
    assert not page.words(page.SECTIONS[page.OF[name]]) - known - shared


def test_the_page_tells_of_every_document() -> None:
    assert {page.OF[name] for name in NAMES} | {"Where a vehicle stands"} == set(page.SECTIONS)
    assert all(f"`eyebar/{name}/1`" in page.TEXT for name in NAMES)


def test_an_unknown_schema_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(Unknown, match="did you mean 'forces'"):
        schema("force")
