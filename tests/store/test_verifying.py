"""A byte that is changed behind the program's back is found, in every table, on both databases."""

from pathlib import Path
from typing import Any

from sqlalchemy import Table, create_engine, delete, insert, select, text, update

from eyebar.store.opened import Register, opened_register
from eyebar.store.tables import ALL, events
from eyebar.store.verified import verified
from tests.store.filled import filled
from tests.store.samples import added


def unguarded(register: Register, *statements: Any) -> None:
    """Change the register as someone does who owns the database: without its triggers."""
    if register.place.file is None:
        with register.engine.begin() as connection:
            connection.execute(text("SET LOCAL session_replication_role = replica"))
            for statement in statements:
                connection.execute(statement)
        return
    engine = create_engine(register.place.url)  # without our pragmas
    try:
        with engine.begin() as connection:
            named = connection.execute(text("SELECT name FROM sqlite_master WHERE type='trigger'"))
            for (name,) in named.fetchall():
                connection.execute(text(f"DROP TRIGGER {name}"))
            for statement in statements:
                connection.execute(statement)
    finally:
        engine.dispose()


def flipped(value: Any) -> Any:
    """The value with one bit changed."""
    if isinstance(value, bytes | memoryview):
        value = bytes(value)
        return value[:-1] + bytes([value[-1] ^ 1])
    if isinstance(value, str):
        return value[:-1] + chr(ord(value[-1]) ^ 1) if value else "\x21"
    return value + 1


def columns(*, few: bool) -> list[tuple[Table, str]]:
    """Every column of every table, or the last of each, keys apart."""
    found = [
        [(table, column.name) for column in table.c
         if not column.primary_key and not column.foreign_keys]
        for table in ALL
    ]
    return [one for of_table in found for one in (of_table[-1:] if few else of_table)]


def test_a_register_that_nobody_touched_is_sound(register: Register) -> None:
    filled(register)
    found = verified(register)
    assert found.broken == ""
    with register.reading() as connection:
        assert found.events == len(connection.execute(select(events.c.number)).all())


def test_a_change_in_any_column_of_any_table_is_found(register: Register) -> None:
    filled(register)
    silent = []
    # Whether a column is covered is not the database's affair: on one of them all are tried.
    for table, name in columns(few=register.place.file is None):
        key = next(iter(table.primary_key.columns))
        with register.engine.connect() as connection:
            row = connection.execute(
                select(key, table.c[name]).where(table.c[name].is_not(None)).order_by(key.desc())
            ).first()
        if row is None:
            continue
        changing = update(table).where(key == row[0])
        unguarded(register, changing.values({name: flipped(row[1])}))
        if not verified(register).broken:
            silent.append(f"{table.name}.{name}")
        unguarded(register, changing.values({name: row[1]}))
    assert silent == []
    assert verified(register).broken == ""


def test_every_table_has_a_row_in_these_tests(register: Register) -> None:
    filled(register)
    with register.reading() as connection:
        empty = [table.name for table in ALL if connection.execute(select(table)).first() is None]
    assert empty == []


def test_a_row_that_was_taken_out_or_put_in_is_found(register: Register) -> None:
    filled(register)
    for table in ALL:
        key = next(iter(table.primary_key.columns))
        with register.engine.connect() as connection:
            row = dict(connection.execute(
                select(table).order_by(key.desc()).limit(1)
            ).mappings().one())
        unguarded(register, delete(table).where(key == row[key.name]))
        # The newest event is only missed by what points to it, or by a head on paper.
        assert verified(register).broken, table.name
        unguarded(register, insert(table).values(row))
        assert not verified(register).broken, table.name
        if table.name not in ("events", "contents", "withdrawals", "signatures"):
            twin = {**row, key.name: row[key.name] + 1}
            twin |= {name: f"{row[name]}x" for name in ("handle", "revision") if name in twin
                     and isinstance(row[name], str)}
            if table.name == "revisions":
                twin["revision"] += 1
            if table.name == "postings":
                twin["takes_down"] = None
            unguarded(register, insert(table).values(twin))
            assert verified(register).broken, table.name
            unguarded(register, delete(table).where(key == twin[key.name]))


def test_a_head_on_paper_shows_that_the_end_was_cut_off(register: Register) -> None:
    done = added(register)
    with register.engine.connect() as connection:
        tables = [table for table in reversed(ALL) if table is not events]
        assert connection.execute(select(events.c.number)).all()[-1] == (2,)
    unguarded(
        register, *(delete(table).where(table.c.event == 2) for table in tables),
        delete(events).where(events.c.number == 2),
    )
    assert verified(register).broken == ""
    assert "no event has the head" in verified(register, head=done.chain).broken


def test_the_first_break_is_told_and_what_is_sound_before_it(register: Register) -> None:
    filled(register)
    unguarded(register, update(events).where(events.c.number == 3).values(person="Someone"))
    found = verified(register)
    assert found.events == 2
    assert found.broken.startswith("event 3 (")
    assert found.broken.endswith("Someone) is not as it was saved")


def test_a_flipped_bit_on_the_disk_is_found_or_the_file_is_refused(tmp_path: Path) -> None:
    """Every 97th byte of the text of a record and of the bytes of a file, in the file itself."""
    from eyebar.errors import NoRegister

    place = tmp_path / "register.db"
    with opened_register(str(place), begin=True) as register:
        filled(register)
    whole = place.read_bytes()
    for sign in (b"first entry", b"county", b"07-19", b"calliper", b"trusses:"):
        at = whole.find(sign)
        if at < 0:
            continue
        place.write_bytes(whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1:])
        try:
            with opened_register(str(place)) as register:
                assert verified(register).broken, sign
        except NoRegister as refusal:
            assert "damaged" in str(refusal)  # noqa: PT017 - either answer will do
    place.write_bytes(whole)
    with opened_register(str(place)) as register:
        assert not verified(register).broken
