"""`eyebar report`: a paper written, or one held against its record."""

from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from eyebar import __version__
from eyebar.cli.printing import print_cautions, print_posting
from eyebar.cli.refusals import REFUSED
from eyebar.cli.register_report import kept_for
from eyebar.cli.terminal import patience, print_text
from eyebar.documents.cross import cross_document
from eyebar.documents.gathered import Gathered, board_beside, gathered
from eyebar.documents.schemas import document_read
from eyebar.errors import BadRecord, EyebarError, OutOfRange, Unstable
from eyebar.record import record_of
from eyebar.report.board_report import board_report
from eyebar.report.missing_report import missing_report, rated_at_all, refused_report
from eyebar.report.rating_report import Asked, rating_report
from eyebar.report.typeset import needed
from eyebar.report.verified import claims_of, verdict
from eyebar.terms import Board, Reader, Working
from eyebar.views.report_inventory import inventory_file
from eyebar.views.report_values import fingerprint
from eyebar.views.signed import on_the_front

if TYPE_CHECKING:
    from eyebar.store.signed import ForPaper

LARGEST = 200_000_000
"""Bytes of the largest file that is held against a record."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What the command line asks for."""

    record: Path
    office: Path | None
    on: date | None = None
    since: Path | None = None
    working: Working = Working.GOVERNING
    dated: date | None = None
    reader: Reader = Reader.ENGINEER
    board: Board = Board.ANSWERS

    def asked(self) -> Asked:
        """The same as the report asks it; reads the earlier result."""
        since = document_read(self.since.read_bytes()) if self.since else None
        return Asked(
            working=self.working, dated=self.dated, since=since, reader=self.reader,
            board=self.board,
        )


def write_report(wanted: Wanted, file: Path) -> None:
    """Write the report and the inventory items beside it; of a bridge that cannot be rated the
    paper of what is missing, and exit with 1."""
    needed()
    if wanted.reader is Reader.OPERATOR:
        _board(wanted, file)
        return
    asked = wanted.asked()
    try:
        with patience("rating the bridge"):
            of = gathered(wanted.record, on=wanted.on, office=wanted.office)
    except (BadRecord, Unstable) as refusal:
        day = asked.dated or wanted.on or datetime.now().astimezone().date()
        file.write_bytes(refused_report(wanted.record, refusal, day))
        _say_missing(file, refusal)
    if not rated_at_all(of):
        file.write_bytes(missing_report(of, asked.dated))
        print_posting(of.rate)
        _say_missing(file)
    if asked.reader is Reader.ENGINEER:
        of = board_beside(of, asked.board)
    with patience("setting the pages"):
        file.write_bytes(rating_report(of, asked))
    print_posting(of.rate)
    print_cautions(of.rate)
    if asked.reader is Reader.ENGINEER:
        _beside(file, of)
        print_text(f"The report lies in {file}, the inventory items in {_items(file)}.")
    else:
        print_text(f"The pages for the {asked.reader} lie in {file}.")


def _board(wanted: Wanted, file: Path) -> None:
    with patience("rating the bridge for every vehicle"):
        cross = cross_document(wanted.record, on=wanted.on, office=wanted.office)
        file.write_bytes(board_report(cross, wanted.dated))
    print_cautions(cross)
    print_text(f"The board for the wall lies in {file}.")


def _say_missing(file: Path, refusal: EyebarError | None = None) -> None:
    if refusal is not None:
        typer.echo(str(refusal), err=True)
    print_text(f"This bridge is not rated; what is missing is told in {file}.")
    raise typer.Exit(REFUSED)


def _items(file: Path) -> Path:
    return file.with_suffix(".inventory.csv")


def _beside(file: Path, of: Gathered) -> None:
    text = inventory_file(of.rate, of.describe, of.vehicles)
    _items(file).write_text(text, encoding="utf-8", newline="\n")


def write_kept(wanted: Wanted, kept: "ForPaper", file: Path) -> None:
    """Write the report of a rating that the register holds. Raises OutOfRange where this program
    makes another result of the record now."""
    needed()
    with patience("rating the bridge"):
        of = gathered(
            record_of(kept.revision.text, file=str(wanted.record)), on=wanted.on,
            office=wanted.office,
        )
    if fingerprint(of.rate) != fingerprint(kept.document):
        raise OutOfRange(
            "result", f"another now (eyebar {__version__}, these values)",
            f"that of rating {kept.kept.rating}, made by eyebar {kept.document['version']}; issue"
            " a new one, or give the office's folder that it was made with",
        )
    with patience("setting the pages"):
        file.write_bytes(rating_report(of, replace(wanted.asked(), register=kept.kept)))
    print_posting(of.rate)
    print_text(*on_the_front(kept.kept))
    print_cautions(of.rate)
    _beside(file, of)
    print_text(f"The report lies in {file}, the inventory items in {_items(file)}.")


def verified(report: Path, wanted: Wanted, place: str | None) -> None:
    """Say whether a report belongs to a record, and the head printed on it to the register at
    hand; exit with 1 where that is not proven."""
    with report.open("rb") as opened:
        file = opened.read(LARGEST)
    claimed = claims_of(file)
    kept, said = kept_for(claimed, place) if claimed.head else (None, ())
    with patience("making the report again"):
        of = gathered(wanted.record, on=claimed.on, office=wanted.office)
        asked = replace(
            wanted.asked(), working=claimed.working, dated=claimed.dated,
            reader=claimed.reader, board=claimed.board, register=kept,
        )
        found = verdict(file, claimed, of, asked)
    print_text(*found.said, *said)
    if not found.proven:
        raise typer.Exit(REFUSED)
