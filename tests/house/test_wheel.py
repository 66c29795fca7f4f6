"""The wheel holds everything, and works outside the checkout."""

import json
import os
import subprocess
import sys
import urllib.request
import zipfile
from importlib.util import find_spec
from pathlib import Path

import pytest

from eyebar.cli.commands import app
from tests.house.rooms import PACKAGE
from tests.house.tracked import ROOT

EVERY_COMMAND = {
    "demo": ("demo", "--write", "there"),
    "new": ("new", "--form", "Howe", "--panels", "6 at 12 ft", "--depth", "15 ft"),
    "check": ("check", "there/bridges/wrenmallow.yaml"),
    "rate": ("rate", "there/bridges/wrenmallow.yaml"),
    "weakest": ("weakest", "there/bridges/wrenmallow.yaml"),
    "bracing": ("bracing", "there/bridges/wrenmallow.yaml"),
    "history": ("history", "there/bridges/wrenmallow.yaml"),
    "cross": ("cross", "there/bridges/wrenmallow.yaml", "buggy"),
    "use": ("use", "there/bridges/wrenmallow.yaml"),
    "forces": ("forces", "there/bridges/wrenmallow.yaml"),
    "vehicles": ("vehicles",),
    "report": ("report", "there/bridges/wrenmallow.yaml"),
    "draw": ("draw", "there/bridges/wrenmallow.yaml"),
    "explain": ("explain", "there/bridges/wrenmallow.yaml", "south/U1-L2"),
}
"""Each command with arguments that it accepts, on the smallest demo bridge; `demo` first, since it
writes the records."""

BEGUN_ALIKE = ("check", "rate", "weakest", "use", "forces", "vehicles", "explain")
"""Commands that begin with the same imports as `check --json` or `cross`, which run in processes of
their own: these run in one, which spares those imports for each."""

ALSO = (
    ("draw", "there/bridges/wrenmallow.yaml", "--sheet", "elevation", "-o", "elevation.pdf"),
    ("draw", "there/bridges/wrenmallow.yaml", "--sheet", "floor", "-o", "floor.dxf"),
    ("history", "there/bridges/wrenmallow.yaml", "--how", "-o", "how.svg"),
    ("history", "there/bridges/wrenmallow.yaml", "--sheet", "-o", "sheet.md"),
)
"""Ways of a command that read other files of the package; the command itself began alone."""

SERVING = {"serve": ("serve", "--demo")}
"""What does not end by itself."""

OF_THE_REGISTER = (
    ("register", "add", "there/bridges/wrenmallow.yaml", "--register", "r.db"),
    ("register", "verify", "--register", "r.db"),
)
"""Commands that need the migrations inside the package."""


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built as an installer would build it."""
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder, ROOT],
        check=True,
        capture_output=True,
    )
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder outside the checkout with the wheel installed in it, without its requirements."""
    folder = tmp_path_factory.mktemp("installed")
    subprocess.run(
        [
            sys.executable, "-m", "pip", "install", "--quiet", "--disable-pip-version-check",
            "--no-index", "--no-deps", "--target", folder, wheel,
        ],
        check=True,
    )
    return folder


ONE_AFTER_ANOTHER = """
import json, sys
from eyebar.cli import main
for arguments in json.loads(sys.argv[1]):
    sys.argv = ["eyebar", *arguments]
    try:
        main()
    except SystemExit as end:
        if end.code:
            raise SystemExit(f"{arguments}: {end.code}")
"""


def run(installed: Path, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """What `python -m eyebar ARGUMENTS` of the installed package answers in `folder`."""
    return ran(installed, folder, "-m", "eyebar", *arguments)


def ran(installed: Path, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """What Python with the installed package answers in `folder`."""
    return subprocess.run(
        [sys.executable, *arguments],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(installed)},
        check=False,
        capture_output=True,
        text=True,
    )


def test_the_wheel_holds_every_file_of_the_package(wheel: Path) -> None:
    there = {
        path.relative_to(PACKAGE.parent).as_posix()
        for path in PACKAGE.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert there <= set(zipfile.ZipFile(wheel).namelist())


def test_the_installed_package_is_the_one_that_runs(installed: Path, tmp_path: Path) -> None:
    found = subprocess.run(
        [sys.executable, "-c", "import eyebar; print(eyebar.__file__)"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(installed)},
        check=True,
        capture_output=True,
        text=True,
    ).stdout
    assert Path(found.strip()).is_relative_to(installed)


def test_no_command_is_forgotten_here() -> None:
    named = {command.callback.__name__ for command in app.registered_commands if command.callback}
    assert named == set(EVERY_COMMAND) | set(SERVING)


def test_every_command_runs_outside_the_checkout(installed: Path, tmp_path: Path) -> None:
    alone = [one for name, one in EVERY_COMMAND.items() if name not in BEGUN_ALIKE]
    for arguments in alone:
        if arguments[0] == "report" and not find_spec("typst"):
            continue
        answer = run(installed, tmp_path, *arguments)
        assert answer.returncode == 0, f"{arguments}: {answer.stderr}"
    together = (*(EVERY_COMMAND[name] for name in BEGUN_ALIKE), *ALSO, *OF_THE_REGISTER)
    answer = ran(installed, tmp_path, "-c", ONE_AFTER_ANOTHER, json.dumps(together))
    assert answer.returncode == 0, answer.stderr
    assert "Traceback" not in answer.stderr
    if find_spec("starlette"):
        _serves(installed, tmp_path)
    as_document = run(installed, tmp_path, *EVERY_COMMAND["check"], "--json")
    assert json.loads(as_document.stdout)["format"].startswith("eyebar/check/")


def _serves(installed: Path, folder: Path) -> None:
    """The workbench of the installed package: its address is printed, and its files are there."""
    serving = subprocess.Popen(
        [sys.executable, "-u", "-m", "eyebar", *SERVING["serve"]], cwd=folder, text=True,
        env={**os.environ, "PYTHONPATH": str(installed)}, stdout=subprocess.PIPE,
    )
    try:
        assert serving.stdout is not None
        line = next(one for one in serving.stdout if "http" in one)
        address = line.split()[-1]
        opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor())
        with opener.open(address) as page:
            assert b"All bridges" in page.read()
        root = address.partition("/enter/")[0]
        for name in ("workbench.css", "load.js", "SourceSerifPro-It.ttf"):
            with opener.open(f"{root}/static/{name}") as found:
                assert found.status == 200
    finally:
        serving.terminate()
        serving.communicate()
