"""Savers killed at random points: python -m tests.store.killed 1000.

Each child saves revisions, says each number once it is saved, and is killed without warning at a
random moment, or at a random one of its statements. Then the register must open sound, hold every
revision that was said, and at most the one that was under way, whole.
"""

import os
import random
import signal
import sys
import tempfile
from pathlib import Path

from sqlalchemy import event

from eyebar.errors import EyebarError
from eyebar.store.asked import bridge_named, revision_of, revisions_of
from eyebar.store.opened import Register, opened_register
from eyebar.store.verified import verified
from tests.store.samples import added, record, saved

MOST_SECONDS = 0.12
"""How long a child lives at most once it has begun to save."""
STATEMENTS = 14
"""About as many as one save has."""


def killed(times: int, folder: Path, *, seed: int) -> int:
    """Kill so many savers; returns how many revisions were saved in all. Raises AssertionError."""
    chance = random.Random(seed)  # noqa: S311,RUF100 - no secret
    place = str(folder / "register.db")
    texts = [record(built=year) for year in (1891, 1892)]  # read before the children are made
    with opened_register(place, begin=True) as register:
        added(register)
    latest = 1
    for turn in range(times):
        said = _one(place, latest, chance, texts=texts)
        with opened_register(place) as register:
            latest = _looked_at(register, latest, said, turn)
            if turn % 10 == 0 or turn == times - 1:
                found = verified(register)
                assert not found.broken, f"kill {turn}: {found.broken}"
    return latest


def _one(place: str, latest: int, chance: random.Random, *, texts: list[object]) -> list[int]:
    """Let one saver begin, and kill it; the numbers of the revisions that it said were saved."""
    read, write = os.pipe()
    at_statement = chance.randrange(1, STATEMENTS * 2) if chance.random() < 0.5 else 0
    wait = chance.uniform(0.0, MOST_SECONDS)
    child = os.fork()
    if child == 0:
        _save_on(place, latest, write, at_statement=at_statement, texts=texts)
    os.close(write)
    said = os.read(read, 1)  # it is ready
    if not at_statement and said:
        signal.pthread_sigmask(signal.SIG_BLOCK, [])
        _rest(wait)
        os.kill(child, signal.SIGKILL)
    with os.fdopen(read) as rest:
        words = rest.read()
    _, status = os.waitpid(child, 0)
    assert os.WIFSIGNALED(status), f"the child ended by itself: {words}"
    return [int(word) for word in words.split()]


def _rest(seconds: float) -> None:
    import select

    select.select([], [], [], seconds)


def _save_on(
    place: str, latest: int, write: int, *, at_statement: int, texts: list[object]
) -> None:
    """In the child: save until killed."""
    try:
        with opened_register(place) as register:
            os.write(write, b"!")
            if at_statement:
                _kill_at(register, at_statement)
            while True:
                of = texts[latest % 2]
                latest = saved(register, of, onto=latest).revision  # type: ignore[arg-type]
                os.write(write, f"{latest} ".encode())
    except EyebarError as refusal:
        os.write(write, str(refusal).encode())
    finally:
        os._exit(3)


def _kill_at(register: Register, statement: int) -> None:
    left = [statement]

    def count(*_: object) -> None:
        left[0] -= 1
        if left[0] == 0:
            os.kill(os.getpid(), signal.SIGKILL)

    for moment in ("before_cursor_execute", "after_cursor_execute", "commit"):
        event.listen(register.engine, moment, count)


def _looked_at(register: Register, before: int, said: list[int], turn: int) -> int:
    """The number of the latest revision, once what is there is as it must be."""
    with register.reading() as connection:
        bridge = bridge_named(connection, "W-1")
        latest = revision_of(connection, bridge)
        numbers = [one["revision"] for one in revisions_of(connection, bridge)]
    last = said[-1] if said else before
    assert latest.revision in (last, last + 1), f"kill {turn}: {latest.revision} after {said}"
    assert numbers == list(range(1, latest.revision + 1)), f"kill {turn}: {numbers}"
    year = (1891, 1892)[(latest.revision - 1) % 2]
    assert latest.revision == 1 or latest.text == record(built=year).text, f"kill {turn}"
    return latest.revision


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    seed = random.SystemRandom().randrange(1 << 30)
    print(f"{count} kills, seed {seed}", flush=True)  # noqa: T201
    with tempfile.TemporaryDirectory() as folder:
        kept = killed(count, Path(folder), seed=seed)
    print(f"sound after each; {kept} revisions were saved")  # noqa: T201
