"""`eyebar demo`: an invented bridge from its record to its posting."""

import shlex
import shutil
import sys
from importlib.resources import as_file
from pathlib import Path
from typing import Any

import typer

from eyebar.cli.printing import print_cautions, print_posting
from eyebar.cli.terminal import patience, print_text
from eyebar.demo import SHOWN, bridge_records


def announce(folder: Path) -> None:
    """Say what is about to happen."""
    print_text(f"This rates an invented bridge; its record and the result go into {folder}/.")


def demonstrated(folder: Path) -> dict[str, Any]:
    """Rate the demo bridge, then write every demo record and the result into `folder`.

    A record that is there already is the user's own by now: it is kept, and rated as it stands.
    """
    from eyebar.documents.rate import rate_document
    from eyebar.documents.written import written as as_json

    records = bridge_records()
    written = _record(folder)
    with as_file(records[SHOWN]) as packaged, patience("rating the bridge"):
        document = rate_document(written if written.exists() else packaged, on=None, office=None)
    written.parent.mkdir(parents=True, exist_ok=True)
    for name, record in records.items():
        place = _record(folder, name)
        if not place.exists():
            place.write_bytes(record.read_bytes())
    text = as_json(document)
    _result(folder).write_text(text + "\n", encoding="utf-8")
    return document


def print_demonstration(document: dict[str, Any], folder: Path) -> None:
    """The posting, what governs it, where the result lies, and what to type next."""
    typer.echo()
    print_posting(document)
    typer.echo()
    print_cautions(document)
    typer.echo(f"\nThe whole result, unrounded: {_result(folder)}\nWhat to type next:")
    governing = document["posting"]["governed_by"]
    commands = [("rate",), *([("explain", governing["part"])] if governing else []), ("check",)]
    for name, *rest in commands:
        typer.echo(f"  {shlex.join([*myself(), name, str(_record(folder)), *rest])}")
    typer.echo(f"  {shlex.join([*myself(), 'serve', '--demo'])}    (the whole of it in a browser)")
    typer.echo("Change something in the record, then check it and rate it again.")


def _record(folder: Path, name: str = SHOWN) -> Path:
    return folder / "bridges" / f"{name}.yaml"


def _result(folder: Path) -> Path:
    return folder / f"{SHOWN}.rate.json"


def myself() -> list[str]:
    """How this program is called from where the user stands."""
    if shutil.which("eyebar"):
        return ["eyebar"]
    beside = Path(sys.executable).with_name("eyebar")
    if beside.exists():
        near = beside.is_relative_to(Path.cwd())
        return [str(beside.relative_to(Path.cwd()) if near else beside)]
    return [sys.executable, "-m", "eyebar"]
