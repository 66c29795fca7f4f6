"""The groups of tests that need what the plain package has not, and how to come by it."""

import shutil
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A marker, the programs any one of which serves it (or the libraries, all of which it needs),
    and the line that brings it: on Debian, or with pip where it is a library."""

    marker: str
    needs: str
    programs: tuple[str, ...] = ()
    libraries: tuple[str, ...] = ()
    folders: tuple[str, ...] = ()
    """Where else than on the PATH the programs may lie, as patterns under `/`."""
    package: str

    def found(self) -> bool:
        """Whether one of the programs, or every library, is on this machine."""
        if self.libraries:
            return all(find_spec(name) for name in self.libraries)
        return any(shutil.which(name) or self._lies_about(name) for name in self.programs)

    def _lies_about(self, name: str) -> bool:
        places: Iterable[str] = (f"{folder}/{name}" for folder in self.folders)
        return any(any(Path("/").glob(place)) for place in places)

    @property
    def brings(self) -> str:
        """The one line that brings it."""
        if self.libraries:
            return f"pip install {self.package}"
        return f"apt-get install --no-install-recommends {self.package}"


GROUPS = (
    Group(
        marker="typst",
        needs="typst",
        libraries=("typst", "pypdf"),
        package="'.[office]' pypdf",
    ),
    Group(
        marker="validator",
        needs="a validator of PDF/A and PDF/UA",
        libraries=("typst", "page"),
        package="'.[office]' page-validation",
    ),
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
