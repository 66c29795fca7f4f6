"""Killed in the middle, no room on the disk, many at once: nothing half, nothing lost."""

import os
import resource
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from sqlalchemy import func, select

from eyebar.errors import NoRegister
from eyebar.store.files import About, attach_content
from eyebar.store.opened import opened_register
from eyebar.store.tables import events, revisions
from eyebar.store.verified import verified
from tests.house.tracked import ROOT
from tests.store.samples import WHO, added, record, saved
from tests.store.savers import EACH, SAVERS

KILLS = 50


def test_fifty_savers_killed_at_random_points_leave_the_old_or_the_new(tmp_path: Path) -> None:
    """In a process of its own, which forks before it has threads."""
    said = apart(
        "from pathlib import Path; from tests.store.killed import killed;"
        f"print(killed({KILLS}, Path({str(tmp_path)!r}), seed=20260609))"
    )
    # Some savers came through to say a number, or nothing was tried here.
    assert int(said) > KILLS / 5


def apart(program: str) -> str:
    """What a program prints in a process of its own."""
    path = os.pathsep.join(filter(None, (os.environ.get("PYTHONPATH"), str(ROOT))))
    ended = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False,
        env={**os.environ, "PYTHONPATH": path},
    )
    assert ended.returncode == 0, ended.stderr
    return ended.stdout


def in_a_child(doing: Callable[[], str]) -> str:
    """What a function answers in a process of its own."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.write(write, doing().encode())
        except BaseException as error:
            os.write(write, f"{type(error).__name__}: {error}".encode())
        finally:
            os._exit(0)
    os.close(write)
    with os.fdopen(read) as said:
        answer = said.read()
    os.waitpid(child, 0)
    return answer


def test_a_full_disk_is_told_and_loses_nothing(tmp_path: Path) -> None:
    place = tmp_path / "register.db"
    with opened_register(str(place), begin=True) as register:
        added(register)

    def filling() -> str:
        # The limit stands for a disk that is full: a write beyond it fails as there.
        resource.setrlimit(resource.RLIMIT_FSIZE, (600_000, 600_000))
        with opened_register(str(place)) as register:
            for number in range(40):
                try:
                    attach_content(
                        register, "W-1", (f"{number}.bin", os.urandom(100_000)), About(),
                        person=WHO, reason="to fill it",
                    )
                except NoRegister as refusal:
                    return f"{number} {refusal}"
        return "never full"

    said = in_a_child(filling)
    kept, _, refusal = said.partition(" ")
    assert "nothing was saved" in refusal, said
    with opened_register(str(place)) as register:
        assert not verified(register).broken
        with register.reading() as connection:
            count = connection.execute(select(func.count()).select_from(events)).scalar()
        assert count == 2 + int(kept)
        # Once there is room again it goes on.
        assert saved(register, record(built=1891), onto=1).revision == 2


def test_many_who_save_at_once_lose_nothing(place: str) -> None:
    with opened_register(place) as register:
        added(register)
    said = apart(f"from tests.store.savers import at_once; print(at_once({place!r}))")
    with opened_register(place) as register:
        assert not verified(register).broken
        with register.reading() as connection:
            numbers = connection.execute(
                select(revisions.c.revision).order_by(revisions.c.revision)
            ).scalars().all()
            count = connection.execute(select(func.count()).select_from(events)).scalar()
        # By hand: the first revision and what each saver saved; an event for each, and the first.
        assert numbers == list(range(1, 1 + SAVERS * EACH + 1))
        assert count == 1 + 1 + SAVERS * EACH
    assert int(said) >= 0  # how often another was quicker


def test_who_waits_too_long_for_another_is_told(
    place: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    from eyebar.store import opened as opening

    monkeypatch.setattr(opening, "WAIT_SECONDS", 1)
    with opened_register(place) as first, opened_register(place) as second:
        added(first)

        def late() -> None:
            saved(second, record(built=1892), onto=1)

        with first.changing(), pytest.raises(NoRegister, match="somebody else"):
            late()
        late()
