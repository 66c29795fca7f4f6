"""Every refusal becomes one answer: sentences on the error stream, or a JSON object."""

from collections.abc import Iterator
from contextlib import contextmanager

import typer

from eyebar.cli.terminal import print_json
from eyebar.errors import EyebarError

REFUSED = 1


@contextmanager
def refusing(*, as_json: bool) -> Iterator[None]:
    """Turn a refusal inside the block into its answer and the exit code 1."""
    try:
        yield
    except BrokenPipeError:
        raise
    except (EyebarError, OSError) as refusal:
        _answer(refusal, as_json=as_json)


def _answer(refusal: EyebarError | OSError, *, as_json: bool) -> None:
    from eyebar.documents.refused import error_document

    document = error_document(refusal)
    if as_json:
        print_json(document)
    else:
        typer.echo(document["text"], err=True)
    raise typer.Exit(REFUSED)
