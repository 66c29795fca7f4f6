"""The `history` document of the invented bridges: by its schema, and as the record says."""

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents.history import history_document
from eyebar.documents.schemas import schema
from eyebar.record import Record, record_of
from eyebar.terms import Form
from eyebar.views.history import told
from tests.bridge.plain import changed
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


def k_truss() -> Record:
    """A record joint by joint and without a year, of a K web of six panels: from the definition,
    uprights met in their middle by half diagonals that part towards the middle of the span."""
    joints = ", ".join([
        *(f"L{i}: [{15 * i} ft, 0 ft]" for i in range(7)),
        *(f"U{i}: [{15 * i} ft, 20 ft]" for i in range(1, 6)),
        *(f"M{i}: [{15 * i} ft, 10 ft]" for i in (1, 2, 4, 5)),
    ])
    text = changed(
        ("  form: Pratt\n  panels: 6 at 15 ft\n  depth: 20 ft\n  counters: [U3-L2, U3-L4]\n",
         f"  joints: {{{joints}}}\n  floor: [L0, L1, L2, L3, L4, L5, L6]\n"),
        ("bars: [U1-L1, U5-L5]", "bars: [U1-M1, M1-L1, U5-M5, M5-L5]"),
        ("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U2-M2, M2-L2, U3-L3, U4-M4, M4-L4]"),
        ("bars: [U1-L2, U5-L4]", "bars: [U2-M1, M1-L2, U4-M5, M5-L4]"),
        ("bars: [U2-L3, U4-L3]", "bars: [U3-M2, M2-L3, U3-M4, M4-L3]"),
        ("built: 1892", "built: not measured"),
    )
    counters = text.index("  counters:\n    kind")
    return record_of(text[:counters].rstrip() + text[text.index("\n\n", counters):])


def test_a_record_of_no_known_form_and_without_a_year_says_what_is_unlike() -> None:
    document = history_document(k_truss())
    Draft202012Validator(schema("history")).validate(document)
    view = told(document)
    assert "left: none of the known forms: verticals are met in their middle" in view.forms[0]
    # By its iron, usual until 1895, and its steel, usual from 1888.
    assert view.age == "The record gives no year. By its details, 1888 to 1895."
    assert view.contradictions == ()
