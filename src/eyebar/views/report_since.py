"""What changed since an earlier result of the same bridge."""

from eyebar.errors import OutOfRange
from eyebar.views import rounding, words
from eyebar.views.columns import Document
from eyebar.views.not_rated import first_few
from eyebar.views.rating import Choice, governing
from eyebar.views.sheet_words import long_date

MOST = 6
"""How many parts whose factor moved are named."""


def changes(earlier: Document, rate: Document) -> tuple[str, ...]:
    """The changes in sentences, the posting first.

    Raises OutOfRange where the earlier document is no rating, or of another bridge.
    """
    if earlier.get("format") != rate["format"]:
        raise OutOfRange("the earlier result", earlier.get("format"), f"of {rate['format']}")
    if earlier["bridge"] != rate["bridge"]:
        was = ", ".join(filter(None, earlier["bridge"].values()))
        raise OutOfRange("the earlier result", f"of {was}", "of the same bridge")
    return (
        _record(earlier, rate), _posting(earlier, rate), _governed(earlier, rate),
        *_parts(earlier, rate),
    )


def _record(earlier: Document, rate: Document) -> str:
    same = earlier["record_hash"] == rate["record_hash"]
    by = "" if earlier["version"] == rate["version"] else (
        f", made by eyebar {earlier['version']}"
    )
    record = "from the same record" if same else "from another record"
    return f"The earlier result is as on {long_date(earlier['date'])}, {record}{by}."


def _posting(earlier: Document, rate: Document) -> str:
    was, now = words.posting_line(earlier["posting"]), words.posting_line(rate["posting"])
    return f"The posting is as it was: {now}." if was == now else f"The posting was {was}."


def _governed(earlier: Document, rate: Document) -> str:
    was, now = earlier["posting"]["governed_by"], rate["posting"]["governed_by"]
    if was == now:
        return "What governs is the same."
    if was is None:
        return "Nothing was rated then."
    return f"It was governed by {was['part']}: {was['check']}, under {was['vehicle']}."


def _parts(earlier: Document, rate: Document) -> list[str]:
    was, now = _factors(earlier), _factors(rate)
    said = []
    moved = [
        (now[part] / was[part] if was[part] else float("inf"), part) for part in now
        if part in was and rounding.factor(now[part]) != rounding.factor(was[part])
    ]
    moved.sort()
    for _, part in moved[:MOST]:
        said.append(
            f"{part}: factor {rounding.factor(now[part])}, was {rounding.factor(was[part])}."
        )
    if len(moved) > MOST:
        said.append(f"{len(moved) - MOST} more parts have another factor.")
    if not moved:
        said.append("No part that was rated then and is now has another factor.")
    for sentence, parts in (
        ("Rated now and not then", [part for part in now if part not in was]),
        ("Rated then and not now", [part for part in was if part not in now]),
    ):
        if parts:
            said.append(f"{sentence}, {len(parts)}: {first_few(parts)}.")
    return said


def _factors(document: Document) -> dict[str, float]:
    return {
        part["part"]: float(rating["factor"]) for part in document["parts"]
        if (rating := governing(part, Choice(), document["posting"])) is not None
    }
