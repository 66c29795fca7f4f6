"""The `bracing` document of the invented bridges: by its schema, and as its view tells it."""

import json
from functools import cache
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from eyebar.documents.bracing import bracing_document
from eyebar.documents.schemas import schema
from eyebar.views.bracing import braced
from tests.documents import demos


@cache
def document(name: str) -> dict[str, Any]:
    """Out of the JSON text, as a reader gets it."""
    found: dict[str, Any] = json.loads(
        json.dumps(bracing_document(demos.record(name)), allow_nan=False)
    )
    return found


@pytest.mark.parametrize("name", demos.NAMES)
def test_a_demo_follows_its_schema(name: str) -> None:
    Draft202012Validator(schema("bracing")).validate(document(name))


@pytest.mark.parametrize("name", demos.NAMES)
def test_every_wind_comes_down_to_the_bearings(name: str) -> None:
    # A law: what laterals and portals hold at the ends is the wind that was put on.
    found = document(name)
    for lateral in found["laterals"]:
        assert sum(lateral["reactions_kip"]) == pytest.approx(lateral["applied_kip"])
        about = {key: lateral[key] for key in ("rule", "state", "windward")}
        wind = next(one for one in found["winds"] if about.items() >= {
            key: one[key] for key in ("rule", "state")}.items())
        span = next(one for one in found["laterals"] if one["plane"] == "bottom")["stations_ft"][-1]
        if lateral["plane"] == "bottom" and found["overhead"]:
            every_foot = wind["lower_lb_per_ft"] + wind["moving_lb_per_ft"]
            assert lateral["applied_kip"] == pytest.approx(every_foot * span / 1000)
        if lateral["plane"] == "top":
            portals = [
                frame["wind_kip"] for frame in found["frames"]
                if frame["portal"] and about.items() <= frame.items()
            ]
            assert sum(portals) == pytest.approx(lateral["applied_kip"])


@pytest.mark.parametrize("name", demos.NAMES)
def test_whatever_is_judged_has_a_margin_and_whatever_is_not_a_reason(name: str) -> None:
    found = document(name)
    verdicts = [*found["members"], *(check for post in found["posts"] for check in post["checks"])]
    assert verdicts
    for one in verdicts:
        assert (one["margin"] is None) == bool(one["not_judged"])
        assert one["stands"] == (None if one["margin"] is None else one["margin"] >= 1.0)


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_view_shows_every_part_and_the_least_of_each(name: str) -> None:
    found = document(name)
    view = braced(found)
    assert {(row.part, row.what) for row in view.every} == {
        (one["part"], one["what"]) for one in found["members"]
    }
    assert {row.what for row in view.rows} == {one["what"] for one in found["members"]}
    for row in view.rows:
        margins = [
            one["margin"] for one in found["members"]
            if one["what"] == row.what and one["rule"] == "by area" and one["margin"] is not None
        ]
        if margins:
            assert float(row.by_area) == pytest.approx(min(margins), abs=0.005)
        else:
            assert row.by_area == "not judged"


def test_a_bridge_whose_bracing_nobody_recorded_is_told_so() -> None:
    from eyebar.record import record_of

    text = demos.record("dovetansy").read_text(encoding="utf-8")
    begin, end = text.index("\nbracing:\n"), text.index("\ntraffic:")
    found = bracing_document(record_of(text[:begin] + text[end:]))
    Draft202012Validator(schema("bracing")).validate(found)
    assert found["overhead"] is None
    assert found["members"] == []
    assert "Wind is not followed: the bracing is not recorded" in braced(found).sentences[0]
