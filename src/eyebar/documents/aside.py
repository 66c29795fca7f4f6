"""Work begun beside other work, in a process forked from this one where that is safe and gains."""

import os
import pickle
import sys
import threading
from collections.abc import Callable
from typing import TypeVar

R = TypeVar("R")


def aside(work: Callable[[], R]) -> Callable[[], R]:
    """Begin the work in a process of its own; what is given back waits for its result, once.

    Only Linux, a second processor and no other thread in this process make that safe and useful.
    Else, and where the process comes to nothing, the work is done here when its result is asked
    for: so it raises here what it raises. The result goes through pickle.
    """
    if not _free():
        return work
    sys.stdout.flush()
    sys.stderr.flush()
    reading, writing = os.pipe()
    try:
        process = os.fork()
    except OSError:
        os.close(reading)
        os.close(writing)
        return work
    if process == 0:
        os.close(reading)
        _there(work, writing)
    os.close(writing)

    def result() -> R:
        with os.fdopen(reading, "rb") as pipe:
            told = pipe.read()
        _, ended = os.waitpid(process, 0)
        if ended != 0:
            return work()
        found: R = pickle.loads(told)
        return found

    return result


def _free() -> bool:
    return (
        sys.platform == "linux" and threading.active_count() == 1
        and len(os.sched_getaffinity(0)) > 1
    )


def _there(work: Callable[[], object], writing: int) -> None:
    """The other process: it says its result and ends, whatever happens, by nothing else of ours."""
    ended = 1
    try:
        told = pickle.dumps(work())
        with os.fdopen(writing, "wb") as pipe:
            pipe.write(told)
        ended = 0
    finally:
        os._exit(ended)
