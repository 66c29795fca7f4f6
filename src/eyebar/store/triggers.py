"""Triggers by which the database itself refuses to change or take away what is kept.

They bind whoever works through the database; who owns its file can take them away, which is why
there is a chain of hashes besides. Migrations use this text: it is added to, never changed.
"""

from collections.abc import Iterable

KEPT = "the register keeps what it has: correct a mistake by a new revision"

_POSTGRES_FUNCTION = f"""
CREATE OR REPLACE FUNCTION eyebar_kept() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION '{KEPT}'; END $$
"""


def keeping(table: str, *, key: str, dialect: str, changeable_when: str = "") -> Iterable[str]:
    """The statements that guard a table; `changeable_when` lets the one permitted update through.

    It is a condition on OLD and NEW in SQL that both databases read.
    """
    unless = f"WHEN (NOT ({changeable_when}))" if changeable_when else ""
    if dialect == "sqlite":
        refuse = f"BEGIN SELECT RAISE(ABORT, '{KEPT}'); END"
        return (
            f"CREATE TRIGGER {table}_no_update BEFORE UPDATE ON {table} {unless} {refuse}",
            f"CREATE TRIGGER {table}_no_delete BEFORE DELETE ON {table} {refuse}",
            # INSERT OR REPLACE deletes without asking the trigger above.
            f"CREATE TRIGGER {table}_no_replace BEFORE INSERT ON {table}"
            f" WHEN EXISTS (SELECT 1 FROM {table} WHERE {key} = NEW.{key}) {refuse}",
        )
    call = "EXECUTE FUNCTION eyebar_kept()"
    return (
        _POSTGRES_FUNCTION,
        f"CREATE TRIGGER {table}_no_update BEFORE UPDATE ON {table} FOR EACH ROW {unless} {call}",
        f"CREATE TRIGGER {table}_no_delete BEFORE DELETE ON {table} FOR EACH ROW {call}",
        f"CREATE TRIGGER {table}_no_truncate BEFORE TRUNCATE ON {table} {call}",
    )
