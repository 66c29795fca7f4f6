"""A command that takes long says on the error stream what it is doing, to whoever waits."""

import io
from pathlib import Path
from time import monotonic, sleep
from typing import Any

import pytest

from eyebar.cli import reporting, terminal
from eyebar.cli.reporting import Wanted, write_report
from eyebar.cli.terminal import patience
from eyebar.demo import SHOWN, bridge_records

LONG, SHORT = 0.3, 0.0


class ErrorStream(io.StringIO):
    """Stands in for the error stream, a person at its end or not."""

    def __init__(self, *, person: bool) -> None:
        super().__init__()
        self.person = person

    def isatty(self) -> bool:
        return self.person


def said(monkeypatch: pytest.MonkeyPatch, *, person: bool, seconds: float, ago: float) -> str:
    """What stands on the error stream when a command that began some time `ago` works so long."""
    stream = ErrorStream(person=person)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr("sys.stderr", stream)
    monkeypatch.setattr(terminal, "BEGAN", monotonic() - ago)
    with patience("counting rivets"):
        sleep(seconds)
    return stream.getvalue()


def test_work_beyond_the_first_second_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    began = terminal.PATIENCE_SECONDS - 0.1  # ago, so that a tenth of a second is left
    assert "counting rivets" in said(monkeypatch, person=True, seconds=LONG, ago=began)


def test_libraries_count_as_waiting(monkeypatch: pytest.MonkeyPatch) -> None:
    assert "counting rivets" in said(monkeypatch, person=True, seconds=LONG, ago=60.0)


def test_what_is_done_at_once_is_not_said(monkeypatch: pytest.MonkeyPatch) -> None:
    assert said(monkeypatch, person=True, seconds=SHORT, ago=0.0).strip() == ""


def test_a_pipe_is_told_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    assert said(monkeypatch, person=False, seconds=LONG, ago=60.0) == ""


def test_a_report_says_each_of_its_stages(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    stages: list[str] = []

    class Noted(Exception):
        """Stops the report where its last stage begins."""

    def slow(*_: Any, **__: Any) -> Any:
        sleep(LONG)

    def last(*_: Any) -> bytes:
        sleep(LONG)
        stages.append(stream.getvalue())
        raise Noted

    stream = ErrorStream(person=True)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr("sys.stderr", stream)
    monkeypatch.setattr(terminal, "BEGAN", monotonic() - 60.0)
    monkeypatch.setattr(reporting, "gathered", slow)
    monkeypatch.setattr(reporting, "rated_at_all", lambda _: True)
    monkeypatch.setattr(reporting, "board_beside", lambda of, _: of)
    monkeypatch.setattr(reporting, "rating_report", last)
    record = Path(str(bridge_records()[SHOWN]))
    with pytest.raises(Noted):
        write_report(Wanted(record=record, office=None), tmp_path / "a.pdf")
    assert "rating the bridge" in stages[0]
    assert "setting the pages" in stages[0]
