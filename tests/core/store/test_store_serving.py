"""One server a farm and one a bot, wherever they run."""

from __future__ import annotations

import pytest
from sqlalchemy import text

from core.store.engine import engine
from core.store.serving import lock_key, serving

LOCKS = text(
    "select count(*) from pg_locks where locktype = 'advisory' and database = (select oid from pg_database where datname = current_database())"
)


def test_a_second_server_of_the_same_farm_is_refused(postgres_url: str) -> None:
    """Also with another bot, from another process: as long as the first one runs, and no longer."""
    one, other = engine(postgres_url), engine(postgres_url)
    with serving(one, 1, "7") as first, serving(other, 1, "8") as second:
        assert (first, second) == (True, False)
    with serving(other, 1, "8") as after:
        assert after
    one.dispose()
    other.dispose()


def test_a_second_server_with_the_same_bot_is_refused(postgres_url: str) -> None:
    """For whatever farm: two would take each other's messages away."""
    one, other = engine(postgres_url), engine(postgres_url)
    with serving(one, 1, "7") as first, serving(other, 2, "7") as second:
        assert (first, second) == (True, False)
    one.dispose()
    other.dispose()


def test_two_farms_with_their_own_bots_are_served_side_by_side(postgres_url: str) -> None:
    """They have nothing to do with each other."""
    made = engine(postgres_url)
    with serving(made, 1, "7") as first, serving(made, 2, "8") as second:
        assert first
        assert second
    made.dispose()


@pytest.mark.parametrize("refused", [False, True])
def test_no_lock_is_left_behind(postgres_url: str, refused: bool) -> None:
    """Not in the pool of connections either; nor half of them by a server that was refused."""
    made, other = engine(postgres_url), engine(postgres_url)
    if refused:
        with serving(other, 2, "7"), serving(made, 1, "7") as free, other.begin() as connection:
            assert not free
            assert connection.execute(LOCKS).scalar_one() == 5
    else:
        with serving(made, 1, "7"), other.begin() as connection:
            assert connection.execute(LOCKS).scalar_one() == 3
    with made.begin() as connection:
        assert connection.execute(LOCKS).scalar_one() == 0
    made.dispose()
    other.dispose()


def test_a_server_that_waits_holds_no_transaction_open(postgres_url: str) -> None:
    """One that stands open for weeks would keep the database from tidying up."""
    made = engine(postgres_url)
    idle = text("select count(*) from pg_stat_activity where datname = current_database() and state = 'idle in transaction'")
    with serving(made, 1, "7"), made.begin() as connection:
        assert connection.execute(idle).scalar_one() == 0
    made.dispose()


def test_the_number_of_a_lock_is_the_same_on_every_machine() -> None:
    """It fits PostgreSQL's own, and differs with what is locked."""
    assert lock_key("farm 1") == lock_key("farm 1")
    assert len({lock_key(f"{what} {number}") for what in ("farm", "bot") for number in range(1000)}) == 2000
    assert all(-(2**63) <= lock_key(f"farm {number}") < 2**63 for number in range(1000))


def test_a_book_in_a_file_is_always_free(tmp_path: object) -> None:
    """Its server holds a lock beside the file instead."""
    made = engine(f"sqlite:///{tmp_path}/book.sqlite")
    with serving(made, 1, "7") as first, serving(made, 1, "7") as second:
        assert first
        assert second
    made.dispose()
