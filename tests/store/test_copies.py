"""Backups, restores, exports and imports: what comes back is what was kept, to the letter."""

import shutil
import sqlite3
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import select

from eyebar.errors import NoRegister, NotWhole, OutOfRange
from eyebar.store.copied import backed_up, restored
from eyebar.store.exported import exported, imported
from eyebar.store.opened import Register, opened_register
from eyebar.store.tables import ALL
from eyebar.store.verified import verified
from tests.store.conftest import NewPlace
from tests.store.filled import filled
from tests.store.samples import added, record, saved

Everything = dict[str, list[dict[str, Any]]]


def everything(register: Register) -> Everything:
    """Every row of every table."""
    with register.reading() as connection:
        return {
            table.name: [
                {
                    name: bytes(value) if isinstance(value, memoryview) else value
                    for name, value in row.items()
                }
                for row in connection.execute(
                    select(table).order_by(next(iter(table.primary_key.columns)))
                ).mappings()
            ]
            for table in ALL
        }


def test_a_backup_comes_back_identical(
    register: Register, new_place: NewPlace, tmp_path: Path
) -> None:
    filled(register)
    backed_up(register, tmp_path / "copy.backup")
    elsewhere = new_place()
    restored(tmp_path / "copy.backup", elsewhere)
    with opened_register(elsewhere) as again:
        assert everything(again) == everything(register)
        assert verified(again) == verified(register)
        assert saved(again, record(built=1893), onto=2).revision == 3


def test_a_backup_is_itself_a_register_in_one_file(register: Register, tmp_path: Path) -> None:
    filled(register)
    backed_up(register, tmp_path / "copy.backup")
    assert [path.name for path in tmp_path.glob("*copy*")] == ["copy.backup"]
    with opened_register(str(tmp_path / "copy.backup")) as copy:
        assert everything(copy) == everything(register)


def test_a_backup_of_one_database_is_restored_into_the_other(
    register: Register, tmp_path: Path
) -> None:
    filled(register)
    backed_up(register, tmp_path / "copy.backup")
    restored(tmp_path / "copy.backup", str(tmp_path / "other.db"))
    with opened_register(str(tmp_path / "other.db")) as other:
        assert everything(other) == everything(register)


def test_an_export_comes_back_identical(
    register: Register, new_place: NewPlace, tmp_path: Path
) -> None:
    filled(register)
    exported(register, tmp_path / "out")
    elsewhere = new_place()
    imported(tmp_path / "out", elsewhere)
    with opened_register(elsewhere) as again:
        assert everything(again) == everything(register)
        exported(again, tmp_path / "once more")
    first, second = (listed(tmp_path / name) for name in ("out", "once more"))
    assert first == second


def listed(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*")) if path.is_file()
    }


def test_an_export_holds_plain_files_that_anybody_can_read(
    in_file: Register, tmp_path: Path
) -> None:
    filled(in_file)
    exported(in_file, tmp_path / "out")
    out = tmp_path / "out"
    assert (out / "bridges/W-1/revisions/0001.yaml").read_text("utf-8") == record().text
    assert (out / "bridges/W-1/ratings/000001.json").read_text("utf-8") == '{"é": 0.1}'
    assert (out / "bridges/W-1/files/000001-pin.jpg").read_bytes()[:3] == b"\xff\xd8\xff"
    # The withdrawn file left no bytes behind.
    assert not list((out / "bridges/W-1/files").glob("*list*"))


@pytest.mark.parametrize(
    "name", ["bridges/W-1/revisions/0001.yaml", "tables/events.jsonl", "register.json",
             "bridges/W-1/files/000001-pin.jpg", "tables/contents.jsonl"],
)
def test_an_import_with_a_hash_that_does_not_fit_is_refused(
    in_file: Register, tmp_path: Path, name: str
) -> None:
    filled(in_file)
    exported(in_file, tmp_path / "out")
    path = tmp_path / "out" / name
    content = path.read_bytes()
    path.write_bytes(content[:-2] + bytes([content[-2] ^ 1]) + content[-1:])
    with pytest.raises(NotWhole, match="hash does not fit"):
        imported(tmp_path / "out", str(tmp_path / "new.db"))
    path.unlink()
    with pytest.raises(NotWhole, match="cannot be read"):
        imported(tmp_path / "out", str(tmp_path / "new.db"))
    assert not list(tmp_path.glob("*new.db*"))


def test_an_import_whose_hashes_were_made_to_fit_is_refused_by_its_chain(
    in_file: Register, tmp_path: Path
) -> None:
    from eyebar.store.chain import digest

    filled(in_file)
    exported(in_file, tmp_path / "out")
    name = "bridges/W-1/revisions/0001.yaml"
    path = tmp_path / "out" / name
    old = digest(path.read_bytes())
    path.write_bytes(path.read_bytes().replace(b"1900", b"1901"))
    hashes = tmp_path / "out" / "hashes.txt"
    hashes.write_text(hashes.read_text().replace(old, digest(path.read_bytes())))
    with pytest.raises(NotWhole, match=r"a row of event 2 .* is not as it was saved"):
        imported(tmp_path / "out", str(tmp_path / "new.db"))


def test_a_handle_that_leads_out_of_the_folder_is_refused(
    in_file: Register, tmp_path: Path
) -> None:
    from eyebar.store.chain import digest

    added(in_file)
    exported(in_file, tmp_path / "out")
    table = tmp_path / "out/tables/bridges.jsonl"
    old = digest(table.read_bytes())
    table.write_bytes(table.read_bytes().replace(b"W-1", b"../../W-1"))
    hashes = tmp_path / "out/hashes.txt"
    hashes.write_text(hashes.read_text().replace(old, digest(table.read_bytes())))
    with pytest.raises(NotWhole, match="is no handle"):
        imported(tmp_path / "out", str(tmp_path / "new.db"))


@pytest.mark.parametrize("there", ["nothing", "a file", "a folder"])
def test_a_folder_that_is_no_export_is_refused(tmp_path: Path, there: str) -> None:
    place = tmp_path / "out"
    if there == "a file":
        place.write_text("x")
    elif there == "a folder":
        place.mkdir()
        (place / "hashes.txt").write_bytes(b"\xff\xfe")
    with pytest.raises(NoRegister, match="no exported register"):
        imported(place, str(tmp_path / "new.db"))


def test_nothing_is_written_over(register: Register, place: str, tmp_path: Path) -> None:
    filled(register)
    there = tmp_path / "there"
    there.write_text("mine")
    for refused in (
        lambda: backed_up(register, there), lambda: exported(register, there),
        lambda: backed_up(register, tmp_path / "no such folder" / "copy"),
    ):
        with pytest.raises(OutOfRange):
            refused()
    assert there.read_text() == "mine"
    backed_up(register, tmp_path / "copy.backup")
    with pytest.raises((NoRegister, OutOfRange), match="written"):
        restored(tmp_path / "copy.backup", place)


@pytest.mark.parametrize("content", [b"", b"no database", b"SQLite format 3\0" + b"\xff" * 5000])
def test_a_file_that_is_no_backup_is_refused(tmp_path: Path, content: bytes) -> None:
    backup = tmp_path / "copy.backup"
    backup.write_bytes(content)
    with pytest.raises(NoRegister):
        restored(backup, str(tmp_path / "new.db"))
    assert not list(tmp_path.glob("*new.db*"))


def test_a_backup_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(NoRegister, match="cannot be read"):
        restored(tmp_path / "none", str(tmp_path / "new.db"))


def test_a_backup_that_was_changed_is_refused(in_file: Register, tmp_path: Path) -> None:
    filled(in_file)
    backup = tmp_path / "copy.backup"
    backed_up(in_file, backup)
    with sqlite3.connect(backup) as connection:
        connection.execute("DROP TRIGGER revisions_no_update")
        connection.execute("UPDATE revisions SET name = 'another' WHERE id = 1")
    with pytest.raises(NotWhole, match="event 2"):
        restored(backup, str(tmp_path / "new.db"))
    assert not (tmp_path / "new.db").exists()


def test_a_backup_is_taken_while_another_is_in_the_middle_of_a_save(
    register: Register, place: str, tmp_path: Path
) -> None:
    from eyebar.store.writing import Saying

    filled(register)
    before = everything(register)
    with opened_register(place) as another, \
            another.writing(Saying(kind="bridge added", person="A", reason="b")) as writing:
        writing.bridge = writing.add("bridges", handle="half")
        backed_up(register, tmp_path / "copy.backup")
    with opened_register(str(tmp_path / "copy.backup")) as copy:
        assert everything(copy) == before


def test_a_register_is_moved_with_its_log(tmp_path: Path) -> None:
    """Copied by hand with the files beside it, as after a crash, it opens whole."""
    with opened_register(str(tmp_path / "a.db"), begin=True) as register:
        added(register)
        for path in tmp_path.glob("a.db*"):
            shutil.copy(path, tmp_path / path.name.replace("a.db", "b.db"))
    with opened_register(str(tmp_path / "b.db")) as copy:
        assert not verified(copy).broken
        assert verified(copy).events == 2
