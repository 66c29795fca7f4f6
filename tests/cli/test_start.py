"""How a command starts: what it loads, and what it tells the libraries that it will load."""

import os
import subprocess
import sys

import pytest

START = """
import os, sys
from eyebar.cli import ONE_THREAD, main
sys.argv = ["eyebar", "--version"]
try:
    main()
except SystemExit:
    heavy = [name for name in ("numpy", "scipy", "pydantic.main", "typst") if name in sys.modules]
    print(os.environ[ONE_THREAD], heavy)
"""


def started(**environment: str) -> str:
    """The last line of a command that only says its version: the threads, what was loaded."""
    answer = subprocess.run(
        [sys.executable, "-c", START], check=True, capture_output=True, text=True,
        env={**os.environ, **environment},
    )
    return answer.stdout.splitlines()[-1]


def test_linear_algebra_is_told_of_one_thread_before_it_is_loaded(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.delenv("OPENBLAS_NUM_THREADS", raising=False)
    assert started() == "1 []"


def test_who_wants_more_threads_gets_them() -> None:
    assert started(OPENBLAS_NUM_THREADS="2") == "2 []"
