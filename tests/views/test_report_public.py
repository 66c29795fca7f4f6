"""The pages for neighbours: the numbers in them, and how hard they are to read."""

import copy
import math
import re
from itertools import pairwise

import pytest

from eyebar.views.report_public import HOW, later, who, why
from tests.documents import demos
from tests.views.reading import grade

Document = demos.Document
each = pytest.mark.parametrize("name", demos.NAMES)


def said(document: Document) -> str:
    return " ".join((*who(document), *HOW, *why(document), *later(document)))


def decided(document: Document, **posting: object) -> Document:
    other = copy.deepcopy(document)
    other["posting"] |= posting
    return other


@each
def test_a_twelve_year_old_can_read_it(name: str) -> None:
    # Twelve years are the sixth and seventh school year.
    document = demos.rate(name)
    for one in (
        document, decided(document, closed=True), decided(document, closed=None),
        decided(document, single_tons=None, combination_tons=None, provisional=False, not_rated=[]),
        decided(document, governed_by=None),
    ):
        assert grade(said(one)) < 6.5
        assert max(map(grade, filter(None, who(one)))) < 9.0


def test_the_limit_is_said_in_tons_and_in_pounds() -> None:
    # By hand: 7.96 tons are a limit of 7, and 7 x 2,000 = 14,000.
    posted = decided(demos.rate("quillmarsh"), closed=False)
    one = decided(posted, single_tons=7.96, combination_tons=7.96)
    assert who(one)[0] == (
        "You may cross if your car or truck weighs 7 tons (14,000 pounds) or less."
    )
    two = decided(posted, single_tons=7, combination_tons=12)
    assert "7 tons (14,000 pounds)" in who(two)[0]
    assert "12 tons (24,000 pounds)" in who(two)[1]


def test_a_bridge_to_be_closed_says_so_first_and_gives_no_limit() -> None:
    one = decided(demos.rate("quillmarsh"), closed=True, exact_tons=2.999)
    assert who(one)[0].startswith("This bridge must be closed.")
    # Not 3.00: what decides on closing is rounded down.
    assert "2.99 tons" in who(one)[1]
    assert not any("may cross" in sentence for sentence in who(one))


def test_where_nothing_is_rated_nobody_is_told_to_cross() -> None:
    words = " ".join(who(decided(demos.rate("quillmarsh"), governed_by=None)))
    assert "Keep off the bridge" in words
    assert "may cross" not in words


@each
def test_what_the_weakest_part_holds_is_its_factor_rounded_down(name: str) -> None:
    document = demos.rate(name)
    by = document["posting"]["governed_by"]
    part = next(one for one in document["parts"] if one["part"] == by["part"])
    factors = [one["factor"] for one in part["ratings"] if one["vehicle"] == by["vehicle"]
               and one["method"] == document["posting"]["method"]
               and one["level"] == document["posting"]["level"]]
    found = re.search(r"only (\d+) pounds out of", " ".join(why(document)))
    assert found
    held = int(found[1])
    assert held <= 100 * factors[0] < held + 1


@each
def test_every_number_in_it_is_one_of_the_result(name: str) -> None:
    document = demos.rate(name)
    posting = document["posting"]
    by = posting["governed_by"]
    known = {
        "100", f"{len(posting['not_rated'])}", *re.findall(r"\d+", by["part"]),
        *(f"{posting[key]}" for key in ("single_tons", "combination_tons")),
        *([f"{math.floor(posting['exact_tons'] * 100) / 100:.2f}"]
          if posting["closed"] is not False else []),
        *(f"{posting[key] * 2000:,}" for key in ("single_tons", "combination_tons")
          if posting[key]),
    }
    numbers = re.findall(r"\d[\d,.]*\d|\d", " ".join((*who(document), *later(document))))
    assert set(numbers) <= known


def test_sentences_do_not_repeat_themselves() -> None:
    for one, other in pairwise(said(demos.rate("dovetansy")).split(". ")):
        assert one != other
