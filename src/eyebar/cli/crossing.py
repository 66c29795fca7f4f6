"""`eyebar cross`: who may cross."""

from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import AsJson, Office, On, Record
from eyebar.cli.options import day as day_typed
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_json


def use(
    record: Record, *, on: On = None, office: Office = None, as_json: AsJson = False
) -> None:
    """Say what rules of the road and a bare deck are worth."""
    from eyebar.cli.crossed import print_uses
    from eyebar.documents.use import use_document

    with refusing(as_json=as_json), patience("rating the bridge"):
        document = use_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_uses(document)


def cross(
    record: Record,
    vehicle: Annotated[
        str | None, typer.Argument(metavar="VEHICLE", help="Its name: see eyebar vehicles.")
    ] = None,
    *,
    every: Annotated[bool, typer.Option("--all", help="All everyday vehicles: a board.")] = False,
    axles: Annotated[str, typer.Option(help="Your own: '10 kip, 12 ft, 18 kip'.")] = "",
    gauge: Annotated[str, typer.Option(help="Between its wheel lines; else 6 ft.")] = "",
    width: Annotated[str, typer.Option(help="Over all; else 8.5 ft.")] = "",
    towing: Annotated[bool, typer.Option("--towing", help="It tows: a combination.")] = False,
    file: Annotated[
        Path | None,
        typer.Option(metavar="FILE.toml", help="Vehicles and scale tickets of your own."),
    ] = None,
    slip: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write a slip for one crossing: .pdf, .txt, .json."),
    ] = None,
    way: Annotated[int, typer.Option(help="Which of several ways the slip is for.")] = 1,
    day: Annotated[
        date | None,
        typer.Option(metavar="DATE", parser=day_typed, help="Day of the crossing; else today."),
    ] = None,
    on: On = None,
    office: Office = None,
    as_json: AsJson = False,
) -> None:
    """Say who may cross: yes, yes if, or no."""
    from eyebar.cli.crossed import Wanted, print_crossings, slip_day, write_slip
    from eyebar.documents.cross import cross_document
    from eyebar.documents.slip import slip_document

    with refusing(as_json=as_json), patience("rating the vehicles"):
        asked = Wanted(
            name=vehicle, axles=axles, gauge=gauge, width=width, towing=towing, every=every
        ).vehicles()
        if slip is None:
            document = cross_document(record, asked, on=on, office=office, file=file)
        elif not asked:
            raise typer.BadParameter("a slip is for one vehicle: name it")
        else:
            document = slip_document(
                record, asked[0], slip_day(day), way=way, on=on, office=office, file=file
            )
            write_slip(document, slip)
    if as_json:
        print_json(document)
    elif slip is None:
        print_crossings(document, every=every)
    else:
        typer.echo(f"The slip lies in {slip}; it is worth nothing until it is signed.")
