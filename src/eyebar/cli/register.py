"""`eyebar register ...`: the commands that keep records and ask after them."""

import getpass
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from eyebar.cli.options import AsJson, Office
from eyebar.cli.refusals import refusing
from eyebar.cli.terminal import patience, print_json, print_list, print_table, print_text

if TYPE_CHECKING:
    from eyebar.store.opened import Register

app = typer.Typer(
    no_args_is_help=True, rich_markup_mode=None,
    help="Keep bridges for decades: nothing lost, nothing changed unseen.",
    epilog="Begin with: eyebar register add RECORD",
)

Place = Annotated[
    str | None,
    typer.Option("--register", metavar="PATH|URL", envvar="EYEBAR_REGISTER",
                 help="Which register; else the one in your data folder."),
]
Bridge = Annotated[str, typer.Argument(metavar="BRIDGE", help="Its handle, as `list` shows it.")]
By = Annotated[
    str | None, typer.Option("--by", envvar="EYEBAR_BY", help="Who does it; else your account.")
]
Why = Annotated[str, typer.Option("--why", help="The reason, which is kept.")]
RecordFile = Annotated[Path, typer.Argument(metavar="RECORD", help="A bridge record (YAML).")]
Output = Annotated[
    Path, typer.Option("-o", "--output", metavar="FILE", help="Where it is written.")
]


def person(by: str | None) -> str:
    """Who does it: the name given, else the account's."""
    return by or getpass.getuser()


@contextmanager
def at(place: str | None, *, as_json: bool, begin: bool = False) -> Iterator["Register"]:
    """The register opened; where it lies is said on the error stream, and refusals are answered."""
    with refusing(as_json=as_json):
        try:
            from eyebar.store.opened import opened_register
        except ModuleNotFoundError as missing:
            typer.echo(f"{missing.name} is missing; type: pip install 'eyebar[office]'", err=True)
            raise typer.Exit(1) from None
        with opened_register(place, begin=begin) as register:
            typer.echo(f"Register: {register.place.shown}", err=True)
            for sentence in register.said:
                typer.echo(sentence, err=True)
            yield register


def answer(document: dict[str, Any], *, as_json: bool) -> None:
    """What a command has done, as a sentence or as JSON."""
    if as_json:
        print_json(document)
        return
    print_text(document["done"])
    if document["chain"]:
        print_text(f"Head of the chain: {document['chain']}")
    print_list(document["cautions"])


@app.command()
def add(
    record: RecordFile,
    *,
    handle: Annotated[
        str, typer.Option("--as", metavar="HANDLE", help="Its handle; else its number.")
    ] = "",
    why: Why = "first entry",
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Take a bridge into the register, which is begun if need be."""
    with at(register, as_json=as_json, begin=True) as opened:
        from eyebar.record import read_record
        from eyebar.store.documents import done_document
        from eyebar.store.saving import add_bridge

        saved = add_bridge(
            opened, read_record(record), person=person(by), reason=why, handle=handle
        )
        done = f"Bridge {saved.bridge} is in the register, as revision 1."
        document = done_document(
            opened, done, handle=saved.bridge, number=1, chain=saved.chain
        )
    answer(document, as_json=as_json)


@app.command()
def save(
    bridge: Bridge,
    record: RecordFile,
    *,
    onto: Annotated[int, typer.Option(min=1, help="The revision that yours was made from.")],
    why: Why,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Save a new revision of a bridge's record."""
    with at(register, as_json=as_json) as opened:
        from eyebar.record import read_record
        from eyebar.store.documents import done_document
        from eyebar.store.saving import save_revision

        saved = save_revision(
            opened, bridge, read_record(record), onto=onto, person=person(by), reason=why
        )
        done = f"Bridge {saved.bridge} is at revision {saved.revision}."
        document = done_document(
            opened, done, handle=saved.bridge, number=saved.revision, chain=saved.chain
        )
    answer(document, as_json=as_json)


@app.command()
def take(
    bridge: Bridge,
    *,
    output: Output,
    revision: Annotated[int | None, typer.Option(min=1, help="Which; else the latest.")] = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Write a revision of a record into a file, as it was written."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.asked import bridge_named, revision_of
        from eyebar.store.copied import refuse_there
        from eyebar.store.documents import done_document

        with opened.reading() as connection:
            found = revision_of(connection, bridge_named(connection, bridge), revision)
        refuse_there(output, "file")
        with output.open("xb") as written:
            written.write(found.text.encode("utf-8"))
        done = (
            f"Revision {found.revision} of {bridge} is in {output}; save it with"
            f" --onto {found.revision}."
        )
        document = done_document(
            opened, done, handle=bridge, number=found.revision, file=output
        )
    answer(document, as_json=as_json)


@app.command("list")
def bridges(*, register: Place = None, as_json: AsJson = False) -> None:
    """List every bridge with its latest revision."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import list_document

        document = list_document(opened)
    if as_json:
        print_json(document)
        return
    from eyebar.views.register import RegisterRow, register_rows

    print_table(RegisterRow, register_rows(document))


@app.command()
def show(bridge: Bridge, *, register: Place = None, as_json: AsJson = False) -> None:
    """Show what is kept of a bridge."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import bridge_document

        document = bridge_document(opened, bridge)
    if as_json:
        print_json(document)
        return
    from eyebar.views import given
    from eyebar.views import register as views

    print_text(f"{document['name']} ({document['handle']}), at revision {document['revision']}.")
    for view, rows in (
        (views.RevisionRow, views.revision_rows(document)),
        (views.InspectionRow, views.inspection_rows(document)),
        (views.DecisionRow, views.decision_rows(document)),
        (given.RatingIssued, given.ratings_issued(document)),
        (given.SignUp, given.signs_up(document)),
        (given.SlipGiven, given.slips_given(document)),
        (given.FileKept, given.files_kept(document)),
    ):
        if rows:
            typer.echo()
            print_table(view, rows)


@app.command()
def history(
    bridge: Annotated[str | None, typer.Argument(metavar="BRIDGE", help="Else all.")] = None,
    *,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """List every event: when, what, who, why."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import history_document

        document = history_document(opened, bridge)
    if as_json:
        print_json(document)
        return
    from eyebar.views.register import EventRow, event_rows

    print_table(EventRow, event_rows(document))
    print_text("", f"Head of the chain: {document['head']}")


@app.command()
def find(
    *,
    bridge: Annotated[str, typer.Option(help="Of this bridge.")] = "",
    part: Annotated[str, typer.Option(help="An address or its beginning: 'upstream/'.")] = "",
    what: Annotated[str, typer.Option(help="What was measured: 'thickness'.")] = "",
    since: Annotated[str, typer.Option(metavar="DATE", help="From this day on.")] = "",
    until: Annotated[str, typer.Option(metavar="DATE", help="Up to this day.")] = "",
    words: Annotated[str, typer.Option(help="In the note or the gauge.")] = "",
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Find readings in the latest revisions."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.asked import Search
        from eyebar.store.documents import readings_document

        document = readings_document(opened, Search(
            bridge=bridge, part=part, what=what, since=since, until=until, words=words
        ))
    if as_json:
        print_json(document)
        return
    from eyebar.views.register import RegisterReadingRow, register_reading_rows

    print_table(RegisterReadingRow, register_reading_rows(document))


@app.command()
def compare(
    bridge: Bridge,
    before: Annotated[int, typer.Argument(metavar="FROM", min=1, help="A revision.")],
    after: Annotated[
        int | None, typer.Argument(metavar="TO", min=1, help="Another; else the latest.")
    ] = None,
    *,
    most: Annotated[
        int, typer.Option(min=0, help="Rate each change alone, if they are so many at most.")
    ] = 12,
    office: Office = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Say what changed, and what each change did to the posting."""
    with at(register, as_json=as_json) as opened, patience("rating both, and each change alone"):
        from eyebar.store.documents import compare_document

        document = compare_document(
            opened, bridge, between=(before, after), office=office, most=most
        )
    if as_json:
        print_json(document)
        return
    from eyebar.views import register as views

    rows = views.change_rows(document)
    print_text(views.compared(document))
    if rows:
        typer.echo()
        print_table(views.ChangeRow, rows)
    else:
        print_text("They say the same; at most comments and layout differ.")
    typer.echo()
    print_list(document["cautions"])


@app.command()
def verify(
    *,
    head: Annotated[str, typer.Option(help="A head that stands on a report, or its start.")] = "",
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Look whether everything is as it was saved; exit 1 if not."""
    with at(register, as_json=as_json) as opened, patience("walking the chain"):
        from eyebar.store.documents import verify_document

        document = verify_document(opened, head)
    if as_json:
        print_json(document)
    else:
        from eyebar.views.register import known_head, verdict

        print_text(verdict(document), known_head(document))
        print_text(f"Head of the chain: {document['head']}")
        print_list(document["cautions"])
    if not document["sound"]:
        raise typer.Exit(1)
