"""Who may cross without conditions: the same as the whole board says, for one more rating."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from eyebar.bridge.parts import Bridge
from eyebar.rating import first_answers as module
from eyebar.rating import rated_bridge
from eyebar.rating.crossing import Crossing, Rater, crossings
from eyebar.rating.first_answers import NOT_ALL_OVER, NOT_LOOKED_FOR, first_answers
from eyebar.rating.kept import kept_for
from eyebar.terms import Answer, Combine, Condition
from eyebar.vehicles import Vehicle
from tests.rating.test_crossing import POSTING, SHIPPED, VALUES, everyday, made

LIGHT = everyday("cart", (4.0, 4.0), (10.0,))
MIDDLING = everyday("lorry", (8.0, 20.0), (12.0,))
HEAVY = everyday("crawler", (60.0, 60.0), (10.0,))
WIDE = everyday("header", (6.0, 6.0), (8.0,), width_ft=24.0)
(HERD, *_) = [one for one in SHIPPED.values() if one.combine is Combine.AREA]
ALL = (LIGHT, MIDDLING, HEAVY, WIDE, HERD)


def answered(of: Bridge, *asked: Vehicle) -> list[Crossing]:
    kept = kept_for(of, VALUES)
    rating = rated_bridge(of, VALUES, POSTING, kept)
    return list(first_answers(of, rating, kept, asked))


def test_they_are_those_of_the_whole_board_by_the_same_parts_and_factors() -> None:
    # The other way: the board that looks for conditions rates everything from the beginning.
    of = made()
    whole = crossings(of, VALUES, ALL, POSTING).crossings
    for first, last in zip(answered(of, *ALL), whole, strict=True):
        assert first.posted == last.posted
        if first.vehicle.combine is Combine.AREA:
            assert (first.answer, first.reason) == (Answer.NO, NOT_ALL_OVER)
            continue
        assert (first.by and first.by.factor) == (last.by and last.by.factor)
        if first.answer is Answer.NO and first.reason == NOT_LOOKED_FOR:
            assert last.answer is not Answer.YES
        else:
            assert (first.answer, first.reason) == (last.answer, last.reason)
            assert first.ways == last.ways


def test_what_only_the_sign_holds_off_crosses_with_a_permit() -> None:
    of = made()
    kept = kept_for(of, VALUES)
    rating = rated_bridge(of, VALUES, POSTING, kept)
    low = replace(rating, posting=replace(rating.posting, single_tons=3, closed=False))
    (answer,) = first_answers(of, low, kept, [LIGHT])  # 4 tons
    assert answer.answer is Answer.CONDITIONS
    assert [must.condition for must in answer.ways[0].conditions] == [Condition.PERMIT]


@pytest.mark.parametrize("closed", [True, None])
def test_over_a_bridge_that_may_have_to_be_closed_nothing_is_rated(
    closed: bool | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    of = made()
    kept = kept_for(of, VALUES)
    rating = rated_bridge(of, VALUES, POSTING, kept)
    shut = replace(rating, posting=replace(rating.posting, closed=closed))

    class Never(Rater):
        def least(self, vehicles: Sequence[object], use: object) -> list[object]:
            assert not vehicles
            return []

    monkeypatch.setattr(module, "Rater", Never)
    answers = first_answers(of, shut, kept, ALL)
    assert {one.answer for one in answers} == {Answer.NO}
    assert all("closed" in one.reason for one in answers)
