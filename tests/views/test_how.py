"""How a truss works in words: the numbers in them, and how hard they are to read."""

import copy
import math
import re

import pytest

from eyebar.views.how import ALIKE, NO_VEHICLE, HowTruss, chapters, how_it_works, title, tons
from tests.documents import demos
from tests.views.reading import grade

Document = demos.Document
each = pytest.mark.parametrize("name", demos.NAMES)


def said(truss: Document) -> str:
    return " ".join(sentence for one in chapters(truss) for sentence in one.sentences)


def trusses(name: str) -> list[Document]:
    found: list[Document] = copy.deepcopy(demos.how(name)["trusses"])
    return found


def views(name: str) -> tuple[HowTruss, ...]:
    return how_it_works(demos.how(name)).trusses


@each
def test_a_twelve_year_old_can_read_it(name: str) -> None:
    # Twelve years are the sixth and seventh school year.
    for truss in trusses(name):
        assert grade(said(truss)) < 6.5
        for one in chapters(truss):
            assert max(map(grade, one.sentences)) < 9.0


def test_tons_are_half_the_kip_whole_from_ten_on() -> None:
    # By hand: a ton is 2,000 lb, two kip.
    assert [tons(one) for one in (19.0, -19.0, 19.96, 20.0, 65.13)] == [
        "9.5", "9.5", "10", "10", "33"
    ]


@each
def test_every_number_in_the_words_is_one_of_the_document(name: str) -> None:
    # Both ways: what is said is in the document, here; what is in the document is said, below.
    for truss in trusses(name):
        panel, middle = truss["panel"], truss["middle"]
        kip = [truss["weight_kip"], *truss["rests_kip"].values()]
        known = {f"{one / 2.0:.1f}" for one in kip}
        for one in truss["bars"]:
            known |= {tons(one[key]) for key in ("dead_kip", "least_kip", "greatest_kip")}
            known |= {f"{one['area_in2']:.1f}", *re.findall(r"\d+", one["bar"])}
        known |= {tons(web["brings_kip"]) for web in truss["webs"]} | {"0"}
        known |= {f"{panel['stretch_in']:.2f}", f"{panel['works_in']:.2f}"}
        known |= {
            f"{middle['moment_kip_in'] / 24.0:.0f}", f"{middle['depth_in'] / 12.0:.1f}",
            tons(middle["chord_kip"]),
        }
        kinds = [one["kind"] for one in truss["bars"]]
        known |= {str(kinds.count(kind)) for kind in kinds}
        known |= {  # kinds of which some are pulled and some slack
            str(sum(one["kind"] == kind and (abs(one["dead_kip"]) < 0.05) is slack
                    for one in truss["bars"]))
            for kind in kinds for slack in (True, False)
        }
        assert set(re.findall(r"\d+(?:\.\d+)?", said(truss))) <= known


@each
def test_the_figures_of_the_document_are_said(name: str) -> None:
    for truss in trusses(name):
        words = said(truss)
        bars = {one["bar"]: one for one in truss["bars"]}
        assert f"{truss['weight_kip'] / 2.0:.1f} tons" in words
        assert f"{truss['panel']['stretch_in']:.2f} inches" in words
        assert f"about {tons(truss['middle']['chord_kip'])} tons" in words
        for bar in truss["middle"]["near"]:
            assert re.search(rf"{bar} is pu\w+ with {tons(bars[bar]['dead_kip'])} tons", words)
        for web in truss["webs"]:
            assert f"{'-'.join(web['first'])} brings {tons(web['brings_kip'])} tons" in words
        for one in truss["grown"]:
            for bar in (one["slight"], one["stout"]):
                assert f"{bars[bar]['area_in2']:.1f}" in words


@each
def test_each_bar_is_counted_once_by_what_the_weight_does_to_it(name: str) -> None:
    for truss in trusses(name):
        counted = re.findall(r"are (pushed|pulled|slack): ([^.]*)\.", said(truss))
        numbers = {
            word: sum(int(one) for one in re.findall(r"\d+", what)) for word, what in counted
        }
        dead = [one["dead_kip"] for one in truss["bars"]]
        assert sum(numbers.values()) == len(dead)
        assert numbers["pushed"] == sum(one <= -0.05 for one in dead)
        assert numbers["pulled"] == sum(one >= 0.05 for one in dead)


def test_two_webs_are_told_where_there_are_two_and_nowhere_else() -> None:
    assert "two webs" in said(trusses("quillmarsh")[0])
    assert "two webs" not in said(trusses("dovetansy")[0])


def test_a_bar_that_works_both_ways_must_be_stiff() -> None:
    truss = trusses("wrenmallow")[0]
    assert "must be stiff" not in said(truss)
    truss["bars"][0] |= {"least_kip": -3.0, "greatest_kip": 4.0}
    assert f"so they must be stiff: {truss['bars'][0]['bar']}." in said(truss)


def test_a_stout_bar_that_works_less_is_asked_about_not_praised() -> None:
    truss = trusses("wrenmallow")[0]
    assert "where the force is" in said(truss)
    stout = next(one for one in truss["bars"] if one["bar"] == truss["grown"][0]["stout"])
    stout |= {"dead_kip": 0.2, "least_kip": 0.0, "greatest_kip": 0.3}
    assert f"{stout['bar']} is the stouter, yet it works less" in said(truss)
    assert "where the force is" not in said(truss)
    truss["grown"] = []
    assert ALIKE in said(truss)


def test_a_panel_that_yields_much_is_not_said_to_keep_its_shape() -> None:
    truss = trusses("wrenmallow")[0]
    truss["panel"]["works_in"] = truss["panel"]["stretch_in"]
    assert "keeps its shape" not in said(truss)
    truss["panel"] = truss["middle"] = None
    assert "Look at" not in said(truss)


def test_where_no_vehicle_is_counted_no_truck_is_told_of() -> None:
    truss = trusses("wrenmallow")[0]
    assert "heaviest truck" in said(truss)
    truss["vehicles"] = []
    assert said(truss).count("truck") == 1
    assert NO_VEHICLE in said(truss)
    assert "The weight changes it by" in said(truss)


def test_trusses_that_are_alike_are_told_once() -> None:
    assert len(views("quillmarsh")) == 1
    assert "upstream and downstream trusses work" in views("quillmarsh")[0].title
    # Its curb stands closer to one truss: what rests on them differs.
    west, east = demos.how("dovetansy")["trusses"]
    assert not math.isclose(west["weight_kip"], east["weight_kip"], rel_tol=1e-3)
    assert [one.title for one in views("dovetansy")] == [title([west]), title([east])]
