"""Work done beside other work: in a process of its own where that is safe, else here."""

import os
import subprocess
import sys

import pytest

BEGIN = """
import os, threading
from eyebar.documents.aside import aside
here = os.getpid()
"""

can_fork = pytest.mark.skipif(
    sys.platform != "linux" or len(os.sched_getaffinity(0)) < 2,
    reason="needs Linux and two processors",
)


def said(program: str) -> str:
    """What a program prints in a process without other threads."""
    done = subprocess.run(
        [sys.executable, "-c", BEGIN + program], capture_output=True, text=True, check=True,
        timeout=60,
    )
    return done.stdout.strip()


@can_fork
def test_it_is_done_in_another_process_and_its_result_comes_back() -> None:
    assert said("""
begun = aside(lambda: (os.getpid(), "x" * 300_000))
process, text = begun()
print(process != here, len(text))
""") == "True 300000"


@can_fork
def test_a_process_that_is_killed_is_made_up_for_here() -> None:
    assert said("""
def work():
    if os.getpid() != here:
        os.kill(os.getpid(), 9)
    return os.getpid()
print(aside(work)() == here)
""") == "True"


@can_fork
def test_what_it_raises_is_raised_here() -> None:
    assert said("""
def work():
    raise ValueError("so it is")
begun = aside(work)
try:
    begun()
except ValueError as fault:
    print(fault)
""") == "so it is"


@can_fork
def test_what_was_printed_before_is_printed_once() -> None:
    assert said("""
print("once")
aside(lambda: 1)()
print("twice")
""").split() == ["once", "twice"]


@can_fork
def test_a_result_that_nobody_asks_for_holds_nothing_up() -> None:
    assert said("""
aside(lambda: "x" * 300_000)
print("over")
""") == "over"


def test_with_another_thread_it_is_done_here() -> None:
    assert said("""
end = threading.Event()
threading.Thread(target=end.wait).start()
print(aside(os.getpid)() == here)
end.set()
""") == "True"


@pytest.mark.skipif(sys.platform != "linux", reason="processors are told of on Linux")
def test_with_one_processor_it_is_done_here() -> None:
    assert said("""
os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
print(aside(os.getpid)() == here)
""") == "True"
