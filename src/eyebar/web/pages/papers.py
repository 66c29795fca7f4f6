"""The papers of a bridge: report, public sheet, board, drawings; what is issued, signed, kept."""

from collections.abc import Mapping
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from eyebar.addresses import address
from eyebar.errors import Unknown, Unreadable, nearest
from eyebar.store.documents import bridge_document
from eyebar.store.files import About, attach_content
from eyebar.store.issued import issue_document, sign
from eyebar.store.writing import plain_text
from eyebar.terms import Leaf, Reader, Role, Working
from eyebar.views.signed import NOT_A_SEAL
from eyebar.web import making, urls
from eyebar.web.answers import REFUSED, bench_of, page, person_of
from eyebar.web.bench import Bench
from eyebar.web.forms import Faults, Sent, gone_to, whole_number
from eyebar.web.kept import Rated
from eyebar.web.pages.looked_up import Latest, headed, latest, rated

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
    return _shown(request, latest(request), {}, Faults())


def _shown(request: Request, of: Latest, typed: Mapping[str, str], faults: Faults) -> Response:
    """The page, with a form as it was filled in and what is wrong with it."""
    document = bridge_document(bench_of(request).register, of.key)
    return page(
        "papers.html", document,
        heading=headed(request, of), papers=PAPERS, ratings=document["ratings"],
        postings=document["postings"], slips=document["slips"], files=document["files"],
        latest=of.revision.revision, not_a_seal=NOT_A_SEAL, person=person_of(request),
        typed=typed, faults=faults, status=REFUSED if faults else 200,
    )


def paper(request: Request) -> Response:
    """One paper as a file; while it is made the page asks again."""
    of, name = latest(request), request.path_params["name"]
    if name not in PAPERS:
        raise Unknown("paper", name, near=nearest(name, PAPERS))
    found, kept = rated(request, of), bench_of(request).kept
    if name == "board.pdf":
        given: tuple[Any, ...] = making.board_paper, kept.board(found)
    else:
        given = _making(name, found)
    made = kept.paper(name, found.text, *given)
    return Response(made, media_type=PDF if name.endswith(".pdf") else SVG, headers={
        "content-disposition": f'inline; filename="{of.key} {name}"'.encode(
            "ascii", "replace").decode(),
    })


def _making(name: str, found: Rated) -> tuple[Any, ...]:
    """What makes a paper, and what that is given."""
    if name.endswith(".svg"):
        return making.sheet, found.source, Leaf.FIELD_BOOK if "narrow" in name else Leaf.SHEET
    return (
        making.report, found.source, Working.ALL if "all" in name else Working.GOVERNING,
        Reader.PUBLIC if name == "public.pdf" else Reader.ENGINEER,
    )


def issue(request: Request, sent: Sent) -> Response:
    """Keep the rating of the latest revision in the register, as a draft."""
    of, bench, faults = latest(request), bench_of(request), Faults()
    with faults.at("why"):
        plain_text(sent.text("why"), "the reason")
    if faults:
        return _shown(request, of, sent.fields, faults)
    found = rated(request, of)
    issue_document(
        bench.register, of.key, of.revision, (found.rate, found.one.values.digest()),
        person=person_of(request), reason=sent.text("why"),
    )
    return gone_to(urls.bridge(of.key, "papers"))


def signed(request: Request, sent: Sent) -> Response:
    """Write down that somebody has checked a rating and answers for it."""
    of, bench, faults = latest(request), bench_of(request), Faults()
    name, licence = sent.text("name"), sent.text("licence")
    with faults.at("name"):
        plain_text(name, "the name of who signs")
        _among_those_who_sign(bench, name, licence)
    with faults.at("licence"):
        plain_text(licence, "the number of the licence")
    with faults.at("rating"):
        number = whole_number(sent.text("rating"), "a rating")
        if not faults:
            sign(bench.register, number, name=name, licence=licence, person=person_of(request))
    if faults:
        return _shown(request, of, sent.fields, faults)
    return gone_to(urls.bridge(of.key, "papers"))


def _among_those_who_sign(bench: Bench, name: str, licence: str) -> None:
    """Raises Unreadable for a name and licence that the people's file does not have."""
    if bench.people and (name, licence) not in {(one.name, one.licence) for one in bench.people}:
        signing = ", ".join(one.name for one in bench.people if one.role is Role.ENGINEER)
        raise Unreadable(name, "is not among those who sign, with this licence", f"{signing} are")


def upload(request: Request, sent: Sent) -> Response:
    """Keep a photograph or a file with a part."""
    of, bench, faults = latest(request), bench_of(request), Faults()
    part, note = sent.text("part"), sent.text("note")
    with faults.at("part"):
        part = str(address(part)) if part else ""
    with faults.at("note"):
        plain_text(note or "none", "the note")
    with faults.at("file"):
        if "file" not in sent.files:
            raise Unreadable("", "no file was sent", "choose one")
        if not faults:
            attach_content(
                bench.register, of.key, sent.files["file"], About(part=part, note=note),
                person=person_of(request), reason=sent.text("why") or "kept at the workbench",
            )
    if faults:
        return _shown(request, of, sent.fields, faults)
    return gone_to(urls.part(of.key, part) if part else urls.bridge(of.key))
