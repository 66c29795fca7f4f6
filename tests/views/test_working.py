"""A working is said once: laws on the workings of the invented bridges' governing parts."""

from itertools import pairwise
from typing import Any

import pytest

from eyebar.views.blocks import Equation, Said
from eyebar.views.report_working import working_section
from tests.documents import demos


def steps_of(steps: list[Any]) -> list[Any]:
    """All steps, those inside procedures too."""
    return [one for step in steps for one in (step, *steps_of(step.get("steps", [])))]


def governing(name: str) -> demos.Document:
    return demos.explain(name, demos.rate(name)["posting"]["governed_by"]["part"])


def floorbeam(name: str) -> demos.Document:
    """A working with the same section by its parts many times over."""
    part = next(
        one["part"] for one in demos.rate(name)["parts"]
        if one["kind"] == "floorbeam" and one.get("ratings")
    )
    return demos.explain(name, part)


@pytest.mark.parametrize("name", demos.NAMES)
def test_every_formula_with_its_numbers_stands_once(name: str) -> None:
    explain = governing(name)
    said = [
        one.numbers_said for one in working_section(explain).blocks if isinstance(one, Equation)
    ]
    want = {
        (one["equation"], one["with_numbers"])
        for one in steps_of(explain["steps"]) if one["entry"] == "formula"
    }
    assert len(said) == len(want)


def test_a_procedure_with_the_same_steps_stands_once() -> None:
    explain = floorbeam("quillmarsh")
    all_of_them = [
        (one["title"], repr(one["steps"]))
        for one in steps_of(explain["steps"]) if one["entry"] == "procedure"
    ]
    assert len(set(all_of_them)) < len(all_of_them)  # else nothing is tried here
    titles = {title for title, _ in all_of_them}
    said = [
        one.text for one in working_section(explain).blocks
        if isinstance(one, Said) and one.text in titles
    ]
    assert len(said) == len(set(all_of_them))


def test_a_formula_that_runs_on_has_its_title_and_source_over_the_first() -> None:
    explain = floorbeam("quillmarsh")
    blocks = working_section(explain).blocks
    running = [
        (before, one) for before, one in pairwise(blocks)
        if isinstance(one, Equation) and not one.title
    ]
    assert running
    for before, one in running:
        assert isinstance(before, Equation)
        assert (one.source, one.symbols, one.meanings) == ("", "", ())
        assert before.depth == one.depth
