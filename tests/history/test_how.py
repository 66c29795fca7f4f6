"""How a truss works: the facts, against a truss that is solved by hand and against statics."""

import math
from typing import Any

import pytest

from eyebar.history import lines_of
from eyebar.history.how import Loaded, Worked, chord_force, growth_of_diagonal, how
from eyebar.history.webs import webs
from eyebar.terms import Form, Kind
from tests.bridge.forms import form
from tests.documents import demos
from tests.history.solved import LOAD, SOLVABLE, documents

ROOT2 = math.sqrt(2.0)
SPAN = 720.0
RODS = (Kind.BOTTOM_CHORD, Kind.HIP_VERTICAL, Kind.DIAGONAL)


def worked(name: str, kind: Kind, dead: float, *, area: float = 2.0, live: float = 0.0) -> Worked:
    first, last = name.split("-")
    return Worked(
        name=name, kind=kind, ends=(first, last), area=area, modulus=27000.0,
        can_push=kind not in RODS, dead=dead, least=dead - live, greatest=dead + live,
    )


@pytest.fixture(scope="module")
def pratt() -> Loaded:
    """Four panels of 15 ft, 15 ft deep, 10 kip at each inner panel point of the lower chord.

    By hand: 15 kip rest on each end. End posts: -15 sqrt 2. L0-L1 = L1-L2 = 15. Hip verticals 10.
    U1-L2: (15 - 10) sqrt 2. U1-U2: -(15 kip x 30 ft - 10 kip x 15 ft) / 15 ft = -20. U2-L2: 0.
    """
    joints = {f"L{i}": (180.0 * i, 0.0) for i in range(5)}
    joints |= {f"U{i}": (180.0 * i, 180.0) for i in (1, 2, 3)}
    bars = [
        *(worked(name, Kind.BOTTOM_CHORD, 15.0) for name in ("L0-L1", "L1-L2", "L2-L3", "L3-L4")),
        *(worked(name, Kind.TOP_CHORD, -20.0) for name in ("U1-U2", "U2-U3")),
        *(worked(name, Kind.END_POST, -15.0 * ROOT2) for name in ("U1-L0", "U3-L4")),
        *(worked(name, Kind.HIP_VERTICAL, 10.0) for name in ("U1-L1", "U3-L3")),
        worked("U1-L2", Kind.DIAGONAL, 5.0 * ROOT2, live=3.0),
        worked("U3-L2", Kind.DIAGONAL, 5.0 * ROOT2, area=3.0),
        worked("U2-L2", Kind.POST, 0.0),
    ]
    return Loaded(
        joints=joints, bars=tuple(bars), supports=("L0", "L4"),
        loads={"L1": 10.0, "L2": 10.0, "L3": 10.0},
    )


def test_half_of_an_even_load_rests_on_each_end(pratt: Loaded) -> None:
    found = how(pratt)
    assert found.weight == pytest.approx(30.0)
    assert found.rests == pytest.approx({"L0": 15.0, "L4": 15.0})


def test_a_load_at_one_panel_point_rests_by_the_lever(pratt: Loaded) -> None:
    # By hand: 10 kip at a quarter of the span: 7.5 and 2.5.
    one = Loaded(joints=pratt.joints, bars=pratt.bars, supports=("L4", "L0"), loads={"L1": 10.0})
    assert how(one).rests == pytest.approx({"L0": 7.5, "L4": 2.5})


def test_the_moment_over_the_middle_by_its_depth_is_the_upper_chords_push(pratt: Loaded) -> None:
    middle = how(pratt).middle
    assert middle is not None
    # 300 kip-ft over 15 ft: 20 kip. The lower chord there turns about U1: 15 kip, a quarter less.
    assert (middle.moment, middle.depth, middle.push) == pytest.approx((3600.0, 180.0, 20.0))
    assert (middle.upper, middle.lower, middle.near) == ("U1-U2", "L1-L2", ("U1-U2",))


def test_where_no_chord_has_about_that_force_nothing_is_told(pratt: Loaded) -> None:
    other = Loaded(
        joints=pratt.joints, supports=pratt.supports, bars=pratt.bars,
        loads={joint: 2.0 * load for joint, load in pratt.loads.items()},
    )
    assert how(other).middle is None


def test_the_diagonal_that_works_most_keeps_its_panel_from_leaning(pratt: Loaded) -> None:
    panel = how(pratt).panel
    assert panel is not None
    assert (panel.diagonal, panel.corner, panel.high, panel.low) == ("U1-L2", "L1", "U1", "L2")
    # sqrt(181^2 + 180^2) - 180 sqrt 2 = 255.2665 - 254.5584.
    assert panel.stretch == pytest.approx(0.7081, abs=1e-4)
    # (5 sqrt 2 + 3) kip x 254.5584 in / (2 in2 x 27000 ksi).
    assert panel.works == pytest.approx(10.0711 * 254.5584 / 54000.0, rel=1e-4)


def test_kinds_of_two_sizes_are_told_with_the_slight_and_the_stout(pratt: Loaded) -> None:
    (one,) = how(pratt).grown
    assert (one.kind, one.slight, one.stout) == (Kind.DIAGONAL, "U1-L2", "U3-L2")


def test_a_single_web_is_not_told_as_two(pratt: Loaded) -> None:
    assert how(pratt).webs == ()


@pytest.mark.parametrize("count", [8, 9, 10, 11])
def test_the_webs_of_a_double_intersection_pratt_take_turns_along_the_chord(count: int) -> None:
    # By definition: from U1 one diagonal to L2 and one to L3, then over two panels each.
    layout = form(Form.DOUBLE_INTERSECTION_PRATT, count)
    ends = [one.ends for one in layout.bars.values()]
    one, other = webs(lines_of(layout.joints, ends), {})
    half = [f"L{i}" for i in range(2, count // 2 + 1)]
    assert [*one.below] == half[::2]
    assert [*other.below] == half[1::2]


def test_a_web_brings_the_upright_part_of_its_first_bar() -> None:
    # By hand: U1-L2 runs one panel of 180 in and falls 240 in: 3-4-5, so 4/5 of its force; U1-L3
    # runs 360 in and falls 240 in: 240 / sqrt(360^2 + 240^2) = 0.5547.
    layout = form(Form.DOUBLE_INTERSECTION_PRATT, 10)
    ends = {name: one.ends for name, one in layout.bars.items()}
    dead = dict.fromkeys(ends.values(), 0.0) | {ends["U1-L2"]: 10.0, ends["U1-L3"]: 10.0}
    one, other = webs(lines_of(layout.joints, ends.values()), dead)
    assert (one.brings, other.brings) == pytest.approx((8.0, 5.547), abs=1e-3)


def test_what_the_webs_bring_goes_down_the_end_post() -> None:
    # Law: at the hip the upright parts of all bars and the load there are in equilibrium.
    truss: dict[str, Any] = demos.how("quillmarsh")["trusses"][0]
    dead = {one["bar"]: one["dead_kip"] for one in truss["bars"]}
    (x, y), (u, v) = truss["joints"]["L0"], truss["joints"]["U1"]
    down = -dead["U1-L0"] * (v - y) / math.dist((x, y), (u, v))
    load = sum(demos.forces("quillmarsh")["trusses"][0]["dead_loads"]["U1"].values())
    brought = sum(web["brings_kip"] for web in truss["webs"])
    assert down == pytest.approx(brought + dead["U1-L1"] + load, rel=1e-9)


@pytest.mark.parametrize("name", demos.NAMES)
def test_what_rests_on_the_ends_is_what_the_bars_there_bring(name: str) -> None:
    # Law: at a bearing the upright parts of the bars and the load there are the reaction.
    for truss, solved in zip(
        demos.how(name)["trusses"], demos.forces(name)["trusses"], strict=True
    ):
        for joint, kip in truss["rests_kip"].items():
            found = sum(solved["dead_loads"][joint].values())
            for bar in truss["bars"]:
                if joint in bar["ends"]:
                    (other,) = {*bar["ends"]} - {joint}
                    here, there = (truss["joints"][one] for one in (joint, other))
                    found -= bar["dead_kip"] * (there[1] - here[1]) / math.dist(here, there)
            assert kip == pytest.approx(found, rel=1e-6)


@pytest.mark.parametrize("word", SOLVABLE)
def test_every_form_is_told_by_what_statics_says(word: Form) -> None:
    # Laws: equal loads on a mirrored truss rest half and half; a slanting bar changes its length by
    # less than its panel leans; a chord that is told as about moment / depth is within 15 %.
    truss = documents(word)[0]["trusses"][0]
    first, last = truss["rests_kip"].values()
    assert first == pytest.approx(last) == pytest.approx(truss["weight_kip"] / 2.0)
    assert truss["weight_kip"] % LOAD == pytest.approx(0.0)
    assert 0.0 < truss["panel"]["stretch_in"] < 1.0
    bars = {one["bar"]: one for one in truss["bars"]}
    if truss["middle"]:
        push = truss["middle"]["moment_kip_in"] / truss["middle"]["depth_in"]
        for bar in truss["middle"]["near"]:
            assert abs(bars[bar]["dead_kip"]) == pytest.approx(push, rel=0.15)
    assert truss["webs"] == []


def test_the_two_formulas_by_hand() -> None:
    assert chord_force(3600.0, 180.0) == pytest.approx(20.0)
    # 3-4-5: a run of 3 leaning by 1 is 4 beside 4: 4 sqrt 2 - 5.
    assert growth_of_diagonal(3.0, 4.0, 1.0) == pytest.approx(4.0 * ROOT2 - 5.0)
