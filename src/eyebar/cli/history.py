"""The command `history`: what a truss is, how it works, and who made others like it."""

from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import AsJson, Office, On, Record
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_json, print_text

DRAWINGS = (".svg",)
PAPERS = (".pdf", ".md")


def history(
    record: Record,
    *,
    how: Annotated[
        bool, typer.Option("--how", help="How it works, in plain words with its own numbers.")
    ] = False,
    details: Annotated[
        bool, typer.Option("--details", help="Which bridges of --office share its details.")
    ] = False,
    sheet: Annotated[
        bool, typer.Option("--sheet", help="Write a documentation sheet: -o FILE.pdf or FILE.md.")
    ] = False,
    output: Annotated[
        Path | None,
        typer.Option("-o", "--output", metavar="FILE",
                     help="With --how an .svg, drawn and told; with --sheet a .pdf or an .md."),
    ] = None,
    truss: Annotated[
        str | None, typer.Option(help="With --how -o: which truss; else the first.")
    ] = None,
    on: On = None,
    office: Office = None,
    as_json: AsJson = False,
) -> None:
    """Say what the trusses are, how old, and how they work."""
    if how + details + sheet > 1:
        raise typer.BadParameter("ask one of --how, --details and --sheet")
    if output is not None and not (how or sheet):
        raise typer.BadParameter("-o goes with --how or --sheet")
    if output is not None and output.suffix.lower() not in (PAPERS if sheet else DRAWINGS):
        endings = " or ".join(PAPERS if sheet else DRAWINGS)
        raise typer.BadParameter(f"'{output}' does not end in {endings}")
    if details:
        _details(record, on=on, office=office, as_json=as_json)
        return
    if sheet:
        _sheet(record, output, on=on, office=office, as_json=as_json)
        return
    if how:
        _how(record, output, truss, on=on, office=office, as_json=as_json)
        return
    from eyebar.cli.printing import print_history
    from eyebar.documents.history import history_document

    with refusing(as_json=as_json):
        document = history_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_history(document)


def _how(
    record: Path, output: Path | None, truss: str | None, *, on: date | None,
    office: Path | None, as_json: bool,
) -> None:
    from eyebar.cli.printing import print_how
    from eyebar.documents.forces import forces_of
    from eyebar.documents.how import how_of
    from eyebar.documents.opened import opened
    from eyebar.drawings import how_sheet

    with refusing(as_json=as_json), patience("moving the vehicles over the bridge"):
        one = opened(record, on=on, office=office)
        forces = forces_of(one)
        document = how_of(one, forces)
        if output is not None:
            sheet = how_sheet(document, forces, truss=truss)
            output.write_text(sheet.svg, encoding="utf-8", newline="\n")
    if as_json:
        print_json(document)
    elif output is None:
        print_how(document)
    else:
        print_text(f"{sheet.title}, drawn and told in {output}.", *document["cautions"])


def _details(record: Path, *, on: date | None, office: Path | None, as_json: bool) -> None:
    from eyebar.cli.printing import print_details
    from eyebar.documents.details import details_document

    if office is None:
        raise typer.BadParameter("--details needs --office, the folder with details.toml")
    with refusing(as_json=as_json):
        document = details_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_details(document)


def _sheet(
    record: Path, output: Path | None, *, on: date | None, office: Path | None, as_json: bool
) -> None:
    from eyebar.documents.opened import opened
    from eyebar.documents.sheet import sheet_of
    from eyebar.report.documentation import (
        documentation_markdown,
        documentation_pdf,
        documented,
    )
    from eyebar.report.typeset import needed

    file = output or Path(f"{record.stem} documentation.pdf")
    with refusing(as_json=as_json), patience("writing the sheet"):
        one = opened(record, on=on, office=office)
        if as_json:
            print_json(sheet_of(one))
            return
        if file.suffix.lower() == ".pdf":
            needed()
            file.write_bytes(documentation_pdf(documented(one)))
            beside: tuple[Path, ...] = ()
        else:
            text, drawings = documentation_markdown(documented(one), file)
            beside = tuple(file.with_name(name) for name in drawings)
            for path, svg in zip(beside, drawings.values(), strict=True):
                path.write_text(svg, encoding="utf-8", newline="\n")
            file.write_text(text, encoding="utf-8", newline="\n")
    drawn = f", its {len(beside)} drawings beside it" if beside else ""
    print_text(f"The documentation sheet lies in {file}{drawn}.")
