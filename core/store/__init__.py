"""The store: where the journal and everything that must survive a power cut is kept. SQLAlchemy and Alembic live here alone."""
