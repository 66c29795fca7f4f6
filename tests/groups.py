"""The groups of tests that need a tool from outside Python, and how to come by it."""

import shutil
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A marker, the programs any one of which serves it, and the line that brings it on Debian."""

    marker: str
    needs: str
    programs: tuple[str, ...]
    folders: tuple[str, ...] = ()
    """Where else than on the PATH the programs may lie, as patterns under `/`."""
    package: str

    def found(self) -> bool:
        """Whether one of the programs is on this machine."""
        return any(shutil.which(name) or self._lies_about(name) for name in self.programs)

    def _lies_about(self, name: str) -> bool:
        places: Iterable[str] = (f"{folder}/{name}" for folder in self.folders)
        return any(any(Path("/").glob(place)) for place in places)

    @property
    def brings(self) -> str:
        """The one line that brings the tool."""
        return f"apt-get install --no-install-recommends {self.package}"


GROUPS = (
    Group(
        marker="browser",
        needs="Chromium",
        programs=("chromium", "chromium-browser", "google-chrome"),
        package="chromium",
    ),
    Group(
        marker="calculix",
        needs="CalculiX",
        programs=("ccx",),
        package="calculix-ccx",
    ),
    Group(
        marker="poppler",
        needs="poppler",
        programs=("pdftoppm",),
        package="poppler-utils",
    ),
    Group(
        marker="postgres",
        needs="PostgreSQL",
        programs=("postgres",),
        folders=("usr/lib/postgresql/*/bin",),
        package="postgresql",
    ),
)
