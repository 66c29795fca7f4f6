"""What each command prints from its document when JSON is not asked for."""

from typing import Any

import typer

from eyebar.cli.terminal import print_list, print_table, print_text
from eyebar.views.checking import checked
from eyebar.views.details import LikeRow, SharedRow, shared_details
from eyebar.views.forces import ForceRow, ForceTable
from eyebar.views.history import DetailRow, told
from eyebar.views.how import how_it_works
from eyebar.views.not_measured import NotMeasuredRow
from eyebar.views.not_rated import NotRatedRow
from eyebar.views.posting import posting
from eyebar.views.rating import RatingRow, RatingTable
from eyebar.views.values import ValueRow, value_rows
from eyebar.views.vehicles import VehicleRow, vehicle_rows
from eyebar.views.weakest import WeakRow, weak_list
from eyebar.views.working import working

Document = dict[str, Any]

FEW = 12
"""Parts shown where not all are asked for."""


def print_check(document: Document) -> None:
    """That a record has no fault, the rules its state was made by, and what is not rated."""
    view = checked(document)
    print_text(view.verdict)
    print_list(view.rules)
    if view.not_measured:
        typer.echo()
        print_table(NotMeasuredRow, view.not_measured)
    if view.not_rated:
        typer.echo()
        print_table(NotRatedRow, view.not_rated)


def print_posting(document: Document) -> None:
    """The posting before anything else, then the bridge and what stands behind the posting."""
    view = posting(document)
    print_text(view.line, view.exact)
    print_text(f"{view.bridge}, as on {view.date}.", view.governed)
    print_text(view.emergency, view.provisional, view.unconfirmed)


def print_drawn(document: Document) -> None:
    """The posting and the cautions of a sheet that is drawn from a rating."""
    if document["format"].startswith("eyebar/rate/"):
        print_posting(document)
        print_cautions(document)
        typer.echo()


def print_rating(document: Document, table: RatingTable, *, few: bool, values: bool) -> None:
    """The posting, the parts from the weakest on, those not rated, and perhaps the values used."""
    print_posting(document)
    rows = table.rows[:FEW] if few else table.rows
    rest = f"; the weakest {len(rows)} (--all shows all)" if len(rows) < len(table.rows) else ""
    by = f"{len(table.rows)} parts by {table.standing}, each under its worst vehicle"
    typer.echo(f"\n{by}{rest}:\n")
    print_table(RatingRow, rows)
    if table.not_rated:
        typer.echo()
        print_table(NotRatedRow, table.not_rated)
    if values:
        typer.echo()
        print_table(ValueRow, value_rows(document))
    typer.echo()
    print_cautions(document)


def print_weakest(document: Document, *, opened: bool) -> None:
    """The posting, what is not rated, and all other parts from the weakest on."""
    print_posting(document)
    view = weak_list(document)
    if view.not_rated:
        typer.echo()
        print_table(NotRatedRow, view.not_rated)
    rows = view.opened if opened else view.rows
    rest = "" if opened else ", those alike in one line (--open shows every part)"
    typer.echo(f"\nThe rated parts by safe load, weakest first{rest}:\n")
    print_table(WeakRow, rows)
    typer.echo()
    print_list(view.sentences)
    typer.echo()
    print_cautions(document)


def print_forces(document: Document, tables: tuple[ForceTable, ...]) -> None:
    """One table of bars for each truss, or for all that are alike."""
    for table in tables:
        typer.echo(f"{table.trusses}, as on {document['date']}\n")
        print_table(ForceRow, table.rows)
        print_text(*table.left_out)
        typer.echo()
    print_cautions(document)


def print_vehicles(document: Document) -> None:
    """The table of vehicles."""
    print_table(VehicleRow, vehicle_rows(document))
    print_text("* figures of it are assumed: --json says which, and where the others come from.")


def print_working(document: Document) -> None:
    """The working of one part, step by step."""
    view = working(document)
    print_text(view.title, view.answer)
    for block in (view.facts, view.remarks):
        print_list(block)
    typer.echo("\n" + "\n".join(view.steps) + "\n")
    print_text(*view.events)
    print_cautions(document)


def print_cautions(document: Document) -> None:
    """What every answer says about itself."""
    print_list(document["cautions"])


def print_history(document: Document) -> None:
    """The form of each truss, then the age and what tells it."""
    view = told(document)
    print_text(view.bridge, *view.forms, view.age)
    if view.details:
        typer.echo()
        print_table(DetailRow, view.details)
    print_list(view.contradictions)
    typer.echo()
    print_list(view.cautions)


def print_how(document: Document) -> None:
    """How the trusses work, chapter by chapter."""
    view = how_it_works(document)
    print_text(view.bridge)
    for truss in view.trusses:
        typer.echo(f"\n{truss.title}")
        for chapter in truss.chapters:
            typer.echo(f"\n{chapter.heading}\n")
            print_text(*chapter.sentences)
    typer.echo()
    print_list(view.cautions)


def print_details(document: Document) -> None:
    """The details of a bridge, and the bridges that share them."""
    view = shared_details(document)
    print_text(view.bridge)
    for kind, rows in ((SharedRow, view.details), (LikeRow, view.bridges)):
        if rows:
            typer.echo()
            print_table(kind, rows)
    print_text(*view.remarks)
    typer.echo()
    print_list(view.cautions)
