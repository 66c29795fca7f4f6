"""One workbench for all tests that change nothing."""

from collections.abc import Iterator

import pytest

from tests.web.benches import Seat, seated


@pytest.fixture(scope="session")
def seat(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Seat]:
    with seated(tmp_path_factory.mktemp("web"), "wrenmallow") as found:
        yield found


@pytest.fixture
def own_seat(tmp_path) -> Iterator[Seat]:
    with seated(tmp_path, "wrenmallow") as found:
        yield found
