"""Tables of what was given out for a bridge, and of its files, from `register-bridge` documents."""

from dataclasses import dataclass

from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text


@dataclass(frozen=True, slots=True, kw_only=True)
class RatingIssued:
    """One rating that was issued."""

    number: str = figure("Rating", "Its number in the register.")
    revision: str = figure("Rev", "The revision that was rated.")
    date: str = text("As on", "The day on whose state of the bridge it rests.")
    posting: str = text("Posting", "The posting on one line.")
    signed: str = text("Signed", "Who stated to have checked it; else a draft.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SignUp:
    """One sign that was put up."""

    number: str = figure("Posting", "Its number in the register.")
    legend: str = text("Sign", "What it says.")
    up: str = text("Up", "Since when it stands.")
    down: str = text("Down", "When it was taken down.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipGiven:
    """One crossing slip."""

    number: str = figure("Slip", "Its number in the register.")
    days: str = text("Days", "First and last day.")
    vehicle: str = text("Vehicle", "Which vehicle may cross.")
    holder: str = text("Holder", "To whom it was given.")
    conditions: str = text("Conditions", "Under which it may cross.")


@dataclass(frozen=True, slots=True, kw_only=True)
class FileKept:
    """One photograph or file."""

    number: str = figure("File", "Its number in the register.")
    name: str = text("Name", "As it was handed in.")
    part: str = text("Part", "The part it is about.")
    size: str = figure("Bytes", "How large it is.")
    note: str = text("Note", "What was noted, or why it was withdrawn.")


def ratings_issued(document: Document) -> tuple[RatingIssued, ...]:
    """The ratings of a bridge."""
    return tuple(
        RatingIssued(
            number=str(one["rating"]), revision=str(one["revision"]), date=one["date"],
            posting=one["posting"], signed=" ".join(one["statements"]) or "draft",
        )
        for one in document["ratings"]
    )


def signs_up(document: Document) -> tuple[SignUp, ...]:
    """The signs of a bridge."""
    return tuple(
        SignUp(
            number=str(one["posting"]), legend=one["legend"], up=one["up"],
            down=one["down"] or rounding.NOTHING,
        )
        for one in document["postings"]
    )


def slips_given(document: Document) -> tuple[SlipGiven, ...]:
    """The crossing slips of a bridge."""
    return tuple(
        SlipGiven(
            number=str(one["slip"]), days=f"{one['begins']} to {one['ends']}",
            vehicle=one["vehicle"], holder=one["holder"], conditions=one["conditions"],
        )
        for one in document["slips"]
    )


def files_kept(document: Document) -> tuple[FileKept, ...]:
    """The files of a bridge."""
    return tuple(
        FileKept(
            number=str(one["file"]), name=one["name"], part=one["part"] or "",
            size=f"{one['size']:,}",
            note=f"WITHDRAWN: {one['withdrawn']}" if one["withdrawn"] else one["note"] or "",
        )
        for one in document["files"]
    )
