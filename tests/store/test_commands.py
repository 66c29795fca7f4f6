"""`eyebar register ...` as it is typed: what it prints, its documents, its refusals."""

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner, Result

from eyebar.cli.commands import app
from eyebar.documents.schemas import schema
from eyebar.store import effects
from tests.store import samples
from tests.store.filled import picture

BY = ("--by", "R. Alder")


@pytest.fixture(autouse=True)
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, begun_file: Path) -> Path:
    """A register that is begun, the default of the commands; a record beside it."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("EYEBAR_REGISTER", str(tmp_path / "register.db"))
    (tmp_path / "register.db").write_bytes(begun_file.read_bytes())
    (tmp_path / "w.yaml").write_text(samples.text(), encoding="utf-8")
    (tmp_path / "w2.yaml").write_text(
        samples.with_line(samples.text(), "place: Fen Lane"), encoding="utf-8"
    )
    return tmp_path


def typed(*arguments: str) -> Result:
    return CliRunner().invoke(app, ["register", *arguments], prog_name="eyebar")


def done(*arguments: str) -> Result:
    answer = typed(*arguments)
    assert answer.exit_code == 0, answer.output
    if not answer.stdout.startswith("{"):
        assert all(len(line) <= 100 for line in answer.stdout.splitlines())
    return answer


def document(name: str, *arguments: str) -> Any:
    """What a command answers as JSON, held against its schema."""
    found = json.loads(done(*arguments, "--json").stdout)
    Draft202012Validator(schema(f"register-{name}")).validate(found)
    assert found["format"] == f"eyebar/register-{name}/1"
    return found


def test_a_bridge_from_its_record_through_two_revisions(place: Path) -> None:
    added = document("done", "add", "w.yaml", "--as", "W-1", *BY)
    assert (added["handle"], added["number"]) == ("W-1", 1)
    saved = done("save", "W-1", "w2.yaml", "--onto", "1", "--why", "lane renamed", *BY)
    assert saved.stdout.startswith("Bridge W-1 is at revision 2.")
    (one,) = document("list", "list")["bridges"]
    assert (one["handle"], one["revision"], one["place"]) == ("W-1", 2, "Fen Lane")
    assert "W-1" in done("list").stdout
    shown = document("bridge", "show", "W-1")
    assert [each["reason"] for each in shown["revisions"]] == ["first entry", "lane renamed"]
    assert "lane renamed" in done("show", "W-1").stdout
    kinds = [each["kind"] for each in document("history", "history")["events"]]
    assert kinds == ["register begun", "bridge added", "revision saved"]
    assert "R. Alder" in done("history", "W-1").stdout
    part = samples.record().inspections[0].readings[0].address.part
    found = document("readings", "find", "--part", part)["readings"]
    assert {each["part"] for each in found} == {part}
    assert part.split("/")[0] in done("find").stdout
    done("take", "W-1", "-o", "taken.yaml")
    assert (place / "taken.yaml").read_bytes() == (place / "w2.yaml").read_bytes()
    done("take", "W-1", "--revision", "1", "-o", "first.yaml")
    assert (place / "first.yaml").read_bytes() == (place / "w.yaml").read_bytes()


def test_the_place_is_said_on_the_error_stream(place: Path) -> None:
    answer = done("list")
    assert answer.stderr == f"Register: {place / 'register.db'}\n"


def test_what_changed_is_told_with_what_it_did(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(effects, "rate_document", lambda record, **_: {"posting": {
        "closed": False, "provisional": False, "exact_tons": 6.25,
        "sign": {"legend": f"SIGN AT {record.place.upper()}"},
    }})
    done("add", "w.yaml", "--as", "W-1", *BY)
    done("save", "W-1", "w2.yaml", "--onto", "1", "--why", "lane renamed", *BY)
    found = document("compare", "compare", "W-1", "1")
    (change,) = found["changes"]
    assert change["sentence"] == f"place: was '{samples.record().place}', is 'Fen Lane'"
    assert change["alone"]["posting"] == found["after"]["posting"] == "SIGN AT FEN LANE"
    text = " ".join(done("compare", "W-1", "1", "2").stdout.split())
    assert "Revision 2: SIGN AT FEN LANE (least safe load 6.25 tons)" in text
    assert "must be checked and signed by a licensed engineer" in text
    assert document("compare", "compare", "W-1", "1", "--most", "0")["changes"][0]["alone"] is None
    assert "They say the same" in done("compare", "W-1", "2", "2").stdout


def test_who_saves_second_is_told_and_the_file_is_left_alone(place: Path) -> None:
    done("add", "w.yaml", "--as", "W-1", *BY)
    done("save", "W-1", "w2.yaml", "--onto", "1", "--why", "lane renamed", *BY)
    before = (place / "w.yaml").read_bytes()
    (place / "w3.yaml").write_text(
        samples.with_line(samples.text(), "place: Mill Lane"), encoding="utf-8"
    )
    answer = typed("save", "W-1", "w3.yaml", "--onto", "1", "--why", "mine", *BY)
    assert answer.exit_code == 1
    for said in ("nothing was saved", "is 'Fen Lane'", "is 'Mill Lane'", "changed by both:"):
        assert said in answer.stderr
    assert (place / "w.yaml").read_bytes() == before
    refusal = json.loads(
        typed("save", "W-1", "w3.yaml", "--onto", "1", "--why", "mine", *BY, "--json").stdout
    )
    Draft202012Validator(schema("error")).validate(refusal)
    assert refusal["code"] == "changed-meanwhile"


def test_files_are_kept_fetched_and_withdrawn(place: Path) -> None:
    done("add", "w.yaml", "--as", "W-1", *BY)
    (place / "pin.jpg").write_bytes(picture(position=True))
    kept = done("attach", "W-1", "pin.jpg", "--note", "the pin", *BY)
    assert "It told where it was taken; that was taken out." in " ".join(kept.stdout.split())
    document("done", "fetch", "1", "-o", "out.jpg")
    assert (place / "out.jpg").read_bytes()[:3] == b"\xff\xd8\xff"
    document("done", "withdraw", "1", "--why", "a face", *BY)
    (file,) = document("bridge", "show", "W-1")["files"]
    assert file["withdrawn"] == "a face"
    assert "WITHDRAWN: a face" in done("show", "W-1").stdout
    assert typed("fetch", "1", "-o", "again.jpg").exit_code == 1


def test_a_statement_says_that_it_is_no_seal() -> None:
    from eyebar.store.opened import opened_register
    from tests.store.filled import rating

    done("add", "w.yaml", "--as", "W-1", *BY)
    with opened_register("register.db") as register:
        rating(register)
    words = ("sign", "1", "--name", "R. Alder", "--licence", "12345", *BY)
    text = " ".join(done(*words).stdout.split())
    assert "I, R. Alder, licence 12345, have checked rating 1 and answer for it." in text
    assert "It is no seal and no cryptographic signature" in text
    assert "Head of the chain: " in text
    assert len(document("done", *words)["cautions"]) == 2
    (shown,) = document("bridge", "show", "W-1")["ratings"]
    assert len(shown["statements"]) == 2
    assert json.loads(done("rating", "1").stdout) == {"é": 0.1}


def test_signs_slips_and_decisions_are_written_down() -> None:
    done("add", "w.yaml", "--as", "W-1", *BY)
    why = ("--why", "board of July", *BY)
    document("done", "post", "W-1", "WEIGHT LIMIT 6 TONS", "--on", "2026-07-01", *why)
    assert document("list", "list")["bridges"][0]["standing"] == ["WEIGHT LIMIT 6 TONS"]
    document("done", "take-down", "1", "--on", "2026-08-01", *why)
    document(
        "done", "slip", "W-1", "--vehicle", "grain cart", "--holder", "A. Farmer",
        "--from", "2026-07-01", "--to", "2026-07-02", "--conditions", "walking pace", *why,
    )
    document("done", "decide", "W-1", "keep it", *why)
    shown = document("bridge", "show", "W-1")
    assert shown["postings"][0]["down"] == "2026-08-01"
    text = done("show", "W-1").stdout
    for said in ("grain cart", "WEIGHT LIMIT 6 TONS", "keep it"):
        assert said in text


def test_a_copy_comes_back_by_each_way(place: Path) -> None:
    done("add", "w.yaml", "--as", "W-1", *BY)
    head = document("verify", "verify")["head"]
    document("done", "backup", "copy.backup")
    document("done", "export", "out")
    for words in (("restore", "copy.backup"), ("import", "out")):
        new = str(place / f"{words[0]}.db")
        assert document("done", *words, "--register", new)["chain"] == head
        found = document("verify", "verify", "--register", new, "--head", head)
        assert (found["sound"], found["known_head"]) == (True, 2)


def test_a_broken_chain_ends_with_one_and_says_where() -> None:
    import sqlite3

    done("add", "w.yaml", "--as", "W-1", *BY)
    assert done("verify").stdout.startswith("Sound: 2 events")
    with sqlite3.connect("register.db") as connection:
        connection.execute("DROP TRIGGER revisions_no_update")
        connection.execute("UPDATE revisions SET owner = 'Another'")
    answer = typed("verify")
    assert answer.exit_code == 1
    assert "BROKEN after event 1: a row of event 2" in " ".join(answer.stdout.split())
    broken = json.loads(typed("verify", "--json").stdout)
    Draft202012Validator(schema("register-verify")).validate(broken)
    assert broken["sound"] is False


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        (("show", "W-9"), "unknown"),
        (("list", "--register", "nowhere/register.db"), "register"),
        (("list", "--register", "mysql://a:b@c/d"), "register"),
        (("list", "--register", "w.yaml"), "register"),
        (("add", "missing.yaml"), "bad-record"),
        (("import", "nowhere"), "register"),
        (("restore", "w.yaml"), "register"),
        (("backup", "w.yaml"), "out-of-range"),
        (("attach", "W-9", "w.yaml"), "unknown"),
        (("attach", "W-9", "missing.jpg"), "file"),
        (("add", "w.yaml", "--by", " "), "unreadable"),
    ],
)
def test_what_is_refused_carries_its_code(arguments: tuple[str, ...], code: str) -> None:
    answer = typed(*arguments, "--json")
    assert answer.exit_code == 1
    found = json.loads(answer.stdout)
    Draft202012Validator(schema("error")).validate(found)
    assert found["code"] == code


def test_without_the_extra_the_line_that_brings_it_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    import sys

    monkeypatch.delitem(sys.modules, "eyebar.store.opened")
    monkeypatch.setitem(sys.modules, "sqlalchemy", None)
    answer = typed("list")
    assert answer.exit_code == 1
    assert "pip install 'eyebar[office]'" in answer.stderr


def test_the_other_commands_do_not_wait_for_a_database() -> None:
    import subprocess
    import sys

    program = (
        "import sys; import eyebar.cli.commands, eyebar.documents;"
        "print([one for one in ('sqlalchemy', 'alembic', 'PIL', 'psycopg') if one in sys.modules])"
    )
    ended = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True,
                           check=True)
    assert ended.stdout == "[]\n"
