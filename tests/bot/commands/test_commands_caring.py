"""Looking after the book: status, check, backup, restore; and books that can't be opened."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC
from pathlib import Path

import pytest

from bot.commands.caring import in_words, whole_in_words
from bot.commands.options import clock as options_clock
from core.app import open_book
from tests.machine import Machine


def test_status(farm: Machine) -> None:
    """Farm, notes, people, and what waits; the program that made the timezone note counts as one."""
    told = farm.json("status")
    assert (told["farm"], told["database"], told["notes"], told["members"], told["chats"]) == ("home", "sqlite", 7, [], 0)
    assert "Farm home, sqlite: 7 notes" in farm.ok("status")
    assert "nobody yet" in farm.ok("status")


def test_status_names_the_place_of_the_book(farm: Machine) -> None:
    """The whole path of the file, whichever way it was named; `setup` names it too."""
    place = str(farm.folder / "data" / "herd-book.sqlite")
    assert farm.json("status")["book"] == place
    assert farm.ok("status").startswith(f"Book: {place}\n")
    assert place in farm.run("setup").output


def test_status_of_a_whole_book(farm: Machine) -> None:
    """All farms together, and what each worker has in hand."""
    told = farm.json("status", "--all-farms")
    assert (told["farms"], told["to_look_at"], told["held"], told["last_copy"]) == (1, 1, {}, None)
    assert "1 farm, sqlite; 1 to be looked at for what is due." in farm.ok("status", "--all-farms")
    words = whole_in_words({**told, "held": {"serve": 1, "work-1": 2}, "inbox": {"pending": 5}})
    assert "Messages that came in: 5 pending. In hand: serve 1, work-1 2. That go out: none." in words
    assert farm.refused("status", "--all-farms", "--book", "nosuch://x")["code"] == "bad_address"


def test_status_names_people_and_what_waits() -> None:
    """Who may come in, and messages by their state."""
    members = [{"name": "Ann", "role": "owner"}]
    told = in_words(
        {
            "farm": "home",
            "database": "sqlite",
            "book": "/home/ann/barn.sqlite",
            "notes": 1,
            "photos": 2,
            "last_note": None,
            "members": members,
            "chats": 1,
            "inbox": {"done": 3, "taken": 1},
            "outbox": {},
            "served": True,
            "last_sign": "2026-11-25T07:10:00+00:00",
            "last_copy": "2026-11-25",
            "next_due": {"on": "2026-11-27", "text": "Wean litter of 14"},
        },
        UTC,
    )
    assert told.startswith("Book: /home/ann/barn.sqlite\n")
    assert "Ann (owner)" in told
    assert "1 note, the last never; 2 photos." in told
    assert "3 done, 1 taken" in told
    assert "go out: none" in told
    assert told.endswith("Served: yes, last sign 25 November 2026, 07:10. Last copy: 2026-11-25. Next due: Wean litter of 14 (2026-11-27).")


def test_check_of_a_sound_book(farm: Machine) -> None:
    """Ends with 0."""
    assert farm.ok("check") == "The book is sound.\n"
    assert farm.json("check") == {"sound": True}


def test_check_of_a_broken_book(farm: Machine) -> None:
    """Ends with 1, tells what is broken and what to do before anything else."""
    with closing(sqlite3.connect(farm.folder / "data" / "herd-book.sqlite")) as book:
        book.execute("PRAGMA foreign_keys = OFF")
        book.execute("DELETE FROM notes WHERE id = 3")
        book.commit()
    problem = farm.refused("check")
    assert problem["code"] == "unsound"
    assert "Copy the file" in problem["remedy"]
    assert farm.run("check").exit_code == 1


def test_backup_and_restore(farm: Machine) -> None:
    """A copy of the whole book; restored into a new one it is the same herd."""
    assert "copy is whole" in farm.ok("backup", "safe/copy.sqlite")
    assert farm.ok("restore", "safe/copy.sqlite", "--book", "new.sqlite") == "7 notes restored.\n"
    assert farm.json("herd", "--book", "new.sqlite") == farm.json("herd")
    assert farm.ok("export", "--journal", "--book", "new.sqlite") == farm.ok("export", "--journal")


def test_restore_of_a_journal(farm: Machine) -> None:
    """An exported journal is a backup too."""
    farm.ok("export", "--journal", "--to", "journal.jsonl")
    farm.ok("restore", "journal.jsonl", "--book", "new.sqlite")
    assert farm.ok("export", "--journal", "--book", "new.sqlite") == farm.ok("export", "--journal")


def test_restore_wants_an_empty_book(farm: Machine) -> None:
    """A book with notes is left alone, and the remedy names a way."""
    farm.ok("export", "--journal", "--to", "journal.jsonl")
    result = farm.run("restore", "journal.jsonl")
    assert result.exit_code == 1
    assert "--book" in result.stderr


def test_restore_is_all_or_nothing(farm: Machine) -> None:
    """A journal with a broken line leaves the new book empty."""
    whole = farm.ok("export", "--journal")
    (farm.folder / "broken.jsonl").write_text(whole + "{broken\n", encoding="utf-8")
    assert farm.run("restore", "broken.jsonl", "--book", "new.sqlite").exit_code == 1
    assert farm.json("status", "--book", "new.sqlite")["notes"] == 0


@pytest.mark.parametrize("words", [["restore", "none.jsonl"], ["restore", "."]])
def test_restore_of_a_file_that_cannot_be_read(machine: Machine, words: list[str]) -> None:
    """Ends with 1."""
    result = machine.run(*words)
    assert result.exit_code == 1
    assert "can't be read" in result.stderr


def test_backup_to_where_nobody_can_write(farm: Machine) -> None:
    """Ends with 1 and says so."""
    (farm.folder / "file").write_text("", encoding="utf-8")
    result = farm.run("backup", "file/copy.sqlite")
    assert result.exit_code == 1
    assert "could not be made" in result.stderr


def test_the_book_is_where_it_was_said(machine: Machine) -> None:
    """HAYNOTE_DATABASE_URL names it, and `--book` wins."""
    machine.environment["HAYNOTE_DATABASE_URL"] = f"sqlite:///{machine.folder / 'elsewhere.sqlite'}"
    machine.tell("new doe 14 mini rex")
    assert (machine.folder / "elsewhere.sqlite").is_file()
    assert not (machine.folder / "data" / "herd-book.sqlite").exists()
    assert machine.json("status", "--book", "third.sqlite")["notes"] == 0


@pytest.mark.parametrize(
    "command", [["due"], ["digest"], ["keep"], ["herd"], ["card", "14"], ["status"], ["check"], ["say", "14 ok"], ["read", "14 ok"]]
)
def test_a_file_that_is_no_book(machine: Machine, command: list[str]) -> None:
    """Ends with 1 for every command, and the file is untouched."""
    (machine.folder / "letter.txt").write_text("Dear aunt, " * 200, encoding="utf-8")
    assert machine.refused(*command, "--book", "letter.txt")["code"] == "no_book"
    assert (machine.folder / "letter.txt").read_text(encoding="utf-8").startswith("Dear aunt")


def test_an_address_that_is_none(machine: Machine) -> None:
    """Ends with 1 and shows the form."""
    assert machine.refused("due", "--book", "what://ever")["code"] == "bad_address"


def test_several_farms(machine: Machine) -> None:
    """Then the farm's name is wanted, and a wrong one is refused."""
    place = machine.folder / "two.sqlite"
    for farm in ("north", "south"):
        made = open_book(str(place), farm, create=True)
        made.close()
    assert machine.refused("due", "--book", str(place))["code"] == "which_farm"
    assert machine.refused("due", "--book", str(place), "--farm", "west")["code"] == "no_farm"
    assert machine.json("status", "--book", str(place), "--farm", "south")["farm"] == "south"


def test_data_folder_is_made(machine: Machine) -> None:
    """The first use makes the folder and the book."""
    machine.ok("status")
    assert Path(machine.folder / "data" / "herd-book.sqlite").is_file()


def test_backup_and_restore_for_programs(farm: Machine) -> None:
    """What was done, as an object; and what could not be done, as a problem."""
    assert farm.json("backup", "copy.sqlite") == {"copied_to": "copy.sqlite"}
    assert farm.json("restore", "copy.sqlite", "--book", "new.sqlite") == {"restored": 7}
    assert farm.refused("restore", "copy.sqlite")["code"] == "not_empty"
    (farm.folder / "file").write_text("", encoding="utf-8")
    assert farm.refused("backup", "file/copy.sqlite")["code"] == "no_backup"


def test_the_clock_is_the_real_one() -> None:
    """Unless a test sets it: aware, and moving on."""
    assert options_clock().tzinfo is UTC
    assert options_clock() <= options_clock()


def test_status_of_a_book_that_is_not_served_any_more(farm: Machine) -> None:
    """When it last was, and what is due next."""
    assert (farm.json("status")["served"], farm.json("status")["last_sign"]) == (False, None)
    (farm.folder / "data" / "herd-book.sqlite.serving").touch()
    assert farm.json("status")["last_sign"] is not None
    assert "Served: no, last " in farm.ok("status")
    first = farm.json("due", "--days", "60")["chores"][0]
    assert farm.json("status")["next_due"] == {"on": first["on"], "text": first["text"]}
