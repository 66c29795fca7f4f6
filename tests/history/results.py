"""The table of what the classifier makes of trusses, for docs/how-we-check.md."""

from collections.abc import Iterator
from functools import cache

from eyebar.history import Lines, recognised
from eyebar.terms import Form
from tests.history.public_records import PUBLIC_RECORDS
from tests.history.seen import BEFALLS

OPENING = """## The form of a truss, recognised from its lines

Each form is laid out from its definition in every way that it allows; then something befalls it:
panels of unequal length, the end panels of a skew bridge, joints taped half an inch wrong, counters
that were added, counters that were lost, one half hidden. Each number is how many of the trusses
were called by their form, or named it among the forms that have the same lines; in brackets how
many got the form's own name alone, where those are fewer."""

OF_RECORDS = """### Public records

What public records call bridges that stand or stood, and what their lines are called here. The
lines are drawn from what is said: heights almost never are, so the depth is ours; an asterisk marks
rows where the number of panels is ours too."""


@cache
def right(word: Form, what: str) -> tuple[int, int, int]:
    """(trusses, named at least among those of the same lines, called by the form's own name)."""
    found = [recognised(one) for one in BEFALLS[what](word)]
    return (
        len(found),
        sum(word in (one.form, *one.same_lines) for one in found),
        sum(one.form is word for one in found),
    )


def _cell(word: Form, what: str) -> str:
    trusses, named, called = right(word, what)
    if not trusses:
        return "–"
    own = "" if called == named else f" ({called})"
    return f"{named} of {trusses}{own}"


def called(lines: Lines) -> str:
    """What lines are called, with the forms that have the same."""
    found = recognised(lines)
    if found.form is None:
        return f"none of the known: {'; '.join(found.features)}"
    return ", or ".join((found.form, *found.same_lines))


def _lines() -> Iterator[str]:
    yield OPENING
    yield ""
    yield f"| form | {' | '.join(BEFALLS)} |"
    yield f"|---|{'---|' * len(BEFALLS)}"
    for word in Form:
        yield f"| {word} | {' | '.join(_cell(word, what) for what in BEFALLS)} |"
    yield f"\n{OF_RECORDS}\n"
    yield "| bridge | the record says | its form there | found | source |"
    yield "|---|---|---|---|---|"
    for one in PUBLIC_RECORDS:
        known = one.form or "K, none of ours"
        star = "" if one.counted else " \\*"
        yield f"| {one.bridge}{star} | {one.says} | {known} | {called(one.lines)} | {one.source} |"
    yield ""


def chapter() -> str:
    """The chapter of the page."""
    return "\n".join(_lines())
