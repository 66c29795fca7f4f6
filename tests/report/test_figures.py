"""Every figure of the PDF's text against the result document, both ways."""

import hashlib
import json
import math
import re
from collections import Counter

import pytest

from tests.documents import demos
from tests.report import made

pytestmark = pytest.mark.typst
each = pytest.mark.parametrize("name", demos.NAMES)


def squeezed(text: str) -> str:
    """Without spaces: a reader of PDF parts and joins words as it sees fit."""
    return re.sub(r"\s", "", text)


def by_posting(name: str, part: demos.Document) -> list[demos.Document]:
    posting = demos.rate(name)["posting"]
    return [
        one for one in part.get("ratings", ())
        if one["factor"] is not None and one["vehicle"] in posting["vehicles"]
        and (one["method"], one["level"]) == (posting["method"], posting["level"])
    ]


def nearest_hundredth(value: float) -> str:
    """Two decimals, and as many more as keep what is under 1 under 1."""
    decimals = 2
    while value < 1.0 <= float(f"{value:.{decimals}f}"):
        decimals += 1
    return f"{value:.{decimals}f}"


@each
def test_every_bar_stands_in_it_with_its_least_factor(name: str) -> None:
    said = squeezed(made.text(made.brief(name)))
    told = 0
    for part in demos.rate(name)["parts"]:
        chosen = by_posting(name, part)
        if chosen and part["kind"] in ("diagonal", "end post", "top chord", "bottom chord"):
            least = min(chosen, key=lambda one: one["factor"])
            row = f"{part['part']}{least['vehicle']}{nearest_hundredth(least['factor'])}"
            assert squeezed(row) in said
            told += 1
    assert told


@each
def test_every_factor_in_its_tables_is_one_of_the_result(name: str) -> None:
    document = demos.rate(name)
    known = {
        nearest_hundredth(one["factor"]) for part in document["parts"]
        for one in part.get("ratings", ()) if one["factor"] is not None
    }
    text = made.text(made.brief(name))
    tables = text[text.index("Ratings by part"):text.index("The bridge under every vehicle")]
    vehicles = {one["vehicle"] for part in document["parts"] for one in part.get("ratings", ())}
    shown = re.findall(
        rf"(?:{'|'.join(map(re.escape, sorted(vehicles, key=len, reverse=True)))})"
        r"\s+(\d+\.\d{2,})\s", tables,
    )
    assert len(shown) > 10
    assert set(shown) <= known


@each
def test_the_tons_of_the_limit_are_rounded_down_and_a_closed_bridge_has_none(name: str) -> None:
    posting = demos.rate(name)["posting"]
    text = made.text(made.brief(name))
    if posting["closed"]:
        assert "BRIDGE CLOSED" in text
        assert "WEIGHT LIMIT" not in text
        return
    for key in ("single_tons", "combination_tons"):
        if posting[key] is not None:
            assert f"{math.floor(posting[key])} TONS" in text
    assert posting["provisional"] == ("PROVISIONAL" in squeezed(text))


@each
def test_what_governs_stands_in_it_with_part_check_and_vehicle(name: str) -> None:
    by = demos.rate(name)["posting"]["governed_by"]
    said = squeezed(made.text(made.brief(name)))
    assert squeezed(f"Governed by {by['part']}: {by['check']}, under {by['vehicle']}") in said


@each
def test_every_reading_stands_in_it_as_it_was_written(name: str) -> None:
    said = squeezed(made.text(made.brief(name)))
    for inspection in demos.describe(name)["inspections"]:
        for reading in inspection["readings"]:
            assert squeezed(reading["part"]) in said
            assert squeezed(reading["value"]) in said


@each
def test_every_unconfirmed_value_and_every_caution_stands_in_it(name: str) -> None:
    document = demos.rate(name)
    said = squeezed(made.text(made.brief(name)))
    assert [one for one in document["unconfirmed"] if squeezed(one) not in said] == []
    assert [one for one in document["cautions"] if squeezed(one) not in said] == []


@each
def test_the_reasons_of_parts_that_are_not_rated_are_counted(name: str) -> None:
    reasons = Counter(
        part["not_rated"].replace(f" of {part['part']}", "")
        for part in demos.rate(name)["parts"] if part.get("not_rated")
    )
    said = squeezed(made.text(made.brief(name)))
    for reason, count in reasons.items():
        assert squeezed(f"{reason} ({count})") in said


@each
def test_the_working_ends_at_the_factor_of_the_result(name: str) -> None:
    by = demos.rate(name)["posting"]["governed_by"]
    working = demos.explain(name, by["part"])
    text = made.text(made.report(name))
    own = text[text.rindex("Each formula stands in symbols"):]
    factor = working["rating"]["factor"]
    assert f"Factor {nearest_hundredth(factor)}" in own
    # Four digits of the last rating factor stand behind an equals sign.
    assert squeezed(f"= {factor:.4f}".rstrip("0")) in squeezed(own)


@each
def test_the_fingerprints_of_record_and_result_stand_on_the_last_page(name: str) -> None:
    last = squeezed(made.read(made.brief(name)).pages[-1].extract_text())
    assert demos.rate(name)["record_hash"] in last
    # By the standard library, which writes the same JSON text another way.
    plain = json.dumps(
        demos.rate(name), sort_keys=True, ensure_ascii=False, separators=(",", ":")
    )
    assert hashlib.sha256(plain.encode()).hexdigest() in last
    assert f"eyebar{demos.rate(name)['version']}" in last
