"""A full disk, one that takes nothing, a lock held by another program, a damaged file: a plain message with what to do, and nothing lost."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from bot.telegram.outage import WAIT
from tests.bot.telegram.served import FAST, Served
from tests.faults.disks import LONG_NOTE, damage, full_disk, held, read_only
from tests.machine import Machine
from tests.standin import StandIn


@pytest.fixture
def machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Machine:
    """A machine with a book of one doe, whose writers don't wait for each other."""
    monkeypatch.setattr("core.store.engine.WAIT_MS", 1)
    found = Machine(tmp_path, monkeypatch)
    found.tell("new doe 14 mini rex")
    return found


def book(machine: Machine) -> Path:
    """Where it lies."""
    return machine.folder / "data" / "herd-book.sqlite"


def untouched(machine: Machine) -> bool:
    """Whether the book is sound, holds what it held, and takes notes again."""
    before = machine.json("status")["notes"]
    machine.tell("14 weighed 4-2")
    return machine.json("check") == {"sound": True} and (before, machine.json("status")["notes"]) == (2, 3)


def test_a_full_disk(machine: Machine) -> None:
    """What does not fit is not half there."""
    with full_disk():
        problem = machine.refused("say", LONG_NOTE)
    assert (problem["code"], problem["text"]) == ("disk_full", "The disk is full.")
    assert "Make room" in problem["remedy"]
    assert untouched(machine)


def test_a_full_disk_while_old_notes_are_taken_in(machine: Machine) -> None:
    """Done again when there is room, what was there already counts once."""
    season = "".join(f"2026-03-{day:02d} 07:15 14 looks well today, number {day}, {'and eats ' * 40}\n" for day in range(1, 29))
    (machine.folder / "season.txt").write_text(season, encoding="utf-8")
    with full_disk():
        result = machine.run("replay", "season.txt")
    assert (result.exit_code, "The disk is full." in result.stderr) == (1, True)
    machine.ok("replay", "season.txt")
    assert machine.json("status")["notes"] == 2 + 28


def test_a_disk_that_takes_nothing(machine: Machine) -> None:
    """Questions are answered, notes refused."""
    place = read_only(book(machine))
    assert machine.refused("say", "14 weighed 4-2", "--book", place)["code"] == "read_only"
    assert "can't be written to. Nothing was changed." in machine.run("say", "14 weighed 4-2", "--book", place).stderr
    assert machine.json("herd", "--book", place)["animals"]
    assert untouched(machine)


def test_a_lock_that_another_program_holds(machine: Machine) -> None:
    """It is named as such, and the note can be sent once it is gone."""
    with held(book(machine)):
        problem = machine.refused("say", "14 weighed 4-2")
    assert problem["code"] == "busy"
    assert "Another program holds the book." in problem["text"]
    assert untouched(machine)


@pytest.mark.parametrize("command", [("say", "14 weighed 4-2"), ("due",), ("check",), ("backup", "copy.sqlite")])
def test_a_damaged_file(machine: Machine, command: tuple[str, ...]) -> None:
    """Nothing is written over what may still be saved, and the way back is told: the last copy into a new book."""
    machine.ok("backup", "safe.sqlite")
    damage(book(machine))
    left = book(machine).read_bytes()
    problem = machine.refused(*command)
    assert problem["code"] == "damaged"
    assert "haynote restore" in problem["remedy"]
    assert book(machine).read_bytes() == left
    machine.ok("restore", "safe.sqlite", "--book", "new.sqlite")
    assert machine.json("status", "--book", "new.sqlite")["notes"] == 2


def test_the_server_on_a_full_disk(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    """Who writes is told once why it takes long, a stranger nothing; the operator reads a line without a traceback; all is taken in, in order, once there is room."""
    with StandIn() as standin, Served(standin, tmp_path / "book.sqlite", replace(FAST, patience=lambda _: 0.02)) as barn:
        barn.owner()
        barn.ask("Ann", "new doe 14")
        with full_disk():
            standin.say("Eve", LONG_NOTE)
            first = standin.say("Ann", LONG_NOTE)
            assert "The disk is full. Your message is not lost" in standin.wait_answer("Ann", after=first["message_id"])["text"]
            last = standin.say("Ann", "14 weighed 8-2")
        assert "8 lb 2 oz" in barn.reply(last)["text"]
        assert barn.notes() == ["new doe 14", LONG_NOTE, "14 weighed 8-2"]
        assert [each["text"] for each in standin.answers("Ann")].count(WAIT.format(why="The disk is full.")) == 1
        assert not any("disk" in each["text"] for each in standin.answers("Eve"))
    told = [record for record in caplog.records if "The disk is full." in record.getMessage()]
    assert told
    assert not any(record.exc_info for record in told)


def test_a_server_of_a_book_that_takes_nothing(machine: Machine) -> None:
    """It does not start, and says why."""
    machine.environment["HAYNOTE_BOT_TOKEN"] = "7000001:secret-words_of-a-bot"
    result = machine.run("serve", "--book", read_only(book(machine)))
    assert result.exit_code == 1
    assert "The book can't be written to." in result.stderr
