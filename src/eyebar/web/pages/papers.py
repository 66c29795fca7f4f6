"""The papers of a bridge: report, public sheet, board, drawings; issuing and signing."""

from collections.abc import Callable
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from eyebar.drawings import stress_sheet
from eyebar.errors import Unknown, Unreadable, nearest
from eyebar.report.board_report import board_report
from eyebar.report.missing_report import missing_report, rated_at_all
from eyebar.report.rating_report import Asked, rating_report
from eyebar.store.documents import bridge_document
from eyebar.store.issued import issue_document, sign
from eyebar.terms import Leaf, Reader, Role, Working
from eyebar.views.signed import NOT_A_SEAL
from eyebar.web import urls
from eyebar.web.answers import bench_of, page, person_of
from eyebar.web.forms import Sent, gone_to, whole_number
from eyebar.web.kept import Rated
from eyebar.web.pages.looked_up import headed, latest, rated

PDF, SVG = "application/pdf", "image/svg+xml"
PAPERS = {
    "report.pdf": "The report, to be checked line by line and signed",
    "report with all working.pdf": "The same with the working of every part",
    "public.pdf": "Two pages for commissioners and neighbours",
    "board.pdf": "Who may cross, for the office wall",
    "stress sheet.svg": "The stress sheet of the truss that governs",
    "stress sheet, narrow.svg": "The same for a telephone",
}


def papers(request: Request) -> Response:
    """What can be had, what was issued, and the forms to issue and to sign."""
    of, bench = latest(request), bench_of(request)
    document = bridge_document(bench.register, of.key)
    return page(
        "papers.html", document,
        heading=headed(request, of), papers=PAPERS, ratings=document["ratings"],
        postings=document["postings"], slips=document["slips"], files=document["files"],
        latest=of.revision.revision, not_a_seal=NOT_A_SEAL, person=person_of(request),
    )


def paper(request: Request) -> Response:
    """One paper as a file; while it is made the page asks again."""
    of, name = latest(request), request.path_params["name"]
    if name not in PAPERS:
        raise Unknown("paper", name, near=nearest(name, PAPERS))
    found, bench = rated(request, of), bench_of(request)
    if name == "board.pdf":
        cross = bench.kept.board(found)
        made = bench.kept.made(name, of.revision.text, lambda: board_report(cross, None))
    else:
        made = bench.kept.made(name, of.revision.text, _making(name, found))
    return Response(made, media_type=PDF if name.endswith(".pdf") else SVG, headers={
        "content-disposition": f'inline; filename="{of.key} {name}"'.encode(
            "ascii", "replace").decode(),
    })


def _making(name: str, found: Rated) -> Callable[[], bytes]:
    if name.endswith(".svg"):
        leaf = Leaf.FIELD_BOOK if "narrow" in name else Leaf.SHEET
        assert found.forces is not None
        forces: dict[str, Any] = found.forces
        return lambda: bytes(stress_sheet(found.rate, forces, leaf=leaf).svg, "utf-8")
    if not rated_at_all(found.gathered):
        return lambda: missing_report(found.gathered, None)
    asked = Asked(
        working=Working.ALL if "all" in name else Working.GOVERNING,
        reader=Reader.PUBLIC if name == "public.pdf" else Reader.ENGINEER,
    )
    return lambda: rating_report(found.gathered, asked)


def issue(request: Request, sent: Sent) -> Response:
    """Keep the rating of the latest revision in the register, as a draft."""
    of, bench = latest(request), bench_of(request)
    found = rated(request, of)
    issue_document(
        bench.register, of.key, of.revision, (found.rate, found.one.values.digest()),
        person=person_of(request), reason=sent.text("why"),
    )
    return gone_to(urls.bridge(of.key, "papers"))


def signed(request: Request, sent: Sent) -> Response:
    """Write down that somebody has checked a rating and answers for it."""
    of, bench = latest(request), bench_of(request)
    name, licence = sent.text("name"), sent.text("licence")
    if bench.people and (name, licence) not in {(one.name, one.licence) for one in bench.people}:
        signing = ", ".join(one.name for one in bench.people if one.role is Role.ENGINEER)
        raise Unreadable(name, "is not among those who sign, with this licence", f"{signing} are")
    sign(bench.register, whole_number(sent.text("rating"), "a rating"), name=name, licence=licence,
         person=person_of(request))
    return gone_to(urls.bridge(of.key, "papers"))
