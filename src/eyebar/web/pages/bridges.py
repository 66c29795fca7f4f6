"""All bridges of the register."""

from datetime import datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.office import office_values
from eyebar.store.documents import list_document
from eyebar.terms import Role
from eyebar.views.columns import columns
from eyebar.views.workbench import BridgeRow, bridge_list
from eyebar.web.answers import asking_again, bench_of, caller_of, page
from eyebar.web.keepers import ByKey


def bridges(request: Request) -> Response:
    """The list, found and ordered as the address says."""
    bench, asked = bench_of(request), request.query_params
    values = office_values(bench.office)
    view = bridge_list(
        list_document(bench.register), find=asked.get("find", ""), sort=asked.get("sort", "name"),
        today=datetime.now().astimezone().date(),
        months=(values.number("inspection.interval"),
                values.number("inspection.interval where poor")),
    )
    rating = bench.kept.rating_all
    answer = page(
        "bridges.html", view, columns=columns(BridgeRow), caller=caller_of(request),
        place=bench.register.place.shown if isinstance(bench.keeper, ByKey) else "",
        may_measure=caller_of(request).may(Role.MEASURER), rating=rating,
    )
    return asking_again(request, answer) if rating else answer
