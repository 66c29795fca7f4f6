"""The list of parts by safe load, worked out apart from the factors of the same document.

The rules are those of docs/office.md and the posting formula, written down here once more.
"""

import math
from collections.abc import Collection

import pytest

from tests.documents import demos

COMBINATIONS = ("Type 3S2", "Type 3-3")
WEIGHTS = {
    one["name"]: sum(one["axles_kip"]) / 2.0 for one in demos.vehicles()["vehicles"]
}
each = pytest.mark.parametrize("name", demos.NAMES)


def safe(rating: demos.Document) -> float:
    """What the vehicle may weigh: W / 0.7 x (RF - 0.3), by allowable stress W x RF; W from 1 on."""
    weight, factor = WEIGHTS[rating["vehicle"]], rating["factor"]
    if factor >= 1.0:
        return weight
    if rating["method"] == "load-and-resistance":
        return max(weight / 0.7 * (factor - 0.3), 0.0)
    return weight * factor


def counted(document: demos.Document, left_out: Collection[str] = ()) -> list[demos.Document]:
    """Every rating of the vehicles of the posting that counts, with its part's address."""
    posting = document["posting"]
    found = []
    for part in document["parts"]:
        if part["part"] in left_out or "ratings" not in part:
            continue
        ratings = [
            {**one, "part": part["part"]} for one in part["ratings"]
            if one["vehicle"] in posting["vehicles"] and one["factor"] is not None
        ]
        for way in ((posting["method"], posting["level"]), ("allowable-stress", "operating")):
            chosen = [one for one in ratings if (one["method"], one["level"]) == way]
            if chosen:
                found += chosen
                break
    return found


def limits(ratings: list[demos.Document]) -> tuple[int | None, int | None]:
    """Single and combination limit: the least safe load of a kind once any of it has RF < 1."""
    found = []
    for kind in (False, True):
        of = [one for one in ratings if (one["vehicle"] in COMBINATIONS) is kind]
        restricted = any(one["factor"] < 1.0 for one in of)
        found.append(math.floor(min(map(safe, of))) if restricted else None)
    single, combination = found
    if single is not None and combination is not None and combination < single:
        return combination, combination
    return single, combination


@each
def test_every_rated_part_stands_in_the_list_once(name: str) -> None:
    document = demos.rate_without_pins(name)
    listed = [part for line in document["weakest"] for part in line["parts"]]
    assert len(listed) == len(set(listed))
    assert set(listed) == {one["part"] for one in counted(document)}


@each
def test_safe_loads_are_the_least_of_each_part_and_come_in_order(name: str) -> None:
    document = demos.rate_without_pins(name)
    ratings = counted(document)
    for line in document["weakest"]:
        for part in line["parts"]:
            its = [one for one in ratings if one["part"] == part and one["factor"] < 1.0]
            if line["safe_tons"] is None:
                assert not its
            else:
                assert min(map(safe, its)) == pytest.approx(line["safe_tons"], abs=1e-6)
    tons = [math.inf if one["safe_tons"] is None else one["safe_tons"]
            for one in document["weakest"]]
    assert tons == sorted(tons)


@each
def test_the_first_line_is_what_governs_the_posting(name: str) -> None:
    document = demos.rate_without_pins(name)
    first, by = document["weakest"][0], document["posting"]["governed_by"]
    assert by["part"] in first["parts"]
    assert (first["check"], first["vehicle"]) == (by["check"], by["vehicle"])
    assert first["safe_tons"] == document["posting"]["exact_tons"]


@each
def test_the_posting_without_a_line_is_that_of_all_other_parts(name: str) -> None:
    document = demos.rate_without_pins(name)
    kinds = {part["part"]: part["kind"] for part in document["parts"]}
    for line in document["weakest"]:
        of_kind = [part for part, kind in kinds.items() if kind == line["kind"]]
        for key, left_out in (("without", line["parts"]), ("without_kind", of_kind)):
            made, rest = line[key], counted(document, left_out)
            assert (made["single_tons"], made["combination_tons"]) == limits(rest)
            restricting = [one for one in rest if one["factor"] < 1.0]
            if restricting:
                assert made["exact_tons"] == pytest.approx(min(map(safe, restricting)))
                assert made["governed_by"]["part"] not in left_out


def test_a_closed_bridge_says_what_would_open_it() -> None:
    document = demos.rate("wrenmallow")
    assert document["posting"]["closed"] is True
    first = document["weakest"][0]
    assert first["safe_tons"] == document["posting"]["exact_tons"]
    for line in document["weakest"]:
        rest = [one for one in counted(document, line["parts"]) if one["factor"] < 1.0]
        exact = min(map(safe, rest))
        assert line["without"]["closed"] is (exact < 3.0)
        assert line["without"]["exact_tons"] == pytest.approx(exact)


@each
def test_leaving_out_a_limit_never_lowers_the_posting(name: str) -> None:
    document = demos.rate_without_pins(name)
    for line in document["weakest"]:
        for key in ("without", "without_kind"):
            after = line[key]["exact_tons"]
            assert after is None or after >= document["posting"]["exact_tons"]
