"""A process of its own for what takes long, so that pages need not share their processor with it.

It is begun afresh, not forked from a server that has threads, and ends with the server however
that ends. Killed from outside, it is begun again; where none can be begun, all is made here.
"""

import os
import signal
import traceback
from collections.abc import Callable
from dataclasses import dataclass, field
from multiprocessing import get_context, parent_process
from multiprocessing.connection import Connection
from multiprocessing.context import SpawnProcess
from threading import Lock, Thread
from typing import Any, TypeVar

from eyebar.errors import EyebarError

T = TypeVar("T")

TRIES = 2
BEGINS_WITHIN_SECONDS = 60.0
ENDS_WITHIN_SECONDS = 5.0


class Ended(EyebarError):
    """What was being made is lost with its process, which was ended from outside."""

    def __init__(self) -> None:
        super().__init__(
            "what this page needs was not made: the process that makes it was ended twice, from"
            " outside or because the machine is short of memory; nothing kept is lost: close other"
            " programs and ask again"
        )


@dataclass(slots=True, kw_only=True)
class Beside:
    """The process; one job at a time, each by whoever waits for it."""

    here: bool = False
    """Whether all is made in this process: as asked for, or because no other can be begun."""
    process: SpawnProcess | None = None
    pipe: Connection | None = None
    closed: bool = False
    lock: Lock = field(default_factory=Lock)

    def call(self, make: Callable[..., T], *given: object) -> T:
        """What a function of a module makes of what it is given. Raises what it raises; Ended."""
        for _ in range(TRIES):
            pipe = self._pipe()
            if pipe is None:
                return make(*given)
            try:
                pipe.send((make, given))
                made, refusal = pipe.recv()
            except (EOFError, OSError):
                self._forget()
                continue
            if refusal is not None:
                raise refusal
            found: T = made
            return found
        raise Ended

    def close(self) -> None:
        """End it, whatever it is at."""
        with self.lock:
            self.closed, process = True, self.process
            if process is not None:
                process.terminate()
                process.join(ENDS_WITHIN_SECONDS)

    def _pipe(self) -> Connection | None:
        """The way to the process, begun if need be; None where all is made here. Raises Ended."""
        with self.lock:
            if self.closed:
                raise Ended
            if self.here or self.pipe is not None:
                return self.pipe
            ours, its = get_context("spawn").Pipe()
            self.process = get_context("spawn").Process(
                target=_working, args=(its,), name="eyebar: rating", daemon=True
            )
            try:
                self.process.start()
            except OSError:
                self.process, self.here = None, True
                return None
            finally:
                its.close()
        return self._begun(ours)

    def _begun(self, ours: Connection) -> Connection | None:
        """The way to a process that has said that it is there."""
        try:
            is_there = ours.poll(BEGINS_WITHIN_SECONDS) and ours.recv() is None
        except (EOFError, OSError):
            is_there = False
        with self.lock:
            if self.closed:
                raise Ended
            self.here = not is_there
            self.pipe = ours if is_there else None
        return self.pipe

    def _forget(self) -> None:
        """Of a process that has ended nothing is left."""
        with self.lock:
            if self.pipe is not None:
                self.pipe.close()
            if self.process is not None:
                self.process.join(ENDS_WITHIN_SECONDS)
            self.process = self.pipe = None


def _working(pipe: Connection) -> None:
    """The process: make what is asked for, until the server goes."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_the_server, daemon=True).start()
    pipe.send(None)
    while True:
        try:
            make, given = pipe.recv()
        except EOFError:
            return
        pipe.send(answered(make, given))


def answered(make: Callable[..., Any], given: tuple[Any, ...]) -> tuple[Any, Exception | None]:
    """What is made, or why it is not; a fault of ours is told in the terminal."""
    try:
        return make(*given), None
    except EyebarError as refusal:
        return None, refusal
    except Exception as fault:
        traceback.print_exc()
        return None, RuntimeError(f"{type(fault).__name__}: {fault}")


def _end_with_the_server() -> None:
    """A server that is killed says no word more; what it asked for is wanted by nobody."""
    server = parent_process()
    assert server is not None
    server.join()
    os._exit(0)
