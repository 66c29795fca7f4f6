"""What a workbench is opened with, and what it keeps while it runs."""

import secrets
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from eyebar.store.opened import Register
from eyebar.web.drafts import Drafts
from eyebar.web.kept import Kept

KEY_BYTES = 24


@dataclass(slots=True, kw_only=True)
class Doorkeeper:
    """The one-time key of the printed address, and the sessions it has let in.

    `hosts` are the names under which the workbench may be asked for.
    """

    hosts: frozenset[str]
    key: str = field(default_factory=lambda: secrets.token_urlsafe(KEY_BYTES))
    sessions: set[str] = field(default_factory=set)

    def let_in(self, key: str) -> str | None:
        """A session's token for the key, which then is used up; None for any other."""
        if not secrets.compare_digest(key.encode(), self.key.encode()):
            return None
        self.key = secrets.token_urlsafe(KEY_BYTES)
        token = secrets.token_urlsafe(KEY_BYTES)
        self.sessions.add(token)
        return token

    def knows(self, token: str) -> bool:
        """Whether a session's token is one of ours."""
        return any(secrets.compare_digest(token.encode(), one.encode()) for one in self.sessions)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """The register, the office's folder, who sits at it, the door, and what was rated already."""

    register: Register
    office: Path | None
    person: str
    door: Doorkeeper
    kept: Kept
    drafts: Drafts = field(default_factory=Drafts)
    slips: dict[int, dict[str, Any]] = field(default_factory=dict)
    """The slips given since it was opened, by their numbers, as documents."""
