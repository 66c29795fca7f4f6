"""`eyebar new`: a record begun, written where no file is yet."""

import shlex
from datetime import datetime
from pathlib import Path

import typer

from eyebar.bridge.begun import Beginning, begun
from eyebar.cli.demonstration import myself
from eyebar.cli.terminal import print_text
from eyebar.errors import OutOfRange


def begin(of: Beginning, file: Path) -> None:
    """Write a record begun from a form and a few sizes.

    Raises OutOfRange where the file is there already, and as `begun` does; nothing is written then.
    """
    text = begun(of, datetime.now().astimezone().date())
    try:
        with file.open("x", encoding="utf-8", newline="\n") as opened:
            opened.write(text)
    except FileExistsError:
        limit = "one that is not there yet: nothing is overwritten; name another with -o"
        raise OutOfRange("file", file, limit) from None


def print_begun(file: Path) -> None:
    """Where the record lies, what it needs, and what to type next."""
    print_text(
        f"A record is begun in {file}: its shape is there, and every 'not measured' in it is a"
        " question.", "Measure, write each size with its unit, and type:",
    )
    for name in ("check", "rate"):
        typer.echo(f"  {shlex.join([*myself(), name, str(file)])}")
