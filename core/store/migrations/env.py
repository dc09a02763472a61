"""How Alembic runs: always on a connection that the store hands over, inside its transaction."""

from alembic import context

from core.store import fact_tables  # noqa: F401 - the tables of the kinds join the metadata
from core.store.tables import metadata

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    render_as_batch=True,
    compare_type=True,
    compare_server_default=True,
)
with context.begin_transaction():
    context.run_migrations()
