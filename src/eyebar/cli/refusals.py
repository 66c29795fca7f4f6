"""Every refusal becomes one answer: sentences on the error stream, or a JSON object."""

import dataclasses
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import typer

from eyebar.cli.terminal import print_json
from eyebar.errors import BadRecord, EyebarError

ERROR_FORMAT = "eyebar/error/1"
REFUSED = 1


@contextmanager
def refusing(*, as_json: bool) -> Iterator[None]:
    """Turn a refusal inside the block into its answer and the exit code 1."""
    try:
        yield
    except EyebarError as refusal:
        _answer(_error_document(refusal.code, refusal), as_json=as_json)
    except BrokenPipeError:
        raise
    except OSError as refusal:
        place = f"{refusal.filename}: " if refusal.filename else ""
        text = f"{place}{refusal.strerror or refusal}"
        _answer({"format": ERROR_FORMAT, "code": "file", "text": text}, as_json=as_json)


def _answer(document: dict[str, Any], *, as_json: bool) -> None:
    if as_json:
        print_json(document)
    else:
        typer.echo(document["text"], err=True)
    raise typer.Exit(REFUSED)


def _error_document(code: str, refusal: EyebarError) -> dict[str, Any]:
    document: dict[str, Any] = {"format": ERROR_FORMAT, "code": code, "text": str(refusal)}
    if isinstance(refusal, BadRecord):
        document["file"] = refusal.file
        document["faults"] = [dataclasses.asdict(fault) for fault in refusal.faults]
    return document
