"""What the databases say when something is wrong, in the engineer's words."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, SQLAlchemyError

from eyebar.errors import NoRegister
from eyebar.store.triggers import KEPT

_RESTORE = "restore it from a backup: eyebar register restore"
_SAID = (
    (KEPT, "keeps what it has", "correct a mistake by a new revision"),
    ("database is locked", "somebody else has been writing for too long", "try again"),
    ("lock timeout", "somebody else has been writing for too long", "try again"),
    ("disk is full", "there is no room on the disk; nothing was saved, and nothing is lost",
     "make room and do it again"),
    ("No space left", "there is no room on the disk; nothing was saved, and nothing is lost",
     "make room and do it again"),
    ("disk I/O error", "the disk does not take or give what it should (no room, or a fault); "
     "nothing was saved", "make room, look at the disk, and then: eyebar register verify"),
    ("readonly", "you have no right to write there", "ask whoever keeps it, or name another"),
    ("permission denied", "you have no right to do that there", "ask whoever keeps it"),
    ("unable to open", "cannot be opened: no right to it, or no such folder",
     "look at the path, or name another with --register"),
    ("not a database", "is no register: the file is something else, or is damaged",
     "look at the path; a damaged one is restored from a backup"),
    ("malformed", "the file is damaged", _RESTORE),
    ("could not decode", "the file is damaged", _RESTORE),
    ("password authentication failed", "the database does not let this person in",
     "look at the name and the password (PGPASSFILE keeps it out of the command)"),
    ("does not exist", "the database has no such database or person",
     "make it first: createdb; or look at the URL"),
    ("connection is bad", "the database does not answer", "look at the URL, and whether it runs"),
    ("connection failed", "the database does not answer", "look at the URL, and whether it runs"),
    ("could not translate host", "the host is not known", "look at the URL"),
    ("failed to resolve host", "the host is not known", "look at the URL"),
)
"""What a database says -> the rule and the cure; the first that fits."""


@contextmanager
def told(where: str) -> Iterator[None]:
    """Turn what a database refuses inside the block into NoRegister."""
    try:
        yield
    except DBAPIError as error:
        raise NoRegister(where, *words(str(error.orig))) from error
    except SQLAlchemyError as error:
        raise NoRegister(where, *words(str(error))) from error


def words(said: str) -> tuple[str, str]:
    """The rule and the cure for what a database said."""
    for sign, rule, cure in _SAID:
        if sign.lower() in said.lower():
            return rule, cure
    first = said.strip().splitlines()[0] if said.strip() else "no reason given"
    return f"the database refused ({first})", ""
