"""A bridge: the measured drawing, and one part of it chosen."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.addresses import address
from eyebar.drawings import pin_figure
from eyebar.drawings.on_page import floor_on_page, member_on_page, page_svg, truss_on_page
from eyebar.errors import Unknown, nearest
from eyebar.store.documents import bridge_document
from eyebar.views.report_working import IN_MATHML, working_section
from eyebar.views.workbench import part_groups, part_shown
from eyebar.web import urls
from eyebar.web.answers import bench_of, page
from eyebar.web.kept import Rated
from eyebar.web.pages.looked_up import Latest, heading, latest, rated


def bridge(request: Request) -> Response:
    """The drawing of a truss, and the part that was pointed at; else the one that governs."""
    of = latest(request)
    found = rated(request, of)
    part = _part(found, request.query_params.get("part", ""))
    drawing = None if found.forces is None else truss_on_page(
        found.rate, found.forces, truss=_truss(found, request.query_params.get("truss", ""), part),
        chosen=part, link=lambda one: urls.part(of.key, one),
    )
    return page(
        "bridge.html", part_shown(found.rate, found.gathered.describe, found.forces, part),
        heading=heading(of, found), drawing=drawing, groups=part_groups(found.rate, part),
        working=_working(found, part), photographs=_photographs(request, of, part),
        no_forces=found.gathered.no_forces,
        section=member_on_page(found.drawn, part), pin=_pin(found, part),
        floor=floor_on_page(found.drawn, chosen=part, link=lambda one: urls.part(of.key, one)),
        trusses=[one["truss"] for one in found.gathered.describe["trusses"]],
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
    names = [one["truss"] for one in found.gathered.describe["trusses"]]
    return next((one for one in (asked, part.split("/", maxsplit=1)[0]) if one in names), names[0])


def _working(found: Rated, part: str) -> object:
    one = next(each for each in found.rate["parts"] if each["part"] == part)
    if one.get("not_rated"):
        return None
    return working_section(found.explained(part), notation=IN_MATHML)


def _pin(found: Rated, part: str) -> str:
    """The packing of a pin with its diagrams; empty for what is none, or is not rated."""
    one = next(each for each in found.rate["parts"] if each["part"] == part)
    if one["kind"] != "pin" or one.get("not_rated"):
        return ""
    printed = pin_figure(found.explained(part)).printed
    return page_svg(printed.ink, (printed.width, printed.height), name="pin",
                    words=(printed.title, printed.said))


def _photographs(request: Request, of: Latest, part: str) -> list[dict[str, object]]:
    document = bridge_document(bench_of(request).register, of.key)
    return [
        one for one in document["files"]
        if one["part"] == part and not one["withdrawn"]
    ]
