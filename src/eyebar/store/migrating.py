"""From schema to schema: an older register is brought up to date, after a backup."""

from collections.abc import Sequence
from importlib.resources import as_file, files
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection

from eyebar.store.places import default_file
from eyebar.store.tables import SCHEMA
from eyebar.store.writing import now

if TYPE_CHECKING:
    from eyebar.store.opened import Register


def known_schemas() -> Sequence[str]:
    """Every schema that a migration of this program makes, the oldest first."""
    names = [
        entry.name for entry in files("eyebar.store").joinpath("migrations", "versions").iterdir()
        if entry.name.endswith(".py")
    ]
    return sorted(name[1:].split("_")[0] for name in names)


def upgraded(connection: Connection, to: str = "head") -> None:
    """Make the tables of a schema in the transaction that the connection is in."""
    from alembic import command
    from alembic.config import Config

    with as_file(files("eyebar.store").joinpath("migrations")) as folder:
        config = Config()
        config.set_main_option("script_location", str(folder).replace("%", "%%"))
        config.set_main_option("path_separator", "os")
        config.attributes["connection"] = connection
        command.upgrade(config, to)


def migrated(register: "Register", schema: str) -> tuple[str, ...]:
    """Bring an older register to today's schema, and say where its backup lies."""
    from eyebar.store.copied import backed_up, brought_up
    from eyebar.store.opened import schema_of

    backup = backup_place(register.place.file, schema)
    backed_up(register, backup)
    with register.changing() as connection:
        # Another may have done it while the backup was made.
        brought_up(connection, schema_of(connection) or schema)
    return (
        f"The register was of schema {schema} and is of {SCHEMA} now; as it was, it lies in"
        f" {backup}.",
    )


def backup_place(file: Path | None, schema: str) -> Path:
    """Where the backup before a migration goes: beside the file, else the user's data folder."""
    beside = file or default_file().with_name("postgresql.db")
    stamp = now().replace(":", "").replace("-", "")
    return beside.with_name(f"{beside.name}.schema-{schema}-{stamp}.backup")
