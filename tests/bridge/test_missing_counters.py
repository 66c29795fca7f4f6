"""Where a truss finds no equilibrium the counter that is missing is named, and adding it helps."""

import pytest

from eyebar.documents.forces import forces_document
from eyebar.errors import Unstable
from eyebar.record import record_of
from eyebar.terms import Form, RoadPlace, SubMembers
from tests.bridge.begun_bridges import TODAY, begun_text

TIES = {"sub_members": SubMembers.TIES}
MOST = 12
"""Counters that such a truss may need in all."""


def named(word: Form, panels: int, counters: list[str], how: dict[str, object]) -> set[str]:
    """The counters that are said to be missing, none where every vehicle finds equilibrium.

    A counter that the form has no place for is refused by `begun_text`.
    """
    text = begun_text(word, panels, counters=", ".join(counters), **how)
    try:
        (truss, *_) = forces_document(record_of(text, file="b.yaml", today=TODAY))["trusses"]
    except Unstable as fall:
        return {_counter(str(fall))}
    return {_counter(one["reason"]) for one in truss["no_equilibrium"].values()}


def _counter(sentence: str) -> str:
    return sentence.partition("a counter ")[2].partition(" would hold it")[0]


@pytest.mark.parametrize(
    ("word", "panels", "how"),
    [
        (Form.BALTIMORE, 8, {}), (Form.BALTIMORE, 12, TIES),
        (Form.BALTIMORE, 10, {"place": RoadPlace.DECK}), (Form.PENNSYLVANIA, 8, {}),
        (Form.PENNSYLVANIA, 12, TIES), (Form.PARKER, 7, {}), (Form.HALF_HIP_PRATT, 6, {}),
        (Form.DOUBLE_INTERSECTION_PRATT, 11, {}),
    ],
    ids=str,
)
def test_a_truss_with_the_counters_that_are_named_finds_equilibrium(
    word: Form, panels: int, how: dict[str, object]
) -> None:
    counters: list[str] = []
    while missing := named(word, panels, counters, how) - {*counters}:
        assert "" not in missing
        counters += sorted(missing)
        assert len(counters) <= MOST
    assert counters
    assert named(word, panels, counters, how) == set()


def test_of_a_halved_panel_a_half_of_its_other_diagonal_is_missing() -> None:
    # By hand: eight half panels of a Pennsylvania truss; between L3 and L4 the shear is turned
    # round under dead load already. M5-L4 cannot push; its strut M5-L6 is there, so U4-M5 lacks.
    assert named(Form.PENNSYLVANIA, 8, [], {}) == {"U4-M5"}
