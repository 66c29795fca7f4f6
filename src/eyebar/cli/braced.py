"""The command `eyebar bracing`: the bridge under wind."""

from typing import Annotated, Any

import typer

from eyebar.cli.options import AsJson, Office, On, Record
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_json, print_list, print_table, print_text


def bracing(
    record: Record,
    *,
    on: On = None,
    office: Office = None,
    every: Annotated[
        bool, typer.Option("--all", help="Every part, not the least of those that do the same.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Say what the bracing stands under wind, and what it holds."""
    from eyebar.documents.bracing import bracing_document

    with refusing(as_json=as_json), patience("following the wind"):
        document = bracing_document(record, on=on, office=office)
    if as_json:
        print_json(document)
    else:
        print_bracing(document, every=every)


def print_bracing(document: dict[str, Any], *, every: bool) -> None:
    """What is known of the bracing, its margins, the posts of a half-through bridge."""
    from eyebar.views.bracing import MarginRow, PostRow, braced

    view = braced(document)
    print_text(view.bridge)
    print_list(view.sentences)
    for rows, kind in ((view.every if every else view.rows, MarginRow), (view.posts, PostRow)):
        if rows:
            typer.echo()
            print_table(kind, rows)
    typer.echo()
    print_list(view.cautions)
