"""What stands between a browser and the pages: who may come in, from where, with how much.

Everything here is refused before a page is looked for. The answers carry what a browser needs to
refuse the rest.
"""

from base64 import b64encode
from collections.abc import Awaitable, Callable, MutableMapping
from hashlib import sha256
from importlib.resources import files
from typing import Any

from starlette.concurrency import run_in_threadpool

from eyebar.store.accounts import Caller
from eyebar.web import urls
from eyebar.web.keepers import ByKey, Headers, Keeper

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

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
ONLY_TLS = (b"strict-transport-security", b"max-age=31536000")
STYLE = files("eyebar.web").joinpath("static", "refusal.css").read_text(encoding="utf-8")
"""Of what is said at the door, where a stranger is given no file: named in its policy by its hash.
"""
POLICY_AT_THE_DOOR = (
    f"default-src 'none'; style-src 'sha256-{b64encode(sha256(STYLE.encode()).digest()).decode()}';"
    " form-action 'none'; frame-ancestors 'none'; base-uri 'none'"
)
WORDS = {
    401: ("You are not let in", "Open the workbench by the address that the terminal printed. It "
          "works once; when it is tried again a fresh one is printed there."),
    403: ("This key is used up", "This address has been used, or is not the one that was printed. "
          "The terminal has printed a new one."),
    413: ("That is too large", f"The workbench takes {LARGEST_BODY // 1_000_000} MB at once. "
          "Nothing was read or changed."),
    421: ("Not this address", "The workbench does not answer at the address that you asked; "
          "it is reached at the one that it printed when it was opened."),
    429: ("That was too often", "Wait a minute, and try again."),
}
NOT_FROM_HERE = (
    "Not taken", "A form is taken only from a page of the workbench itself. Nothing was changed."
)


class Door:
    """The door in front of an application."""

    def __init__(self, app: App, *, keeper: Keeper, printing: Callable[[str], None]) -> None:
        self.app, self.keeper, self.printing = app, keeper, printing

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or let it in."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = {name.lower(): value for name, value in scope["headers"]}
        send = self._guarded(send)
        host = headers.get(b"host", b"").decode("latin-1")
        if host not in self.keeper.hosts or scope["scheme"] != self.keeper.scheme:
            await _refused(send, 421)
            return
        if await self._at_the_door(scope, headers, send):
            return
        caller = await run_in_threadpool(self.keeper.who, headers)
        if await self._turned_away(scope, headers, caller, send):
            return
        scope.setdefault("state", {})["caller"] = caller
        await self._let_in(scope, receive, send, caller)

    async def _at_the_door(self, scope: Scope, headers: Headers, send: Send) -> bool:
        """Answer what is about coming and going; whether it was."""
        path, keeper = scope["path"], self.keeper
        if isinstance(keeper, ByKey) and scope["method"] in SAFE and path.startswith("/enter/"):
            await self._enter(keeper, path.removeprefix("/enter/"), send)
            return True
        if path == urls.LEAVE and scope["method"] == "POST" and self._from_here(headers):
            await run_in_threadpool(keeper.left, headers)
            gone = _cookie(keeper, "", age=0)
            if isinstance(keeper, ByKey):
                await _refused(send, 401, more=((b"set-cookie", gone),))
            else:
                await _sent_on(send, urls.LOGIN, gone)
            return True
        return False

    async def _turned_away(
        self, scope: Scope, headers: Headers, caller: Caller | None, send: Send
    ) -> bool:
        """Refuse what may not come in; whether it was."""
        keeper, path, changing = self.keeper, scope["path"], scope["method"] not in SAFE
        address = scope["client"][0] if scope.get("client") else ""
        if keeper.too_often(address, caller):
            await _refused(send, 429, more=((b"retry-after", b"60"),))
            return True
        if caller is None and not keeper.is_open(path):
            await run_in_threadpool(keeper.written, None, address, f"refused {path}", 401)
            if isinstance(keeper, ByKey) or path.startswith("/json") or changing:
                await _refused(send, 401)
            else:
                await _sent_on(send, urls.LOGIN)
            return True
        if changing and not (caller and caller.by_token) and not self._from_here(headers):
            await run_in_threadpool(keeper.written, caller, address, f"refused {path}", 403)
            await _refused(send, 403, NOT_FROM_HERE)
            return True
        size = headers.get(b"content-length", b"0")
        if not size.isdigit() or int(size) > LARGEST_BODY or b"transfer-encoding" in headers:
            await _refused(send, 413)
            return True
        return False

    async def _let_in(
        self, scope: Scope, receive: Receive, send: Send, caller: Caller | None
    ) -> None:
        """The application's answer; what was asked to be changed is written down with it."""
        status = 500

        async def noted(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
            await send(message)

        try:
            await self.app(scope, _measured(receive), noted)
        except _TooLarge:
            status = 413
            await _refused(send, status)
        finally:
            if scope["method"] not in SAFE and scope["path"] != urls.LOGIN:
                address = scope["client"][0] if scope.get("client") else ""
                what = f"{scope['method']} {scope['path']}"
                await run_in_threadpool(self.keeper.written, caller, address, what, status)

    def _from_here(self, headers: Headers) -> bool:
        """Whether a request that changes something comes from a page of ours."""
        origin = headers.get(b"origin", b"").decode("latin-1")
        if not origin:
            return headers.get(b"sec-fetch-site") == b"same-origin"
        return origin == f"{self.keeper.scheme}://{headers[b'host'].decode('latin-1')}"

    async def _enter(self, keeper: ByKey, key: str, send: Send) -> None:
        token = keeper.let_in(key)
        if token is None:
            self.printing(urls.enter(keeper.key))
            await _refused(send, 403)
            return
        await _sent_on(send, urls.BRIDGES, _cookie(keeper, token))

    def _guarded(self, send: Send) -> Send:
        """The answer with its guarding headers; pages are not kept by anybody on the way."""
        tls = (ONLY_TLS,) if self.keeper.scheme == "https" else ()

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                there = {name for name, _ in message["headers"]}
                ours = [one for one in HEADERS if one[0] not in there]
                message["headers"] = [*message["headers"], *ours, *tls]
                if b"cache-control" not in there:
                    message["headers"].append((b"cache-control", b"no-store"))
            await send(message)
        return guarded


class _TooLarge(Exception):
    """More comes than is taken, whatever was declared."""


def _measured(receive: Receive) -> Receive:
    """What is sent, no more of it than is taken."""
    taken = 0

    async def measured() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > LARGEST_BODY:
            raise _TooLarge
        return message
    return measured


def _cookie(keeper: Keeper, token: str, age: int | None = None) -> bytes:
    ending = "" if age is None else f"; Max-Age={age}"
    secure = "; Secure" if keeper.scheme == "https" else ""
    return f"{keeper.cookie}={token}; Path=/; HttpOnly; SameSite=Strict{secure}{ending}".encode()


def session_cookie(keeper: Keeper, token: str) -> str:
    """The header that keeps a session in a browser."""
    return _cookie(keeper, token).decode()


async def _sent_on(send: Send, address: str, cookie: bytes | None = None) -> None:
    headers = [(b"location", address.encode())]
    if cookie:
        headers.append((b"set-cookie", cookie))
    await send({"type": "http.response.start", "status": 303, "headers": headers})
    await send({"type": "http.response.body", "body": b""})


async def _refused(
    send: Send, status: int, words: tuple[str, str] | None = None, *,
    more: tuple[tuple[bytes, bytes], ...] = (),
) -> None:
    heading, said = words or WORDS[status]
    body = (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>' + heading + "</title>"
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<style>{STYLE}</style><main><h1>{heading}</h1><p>{said}</p>"
        '<p class="small">The workbench of old truss bridges, eyebar</p></main></html>'
    ).encode()
    headers = [
        (b"content-type", b"text/html; charset=utf-8"),
        (b"content-security-policy", POLICY_AT_THE_DOOR.encode()), *more,
    ]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
