"""Pages from views, and refusals as pages: the one place where a template is filled in."""

import dataclasses
from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response

from eyebar import __version__
from eyebar.errors import BadRecord, ChangedMeanwhile, EyebarError, NotAllowed, Unknown
from eyebar.store.accounts import Caller
from eyebar.web import urls
from eyebar.web.bench import Bench
from eyebar.web.kept import Making, StillRating

REFUSED, NOT_FOUND, CHANGED, FORBIDDEN, ACCEPTED = 422, 404, 409, 403, 202

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


def refused(request: Request, error: Exception) -> Response:
    """A refusal as a page, or as JSON for a program."""
    if request.url.path.startswith("/json/"):
        return JSONResponse(error_document(error), status_code=_status(error))
    back = _back(request)
    if isinstance(error, Unknown):
        return page("refused.html", Refusal(heading="Not here", sentences=(str(error),)),
                    status=_status(error))
    if isinstance(error, BadRecord):
        faults = tuple(fault.sentence(error.file) for fault in error.faults)
        return page("refused.html", Refusal(heading="The record has faults", sentences=faults,
                                            back=back), status=REFUSED)
    said = tuple(str(error).splitlines()) if isinstance(error, EyebarError) else (str(error),)
    return page("refused.html", Refusal(heading="Refused", sentences=said, back=back),
                status=_status(error))


def _back(request: Request) -> str:
    """The page whose form was sent; for what was only asked for, the list."""
    handle = request.path_params.get("handle")
    if request.method != "POST" or handle is None:
        return urls.NEW if request.method == "POST" else urls.BRIDGES
    return urls.bridge(handle, FORM_OF.get(request.url.path.rpartition("/")[2], ""))


def _status(error: Exception) -> int:
    if isinstance(error, Unknown):
        return NOT_FOUND
    if isinstance(error, NotAllowed):
        return FORBIDDEN
    return CHANGED if isinstance(error, ChangedMeanwhile) else REFUSED


def error_document(error: Exception) -> dict[str, Any]:
    """A refusal as the `error` document."""
    code = error.code if isinstance(error, EyebarError) else "error"
    found: dict[str, Any] = {"format": "eyebar/error/1", "code": code, "text": str(error)}
    if isinstance(error, BadRecord):
        found["file"] = error.file
        found["faults"] = [dataclasses.asdict(fault) for fault in error.faults]
    return found


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
        return page("refused.html", Refusal(
            heading=heading, sentences=("Send the form again in a while.",), back=_back(request)
        ), status=CHANGED)
    answer = page("waiting.html", Refusal(heading=heading, sentences=(f"{sentence} {COMES_BACK}",)))
    return asking_again(request, answer)


def asking_again(request: Request, answer: Response) -> Response:
    """The same answer, which the browser asks for again after a while."""
    again = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    answer.headers["Refresh"] = f"2; url={again}"
    return answer
