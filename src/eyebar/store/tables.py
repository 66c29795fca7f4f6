"""The tables of the register, as of the newest schema (`migrations/versions` makes them).

Every row names the event that brought it, and no row is ever changed. Dates and times are ISO text,
so that both databases keep them alike; sizes of readings are in inside units, beside their text.
"""

from sqlalchemy import (
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
)

SCHEMA = "0003"
"""The newest schema: the name of the last migration."""

metadata = MetaData()


def _id() -> Column[int]:
    return Column("id", Integer, primary_key=True, autoincrement=False)


def _event() -> Column[int]:
    return Column("event", Integer, ForeignKey("events.number"), nullable=False, index=True)


def _bridge() -> Column[int]:
    return Column("bridge", Integer, ForeignKey("bridges.id"), nullable=False)


def _revision() -> Column[int]:
    return Column("revision", Integer, ForeignKey("revisions.id"), nullable=False, index=True)


def _text(name: str) -> Column[str]:
    return Column(name, Text, nullable=False)


def _perhaps(name: str) -> Column[str]:
    return Column(name, Text, nullable=True)


events = Table(
    "events", metadata,
    Column("number", Integer, primary_key=True, autoincrement=False),
    _text("at"), _text("kind"), _text("person"), _text("reason"),
    Column("bridge", Integer, nullable=True, index=True),
    _text("content"), _text("previous"),
    Column("chain", Text, nullable=False, unique=True),
)
"""Every change: when, what, who, why, the hash of its rows, and the hashes that chain it."""

register = Table("register", metadata, _id(), _event(), _text("identity"))
"""One row, which tells this register from every other."""

bridges = Table(
    "bridges", metadata, _id(), _event(), Column("handle", Text, nullable=False, unique=True)
)
"""A bridge, by the handle under which the office knows it."""

revisions = Table(
    "revisions", metadata, _id(), _event(), _bridge(),
    Column("revision", Integer, nullable=False),
    _text("record_hash"), _text("name"), _text("number"), _text("place"), _text("owner"),
    _perhaps("latest_entry"),
    _text("text"),
    UniqueConstraint("bridge", "revision"),
)
"""A record as it was written; the long text stands last, so that lists need not read past it."""

inspections = Table(
    "inspections", metadata, _id(), _event(), _bridge(), _revision(),
    _text("date"), _text("inspector"), _perhaps("note"),
    Column("deck", Integer), Column("superstructure", Integer), Column("substructure", Integer),
    _perhaps("photographs"),
)

readings = Table(
    "readings", metadata, _id(), _event(), _bridge(), _revision(),
    Column("inspection", Integer, ForeignKey("inspections.id"), nullable=False),
    _text("date"), _text("part"), _text("place"), _text("what"), _text("written"),
    Column("value", Float(53), nullable=False), _text("unit"),
    _perhaps("gauge"), _perhaps("plus_minus"), Column("piece", Integer), _perhaps("note"),
    _perhaps("photographs"),
    Index("readings_of_part", "part"),
)

decisions = Table(
    "decisions", metadata, _id(), _event(), _bridge(),
    Column("revision", Integer, ForeignKey("revisions.id"), nullable=True, index=True),
    _text("date"), _text("what"), _perhaps("part"), _perhaps("decider"), _perhaps("note"),
)
"""Decisions that a record has; those without a revision were taken down in the register itself."""

files = Table(
    "files", metadata, _id(), _event(),
    Column("bridge", Integer, ForeignKey("bridges.id"), nullable=False, index=True),
    _perhaps("part"), _text("name"), _text("media_type"), _text("sha256"),
    Column("size", Integer, nullable=False), _text("given_sha256"),
    _perhaps("taken"), _perhaps("note"),
)
"""A photograph or a file; `given_sha256` is the hash of what was handed in, before a picture was
written anew."""

contents = Table(
    "contents", metadata, _id(), _event(),
    Column("file", Integer, ForeignKey("files.id"), nullable=False, unique=True),
    Column("bytes", LargeBinary, nullable=True),
)
"""The bytes of a file, which alone may be blanked, once the file is withdrawn."""

withdrawals = Table(
    "withdrawals", metadata, _id(), _event(),
    Column("file", Integer, ForeignKey("files.id"), nullable=False, unique=True),
    _text("person"), _text("reason"),
)

ratings = Table(
    "ratings", metadata, _id(), _event(),
    Column("bridge", Integer, ForeignKey("bridges.id"), nullable=False, index=True),
    Column("revision", Integer, ForeignKey("revisions.id"), nullable=False),
    _text("date"), _text("record_hash"), _text("values_hash"), _text("version"), _text("posting"),
    Column("exact_tons", Float(53)),
    _text("document"),
)
"""A rating that was issued, with its whole document; a draft until somebody signs it."""

signatures = Table(
    "signatures", metadata, _id(), _event(),
    Column("rating", Integer, ForeignKey("ratings.id"), nullable=False),
    _text("name"), _text("licence"), _text("statement"), _text("head"),
)
"""A statement about a rating; `head` is that of the chain on which it stands."""

postings = Table(
    "postings", metadata, _id(), _event(),
    Column("bridge", Integer, ForeignKey("bridges.id"), nullable=False, index=True),
    _text("date"), _text("legend"),
    Column("rating", Integer, ForeignKey("ratings.id")),
    Column("takes_down", Integer, ForeignKey("postings.id"), unique=True),
    _perhaps("note"),
)
"""A sign that was put up, or, where it names the one it takes down, taken down."""

slips = Table(
    "slips", metadata, _id(), _event(),
    Column("bridge", Integer, ForeignKey("bridges.id"), nullable=False, index=True),
    _text("begins"), _text("ends"), _text("vehicle"), _text("holder"), _text("conditions"),
    Column("rating", Integer, ForeignKey("ratings.id")),
)
"""A leave to cross that was given."""

ALL = tuple(metadata.sorted_tables)
"""Every table, each after those that it points to."""

CHAINED = tuple(table for table in ALL if table is not events)
"""The tables whose rows the hash of their event covers."""
