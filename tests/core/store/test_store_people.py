"""Farms, members, set-up codes and chats."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from sqlalchemy import Connection, select

from core.store import people
from core.store.people import Member
from core.store.tables import setup_codes

NOW = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)


def test_a_code_works_once(connection: Connection) -> None:
    """Whoever sends it first has the role; the second finds it spent."""
    code = people.new_code(connection, 1, "owner", NOW)
    assert people.use_code(connection, 1, code, NOW) == "owner"
    assert people.use_code(connection, 1, code, NOW) is None


def test_a_code_is_copied_by_hand(connection: Connection) -> None:
    """Dashes, spaces and case don't matter."""
    code = people.new_code(connection, 1, "owner", NOW)
    assert people.use_code(connection, 1, f" {code.replace('-', ' ').lower()} ", NOW) == "owner"


def test_a_code_ends(connection: Connection) -> None:
    """After a day it is good for nothing."""
    code = people.new_code(connection, 1, "owner", NOW)
    assert people.use_code(connection, 1, code, NOW + timedelta(hours=24)) is None


def test_a_new_code_ends_the_old(connection: Connection) -> None:
    """Only what was shown last counts."""
    old = people.new_code(connection, 1, "owner", NOW)
    new = people.new_code(connection, 1, "owner", NOW)
    assert people.use_code(connection, 1, old, NOW) is None
    assert people.use_code(connection, 1, new, NOW) == "owner"


def test_a_code_opens_its_own_farm(connection: Connection) -> None:
    """Another farm's code is only words."""
    other = people.add_farm(connection, "other")
    code = people.new_code(connection, other, "owner", NOW)
    assert people.use_code(connection, 1, code, NOW) is None


def test_the_code_itself_is_not_kept(connection: Connection) -> None:
    """Who steals the book can't come in by it."""
    code = people.new_code(connection, 1, "owner", NOW)
    kept = " ".join(str(value) for row in connection.execute(select(setup_codes)) for value in row)
    assert code not in kept
    assert code.replace("-", "") not in kept


def test_members(connection: Connection) -> None:
    """A person is on the farm once, with the role they came with; strangers are nobody."""
    people.add_member(connection, 1, Member("telegram:1", "Ann", "owner"), NOW)
    people.add_member(connection, 1, Member("telegram:1", "Ann", "member"), NOW)
    people.add_member(connection, 1, Member("telegram:2", "Bo", "member"), NOW + timedelta(days=1))
    assert [member.role for member in people.members_of(connection, 1)] == ["owner", "member"]
    assert people.member_of(connection, 1, "telegram:2") == Member("telegram:2", "Bo", "member")
    assert people.member_of(connection, 1, "telegram:3") is None
    assert people.member_of(connection, people.add_farm(connection, "other"), "telegram:1") is None


def test_chats(connection: Connection) -> None:
    """A chat that went silent is not written to, until somebody speaks there again."""
    people.know_chat(connection, 1, "b")
    people.know_chat(connection, 1, "a")
    people.mark_chat(connection, 1, "a", active=False)
    assert people.active_chats(connection, 1) == ("b",)
    people.know_chat(connection, 1, "a")
    assert people.active_chats(connection, 1) == ("a", "b")


def test_farms(connection: Connection) -> None:
    """A farm is made once and found by its name."""
    assert people.add_farm(connection, "home") == 1
    assert people.farm_number(connection, "home") == 1
    assert people.farm_number(connection, "nowhere") is None
    people.add_farm(connection, "another")
    assert people.farm_names(connection) == ("home", "another")
