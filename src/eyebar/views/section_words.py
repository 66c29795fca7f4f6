"""Sections in words: `2 eyebars 2 1/2 x 9/16`, for marks, tables and descriptions."""

from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Any

from eyebar.units.shown import fraction_text, number_text

NOT_MEASURED = "not measured"
_PLURAL = {"web": "webs", "angle": "angles", "channel": "channels", "plate": "plates"}
_UNNUMBERED = ("near ", "far ")
_SHORT = {"eyebar": ("width", "thickness"), "plate": ("width", "thickness"),
          "stick": ("depth", "width"), "channel": ("depth", "web"), "I-beam": ("depth", "flange"),
          "web": ("width", "thickness"), "angle": ("upright leg", "level leg", "thickness")}


def size(inches: float | None) -> str:
    """A size [in] as a fraction, without its unit."""
    if inches is None:
        return NOT_MEASURED
    return fraction_text(inches, nearest=64) if _on_a_ruler(inches) else number_text(inches)


def sentence(section: Mapping[str, Any]) -> str:
    """All pieces with all their sizes, in inches."""
    return "; ".join(
        f"{_counted(alike, _noun(alike[0]))}: "
        + ", ".join(f"{name} {size(one)}" for name, one in alike[0]["sizes_in"].items())
        for alike in _alike(section)
    )


def short(section: Mapping[str, Any]) -> str:
    """Number and main sizes of its pieces, in inches: what is written along a bar."""
    words = []
    for alike in _alike(section):
        noun = _noun(alike[0])
        sizes = alike[0]["sizes_in"]
        chosen = [sizes[name] for name in _main(noun) if name in sizes] or list(sizes.values())[:1]
        mark = " square" if "side" in sizes else ""
        words.append(f"{_counted(alike, noun)} {' × '.join(size(one) for one in chosen)}{mark}")
    return ", ".join(words)


def _on_a_ruler(inches: float) -> bool:
    return abs(inches * 64 - round(inches * 64)) < 1e-6


def _main(noun: str) -> tuple[str, ...]:
    last = noun.rsplit(" ", 1)[-1]
    return _SHORT.get(noun, _SHORT.get(last, ("diameter",)))


def _noun(piece: Mapping[str, Any]) -> str:
    """The piece's name without its number and its side."""
    name = str(piece["name"])
    first, _, last = name.rpartition(" ")
    name = first if last.isdigit() else name
    for side in _UNNUMBERED:
        name = name.removeprefix(side)
    return name


def _counted(alike: Sequence[Any], noun: str) -> str:
    if len(alike) == 1:
        return noun
    head, _, last = noun.rpartition(" ")
    return f"{len(alike)} {head} {_PLURAL.get(last, f'{last}s')}".replace("  ", " ")


def _alike(section: Mapping[str, Any]) -> list[list[Any]]:
    """Pieces of one noun and one size together, in the order of the first of each."""
    def key(piece: Mapping[str, Any]) -> tuple[str, tuple[Any, ...]]:
        return _noun(piece), tuple(piece["sizes_in"].items())

    order = list(dict.fromkeys(map(key, section["pieces"])))
    return [
        list(found) for _, found in groupby(
            sorted(section["pieces"], key=lambda piece: order.index(key(piece))), key=key
        )
    ]
