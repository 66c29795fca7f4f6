"""The process beside the pages: what it makes, and how it ends."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import closing
from http.client import HTTPConnection
from pathlib import Path

import pytest

from eyebar.demo import bridge_records
from eyebar.errors import BadRecord, ChangedMeanwhile, EyebarError, Fault, OutOfRange
from eyebar.web import making
from eyebar.web.beside import Beside, Ended, answered
from eyebar.web.kept import Kept
from tests.documents import demos

TEXT = bridge_records()["wrenmallow"].read_text(encoding="utf-8")
PATIENCE_SECONDS = 30.0


@pytest.fixture(scope="module")
def beside() -> Iterator[Beside]:
    found = Beside()
    yield found
    found.close()


def alive(number: int) -> bool:
    """Whether a process is there; one that has ended and is not yet taken note of is not."""
    try:
        return Path(f"/proc/{number}/stat").read_text().rpartition(") ")[2][0] != "Z"
    except FileNotFoundError:
        return False


def gone(number: int) -> bool:
    """Whether a process ends within a while."""
    end = time.monotonic() + PATIENCE_SECONDS
    while alive(number) and time.monotonic() < end:
        time.sleep(0.02)
    return not alive(number)


def test_a_rating_made_there_is_the_same_to_the_last_working(beside: Beside) -> None:
    """Other way: the bridge rated in this process."""
    kept = Kept(office=None, beside=beside)
    found = kept.rating(TEXT, "record").result()
    assert beside.process is not None
    assert found.rate == demos.rate("wrenmallow")
    rated = {one["kind"]: one["part"] for one in found.rate["parts"] if not one.get("not_rated")}
    assert len(rated) > 5
    for part in rated.values():
        assert found.explained(part) == demos.explain("wrenmallow", part)
    kept.worker.shutdown()


def test_one_that_is_killed_is_begun_again(beside: Beside) -> None:
    first = beside.call(os.getpid)
    assert first not in (os.getpid(), None)
    assert beside.call(os.getpid) == first
    os.kill(first, signal.SIGKILL)
    second = beside.call(os.getpid)
    assert second not in (first, os.getpid())


def test_what_kills_it_again_and_again_is_said_and_not_tried_for_ever(beside: Beside) -> None:
    with pytest.raises(Ended, match="ended twice"):
        beside.call(os._exit, 1)
    assert beside.call(abs, -2) == 2


def test_a_refusal_comes_whole(beside: Beside) -> None:
    with pytest.raises(BadRecord) as refusal:
        beside.call(making.rating, making.Source(text="bridge: [", file="x.yaml", office=None))
    assert refusal.value.file == "x.yaml"
    assert refusal.value.faults[0].line == 1


def test_a_fault_of_ours_is_told_and_ends_nothing(beside: Beside, capsys) -> None:
    with pytest.raises(RuntimeError, match="ValueError"):
        beside.call(int, "seven")
    assert beside.call(abs, -3) == 3
    answered(int, ("seven",))
    assert "Traceback" in capsys.readouterr().err


@pytest.mark.parametrize("error", [
    BadRecord("a.yaml", [Fault(where="name", rule="is wanting", line=3)]),
    OutOfRange("width", 3, "more"),
    ChangedMeanwhile("1", 2, 3, saved="x", theirs=("y",), yours=(), both=()), Ended(),
])
def test_a_refusal_keeps_its_facts_and_its_sentence(beside: Beside, error: EyebarError) -> None:
    again = beside.call(_given, error)
    assert (type(again), str(again), vars(again)) == (type(error), str(error), vars(error))


def _given(error: EyebarError) -> EyebarError:
    return error


def test_where_no_process_can_be_begun_it_is_made_here(monkeypatch) -> None:
    def refuse(process: object) -> None:
        raise OSError("no more processes")

    monkeypatch.setattr("multiprocessing.context.SpawnProcess.start", refuse)
    beside = Beside()
    assert beside.call(os.getpid) == os.getpid()
    assert beside.here


def test_what_is_closed_begins_nothing_more() -> None:
    beside = Beside()
    number = beside.call(os.getpid)
    beside.close()
    assert gone(number)
    with pytest.raises(Ended):
        beside.call(os.getpid)


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="children are counted by /proc")
@pytest.mark.parametrize("how", [signal.SIGTERM, signal.SIGKILL])
def test_nothing_is_left_when_the_server_ends(how: signal.Signals, tmp_path: Path) -> None:
    server = subprocess.Popen(
        [sys.executable, "-u", "-m", "eyebar", "serve", "--demo"], text=True,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        env={**os.environ, "TMPDIR": str(tmp_path)},
    )
    assert server.stdout is not None
    line = next(one for one in server.stdout if "http" in one)
    with closing(HTTPConnection(line.split("/")[2])) as stranger:
        stranger.request("GET", "/")
        assert stranger.getresponse().status == 401
    end = time.monotonic() + PATIENCE_SECONDS
    while not (beside := children(server.pid)) and time.monotonic() < end:
        time.sleep(0.02)
    assert beside
    server.send_signal(how)
    _, said = server.communicate(timeout=PATIENCE_SECONDS)
    assert all(map(gone, beside))
    assert "Traceback" not in said
    if how is not signal.SIGKILL:
        assert not list(tmp_path.glob("eyebar-demo-*"))


def children(number: int) -> list[int]:
    """The processes that another has begun."""
    task = Path(f"/proc/{number}/task")
    return [
        int(one) for each in task.iterdir()
        for one in (each / "children").read_text().split()
    ]
