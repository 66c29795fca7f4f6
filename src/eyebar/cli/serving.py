"""`eyebar serve`: the workbench; `eyebar account`: who may come in where it is shared."""

import sys
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from eyebar.cli.options import Office
from eyebar.cli.refusals import refusing
from eyebar.demo import bridge_records
from eyebar.errors import MissingLibrary, OutOfRange
from eyebar.terms import Role, Scope

if TYPE_CHECKING:
    from eyebar.store.accounts import Accounts

account_app = typer.Typer(
    no_args_is_help=True, rich_markup_mode=None,
    help="Say who may come in where the workbench is shared.",
)

AccountsFile = Annotated[
    Path | None,
    typer.Option("--accounts", metavar="FILE", envvar="EYEBAR_ACCOUNTS",
                 help="Where the accounts are kept; else in your data folder."),
]
Name = Annotated[str, typer.Argument(metavar="NAME", help="The account's name.")]


def serve(
    *,
    port: Annotated[int, typer.Option(min=0, max=65535, help="0 takes a free one.")] = 0,
    register: Annotated[
        str | None,
        typer.Option("--register", metavar="PATH|URL", envvar="EYEBAR_REGISTER",
                     help="Which register; else the one in your data folder."),
    ] = None,
    demo: Annotated[
        bool, typer.Option("--demo", help="On a register of its own with the demo bridges.")
    ] = False,
    by: Annotated[
        str, typer.Option("--by", envvar="EYEBAR_BY", help="Who sits at it; else your account.")
    ] = "",
    people: Annotated[
        Path | None, typer.Option(metavar="FILE.toml", help="Who measures and who signs.")
    ] = None,
    office: Office = None,
    shared: Annotated[
        bool, typer.Option("--shared", help="For others too: by accounts, behind TLS.")
    ] = False,
    listen: Annotated[str, typer.Option(help="Shared: the address it listens on.")] = "0.0.0.0",
    name: Annotated[str, typer.Option(help="Shared: the host that browsers ask for.")] = "",
    certificate: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Shared: the certificate (PEM).")
    ] = None,
    key: Annotated[Path | None, typer.Option(metavar="FILE", help="Shared: its key.")] = None,
    proxy: Annotated[
        str, typer.Option(help="Shared: the one address that ends TLS before it.")
    ] = "",
    accounts: AccountsFile = None,
) -> None:
    """Open the workbench: the whole of a bridge in a browser."""
    with refusing(as_json=False):
        try:
            from eyebar.web.people import people_of
            from eyebar.web.serving import Own, Shared
            from eyebar.web.serving import serve as opened
        except ModuleNotFoundError as missing:
            raise MissingLibrary(missing.name or "starlette", "the workbench", "office") from None

        wanted: Own | Shared
        if shared:
            if demo:
                raise OutOfRange("demo", "shared", "for yourself alone")
            wanted = Shared(
                listen=listen, name=name, port=port or 8443, accounts=accounts,
                certificate=certificate, key=key, proxy=proxy,
            )
        else:
            wanted = Own(port=port, person=by, people=people_of(people) if people else ())
        with tempfile.TemporaryDirectory(prefix="eyebar-demo-") as folder:
            place = str(Path(folder) / "register.db") if demo else register
            if demo:
                typer.echo("The demo bridges are invented; what you change here goes with the end.")
            opened(place, wanted, office=office, demo=_texts() if demo else (), saying=typer.echo)


def _texts() -> tuple[str, ...]:
    return tuple(record.read_text(encoding="utf-8") for record in bridge_records().values())


def _accounts(file: Path | None) -> "Accounts":
    try:
        from eyebar.store.accounts import Accounts
    except ModuleNotFoundError as missing:
        raise MissingLibrary(missing.name or "argon2", "an account", "office") from None
    return Accounts(file)


def _password() -> str:
    """The password: asked for twice at a terminal, else the first line that is sent."""
    if sys.stdin.isatty():
        found: str = typer.prompt("Password", hide_input=True, confirmation_prompt=True)
        return found
    return sys.stdin.readline().rstrip("\n")


@account_app.command()
def add(
    name: Name, *, role: Annotated[Role, typer.Option(help="What it may do.")],
    accounts: AccountsFile = None,
) -> None:
    """Make an account; the password is asked for, or read from the standard input."""
    with refusing(as_json=False):
        _accounts(accounts).add(name, role, _password())
    typer.echo(f"{name} may come in as {role}.")


@account_app.command(name="list")
def listed(*, accounts: AccountsFile = None) -> None:
    """List the accounts."""
    with refusing(as_json=False):
        for one in _accounts(accounts).listed():
            ended = f", ended {one['ended']}" if one["ended"] else ""
            typer.echo(f"{one['name']}: {one['role']}, since {one['made']}{ended}")


@account_app.command()
def password(name: Name, *, accounts: AccountsFile = None) -> None:
    """Change a password; all sessions of the account end."""
    with refusing(as_json=False):
        _accounts(accounts).change_password(name, _password())
    typer.echo(f"The password of {name} is changed.")


@account_app.command()
def end(name: Name, *, accounts: AccountsFile = None) -> None:
    """End an account, its sessions and its tokens."""
    with refusing(as_json=False):
        _accounts(accounts).end(name)
    typer.echo(f"{name} comes in no more.")


@account_app.command()
def token(
    name: Name, *,
    scope: Annotated[Scope, typer.Option(help="What it is good for.")] = Scope.READ,
    days: Annotated[int, typer.Option(min=1, max=366, help="How long.")] = 90,
    note: Annotated[str, typer.Option(help="What it is for.")] = "",
    accounts: AccountsFile = None,
) -> None:
    """Make a token for a program; it is said this once."""
    with refusing(as_json=False):
        number, secret = _accounts(accounts).new_token(name, scope, days, note)
    typer.echo(f"Token {number} of {name}, to {scope}, for {days} days: {secret}")


@account_app.command()
def revoke(
    number: Annotated[int, typer.Argument(metavar="NUMBER", help="The token's number.")], *,
    accounts: AccountsFile = None,
) -> None:
    """Take a token back."""
    with refusing(as_json=False):
        _accounts(accounts).revoke(number)
    typer.echo(f"Token {number} is good no more.")


@account_app.command()
def trail(
    *, most: Annotated[int, typer.Option(min=1, help="How many lines.")] = 50,
    accounts: AccountsFile = None,
) -> None:
    """Show who changed or tried what, the newest first."""
    with refusing(as_json=False):
        for one in _accounts(accounts).lines(most):
            who = one["account"] or "a stranger"
            typer.echo(f"{one['at']}  {one['status']}  {who} from {one['address']}: {one['what']}")
