"""What is said beside the limits: slenderness in pull, details prone to fatigue."""

import pytest

from eyebar.sections.shapes import Loops, Rod, Rods, RodShape, Thread
from eyebar.terms import Level, Method
from tests.resistance.bars import LACED, bar, eyebars, given, limits_of, office

OPERATING = (Method.LOAD_FACTOR, Level.OPERATING)
BODY = "yield of the body"


def remarks(one: object, **more: object) -> tuple[str, ...]:
    return limits_of(bar(one, **more), *OPERATING)[BODY].remarks  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("radius", "can_push", "remark"),
    [
        # By hand, 180 in: 180 / 0.8 = 225; 180 / 1.2 = 150; 180 / 1.5 = 120.
        (0.8, False, "slenderness 225 over 200, the limit in pull"),
        (1.2, True, "slenderness 150 over 140, the limit where a pull turns into a push"),
        (1.2, False, None),
        (1.5, True, None),
    ],
)
def test_slender_members_in_pull_are_remarked_on(
    radius: float, can_push: bool, remark: str | None
) -> None:
    section = given(4.0, radius, radius, top=1.0, bottom=1.0, side=1.0)
    found = [one for one in remarks(section, can_push=can_push) if one.startswith("slender")]
    assert found == ([] if remark is None else [remark])


def test_eyebars_rods_and_bars_without_a_radius_are_exempt() -> None:
    assert not any("slender" in one for one in remarks(eyebars(1), can_push=False))
    unknown = given(4.0, 1.0, 1.0)
    assert not any("slender" in one for one in remarks(unknown, can_push=False))


def rod(**more: object) -> Rods:
    sizes = {"shape": RodShape.ROUND, "size": 1.25, "root_diameter": 1.1, **more}
    return Rods(rods=(Rod(**sizes),))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("section", "name"),
    [
        (eyebars(2), "forged heads of eyebars"),
        (rod(looped=True), "forge-welded loops"),
        (rod(threads=Thread.CUT), "threads cut into the body"),
        (rod(threads=Thread.PLAIN), "threads on ends not upset"),
    ],
)
def test_details_prone_to_fatigue_are_named_on_every_limit_in_pull(
    section: object, name: str
) -> None:
    found = limits_of(
        bar(section, can_push=False), *OPERATING  # type: ignore[arg-type]
    )
    for limit in found.values():
        assert f"prone to fatigue, not rated here: {name}" in limit.remarks


def test_a_welded_repair_is_named_in_its_own_words() -> None:
    found = remarks(LACED, welded="doubler at mid-length, 1978")
    assert "prone to fatigue, not rated here: welded later (doubler at mid-length, 1978)" in found
    assert not any("fatigue" in one for one in remarks(LACED))


def test_an_upset_rod_without_loops_has_nothing_to_flag() -> None:
    assert remarks(rod(threads=Thread.UPSET, root_diameter=1.4), can_push=False) == ()


def test_bent_loops_are_named_where_the_office_rates_them() -> None:
    bent = bar(rod(looped=True, loops=Loops.BENT), can_push=False)
    found = limits_of(bent, *OPERATING, values=office(loop_rod__bent=0.5))["bent loop"]
    assert "prone to fatigue, not rated here: bent loops" in found.remarks
