"""Every form of truss is drawn clearly, however it ends and wherever its floor lies."""

from collections.abc import Iterator

import pytest

from eyebar.bridge.forms import Layout
from eyebar.drawings import stress_sheet
from eyebar.terms import EndPosts, Form, Leaf
from tests.bridge.forms import bearings, counts, form, ways
from tests.drawings import made
from tests.drawings.apart import faults

ABOUT = 8
"""Panels of the trusses drawn here, or the nearest number that the form allows."""


def laid() -> Iterator[tuple[str, Layout, EndPosts]]:
    for word in Form:
        panels = min(counts(word, 20), key=lambda count: abs(count - ABOUT))
        for how in ways(word):
            yield (
                f"{word}, {', '.join(str(one) for one in how.values())}",
                form(word, panels, **how), EndPosts(str(how["end_posts"])),
            )


LAID = [pytest.param(layout, ends, id=name) for name, layout, ends in laid()]


def documents(layout: Layout) -> tuple[made.Document, made.Document]:
    grid = (
        {joint: list(place) for joint, place in layout.joints.items()},
        [(*bar.ends, str(bar.kinds[0])) for bar in layout.bars.values()],
    )
    return made.documents(
        grid, floor=[joint for joint, _ in layout.floor_joints], ends=bearings(layout)
    )


@pytest.mark.parametrize(("layout", "ends"), LAID)
def test_a_form_is_drawn_with_every_name_and_figure_clear(layout: Layout, ends: EndPosts) -> None:
    rate, forces = documents(layout)
    sheet = stress_sheet(rate, forces)
    assert faults(sheet) == []
    lettered = ["".join(run.text for run in one.runs) for one in sheet.letterings]
    assert set(layout.joints) <= set(lettered)
    assert "governs" in lettered
    if ends is EndPosts.NONE:  # the narrow page has least room where stones stand aside
        assert faults(stress_sheet(rate, forces, leaf=Leaf.FIELD_BOOK)) == []
