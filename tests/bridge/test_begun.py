"""A record begun from a form and a few sizes: in order from its first line, and full of questions.
"""

from dataclasses import replace

import pytest

from eyebar.bridge.begun import Beginning, begun
from eyebar.bridge.form_rules import FORMS
from eyebar.bridge.state import bridge_on
from eyebar.documents.check import check_document
from eyebar.documents.forces import forces_document
from eyebar.documents.rate import rate_document
from eyebar.errors import BadRecord, NotMeasured, Unstable
from eyebar.office import office_values
from eyebar.record import Record, not_measured, record_of
from eyebar.record.form_words import SUBDIVIDED
from eyebar.terms import CurveShape, EndPosts, Form, RoadPlace, SubMembers
from tests.bridge.begun_bridges import TODAY, beginning
from tests.bridge.filled import filled
from tests.bridge.forms import called, form

LACK_COUNTERS = {(Form.PENNSYLVANIA, RoadPlace.THROUGH)}
"""By hand, eight half panels with W on each: between L3 and L4 the shear is 0.5 W, and the upper
chord, which falls 3 ft in 30 ft and carries 8 W x 15 ft / 20 ft = 6 W, takes 0.6 W of it: the lower
half of the diagonal would be pushed. An eyebar cannot, and no counter is recorded."""
DECKS = tuple(
    word for word in Form if word not in (Form.HALF_HIP_PRATT, Form.BOWSTRING)
)


def read(text: str) -> Record:
    return record_of(text, file="begun.yaml", today=TODAY)


def counts(word: Form) -> list[int]:
    rule = FORMS[word]
    step = 2 if rule.even else 1
    return list(range(max(rule.least, min(3, rule.most)), min(rule.most, 12) + 1, step))


def places(word: Form) -> list[RoadPlace]:
    return list(RoadPlace) if word in DECKS else [RoadPlace.THROUGH, RoadPlace.PONY]


@pytest.mark.parametrize("word", Form)
def test_what_is_begun_is_a_record_without_a_fault_of_the_forms_own_bars(word: Form) -> None:
    for place in places(word):
        # A pony differs from a through bridge in its comments alone.
        for count in counts(word)[:: 4 if place is RoadPlace.PONY else 1]:
            record = read(begun(beginning(word, count, place=place), TODAY))
            bridge = bridge_on(record, None, office_values())
            assert bridge.on == TODAY
            for truss in bridge.trusses:
                kinds = {bar.kind for bar in truss.bars}
                assert len(kinds) >= 3
                assert all(bar.not_rated for bar in truss.bars)


@pytest.mark.parametrize("word", Form)
def test_check_passes_with_questions_and_rate_answers_not_rated(word: Form) -> None:
    count = counts(word)[0]
    for place in places(word):
        record = read(begun(beginning(word, count, place=place), TODAY))
        checked = check_document(record)
        asked = {what for part in checked["not_measured"] for what in part["what"]}
        assert {"year", "skew", "spacing", "clear width", "curb to upstream truss",
                "deck thickness", "surfacing thickness", "number of stringers",
                "weight of floorbeams", "weight of railing", "weight of bracing"} <= asked
        rated = rate_document(record)
        assert all(part["not_rated"] for part in rated["parts"])
        assert rated["posting"]["provisional"]
        assert rated["posting"]["governed_by"] is None
        assert rated["posting"]["exact_tons"] is None
        assert not rated["posting"]["closed"]
        with pytest.raises(NotMeasured, match="distance between the trusses"):
            forces_document(record)


@pytest.mark.parametrize("word", Form)
def test_every_size_of_every_bar_is_a_question(word: Form) -> None:
    # By the rule that what is not measured is not assumed.
    record = read(begun(beginning(word, counts(word)[-1]), TODAY))
    asked = [one.part for one in not_measured(record)]
    bridge = bridge_on(record, None, office_values())
    for truss in bridge.trusses:
        for bar in truss.bars:
            assert bar.address in asked


@pytest.mark.parametrize("word", Form)
def test_once_every_question_is_answered_the_bridge_is_rated_or_refused_by_name(
    word: Form,
) -> None:
    # A truss without the counters that it needs finds no equilibrium: that is said, not crashed.
    for place in places(word)[::2]:
        record = read(filled(begun(beginning(word, counts(word)[0], place=place), TODAY)))
        assert not_measured(record) == ()
        if (word, place) in LACK_COUNTERS:
            with pytest.raises(Unstable, match="finds no equilibrium under its dead load"):
                rate_document(record)
            continue
        rated = rate_document(record)
        assert rated["posting"]["governed_by"] is not None
        unrated = [part["part"] for part in rated["parts"] if part.get("not_rated")]
        assert not [part for part in unrated if "-" in part]


def test_an_open_queen_post_is_refused_by_the_joint_that_can_move() -> None:
    # By hand: without diagonals the middle panel shears; a pin joint has nothing against it.
    text = filled(begun(beginning(Form.QUEEN_POST, 3), TODAY))
    start = text.index("  counters:\n    kind: counter")
    end = text.index("\n\nfloor:")
    opened = text[:start].rstrip() + text[end:]
    opened = opened.replace("counters: [U1-L2, U2-L1]", "counters: []")
    assert "U1-L2" not in opened
    with pytest.raises(Unstable, match="can move") as refused:
        forces_document(read(opened))
    assert refused.value.joint in {"U1", "U2", "L1", "L2"}
    assert any("open middle panel" in rule for rule in check_document(read(opened))["rules"])
    assert not any("open middle panel" in rule for rule in check_document(read(text))["rules"])


def test_the_text_says_what_was_asked_and_where_it_guessed() -> None:
    text = begun(
        beginning(Form.HALF_HIP_PRATT, 4, name="Alder: bridge", built="1901", spacing="15 ft",
                  clear_width="13 ft", place=RoadPlace.PONY), TODAY)
    record = read(text)
    assert record.name == "Alder: bridge"
    assert record.built == 1901
    assert record.trusses.hip is not None
    assert record.trusses.hip.text == "7 ft 6 in"
    assert "taken as half a panel: measure it" in text
    assert "nothing joins the upper chords" in text
    assert text.splitlines()[0] == "eyebar: 1"
    assert text.endswith("\n")


def test_nothing_that_was_not_told_has_a_size() -> None:
    # By hand: of the lines with a unit of length only those that were asked for, and the weights
    # of timber and gravel by volume.
    lines = [line for line in begun(beginning(Form.PRATT, 6), TODAY).splitlines()
             if " ft" in line.split("#")[0] or " in" in line.split("#")[0].replace("in ", "")]
    assert [line.split(":")[0].strip() for line in lines if "lb/ft3" not in line] == [
        "panels", "depth"]


def test_a_subdivided_deck_that_hangs_is_begun_like_any_other() -> None:
    text = begun(
        beginning(Form.PENNSYLVANIA, 8, place=RoadPlace.DECK, sub_members=SubMembers.TIES), TODAY)
    trusses = read(text).trusses
    assert trusses.end_posts is EndPosts.NONE
    assert trusses.sub_members is SubMembers.TIES
    assert set(called(form(Form.BALTIMORE, 8), "post"))  # the forms of the tests are the program's
    assert SUBDIVIDED[1] is Form.PENNSYLVANIA


def test_unequal_panels_and_counters_are_taken_as_they_are_written() -> None:
    of = replace(beginning(Form.PRATT, 4), panels="14 ft 6 in, 15 ft, 15 ft, 14 ft 6 in",
                 counters="L1-U2, U2-L3")
    trusses = read(begun(of, TODAY)).trusses
    assert [panel.text for panel in trusses.panels or ()] == [
        "14 ft 6 in", "15 ft", "15 ft", "14 ft 6 in"]
    assert trusses.counters == ("U2-L1", "U2-L3")


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ({"panels": "6"}, "panels: '6' gives no panels"),
        ({"panels": "6 at 15"}, "panels: '15' has no unit"),
        ({"panels": "6 at 100 ft"}, "panels: '100 ft' is no panel of a truss: from 4 to 60 ft"),
        ({"panels": "2 at 15 ft"}, "panels: '2' panels must be 3 or more"),
        ({"depth": "20"}, "depth: '20' has no unit"),
        ({"depth": "2 ft"}, "depth: '2 ft' is no depth of such a truss: from 3 to 90 ft"),
        ({"depth": "-20 ft"}, "depth: '-20 ft'"),
        ({"counters": "U2-L4"}, "counters: 'U2-L4' is no counter of this form"),
        ({"counters": "U2"}, "counters > 0: 'U2' is not the name of a bar"),
        ({"rise": "4 ft"}, "curve: has no place in a Pratt truss"),
        ({"hip": "6 ft"}, "needed of a half-hip truss, and of no other"),
        ({"spacing": "wide"}, "spacing: 'wide'"),
        ({"form": Form.PARKER}, "curve: has no rise"),
        ({"form": Form.PARKER, "rise": "20 ft"}, "leaves nothing of the depth of '20 ft'"),
        ({"form": Form.BOWSTRING, "rise": "4 ft"}, "is the whole depth of a bowstring truss"),
        ({"form": Form.BOWSTRING, "place": RoadPlace.DECK}, "floor: 'on the upper chord' must be"),
        ({"form": Form.CAMELBACK, "rise": "4 ft", "shoulder": "U9"}, "needs the joint from which"),
        ({"form": Form.PARKER, "rise": "4 ft", "shoulder": "U2"}, "belongs to five slopes alone"),
        ({"form": Form.HALF_HIP_PRATT, "hip": "16 ft"}, "less than the end panel's 15 ft"),
    ],
)
def test_senseless_sizes_are_refused_with_the_cure(how: dict[str, object], said: str) -> None:
    of = replace(
        Beginning(form=Form.PRATT, panels="6 at 15 ft", depth="20 ft"), **how)
    with pytest.raises(BadRecord) as refused:
        begun(of, TODAY)
    sentence = str(refused.value)
    assert said in sentence
    assert "; " in sentence


def test_all_that_is_senseless_is_told_at_once() -> None:
    of = Beginning(form=Form.PRATT, panels="6 at 15", depth="20", curve=CurveShape.CIRCLE)
    with pytest.raises(BadRecord) as refused:
        begun(of, TODAY)
    assert len(refused.value.faults) >= 2
