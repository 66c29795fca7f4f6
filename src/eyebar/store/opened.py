"""An opened register: reading from it, and writing one event into it at a time."""

import secrets
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, inspect, text

from eyebar.errors import NoRegister
from eyebar.store.chain import BEGINNING
from eyebar.store.migrating import known_schemas, migrated
from eyebar.store.places import PlaceOfRegister, place_of, refuse_foreign, refuse_shared
from eyebar.store.refusals import told
from eyebar.store.tables import SCHEMA
from eyebar.store.writing import Saying, Writing

WAIT_SECONDS = 30
"""How long a save waits for another to end."""


class Register:
    """A register that is open. `said` are sentences on what opening it did."""

    def __init__(self, place: PlaceOfRegister, engine: Engine) -> None:
        self.place = place
        self.engine = engine
        self.said: tuple[str, ...] = ()

    def close(self) -> None:
        """Let go of the database."""
        self.engine.dispose()

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A connection that sees one state of the register from begin to end."""
        with told(self.place.shown), self.engine.connect() as connection:
            if connection.dialect.name == "postgresql":
                connection.execution_options(isolation_level="REPEATABLE READ")
            with connection.begin():
                yield connection

    @contextmanager
    def writing(self, saying: Saying) -> Iterator[Writing]:
        """One event: what is added inside the block is saved whole at its end, or not at all."""
        with told(self.place.shown), self.changing() as connection:
            writing = Writing(connection, saying)
            yield writing
            writing.seal()

    @contextmanager
    def changing(self) -> Iterator[Connection]:
        """A connection that alone may write, until the block ends."""
        with self.engine.connect() as connection:
            connection.execution_options(alone=True)
            with connection.begin():
                if connection.dialect.name == "postgresql":
                    connection.execute(text(f"SET LOCAL lock_timeout = '{WAIT_SECONDS}s'"))
                    connection.execute(text("SET LOCAL synchronous_commit = on"))
                    connection.execute(text("SELECT pg_advisory_xact_lock(hashtext('eyebar'))"))
                yield connection


@contextmanager
def opened_register(written: str | None = None, *, begin: bool = False) -> Iterator[Register]:
    """Open a register, bring an older one to today's schema after a backup, and close it again.

    `begin` makes one where there is none. Raises NoRegister.
    """
    place = place_of(written)
    if place.file is not None:
        _look_at(place.file, begin=begin)
    register = Register(place, engine_of(place))
    try:
        with told(place.shown):
            _brought_up(register, begin=begin)
            _with_a_log(register)
        yield register
    finally:
        register.close()


def engine_of(place: PlaceOfRegister) -> Engine:
    """The engine of a place, set to lose nothing."""
    if place.file is None:
        return create_engine(place.url, connect_args={"connect_timeout": WAIT_SECONDS})
    engine = create_engine(place.url, connect_args={"timeout": WAIT_SECONDS})
    event.listen(engine, "connect", _set_to_lose_nothing)
    event.listen(engine, "begin", _begin)
    return engine


def _set_to_lose_nothing(connection: Any, _record: object) -> None:
    connection.isolation_level = None  # transactions are begun below, not by the driver
    cursor = connection.cursor()
    for pragma in (
        "synchronous = FULL", "fullfsync = ON", "foreign_keys = ON", "recursive_triggers = ON",
    ):
        cursor.execute(f"PRAGMA {pragma}")
    cursor.close()


def _begin(connection: Connection) -> None:
    alone = connection.get_execution_options().get("alone", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if alone else "BEGIN")


def _look_at(file: Path, *, begin: bool) -> None:
    """Refuse a file that cannot be a register before the database touches it."""
    refuse_shared(file)
    if file.exists():
        refuse_foreign(file)
        if file.stat().st_size:
            return
    if not begin:
        raise NoRegister(str(file), "is not there", "begin one: eyebar register add RECORD")
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise NoRegister(
            str(file), f"its folder cannot be made ({error.strerror})", "name another"
        ) from None


def _with_a_log(register: Register) -> None:
    """Have a file register write its log ahead; only what is known as a register is changed."""
    if register.place.file is not None:
        connection = register.engine.raw_connection()
        try:
            connection.cursor().execute("PRAGMA journal_mode = WAL")
        finally:
            connection.close()


def schema_of(connection: Connection) -> str | None:
    """The schema of a register; empty for a database with nothing in it, None for another's."""
    names = set(inspect(connection).get_table_names())
    if not names:
        return ""
    if not {"alembic_version", "events", "register"} <= names:
        return None
    found = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
    return str(found[0]) if len(found) == 1 else None


def _brought_up(register: Register, *, begin: bool) -> None:
    """Begin, or migrate, or refuse, by the schema that is found."""
    where = register.place.shown
    with register.engine.connect() as connection, connection.begin():
        found = schema_of(connection)
    if found == SCHEMA:
        return
    if found is None:
        raise NoRegister(where, "is a database, but no register of eyebar", "name another")
    if not found:
        if not begin:
            raise NoRegister(where, "is empty", "begin one: eyebar register add RECORD")
        begun(register)
        return
    refuse_unknown(where, found)
    register.said = migrated(register, found)


def refuse_unknown(where: str, schema: str) -> None:
    """Refuse a schema that no migration of this program makes: it is of a newer one."""
    if schema not in known_schemas():
        raise NoRegister(
            where, f"was written by a newer eyebar (schema {schema}; this one knows {SCHEMA})",
            "use the newer eyebar",
        )


def begun(register: Register) -> None:
    """Make the tables of an empty database and its first event, unless another just has."""
    from eyebar.store.migrating import upgraded

    with register.changing() as connection:
        if schema_of(connection):
            return
        upgraded(connection)
        writing = Writing(
            connection, Saying(kind="register begun", person="eyebar", reason="first use"),
            head=(0, BEGINNING),
        )
        writing.add("register", identity=secrets.token_hex(16))
        writing.seal()
