"""What the use of the road is worth, on the invented bridges and by hand."""

import json
from dataclasses import replace
from functools import cache

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents.schemas import document_read, schema
from eyebar.documents.use import use_document
from eyebar.rating.use_worth import use_worth, without_surfacing
from eyebar.terms import RoadUse
from tests.documents import demos
from tests.rating.bridges import dead
from tests.rating.test_crossing import POSTING, VALUES, made

each = pytest.mark.parametrize("name", demos.NAMES)


@cache
def use(name: str) -> demos.Document:
    return dict(json.loads(json.dumps(use_document(demos.without_pins(name)), allow_nan=False)))


@each
def test_the_document_is_as_its_schema_says_and_is_read_back(name: str) -> None:
    document = use(name)
    assert not list(Draft202012Validator(schema("use")).iter_errors(document))
    assert document_read(json.dumps(document)) == document
    assert [one["use"] for one in document["uses"]] == [str(one) for one in RoadUse]


@each
def test_the_posting_today_is_that_of_the_rating(name: str) -> None:
    assert use(name)["posting"] == demos.rate_without_pins(name)["posting"]


@each
def test_no_use_makes_it_worse_and_all_together_are_worth_the_most(name: str) -> None:
    exact = [
        float("inf") if one["then"]["exact_tons"] is None else one["then"]["exact_tons"]
        for one in use(name)["uses"] if one["then"]
    ]
    today = use(name)["posting"]["exact_tons"]
    assert all(one >= today - 1e-9 for one in exact)
    assert exact[-1] >= max(exact) - 1e-9


def test_one_at_a_time_is_worth_the_factor_of_one_lane() -> None:
    # By hand, load and resistance: the factor of the chord grows by 1.20, and the posting formula
    # W / 0.7 x (RF - 0.3) goes on from there; the governing vehicle's weight falls out.
    found = use_worth(made(8.0), VALUES, POSTING)
    now = found.rating.posting
    by = now.governed_by
    assert by is not None
    alone = next(one.posting for one in found.worths if one.use is RoadUse.ALONE)
    assert alone is not None
    assert by.factor is not None
    assert alone.exact_tons == pytest.approx(
        by.vehicle.weight_tons / 0.7 * (1.2 * by.factor - 0.3), rel=1e-9
    )


def test_a_deck_without_surfacing_says_so_and_one_with_it_gains() -> None:
    plain = made(8.0)
    assert without_surfacing(plain) is None
    bare = next(o for o in use_worth(plain, VALUES, POSTING).worths if o.use is RoadUse.BARE)
    assert bare.posting is None
    assert "no surfacing" in bare.not_here
    (truss,) = plain.trusses
    layer = replace(dead(2.0, truss, wearing=True), name="surfacing")
    laid = replace(plain, weights={"near": (*plain.weights["near"], layer)})
    found = use_worth(laid, VALUES, POSTING)
    off = next(one.posting for one in found.worths if one.use is RoadUse.BARE)
    first = use_worth(plain, VALUES, POSTING).rating.posting
    assert off is not None
    assert off.exact_tons == first.exact_tons
    assert (found.rating.posting.exact_tons or 0.0) < (first.exact_tons or 0.0)
