"""Every address of the workbench is built here, and nowhere else."""

from urllib.parse import quote, urlencode

BRIDGES = "/"
NEW = "/new"
STATIC = "/static"
LEAVE = "/leave"
LOGIN = "/login"


def _with(path: str, **asked: object) -> str:
    found = {name: str(value) for name, value in asked.items() if value not in (None, "")}
    return f"{path}?{urlencode(found)}" if found else path


def enter(key: str) -> str:
    """Where the printed key lets one in."""
    return f"/enter/{quote(key, safe='')}"


def bridges(find: str = "", sort: str = "") -> str:
    """The list of bridges."""
    return _with(BRIDGES, find=find, sort=sort)


def bridge(handle: str, page: str = "", **asked: object) -> str:
    """A bridge, or a page of it."""
    path = f"/bridges/{quote(handle, safe='')}"
    return _with(f"{path}/{page}" if page else path, **asked)


def part(handle: str, address: str, *, truss: str = "") -> str:
    """A part of a bridge, chosen on its page."""
    return bridge(handle, part=address, truss=truss) + "#part"


def load(
    handle: str, truss: str, vehicle: str, way: str, *, at: float | None = None, bar: str = ""
) -> str:
    """Where the load stands."""
    front = None if at is None else f"{at:.9g}"
    return bridge(handle, "load", truss=truss, vehicle=vehicle, way=way, at=front, bar=bar)


def table(handle: str, truss: str, vehicle: str, way: str) -> str:
    """The force table behind it, as JSON."""
    return bridge(handle, "load.json", truss=truss, vehicle=vehicle, way=way)


def photograph(handle: str, number: int) -> str:
    """A file of a bridge."""
    return bridge(handle, f"files/{number}")


def paper(handle: str, name: str, **asked: object) -> str:
    """A paper of a bridge, as a file."""
    return bridge(handle, f"papers/{name}", **asked)


def static(name: str) -> str:
    """A file of the workbench's own."""
    return f"{STATIC}/{name}"
