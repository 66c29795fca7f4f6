"""Who keeps the door: by a key on this machine alone, or by accounts of a shared workbench."""

import secrets
import time
from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass, field
from http.cookies import CookieError, SimpleCookie
from threading import Lock
from typing import Protocol

from eyebar.store.accounts import Accounts, Caller
from eyebar.terms import Role

KEY_BYTES = 24
Headers = Mapping[bytes, bytes]


class Keeper(Protocol):
    """What the door asks: the hosts it answers for, its cookie, who comes, and what is open."""

    hosts: frozenset[str]
    cookie: str
    scheme: str

    def who(self, headers: Headers) -> Caller | None:
        """Who comes with these headers; None for a stranger."""

    def is_open(self, path: str) -> bool:
        """Whether a stranger may ask for it."""

    def too_often(self, address: str, caller: Caller | None) -> bool:
        """Whether this address or this caller has asked too often of late."""

    def written(self, caller: Caller | None, address: str, what: str, status: int) -> None:
        """Keep in mind that something was asked to be changed, or was refused."""

    def left(self, headers: Headers) -> None:
        """Whoever comes with these headers leaves."""


@dataclass(slots=True)
class Often:
    """How often something may happen within a while, by key."""

    most: int
    seconds: float
    seen: dict[str, deque[float]] = field(default_factory=dict)
    lock: Lock = field(default_factory=Lock)

    def count(self, key: str) -> bool:
        """Count one more; whether that is too many."""
        now = time.monotonic()
        with self.lock:
            times = self.seen.setdefault(key, deque())
            while times and times[0] < now - self.seconds:
                times.popleft()
            times.append(now)
            if len(times) > self.most:
                times.popleft()
                return True
            if len(self.seen) > 10_000:
                self.seen.pop(next(iter(self.seen)))
            return False

    def full(self, key: str) -> bool:
        """Whether one more would be too many; nothing is counted."""
        now = time.monotonic()
        times = [one for one in self.seen.get(key, ()) if one >= now - self.seconds]
        return len(times) >= self.most


@dataclass(slots=True, kw_only=True)
class ByKey:
    """A workbench on this machine alone: a one-time key in the printed address."""

    hosts: frozenset[str]
    person: str
    role: Role = Role.ENGINEER
    key: str = field(default_factory=lambda: secrets.token_urlsafe(KEY_BYTES))
    sessions: set[str] = field(default_factory=set)
    cookie: str = "eyebar-session"
    scheme: str = "http"

    def let_in(self, key: str) -> str | None:
        """A session's token for the key, which then is used up; None for any other."""
        if not secrets.compare_digest(key.encode(), self.key.encode()):
            return None
        self.key = secrets.token_urlsafe(KEY_BYTES)
        token = secrets.token_urlsafe(KEY_BYTES)
        self.sessions.add(token)
        return token

    def who(self, headers: Headers) -> Caller | None:
        """Whoever was let in by the key sits at the bench."""
        token = in_cookie(headers, self.cookie)
        known = any(secrets.compare_digest(token.encode(), one.encode()) for one in self.sessions)
        return Caller(name=self.person, role=self.role) if known else None

    def is_open(self, path: str) -> bool:
        """Nothing is."""
        del path
        return False

    def too_often(self, address: str, caller: Caller | None) -> bool:
        """Never: it is one person's own machine."""
        del address, caller
        return False

    def written(self, caller: Caller | None, address: str, what: str, status: int) -> None:
        """Nothing is written: the register itself says who changed what."""

    def left(self, headers: Headers) -> None:
        """Forget the session."""
        self.sessions.discard(in_cookie(headers, self.cookie))


@dataclass(slots=True, kw_only=True)
class ByAccount:
    """A shared workbench: accounts with passwords, and tokens for programs."""

    hosts: frozenset[str]
    accounts: Accounts
    cookie: str = "__Host-eyebar-session"
    scheme: str = "https"
    asked: Often = field(default_factory=lambda: Often(900, 60.0))
    of_account: Often = field(default_factory=lambda: Often(5, 900.0))
    of_address: Often = field(default_factory=lambda: Often(20, 900.0))

    def who(self, headers: Headers) -> Caller | None:
        """By the session in the cookie, or by the token of a program."""
        bearer = headers.get(b"authorization", b"").decode("latin-1")
        if bearer.startswith("Bearer "):
            return self.accounts.of_token(bearer.removeprefix("Bearer ").strip())
        secret = in_cookie(headers, self.cookie)
        return self.accounts.of_session(secret) if secret else None

    def is_open(self, path: str) -> bool:
        """The page to log in, and what it looks like."""
        return path == "/login" or path.startswith("/static/")

    def too_often(self, address: str, caller: Caller | None) -> bool:
        """More than nine hundred requests in a minute, from an address or by an account."""
        by_address = self.asked.count(f"from {address}")
        return (caller is not None and self.asked.count(f"by {caller.name}")) or by_address

    def written(self, caller: Caller | None, address: str, what: str, status: int) -> None:
        """A line of the trail."""
        self.accounts.written(caller.name if caller else "", address, what, status)

    def left(self, headers: Headers) -> None:
        """End the session."""
        self.accounts.end_session(in_cookie(headers, self.cookie))

    def log_in(self, name: str, password: str, address: str) -> str | None:
        """A session's secret; None where name and password do not fit, or after too many tries."""
        if self.of_account.full(name) or self.of_address.full(address):
            return None
        caller = self.accounts.checked(name, password)
        if caller is None:
            self.of_account.count(name)
            self.of_address.count(address)
            self.accounts.written("", address, "log in refused", 401)
            return None
        self.accounts.written(caller.name, address, "log in", 303)
        return self.accounts.begin_session(caller.name)


def in_cookie(headers: Headers, name: str) -> str:
    """What a cookie holds; empty for none."""
    jar: SimpleCookie = SimpleCookie()
    try:
        jar.load(headers.get(b"cookie", b"").decode("latin-1"))
    except CookieError:
        return ""
    return jar[name].value if name in jar else ""
