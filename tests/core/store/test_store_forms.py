"""The book's form: migrations reach what the code expects, on both engines, and back."""

from __future__ import annotations

from dataclasses import fields

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Column, Connection, Table, Text, inspect, text

from core.store.engine import engine
from core.store.fact_tables import FACT_TABLES, FACT_TYPES, KEYS
from core.store.migrate import HEAD, UnknownFormError, bring_up, config, form
from core.store.tables import farms, metadata


def differences(connection: Connection) -> list[object]:
    """What Alembic would still change."""
    options = {"compare_type": True, "compare_server_default": True}
    return list(compare_metadata(MigrationContext.configure(connection, opts=options), metadata))


def test_an_empty_database_becomes_todays_form(empty_url: str) -> None:
    """After opening, nothing is left that a migration would change."""
    bring_up(empty_url)
    made = engine(empty_url)
    with made.begin() as connection:
        assert form(connection) == HEAD
        assert differences(connection) == []
    made.dispose()


def test_a_missing_column_would_be_seen(book_url: str) -> None:
    """The comparison can fail: a column that no migration made is a difference."""
    extra = Table("members_more", metadata, Column("a", Text))
    made = engine(book_url)
    try:
        with made.begin() as connection:
            assert len(differences(connection)) == 1
    finally:
        metadata.remove(extra)
        made.dispose()


def test_down_and_up_again(empty_url: str) -> None:
    """Going back leaves nothing but Alembic's own mark; going up again gives the same form."""
    bring_up(empty_url)
    made = engine(empty_url, foreign_keys=False)
    with made.begin() as connection:
        command.downgrade(config(connection), "base")
    with made.begin() as connection:
        assert inspect(connection).get_table_names() == ["alembic_version"]
    bring_up(empty_url)
    with made.begin() as connection:
        assert differences(connection) == []
    made.dispose()


def test_opening_again_changes_nothing(book_url: str) -> None:
    """A book in today's form is left alone."""
    bring_up(book_url)
    bring_up(book_url)


def test_a_book_from_the_future_is_refused(book_url: str) -> None:
    """A newer program may have put there what this one would spoil."""
    made = engine(book_url)
    with made.begin() as connection:
        connection.execute(text("update alembic_version set version_num = '9999'"))
    made.dispose()
    with pytest.raises(UnknownFormError):
        bring_up(book_url)


def test_head_is_the_newest_migration(empty_url: str) -> None:
    """The shortcut past Alembic names the form that Alembic would reach."""
    made = engine(empty_url)
    with made.begin() as connection:
        assert ScriptDirectory.from_config(config(connection)).get_current_head() == HEAD
    made.dispose()


def test_a_failed_migration_leaves_no_table(tmp_path: object) -> None:
    """SQLite takes a half-made form back whole."""
    made = engine(f"sqlite:///{tmp_path}/book.sqlite", foreign_keys=False)

    def fail_at_the_end() -> None:
        with made.begin() as connection:
            command.upgrade(config(connection), "head")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail_at_the_end()
    with made.begin() as connection:
        assert inspect(connection).get_table_names() == []
    made.dispose()


@pytest.mark.parametrize("kind", sorted(FACT_TYPES))
def test_a_kinds_columns_are_its_facts_fields(kind: str) -> None:
    """One table a kind: the keys, then every field under its name in the contract, needed ones never empty."""
    table = FACT_TABLES[kind]
    columns = [(column.name, column.nullable) for column in table.columns if column.name not in KEYS]
    assert columns == [(field.name.rstrip("_"), str(field.type).endswith("None")) for field in fields(FACT_TYPES[kind])]
    assert [column.name for column in table.primary_key] == list(KEYS)


@pytest.mark.parametrize("name", sorted(metadata.tables))
def test_every_row_belongs_to_a_farm(name: str) -> None:
    """No table but the farms' own may hold a row of nobody's."""
    if name != farms.name:
        assert not metadata.tables[name].c.farm_id.nullable
