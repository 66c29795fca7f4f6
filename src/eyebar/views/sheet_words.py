"""The sentences of a drawn sheet, with the numbers put in."""

from collections import Counter
from collections.abc import Iterable
from datetime import date

from eyebar.terms import CHORD_KINDS
from eyebar.units import length_text
from eyebar.views import words
from eyebar.views.columns import Document

FIGURES = (
    "Figures along the bars are kip, for one truss: upright, the force under dead load; slanted, "
    "the most by which the live load changes it, towards pull and towards push, in one lane, its "
    "axles alone, without impact or factors. Pull is +, push is −."
)
FIGURES_IN_TABLE = (
    "Figures in the table are kip, for one truss: dead, the force under dead load; to pull and to "
    "push, the most by which the live load changes it, in one lane, its axles alone, without "
    "impact or factors. Pull is +, push is −."
)
ELSEWHERE = "What governs is no part of this truss: nothing on the drawing is marked."
TABLE = "Forces that find no room on the drawing, in kip"
ALL_BARS = "Forces of all bars, in kip"

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)


def long_date(iso: str) -> str:
    """`9 June 2026`."""
    day = date.fromisoformat(iso)
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def length(inches: float) -> str:
    """A length [in] on a dimension line: feet and inches, to the nearest sixteenth."""
    return length_text(inches, nearest=16)


def panels(count: int, inches: float) -> str:
    """Panels of one length [in]: `15 ft`, or `10 panels of 15 ft`."""
    return length(inches) if count == 1 else f"{count} panels of {length(inches)}"


def span(count: int, inches: float, deep: float) -> str:
    """The whole length of a truss [in] and its panels; with its depth, fewer words to them."""
    counted = f"{count} {'panel' if count == 1 else 'panels'}"
    if deep:
        return f"{length(inches)}, {counted}, {length(deep)} deep"
    return f"{length(inches)} between end pins, {counted}"


def live_load(vehicle: str | None, known: Iterable[str]) -> str:
    """Which vehicles the live load is: one, or the worst of several."""
    names = [vehicle] if vehicle else list(known)
    return names[0] if len(names) == 1 else f"the worst of {', '.join(names)}, each alone"


def bar(work: str, dead: str, live: tuple[str, str]) -> str:
    """A bar's forces in a sentence; figures with their signs as on the sheet."""
    pull, push = live
    return (
        f"{work.capitalize()}. Dead load {dead} kip; the live load changes it by {push} to {pull} "
        "kip."
    )


def answer(part: Document, rating: Document | None) -> str:
    """The least factor of a part in a sentence, or why it has none."""
    if part.get("not_rated"):
        return f"Not rated: {part['not_rated']}."
    return f"Weakest under {rating['vehicle']}. {words.answer(rating)}" if rating else ""


def not_rated(kinds: Iterable[str]) -> str:
    """How many parts of a truss are not rated, by their kinds; empty for none."""
    counted = Counter(kinds).items()
    named = ", ".join(f"{count} {several(kind) if count > 1 else kind}" for kind, count in counted)
    return f"Not rated on this truss: {named}." if named else ""


def weakest(vehicle: str, part: str, rating: Document | None) -> str:
    """The part that carries the least of one vehicle, in a sentence."""
    if rating is None:
        return f"No part is rated for {vehicle}."
    return f"Weakest under {vehicle}: {part}. {words.answer(rating)}"


def left_out(vehicle: str, why: Document) -> str:
    """A vehicle whose forces are not on the sheet, and why."""
    return f"Without {vehicle}: {why['reason']} ({why['panel']})."


def several(kind: str) -> str:
    """Several of a kind of bar: `top chord bars`, `posts`."""
    return f"{kind} bars" if kind in CHORD_KINDS else f"{kind}s"
