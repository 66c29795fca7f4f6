"""A register as a folder of plain files, and back: what comes in is what went out.

    register.json              format, schema, head of the chain
    tables/NAME.jsonl          the rows, a line each, without what lies in files of its own
    bridges/HANDLE/revisions/  each record as it was written
    bridges/HANDLE/ratings/    each rating's whole document
    bridges/HANDLE/files/      photographs and files
    hashes.txt                 SHA-256 of every other file, as `sha256sum -c` reads it
"""

import json
import os
import re
import secrets
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Table, insert, select

from eyebar import __version__
from eyebar.errors import NoRegister, NotWhole
from eyebar.store.chain import digest
from eyebar.store.copied import (
    ROWS_AT_ONCE,
    brought_up,
    fresh,
    in_parts,
    refuse_there,
    tables_of,
)
from eyebar.store.migrating import upgraded
from eyebar.store.opened import Register, refuse_unknown, schema_of
from eyebar.store.saving import HANDLE
from eyebar.store.tables import bridges, files
from eyebar.store.verified import Verified, walked
from eyebar.store.writing import head_of

FORMAT = "eyebar/register-export/1"
APART = {"revisions": "text", "ratings": "document", "contents": "bytes"}
"""Table -> the column that lies in files of its own."""


def exported(register: Register, folder: Path) -> int:
    """Write one state of a register into a new folder. Returns how many files it has."""
    refuse_there(folder, "folder")
    part = folder.with_name(f".{folder.name}.{secrets.token_hex(4)}.part")
    try:
        with register.reading() as connection:
            written = _Written(part)
            _write(connection, written)
        written.put("hashes.txt", "".join(
            f"{found}  {name}\n" for name, found in sorted(written.hashes.items())
        ).encode())
        if hasattr(os, "sync"):
            os.sync()
        part.rename(folder)
    finally:
        shutil.rmtree(part, ignore_errors=True)
    return len(written.hashes)


class _Written:
    """A folder being written, with the hash of each file."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.hashes: dict[str, str] = {}

    def put(self, name: str, content: bytes) -> None:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
        self.hashes[name] = digest(content)


def _write(connection: Connection, written: _Written) -> None:
    named = _handles(connection)
    for table in tables_of(connection):
        lines = []
        for rows in in_parts(connection, table):
            for row in rows:
                apart = row.pop(APART[table.name], None) if table.name in APART else None
                if apart is not None:
                    content = apart.encode() if isinstance(apart, str) else bytes(apart)
                    written.put(_place(connection, table.name, row, named), content)
                lines.append(json.dumps(row, ensure_ascii=False, sort_keys=True, allow_nan=False))
        written.put(f"tables/{table.name}.jsonl", "".join(f"{line}\n" for line in lines).encode())
    number, head = head_of(connection)
    about = {
        "format": FORMAT, "schema": schema_of(connection), "events": number, "head": head,
        "version": __version__,
    }
    written.put("register.json", (json.dumps(about, indent=2) + "\n").encode())


def _handles(connection: Connection) -> dict[int, str]:
    found = connection.execute(select(bridges.c.id, bridges.c.handle))
    return {row.id: row.handle for row in found}


def _place(
    connection: Connection, table: str, row: dict[str, Any], named: dict[int, str]
) -> str:
    """Where the text or the bytes of a row lie."""
    if table == "revisions":
        return f"bridges/{named[row['bridge']]}/revisions/{row['revision']:04}.yaml"
    if table == "ratings":
        return f"bridges/{named[row['bridge']]}/ratings/{row['id']:06}.json"
    bridge, name = connection.execute(
        select(files.c.bridge, files.c.name).where(files.c.id == row["file"])
    ).one()
    plain = re.sub(r"[^\w.-]", "_", name)[-60:]
    return f"bridges/{named[bridge]}/files/{row['file']:06}-{plain}"


def imported(folder: Path, written: str | None) -> Verified:
    """Make a register from an exported folder, and verify it before it is there.

    Raises NoRegister for a folder that is none or of a newer program, NotWhole where a hash does
    not fit or a file is missing.
    """
    source = _Source(folder)
    about = source.about()
    schema = str(about["schema"])
    refuse_unknown(str(folder), schema)
    with fresh(written) as connection:
        upgraded(connection, schema)
        for table in tables_of(connection):
            for rows in source.rows(connection, table):
                connection.execute(insert(table), rows)
        number, head = head_of(connection)
        if (number, head) != (about["events"], about["head"]):
            raise NotWhole(str(folder), "the head of the chain is not that of register.json")
        brought_up(connection, schema)
        found = walked(connection)
        if found.broken:
            raise NotWhole(str(folder), found.broken)
    return found


class _Source:
    """An exported folder: each file is read with its hash compared."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.hashes: dict[str, str] = {}
        try:
            listed = (folder / "hashes.txt").read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError):
            raise NoRegister(
                str(folder), "is no exported register: hashes.txt is missing or is no text",
                "name the folder that eyebar register export has written",
            ) from None
        for line in listed.splitlines():
            found, _, name = line.partition("  ")
            self.hashes[name] = found

    def content(self, name: str) -> bytes:
        try:
            content = (self.folder / name).read_bytes()
        except OSError as error:
            raise NotWhole(str(self.folder / name), f"cannot be read ({error.strerror})") from None
        if self.hashes.get(name) != digest(content):
            raise NotWhole(str(self.folder / name), "its hash does not fit: it is not as exported")
        return content

    def about(self) -> dict[str, Any]:
        read = _json(self.folder / "register.json", self.content("register.json"))
        if read.get("format") != FORMAT:
            raise NoRegister(str(self.folder), f"is of the format {read.get('format')!r}",
                             f"this program reads {FORMAT}")
        if not {"schema", "events", "head"} <= set(read):
            raise NotWhole(str(self.folder / "register.json"), "a key is missing")
        return read

    def rows(self, connection: Connection, table: Table) -> Iterator[list[dict[str, Any]]]:
        """The rows of a table, some at a time, each with what lay in a file of its own."""
        name = f"tables/{table.name}.jsonl"
        lines = self.content(name).decode("utf-8").split("\n")
        few = 4 if table.name == "contents" else ROWS_AT_ONCE
        waiting = [line for line in lines if line]
        named, path = _handles(connection), self.folder / name
        for begin in range(0, len(waiting), few):
            rows = [_json(path, line.encode()) for line in waiting[begin:begin + few]]
            for row in rows:
                if set(row) - set(table.c.keys()):
                    raise NotWhole(str(path), "it has a column that is not known")
            yield [self._whole(connection, table.name, row, named) for row in rows]

    def _whole(
        self, connection: Connection, table: str, row: dict[str, Any], named: dict[int, str]
    ) -> dict[str, Any]:
        if table == "bridges" and not HANDLE.fullmatch(str(row.get("handle"))):
            raise NotWhole(str(self.folder), f"{row.get('handle')!r} is no handle of a bridge")
        if table not in APART:
            return row
        place = _place(connection, table, row, named)
        if table == "contents" and place not in self.hashes:
            return {**row, "bytes": None}  # withdrawn; else the walk finds them gone
        content = self.content(place)
        return {**row, APART[table]: content if table == "contents" else content.decode("utf-8")}


def _json(path: Path, content: bytes) -> dict[str, Any]:
    try:
        read = json.loads(content)
    except ValueError:
        read = None
    if not isinstance(read, dict):
        raise NotWhole(str(path), "is not the JSON that was exported")
    return read
