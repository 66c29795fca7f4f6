"""The command `draw`: a truss, or one pin."""

from datetime import date
from pathlib import Path

from eyebar.cli.printing import print_drawn
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_text
from eyebar.documents import explain_document, forces_document, rate_document
from eyebar.drawings import pin_drawing, stress_sheet
from eyebar.terms import Leaf


def draw_truss(
    record: Path, truss: str | None, output: Path | None, *, on: date | None,
    office: Path | None, vehicle: str | None, leaf: Leaf,
) -> None:
    """Draw the stress sheet of the truss asked for, else of the one that governs."""
    file = output or Path(f"{record.stem}.svg")
    with refusing(as_json=False), patience("drawing the truss"):
        rate = rate_document(record, on=on, office=office)
        forces = forces_document(record, on=on, office=office)
        sheet = stress_sheet(rate, forces, truss=truss, vehicle=vehicle, leaf=leaf)
        file.write_text(sheet.svg, encoding="utf-8", newline="\n")
    print_drawn(rate, sheet.view.truss, file)


def draw_pin(
    record: Path, pin: str, output: Path | None, *, on: date | None, office: Path | None,
    vehicle: str | None,
) -> None:
    """Draw a pin under the vehicle asked for, else the one that governs it."""
    named = pin.replace("/", " ").removesuffix(" pin")
    file = output or Path(f"{record.stem} {named} pin.svg")
    with refusing(as_json=False), patience("drawing the pin"):
        drawn = pin_drawing(explain_document(record, pin, on=on, office=office, vehicle=vehicle))
        file.write_text(drawn.svg, encoding="utf-8", newline="\n")
    print_text(drawn.view.answer)
    for caution in drawn.view.cautions:
        print_text(caution)
    print_text(f"The pin {pin} is drawn in {file}.")
