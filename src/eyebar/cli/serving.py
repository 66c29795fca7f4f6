"""`eyebar serve`: the workbench."""

import tempfile
from pathlib import Path
from typing import Annotated

import typer

from eyebar.cli.options import Office
from eyebar.cli.refusals import refusing
from eyebar.demo import bridge_records
from eyebar.errors import MissingLibrary


def serve(
    *,
    port: Annotated[int, typer.Option(min=0, max=65535, help="0 takes a free one.")] = 0,
    register: Annotated[
        str | None,
        typer.Option("--register", metavar="PATH|URL", envvar="EYEBAR_REGISTER",
                     help="Which register; else the one in your data folder."),
    ] = None,
    demo: Annotated[
        bool, typer.Option("--demo", help="On a register of its own with the demo bridges.")
    ] = False,
    by: Annotated[
        str | None, typer.Option("--by", envvar="EYEBAR_BY", help="Who sits at it.")
    ] = None,
    office: Office = None,
) -> None:
    """Open the workbench: the whole of a bridge in a browser."""
    with refusing(as_json=False):
        try:
            from eyebar.web.serving import serve as opened
        except ModuleNotFoundError as missing:
            raise MissingLibrary(missing.name or "starlette", "the workbench", "office") from None

        with tempfile.TemporaryDirectory(prefix="eyebar-demo-") as folder:
            place = str(Path(folder) / "register.db") if demo else register
            if demo:
                typer.echo("The demo bridges are invented; what you change here goes with the end.")
            opened(place, port, office=office, person=by, demo=_texts() if demo else (),
                   saying=typer.echo)


def _texts() -> tuple[str, ...]:
    return tuple(record.read_text(encoding="utf-8") for record in bridge_records().values())
