"""The command `history`: what a truss is, how it works, and who made others like it."""

from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import AsJson, Office, On, Record, ends_in
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_json, print_text


def history(
    record: Record,
    *,
    how: Annotated[
        bool, typer.Option("--how", help="How it works, in plain words with its own numbers.")
    ] = False,
    details: Annotated[
        bool, typer.Option("--details", help="Which bridges of --office share its details.")
    ] = False,
    output: Annotated[
        Path | None,
        typer.Option("-o", "--output", metavar="FILE.svg", callback=ends_in(".svg"),
                     help="With --how: draw and tell it there."),
    ] = None,
    truss: Annotated[
        str | None, typer.Option(help="With --how -o: which truss; else the first.")
    ] = None,
    on: On = None,
    office: Office = None,
    as_json: AsJson = False,
) -> None:
    """Say what the trusses are, how old, and how they work."""
    if how and details:
        raise typer.BadParameter("--how and --details are two questions; ask one")
    if output is not None and not how:
        raise typer.BadParameter("-o goes with --how")
    if details:
        _details(record, on=on, office=office, as_json=as_json)
        return
    if how:
        _how(record, output, truss, on=on, office=office, as_json=as_json)
        return
    from eyebar.cli.printing import print_history
    from eyebar.documents import history_document

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
    from eyebar.documents import details_document

    if office is None:
        raise typer.BadParameter("--details needs --office, the folder with details.toml")
    with refusing(as_json=as_json):
        document = details_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_details(document)
