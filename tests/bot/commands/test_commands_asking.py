"""Questions to the book: due, digest, keep, herd, card."""

from __future__ import annotations

import pytest

from tests.machine import Machine


def test_due_lists_what_is_near(farm: Machine) -> None:
    """Doe 15 was bred four weeks ago: her nest box is due, and her kindling is coming."""
    told = farm.ok("due")
    assert "nest box" in told.lower()
    assert "15" in told


def test_due_document(farm: Machine) -> None:
    """Every chore with its day, whose it is, its words and key; `--days` bounds them."""
    chores = farm.json("due", "--days", "14")["chores"]
    assert chores
    assert all({"on", "chore", "tag", "text", "key", "overdue"} <= set(chore) for chore in chores)
    nearer = farm.json("due", "--days", "0")["chores"]
    assert len(nearer) < len(chores)
    assert all(chore["on"] <= "2026-11-25" for chore in nearer)


def test_digest_document(farm: Machine) -> None:
    """The Monday of the week, flags, chores and the herd in numbers."""
    week = farm.json("digest")
    assert week["week_of"] == "2026-11-23"
    assert {"week_of", "flags", "chores", "counts"} <= set(week)
    assert week["counts"]["does"] == 2
    assert "Week of" in farm.ok("digest")


def test_keep_advises_on_every_grown_animal(farm: Machine) -> None:
    """One verdict each, with at least one reason that has evidence; and that it is advice."""
    advice = farm.json("keep")
    assert advice["today"] == "2026-11-25"
    assert {verdict["tag"] for verdict in advice["verdicts"] if verdict["tag"]} == {"14", "15", "3"}
    assert all(verdict["verdict"] in {"keep", "sell", "cull", "watch"} and verdict["reasons"] for verdict in advice["verdicts"])
    assert "You decide" in farm.ok("keep")


def test_choices_under_an_answer_are_commands(farm: Machine) -> None:
    """No chat goes on after a command: what a button would send is shown as the next command."""
    told = farm.ok("keep")
    assert told.count("  haynote say ") >= 1
    assert "a)" not in told


def test_herd_lists_the_living(farm: Machine) -> None:
    """Every living animal; what is unknown is null, never absent."""
    animals = {animal["tag"]: animal for animal in farm.json("herd")["animals"]}
    assert set(animals) == {"14", "15", "3"}
    assert animals["14"]["name"] is None
    assert animals["14"]["stage"] == "senior"
    assert "14" in farm.ok("herd")


def test_card_of_an_animal(farm: Machine) -> None:
    """One animal's story, in any spelling of its tag."""
    assert farm.json("card", "014")["tag"] == "14"
    assert "Mini Rex" in farm.ok("card", "14")


def test_card_of_an_unknown_animal(farm: Machine) -> None:
    """Ends with 1 and says how to go on: on standard error for people, as an object for programs."""
    assert farm.refused("card", "77")["code"] == "no_animal"
    result = farm.run("card", "77")
    assert (result.exit_code, result.stdout) == (1, "")
    assert "77" in result.stderr
    assert "haynote herd" in result.stderr


@pytest.mark.parametrize("command", ["due", "digest", "keep", "herd"])
def test_an_empty_book_answers_too(machine: Machine, command: str) -> None:
    """Nothing on the book is no error."""
    assert machine.ok(command).strip()
    machine.json(command)


@pytest.mark.parametrize("command", [["due"], ["digest"], ["keep"], ["herd"], ["card", "14"]])
def test_later_notes_do_not_count(farm: Machine, command: list[str]) -> None:
    """`--now` asks the book as it was known then; without an offset it is the farm's time."""
    if command == ["card", "14"]:
        assert farm.refused(*command, "--now", "2026-11-25T07:09")["code"] == "no_animal"
    else:
        assert "14" not in farm.ok(*command, "--now", "2026-11-25T07:09")
    assert farm.ok(*command, "--now", "2026-11-25T07:10") == farm.ok(*command)


@pytest.mark.parametrize("time", ["soon", "2026-13-01", "25.11.2026"])
def test_a_time_that_is_none(farm: Machine, time: str) -> None:
    """Is wrong use: 2, with the form that is wanted."""
    result = farm.run("due", "--now", time)
    assert result.exit_code == 2
    assert "2026-11-25T07:10:00-06:00" in result.stderr


@pytest.mark.parametrize("words", [["due", "--days", "-1"], ["due", "--days", "many"], ["card"], ["deu"], ["due", "--colour", "red"]])
def test_wrong_use_ends_with_2(farm: Machine, words: list[str]) -> None:
    """A number that is none, a word that is missing or too much."""
    assert farm.run(*words).exit_code == 2
