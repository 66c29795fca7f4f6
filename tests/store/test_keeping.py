"""What was saved is there as it was written, and stays; on both databases."""

import dataclasses

import pytest
from sqlalchemy import delete, func, select, text, update
from sqlalchemy.exc import DBAPIError

from eyebar.errors import ChangedMeanwhile, OutOfRange, Unknown, Unreadable
from eyebar.record import record_of
from eyebar.store import asked
from eyebar.store.opened import Register, opened_register
from eyebar.store.tables import ALL, events
from eyebar.store.verified import verified
from tests.store import samples
from tests.store.samples import added, record, saved


def latest(register: Register, handle: str = "W-1") -> asked.Revision:
    with register.reading() as connection:
        return asked.revision_of(connection, asked.bridge_named(connection, handle))


def test_a_record_comes_back_to_the_letter(register: Register) -> None:
    added(register)
    assert latest(register).text == samples.text()
    assert latest(register).record_hash == record().hash


@pytest.mark.parametrize("odd", ["# ℓ – “quotes” 橋\n", "# line\r\n", "\t# tab behind\n"])
def test_odd_letters_and_line_ends_come_back_too(in_file: Register, odd: str) -> None:
    of = record_of(samples.text() + odd.lstrip("\t"))
    added(in_file, of=of)
    assert latest(in_file).text == of.text


def test_the_handle_is_the_number_else_the_name(in_file: Register) -> None:
    from eyebar.store.saving import key_for

    assert key_for(record()) == record().number
    text = samples.text().replace(samples.line_of(samples.text(), "number") + "\n", "")
    # By hand: a run of other signs becomes one hyphen, and none stands at the end.
    assert key_for(record_of(text)) == "Wrenmallow-Bridge-invented"


def test_a_handle_is_taken_once(in_file: Register) -> None:
    added(in_file)
    with pytest.raises(OutOfRange, match="save a new revision"):
        added(in_file)
    assert len(history(in_file)) == 2


def history(register: Register) -> list[str]:
    with register.reading() as connection:
        return [one["kind"] for one in asked.events_of(connection)]


@pytest.mark.parametrize("handle", ["../up", "a b", "a/b", "-", ".hidden", "x" * 81])
def test_a_handle_that_could_be_a_path_is_refused(in_file: Register, handle: str) -> None:
    with pytest.raises(Unreadable, match="cannot be the handle"):
        added(in_file, handle)


def test_every_change_is_an_event_with_its_person_and_reason(register: Register) -> None:
    added(register)
    saved(register, record(built=1891), onto=1)
    assert history(register) == ["register begun", "bridge added", "revision saved"]
    with register.reading() as connection:
        last = asked.events_of(connection)[-1]
    assert (last["person"], last["reason"], last["handle"]) == ("R. Alder", "corrected", "W-1")


def test_a_revision_says_what_it_was_made_from(register: Register) -> None:
    added(register)
    second = saved(register, record(built=1891), onto=1)
    assert second.revision == 2
    with register.reading() as connection:
        bridge = asked.bridge_named(connection, "W-1")
        assert asked.revision_of(connection, bridge, 1).text == samples.text()
        assert [one["revision"] for one in asked.revisions_of(connection, bridge)] == [1, 2]


def test_the_second_to_save_is_told_what_changed_and_nothing_is_lost(register: Register) -> None:
    added(register)
    saved(register, record(built=1891), onto=1)
    before = history(register)
    with pytest.raises(ChangedMeanwhile) as told:
        saved(register, record(built=1892, place="Fen Lane"), onto=1)
    refusal = told.value
    year, place = str(record().built), record().place
    assert refusal.theirs == (f"built: was '{year}', is '1891'",)
    assert set(refusal.yours) == {
        f"built: was '{year}', is '1892'", f"place: was '{place}', is 'Fen Lane'",
    }
    assert refusal.both == ("built",)
    assert (refusal.onto, refusal.latest) == (1, 2)
    assert "nothing was saved" in str(refusal)
    assert history(register) == before
    assert latest(register).text == record(built=1891).text
    # The cure that the refusal tells works.
    assert saved(register, record(built=1892, place="Fen Lane"), onto=2).revision == 3


def test_the_same_text_again_is_no_revision(in_file: Register) -> None:
    added(in_file)
    with pytest.raises(OutOfRange, match="changed"):
        saved(in_file, record(), onto=1)


@pytest.mark.parametrize("onto", [0, 2, 99])
def test_a_revision_that_is_not_there_cannot_be_built_on(in_file: Register, onto: int) -> None:
    added(in_file)
    with pytest.raises(Unknown, match="revision"):
        saved(in_file, record(built=1891), onto=onto)


def test_an_unknown_bridge_is_refused_with_the_nearest(in_file: Register) -> None:
    added(in_file)
    with pytest.raises(Unknown, match="did you mean 'W-1'"):
        saved(in_file, record(built=1891), onto=1, handle="W-2")


@pytest.mark.parametrize("person", ["", "   ", "A\0B", "x" * 2001, "a\ud800"])
def test_a_person_is_named_in_plain_letters(in_file: Register, person: str) -> None:
    from eyebar.store.saving import add_bridge

    with pytest.raises(Unreadable):
        add_bridge(in_file, record(), person=person, reason="r")
    assert history(in_file) == ["register begun"]


def test_readings_are_found_by_part_kind_day_and_words(register: Register) -> None:
    added(register)
    saved(register, record(built=1891), onto=1)
    wanted = [
        (one.date.isoformat(), reading.address.part, reading.value.text)
        for one in record().inspections for reading in one.readings
    ]
    with register.reading() as connection:
        everything = asked.readings_found(connection, asked.Search())
        # Only the latest revision counts: each reading of the record is found once.
        assert sorted((one["date"], one["part"], one["written"]) for one in everything) == sorted(
            wanted
        )
        first = everything[0]
        for search in (
            asked.Search(part=first["part"]), asked.Search(what=first["what"]),
            asked.Search(since=first["date"], until=first["date"]), asked.Search(bridge="W-1"),
            asked.Search(words=(first["gauge"] or "").upper()),
        ):
            found = asked.readings_found(connection, search)
            assert first["id"] in [one["id"] for one in found]
        assert asked.readings_found(connection, asked.Search(part="%")) == []
        assert asked.readings_found(connection, asked.Search(until="1700-01-01")) == []


def test_the_database_itself_refuses_to_change_or_take_away(register: Register) -> None:
    added(register)
    saved(register, record(built=1891), onto=1)
    for table in ALL:
        key = next(iter(table.primary_key.columns))
        with register.engine.connect() as connection:
            count = connection.execute(select(func.count()).select_from(table)).scalar()
        if not count:
            continue
        for change in (
            update(table).values({key.name: key}), delete(table),
        ):
            with pytest.raises(DBAPIError, match="keeps what it has"), \
                    register.engine.begin() as connection:
                connection.execute(change)
    assert not verified(register).broken


def test_a_row_cannot_be_put_in_the_place_of_another(in_file: Register) -> None:
    added(in_file)
    with pytest.raises(DBAPIError, match="keeps what it has"), in_file.engine.begin() as connection:
        connection.execute(text("INSERT OR REPLACE INTO bridges VALUES (1, 1, 'stolen')"))


@pytest.mark.postgres
def test_a_whole_table_cannot_be_emptied(socket: object) -> None:
    from tests.store.cluster import new_database

    with opened_register(new_database(socket), begin=True) as register:  # type: ignore[arg-type]
        for table in ALL:
            with pytest.raises(DBAPIError, match="keeps what it has"), \
                    register.engine.begin() as connection:
                connection.execute(text(f"TRUNCATE {table.name} CASCADE"))


def test_half_an_event_is_nothing(register: Register) -> None:
    from eyebar.store.writing import Saying

    added(register)
    def half() -> None:
        with register.writing(Saying(kind="bridge added", person="A", reason="b")) as writing:
            writing.add("bridges", handle="half")
            writing.seal()
            raise RuntimeError("stop")

    with pytest.raises(RuntimeError, match="stop"):
        half()
    with register.reading() as connection:
        assert connection.execute(select(func.count()).select_from(events)).scalar() == 2
    assert not verified(register).broken


def test_what_one_reads_is_one_state_while_another_saves(register: Register, place: str) -> None:
    added(register)
    with register.reading() as connection:
        bridge = asked.bridge_named(connection, "W-1")
        assert asked.revision_of(connection, bridge).revision == 1
        with opened_register(place) as another:
            saved(another, record(built=1891), onto=1)
        assert asked.revision_of(connection, bridge).revision == 1
    assert latest(register).revision == 2


def test_a_saved_answer_names_the_head_of_the_chain(register: Register) -> None:
    done = added(register)
    found = verified(register, head=done.chain[:12])
    assert (found.head, found.known_head, found.events) == (done.chain, done.event, 2)
    assert dataclasses.asdict(found)["broken"] == ""
