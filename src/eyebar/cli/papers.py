"""`eyebar report`: the papers of a bridge as PDF."""

from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import Office, On, Record, day, ends_in
from eyebar.cli.refusals import refusing
from eyebar.cli.register import Place
from eyebar.terms import Board, Reader, Working

PdfFile = Annotated[
    Path | None,
    typer.Option("-o", "--output", metavar="FILE.pdf", callback=ends_in(".pdf"),
                 help="Where it is written; else RECORD's name with .pdf, in this folder."),
]
Whose = Annotated[Working, typer.Option(help="Whose working is shown in full.")]
Across = Annotated[
    Board,
    typer.Option("--board", help="Who may cross: nothing, the answers, or on which conditions."),
]
Since = Annotated[
    Path | None,
    typer.Option(metavar="RESULT.json", help="An earlier `rate --json`: what changed since."),
]
Dated = Annotated[
    date | None,
    typer.Option(metavar="DATE", parser=day, help="Date of the paper; else the rating's."),
]
Verify = Annotated[
    Path | None,
    typer.Option(metavar="FILE.pdf", help="Write nothing: say if FILE belongs to RECORD."),
]


def report(
    record: Record,
    *,
    output: PdfFile = None,
    on: On = None,
    office: Office = None,
    working: Whose = Working.GOVERNING,
    reader: Annotated[
        Reader, typer.Option("--for", help="Who signs; the public; the board for a wall.")
    ] = Reader.ENGINEER,
    board: Across = Board.ANSWERS,
    since: Since = None,
    dated: Dated = None,
    verify: Verify = None,
    register: Place = None,
) -> None:
    """Write the report to be checked and signed, as PDF."""
    from eyebar.cli.reporting import Wanted, verified, write_report

    wanted = Wanted(
        record=record, office=office, on=on, since=since, working=working, dated=dated,
        reader=reader, board=board,
    )
    with refusing(as_json=False):
        if verify is not None:
            verified(verify, wanted, register)
        else:
            write_report(wanted, output or Path(f"{record.stem}.pdf"))
