"""Deleting a farm by command."""

from __future__ import annotations

from datetime import timedelta

from bot.telegram.lock import alone, lock_file
from tests.machine import Machine


def test_a_farm_goes_after_a_week_and_its_archive_stays(farm: Machine) -> None:
    """Asked twice, with seven days between; what was deleted comes back from the archive."""
    before = farm.ok("export", "--journal")
    assert "from Wednesday, 02 December 2026, 07:10 on" in farm.ok("delete", "--last", "last.zip")
    assert "then say this again" in farm.ok("delete", "--last", "last.zip")
    assert farm.ok("export", "--journal") == before
    farm.now += timedelta(days=7)
    assert "The farm is deleted." in farm.ok("delete", "--last", "last.zip")
    assert farm.json("status")["notes"] == 0
    farm.ok("restore", "last.zip")
    assert farm.ok("export", "--journal") == before


def test_it_can_be_taken_back(farm: Machine) -> None:
    """Then the seven days begin anew."""
    assert "Nobody asked" in farm.ok("delete", "--stay")
    farm.ok("delete", "--last", "last.zip")
    assert farm.ok("delete", "--stay") == "The farm stays.\n"
    farm.now += timedelta(days=7)
    assert "09 December" in farm.ok("delete", "--last", "last.zip")


def test_a_farm_that_is_served_stays(farm: Machine) -> None:
    """A server would go on with it; once it has stopped the farm goes."""
    farm.ok("delete", "--last", "last.zip")
    farm.now += timedelta(days=7)
    book = farm.json("status")["book"]
    with alone(lock_file(book, "", farm.folder)):
        result = farm.run("delete", "--last", "last.zip")
        assert (result.exit_code, "A server runs for this book." in result.stderr) == (1, True)
        assert farm.json("status")["notes"] > 0
    assert "The farm is deleted." in farm.ok("delete", "--last", "last.zip")


def test_nothing_is_deleted_without_an_archive(farm: Machine) -> None:
    """Neither without a place for it, nor with one that can't be written."""
    assert farm.run("delete").exit_code == 2
    assert farm.run("delete", "--last", "x.zip", "--stay").exit_code == 2
    result = farm.run("delete", "--last", "nowhere/last.zip")
    assert result.exit_code == 1
    assert "Nothing was deleted." in result.stderr
    assert "Nobody asked" in farm.ok("delete", "--stay")
