"""Which documents a sheet is drawn from, and how it is written into a file."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from eyebar.documents.describe import describe_document
from eyebar.documents.drawn import drawn_document, drawn_of, standing_across
from eyebar.documents.explain import explain_document
from eyebar.documents.forces import forces_of
from eyebar.documents.influence import influence_document
from eyebar.documents.opened import Opened, opened
from eyebar.documents.proportion import proportion_document
from eyebar.documents.rate import document_of, rate_document
from eyebar.drawings import Printed, pin_drawing, stress_sheet
from eyebar.drawings.cross_section_sheet import cross_section_sheet
from eyebar.drawings.dxf_sheets import cross_section_dxf, elevation_dxf, floor_dxf
from eyebar.drawings.elevation_sheet import elevation_sheet
from eyebar.drawings.floor_sheet import floor_sheet
from eyebar.drawings.influence_sheet import influence_sheet
from eyebar.drawings.inspection_sheet import inspection_sheets
from eyebar.drawings.member_sheet import member_sheet
from eyebar.drawings.paper import SHEETS, Paper
from eyebar.drawings.pin_sheet import PAPER_OF_A_PIN
from eyebar.drawings.proportion_sheet import proportion_sheet
from eyebar.drawings.sign_sheet import sign_sheet
from eyebar.drawings.sizes import sheets_of
from eyebar.errors import OutOfRange, Unknown, nearest
from eyebar.rating import rated_bridge
from eyebar.rating.kept import kept_for
from eyebar.terms import Leaf, SheetName

Document = dict[str, Any]

WITH_DXF = (SheetName.ELEVATION, SheetName.CROSS_SECTION, SheetName.FLOOR)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was typed."""

    record: Path
    name: SheetName
    on: date | None = None
    office: Path | None = None
    truss: str | None = None
    vehicle: str | None = None
    part: str = ""
    size: str | None = None
    leaf: Leaf = Leaf.SHEET

    @property
    def stem(self) -> str:
        """The file's name without its ending."""
        if self.name is SheetName.STRESS:
            return self.record.stem
        named = self.part.replace("/", " ").removesuffix(" pin")
        return " ".join(filter(None, (self.record.stem, named, str(self.name))))

    @property
    def papers(self) -> Sequence[Paper]:
        """The sheets to try."""
        return sheets_of(self.size, narrow=self.leaf is Leaf.FIELD_BOOK)

    @property
    def opened(self) -> Opened:
        """The record, opened."""
        return opened(self.record, on=self.on, office=self.office)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnSheets:
    """Sheets that have been drawn: as files of their own, and for a page that brings the letters;
    the document that they come from, and what is printed of them."""

    svg: tuple[str, ...]
    printed: tuple[Printed, ...]
    document: Document
    what: str
    said: tuple[str, ...] = ()
    dxf: Callable[[], bytes] | None = None
    """What makes its DXF; None where it has none."""


def drawn_sheets(asked: Asked, file: Path) -> DrawnSheets:
    """The sheets asked for, to be written into a file. Raises as their documents and drawings do,
    and OutOfRange for a sheet that has no DXF."""
    if file.suffix.lower() == ".dxf" and asked.name not in WITH_DXF:
        raise OutOfRange("sheet as DXF", str(asked.name), "elevation, cross-section or floor")
    return _MADE[asked.name](asked)


def written(drawn: DrawnSheets, file: Path) -> list[Path]:
    """The files written, by the ending of the first; several sheets are numbered, or one PDF."""
    ending = file.suffix.lower()
    if ending == ".dxf" and drawn.dxf is not None:
        file.write_bytes(drawn.dxf())
        return [file]
    if ending == ".pdf":
        from eyebar.report.drawn import drawn_pdf

        file.write_bytes(drawn_pdf(drawn.printed, drawn.document))
        return [file]
    several = len(drawn.svg) > 1
    files = [
        file.with_name(f"{file.stem} {i}{file.suffix}") if several else file
        for i in range(1, len(drawn.svg) + 1)
    ]
    for one, svg, printed in zip(files, drawn.svg, drawn.printed, strict=True):
        if ending == ".png":
            from eyebar.report.drawn import drawn_png

            one.write_bytes(drawn_png(printed, drawn.document))
        else:
            one.write_text(svg, encoding="utf-8", newline="\n")
    return files


def _stress(asked: Asked) -> DrawnSheets:
    one = asked.opened
    # Before it is rated, which takes long.
    _known("truss", asked.truss, [truss.name for truss in one.bridge.trusses])
    _known("vehicle", asked.vehicle, one.rated_vehicles)
    kept = kept_for(one.bridge, one.values)
    rate = document_of(one, rated_bridge(one.bridge, one.values, one.rated_vehicles, kept))
    forces = forces_of(one, kept)
    sheet = stress_sheet(
        rate, forces, truss=asked.truss, vehicle=asked.vehicle, leaf=asked.leaf,
        papers=asked.papers if asked.size else SHEETS,
    )
    return DrawnSheets(
        svg=(sheet.svg,), printed=(sheet.printed,), document=rate,
        what=f"The {sheet.view.truss} truss",
    )


def _known(what: str, name: str | None, known: Iterable[str]) -> None:
    names = list(known)
    if name is not None and name not in names:
        raise Unknown(what, name, near=nearest(name, names))


def _pin(asked: Asked) -> DrawnSheets:
    document = explain_document(
        asked.record, asked.part, on=asked.on, office=asked.office, vehicle=asked.vehicle
    )
    one = pin_drawing(document, asked.papers if asked.size else (PAPER_OF_A_PIN,))
    return DrawnSheets(
        svg=(one.svg,), printed=(one.printed,), document=document, what=f"The pin {asked.part}",
        said=(one.view.answer, *one.view.cautions),
    )


def _elevation(asked: Asked) -> DrawnSheets:
    document = drawn_document(asked.record, on=asked.on, office=asked.office)
    sheets = [elevation_sheet(document, asked.papers, truss=asked.truss)]
    return _framed(sheets, document, lambda: elevation_dxf(document, asked.truss))


def _member(asked: Asked) -> DrawnSheets:
    document = drawn_document(asked.record, on=asked.on, office=asked.office)
    return _framed([member_sheet(document, asked.part, asked.papers)], document)


def _influence(asked: Asked) -> DrawnSheets:
    document = influence_document(
        asked.record, asked.part, on=asked.on, office=asked.office, vehicle=asked.vehicle
    )
    return _framed([influence_sheet(document, asked.papers)], document)


def _proportion(asked: Asked) -> DrawnSheets:
    document = proportion_document(
        asked.record, on=asked.on, office=asked.office, truss=asked.truss, vehicle=asked.vehicle
    )
    return _framed([proportion_sheet(document, asked.papers)], document)


def _inspection(asked: Asked) -> DrawnSheets:
    document = drawn_document(asked.record, on=asked.on, office=asked.office)
    described = describe_document(asked.record, on=asked.on, office=asked.office)
    wanted = asked.part or asked.truss or ""
    return _framed(inspection_sheets(document, described, asked.papers, wanted), document)


def _floor(asked: Asked) -> DrawnSheets:
    document = drawn_document(asked.record, on=asked.on, office=asked.office)
    sheets = [floor_sheet(document, asked.papers)]
    return _framed(sheets, document, lambda: floor_dxf(document))


def _cross_section(asked: Asked) -> DrawnSheets:
    one = asked.opened
    part = asked.part or asked.truss or one.bridge.trusses[0].name
    vehicle = asked.vehicle or one.values.names("posting.vehicles")[0]
    across = standing_across(one, vehicle, part)
    document = drawn_of(one, across)
    sheets = [cross_section_sheet(document, across, asked.papers)]
    return _framed(sheets, document, lambda: cross_section_dxf(document, across))


def _sign(asked: Asked) -> DrawnSheets:
    rate = rate_document(asked.record, on=asked.on, office=asked.office)
    return _framed([sign_sheet(rate, asked.papers)], rate)


def _framed(
    sheets: Sequence[Any], document: Document, dxf: Callable[[], bytes] | None = None
) -> DrawnSheets:
    return DrawnSheets(
        svg=tuple(one.svg for one in sheets), printed=tuple(one.printed for one in sheets),
        document=document, what=sheets[0].content.title, dxf=dxf,
    )


_MADE: Mapping[SheetName, Callable[[Asked], DrawnSheets]] = {
    SheetName.STRESS: _stress, SheetName.PIN: _pin, SheetName.ELEVATION: _elevation,
    SheetName.SIGN: _sign, SheetName.MEMBER: _member, SheetName.FLOOR: _floor,
    SheetName.CROSS_SECTION: _cross_section, SheetName.INFLUENCE: _influence,
    SheetName.PROPORTION: _proportion, SheetName.INSPECTION: _inspection,
}
