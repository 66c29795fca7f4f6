"""Whatever is done to a record's text, it is read, or refused with its faults."""

from hypothesis import given, settings
from hypothesis import strategies as st

from eyebar.errors import BadRecord
from tests.record.field_book import SMALL, read

LINES = SMALL.splitlines()
PIECES = st.sampled_from([
    "", ":", "{", "}", "[", "]", "-", "#", "'", "\t", "&a", "*a", "!x", "|", "~", "not measured",
    "1", "-1 in", "nan", "L0..L9", "upstream/U2-L4", "a: b", "\u00bd", "\x00", "section: {}",
    "2020-01-01",
])
WORDS = sorted({word for line in LINES for word in line.replace(",", " ").split()})


@st.composite
def spoilt(draw: st.DrawFn) -> str:
    """The small record with some lines taken out, doubled, moved in, or with a word replaced."""
    lines = list(LINES)
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(lines) - 1))
        match draw(st.integers(0, 4)):
            case 0:
                del lines[at]
            case 1:
                lines.insert(at, lines[draw(st.integers(0, len(lines) - 1))])
            case 2:
                lines[at] = "  " + lines[at]
            case 3:
                words = lines[at].split(" ")
                place = draw(st.integers(0, len(words) - 1))
                words[place] = draw(st.one_of(PIECES, st.sampled_from(WORDS)))
                lines[at] = " ".join(words)
            case _:
                place = draw(st.integers(0, len(lines[at])))
                lines[at] = lines[at][:place] + draw(PIECES) + lines[at][place:]
    return "\n".join(lines)


@settings(deadline=None, max_examples=100)
@given(text=spoilt())
def test_a_spoilt_record_is_read_or_refused_with_lines_and_rules(text: str) -> None:
    try:
        faults, same = (), read(text).text == text
    except BadRecord as bad:
        faults, same = bad.faults, bool(bad.faults)
    assert same
    for fault in faults:
        # `cannot be read` would be another program's words, for a fault that we did not foresee.
        assert fault.rule
        assert not fault.rule.startswith("cannot be read")
        assert fault.line is None or 1 <= fault.line <= len(text.splitlines()) + 1
