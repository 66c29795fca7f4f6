"""Photographs and files of a bridge, handed out."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.errors import Unknown
from eyebar.store.asked import bridge_named
from eyebar.store.files import fetched
from eyebar.web.answers import bench_of

SHOWN = ("image/jpeg", "image/png", "image/webp", "image/gif")
"""What a browser may show; everything else is handed out to be saved."""


def fetch(request: Request) -> Response:
    """The bytes of a file of this bridge."""
    number = int(request.path_params["number"])
    with bench_of(request).register.reading() as connection:
        bridge = bridge_named(connection, request.path_params["handle"])
        row, content = fetched(connection, number)
    if row["bridge"] != bridge.id:
        raise Unknown("file", str(number), where=f"bridge {bridge.handle}")
    kind = row["media_type"]
    way = "inline" if kind in SHOWN else "attachment"
    return Response(content, media_type=kind if way == "inline" else "application/octet-stream",
                    headers={"content-disposition": f'{way}; filename="file-{number}"'})
