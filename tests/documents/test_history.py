"""The `history` document of the invented bridges: by its schema, and as the record says."""

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents import history_document, schema
from eyebar.terms import Form
from eyebar.views.history import told
from tests.documents import demos

FORM = {
    "quillmarsh": Form.DOUBLE_INTERSECTION_PRATT, "dovetansy": Form.PRATT,
    "wrenmallow": Form.HALF_HIP_PRATT,
}


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_form_found_from_lines_is_the_one_in_the_record(name: str) -> None:
    document = history_document(demos.record(name))
    Draft202012Validator(schema("history")).validate(document)
    for truss in document["trusses"]:
        assert truss["form"] == truss["recorded_form"] == FORM[name]


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_view_says_what_the_document_holds(name: str) -> None:
    document = history_document(demos.record(name))
    view = told(document)
    assert len(view.details) == len(document["age"]["details"])
    assert all(truss["form"] in " ".join(view.forms) for truss in document["trusses"])
    assert str(document["age"]["built"]) in view.age


def test_a_form_that_the_record_calls_otherwise_and_a_span_beyond_the_usual_are_told() -> None:
    document = history_document(demos.record("dovetansy"))
    truss = document["trusses"][0]
    truss["recorded_form"], truss["span_ft"] = "Howe", 400.0
    said = " ".join(told(document).forms)
    assert "the record calls it Howe" in said
    # Usual are 50 to 160 ft (docs/history.md, spans.toml).
    assert "400 ft is outside the spans usual for this form, 50 to 160 ft" in said


def test_a_truss_of_no_known_form_is_told_so() -> None:
    document = history_document(demos.record("dovetansy"))
    document["trusses"][0] |= {
        "form": None, "recorded_form": None, "features": ["verticals split: a K"],
        "usual_span_ft": None,
    }
    assert "none of the known forms: verticals split: a K" in told(document).forms[0]
