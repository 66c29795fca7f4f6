"""The key: how bars are drawn, each with a small bar of its kind."""

from collections.abc import Iterable
from dataclasses import replace

from eyebar.drawings.blocks import SMALL, TEXT, Drawn, Place, heading, text_block
from eyebar.drawings.ink import Ink
from eyebar.drawings.lettering import on_line, run
from eyebar.drawings.members import DrawnBar, bar_ink
from eyebar.views.stress_sheet import BarFigures, Work

SAMPLE = 78.0
"""Length of the small bars."""
ROW = 20.0

_SAID = {
    Work.PUSHED: "pushed, or first reached by push",
    Work.PULLED: "pulled",
    Work.SLACK: "slack under dead load",
    Work.GONE: "carries nothing: broken, or left out",
}


def key_block(bars: Iterable[BarFigures], figures: str, place: Place) -> Drawn:
    """The kinds of bars that the drawing shows, and what its figures are."""
    shown = {bar.work for bar in bars}
    head = heading("Key", place)
    ink: list[Ink] = [*head.ink]
    level = head.bottom
    for work, said in _SAID.items():
        if work in shown:
            ink += [*_sample(work, place.left, level),
                    on_line((run(said, TEXT),), (place.left + SAMPLE + 14, level + 4))]
            level += ROW
    if any(bar.mark == "governs" for bar in bars):
        ink += [*_sample(Work.PULLED, place.left, level, mark="governs"),
                on_line((run("governs the posting", TEXT),), (place.left + SAMPLE + 14, level + 4))]
        level += ROW
    words = text_block(figures, place.below(level - 2), size=SMALL)
    return Drawn(ink=(*ink, *words.ink), bottom=words.bottom)


def _sample(work: str, left: float, level: float, mark: str = "") -> tuple[Ink, ...]:
    figures = BarFigures(
        bar="", part="", work=work, dead="", pull="", push="", mark=mark, said=""
    )
    half = {Work.PUSHED: 4.2, Work.PULLED: 0.8}.get(Work(work), 0.45)
    bar = DrawnBar(figures=figures, start=(left, level), end=(left + SAMPLE, level), half=half)
    return bar_ink(replace(bar, half=half))
