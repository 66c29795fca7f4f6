"""How alembic runs a migration: on the connection it is given, inside that connection's change."""

from alembic import context

context.configure(connection=context.config.attributes["connection"], transactional_ddl=True)
context.run_migrations()
