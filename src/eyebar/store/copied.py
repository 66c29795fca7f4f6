"""Backups of a running register, and registers made from them again.

A backup is itself a register: one file, of the schema that its register had.
"""

import os
import secrets
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, MetaData, Table, insert, select

from eyebar.errors import NoRegister, NotWhole, OutOfRange
from eyebar.store.migrating import upgraded
from eyebar.store.places import place_of, refuse_foreign, refuse_shared
from eyebar.store.refusals import told
from eyebar.store.tables import SCHEMA
from eyebar.store.writing import Saying, Writing

if TYPE_CHECKING:
    from eyebar.store.opened import Register
    from eyebar.store.verified import Verified

ROWS_AT_ONCE = 200
"""Rows in memory while a table is copied."""


def backed_up(register: "Register", target: Path) -> None:
    """Write one state of a register, which may be in use, into a new file. Raises OutOfRange."""
    refuse_there(target, "backup")
    with new_whole(target) as part:
        if register.place.file is not None:
            _pages(register.place.file, part)
        else:
            with register.reading() as source:
                _rows_into_file(source, part)


def refuse_there(target: Path, what: str) -> None:
    """Refuse to write over anything."""
    if target.exists() or target.is_symlink():
        raise OutOfRange(what, target, "one that is not there yet: nothing is overwritten")
    if not target.parent.is_dir():
        raise OutOfRange(what, target, "in a folder that is there")


@contextmanager
def new_whole(target: Path) -> Iterator[Path]:
    """A file to write in, which stands at its place only once it is whole and on the disk."""
    part = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    try:
        yield part
        with part.open("rb") as written:
            os.fsync(written.fileno())
        os.link(part, target)  # unlike a renaming, this refuses a file that has come meanwhile
        flush_folder(target.parent)
    except FileExistsError:
        refuse_there(target, "file")
        raise
    finally:
        for leftover in (part, *(part.with_name(part.name + end) for end in ("-wal", "-shm"))):
            leftover.unlink(missing_ok=True)


def flush_folder(folder: Path) -> None:
    """Have a folder's entries on the disk, where the system can."""
    if os.name == "nt":
        return
    opened = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(opened)
    finally:
        os.close(opened)


def _pages(source: Path, target: Path) -> None:
    """Copy a file register page by page, as SQLite does while it is in use."""
    uri = f"{source.resolve().as_uri()}?mode=ro"
    try:
        with closing(sqlite3.connect(uri, uri=True, timeout=30)) as live, \
                closing(sqlite3.connect(target)) as copy:
            live.backup(copy)
            copy.execute("PRAGMA journal_mode = DELETE")  # one file that stands by itself
            (found,) = copy.execute("PRAGMA quick_check").fetchone()
    except sqlite3.Error as error:
        raise NoRegister(str(source), f"cannot be copied ({error})", "nothing is there") from None
    if found != "ok":
        raise NoRegister(str(source), f"the file is damaged ({found})", "restore an older backup")


def _rows_into_file(source: Connection, target: Path) -> None:
    from eyebar.store.opened import schema_of

    with _file_written(target) as connection:
        upgraded(connection, schema_of(source) or "head")
        rows_copied(source, connection)


@contextmanager
def _file_written(target: Path) -> Iterator[Connection]:
    """A new file register, written in one go, that stands by itself afterwards."""
    from eyebar.store.opened import Register, engine_of

    place = place_of(str(target))
    copy = Register(place, engine_of(place))
    try:
        with told(str(target)), copy.changing() as connection:
            yield connection
    finally:
        copy.close()


@contextmanager
def fresh(written: str | None) -> Iterator[Connection]:
    """A place where no register is yet, to be filled in one transaction. Raises NoRegister."""
    from eyebar.store.opened import Register, engine_of, schema_of

    place = place_of(written)
    if place.file is not None:
        refuse_shared(place.file)
        place.file.parent.mkdir(parents=True, exist_ok=True)
        refuse_there(place.file, "register")
        with new_whole(place.file) as part, _file_written(part) as connection:
            yield connection
        return
    register = Register(place, engine_of(place))
    try:
        with told(place.shown), register.changing() as connection:
            if schema_of(connection) != "":
                raise NoRegister(place.shown, "is not empty: nothing is written over")
            yield connection
    finally:
        register.close()


def brought_up(connection: Connection, schema: str) -> None:
    """Bring rows of an older schema to today's, where they are not of today's already."""
    if schema != SCHEMA:
        upgraded(connection)
        Writing(connection, Saying(
            kind="schema migrated", person="eyebar", reason=f"from {schema} to {SCHEMA}"
        )).seal()


def restored(backup: Path, written: str | None) -> "Verified":
    """Make a register from a backup, of this schema or an older one, and verify it.

    Raises NoRegister for a file that is no backup or is newer, NotWhole for one that was changed.
    """
    from eyebar.store.opened import Register, engine_of, refuse_unknown, schema_of
    from eyebar.store.verified import walked

    place = place_of(str(backup))
    refuse_foreign(backup)
    source = Register(place, engine_of(place))
    try:
        with source.reading() as old, fresh(written) as new:
            schema = schema_of(old)
            if not schema:
                raise NoRegister(str(backup), "is a database, but no register of eyebar")
            refuse_unknown(str(backup), schema)
            upgraded(new, schema)
            rows_copied(old, new)
            brought_up(new, schema)
            found = walked(new)
            if found.broken:
                raise NotWhole(str(backup), found.broken)
    finally:
        source.close()
    return found


def rows_copied(source: Connection, target: Connection) -> None:
    """Every row of every table, into tables of the same schema that are empty."""
    for table in tables_of(source):
        for rows in in_parts(source, table):
            target.execute(insert(table), rows)


def tables_of(connection: Connection) -> list[Table]:
    """The tables as the database itself has them, each after those that it points to."""
    found = MetaData()
    found.reflect(connection)
    return [table for table in found.sorted_tables if table.name != "alembic_version"]


def in_parts(connection: Connection, table: Table) -> Iterator[list[dict[str, Any]]]:
    """The rows of a table by their keys, a few at a time."""
    (key,) = table.primary_key.columns
    last = 0
    few = 4 if "bytes" in table.c else ROWS_AT_ONCE
    while rows := [
        dict(row) for row in connection.execute(
            select(table).where(key > last).order_by(key).limit(few)
        ).mappings()
    ]:
        yield rows
        last = rows[-1][key.name]
