"""Photographs and files of a bridge."""

from starlette.requests import Request
from starlette.responses import Response

from eyebar.errors import Unknown, Unreadable
from eyebar.store.asked import bridge_named
from eyebar.store.files import About, attach_content, fetched
from eyebar.web import urls
from eyebar.web.answers import bench_of, person_of
from eyebar.web.forms import Sent, gone_to
from eyebar.web.pages.looked_up import latest

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


def upload(request: Request, sent: Sent) -> Response:
    """Keep a photograph or a file with a part."""
    of, bench = latest(request), bench_of(request)
    if "file" not in sent.files:
        raise Unreadable("", "no file was sent", "choose one")
    part = sent.text("part")
    attach_content(
        bench.register, of.key, sent.files["file"], About(part=part, note=sent.text("note")),
        person=person_of(request), reason=sent.text("why") or "kept at the workbench",
    )
    return gone_to(urls.part(of.key, part) if part else urls.bridge(of.key))
