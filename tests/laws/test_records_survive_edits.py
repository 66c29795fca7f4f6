"""File -> record -> file is an identity, and an edit leaves every other line as it was."""

from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.record import Record, with_override
from eyebar.record.editing import quoted
from eyebar.record.tree import tree_of
from tests.record.field_book import SMALL, read

BARS = ("L0-L1", "L3-L2", "L5-L6", "L4-L3")
PARTS = st.builds(
    lambda truss, bar: f"{truss}/{bar}", st.sampled_from(["upstream", "downstream"]),
    st.sampled_from(BARS),
)
REASONS = st.text(min_size=1, max_size=40).filter(lambda text: text.strip() != "")
SIXTEENTHS = st.integers(12, 40).map(lambda n: f"{n}/16 in")
FIELDS = st.one_of(
    st.builds(lambda size: {"section": {"eyebars": {"thickness": size}}}, SIXTEENTHS),
    st.builds(
        lambda width, head: {"section": {"eyebars": {"width": width, "head": head}}},
        SIXTEENTHS, st.integers(3, 12).map(lambda n: f"{n} in"),
    ),
    st.builds(lambda offset: {"pin offset": offset}, SIXTEENTHS),
    st.builds(lambda words: {"note": words}, REASONS),
    st.just({"material": "iron"}),
)
EDITS = st.lists(st.tuples(PARTS, FIELDS, REASONS), min_size=1, max_size=3)
STARTS = st.sampled_from([
    SMALL,
    SMALL + "overrides: {}\n",
    SMALL + "overrides:   # by the program\n",
    SMALL + "overrides: {upstream/L3-L2: {pin offset: 1 in, reason: a}}  # c\n# the end",
    SMALL.replace("floor:\n", "overrides:\n  upstream/L0-L1:\n    reason: a\n    # why\n"
                  "    pin offset: 1 in\n\nfloor:\n"),
    SMALL.replace("\n", "\r\n"),
])


def edited(text: str, edits: list[tuple[str, dict[str, object], str]]) -> str:
    for part, differing, reason in edits:
        text = with_override(text, part, differing, reason=reason)  # type: ignore[arg-type]
    return text


@settings(deadline=None, max_examples=30)
@given(start=STARTS, edits=EDITS)
def test_a_record_that_was_edited_gives_back_the_text_it_was_read_from(
    start: str, edits: list[tuple[str, dict[str, object], str]]
) -> None:
    text = edited(start, edits)
    record = read(text)
    assert record.text == text
    assert read(record.text) == record


@settings(deadline=None, max_examples=30)
@given(start=STARTS, edits=EDITS)
def test_every_line_outside_the_overrides_is_left_as_it_was(
    start: str, edits: list[tuple[str, dict[str, object], str]]
) -> None:
    # Condition: the lines of the block of overrides itself may change; comments in it stay.
    text = edited(start, edits)
    before, after = start.splitlines(), text.splitlines()
    kept = [line for line in before if "overrides:" not in line and "upstream/L" not in line
            and "reason:" not in line and "pin offset:" not in line]
    rest = iter(after)
    assert all(line in rest for line in kept), "a line went, or lost its place"


@settings(deadline=None, max_examples=30)
@given(edits=EDITS)
def test_the_last_edit_of_a_field_is_what_the_record_says(
    edits: list[tuple[str, dict[str, object], str]]
) -> None:
    record: Record = read(edited(SMALL, edits))
    part, differing, reason = edits[-1]
    own = record.overrides["/".join((part.split("/")[0], "-".join(sorted(part[-5:].split("-")))))]
    assert own.reason == reason
    if "pin offset" in differing:
        assert str(own.pin_offset) == differing["pin offset"]
    if "note" in differing:
        assert own.note == differing["note"]


@given(text=st.text(st.characters(exclude_categories=["Cs"]), max_size=60))
def test_a_text_in_quotes_is_read_back_as_it_was(text: str) -> None:
    for yaml in (f"a: {quoted(text)}\n", f"a: {{b: {quoted(text)}, c: d}}\n"):
        tree, faults = tree_of(yaml)
        assert tree is not None
        assert faults == ()
        plain = tree.plain()
        assert isinstance(plain, dict)
        found = plain["a"]
        assert (found["b"] if isinstance(found, dict) else found) == text
