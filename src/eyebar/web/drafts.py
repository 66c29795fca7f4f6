"""Texts of records that were typed and are not saved yet: nothing typed is lost to a refusal."""

import secrets
from collections import OrderedDict
from dataclasses import dataclass, field
from threading import Lock

from eyebar.errors import Unknown

MOST = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A text: of which bridge (empty for a new one), made from which revision, and why."""

    handle: str
    onto: int
    text: str
    why: str = ""


@dataclass(slots=True, kw_only=True)
class Drafts:
    """The drafts of a workbench, by names that cannot be guessed; the oldest go first."""

    kept: OrderedDict[str, Draft] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)

    def keep(self, draft: Draft) -> str:
        """Keep a draft; its name."""
        name = secrets.token_urlsafe(12)
        with self.lock:
            self.kept[name] = draft
            while len(self.kept) > MOST:
                self.kept.popitem(last=False)
        return name

    def get(self, name: str, handle: str) -> Draft:
        """The draft of a name. Raises Unknown, also where it is another bridge's."""
        found = self.kept.get(name)
        if found is None or found.handle != handle:
            raise Unknown("draft", name, where="this workbench: it was closed since")
        return found
