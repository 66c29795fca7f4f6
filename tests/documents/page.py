"""The page on documents, section by section, and the keys of the schemas."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from eyebar.documents.schemas import NAMES, schema

TEXT = (Path(__file__).parents[2] / "docs" / "documents.md").read_text(encoding="utf-8")

SECTIONS = {
    heading.split(":")[0].split("`")[0].strip(): body
    for heading, body in re.findall(r"^## (.+?)\n(.*?)(?=^## |\Z)", TEXT, re.MULTILINE | re.DOTALL)
}
"""Heading (without the format) -> text of each section of the page."""

OF = {name: "Errors" if name == "error" else name for name in NAMES}
"""Schema -> heading of its section."""

ALSO = {
    "rate": (), "forces": ("rate", "vehicles"), "vehicles": ("rate",),
    "drawn": ("rate", "forces", "vehicles"), "influence": ("rate", "drawn", "forces", "vehicles"),
    "proportion": ("rate", "drawn"),
    "force-table": ("rate", "forces", "vehicles"), "check": ("rate",),
    "describe": ("rate", "check"), "explain": ("rate",), "history": ("rate",),
    "history-how": ("rate", "history"), "history-details": ("rate",),
    "history-sheet": ("rate",), "error": (), "bracing": ("rate",),
    "cross": ("rate",), "use": ("rate",), "slip": ("rate", "cross", "vehicles"),
    "register-list": (), "register-bridge": ("register-list",),
    "register-history": ("register-list",), "register-readings": ("register-list",),
    "register-compare": ("register-list",), "register-verify": ("register-list",),
    "register-done": ("register-list",),
}
"""Schema -> schemas whose sections tell of what it has in common with them."""


def words(text: str) -> set[str]:
    """Every word in a text that is set as code."""
    return set(re.findall(r"`([a-z][a-z0-9_]*)`", text))


def told(name: str) -> set[str]:
    """Words that the page tells of a document: its own section, what it shares, and the opening."""
    sections = [SECTIONS[OF[name]], *(SECTIONS[OF[other]] for other in ALSO[name])]
    return words("\n".join([TEXT[: TEXT.index("## rate")], *sections]))


def objects(of: Any) -> Iterator[dict[str, Any]]:
    """Every schema object inside a schema."""
    if isinstance(of, dict):
        if "properties" in of:
            yield of
        for inner in of.values():
            yield from objects(inner)
    elif isinstance(of, list):
        for inner in of:
            yield from objects(inner)


def keys(name: str) -> set[str]:
    """All keys that a document may have, at any depth."""
    return {key for one in objects(schema(name)) for key in one["properties"]}


def closed_words(of: Any) -> set[str]:
    """All words of closed lists inside a schema."""
    if isinstance(of, dict):
        own = {word for word in of.get("enum", ()) if isinstance(word, str)}
        constant = of.get("const")
        own |= {constant} if isinstance(constant, str) else set()
        return own.union(*(closed_words(inner) for inner in of.values()))
    if isinstance(of, list):
        return set().union(*(closed_words(inner) for inner in of))
    return set()
