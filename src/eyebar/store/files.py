"""Photographs and other files by part: bytes with their hash, withdrawn but never deleted."""

import mimetypes
import os
from dataclasses import dataclass
from pathlib import Path, PurePath
from typing import Any

from sqlalchemy import Connection, select, update

from eyebar.addresses import address
from eyebar.errors import NotWhole, OutOfRange, Unknown
from eyebar.store.asked import bridge_named
from eyebar.store.chain import digest
from eyebar.store.copied import refuse_there
from eyebar.store.opened import Register
from eyebar.store.pictures import is_picture, picture_of
from eyebar.store.tables import contents, files, withdrawals
from eyebar.store.writing import Saying, plain_text

LARGEST = 50_000_000
"""Bytes of a file; a larger one is refused before it is read."""
PLAIN = "application/octet-stream"
"""The kind of a file that must not be shown as anything, only taken out again."""
SHOWABLE = ("text/plain", "text/csv", "application/pdf", "application/json")


@dataclass(frozen=True, slots=True, kw_only=True)
class Attached:
    """A file that was kept: its number, its hash, the event's hash; what was taken out of it."""

    number: int
    sha256: str
    chain: str
    had_position: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What a file is about: a part's address or "" for the whole bridge, and a note."""

    part: str = ""
    note: str = ""


def attach(
    register: Register, bridge: str, path: Path, about: About, *, person: str, reason: str,
    keep_position: bool = False,
) -> Attached:
    """Keep a file with a bridge. Raises Unknown, Unreadable, OutOfRange, OSError."""
    size = path.stat().st_size
    if size > LARGEST:
        raise _too_large(path.name, size)
    with path.open("rb") as opened:
        content = opened.read(LARGEST + 1)
    return attach_content(
        register, bridge, (path.name, content), about, person=person, reason=reason,
        keep_position=keep_position,
    )


def attach_content(
    register: Register, bridge: str, named: tuple[str, bytes], about: About, *, person: str,
    reason: str, keep_position: bool = False,
) -> Attached:
    """Keep bytes under a name with a bridge; a picture is decoded and written anew first."""
    name, given = PurePath(named[0].replace("\\", "/")).name, named[1]
    plain_text(name, "the name of the file")
    if len(given) > LARGEST:
        raise _too_large(name, len(given))
    if not given:
        raise OutOfRange("file", f"{name} with no bytes", "one with something in it")
    part = str(address(about.part)) if about.part else None
    note = plain_text(about.note, "the note") if about.note else None
    picture = None
    if is_picture(name, given):
        picture = picture_of(name, given, keep_position=keep_position)
    kept = picture.content if picture else given
    with register.writing(Saying(kind="file kept", person=person, reason=reason)) as writing:
        known = bridge_named(writing.connection, bridge)
        writing.bridge = known.id
        number = writing.add(
            "files", bridge=known.id, part=part, name=name,
            media_type=picture.media_type if picture else _media_type(name),
            sha256=digest(kept), size=len(kept), given_sha256=digest(given),
            taken=(picture.taken if picture else "") or None, note=note,
        )
        writing.add("contents", file=number, bytes=kept)
    return Attached(
        number=number, sha256=digest(kept), chain=writing.chain,
        had_position=bool(picture and picture.had_position),
    )


def _too_large(name: str, size: int) -> OutOfRange:
    limit = f"at most {LARGEST:,} bytes: send it smaller, or in parts"
    return OutOfRange("file", f"{name} with {size:,} bytes", limit)


def _media_type(name: str) -> str:
    guessed, _ = mimetypes.guess_type(name)
    return guessed if guessed in SHOWABLE else PLAIN


def fetched(connection: Connection, number: int) -> tuple[dict[str, Any], bytes]:
    """A file's row and its bytes. Raises Unknown, and NotWhole where they are not as kept."""
    row = _row(connection, number)
    content = _bytes(connection, number)
    if content is None:
        gone = connection.execute(
            select(withdrawals.c.reason).where(withdrawals.c.file == number)
        ).scalar()
        raise Unknown("bytes of file", str(number), where=f"the register: withdrawn ({gone})")
    if digest(content) != row["sha256"]:
        raise NotWhole(f"file {number}", "its bytes are not as they were kept")
    return row, content


def take_out(register: Register, number: int, target: Path) -> None:
    """Write a file's bytes to a place where nothing is yet."""
    with register.reading() as connection:
        _, content = fetched(connection, number)
    refuse_there(target, "file")
    with target.open("xb") as opened:
        opened.write(content)
        opened.flush()
        os.fsync(opened.fileno())


def withdraw(register: Register, number: int, *, person: str, reason: str) -> str:
    """Blank a file's bytes; its hash, the reason and the person stay. Returns the event's hash."""
    with register.writing(Saying(kind="file withdrawn", person=person, reason=reason)) as writing:
        row = _row(writing.connection, number)
        if _bytes(writing.connection, number) is None:
            raise OutOfRange("file", number, "one that is not withdrawn yet")
        writing.bridge = row["bridge"]
        writing.add("withdrawals", file=number, person=person, reason=reason)
        writing.seal()
        writing.connection.execute(
            update(contents).where(contents.c.file == number).values(bytes=None)
        )
    return writing.chain


def _row(connection: Connection, number: int) -> dict[str, Any]:
    found = connection.execute(select(files).where(files.c.id == number)).mappings().first()
    if found is None:
        raise Unknown("file", str(number), where="the register")
    return dict(found)


def _bytes(connection: Connection, number: int) -> bytes | None:
    found: bytes | None = connection.execute(
        select(contents.c.bytes).where(contents.c.file == number)
    ).scalar()
    return None if found is None else bytes(found)


def bytes_fault(connection: Connection, row: dict[str, Any]) -> str:
    """What is wrong with the bytes of a file's row; empty where nothing is."""
    found = connection.execute(
        select(contents.c.bytes).where(contents.c.file == row["id"])
    ).first()
    if found is None:
        return f"the bytes of file {row['id']} ({row['name']}) are gone"
    withdrawn = connection.execute(
        select(withdrawals.c.id).where(withdrawals.c.file == row["id"])
    ).first()
    if (found[0] is None) != (withdrawn is not None):
        return f"the bytes of file {row['id']} ({row['name']}) are not as its withdrawal says"
    if found[0] is not None and digest(bytes(found[0])) != row["sha256"]:
        return f"the bytes of file {row['id']} ({row['name']}) are not as they were kept"
    return ""


def files_of(connection: Connection, bridge: int) -> list[dict[str, Any]]:
    """The files of a bridge, with the reason where one was withdrawn."""
    found = connection.execute(
        select(files, withdrawals.c.reason.label("withdrawn"))
        .join(withdrawals, withdrawals.c.file == files.c.id, isouter=True)
        .where(files.c.bridge == bridge)
        .order_by(files.c.id)
    )
    return [dict(row) for row in found.mappings()]
