"""Ratings, statements, signs, slips and decisions are kept, and say what they are not."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from eyebar.errors import OutOfRange, Unknown, Unreadable
from eyebar.store import issued
from eyebar.store.asked import bridge_named
from eyebar.store.opened import Register
from eyebar.store.writing import Saying, head_of
from eyebar.views.signed import NOT_A_SEAL
from tests.store.filled import rating
from tests.store.samples import WHO, added, record, saved

BY = {"person": WHO, "reason": "county inspection"}
DAY = date(2026, 7, 1)


def test_a_rating_is_kept_whole_and_names_what_it_rests_on(
    in_file: Register, monkeypatch: pytest.MonkeyPatch
) -> None:
    from eyebar.documents.rate import document_of
    from eyebar.views.words import posting_line

    seen = []

    def made(*of: Any) -> Any:
        seen.append(document_of(*of))
        return seen[0]

    monkeypatch.setattr(issued, "document_of", made)
    added(in_file)
    given = issued.issue(in_file, "W-1", office=None, on=None, **BY)
    (document,) = seen
    with in_file.reading() as connection:
        row = issued.rating_row(connection, given.number)
        (shown,) = issued.ratings_of(connection, bridge_named(connection, "W-1"))
    assert json.loads(row["document"]) == json.loads(json.dumps(document))
    assert document["record_hash"] == row["record_hash"] == record().hash
    assert row["version"] == document["version"]
    assert given.says == row["posting"] == posting_line(document["posting"])
    assert (shown["number"], shown["statements"]) == (1, [])  # a draft


def test_a_statement_holds_name_licence_and_the_head_it_stands_on(register: Register) -> None:
    added(register)
    number = rating(register)
    with register.reading() as connection:
        _, head = head_of(connection)
    given = issued.sign(register, number, name="R. Alder", licence="12345", person=WHO)
    assert given.says == "I, R. Alder, licence 12345, have checked rating 1 and answer for it."
    with register.reading() as connection:
        (shown,) = issued.ratings_of(connection, bridge_named(connection, "W-1"))
        stood = connection.exec_driver_sql("SELECT head FROM signatures").scalar()
    assert shown["statements"] == [given.says]
    assert stood == head


def test_the_statement_says_that_it_is_no_seal() -> None:
    assert "no seal and no cryptographic signature" in NOT_A_SEAL


def test_a_rating_of_a_record_that_has_gone_on_is_not_signed(in_file: Register) -> None:
    added(in_file)
    number = rating(in_file)
    saved(in_file, record(built=1891), onto=1)
    with pytest.raises(OutOfRange, match="gone on to revision 2"):
        issued.sign(in_file, number, name="R. Alder", licence="12345", person=WHO)


@pytest.mark.parametrize(("name", "licence"), [("", "1"), ("R. Alder", " "), ("R\0", "1")])
def test_who_signs_has_a_name_and_a_licence(in_file: Register, name: str, licence: str) -> None:
    added(in_file)
    with pytest.raises(Unreadable):
        issued.sign(in_file, rating(in_file), name=name, licence=licence, person=WHO)


def test_a_rating_that_is_not_there_is_not_signed(in_file: Register) -> None:
    with pytest.raises(Unknown, match="no rating '7'"):
        issued.sign(in_file, 7, name="R. Alder", licence="12345", person=WHO)


def test_a_sign_stands_until_it_is_taken_down_and_both_are_kept(register: Register) -> None:
    added(register)
    up = issued.put_up(register, "W-1", "WEIGHT LIMIT 6 TONS", on=DAY, rating=None, **BY)
    with register.reading() as connection:
        assert issued.standing(connection) == {1: ["WEIGHT LIMIT 6 TONS"]}
    with pytest.raises(OutOfRange, match="when it was put up"):
        issued.taken_down(register, up.number, on=date(2026, 6, 30), **BY)
    issued.taken_down(register, up.number, on=date(2026, 8, 1), **BY)
    with register.reading() as connection:
        assert issued.standing(connection) == {}
        (shown,) = issued.postings_of(connection, bridge_named(connection, "W-1"))
    assert (shown["date"], shown["down"]) == ("2026-07-01", "2026-08-01")
    with pytest.raises(OutOfRange, match="still stands"):
        issued.taken_down(register, up.number, on=date(2026, 8, 2), **BY)
    with pytest.raises(Unknown, match="no posting '2'"):  # that is the taking down itself
        issued.taken_down(register, 2, on=date(2026, 8, 2), **BY)


def test_the_rating_behind_a_sign_is_of_the_same_bridge(in_file: Register) -> None:
    added(in_file)
    added(in_file, "W-2", record(place="Fen Lane"))
    number = rating(in_file, "W-2")
    with pytest.raises(Unknown, match="in bridge W-1"):
        issued.put_up(in_file, "W-1", "WEIGHT LIMIT 6 TONS", on=DAY, rating=number, **BY)


def test_a_slip_ends_after_it_begins(in_file: Register) -> None:
    added(in_file)
    crossing = issued.Crossing(
        vehicle="grain cart", holder="A. Farmer", begins=DAY, ends=date(2026, 6, 30),
        conditions="walking pace",
    )
    with pytest.raises(OutOfRange, match="not before the first"):
        issued.give_slip(in_file, "W-1", crossing, **BY)


def test_a_decision_of_the_board_stands_beside_those_of_the_record(in_file: Register) -> None:
    from eyebar.store.documents import bridge_document

    added(in_file)
    issued.decide(in_file, "W-1", "keep it", on=DAY, part="", **BY)
    shown = bridge_document(in_file, "W-1")["decisions"]
    assert [one["what"] for one in shown if not one["in_record"]] == ["keep it"]
    assert len(shown) == len(record().decisions) + 1


def test_what_a_rating_refuses_is_refused_and_not_kept(in_file: Register, tmp_path: Path) -> None:
    from eyebar.errors import BadRecord

    added(in_file)
    (tmp_path / "values.toml").write_text("nonsense = [")
    with pytest.raises(BadRecord):
        issued.issue(in_file, "W-1", office=tmp_path, on=None, **BY)
    with in_file.reading() as connection:
        assert issued.ratings_of(connection, bridge_named(connection, "W-1")) == []


def test_the_latest_rating_names_what_governs_however_long_its_document_is(
    register: Register,
) -> None:
    added(register)
    rating(register)
    document = json.dumps({
        "cautions": ["é" * 300], "posting": {"governed_by": {"part": "north/L2/pin"}},
        "parts": ["ü" * 40_000],
    }, ensure_ascii=False)
    with register.writing(Saying(kind="rating issued", **BY)) as writing:
        bridge = bridge_named(writing.connection, "W-1")
        writing.bridge = bridge.id
        writing.add(
            "ratings", bridge=bridge.id, revision=1, date="2026-07-01", record_hash="0" * 64,
            values_hash="0" * 64, version="0", posting="WEIGHT LIMIT 5 TONS", exact_tons=5.0,
            document=document,
        )
    with register.reading() as connection:
        latest = issued.latest_ratings(connection)[bridge.id]
    assert (latest["governed_by"], latest["date"]) == ("north/L2/pin", "2026-07-01")


def test_a_slip_is_told_again_and_another_bridge_has_none(in_file: Register) -> None:
    added(in_file)
    added(in_file, "W-2", record(place="Fen Lane"))
    given = issued.give_slip(in_file, "W-1", issued.Crossing(
        vehicle="grain cart", holder="A. Farmer", begins=DAY, ends=DAY, conditions="walking pace",
    ), **BY)
    with in_file.reading() as connection:
        slip = issued.slip_given(connection, bridge_named(connection, "W-1"), given.number)
        assert (slip["vehicle"], slip["person"], slip["reason"]) == (
            "grain cart", WHO, "county inspection",
        )
        with pytest.raises(Unknown):
            issued.slip_given(connection, bridge_named(connection, "W-2"), given.number)
