"""What `eyebar cross` asks for and prints: which vehicle, the board, the sentences, the slip."""

from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import Any

import typer

from eyebar.cli.printing import print_cautions, print_posting
from eyebar.cli.terminal import print_list, print_table, print_text
from eyebar.documents.written import written
from eyebar.vehicles import Vehicle, typed_vehicle
from eyebar.views.crossing import BoardRow, board, said, slip_lines
from eyebar.views.use import UseRow, use_rows

Document = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What was typed of a vehicle: its name, or axles with gauge and width."""

    name: str | None
    axles: str
    gauge: str
    width: str
    towing: bool
    every: bool

    def vehicles(self) -> list[str | Vehicle]:
        """The vehicle that is asked for; none for the whole board."""
        ways = (self.every, self.axles, self.name if not self.axles else None)
        if sum(map(bool, ways)) != 1:
            raise typer.BadParameter("name a vehicle, type its --axles, or ask for --all")
        if self.every:
            return []
        if not self.axles:
            assert self.name is not None
            return [self.name]
        return [typed_vehicle(
            self.axles, gauge=self.gauge, width=self.width, name=self.name or "own vehicle",
            towing=self.towing,
        )]


def slip_day(given: date | None) -> date:
    """The day of a crossing; today where none is given."""
    return given or datetime.now().astimezone().date()


def print_crossings(document: Document, *, every: bool) -> None:
    """The board, or the answer for one vehicle in sentences."""
    if every:
        print_posting(document)
        typer.echo()
        print_table(BoardRow, board(document))
        print_text("* figures of it are assumed: weigh it and measure it.")
    else:
        for one in document["vehicles"]:
            view = said(document, one)
            print_text(view.line, view.provisional, view.sign, view.axles)
            print_list(view.ways)
            print_text(view.figures)
    typer.echo()
    print_cautions(document)


def print_uses(document: Document) -> None:
    """The posting, and what each use of the road is worth."""
    print_posting(document)
    typer.echo()
    print_table(UseRow, use_rows(document))
    typer.echo()
    print_cautions(document)


def write_slip(document: Document, file: Path) -> None:
    """A slip as a PDF page or as JSON where the file's name ends so, as text else."""
    if file.suffix.lower() == ".pdf":
        from eyebar.report.slip_report import slip_report

        file.write_bytes(slip_report(document))
        return
    as_json = file.suffix.lower() == ".json"
    text = written(document) if as_json else "\n".join(slip_lines(document))
    file.write_text(text + "\n", encoding="utf-8", newline="\n")
