"""The first page of a report, for the owner of the bridge."""

from dataclasses import dataclass

from eyebar.views import report_words, words
from eyebar.views.columns import Document, text
from eyebar.views.not_rated import NotRatedRow, not_rated_rows
from eyebar.views.signed import InRegister, on_the_front


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """Everything on the first page but its drawings; empty where something does not arise."""

    title: str = text("Title", "What the paper is.")
    name: str = text("Bridge", "Name of the bridge.")
    under: str = text("Under the name", "Its number, place and owner.")
    as_on: str = text("As on", "The date on whose state of the bridge the rating rests.")
    closed: str = text("Closed", "What comes before anything else where it is to be closed.")
    posting: str = text("Posting", "The posting on one line, as the sign will say it.")
    exact: str = text("Closing", "The least safe load, where it decides on closing.")
    governed: str = text("Governed by", "The part, the check and the vehicle behind the posting.")
    emergency: str = text("Emergency vehicles", "Their own limits.")
    provisional: str = text("Provisional", "Why the posting is provisional.")
    crossing: tuple[str, ...] = text("Who may cross", "Vehicles of every day, in sentences.")
    open: tuple[NotRatedRow, ...] = text("Not rated", "The parts without a factor, by reason.")
    open_said: str = text("Open", "How many parts that carry traffic are not rated.")
    changes: tuple[str, ...] = text("Changes", "What changed since an earlier result.")
    unconfirmed: str = text("Unconfirmed", "How many values used have not been confirmed.")
    cautions: tuple[str, ...] = text("Cautions", "Sentences that belong to every use.")
    unsigned: str = text("Unsigned", "That it is not valid without a signature.")
    register: tuple[str, ...] = text("Register", "Who signed in the register; its chain's head.")
    blanks: tuple[str, ...] = text("Signature", "What the engineer fills in.")


def front(
    rate: Document, describe: Document, *, crossing: tuple[str, ...] = (),
    changes: tuple[str, ...] = (), register: InRegister | None = None,
) -> Front:
    """The first page from the `rate` and `describe` documents of one bridge on one date."""
    posting, bridge = rate["posting"], rate["bridge"]
    under = (bridge["number"], describe["place"], describe["owner"])
    general = 2 + bool(posting["closed"])
    return Front(
        title=report_words.TITLE,
        name=bridge["name"],
        under=" · ".join(filter(None, under)),
        as_on=report_words.as_on(rate),
        closed=report_words.closing(posting),
        posting=words.posting_line(posting),
        exact=words.exact(posting),
        governed=words.governed(posting),
        emergency=words.emergency(posting),
        provisional=words.provisional(posting),
        crossing=crossing,
        open=not_rated_rows(rate["parts"]),
        open_said=report_words.not_rated_in_short(posting),
        changes=changes,
        unconfirmed=words.unconfirmed(rate["unconfirmed"]),
        cautions=tuple(rate["cautions"][:general]),
        unsigned=report_words.UNSIGNED,
        register=on_the_front(register),
        blanks=report_words.SIGNATURE,
    )
