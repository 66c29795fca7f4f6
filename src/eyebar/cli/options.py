"""Arguments and options that several commands share."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from eyebar.terms import Level, Method


def day(text: str) -> date:
    """A date as it is typed."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise typer.BadParameter(f"'{text}' is not a date; write it like 2026-06-09") from None



Record = Annotated[Path, typer.Argument(metavar="RECORD", help="A bridge record (YAML).")]
On = Annotated[
    date | None,
    typer.Option(
        metavar="DATE",
        parser=day,
        help="As the bridge stood then (2026-06-09); else at its latest dated entry.",
    ),
]
Office = Annotated[
    Path | None,
    typer.Option(metavar="FOLDER", help="Your office's own values, vehicles and policy."),
]
AsJson = Annotated[bool, typer.Option("--json", help="The whole result, unrounded, as JSON.")]
VehicleName = Annotated[str | None, typer.Option("--vehicle", help="Under this vehicle alone.")]
ByMethod = Annotated[Method | None, typer.Option("--method", help="By this method.")]
AtLevel = Annotated[Level | None, typer.Option("--level", help="At this level.")]


def ends_in(ending: str) -> Callable[[Path | None], Path | None]:
    """A check that a file is named with an ending."""
    def checked(file: Path | None) -> Path | None:
        if file is not None and file.suffix.lower() != ending:
            raise typer.BadParameter(f"'{file}' does not end in {ending}")
        return file

    return checked
