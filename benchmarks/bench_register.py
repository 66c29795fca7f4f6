"""A register of 500 bridges with 20 revisions each: list, one bridge, import, verify.

The sizes are those of a large office; the times are printed, and beside them as ratios to reading
the same bytes from the disk, which says more on another machine.
"""

from importlib.resources import as_file
from pathlib import Path

import pytest

from benchmarks.timing import least
from eyebar.demo import SHOWN, bridge_records
from eyebar.record import read_record
from eyebar.store.documents import bridge_document, list_document
from eyebar.store.exported import exported, imported
from eyebar.store.opened import opened_register
from eyebar.store.saving import _add_revision
from eyebar.store.verified import verified
from eyebar.store.writing import Saying

BRIDGES, REVISIONS = 500, 20


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The register, each bridge saved as one event so that filling it takes seconds."""
    file = tmp_path_factory.mktemp("large") / "register.db"
    with as_file(bridge_records()[SHOWN]) as path:
        record = read_record(path)
    with opened_register(str(file), begin=True) as register:
        for number in range(BRIDGES):
            with register.writing(Saying(kind="bridge added", person="A", reason="b")) as writing:
                writing.bridge = writing.add("bridges", handle=f"B-{number:03}")
                for revision in range(1, REVISIONS + 1):
                    _add_revision(writing, record, revision)
    return file


def test_list_and_one_bridge(place: Path) -> None:
    reading = least(place.read_bytes, 1)
    with opened_register(str(place)) as register:
        listing = least(lambda: list_document(register), 5)
        one = least(lambda: bridge_document(register, "B-250"), 5)
    print(
        f"\n{place.stat().st_size / 1e6:.0f} MB; list of {BRIDGES} {listing:.3f} s, one bridge"
        f" {one:.3f} s ({listing / one:.1f} to 1); list {listing / reading:.2f} times reading all"
    )


def test_export_import_and_verify(place: Path, tmp_path: Path) -> None:
    reading = least(place.read_bytes, 1)
    with opened_register(str(place)) as register:
        out = least(lambda: exported(register, tmp_path / "out"), 1)
        walking = least(lambda: verified(register), 1)
    back = least(lambda: imported(tmp_path / "out", str(tmp_path / "again.db")), 1)
    print(
        f"\nexport {out:.1f} s, import {back:.1f} s ({back / walking:.1f} times verify"
        f" {walking:.1f} s), {back / reading:.0f} times reading all"
    )
