"""A PostgreSQL of our own for a test run: in a temporary folder, as an ordinary person, no network.

The server refuses to run as root, so root runs it as `nobody`.
"""

import itertools
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

PERSON = "eyebar"
_numbers = itertools.count(1)


def programs() -> Path:
    """The folder of `initdb` and `pg_ctl`."""
    found = shutil.which("initdb")
    lie = sorted(Path("/usr/lib/postgresql").glob("*/bin"))
    return Path(found).parent if found else lie[-1]


def ordinary(folder: Path) -> list[str]:
    """What stands before a command so that it runs as an ordinary person who owns the folder."""
    if os.geteuid() != 0:
        return []
    shutil.chown(folder, "nobody")
    return ["runuser", "-u", "nobody", "--"]


def _in_memory() -> str | None:
    """A folder in memory, where there is one with room enough; else the usual place."""
    memory = Path("/dev/shm")  # noqa: S108,RUF100 - a fresh folder is made in it
    roomy = memory.is_dir() and shutil.disk_usage(memory).free > 2_000_000_000
    return str(memory) if roomy else None


@contextmanager
def cluster() -> Iterator[Path]:
    """A running cluster; gives the folder of its socket."""
    folder = Path(tempfile.mkdtemp(prefix="pg", dir=_in_memory()))
    base = folder / "base"
    before = ordinary(folder)

    def run(program: str, *arguments: str) -> None:
        subprocess.run(
            [*before, str(programs() / program), *arguments], check=True, cwd=folder,
            stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, timeout=60,
        )

    try:
        run("initdb", "-D", str(base), "-U", PERSON, "-A", "trust", "-E", "UTF8",
            "--locale=C.UTF-8", "--no-sync")
        run("pg_ctl", "-D", str(base), "-w", "-l", str(folder / "log"), "-o",
            f"-c listen_addresses='' -c unix_socket_directories='{folder}' -c fsync=off"
            " -c full_page_writes=off", "start")
        try:
            yield folder
        finally:
            run("pg_ctl", "-D", str(base), "-w", "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def new_database(socket: Path, template: str = "template0") -> str:
    """The URL of a new database, empty or a copy of another."""
    import psycopg

    name = f"register_{os.getpid()}_{next(_numbers)}"
    with psycopg.connect(
        f"host={socket} user={PERSON} dbname=postgres", autocommit=True
    ) as connection:
        connection.execute(f'CREATE DATABASE "{name}" TEMPLATE "{template}"')
    return f"postgresql://{PERSON}@/{name}?host={socket}"
