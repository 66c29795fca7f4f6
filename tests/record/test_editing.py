import os
from difflib import ndiff
from pathlib import Path

import pytest

from eyebar.errors import BadRecord, Unreadable
from eyebar.record import override_in_file, with_override, write_whole
from eyebar.record.editing import quoted
from tests.record.field_book import SMALL, TODAY, changed, read

THINNER = {"section": {"eyebars": {"thickness": "11/16 in"}}}


def differences(before: str, after: str) -> list[str]:
    """The lines that came (`+ `) and went (`- `)."""
    return [line for line in ndiff(before.splitlines(), after.splitlines()) if line[0] in "+-"]


def test_an_edit_adds_an_override_under_the_parts_own_name_and_touches_nothing_else() -> None:
    edited = with_override(SMALL, "downstream/L3-L2", THINNER, reason="rolled thinner")
    assert differences(SMALL, edited) == [
        "+ overrides:",
        "+   downstream/L2-L3:",
        "+     section:",
        "+       eyebars: {thickness: 11/16 in}",
        "+     reason: rolled thinner",
    ]
    own = read(edited).overrides["downstream/L2-L3"]
    assert own.section is not None
    assert own.section.eyebars is not None
    assert str(own.section.eyebars.thickness) == "11/16 in"


def test_a_second_part_stands_below_the_first() -> None:
    once = with_override(SMALL, "downstream/L2-L3", THINNER, reason="one")
    twice = with_override(once, "downstream/L3-L4", {"pin offset": "1/4 in"}, reason="two")
    assert differences(once, twice) == ["+   downstream/L3-L4: {pin offset: 1/4 in, reason: two}"]
    assert read(twice).overrides.keys() == {"downstream/L2-L3", "downstream/L3-L4"}


def test_a_field_that_is_overridden_already_gets_the_new_value_in_its_place() -> None:
    once = with_override(SMALL, "downstream/L2-L3", THINNER, reason="one")
    again = with_override(
        once, "downstream/L3-L2",
        {"section": {"eyebars": {"thickness": "5/8 in", "head": "6 in"}}}, reason="two",
    )
    assert [line for line in differences(once, again) if line[0] == "+"] == [
        "+       eyebars: {thickness: 5/8 in, head: 6 in}", "+     reason: two",
    ]
    assert len(read(again).overrides) == 1


def test_an_empty_block_of_overrides_begins_below_its_key_and_keeps_its_comment() -> None:
    text = changed(("\ninspections:", "\noverrides: {}   # none so far\n\ninspections:"))
    edited = with_override(text, "downstream/L2-L3", THINNER, reason="one")
    assert differences(text, edited)[:3] == [
        "- overrides: {}   # none so far", "+ overrides:   # none so far",
        "+   downstream/L2-L3:",
    ]
    assert read(edited).overrides.keys() == {"downstream/L2-L3"}


def test_overrides_in_braces_are_continued_in_braces() -> None:
    text = SMALL + "overrides: {upstream/L3-L2: {pin offset: 1 in, reason: a}} # comment\n"
    edited = with_override(text, "upstream/L2-L3", {"material": "iron"}, reason="b")
    assert edited == text.replace("reason: a}", "reason: b, material: iron}")
    edited = with_override(text, "upstream/L3-L4", {"material": "iron"}, reason="b")
    assert edited == text.replace(
        "reason: a}}", "reason: a}, upstream/L3-L4: {material: iron, reason: b}}"
    )


def test_windows_line_ends_and_a_missing_last_line_end_are_kept() -> None:
    windows = SMALL.replace("\n", "\r\n")
    edited = with_override(windows, "upstream/L2-L3", THINNER, reason="one")
    assert edited.startswith(windows)
    assert edited.count("\n") == edited.count("\r\n")
    cut = SMALL.rstrip("\n")
    assert with_override(cut, "upstream/L2-L3", THINNER, reason="one").startswith(SMALL)


def test_what_cannot_be_edited_safely_is_refused() -> None:
    # The override is written by an anchor: changing it here would change the other part as well.
    text = SMALL + (
        "overrides:\n  upstream/L2-L3: &same {pin offset: 1 in, reason: a}\n"
        "  upstream/L3-L4: *same\n"
    )
    with pytest.raises(BadRecord) as bad:
        with_override(text, "upstream/L3-L4", {"pin offset": "2 in"}, reason="b")
    assert bad.value.faults[0].cure == "edit the file by hand"
    with pytest.raises(Unreadable):
        with_override(SMALL, "L2-L3", {"pin offset": "2 in"}, reason="b")


def test_an_edit_that_would_make_a_bad_record_is_not_written(tmp_path: Path) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_text(SMALL, encoding="utf-8")
    for part, differing in (
        ("upstream/L2-L3", {"section": {"eyebars": {"thickness": "11/16"}}}),
        ("upstream/L2-L33", THINNER),
        ("upstream/L2-L3", {"colour": "green"}),
        # The reading of 2020 says 11/16 in, which is more than 1/2 in could ever be.
        ("upstream/L2-L3", {"section": {"eyebars": {"thickness": "1/2 in"}}}),
    ):
        with pytest.raises(BadRecord):
            override_in_file(path, part, differing, reason="no", today=TODAY)
        assert path.read_text(encoding="utf-8") == SMALL
    assert list(tmp_path.iterdir()) == [path]


def test_an_edit_of_a_file_gives_the_record_that_stands_there_now(tmp_path: Path) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_text(SMALL, encoding="utf-8")
    path.chmod(0o640)
    record = override_in_file(path, "upstream/L3-L4", THINNER, reason="thin", today=TODAY)
    assert record.text == path.read_text(encoding="utf-8")
    assert record.overrides["upstream/L3-L4"].reason == "thin"
    assert path.stat().st_mode & 0o777 == 0o640
    assert list(tmp_path.iterdir()) == [path]


def test_a_file_keeps_its_old_text_when_writing_is_cut_short(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_text("old", encoding="utf-8")

    def full(_: int) -> None:
        raise OSError(28, "no space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        write_whole(path, "new")
    assert path.read_text(encoding="utf-8") == "old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    ("text", "scalar"),
    [
        ("3 1/2 in", "3 1/2 in"), ("upstream/U2-L4", "upstream/U2-L4"), ("plain", "plain"),
        ("it's", "it's"), ("a: b", "'a: b'"), ("a #b", "'a #b'"), ("a, b", "'a, b'"),
        ("don't, please", "'don''t, please'"), ("", "''"), ("null", "'null'"), ("~", "'~'"),
        (" a", '" a"'), ("a\nb", '"a\\u000ab"'), ('15\'-7"', "15'-7\""), ("- a", "'- a'"),
        ("*a", "'*a'"), ("a:", "'a:'"),
    ],
)
def test_a_text_is_quoted_only_where_it_must_be(text: str, scalar: str) -> None:
    assert quoted(text) == scalar
