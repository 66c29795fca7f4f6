"""Two changes of one text of a record put together, where neither is in the other's way.

Lines are put together first; what comes out is taken only if it says, beside what the one changed,
exactly what the other did.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher

from eyebar.errors import BadRecord
from eyebar.store.differing import Difference, Nth, differences

Change = tuple[int, int, list[str]]
"""From which line of the base to which, and the lines that now stand there."""


def merged(base: str, theirs: str, yours: str) -> str | None:
    """The base with both changes, theirs before yours where both add at one place.

    None where both changed the same lines, or what comes out would not say what both say.
    """
    lines = base.splitlines(keepends=True)
    changes = sorted(
        [(change[:2], who, change[2]) for who, text in enumerate((theirs, yours))
         for change in _changes(lines, text.splitlines(keepends=True))],
        key=lambda one: one[:2],
    )
    found: list[str] = []
    at = 0
    for (begin, end), _, new in changes:
        if begin < at:
            return None
        found += [*lines[at:begin], *new]
        at = end
    text = "".join([*found, *lines[at:]])
    return text if _says_both(text, base, theirs, yours) else None


def _changes(before: Sequence[str], after: Sequence[str]) -> Iterator[Change]:
    for kind, begin, end, first, last in SequenceMatcher(
        None, before, after, autojunk=False
    ).get_opcodes():
        if kind != "equal":
            yield begin, end, list(after[first:last])


def _says_both(text: str, base: str, theirs: str, yours: str) -> bool:
    """Whether a text says what theirs says with your changes made in it, and no change is told
    by both."""
    try:
        wanted = _said(base, yours)
        return _said(theirs, text) == wanted and not wanted & _said(base, theirs)
    except BadRecord:
        return False


def _said(before: str, after: str) -> Counter[tuple[object, ...]]:
    """What a text says otherwise than another; which of several alike entries is no matter."""
    return Counter(_plain(one) for one in differences(before, after))


def _plain(one: Difference) -> tuple[object, ...]:
    path = tuple(Nth(step.keys, 1) if isinstance(step, Nth) else step for step in one.path)
    return path, repr(one.was), repr(one.now)
