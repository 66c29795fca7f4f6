"""Where a record and its form of truss do not agree: all of it at once, with line and cure."""

from tests.bridge.plain import PLAIN, refused


def line_of(text: str) -> int:
    return next(n for n, line in enumerate(PLAIN.splitlines(), 1) if text in line)


def test_a_bar_that_the_form_has_not_is_refused_with_its_line() -> None:
    said = refused(("bars: [U1-L2, U5-L4]", "bars: [U1-L2, U5-L4, U2-L4]"))
    assert f"plain.yaml:{line_of('bars: [U1-L2, U5-L4]')}: members > diagonals > bars" in said
    assert "'U2-L4' is no bar of a Pratt truss of 6 panels" in said


def test_bars_that_no_group_has_are_all_named() -> None:
    said = refused(("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U3-L3]"))
    assert said.count("has no group for U2-L2, U4-L4") == 1


def test_a_bar_that_one_truss_alone_lacks_is_named_with_its_truss() -> None:
    said = refused(("    kind: counter\n", "    kind: counter\n    truss: right\n"))
    assert "has no group for U3-L2, U3-L4 of the left truss" in said


def test_a_kind_that_does_not_fit_the_form_is_refused() -> None:
    said = refused(("kind: hip vertical", "kind: post"))
    assert "'post' is not what U1-L1, U5-L5 are: hip verticals" in said
    alone = ("  hip verticals:", "  the other:\n    kind: post\n    bars: [U5-L5]\n    section: {"
             "plates: [2 in x 1 in]}\n    material: iron\n  hip verticals:")
    said = refused(("bars: [U1-L1, U5-L5]", "bars: [U1-L1]"), alone)
    assert "'post' is not what U5-L5 is: a hip vertical" in said


def test_a_kind_that_is_no_bar_is_refused() -> None:
    assert "'floorbeam'" in refused(("kind: hip vertical", "kind: floorbeam"))


def test_a_counter_that_crosses_no_panel_is_refused() -> None:
    said = refused(("counters: [U3-L2, U3-L4]", "counters: [U3-L2, U3-L4, U5-L2]"),
                   ("bars: [U3-L2, U3-L4]", "bars: [U3-L2, U3-L4, U5-L2]"))
    assert "'U5-L2' is no counter of a Pratt truss of 6 panels" in said


def test_too_few_panels_for_the_form_are_refused() -> None:
    said = refused(
        ("form: Pratt", "form: double-intersection Pratt"),
        ("panels: 6 at 15 ft", "panels: 5 at 15 ft"), ("bars: [L0..L6]", "bars: [L0..L5]"),
        ("bars: [U1..U5]", "bars: [U1..U4]"), ("bars: [U1-L0, U5-L6]", "bars: [U1-L0, U4-L5]"),
        ("bars: [U1-L1, U5-L5]", "bars: [U1-L1, U4-L4]"),
        ("bars: [U2-L2, U3-L3, U4-L4]", "bars: [U2-L2, U3-L3]"),
        ("bars: [U1-L2, U5-L4]", "bars: [U1-L2]"),
        ("lateral points: [U1, U2, U3, U4, U5]", "lateral points: [U1, U4]"),
    )
    assert "'5' panels must be 6 or more for this form" in said


def test_a_depth_that_is_missing_is_named() -> None:
    said = refused(("depth: 20 ft", "depths: {U1: 16 ft, U2: 18 ft, U3: 20 ft, U4: 18 ft}"))
    assert "gives no depth at U5" in said


def test_an_eyebar_that_is_said_to_push_is_refused() -> None:
    said = refused(("    bars: [L0..L6]\n", "    bars: [L0..L6]\n    can push: true\n"))
    assert "eyebars and rods only pull" in said


def test_given_properties_must_tell_whether_they_push() -> None:
    section = "      rods: {number: 2, diameter: 1 in, shape: round, threads: none}\n"
    said = refused((section, "      given: {area: 3 in2, source: a drawing}\n"))
    assert "does not tell whether U2-L3, U4-L3 can push" in said


def test_curbs_that_do_not_fit_between_the_trusses_are_refused() -> None:
    said = refused(("clear width: 16 ft", "clear width: 14 ft"))
    assert "the curbs leave 16 ft between them" in said


def test_all_faults_come_at_once_in_the_order_of_their_lines() -> None:
    said = refused(("kind: hip vertical", "kind: post"),
                   ("clear width: 16 ft", "clear width: 14 ft"),
                   ("bars: [U1-L0, U5-L6]", "bars: [U1-L0]"))
    # By hand: U5-L6 is missing under `members`, the kind stands below it, the width at the end.
    assert [int(one.split(":")[1]) for one in said.splitlines()] == [
        line_of("members:"), line_of("kind: hip vertical"), line_of("clear width"),
    ]


def test_a_fault_of_both_trusses_is_told_once() -> None:
    said = refused(("kind: hip vertical", "kind: post"))
    assert said.count("U1-L1") == 1


def test_pieces_of_a_built_up_bar_cannot_be_taken_apart() -> None:
    said = refused((
        "decisions: []",
        "decisions:\n  - {date: 2021-01-01, what: loose, part: left/U2-L2, pieces: [1]}",
    ))
    assert "'1' cannot be loose by itself: its 2 pieces are tied together" in said
