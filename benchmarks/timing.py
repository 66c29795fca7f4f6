"""How a benchmark measures: the least of several runs, that all have the same quiet moments."""

import time
from collections.abc import Callable


def least(
    run: Callable[[], object], times: int = 5, clock: Callable[[], float] = time.perf_counter
) -> float:
    """The least time of several runs by a clock [s]."""
    found = []
    for _ in range(times):
        begin = clock()
        run()
        found.append(clock() - begin)
    return min(found)
