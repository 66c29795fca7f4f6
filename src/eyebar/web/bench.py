"""What a workbench is opened with, and what it keeps while it runs."""

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from eyebar.store.opened import Register
from eyebar.web.drafts import Drafts
from eyebar.web.keepers import Keeper
from eyebar.web.kept import Kept
from eyebar.web.people import Person


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """The register, the office's folder, who keeps the door, and what was rated already."""

    register: Register
    office: Path | None
    keeper: Keeper
    people: tuple[Person, ...] = ()
    """Who measures and who signs, where a file says so; anybody's name is taken where none does.
    """
    kept: Kept
    drafts: Drafts = field(default_factory=Drafts)
    slips: dict[int, dict[str, Any]] = field(default_factory=dict)
    """The slips given since it was opened, by their numbers, as documents."""
