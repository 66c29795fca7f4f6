"""The section of a report on the pins that govern: a figure of each, and what bears on it."""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.views import report_words
from eyebar.views.blocks import Block, Figure, Paragraph, Section, table
from eyebar.views.columns import figure, text
from eyebar.views.pin_sheet import PinBearingRow, PinSheet

SHARES = (0, 1, 0, 0, 0, 0, 0, 0, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class BearingRow:
    """One bearing of a pin, from the outside."""

    number: str = figure("No.", "Its number in the figure, from the outside.")
    bears: str = text("What bears", "The bars that bear there as one, or the load hung on the pin.")
    thickness: str = figure("Thick, in", "The thickness of the bearing.")
    across: str = figure("Across, kip", "Horizontal force on the pin; to higher stations positive.")
    upright: str = figure("Up, kip", "Upright force on the pin.")
    shear: str = figure("Shear, kip", "Just beyond it, of both planes together.")
    moment: str = figure("Moment, kip in", "At its middle, of both planes together.")
    spread: str = figure("Spread", "The moment with loads spread over their bearings.")
    used: str = figure("Used", "The greatest check there, as a part of its limit.")


def pins(drawn: Sequence[tuple[PinSheet, Figure]]) -> tuple[Section, ...]:
    """The section; none where no pin is rated."""
    blocks: list[Block] = []
    for view, pin in drawn:
        blocks += [
            Paragraph(text=f"{view.part}: {view.load}. {view.answer}"),
            table(BearingRow, [_row(one) for one in view.rows], shares=SHARES,
                  caption="What bears on it, from the outside"),
            pin,
        ]
    if not blocks:
        return ()
    about = Paragraph(text=report_words.ABOUT_PINS)
    return (Section(heading="Pins", blocks=(about, *blocks)),)


def _row(one: PinBearingRow) -> BearingRow:
    return BearingRow(
        number=one.number, bears=one.bears, thickness=one.thickness, across=one.load,
        upright=one.load_up, shear=one.shear_both, moment=one.moment_both, spread=one.spread,
        used=one.used,
    )
