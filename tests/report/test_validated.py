"""Every paper judged by a validator that is not ours, by the rules of both standards.

The validator is `page` (PyPI: page-validation), which its author holds against the corpora of files
by which other validators of PDF/A and PDF/UA are tested.
"""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from eyebar.cli.commands import app
from eyebar.report.rating_report import Asked, rating_report
from eyebar.report.slip_report import slip_report
from eyebar.terms import Reader
from tests.documents import demos
from tests.report import made
from tests.views import samples

pytestmark = [pytest.mark.typst, pytest.mark.validator]
LENGTH = "PDFA2A-STREAM-LENGTH-001"
STANDARDS = {"PDF/A-2a": "2a", "PDF/UA-1": "ua1"}


def faults(pdf: bytes) -> list[str]:
    """What the validator finds against each of the standards that a paper claims."""
    from page import validate_pdf_bytes

    found = []
    for name, profile in STANDARDS.items():
        judged = validate_pdf_bytes(pdf, profile=profile)
        assert judged.rules.total > 100
        found += [
            f"{name}: {one.rule_id}: {one.message}" for one in judged.failures
            if not (one.rule_id == LENGTH and lengths_are_true(pdf))
        ]
        assert judged.is_compliant == (judged.rules.failed == 0)
    return found


def lengths_are_true(pdf: bytes) -> bool:
    """Whether every stream ends where its /Length says. The validator takes a last byte that
    happens to be a line end for the line end before `endstream`, and so counts one too few."""
    begins = list(re.finditer(rb"(?<!end)stream\r?\n", pdf))
    for one in begins:
        size = re.search(rb"/Length (\d+)", pdf[pdf.rfind(b"obj", 0, one.start()) : one.start()])
        if size is None or not re.match(rb"\r?\n?endstream", pdf[one.end() + int(size[1]) :][:12]):
            return False
    return len(begins) == pdf.count(b"endstream") > 0


@pytest.mark.parametrize("name", demos.NAMES)
def test_the_report_is_what_it_claims_to_be(name: str) -> None:
    assert faults(made.report(name)) == []


def test_the_public_s_pages_are_too() -> None:
    pages = rating_report(made.documents("wrenmallow"), Asked(reader=Reader.PUBLIC))
    assert faults(pages) == []


def test_a_slip_is_too() -> None:
    assert faults(slip_report(samples.slip())) == []


def test_the_paper_of_what_is_missing_is_too(tmp_path: Path) -> None:
    record = made.changed("wrenmallow", tmp_path, ("built: 1900", "built: soon"))
    file = tmp_path / "missing.pdf"
    CliRunner().invoke(app, ["report", str(record), "-o", str(file)])
    assert faults(file.read_bytes()) == []


@pytest.mark.parametrize("spoilt", [
    # Of the same length, so that the rest of the file stays where it was.
    lambda pdf: pdf.replace(b"<pdfuaid:part>1</pdfuaid:part>", b"<pdfuaid:part>7</pdfuaid:part>"),
    lambda pdf: pdf.replace(b"<pdfaid:part>2</pdfaid:part>", b"<pdfaid:part>9</pdfaid:part>"),
    lambda pdf: pdf.replace(b"/Lang(en-US)", b"/Gnal(en-US)"),
    lambda pdf: pdf.replace(b"/Alt(", b"/Atl("),
    lambda pdf: pdf.replace(b"/FontFile", b"/FontLife"),
], ids=["its part of PDF/UA", "its part of PDF/A", "language", "words for figures", "letters"])
def test_what_was_spoilt_is_found(spoilt: Callable[[bytes], bytes]) -> None:
    pdf = spoilt(made.brief("wrenmallow"))
    assert pdf != made.brief("wrenmallow")
    assert faults(pdf)
