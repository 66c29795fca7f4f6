"""`eyebar register ...`: what is given out, files, and the register as a whole."""

from datetime import date, datetime
from pathlib import Path
from typing import Annotated, Any

import typer

from eyebar.cli.options import AsJson, Office, day
from eyebar.cli.refusals import refusing
from eyebar.cli.register import Bridge, By, Output, Place, Why, answer, app, at, person
from eyebar.cli.terminal import patience, print_json
from eyebar.views.signed import NOT_A_SEAL

On = Annotated[
    date | None, typer.Option("--on", metavar="DATE", parser=day, help="The day; else today.")
]
OfRating = Annotated[int | None, typer.Option("--rating", min=1, help="The rating behind it.")]
Number = Annotated[int, typer.Argument(metavar="NUMBER", min=1, help="As `show` lists it.")]
Folder = Annotated[Path, typer.Argument(metavar="FOLDER", help="A folder of plain files.")]


def today() -> date:
    """The day it is here."""
    return datetime.now().astimezone().date()


@app.command()
def issue(
    bridge: Bridge,
    *,
    why: Why = "rating",
    on: Annotated[
        date | None,
        typer.Option(metavar="DATE", parser=day, help="As it stood then; else its latest entry."),
    ] = None,
    office: Office = None,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Rate the latest revision and keep the whole rating, as a draft."""
    with at(register, as_json=as_json) as opened, patience("rating the bridge"):
        from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND
        from eyebar.store import issued
        from eyebar.store.documents import done_document

        given = issued.issue(
            opened, bridge, office=office, on=on, person=person(by), reason=why
        )
        document = done_document(
            opened, f"{given.says}: rating {given.number} of {bridge} is kept, as a draft.",
            handle=bridge, number=given.number, chain=given.chain,
            cautions=(CAUTION, NOT_ASSUMED_SOUND),
        )
    answer(document, as_json=as_json)


@app.command()
def sign(
    rating: Number,
    *,
    name: Annotated[str, typer.Option(help="Who signs.")],
    licence: Annotated[str, typer.Option(help="The number of the licence.")],
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """State that a rating was checked: a name and a licence, not a seal."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store import issued
        from eyebar.store.documents import TAMPER, done_document

        given = issued.sign(opened, rating, name=name, licence=licence, person=person(by))
        document = done_document(
            opened, f"Kept: {given.says}", number=rating, chain=given.chain,
            cautions=(NOT_A_SEAL, TAMPER),
        )
    answer(document, as_json=as_json)


@app.command()
def rating(number: Number, *, register: Place = None) -> None:
    """Print the whole document of a rating that was issued, as JSON."""
    with at(register, as_json=True) as opened:
        import json

        from eyebar.store.issued import rating_row

        with opened.reading() as connection:
            document: dict[str, Any] = json.loads(rating_row(connection, number)["document"])
    print_json(document)


@app.command()
def post(
    bridge: Bridge,
    legend: Annotated[str, typer.Argument(metavar="SIGN", help="What it says.")],
    *,
    why: Why,
    on: On = None,
    rating: OfRating = None,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Write down that a sign was put up."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store import issued
        from eyebar.store.documents import done_document

        given = issued.put_up(
            opened, bridge, legend, on=on or today(), rating=rating, person=person(by), reason=why
        )
        document = done_document(
            opened, f"Posting {given.number} of {bridge} stands: {legend}", handle=bridge,
            number=given.number, chain=given.chain,
        )
    answer(document, as_json=as_json)


@app.command("take-down")
def take_down(
    posting: Number,
    *,
    why: Why,
    on: On = None,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Write down that a sign was taken down."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store import issued
        from eyebar.store.documents import done_document

        given = issued.taken_down(
            opened, posting, on=on or today(), person=person(by), reason=why
        )
        document = done_document(
            opened, f"Posting {posting} is taken down: {given.says}", number=given.number,
            chain=given.chain,
        )
    answer(document, as_json=as_json)


@app.command()
def slip(
    bridge: Bridge,
    *,
    vehicle: Annotated[str, typer.Option(help="Which vehicle may cross.")],
    holder: Annotated[str, typer.Option(help="To whom it is given.")],
    begins: Annotated[
        date, typer.Option("--from", metavar="DATE", parser=day, help="The first day.")
    ],
    ends: Annotated[date, typer.Option("--to", metavar="DATE", parser=day, help="The last day.")],
    conditions: Annotated[str, typer.Option(help="How it may cross.")],
    why: Why,
    rating: OfRating = None,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Write down a crossing slip that was given."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store import issued
        from eyebar.store.documents import done_document

        crossing = issued.Crossing(
            vehicle=vehicle, holder=holder, begins=begins, ends=ends, conditions=conditions,
            rating=rating,
        )
        given = issued.give_slip(opened, bridge, crossing, person=person(by), reason=why)
        document = done_document(
            opened, f"Slip {given.number} for {bridge} is kept: {vehicle}", handle=bridge,
            number=given.number, chain=given.chain,
        )
    answer(document, as_json=as_json)


@app.command()
def decide(
    bridge: Bridge,
    what: Annotated[str, typer.Argument(metavar="DECISION", help="What was decided.")],
    *,
    why: Why,
    part: Annotated[str, typer.Option(help="Address of the part it is about.")] = "",
    on: On = None,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Write down a decision that belongs in no record."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store import issued
        from eyebar.store.documents import done_document

        given = issued.decide(
            opened, bridge, what, on=on or today(), part=part, person=person(by), reason=why
        )
        document = done_document(
            opened, f"Decision {given.number} on {bridge} is kept.", handle=bridge,
            number=given.number, chain=given.chain,
        )
    answer(document, as_json=as_json)


@app.command()
def attach(
    bridge: Bridge,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A photograph or a file.")],
    *,
    part: Annotated[str, typer.Option(help="Address of the part it is about.")] = "",
    note: Annotated[str, typer.Option(help="What is to be seen.")] = "",
    why: Why = "file kept",
    keep_position: Annotated[
        bool, typer.Option("--keep-position", help="Keep where the picture was taken.")
    ] = False,
    by: By = None,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Keep a photograph or a file with a bridge."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import done_document
        from eyebar.store.files import About
        from eyebar.store.files import attach as attached

        kept = attached(
            opened, bridge, file, About(part=part, note=note), person=person(by), reason=why,
            keep_position=keep_position,
        )
        told = kept.had_position and not keep_position
        gone = " It told where it was taken; that was taken out." if told else ""
        document = done_document(
            opened, f"File {kept.number} of {bridge} is kept.{gone}", handle=bridge,
            number=kept.number, chain=kept.chain,
        )
    answer(document, as_json=as_json)


@app.command()
def fetch(
    number: Number, *, output: Output, register: Place = None, as_json: AsJson = False
) -> None:
    """Write a kept file's bytes into a new file."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import done_document
        from eyebar.store.files import take_out

        take_out(opened, number, output)
        document = done_document(
            opened, f"File {number} is in {output}.", number=number, file=output
        )
    answer(document, as_json=as_json)


@app.command()
def withdraw(
    number: Number, *, why: Why, by: By = None, register: Place = None, as_json: AsJson = False
) -> None:
    """Blank a file's bytes; its hash, the reason and the person stay."""
    with at(register, as_json=as_json) as opened:
        from eyebar.store.documents import done_document
        from eyebar.store.files import withdraw as withdrawn

        chain = withdrawn(opened, number, person=person(by), reason=why)
        document = done_document(
            opened, f"File {number} is withdrawn; backups and exports of before still hold it.",
            number=number, chain=chain,
        )
    answer(document, as_json=as_json)


@app.command()
def backup(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Where; nothing is there yet.")],
    *,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Copy the register into a file, also while it is in use."""
    with at(register, as_json=as_json) as opened, patience("copying"):
        from eyebar.store.copied import backed_up
        from eyebar.store.documents import done_document

        backed_up(opened, file)
        document = done_document(opened, f"The register is copied into {file}.", file=file)
    answer(document, as_json=as_json)


@app.command()
def export(folder: Folder, *, register: Place = None, as_json: AsJson = False) -> None:
    """Write everything into a new folder of plain files."""
    with at(register, as_json=as_json) as opened, patience("writing"):
        from eyebar.store.documents import done_document
        from eyebar.store.exported import exported

        count = exported(opened, folder)
        document = done_document(
            opened, f"The register is in {folder}: {count} files and their hashes.", file=folder
        )
    answer(document, as_json=as_json)


@app.command("import")
def take_in(folder: Folder, *, register: Place = None, as_json: AsJson = False) -> None:
    """Make a register from an exported folder, identical."""
    with refusing(as_json=as_json), patience("reading"):
        from eyebar.store.exported import imported

        imported(folder, register)
    _made(f"The register is made from {folder}.", register, as_json=as_json)


@app.command()
def restore(
    file: Annotated[Path, typer.Argument(metavar="BACKUP", help="What backup has written.")],
    *,
    register: Place = None,
    as_json: AsJson = False,
) -> None:
    """Make a register from a backup, of this version or an older one."""
    with refusing(as_json=as_json), patience("copying"):
        from eyebar.store.copied import restored

        restored(file, register)
    _made(f"The register is made from {file}.", register, as_json=as_json)


def _made(done: str, place: str | None, *, as_json: bool) -> None:
    """Say what was made, and the head of its chain, to be compared."""
    with at(place, as_json=as_json) as opened:
        from eyebar.store.documents import done_document
        from eyebar.store.writing import head_of

        with opened.reading() as connection:
            _, head = head_of(connection)
        document = done_document(opened, done, chain=head)
    answer(document, as_json=as_json)
