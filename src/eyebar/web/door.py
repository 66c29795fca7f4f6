"""What stands between a browser and the pages: who may come in, from where, with how much.

Everything here is refused before a page is looked for. The answers carry what a browser needs to
refuse the rest.
"""

from collections.abc import Awaitable, Callable, MutableMapping
from http.cookies import CookieError, SimpleCookie
from typing import Any

from eyebar.web import urls
from eyebar.web.bench import Doorkeeper

Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[MutableMapping[str, Any], Receive, Send], Awaitable[None]]

COOKIE = "eyebar-session"
LARGEST_BODY = 52_000_000
"""Bytes of a request; a file of the register may have 50 million."""
SAFE = ("GET", "HEAD")
POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'"
)
HEADERS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(), geolocation=(), microphone=()"),
)
WORDS = {
    400: "This address is not one of the workbench's.",
    401: "Open the workbench by the address that the terminal printed.",
    403: "This address has been used, or is not the one that was printed. The terminal has printed"
         " a new one.",
    421: "This address is not one of the workbench's.",
    413: "That is too large.",
}


class Door:
    """The door in front of an application."""

    def __init__(self, app: App, *, keeper: Doorkeeper, printing: Callable[[str], None]) -> None:
        self.app, self.keeper, self.printing = app, keeper, printing

    async def __call__(self, scope: MutableMapping[str, Any], receive: Receive, send: Send) -> None:
        """Answer a request, or let it in."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = {name.lower(): value for name, value in scope["headers"]}
        if headers.get(b"host", b"").decode("latin-1") not in self.keeper.hosts:
            await _refused(send, 421)
            return
        path = scope["path"]
        if scope["method"] in SAFE and path.startswith("/enter/"):
            await self._enter(path.removeprefix("/enter/"), send)
            return
        token = _token(headers)
        if not token or not self.keeper.knows(token):
            await _refused(send, 401)
            return
        if scope["method"] not in SAFE and not self._from_here(headers):
            await _refused(send, 403)
            return
        if path == urls.LEAVE and scope["method"] == "POST":
            self.keeper.sessions.discard(token)
            await _refused(send, 401, _cookie("", age=0))
            return
        size = headers.get(b"content-length", b"0")
        if not size.isdigit() or int(size) > LARGEST_BODY or b"transfer-encoding" in headers:
            await _refused(send, 413)
            return
        await self.app(scope, receive, _guarded(send))

    def _from_here(self, headers: dict[bytes, bytes]) -> bool:
        """Whether a request that changes something comes from a page of ours."""
        origin = headers.get(b"origin", b"").decode("latin-1")
        if not origin:
            return headers.get(b"sec-fetch-site") == b"same-origin"
        scheme, _, host = origin.partition("://")
        return scheme in ("http", "https") and host == headers[b"host"].decode("latin-1")

    async def _enter(self, key: str, send: Send) -> None:
        token = self.keeper.let_in(key)
        if token is None:
            self.printing(urls.enter(self.keeper.key))
            await _refused(send, 403)
            return
        await send({"type": "http.response.start", "status": 303, "headers": [
            (b"location", urls.BRIDGES.encode()), (b"set-cookie", _cookie(token)), *HEADERS,
            (b"cache-control", b"no-store"),
        ]})
        await send({"type": "http.response.body", "body": b""})


def _token(headers: dict[bytes, bytes]) -> str:
    """The session's token in a request; empty for none."""
    jar: SimpleCookie = SimpleCookie()
    try:
        jar.load(headers.get(b"cookie", b"").decode("latin-1"))
    except CookieError:
        return ""
    return jar[COOKIE].value if COOKIE in jar else ""


def _cookie(token: str, age: int | None = None) -> bytes:
    ending = "" if age is None else f"; Max-Age={age}"
    return f"{COOKIE}={token}; Path=/; HttpOnly; SameSite=Strict{ending}".encode()


def _guarded(send: Send) -> Send:
    """The answer with its guarding headers; pages are not kept by anybody on the way."""
    async def guarded(message: Message) -> None:
        if message["type"] == "http.response.start":
            there = {name for name, _ in message["headers"]}
            message["headers"] = [*message["headers"], *HEADERS]
            if b"cache-control" not in there:
                message["headers"].append((b"cache-control", b"no-store"))
        await send(message)
    return guarded


async def _refused(send: Send, status: int, cookie: bytes | None = None) -> None:
    body = f"<!doctype html><html lang=en><title>eyebar</title><p>{WORDS[status]}</p>".encode()
    headers = [(b"content-type", b"text/html; charset=utf-8"), *HEADERS,
               (b"cache-control", b"no-store")]
    if cookie:
        headers.append((b"set-cookie", cookie))
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
