"""A register on each database, begun and empty."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from eyebar.store.opened import Register, opened_register
from tests.store.cluster import cluster, new_database

BOTH = ["sqlite", pytest.param("postgres", marks=pytest.mark.postgres)]


@pytest.fixture(scope="session")
def socket() -> Iterator[Path]:
    with cluster() as folder:
        yield folder


NewPlace = Callable[[], str]


@pytest.fixture(params=BOTH)
def new_place(request: pytest.FixtureRequest, tmp_path: Path) -> NewPlace:
    """Makes places where no register is yet, all on one kind of database."""
    if request.param == "postgres":
        folder: Path = request.getfixturevalue("socket")
        return lambda: new_database(folder)
    numbers = iter(range(1, 1000))
    return lambda: str(tmp_path / f"register-{next(numbers)}.db")


@pytest.fixture(scope="session")
def begun_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A register that is begun and empty; copying it is quicker than making its tables."""
    file = tmp_path_factory.mktemp("begun") / "register.db"
    with opened_register(str(file), begin=True):
        pass
    return file


@pytest.fixture(scope="session")
def begun_database(socket: Path) -> str:
    """The same as the name of a PostgreSQL database."""
    url = new_database(socket)
    with opened_register(url, begin=True):
        pass
    return url.partition("@/")[2].partition("?")[0]


@pytest.fixture
def place(new_place: NewPlace, request: pytest.FixtureRequest) -> str:
    """The place of a register that is begun and empty."""
    url = new_place()
    if "://" in url:
        name = request.getfixturevalue("begun_database")
        return new_database(request.getfixturevalue("socket"), name)
    shutil.copy(request.getfixturevalue("begun_file"), url)
    return url


@pytest.fixture
def register(place: str) -> Iterator[Register]:
    with opened_register(place) as opened:
        yield opened


@pytest.fixture
def in_file(tmp_path: Path, begun_file: Path) -> Iterator[Register]:
    """A register in a file, for what only a file can suffer."""
    place = tmp_path / "register.db"
    shutil.copy(begun_file, place)
    with opened_register(str(place)) as opened:
        yield opened
