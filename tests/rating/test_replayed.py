"""The working of a rating, made again by the same formulas, is the rating to the bit."""

from dataclasses import replace

import pytest

from eyebar.errors import Unknown
from eyebar.formula import Note, Step
from eyebar.rating import replayed
from tests.documents import demos

each = pytest.mark.parametrize("name", demos.NAMES)

FIGURES = (
    "factor", "plain_factor", "tons", "limit_kip", "capacity", "share", "live_factor", "impact",
)


@each
def test_every_rating_replayed_is_the_same_to_the_bit(name: str) -> None:
    one, rating = demos.rated(name)
    replays, alike = 0, set()
    for part in rating.parts:
        for made in part.ratings:
            # Of ratings that are the same in everything, on parts of one kind, one is replayed.
            same = (part.kind, made.vehicle, made.method, made.level, made.check, made.live,
                    made.dead, *(getattr(made, figure) for figure in FIGURES))
            if same in alike:
                continue
            alike.add(same)
            again = replayed(
                one.bridge, part, made, vehicle=one.vehicles[made.vehicle], values=one.values
            )
            differ = [f for f in FIGURES if getattr(again, f) != getattr(made, f)]
            assert not differ, (part.address, made.vehicle, made.method, made.level, differ)
            replays += 1
    assert replays > 1000


@each
def test_the_last_steps_of_a_working_are_the_factor_and_what_comes_of_it(name: str) -> None:
    one, rating = demos.rated(name)
    part = next(part for part in rating.parts if part.ratings)
    made = next(r for r in part.ratings if r.vehicle == "SU4" and r.plain_factor is not None)
    again = replayed(one.bridge, part, made, vehicle=one.vehicles["SU4"], values=one.values)
    results = {
        step.formula.result.meaning: step.result for step in again.steps if isinstance(step, Step)
    }
    assert results["rating factor"] == made.factor
    assert results["plain rating factor"] == made.plain_factor
    assert results["safe load of a vehicle of this shape"] == made.tons
    notes = {step.symbol: step.value for step in again.steps if isinstance(step, Note)}
    assert (notes["s"], notes["gL"], notes["I"]) == (made.share, made.live_factor, made.impact)


def test_a_part_that_is_not_rated_has_no_working_and_says_why() -> None:
    one, rating = demos.rated("wrenmallow")
    rated_part = next(part for part in rating.parts if part.ratings)
    refused = replace(rated_part, not_rated="thickness not measured")
    with pytest.raises(Unknown, match="working of"):
        replayed(
            one.bridge, refused, rated_part.ratings[0], vehicle=one.vehicles["H15"],
            values=one.values,
        )
