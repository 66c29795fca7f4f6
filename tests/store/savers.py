"""Several who save revisions of one record at once, each in a process of its own."""

import os

from eyebar.errors import ChangedMeanwhile
from eyebar.store.asked import bridge_named, revision_of
from eyebar.store.opened import opened_register
from tests.store.samples import record, saved

SAVERS, EACH = 3, 3


def at_once(place: str) -> int:
    """Let them save; how often another was quicker. Raises AssertionError where one fails."""
    of = {
        (saver, number): record(built=1850 + saver * EACH + number)
        for saver in range(SAVERS) for number in range(EACH)
    }  # read once, before the children are made
    children = []
    for saver in range(SAVERS):
        child = os.fork()
        if child == 0:
            late = 200
            try:
                late = _save(place, [of[saver, number] for number in range(EACH)])
            finally:
                os._exit(min(late, 200))
        children.append(child)
    codes = [os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) for child in children]
    assert all(0 <= code < 200 for code in codes), codes
    return sum(codes)


def _save(place: str, texts: list[object]) -> int:
    late = 0
    with opened_register(place) as register:
        for of in texts:
            while True:
                with register.reading() as connection:
                    latest = revision_of(connection, bridge_named(connection, "W-1"))
                try:
                    saved(register, of, onto=latest.revision)  # type: ignore[arg-type]
                    break
                except ChangedMeanwhile:
                    late += 1
    return late
