"""`eyebar account`: who may come in where the workbench is shared; `eyebar serve` refusing."""

from pathlib import Path

from typer.testing import CliRunner

from eyebar.cli.commands import app

PASSWORD = "a password that is long\n"


def said(*arguments: str, typed: str | None = None) -> tuple[int, str]:
    answer = CliRunner().invoke(app, list(arguments), input=typed)
    return answer.exit_code, answer.output


def test_an_account_is_made_listed_given_a_token_and_ended(tmp_path: Path) -> None:
    file = ("--accounts", str(tmp_path / "accounts.db"))
    assert said("account", "add", "Ann", "--role", "measurer", *file, typed=PASSWORD)[0] == 0
    assert "Ann: measurer" in said("account", "list", *file)[1]
    code, token = said("account", "token", "Ann", "--scope", "read", *file)
    assert code == 0
    secret = token.split()[-1]
    assert secret.encode() not in (tmp_path / "accounts.db").read_bytes()
    assert said("account", "revoke", "1", *file)[0] == 0
    assert said("account", "password", "Ann", *file, typed=PASSWORD)[0] == 0
    assert said("account", "end", "Ann", *file)[0] == 0
    assert "ended" in said("account", "list", *file)[1]
    assert said("account", "trail", *file)[0] == 0


def test_what_will_not_do_is_refused_in_words(tmp_path: Path) -> None:
    file = ("--accounts", str(tmp_path / "accounts.db"))
    code, answer = said("account", "add", "Ann", "--role", "reader", *file, typed="short\n")
    assert (code, "12 or more" in answer) == (1, True)
    assert said("account", "end", "Nobody", *file)[0] == 1
    code, answer = said("serve", "--shared", "--name", "bench.example", *file)
    assert (code, "without TLS" in answer) == (1, True)
    code, answer = said("serve", "--shared", "--name", "bench.example", "--proxy", "127.0.0.1",
                        *file)
    assert (code, "at least one before it is shared" in answer) == (1, True)
    code, answer = said("serve", "--shared", "--demo")
    assert (code, "for yourself alone" in answer) == (1, True)
