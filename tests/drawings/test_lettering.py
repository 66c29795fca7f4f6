"""Lettering is measured as its face is cut, and nothing unseen gets through."""

import math
import sys
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from importlib.resources import files
from threading import Barrier

import pytest
from fontTools.ttLib import TTFont

from eyebar.drawings import fonts, lettering
from eyebar.drawings.fonts import Face, embedded
from eyebar.drawings.lettering import (
    Run,
    anchored,
    centred,
    extent,
    fitted,
    run,
    run_width,
    wrapped,
)


def test_a_figure_is_as_wide_as_its_face_says() -> None:
    # From the font's own table, read here again: every figure of the upright face is half an em.
    font = TTFont(str(files("font_source_serif_pro") / "files" / "SourceSerifPro-Regular.ttf"))
    name = font.getBestCmap()[ord("7")]
    assert font["hmtx"][name][0] == 500
    assert run_width(Run(text="777", size=10.0)) == pytest.approx(15.0)


def test_spread_letters_have_their_space_between_them_alone() -> None:
    # By hand: three figures of 5 and two spaces of 2.
    assert run_width(Run(text="777", size=10.0, spread=2.0)) == pytest.approx(19.0)


def test_a_figure_set_low_reaches_below_its_line() -> None:
    plain = extent((Run(text="U", size=15.0),))
    low = extent((Run(text="U", size=15.0), Run(text="4", size=10.0, drop=3.0)))
    assert low.below > plain.below
    assert low.above == plain.above


@pytest.mark.parametrize("angle", [0.0, 0.7, -math.pi / 2])
def test_centred_lettering_has_its_box_about_the_point(angle: float) -> None:
    box = centred((run("+36.5", 12.0),), (100.0, 50.0), angle=angle).box
    assert (box.x, box.y, box.angle) == pytest.approx((100.0, 50.0, angle))


def test_anchored_lettering_ends_at_the_point() -> None:
    box = anchored((run("+36.5", 12.0),), (100.0, 50.0), (1.0, 1.0)).box
    assert box.bounds[2:] == pytest.approx((100.0, 50.0))


def test_wrapped_lines_are_no_wider_than_asked_and_lose_nothing() -> None:
    text = "a calculation from the measurements given, incontrovertibly" + "x" * 40
    lines = wrapped(text, 12.0, 90.0)
    assert all(run_width(line) <= 90.0 for line in lines)
    assert "".join(line.text for line in lines).replace(" ", "") == text.replace(" ", "")


def test_what_is_too_wide_is_made_smaller_and_then_cut_short() -> None:
    smaller = fitted(run("Quillmarsh", 20.0), 60.0)
    assert smaller.text == "Quillmarsh"
    assert run_width(smaller) == pytest.approx(60.0)
    cut = fitted(run("Quillmarsh" * 20, 20.0), 60.0)
    assert cut.text.endswith(lettering.ELLIPSIS)
    assert run_width(cut) <= 60.0


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("a\u202eb\u2066c", "abc"),  # turners of the direction of writing
        ("a\x00\x07b\ufffe", "ab"),  # no XML holds these
        ("a \n\t b", "a b"),
        ("\u05d2\u05e9\u05e8", "\u05d2\u05e9\u05e8"),
        ("\u0646\u200c\u0645", "\u0646\u200c\u0645"),  # a script that needs its joiner
    ],
)
def test_what_nobody_sees_is_left_out(text: str, seen: str) -> None:
    assert lettering.plain(text) == seen


def test_an_embedded_face_is_the_same_every_time_and_holds_the_letters_used_alone() -> None:
    one, other = embedded(Face.SLANTED, "U4"), embedded(Face.SLANTED, "U4")
    assert one == other
    assert len(embedded(Face.SLANTED, "0123456789")) > len(one)


def test_a_letter_that_the_face_has_not_gets_room_all_the_same() -> None:
    assert run_width(Run(text="\u05d2", size=10.0)) > 0
    assert run_width(Run(text="\u6a4b", size=10.0)) == pytest.approx(10.0)  # a full square


def test_many_who_draw_at_once_measure_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pages of the workbench are drawn by several threads; a face's tables are read when asked for.
    """
    monkeypatch.setattr(fonts, "_measured", cache(fonts._measured.__wrapped__))
    monkeypatch.setattr(fonts, "_letters", cache(fonts._letters.__wrapped__))
    monkeypatch.setattr(fonts, "_opened", cache(fonts._opened.__wrapped__))
    before = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    begin, words = Barrier(8), "WEIGHT LIMIT 12 TONS"

    def measured(_: int) -> list[float]:
        begin.wait()
        return [fonts.advance(face, letter) for face in Face for letter in words]

    try:
        with ThreadPoolExecutor(8) as several:
            found = list(several.map(measured, range(8)))
    finally:
        sys.setswitchinterval(before)
    assert all(one == found[0] for one in found)
