"""A report from cold: against a rating from cold, and both against importing their libraries."""

import os
import subprocess
import sys
import time
from importlib.resources import as_file
from pathlib import Path

from eyebar.demo import SHOWN, bridge_records

LIBRARIES = "import numpy, pydantic, ruamel.yaml, typer, rich.console, rich.table"
TIMES = 5
COMPILED = {name: is_ for name, is_ in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""As an installed program runs: its modules are compiled once, not at every start."""


def seconds(*arguments: str) -> float:
    """What a new process of Python takes for a command [s]."""
    begin = time.perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=COMPILED)
    return time.perf_counter() - begin


def in_turn(commands: dict[str, tuple[str, ...]]) -> dict[str, float]:
    """The least time of each command [s]; they take turns, so that all share the quiet moments."""
    rounds = [
        {name: seconds(*arguments) for name, arguments in commands.items()}
        for _ in range(TIMES)
    ]
    return {name: min(one[name] for one in rounds) for name in commands}


def test_a_cold_report_against_a_cold_rating_and_the_libraries(tmp_path: Path) -> None:
    with as_file(bridge_records()[SHOWN]) as record:
        found = in_turn({
            "libraries": ("-c", LIBRARIES),
            "rate": ("-m", "eyebar", "rate", str(record)),
            "report": ("-m", "eyebar", "report", str(record), "-o", str(tmp_path / "a.pdf")),
        })
    libraries, rate, report = found.values()
    print(f"\nlibraries {libraries:.2f} s; rating from cold {rate:.2f} s, {rate / libraries:.1f} "
          f"times as long; report from cold {report:.2f} s, {report / libraries:.1f} times, "
          f"{report / rate:.1f} ratings")
    assert report < 4.0 * rate


def test_reports_of_all_demo_bridges_from_cold(tmp_path: Path) -> None:
    for name, resource in bridge_records().items():
        with as_file(resource) as record:
            command = ("-m", "eyebar", "report", str(record), "-o", str(tmp_path / "a.pdf"))
            took = min(seconds(*command) for _ in range(3))
        print(f"\nreport of {name} from cold {took:.2f} s")
