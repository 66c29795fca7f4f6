"""The invented bridges that come inside the package."""

from importlib.resources import files
from importlib.resources.abc import Traversable

SHOWN = "quillmarsh"
"""The bridge that `eyebar demo` rates."""


def bridge_records() -> dict[str, Traversable]:
    """Name -> record (a YAML file inside the package) of every demo bridge."""
    folder = files(__name__) / "bridges"
    records = sorted(
        (entry for entry in folder.iterdir() if entry.name.endswith(".yaml")),
        key=lambda entry: entry.name,
    )
    return {record.name.removesuffix(".yaml"): record for record in records}
