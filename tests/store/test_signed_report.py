"""The head of the register's chain on a paper, and whether it fits."""

import json
import sqlite3
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from eyebar.cli import reporting
from eyebar.cli.commands import app
from eyebar.store.asked import bridge_named, revision_of
from eyebar.store.opened import opened_register
from eyebar.store.writing import Saying
from tests.report import made
from tests.store import samples

pytestmark = pytest.mark.typst
STATED = "I, R. Alder, licence 12345, have checked rating 1 and answer for it."


@pytest.fixture(autouse=True)
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, begun_file: Path) -> Path:
    """A register with a rating of the demo bridge, made once for all of these tests."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("EYEBAR_REGISTER", str(tmp_path / "register.db"))
    (tmp_path / "register.db").write_bytes(begun_file.read_bytes())
    (tmp_path / "w.yaml").write_text(samples.text(), encoding="utf-8")
    undrawn = replace(made.documents(samples.NAME), forces=None)  # quick to set
    monkeypatch.setattr(reporting, "gathered", lambda *_, **__: undrawn)
    keep_a_rating(made.documents(samples.NAME).rate)
    return tmp_path


def keep_a_rating(document: dict[str, Any]) -> None:
    """What `issue` keeps, of a bridge that has been rated."""
    with opened_register("register.db") as register:
        samples.added(register)
        saying = Saying(kind="rating issued", person=samples.WHO, reason="annual")
        with register.writing(saying) as writing:
            bridge = bridge_named(writing.connection, "W-1")
            writing.bridge = bridge.id
            writing.add(
                "ratings", bridge=bridge.id,
                revision=revision_of(writing.connection, bridge).id, date=document["date"],
                record_hash=document["record_hash"], values_hash="0" * 64,
                version=document["version"], posting="CLOSED", exact_tons=0.0,
                document=json.dumps(document),
            )


def typed(*arguments: str) -> Result:
    return CliRunner().invoke(app, arguments)


def sign(name: str = "R. Alder") -> None:
    words = ("--name", name, "--licence", "12345", "--by", name)
    assert typed("register", "sign", "1", *words).exit_code == 0


def paper(file: str = "paper.pdf") -> str:
    """The text of the paper of rating 1, written now."""
    answer = typed("register", "report", "1", "-o", file, "--working", "none")
    assert answer.exit_code == 0, answer.output
    return made.text(Path(file).read_bytes())


def heads() -> list[str]:
    """The hash of every event, as `history` tells them."""
    events = json.loads(typed("register", "history", "--json").stdout)["events"]
    return [one["chain"] for one in events]


def verified(*more: str) -> tuple[int, str]:
    answer = typed("report", "w.yaml", "--verify", "paper.pdf", *more)
    return answer.exit_code, " ".join((answer.stdout + answer.stderr).split())


def test_who_signed_and_the_head_stand_on_the_paper_and_fit() -> None:
    sign()
    text = paper()
    assert STATED in text
    assert "It is no seal and no cryptographic signature" in text
    assert "Not valid until a licensed engineer has checked and signed it." in text
    # On the first page and on the last.
    assert text.count(heads()[-1]) == 2
    code, said = verified()
    assert code == 0
    assert "the same, byte for byte" in said
    assert "The head printed on it is that of event 4 of this register" in said


def test_the_paper_of_a_draft_says_so() -> None:
    text = paper()
    assert "Rating 1 of the register is a draft: nobody has signed it." in text
    assert heads()[2] in text
    assert "have checked rating 1" not in text


def test_what_comes_after_does_not_unsettle_a_paper() -> None:
    sign()
    paper()
    sign("B. Rowan")
    typed("register", "decide", "W-1", "keep it", "--why", "board", "--by", "B. Rowan")
    assert verified()[0] == 0
    later = paper("later.pdf")
    assert "I, B. Rowan," in later
    assert STATED in later
    assert heads()[4] in later  # that of the second signature, not of the decision


def test_a_register_in_which_something_was_changed_is_found_by_its_paper() -> None:
    sign()
    paper()
    with sqlite3.connect("register.db") as connection:
        connection.execute("DROP TRIGGER signatures_no_update")
        connection.execute("UPDATE signatures SET licence = '54321'")
    connection.close()
    code, said = verified()
    assert code == 1
    assert "a row of event 4" in said
    assert typed("register", "report", "1", "-o", "again.pdf").exit_code == 1
    assert not Path("again.pdf").exists()


def test_a_chain_written_anew_has_another_head_than_the_paper(begun_file: Path) -> None:
    # Whoever owns the database makes a sound one with another name on the statement.
    sign()
    paper()
    Path("register.db").write_bytes(begun_file.read_bytes())
    for log in Path().glob("register.db-*"):
        log.unlink()
    keep_a_rating(made.documents(samples.NAME).rate)
    sign("B. Rowan")
    code, said = verified()
    assert code == 1
    assert "The register at hand is not the one that it names." in said


def test_without_its_register_a_paper_is_not_proven() -> None:
    paper()
    code, said = verified("--register", "none.db")
    assert code == 1
    assert "give that with --register" in said


def test_a_rating_that_this_program_would_not_make_is_not_printed(
    monkeypatch: pytest.MonkeyPatch
) -> None:
    of = made.documents(samples.NAME)
    other = replace(of, rate={**of.rate, "unconfirmed": []})
    monkeypatch.setattr(reporting, "gathered", lambda *_, **__: other)
    answer = typed("register", "report", "1", "-o", "paper.pdf")
    assert answer.exit_code == 1
    assert "issue a new one" in " ".join(answer.stderr.split())
    assert not Path("paper.pdf").exists()


def test_the_head_on_paper_is_that_which_verify_knows() -> None:
    sign()
    paper()
    typed("register", "decide", "W-1", "keep it", "--why", "board", "--by", "B. Rowan")
    found = json.loads(typed("register", "verify", "--head", heads()[3], "--json").stdout)
    assert (found["sound"], found["known_head"]) == (True, 4)
