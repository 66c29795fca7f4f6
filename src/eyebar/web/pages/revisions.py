"""Every revision of a bridge's record, what changed between two, and what that did."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.store.documents import bridge_document, compare_document, history_document
from eyebar.views import register as views
from eyebar.views.columns import columns
from eyebar.web.answers import bench_of, page
from eyebar.web.forms import whole_number
from eyebar.web.kept import Making
from eyebar.web.pages.looked_up import Latest, headed, latest


def revisions(request: Request) -> Response:
    """The revisions, and the comparison of two of them where the address asks for it."""
    of, bench = latest(request), bench_of(request)
    document = bridge_document(bench.register, of.key)
    return page(
        "revisions.html", views.revision_rows(document), heading=headed(request, of),
        compared=_compared(request, of), change_columns=columns(views.ChangeRow),
        events=views.event_rows(history_document(bench.register, of.key)),
        event_columns=columns(views.EventRow), latest=of.revision.revision,
    )


def _compared(request: Request, of: Latest) -> object:
    asked = request.query_params
    if not asked.get("from"):
        return None
    bench = bench_of(request)
    last = asked.get("to")
    between = (
        whole_number(asked["from"], "a revision"),
        whole_number(last, "a revision") if last else None,
    )
    name = f"compare {of.key} {between}"
    document = bench.kept.made(name, of.revision.text, lambda: compare_document(
        bench.register, of.key, between=between, office=bench.office, most=6
    ), Making.COMPARISON)
    return {"said": views.compared(document), "rows": views.change_rows(document)}


def text(request: Request) -> Response:
    """The text of a revision, as it was written."""
    from eyebar.store.asked import bridge_named, revision_of

    with bench_of(request).register.reading() as connection:
        bridge = bridge_named(connection, request.path_params["handle"])
        found = revision_of(connection, bridge, int(request.path_params["number"]))
    return Response(found.text, media_type="text/plain; charset=utf-8")
