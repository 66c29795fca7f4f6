"""The answer at the top of every rating: the posting, what governs it, what stands behind it."""

from dataclasses import dataclass

from eyebar.views import words
from eyebar.views.columns import Document, text


@dataclass(frozen=True, slots=True, kw_only=True)
class Posting:
    """The posting of one bridge on one date, in sentences; empty where one does not arise."""

    line: str = text("Posting", "The posting on one line, as the sign will say it.")
    exact: str = text("Closing", "The least safe load, where it decides on closing.")
    bridge: str = text("Bridge", "Name and number of the bridge.")
    date: str = text("Date", "The date on whose state of the bridge the rating rests.")
    governed: str = text("Governed by", "The part, the check and the vehicle that set the posting.")
    emergency: str = text("Emergency vehicles", "Their own limits: axle, tandem and gross weight.")
    provisional: str = text("Provisional", "How many parts that carry traffic are not rated.")
    unconfirmed: str = text("Unconfirmed", "How many values used have not been confirmed.")


def posting(document: Document) -> Posting:
    """The posting's view of a `rate` document."""
    decided, bridge = document["posting"], document["bridge"]
    return Posting(
        line=words.posting_line(decided),
        exact=words.exact(decided),
        bridge=", ".join(filter(None, (bridge["name"], bridge["number"]))),
        date=document["date"],
        governed=words.governed(decided),
        emergency=words.emergency(decided),
        provisional=words.provisional(decided),
        unconfirmed=words.unconfirmed(document["unconfirmed"]),
    )
