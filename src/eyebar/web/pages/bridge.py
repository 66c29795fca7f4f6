"""A bridge: the measured drawing, and one part of it chosen."""

from functools import partial
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from eyebar.addresses import address
from eyebar.drawings import pin_figure
from eyebar.drawings.on_page import (
    OnPage,
    floor_on_page,
    member_on_page,
    page_svg,
    truss_on_page,
)
from eyebar.errors import Unknown, nearest
from eyebar.store.files import files_of
from eyebar.views.report_working import IN_MATHML, working_section
from eyebar.views.workbench import part_groups, part_shown
from eyebar.web import urls
from eyebar.web.answers import bench_of, page
from eyebar.web.kept import Rated
from eyebar.web.making import Document
from eyebar.web.pages.looked_up import Latest, heading, latest, rated


def bridge(request: Request) -> Response:
    """The drawing of a truss, and the part that was pointed at; else the one that governs."""
    of = latest(request)
    found = rated(request, of)
    part = _part(found, request.query_params.get("part", ""))
    truss = _truss(found, request.query_params.get("truss", ""), part)
    drawing, floor = _drawing(of, found, truss), _floor(of, found)
    worked = _worked(found, part)
    return page(
        "bridge.html", part_shown(found.rate, found.describe, found.forces, part),
        heading=heading(of, found), drawing=drawing.svg(part) if drawing else "", truss=truss,
        groups=part_groups(found.rate, part),
        working=worked and working_section(worked, notation=IN_MATHML),
        photographs=_photographs(request, of, part), no_forces=found.answer.no_forces,
        section=member_on_page(found.drawn, part), pin=_pin(worked),
        floor=floor.svg(part) if floor else "",
        trusses=[one["truss"] for one in found.describe["trusses"]],
    )


def _drawing(of: Latest, found: Rated, truss: str) -> OnPage | None:
    """A truss of this bridge, drawn once; None where the forces cannot be told."""
    forces = found.forces
    return None if forces is None else found.once(
        ("truss", of.key, truss), lambda: truss_on_page(
            found.rate, forces, truss=truss, link=partial(urls.part, of.key)
        )
    )


def _floor(of: Latest, found: Rated) -> OnPage | None:
    return found.once(
        ("floor", of.key), lambda: floor_on_page(found.drawn, link=partial(urls.part, of.key))
    )


def _part(found: Rated, asked: str) -> str:
    """The part asked for, else the one that governs, else the first. Raises Unknown."""
    known = [one["part"] for one in found.rate["parts"]]
    if not asked:
        by = found.rate["posting"]["governed_by"]
        return str(by["part"]) if by else known[0]
    part = address(asked).part
    if part not in known:
        raise Unknown("part", part, near=nearest(part, known), where=found.rate["bridge"]["name"])
    return part


def _truss(found: Rated, asked: str, part: str) -> str:
    """The truss asked for, else that of the part, else the first."""
    names = [one["truss"] for one in found.describe["trusses"]]
    return next((one for one in (asked, part.split("/", maxsplit=1)[0]) if one in names), names[0])


def _worked(found: Rated, part: str) -> Document | None:
    """The working of the rating that governs a part; None for one that is not rated."""
    one = next(each for each in found.rate["parts"] if each["part"] == part)
    return None if one.get("not_rated") else found.explained(part)


def _pin(worked: Document | None) -> str:
    """The packing of a pin with its diagrams; empty for one not rated, and where nothing acts."""
    if worked is None or "pin" not in worked:
        return ""
    try:
        printed = pin_figure(worked).printed
    except Unknown:
        return ""
    return page_svg(printed.ink, (printed.width, printed.height), name="pin",
                    words=(printed.title, printed.said))


def _photographs(request: Request, of: Latest, part: str) -> list[dict[str, Any]]:
    with bench_of(request).register.reading() as connection:
        kept = files_of(connection, of.bridge.id)
    return [one for one in kept if one["part"] == part and not one["withdrawn"]]
