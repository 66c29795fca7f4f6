"""Ratings issued and signed, postings put up and taken down, crossing slips."""

import sqlalchemy as sa
from alembic import op

from eyebar.store.triggers import keeping

revision = "0003"
down_revision = "0002"


def _own() -> list[sa.Column[int]]:
    return [
        sa.Column("id", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column(
            "event", sa.Integer, sa.ForeignKey("events.number"), nullable=False, index=True
        ),
    ]


def _bridge() -> sa.Column[int]:
    return sa.Column(
        "bridge", sa.Integer, sa.ForeignKey("bridges.id"), nullable=False, index=True
    )


def _to(name: str, target: str, *, nullable: bool = False, unique: bool = False) -> sa.Column[int]:
    return sa.Column(name, sa.Integer, sa.ForeignKey(target), nullable=nullable, unique=unique)


def _texts(*names: str, nullable: bool = False) -> list[sa.Column[str]]:
    return [sa.Column(name, sa.Text, nullable=nullable) for name in names]


def upgrade() -> None:
    """Make the tables, and the triggers that guard them."""
    op.create_table(
        "ratings", *_own(), _bridge(), _to("revision", "revisions.id"),
        *_texts("date", "record_hash", "values_hash", "version", "posting"),
        sa.Column("exact_tons", sa.Float(53)),
        *_texts("document"),
    )
    op.create_table(
        "signatures", *_own(), _to("rating", "ratings.id"),
        *_texts("name", "licence", "statement", "head"),
    )
    op.create_table(
        "postings", *_own(), _bridge(), *_texts("date", "legend"),
        _to("rating", "ratings.id", nullable=True),
        _to("takes_down", "postings.id", nullable=True, unique=True),
        *_texts("note", nullable=True),
    )
    op.create_table(
        "slips", *_own(), _bridge(), *_texts("begins", "ends", "vehicle", "holder", "conditions"),
        _to("rating", "ratings.id", nullable=True),
    )
    dialect = op.get_context().dialect.name
    for table in ("ratings", "signatures", "postings", "slips"):
        for statement in keeping(table, key="id", dialect=dialect):
            op.execute(statement)
