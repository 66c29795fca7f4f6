"""Lines of trusses for these tests: laid out by form, seen in part, or drawn joint by joint."""

from collections.abc import Iterator, Sequence

from eyebar.bridge.forms import Layout
from eyebar.history import Lines, lines_of
from eyebar.terms import Form
from tests.bridge.forms import counts, form, ways

Case = tuple[Form, int, dict[str, object]]


def cases(most: int = 16) -> Iterator[Case]:
    """Every form, in every way it may end and carry its floor, of every number of panels."""
    for word in Form:
        for way in ways(word):
            for count in counts(word, most):
                yield word, count, way


def seen(layout: Layout) -> Lines:
    """What one sees of a layout: joints and bars, without names that tell anything."""
    number = {joint: f"joint {i}" for i, joint in enumerate(sorted(layout.joints, key=hash))}
    return lines_of(
        {number[joint]: at for joint, at in layout.joints.items()},
        ((number[a], number[b]) for a, b in (one.ends for one in layout.bars.values())),
    )


def of_form(word: Form, panels: Sequence[float] | int, **how: object) -> Lines:
    """The lines of a form."""
    return seen(form(word, panels, **how))


def drawn(upper: dict[str, tuple[float, float]], pairs: str) -> Lines:
    """Lines from joints and bars typed as `A-B C-D`."""
    return lines_of(upper, (tuple(pair.split("-")) for pair in pairs.split()))  # type: ignore[misc]
