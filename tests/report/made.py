"""Reports of the demo bridges and of others, each made once in a test run, and read back."""

import io
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from eyebar.documents.gathered import Gathered, gathered
from eyebar.report.rating_report import Asked, rating_report
from eyebar.terms import Board, Working
from tests.documents import demos


@cache
def documents(name: str) -> Gathered:
    """The documents of a demo."""
    return gathered(demos.record(name))


BOARDED = "dovetansy"
"""The demo whose report has the board of who may cross: it costs another rating."""


@cache
def report(name: str) -> bytes:
    """The report of a demo with the working of what governs."""
    board = Board.ANSWERS if name == BOARDED else Board.NONE
    return rating_report(documents(name), Asked(board=board))


@cache
def brief(name: str) -> bytes:
    """The report of a demo without working and board."""
    return rating_report(documents(name), Asked(working=Working.NONE, board=Board.NONE))


def read(pdf: bytes) -> Any:
    """The file as a library for PDF reads it."""
    from pypdf import PdfReader

    return PdfReader(io.BytesIO(pdf))


@cache
def text(pdf: bytes) -> str:
    """All text of a file, lines joined; without soft breaks of words."""
    pages = [page.extract_text() for page in read(pdf).pages]
    return re.sub(r"\s+", " ", " ".join(pages))


def tags(node: Any) -> Iterator[Any]:
    """Every element of a structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        for one in node:
            yield from tags(one)
    elif hasattr(node, "get"):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from tags(node["/K"])


def figures(pdf: bytes) -> list[Any]:
    """The figures of a file, as its structure tells them."""
    tree = read(pdf).root_object["/StructTreeRoot"]
    return [one for one in tags(tree) if one["/S"] == "/Figure"]


def changed(name: str, folder: Path, *changes: tuple[str, str]) -> Path:
    """A demo's record with some of its text changed, in a folder."""
    written = demos.record(name).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in written, old
        written = written.replace(old, new)
    file = folder / f"{name}.yaml"
    file.write_text(written, encoding="utf-8")
    return file
