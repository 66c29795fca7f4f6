"""A register on each database, begun and empty."""

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


@pytest.fixture
def place(new_place: NewPlace) -> str:
    return new_place()


@pytest.fixture
def register(place: str) -> Iterator[Register]:
    with opened_register(place, begin=True) as opened:
        yield opened


@pytest.fixture
def in_file(tmp_path: Path) -> Iterator[Register]:
    """A register in a file, for what only a file can suffer."""
    with opened_register(str(tmp_path / "register.db"), begin=True) as opened:
        yield opened
