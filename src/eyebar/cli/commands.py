"""The commands. Heavy libraries are imported inside them: `eyebar --help` stays quick."""

from pathlib import Path
from typing import Annotated

import typer

from eyebar import __version__
from eyebar.cli import register_report
from eyebar.cli.braced import bracing
from eyebar.cli.crossing import cross, use
from eyebar.cli.drawing import draw
from eyebar.cli.history import history
from eyebar.cli.options import (
    AsJson,
    AtLevel,
    ByMethod,
    Office,
    On,
    Record,
    VehicleName,
)
from eyebar.cli.papers import report
from eyebar.cli.refusals import refusing
from eyebar.cli.serving import account_app, serve
from eyebar.cli.terminal import patience, print_json
from eyebar.terms import (
    CurveShape,
    EndPosts,
    Form,
    RoadPlace,
    SubMembers,
)

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="What an old pin-connected truss bridge may carry: measured, computed and explained.",
    epilog="Begin with: eyebar demo",
    context_settings={"max_content_width": 100},
)
app.add_typer(register_report.register_app, name="register")
app.add_typer(account_app, name="account")


def _version(asked: bool) -> None:  # noqa: FBT001 - typer calls it with the flag
    if asked:
        typer.echo(f"eyebar {__version__}")
        raise typer.Exit


@app.callback()
def _eyebar(
    *,
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Say which.")
    ] = False,
) -> None:
    """Only the options that stand before the command."""


@app.command()
def demo(
    *,
    write: Annotated[
        Path, typer.Option(metavar="DIR", help="Where the records and the result are written.")
    ] = Path("eyebar-demo"),
    as_json: AsJson = False,
) -> None:
    """Rate an invented bridge, and write its record to go on with."""
    from eyebar.cli.demonstration import announce, demonstrated, print_demonstration

    with refusing(as_json=as_json):
        if not as_json:
            announce(write)
        document = demonstrated(write)
    if as_json:
        print_json(document)
    else:
        print_demonstration(document, write)


@app.command()
def new(
    *,
    form: Annotated[Form, typer.Option(help="The form of the trusses.")],
    panels: Annotated[str, typer.Option(help="'7 at 15 ft', or a list: '14 ft, 15 ft, 14 ft'.")],
    depth: Annotated[str, typer.Option(help="Greatest depth between the chords: '20 ft'.")],
    place: Annotated[
        RoadPlace, typer.Option("--floor", help="Where the road runs.")
    ] = RoadPlace.THROUGH,
    end_posts: Annotated[
        EndPosts | None, typer.Option(help="How the trusses end; else inclined, if they can.")
    ] = None,
    sub_members: Annotated[
        SubMembers, typer.Option(help="In halved panels: what holds the diagonals.")
    ] = SubMembers.STRUTS,
    counters: Annotated[str, typer.Option(help="Counters by name: 'U3-L2, U4-L5'.")] = "",
    hip: Annotated[str, typer.Option(help="Of a half-hip truss: from bearing to hip.")] = "",
    curve: Annotated[
        CurveShape | None, typer.Option(help="The line of a chord that is not level.")
    ] = None,
    rise: Annotated[str, typer.Option(help="Of the curve, from its first joint up.")] = "",
    sag: Annotated[str, typer.Option(help="Of a lenticular truss, below its bearings.")] = "",
    shoulder: Annotated[str, typer.Option(help="Of five slopes: where it is level, 'U3'.")] = "",
    name: Annotated[str, typer.Option(help="The bridge's name.")] = "",
    built: Annotated[str, typer.Option(help="The year.")] = "not measured",
    spacing: Annotated[str, typer.Option(help="Between the trusses' centres.")] = "not measured",
    clear_width: Annotated[str, typer.Option(help="Between the curbs.")] = "not measured",
    output: Annotated[Path, typer.Option("-o", "--output", metavar="FILE")] = Path("bridge.yaml"),
) -> None:
    """Begin a record: a form, a few sizes, and open questions."""
    from eyebar.bridge.begun import Beginning
    from eyebar.cli.beginning import begin, print_begun

    with refusing(as_json=False):
        begin(
            Beginning(
                form=form, panels=panels, depth=depth, place=place, end_posts=end_posts,
                sub_members=sub_members, counters=counters, hip=hip, curve=curve, rise=rise,
                sag=sag, shoulder=shoulder, name=name, built=built, spacing=spacing,
                clear_width=clear_width,
            ),
            output,
        )
    print_begun(output)


@app.command()
def check(record: Record, *, on: On = None, office: Office = None, as_json: AsJson = False) -> None:
    """Report every fault of a record, and what is not measured."""
    from eyebar.cli.printing import print_check
    from eyebar.documents.check import check_document

    with refusing(as_json=as_json):
        document = check_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_check(document)


@app.command()
def rate(
    record: Record,
    *,
    on: On = None,
    office: Office = None,
    vehicle: VehicleName = None,
    method: ByMethod = None,
    level: AtLevel = None,
    every: Annotated[bool, typer.Option("--all", help="All parts, not the weakest alone.")] = False,
    values: Annotated[bool, typer.Option("--values", help="Also the values used.")] = False,
    as_json: AsJson = False,
) -> None:
    """Say the posting, what governs it, and the factor of every part."""
    from eyebar.cli.printing import print_rating
    from eyebar.documents.rate import rate_document
    from eyebar.views.rating import Choice, rating_table

    with refusing(as_json=as_json), patience("rating the bridge"):
        document = rate_document(record, on=on, office=office)
        table = rating_table(document, Choice(method=method, level=level, vehicle=vehicle))
    if as_json:
        print_json(document)
    else:
        print_rating(document, table, few=not every, values=values)


@app.command()
def weakest(
    record: Record,
    *,
    on: On = None,
    office: Office = None,
    opened: Annotated[
        bool, typer.Option("--open", help="Every part in its own line, not those alike in one.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """List the parts by safe load, and what each is worth."""
    from eyebar.cli.printing import print_weakest
    from eyebar.documents.rate import rate_document

    with refusing(as_json=as_json), patience("rating the bridge"):
        document = rate_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_weakest(document, opened=opened)


app.command()(bracing)
app.command()(cross)
app.command()(use)


app.command()(serve)


@app.command()
def forces(
    record: Record,
    *,
    on: On = None,
    office: Office = None,
    vehicle: VehicleName = None,
    as_json: AsJson = False,
) -> None:
    """Say the force in every bar, under dead load and vehicles."""
    from eyebar.cli.printing import print_forces
    from eyebar.documents.forces import forces_document
    from eyebar.views.forces import force_tables

    with refusing(as_json=as_json), patience("moving the vehicles over the bridge"):
        document = forces_document(record, on=on, office=office)
        tables = force_tables(document, vehicle)
    if as_json:
        print_json(document)
    else:
        print_forces(document, tables)


@app.command()
def vehicles(*, office: Office = None, as_json: AsJson = False) -> None:
    """List the vehicles, axle by axle."""
    from eyebar.cli.printing import print_vehicles
    from eyebar.documents.vehicles import vehicles_document

    with refusing(as_json=as_json):
        document = vehicles_document(office=office)
    if as_json:
        print_json(document)
    else:
        print_vehicles(document)


@app.command()
def explain(
    record: Record,
    part: Annotated[str, typer.Argument(metavar="PART", help="Its address: upstream/U2-L4.")],
    *,
    on: On = None,
    office: Office = None,
    vehicle: VehicleName = None,
    method: ByMethod = None,
    level: AtLevel = None,
    as_json: AsJson = False,
) -> None:
    """Show the working of one part: symbols, numbers, result, source."""
    from eyebar.cli.printing import print_working
    from eyebar.documents.explain import explain_document

    with refusing(as_json=as_json), patience("working it out"):
        document = explain_document(
            record, part, on=on, office=office, vehicle=vehicle, method=method, level=level
        )
    if as_json:
        print_json(document)
    else:
        print_working(document)


app.command()(draw)


app.command()(history)


app.command()(report)
