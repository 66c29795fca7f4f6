"""How views and documents are printed: tables within 100 columns, JSON, and a sign of patience."""

import sys
import textwrap
import threading
import time
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from typing import Any

import typer

from eyebar.views.columns import cells, columns

WIDTH = 100
PATIENCE_SECONDS = 1.0
"""What a command takes before it says what it is doing, its libraries counted."""
BEGAN = time.monotonic()
"""When this command began, nearly: its libraries come after this module."""


def print_json(document: dict[str, Any]) -> None:
    """Print a document for machines."""
    from eyebar.documents.written import written

    sys.stdout.write(written(document) + "\n")  # large: typer would look through it for colours


def print_text(*paragraphs: str) -> None:
    """Print sentences, each its own paragraph; empty ones are left out."""
    for paragraph in filter(None, paragraphs):
        typer.echo(textwrap.fill(paragraph, WIDTH, break_long_words=False, break_on_hyphens=False))


def print_list(sentences: Iterable[str]) -> None:
    """Print sentences as a list."""
    for sentence in sentences:
        lines = textwrap.wrap(
            sentence, WIDTH, initial_indent="- ", subsequent_indent="  ",
            break_long_words=False, break_on_hyphens=False,
        )
        typer.echo("\n".join(lines))


def print_table(view: type, rows: Sequence[Any]) -> None:
    """Print rows of a view under its headings, figures to the right."""
    from rich import box
    from rich.console import Console
    from rich.table import Table

    console = Console(markup=False, highlight=False, emoji=False)
    console.width = min(console.width, WIDTH) if console.is_terminal else WIDTH
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, padding=(0, 1, 0, 0), header_style="")
    table.show_edge = False
    for column in columns(view):
        table.add_column(
            column.heading,
            justify="right" if column.figure else "left",
            no_wrap=column.figure,
            overflow="fold",
        )
    for row in rows:
        table.add_row(*cells(row))
    console.print(table)


@contextmanager
def patience(doing: str) -> Iterator[None]:
    """Say on the error stream what is being done, where a person waits for it at a terminal and
    the command has run for a second."""
    if not sys.stderr.isatty():
        yield
        return
    from rich.console import Console

    status = Console(stderr=True).status(doing)
    timer = threading.Timer(max(0.0, BEGAN + PATIENCE_SECONDS - time.monotonic()), status.start)
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
        timer.join()
        status.stop()
