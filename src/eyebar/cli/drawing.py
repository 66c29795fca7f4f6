"""The command `draw`: the sheets of a bridge as SVG, PDF, PNG or DXF, by the file's suffix."""

from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import Office, On, Record, VehicleName
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_text
from eyebar.terms import Leaf, SheetName

SUFFIXES = (".svg", ".pdf", ".png", ".dxf")


def drawable(file: Path | None) -> Path | None:
    """A file named with one of the endings that a drawing may have."""
    if file is not None and file.suffix.lower() not in SUFFIXES:
        raise typer.BadParameter(f"'{file}' does not end in {', '.join(SUFFIXES)}")
    return file


def draw(
    record: Record,
    *,
    sheet: Annotated[
        SheetName | None, typer.Option(help="Which sheet; else the stress sheet.")
    ] = None,
    output: Annotated[
        Path | None,
        typer.Option("-o", "--output", metavar="FILE", callback=drawable,
                     help="Where it is drawn: .svg, .pdf, .png or .dxf; else RECORD's name with "
                     ".svg, in this folder."),
    ] = None,
    truss: Annotated[
        str | None, typer.Option(help="Which truss; else the one that governs, or the first.")
    ] = None,
    part: Annotated[
        str | None, typer.Option(metavar="PART", help="The member, pin or stringer that is meant.")
    ] = None,
    pin: Annotated[
        str | None, typer.Option(metavar="PIN", help="A pin, such as upstream/L4/pin.")
    ] = None,
    bar: Annotated[
        str | None, typer.Option(metavar="BAR", help="The bar of an influence line.")
    ] = None,
    on: On = None,
    office: Office = None,
    vehicle: VehicleName = None,
    size: Annotated[
        str | None, typer.Option(metavar="SIZE", help="ANSI B, ARCH D, A3 ...; else as needed.")
    ] = None,
    paper: Annotated[
        Leaf, typer.Option(help="A sheet for a desk, or a narrow page for a telephone.")
    ] = Leaf.SHEET,
) -> None:
    """Draw a sheet: stress, elevation, floor, a part, the sign."""
    from eyebar.cli.drawn import Asked, drawn_sheets, written
    from eyebar.cli.printing import print_drawn

    asked = Asked(
        record=record, on=on, office=office, truss=truss, vehicle=vehicle, size=size, leaf=paper,
        name=sheet or (SheetName.PIN if pin else SheetName.STRESS), part=pin or bar or part or "",
    )
    file = output or Path(f"{asked.stem}.svg")
    with refusing(as_json=False), patience("drawing"):
        drawn = drawn_sheets(asked, file)
        files = written(drawn, file)
    print_drawn(drawn.document)
    for line in drawn.said:
        print_text(line)
    print_text(f"{drawn.what} is drawn in {', '.join(map(str, files))}.")
