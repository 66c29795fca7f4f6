"""Of parts alike but for the last digits of a calculation the first one is named."""

import pytest

from tests.documents import demos


def governing(name: str) -> tuple[str, list[str]]:
    """The part that governs a posting, and all with its factor, in the document's order."""
    rate = demos.rate(name)
    by = rate["posting"]["governed_by"]
    factors = {
        part["part"]: one["factor"] for part in rate["parts"] for one in part.get("ratings", ())
        if all(one[word] == by[word] for word in ("vehicle", "method", "level", "check"))
    }
    least = factors[by["part"]]
    return by["part"], [
        part for part, factor in factors.items() if factor == pytest.approx(least, rel=1e-9)
    ]


@pytest.mark.parametrize("name", demos.NAMES)
def test_what_governs_is_the_first_part_with_that_factor(name: str) -> None:
    part, alike = governing(name)
    assert part == alike[0]


def test_there_is_a_bridge_with_parts_alike() -> None:
    # Else the law above says nothing. By symmetry: a pin of Quillmarsh has a mirror image.
    _, alike = governing("quillmarsh")
    assert len(alike) >= 2
