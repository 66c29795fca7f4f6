"""The rooms of the package from the ground up: this list is the architecture diagram."""

import ast
from pathlib import Path

ROOMS = (
    "errors", "units", "sources", "terms", "addresses", "formula", "signs", "money", "materials",
    "sections", "vehicles", "record", "office", "bridge", "loads", "analysis", "resistance",
    "rating", "history", "redundancy", "evidence", "ageing", "reliability", "repair", "road",
    "futures", "fleet", "documents", "views", "drawings", "report", "store", "web", "demo", "cli",
)
"""A room may import only rooms listed before it."""

PACKAGE = Path(__file__).parents[2] / "src" / "eyebar"
"""The package as it stands in the checkout."""


def room_of(module: Path) -> str:
    """The room that a file of the package stands in; empty for the package's own two files."""
    first = module.relative_to(PACKAGE).parts[0]
    name = first.removesuffix(".py")
    return "" if name in ("__init__", "__main__") else name


def imported_rooms(source: str) -> list[tuple[int, str]]:
    """(line, room) of every import of our own package, wherever in the text it stands."""
    found: list[tuple[int, str]] = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.level:
            names = ["eyebar.(relative import)"]
        elif isinstance(node, ast.ImportFrom) and node.module == "eyebar":
            names = [f"eyebar.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            names = [node.module or ""]
        else:
            continue
        found += [
            (node.lineno, name.split(".")[1])
            for name in names
            if name.startswith("eyebar.") and name != "eyebar.__version__"
        ]
    return found


def faults(room: str, source: str) -> list[str]:
    """What is wrong with the imports of one file that stands in `room`."""
    found: list[str] = []
    for line, other in imported_rooms(source):
        if other not in ROOMS:
            found.append(f"line {line}: {other} is not a room")
        elif room and other != room and ROOMS.index(other) > ROOMS.index(room):
            found.append(f"line {line}: {room} imports {other}, which stands above it")
    return found
