"""Reports of the demo bridges and of others, each made once in a test run, and read back."""

import io
import re
from functools import cache
from pathlib import Path
from typing import Any

from eyebar.documents.gathered import Gathered, gathered
from eyebar.report.rating_report import Asked, rating_report
from eyebar.terms import Working
from tests.documents import demos


@cache
def documents(name: str) -> Gathered:
    """The documents of a demo."""
    return gathered(demos.record(name))


@cache
def report(name: str) -> bytes:
    """The report of a demo with the working of what governs."""
    return rating_report(documents(name), Asked())


@cache
def brief(name: str) -> bytes:
    """The report of a demo without working."""
    return rating_report(documents(name), Asked(working=Working.NONE))


def read(pdf: bytes) -> Any:
    """The file as a library for PDF reads it."""
    from pypdf import PdfReader

    return PdfReader(io.BytesIO(pdf))


@cache
def text(pdf: bytes) -> str:
    """All text of a file, lines joined; without soft breaks of words."""
    pages = [page.extract_text() for page in read(pdf).pages]
    return re.sub(r"\s+", " ", " ".join(pages))


def changed(name: str, folder: Path, *changes: tuple[str, str]) -> Path:
    """A demo's record with some of its text changed, in a folder."""
    written = demos.record(name).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in written, old
        written = written.replace(old, new)
    file = folder / f"{name}.yaml"
    file.write_text(written, encoding="utf-8")
    return file
