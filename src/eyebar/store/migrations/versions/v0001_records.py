"""Bridges, revisions, and what the records say, with the chain of events."""

import sqlalchemy as sa
from alembic import op

from eyebar.store.triggers import keeping

revision = "0001"
down_revision = None

_KEYS = {
    "events": "number", "register": "id", "bridges": "id", "revisions": "id", "inspections": "id",
    "readings": "id", "decisions": "id",
}


def _own() -> list[sa.Column[int]]:
    return [
        sa.Column("id", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column(
            "event", sa.Integer, sa.ForeignKey("events.number"), nullable=False, index=True
        ),
    ]


def _bridge() -> sa.Column[int]:
    return sa.Column("bridge", sa.Integer, sa.ForeignKey("bridges.id"), nullable=False)


def _texts(*names: str, nullable: bool = False) -> list[sa.Column[str]]:
    return [sa.Column(name, sa.Text, nullable=nullable) for name in names]


def _revision(*, nullable: bool = False) -> sa.Column[int]:
    return sa.Column(
        "revision", sa.Integer, sa.ForeignKey("revisions.id"), nullable=nullable, index=True
    )


def upgrade() -> None:
    """Make the tables, and the triggers that guard them."""
    op.create_table(
        "events",
        sa.Column("number", sa.Integer, primary_key=True, autoincrement=False),
        *_texts("at", "kind", "person", "reason"),
        sa.Column("bridge", sa.Integer, index=True),
        *_texts("content", "previous"),
        sa.Column("chain", sa.Text, nullable=False, unique=True),
    )
    op.create_table("register", *_own(), *_texts("identity"))
    op.create_table("bridges", *_own(), sa.Column("handle", sa.Text, nullable=False, unique=True))
    op.create_table(
        "revisions", *_own(), _bridge(),
        sa.Column("revision", sa.Integer, nullable=False),
        *_texts("record_hash", "name", "number", "place", "owner"),
        *_texts("latest_entry", nullable=True),
        *_texts("text"),
        sa.UniqueConstraint("bridge", "revision"),
    )
    op.create_table(
        "inspections", *_own(), _bridge(), _revision(),
        *_texts("date", "inspector"), *_texts("note", nullable=True),
        *(sa.Column(name, sa.Integer) for name in ("deck", "superstructure", "substructure")),
        *_texts("photographs", nullable=True),
    )
    op.create_table(
        "readings", *_own(), _bridge(), _revision(),
        sa.Column("inspection", sa.Integer, sa.ForeignKey("inspections.id"), nullable=False),
        *_texts("date", "part", "place", "what", "written"),
        sa.Column("value", sa.Float(53), nullable=False),
        *_texts("unit"), *_texts("gauge", "plus_minus", nullable=True),
        sa.Column("piece", sa.Integer),
        *_texts("note", "photographs", nullable=True),
        sa.Index("readings_of_part", "part"),
    )
    op.create_table(
        "decisions", *_own(), _bridge(), _revision(nullable=True),
        *_texts("date", "what"), *_texts("part", "decider", "note", nullable=True),
    )
    dialect = op.get_context().dialect.name
    for table, key in _KEYS.items():
        for statement in keeping(table, key=key, dialect=dialect):
            op.execute(statement)
