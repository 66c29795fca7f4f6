"""What holds the bridge back."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.views.columns import columns
from eyebar.views.weakest import WeakRow, weak_list
from eyebar.web.answers import page
from eyebar.web.pages.looked_up import heading, latest, rated


def weakest(request: Request) -> Response:
    """The parts by safe load, and what the posting would be if each were no limit."""
    of = latest(request)
    found = rated(request, of)
    return page(
        "weakest.html", weak_list(found.rate), heading=heading(of, found),
        columns=columns(WeakRow), weakest=found.rate["weakest"],
    )
