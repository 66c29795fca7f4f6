"""Coming in where a workbench is shared: by name and password."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.errors import Unknown
from eyebar.web import urls
from eyebar.web.answers import bench_of, page
from eyebar.web.door import session_cookie
from eyebar.web.forms import Sent, gone_to
from eyebar.web.keepers import ByAccount


def login(request: Request) -> Response:
    """The page to log in."""
    _shared(request)
    return page("login.html", "", name="")


def logged_in(request: Request, sent: Sent) -> Response:
    """A session, where name and password fit; the refusal does not say which of them does not."""
    keeper = _shared(request)
    address = request.client.host if request.client else ""
    secret = keeper.log_in(sent.text("name"), sent.fields.get("password", ""), address)
    if secret is None:
        return page("login.html", "Name and password do not fit, or it was tried too often: wait a"
                    " quarter of an hour, or ask whoever keeps the accounts.", status=401,
                    name=sent.text("name"))
    answer = gone_to(urls.BRIDGES)
    answer.headers["set-cookie"] = session_cookie(keeper, secret)
    return answer


def _shared(request: Request) -> ByAccount:
    """The keeper of a shared workbench. Raises Unknown where there are no accounts."""
    keeper = bench_of(request).keeper
    if not isinstance(keeper, ByAccount):
        raise Unknown("page", urls.LOGIN)
    return keeper
