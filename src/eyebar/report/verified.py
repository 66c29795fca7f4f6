"""Whether a report belongs to a record: its own words against the record, then the report made
again and compared byte by byte."""

import re
from dataclasses import dataclass
from datetime import date
from html import unescape

from eyebar import __version__
from eyebar.documents.gathered import Gathered
from eyebar.errors import OutOfRange
from eyebar.report.rating_report import Asked, rating_report
from eyebar.terms import Board, Reader, Working
from eyebar.views import report_verified
from eyebar.views.report_values import fingerprint

_KEYWORDS = re.compile(rb"<pdf:Keywords>([^<]{1,2000})</pdf:Keywords>")
_MADE = re.compile(rb"<xmp:CreateDate>(\d{4}-\d{2}-\d{2})T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Claims:
    """What a report says of itself."""

    record: str
    result: str
    version: str
    on: date
    working: Working
    reader: Reader
    dated: date
    since: str
    board: Board
    register: str
    rating: int
    head: str
    """Of the register: its identity, the number of the rating there, the head of its chain; empty
    and 0 where the rating is in none."""


def claims_of(file: bytes) -> Claims:
    """What the file says of itself. Raises OutOfRange where it is no report of ours."""
    words, made = _KEYWORDS.search(file), _MADE.search(file)
    said = dict(
        pair.strip().partition("=")[::2]
        for pair in unescape(words[1].decode("utf-8", "replace")).split(",")
    ) if words else {}
    try:
        return Claims(
            record=said["record"], result=said["result"], version=said["eyebar"],
            on=date.fromisoformat(said["on"]), working=Working(said["working"]),
            reader=Reader(said["for"]),
            dated=date.fromisoformat(made[1].decode() if made else ""),
            since=said.get("since", ""), board=Board(said.get("board", "none")),
            register=said.get("register", ""), rating=int(said.get("rating", "0")),
            head=said.get("head", ""),
        )
    except (KeyError, ValueError):
        raise OutOfRange(
            "the file", "without the words by which a report names its record",
            "a rating report of eyebar as it was made",
        ) from None


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What was found, in sentences; `proven` where the report was made again as it is."""

    proven: bool
    said: tuple[str, ...]


def verdict(file: bytes, claimed: Claims, of: Gathered, asked: Asked) -> Verdict:
    """A report against the documents of a record on the report's own date."""
    rate = of.rate
    if claimed.record != rate["record_hash"]:
        return _answer(report_verified.OTHER_RECORD)
    if claimed.version != __version__:
        return _answer(report_verified.SAME_RECORD,
                       report_verified.other_version(claimed.version, __version__))
    if claimed.result != fingerprint(rate):
        return _answer(report_verified.SAME_RECORD, report_verified.OTHER_RESULT)
    made = rating_report(of, asked)
    if file == made:
        return Verdict(proven=True, said=(report_verified.PROVEN,))
    if file.startswith(made):
        return Verdict(proven=True, said=(report_verified.PROVEN, report_verified.ADDED))
    if claimed.head and asked.register is None:
        return _answer(report_verified.SAME_RESULT, report_verified.NEEDS_REGISTER)
    if claimed.since and asked.since is None:
        return _answer(report_verified.SAME_RESULT, report_verified.NEEDS_SINCE)
    return _answer(report_verified.SAME_RESULT, report_verified.CHANGED)


def _answer(*said: str) -> Verdict:
    return Verdict(proven=False, said=said)
