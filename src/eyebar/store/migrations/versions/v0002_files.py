"""Photographs and files, their bytes apart, and what was withdrawn."""

import sqlalchemy as sa
from alembic import op

from eyebar.store.triggers import keeping

revision = "0002"
down_revision = "0001"


def _own() -> list[sa.Column[int]]:
    return [
        sa.Column("id", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column(
            "event", sa.Integer, sa.ForeignKey("events.number"), nullable=False, index=True
        ),
    ]


def _texts(*names: str, nullable: bool = False) -> list[sa.Column[str]]:
    return [sa.Column(name, sa.Text, nullable=nullable) for name in names]


def upgrade() -> None:
    """Make the tables; of the bytes only a withdrawn file's may be blanked."""
    op.create_table(
        "files", *_own(),
        sa.Column("bridge", sa.Integer, sa.ForeignKey("bridges.id"), nullable=False, index=True),
        *_texts("part", nullable=True), *_texts("name", "media_type", "sha256"),
        sa.Column("size", sa.Integer, nullable=False), *_texts("given_sha256"),
        *_texts("taken", "note", nullable=True),
    )
    op.create_table(
        "contents", *_own(),
        sa.Column("file", sa.Integer, sa.ForeignKey("files.id"), nullable=False, unique=True),
        sa.Column("bytes", sa.LargeBinary),
    )
    op.create_table(
        "withdrawals", *_own(),
        sa.Column("file", sa.Integer, sa.ForeignKey("files.id"), nullable=False, unique=True),
        *_texts("person", "reason"),
    )
    dialect = op.get_context().dialect.name
    blanked = (
        "NEW.bytes IS NULL AND NEW.id = OLD.id AND NEW.event = OLD.event AND NEW.file = OLD.file"
    )
    for table in ("files", "contents", "withdrawals"):
        for statement in keeping(
            table, key="id", dialect=dialect,
            changeable_when=blanked if table == "contents" else "",
        ):
            op.execute(statement)
    for statement in _withdrawn_first(dialect):
        op.execute(statement)


def _withdrawn_first(dialect: str) -> tuple[str, ...]:
    """Bytes are blanked only once the withdrawal is written down."""
    missing = "NOT EXISTS (SELECT 1 FROM withdrawals WHERE file = OLD.file)"
    said = "a file is withdrawn with a reason before its bytes go"
    if dialect == "sqlite":
        return (
            "CREATE TRIGGER contents_withdrawn_first BEFORE UPDATE ON contents"
            f" WHEN {missing} BEGIN SELECT RAISE(ABORT, '{said}'); END",
        )
    return (
        "CREATE FUNCTION eyebar_withdrawn_first() RETURNS trigger LANGUAGE plpgsql AS"
        f" $$ BEGIN IF {missing} THEN RAISE EXCEPTION '{said}'; END IF; RETURN NEW; END $$",
        "CREATE TRIGGER contents_withdrawn_first BEFORE UPDATE ON contents"
        " FOR EACH ROW EXECUTE FUNCTION eyebar_withdrawn_first()",
    )
