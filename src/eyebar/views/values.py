"""The table of the values that a rating used, with their standing."""

from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueRow:
    """One value that went into the result."""

    name: str = text("Value used", "Name of the value, as an office's folder would give it.")
    value: str = figure("Figure", "The figure.")
    unit: str = text("Unit", "Its unit; 1 is a plain number.")
    layer: str = text("From", "Whence it came: shipped, office or record.")
    confirmed: str = text("Confirmed", "Whether anyone has confirmed it against the source.")
    source: str = text("Source", "Where the figure comes from.")


def value_rows(document: Document) -> tuple[ValueRow, ...]:
    """The rows of a document's `values_used`, in its order."""
    return tuple(
        ValueRow(
            name=one["name"],
            value=_shown(one["value"]),
            unit=one["unit"],
            layer=one["layer"],
            confirmed="yes" if one["confirmed"] else "no",
            source=one["source"],
        )
        for one in document["values_used"]
    )


def _shown(value: float | str | list[str]) -> str:
    if isinstance(value, list):
        return ", ".join(value)
    return value if isinstance(value, str) else rounding.plain(value)
