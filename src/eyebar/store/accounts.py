"""Who may come in where a workbench is shared: accounts, sessions, tokens, and a trail of requests.

Kept in a file of its own, apart from the register: rows here end and go, those there never do. No
password, session or token stands in it, only their hashes.
"""

import hashlib
import secrets
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError
from sqlalchemy import (
    Column,
    Connection,
    Engine,
    Integer,
    MetaData,
    Table,
    Text,
    create_engine,
    delete,
    event,
    insert,
    select,
    update,
)

from eyebar.errors import OutOfRange, Unknown, nearest
from eyebar.store.places import default_file
from eyebar.store.refusals import told
from eyebar.terms import Role, Scope

LEAST_PASSWORD = 12
SESSION_HOURS, IDLE_MINUTES = 12, 60
MOST_TOKEN_DAYS = 366
SECRET_BYTES = 32

metadata = MetaData()
accounts = Table(
    "accounts", metadata, Column("name", Text, primary_key=True), Column("role", Text),
    Column("password", Text), Column("made", Text), Column("ended", Text),
)
sessions = Table(
    "sessions", metadata, Column("secret", Text, primary_key=True), Column("account", Text),
    Column("begun", Text), Column("seen", Text),
)
tokens = Table(
    "tokens", metadata, Column("id", Integer, primary_key=True), Column("secret", Text),
    Column("account", Text), Column("scope", Text), Column("note", Text), Column("ends", Text),
    Column("revoked", Text),
)
trail = Table(
    "trail", metadata, Column("number", Integer, primary_key=True), Column("at", Text),
    Column("account", Text), Column("address", Text), Column("what", Text),
    Column("status", Integer),
)

_HASHER = PasswordHasher()
_NOBODY = _HASHER.hash("nobody has this password")


@dataclass(frozen=True, slots=True, kw_only=True)
class Caller:
    """Who asks: a name, what it may do, and whether by a token that only reads."""

    name: str
    role: Role
    scope: Scope = Scope.WRITE
    by_token: bool = False

    def may(self, least: Role) -> bool:
        """Whether this is allowed what the role is."""
        if self.scope is Scope.READ and least is not Role.READER:
            return False
        return list(Role).index(self.role) >= list(Role).index(least)


class Accounts:
    """The accounts of a shared workbench, in a file."""

    def __init__(self, file: Path | None = None) -> None:
        self.file = file or default_file().with_name("accounts.db")
        self.file.parent.mkdir(parents=True, exist_ok=True)
        self.engine: Engine = create_engine(f"sqlite:///{self.file}")
        event.listen(self.engine, "connect", _wait)
        with self._changing() as connection:
            metadata.create_all(connection)
        self.file.chmod(0o600)

    def close(self) -> None:
        """Let go of the file."""
        self.engine.dispose()

    def add(self, name: str, role: Role, password: str) -> None:
        """A new account. Raises OutOfRange where the name is taken or the password too short."""
        _refuse_short(password)
        if not name.strip() or not name.isprintable():
            raise OutOfRange("name of an account", repr(name), "letters that can be printed")
        with self._changing() as connection:
            if self._row(connection, name) is not None:
                raise OutOfRange("account", repr(name), "one that is not there yet")
            connection.execute(insert(accounts).values(
                name=name, role=role.value, password=_HASHER.hash(password), made=_now(),
                ended=None,
            ))

    def change_password(self, name: str, password: str) -> None:
        """Another password; all sessions of the account end. Raises Unknown, OutOfRange."""
        _refuse_short(password)
        with self._changing() as connection:
            self._known(connection, name)
            connection.execute(update(accounts).where(accounts.c.name == name).values(
                password=_HASHER.hash(password)
            ))
            connection.execute(delete(sessions).where(sessions.c.account == name))

    def end(self, name: str) -> None:
        """The account comes in no more; its name stays taken. Raises Unknown."""
        with self._changing() as connection:
            self._known(connection, name)
            connection.execute(
                update(accounts).where(accounts.c.name == name).values(ended=_now())
            )
            connection.execute(delete(sessions).where(sessions.c.account == name))

    def listed(self) -> Sequence[Any]:
        """Every account: name, role, when it was made and ended."""
        with self._changing() as connection:
            asked = select(
                accounts.c.name, accounts.c.role, accounts.c.made, accounts.c.ended
            ).order_by(accounts.c.name)
            return connection.execute(asked).mappings().all()

    def checked(self, name: str, password: str) -> Caller | None:
        """Who comes with this name and password; it takes as long for a name that is none."""
        with self._changing() as connection:
            row = self._row(connection, name)
        kept = row["password"] if row is not None and row["ended"] is None else _NOBODY
        try:
            _HASHER.verify(kept, password)
        except (VerificationError, InvalidHashError):
            return None
        if row is None or kept is _NOBODY:
            return None
        return Caller(name=row["name"], role=Role(row["role"]))

    def begin_session(self, name: str) -> str:
        """A session's secret."""
        secret = secrets.token_urlsafe(SECRET_BYTES)
        with self._changing() as connection:
            old = sessions.c.begun < _now(hours=-SESSION_HOURS)
            connection.execute(delete(sessions).where(old))
            connection.execute(insert(sessions).values(
                secret=_hashed(secret), account=name, begun=_now(), seen=_now()
            ))
        return secret

    def of_session(self, secret: str) -> Caller | None:
        """Who a session is of, while it lasts."""
        with self._changing() as connection:
            row = connection.execute(
                select(sessions).where(sessions.c.secret == _hashed(secret))
            ).mappings().first()
            if row is None:
                return None
            account = self._row(connection, row["account"])
            old = row["begun"] < _now(hours=-SESSION_HOURS)
            idle = row["seen"] < _now(minutes=-IDLE_MINUTES)
            if old or idle or account is None or account["ended"] is not None:
                connection.execute(delete(sessions).where(sessions.c.secret == row["secret"]))
                return None
            connection.execute(
                update(sessions).where(sessions.c.secret == row["secret"]).values(seen=_now())
            )
        return Caller(name=account["name"], role=Role(account["role"]))

    def end_session(self, secret: str) -> None:
        """The session is over."""
        with self._changing() as connection:
            connection.execute(delete(sessions).where(sessions.c.secret == _hashed(secret)))

    def new_token(self, name: str, scope: Scope, days: int, note: str) -> tuple[int, str]:
        """A token's number and its secret, which is said this once. Raises Unknown, OutOfRange."""
        if not 1 <= days <= MOST_TOKEN_DAYS:
            raise OutOfRange("days of a token", days, f"from 1 to {MOST_TOKEN_DAYS}")
        secret = secrets.token_urlsafe(SECRET_BYTES)
        with self._changing() as connection:
            self._known(connection, name)
            made = connection.execute(insert(tokens).values(
                secret=_hashed(secret), account=name, scope=scope.value, note=note,
                ends=_now(hours=24 * days), revoked=None,
            ))
            number = made.inserted_primary_key
        assert number is not None
        return int(number[0]), secret

    def of_token(self, secret: str) -> Caller | None:
        """Who a token is of, while it lasts."""
        with self._changing() as connection:
            row = connection.execute(
                select(tokens).where(tokens.c.secret == _hashed(secret))
            ).mappings().first()
            if row is None or row["revoked"] is not None or row["ends"] < _now():
                return None
            account = self._row(connection, row["account"])
        if account is None or account["ended"] is not None:
            return None
        return Caller(
            name=account["name"], role=Role(account["role"]), scope=Scope(row["scope"]),
            by_token=True,
        )

    def revoke(self, number: int) -> None:
        """The token is good no more. Raises Unknown."""
        with self._changing() as connection:
            found = connection.execute(
                update(tokens).where(tokens.c.id == number).values(revoked=_now())
            )
            if not found.rowcount:
                raise Unknown("token", str(number), where=str(self.file))

    def written(self, account: str, address: str, what: str, status: int) -> None:
        """A line of the trail; no secret is ever part of it."""
        with self._changing() as connection:
            connection.execute(insert(trail).values(
                at=_now(), account=account, address=address, what=what, status=status
            ))

    def lines(self, most: int = 200) -> Sequence[Any]:
        """The last lines of the trail, the newest first."""
        with self._changing() as connection:
            asked = select(trail).order_by(trail.c.number.desc()).limit(most)
            return connection.execute(asked).mappings().all()

    @contextmanager
    def _changing(self) -> Iterator[Connection]:
        with told(str(self.file)), self.engine.begin() as connection:
            yield connection

    def _row(self, connection: Connection, name: str) -> Any:
        return connection.execute(
            select(accounts).where(accounts.c.name == name)
        ).mappings().first()

    def _known(self, connection: Connection, name: str) -> None:
        if self._row(connection, name) is None:
            known = connection.execute(select(accounts.c.name)).scalars().all()
            raise Unknown("account", name, near=nearest(name, known), where=str(self.file))


def _wait(connection: Any, _record: object) -> None:
    connection.execute("PRAGMA busy_timeout = 10000")


def _refuse_short(password: str) -> None:
    if len(password) < LEAST_PASSWORD:
        raise OutOfRange("letters of a password", len(password), f"{LEAST_PASSWORD} or more")


def _hashed(secret: str) -> str:
    return hashlib.sha256(secret.encode()).hexdigest()


def _now(*, hours: int = 0, minutes: int = 0) -> str:
    at = datetime.now(UTC) + timedelta(hours=hours, minutes=minutes)
    return at.strftime("%Y-%m-%dT%H:%M:%SZ")
