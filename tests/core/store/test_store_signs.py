"""Signs between programs on one PostgreSQL book."""

from __future__ import annotations

import pytest
from sqlalchemy import text

from core.store import signs
from core.store.engine import engine
from core.store.serving import gone, working


def test_a_sign_is_heard_by_those_who_listen(postgres_url: str) -> None:
    """And by nobody else; without one there is silence."""
    one, other = engine(postgres_url), engine(postgres_url)
    signs.give(one, "inbox")
    with signs.listening(other) as heard:
        assert heard(0.0) == ()
        signs.give(one, "outbox")
        assert heard(10.0) == ("outbox",)
    with other.begin() as connection:
        assert connection.execute(text("select count(*) from pg_listening_channels()")).scalar_one() == 0
    one.dispose()
    other.dispose()


def test_workers_have_names_of_their_own(postgres_url: str) -> None:
    """Who comes after one that has gone takes its name."""
    made = engine(postgres_url)
    with working(made) as first:
        with working(made) as second:
            assert (first, second) == ("work-1", "work-2")
            with made.begin() as connection:
                assert gone(connection, ["serve", first, second, "work-9"]) == ("work-9",)
        with working(made) as third:
            assert third == second
    made.dispose()


def test_the_name_of_one_that_is_gone_is_nobodys_while_its_things_are_looked_through(postgres_url: str) -> None:
    """Or it would be taken by a new worker that then loses what it begins."""
    made = engine(postgres_url)
    with made.begin() as connection:
        assert gone(connection, ["work-1"]) == ("work-1",)
        with working(made) as name:
            assert name == "work-2"
    made.dispose()


@pytest.mark.parametrize("farm", [1, 2])
def test_a_whole_book_is_served_by_one(postgres_url: str, farm: int) -> None:
    """Not beside a server of one of its farms, in whatever order they start."""
    from core.store.serving import serving

    made = engine(postgres_url)
    with serving(made, None, "7") as whole, serving(made, farm, "8") as one:
        assert (whole, one) == (True, False)
    with serving(made, farm, "8") as one, serving(made, None, "7") as whole:
        assert (whole, one) == (False, True)
    made.dispose()
