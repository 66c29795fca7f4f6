"""The parts of a bridge by safe load, the weakest first, and what each one is worth."""

from dataclasses import dataclass

from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.not_rated import NotRatedRow, not_rated_rows


@dataclass(frozen=True, slots=True, kw_only=True)
class WeakRow:
    """Parts alike, and the posting if they were no limit."""

    parts: str = text("Part", "Address of the part, and how many more are alike.")
    tons: str = figure("Tons", "The least that a vehicle of the posting may weigh on it.")
    factor: str = figure("Factor", "The rating factor behind it.")
    vehicle: str = text("Vehicle", "Under which vehicle.")
    check: str = text("Check", "What is reached first.")
    without: str = text(
        "Without it",
        "The posting in tons if these parts were no limit: one figure, or single / combination.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WeakList:
    """The list: what is not rated at the top, then the rated parts, weakest first."""

    not_rated: tuple[NotRatedRow, ...] = text("Not rated", "One row for each reason.")
    rows: tuple[WeakRow, ...] = text("Parts", "Parts alike in one row, weakest first.")
    opened: tuple[WeakRow, ...] = text("Every part", "The same, every part in its own row.")
    sentences: tuple[str, ...] = text("Worth", "What holds the bridge if the weakest did not.")


def weak_list(document: Document) -> WeakList:
    """The list of a `rate` document."""
    weakest = document["weakest"]
    return WeakList(
        not_rated=not_rated_rows(document["parts"]),
        rows=tuple(_row(one, _named(one["parts"])) for one in weakest),
        opened=tuple(_row(one, part) for one in weakest for part in one["parts"]),
        sentences=_sentences(weakest),
    )


def _named(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{parts[0]} and {len(parts) - 1} alike"


def _row(one: Document, parts: str) -> WeakRow:
    return WeakRow(
        parts=parts, tons=rounding.safe_tons(one["safe_tons"]),
        factor=rounding.factor(one["factor"]), vehicle=one["vehicle"], check=one["check"],
        without=words.limits_short(one["without"]),
    )


def _sentences(weakest: list[Document]) -> tuple[str, ...]:
    """What the weakest parts are worth, and then all of each kind whose weakness tells."""
    if not weakest:
        return ()
    first = weakest[0]
    said = [words.if_no_limit(_named(first["parts"]), first["without"])]
    kinds: set[str] = set()
    for one in weakest:
        if one["kind"] not in kinds and (one is first or one["without_kind"] != one["without"]):
            kinds.add(one["kind"])
            every = f"the {words.plural(one['kind'])}"
            said.append(words.if_no_limit(every, one["without_kind"]))
    return tuple(dict.fromkeys(said))
