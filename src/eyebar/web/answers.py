"""Pages from views, and refusals as pages: the one place where a template is filled in."""

from dataclasses import dataclass
from functools import cache
from typing import Any
from urllib.parse import urlsplit

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape
from markupsafe import Markup
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response

from eyebar import __version__
from eyebar.documents.refused import error_document, error_of
from eyebar.errors import BadRecord, ChangedMeanwhile, EyebarError, NotAllowed, Unknown
from eyebar.store.accounts import Caller
from eyebar.web import urls
from eyebar.web.bench import Bench
from eyebar.web.door import POLICY, SAFE
from eyebar.web.kept import Making, StillRating

REFUSED, NOT_FOUND, NOT_SO, CHANGED, FORBIDDEN, ACCEPTED = 422, 404, 405, 409, 403, 202
BROKEN = 500
HEADINGS = {Unknown: "Not here", NotAllowed: "Not yours to do",
            ChangedMeanwhile: "Another has saved meanwhile"}
OWN_FAULT = (
    "The workbench could not do that, by a fault of its own; the terminal where it was opened says "
    "which. Nothing was half saved: a revision is kept whole or not at all."
)

FORM_OF = {
    "look": "measure", "save": "measure", "field": "field", "slip": "cross", "issue": "papers",
    "sign": "papers", "files": "papers",
}
"""Where a form is sent to -> the page that has it."""


@cache
def environment() -> Environment:
    """The templates; what is not ours is escaped, what is not there is a fault."""
    found = Environment(
        loader=PackageLoader("eyebar.web"), autoescape=select_autoescape(default=True),
        undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True,
    )
    found.globals.update(urls=urls, version=__version__, ours=Markup)
    return found


def bench_of(request: Request) -> Bench:
    """The workbench that a request came to."""
    found: Bench = request.app.state.bench
    return found


def caller_of(request: Request) -> Caller:
    """Who asks; the door let nobody else in."""
    found: Caller = request.state.caller
    return found


def person_of(request: Request) -> str:
    """The name under which what is done is kept."""
    return caller_of(request).name


def page(template: str, view: Any, *, status: int = 200, **more: Any) -> Response:
    """A template filled from a view."""
    text = environment().get_template(template).render(view=view, **more)
    return HTMLResponse(text, status_code=status)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """What is wrong, sentence by sentence, and where one may go from here."""

    heading: str
    sentences: tuple[str, ...]
    back: str = urls.BRIDGES
    tried: bool = False
    """Whether something was to be changed."""
    record: str = ""
    """Where the record can be mended, if it is a bridge that cannot be shown."""


def refused(request: Request, error: Exception) -> Response:
    """A refusal as a page, or as JSON for a program."""
    assert isinstance(error, EyebarError)
    if request.url.path.startswith("/json/"):
        return JSONResponse(error_document(error), status_code=_status(error))
    if isinstance(error, BadRecord):
        heading = "The record has faults"
        said = tuple(fault.sentence(error.file) for fault in error.faults)
    else:
        heading = next(
            (said for kind, said in HEADINGS.items() if isinstance(error, kind)), "Refused"
        )
        said = tuple(str(error).splitlines())
    return _refusal(request, heading, said, _status(error))


def _refusal(
    request: Request, heading: str, said: tuple[str, ...], status: int
) -> Response:
    return page("refused.html", Refusal(
        heading=heading, sentences=said, back=_whence(request),
        tried=request.method not in SAFE,
        record=_record(request) if status == REFUSED else "",
    ), status=status)


def not_taken(request: Request, error: Exception) -> Response:
    """An address that leads nowhere, or a form that is none of ours, as a page."""
    assert isinstance(error, HTTPException)
    if request.url.path.startswith("/json/"):
        code = Unknown.code if error.status_code == NOT_FOUND else "error"
        document = error_of(code, error.detail)
        return JSONResponse(document, status_code=error.status_code, headers=error.headers)
    said = {
        NOT_FOUND: "No page has this address.",
        NOT_SO: "This address takes what a form sends; it is no page to look at.",
    }.get(error.status_code, f"{error.detail}.")
    answer = _refusal(request, "Not here", (said,), error.status_code)
    answer.headers.update(error.headers or {})
    return answer


def broken(request: Request, error: Exception) -> Response:
    """A fault of our own: said plainly, with nothing of what is inside.

    It is answered outside the door, which adds no headers to it.
    """
    del error
    if request.url.path.startswith("/json/"):
        return JSONResponse(error_of("error", OWN_FAULT), status_code=BROKEN)
    refusal = Refusal(heading="A fault of the workbench", sentences=(OWN_FAULT,))
    answer = page("refused.html", refusal, status=BROKEN)
    answer.headers["content-security-policy"] = POLICY
    answer.headers["cache-control"] = "no-store"
    return answer


def _whence(request: Request) -> str:
    """The page of ours that a form or a link was on, where the browser says so."""
    came = urlsplit(request.headers.get("referer", ""))
    if came.netloc != request.url.netloc or not came.path or came.path.startswith("//"):
        return _back(request)
    return f"{came.path}?{came.query}" if came.query else came.path


def _back(request: Request) -> str:
    """The page whose form was sent; for what was only asked for, the list."""
    handle = request.path_params.get("handle")
    if request.method != "POST" or handle is None:
        return urls.NEW if request.method == "POST" else urls.BRIDGES
    return urls.bridge(handle, FORM_OF.get(request.url.path.rpartition("/")[2], ""))


def _record(request: Request) -> str:
    """Where the record of the bridge that was asked for can be mended."""
    handle = request.path_params.get("handle")
    return urls.bridge(handle, "measure") if handle and request.method in SAFE else ""


def _status(error: Exception) -> int:
    if isinstance(error, Unknown):
        return NOT_FOUND
    if isinstance(error, NotAllowed):
        return FORBIDDEN
    return CHANGED if isinstance(error, ChangedMeanwhile) else REFUSED


WAITING = {
    Making.RATING: ("The bridge is being rated", "Every place of every vehicle is looked at."),
    Making.CROSSING: ("The vehicle is being rated", "It is tried as it comes, then on conditions."),
    Making.TABLE: ("The vehicle is being led across", "Every place is looked for where an axle"
                   " stands over a panel point, or a bar goes slack or taut."),
    Making.PAPER: ("The paper is being made", "Its figures are those of the rating."),
    Making.COMPARISON: ("The revisions are being compared", "Each change is rated by itself."),
}
COMES_BACK = "This page comes back by itself."


def waiting(request: Request, error: Exception) -> Response:
    """The page while something is being made: it asks again by itself, script or not."""
    assert isinstance(error, StillRating)
    if request.url.path.startswith("/json/") or request.url.path.endswith(".json"):
        return JSONResponse({}, status_code=ACCEPTED, headers={"retry-after": "2"})
    heading, sentence = WAITING[error.what]
    if request.method == "POST":
        sent = request.state.sent
        said = f"{sentence} Nothing was changed yet: send the form again in a while."
        if sent.files:
            return _refusal(request, heading, (said,), CHANGED)
        return page("again.html", Refusal(heading=heading, sentences=(said,)), status=CHANGED,
                    address=request.url.path, fields=sent.fields, back=_whence(request))
    answer = page("waiting.html", Refusal(heading=heading, sentences=(f"{sentence} {COMES_BACK}",)))
    return asking_again(request, answer)


def asking_again(request: Request, answer: Response) -> Response:
    """The same answer, which the browser asks for again after a while."""
    again = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    answer.headers["Refresh"] = f"2; url={again}"
    return answer
