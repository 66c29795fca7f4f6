"""Pages from views, and refusals as pages: the one place where a template is filled in."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from eyebar import __version__
from eyebar.errors import BadRecord, ChangedMeanwhile, EyebarError, Unknown
from eyebar.web import urls
from eyebar.web.bench import Bench
from eyebar.web.kept import StillRating

REFUSED, NOT_FOUND, CHANGED = 422, 404, 409


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
    """A refusal as a page."""
    back = request.url.path if request.method == "POST" else urls.BRIDGES
    if isinstance(error, Unknown):
        return page("refused.html", Refusal(heading="Not here", sentences=(str(error),)),
                    status=NOT_FOUND)
    if isinstance(error, BadRecord):
        faults = tuple(fault.sentence(error.file) for fault in error.faults)
        return page("refused.html", Refusal(heading="The record has faults", sentences=faults,
                                            back=back), status=REFUSED)
    status = CHANGED if isinstance(error, ChangedMeanwhile) else REFUSED
    said = tuple(str(error).splitlines()) if isinstance(error, EyebarError) else (str(error),)
    return page("refused.html", Refusal(heading="Refused", sentences=said, back=back),
                status=status)


def waiting(request: Request, _error: Exception) -> Response:
    """The page while a rating is being made: it asks again by itself, script or not."""
    assert isinstance(_error, StillRating)
    answer = page("waiting.html", Refusal(heading="The bridge is being rated", sentences=(
        "Every place of every vehicle is looked at. This page comes back by itself.",
    )))
    return asking_again(request, answer)


def asking_again(request: Request, answer: Response) -> Response:
    """The same answer, which the browser asks for again after a while."""
    again = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    answer.headers["Refresh"] = f"2; url={again}"
    return answer
