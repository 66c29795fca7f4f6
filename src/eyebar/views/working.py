"""The working of one part as text: symbols, numbers, result, source."""

import textwrap
from dataclasses import dataclass

from eyebar.formula import significant
from eyebar.views import rounding, words
from eyebar.views.columns import Document, text

WIDTH = 100
INDENT = "   "


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """The working of one rating of one part."""

    title: str = text("Part", "The part, its kind, the vehicle, the method and level, the date.")
    answer: str = text("Factor", "The factor, what is reached first, and where the vehicle stands.")
    facts: tuple[str, ...] = text("Facts", "Forces, factors and shares that went in.")
    remarks: tuple[str, ...] = text("Remarks", "What was assumed of the part, and its readings.")
    steps: tuple[str, ...] = text("Steps", "Each formula in symbols, with numbers, its source.")
    events: tuple[str, ...] = text("On the way", "Bars that go slack or taut as the load grows.")


def working(document: Document) -> Working:
    """The view of an `explain` document."""
    rating = document["rating"]
    standing = words.standing(rating["method"], rating["level"])
    named = (document["part"], document["kind"], rating["vehicle"], standing, document["date"])
    said: set[str] = set()
    return Working(
        title=" | ".join(named),
        answer=words.answer(rating),
        facts=_facts(rating),
        remarks=(*document["remarks"], *document["readings"]),
        steps=tuple(line for step in document["steps"] for line in _step(step, 0, said)),
        events=tuple(words.event(one) for one in rating["events"]),
    )


def _facts(rating: Document) -> tuple[str, ...]:
    factors = rating["dead_factors"]
    dc, dw = rounding.plain(factors["dc"]), rounding.plain(factors["dw"])
    live_factor = rounding.plain(rating["live_factor"])
    lanes = "one lane" if rating["lanes"] == 1 else f"{rating['lanes']} lanes"
    return (
        f"dead load {_amount(rating, 'dead')}, factors {dc} and {dw} (wearing)",
        f"vehicle {_amount(rating, 'live')}, factor {live_factor}, "
        f"impact {significant(rating['impact'])}, share {significant(rating['share'])} ({lanes})",
        f"capacity {rounding.capacity(rating['capacity'], rating['unit'])}",
        f"by the plain formula, no bar changing its state on the way: "
        f"{rounding.factor(rating['plain_factor'])}",
    )


def _amount(rating: Document, key: str) -> str:
    """A force, or a stress where the part has no axial force at its limit."""
    if rating["unit"] == "ksi" and rating["limit_kip"] is None:
        return rounding.amount(rating[key], "ksi")
    return f"{rounding.kip(rating[key])} kip"


def _step(step: Document, depth: int, said: set[str]) -> list[str]:
    """The lines of a step; a formula with the same numbers is said once."""
    if step["entry"] == "procedure":
        head = _wrapped(f"{step['title']} ({step['source']})", depth)
        return head + [line for inner in step["steps"] for line in _step(inner, depth + 1, said)]
    if step["entry"] == "note":
        unit = "" if step["unit"] == "1" else f" {step['unit']}"
        symbol = f"{step['symbol']} = " if step["symbol"] else ""
        return _wrapped(f"{step['text']}: {symbol}{significant(step['value'])}{unit}", depth)
    if step["equation"] + step["with_numbers"] in said:
        return []
    said.add(step["equation"] + step["with_numbers"])
    return [
        *_wrapped(step["title"], depth),
        *_wrapped(step["equation"], depth + 1),
        *_wrapped(step["with_numbers"], depth + 1),
        *_wrapped(f"source: {step['source']}", depth + 1),
    ]


def _wrapped(line: str, depth: int) -> list[str]:
    before = INDENT * depth
    return textwrap.wrap(
        line, WIDTH, initial_indent=before, subsequent_indent=before + INDENT,
        break_long_words=False, break_on_hyphens=False,
    )
