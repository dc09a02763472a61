"""Saying one thing, and chatting."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.machine import Machine


def test_say_echoes_what_was_understood(farm: Machine) -> None:
    """The answer tells the numbers back."""
    told = farm.ok("say", "14 has 6 kits")
    assert "14" in told
    assert "6" in told


def test_say_document(farm: Machine) -> None:
    """Facts, the question, the reply, and the chores that follow."""
    said = farm.json("say", "bred 14 to 3", "--from", "ann")
    assert said["facts"] == [{"kind": "bred", "doe": "14", "buck": "3", "on": "2026-11-25"}]
    assert said["ask"] is None
    assert "14" in said["reply"]
    assert [chore["chore"] for chore in said["chores"]][:2] == ["palpate", "nest_box_in"]


def test_say_keeps_who_said_it(farm: Machine) -> None:
    """`--from` is the author in the journal."""
    farm.ok("say", "14 looks well", "--from", "Zoë")
    assert json.loads(farm.ok("export", "--journal").splitlines()[-1])["author"] == "Zoë"


def test_say_asks(farm: Machine) -> None:
    """A question is an answer too: it ends with 0 and tells why it asks."""
    said = farm.json("say", "77 kindled 8")
    assert said["ask"]["why"] == "which_animal"
    assert said["facts"] == []
    assert said["ask"]["text"] in farm.ok("say", "77 kindled 8", "--now", "2026-11-25T09:00")


def test_say_goes_on_with_what_was_said(farm: Machine) -> None:
    """Two commands are one conversation: the second answers the first's question."""
    assert farm.json("say", "15 weighed")["ask"] is not None
    assert farm.json("say", "4-2")["facts"] == [{"kind": "weighed", "who": "15", "on": "2026-11-25", "grams": 1871}]


def test_say_at_a_time(machine: Machine) -> None:
    """`--now` is when the note was sent, in farm time; a new book lives in this machine's timezone from its first note on."""
    said = machine.json("say", "new doe 14 mini rex", "--now", "2026-03-04T23:30")
    assert said["facts"][0]["tag"] == "14"
    first, second = (json.loads(line) for line in machine.ok("export", "--journal").splitlines()[1:])
    assert first["text"] == "timezone America/Chicago"
    assert second["at"] == "2026-03-05T05:30:00+00:00"


@pytest.mark.parametrize("zone", ["UTC", "Etc/UTC", None])
def test_a_machine_without_a_timezone_adds_no_note(machine: Machine, monkeypatch: pytest.MonkeyPatch, zone: str | None) -> None:
    """A server's UTC says nothing about where the barn is."""
    monkeypatch.setattr("tzlocal.get_localzone_name", lambda: zone)
    machine.tell("new doe 14 mini rex")
    assert machine.json("status")["notes"] == 1


def test_piped_chat_ends_each_reply_with_an_empty_line(farm: Machine) -> None:
    """So that a program knows where a reply ends; one reply a message, in order."""
    told = farm.ok("chat", typed="14 has 6 kits\nhow many\nwho's due\n")
    replies = told.split("\n\n")
    assert replies[-1] == ""
    assert len(replies) == 4
    assert "6" in replies[0]


def test_a_letter_picks_a_choice(farm: Machine) -> None:
    """Choices carry letters, for a number alone may be the answer itself."""
    told = farm.ok("chat", typed="bred 15 to\na\n")
    question, answer, _ = told.split("\n\n")
    assert "  a) 3" in question
    assert "15" in answer
    assert "3" in answer
    assert '"bred"' in farm.ok("export", "--journal").splitlines()[-1]


def test_piped_chat_at_a_time(machine: Machine) -> None:
    """`--now` sets the clock of the whole chat."""
    machine.ok("chat", "--now", "2026-03-04T07:15:00-06:00", typed="new doe 14 mini rex\n")
    assert json.loads(machine.ok("export", "--journal").splitlines()[-1])["at"].startswith("2026-03-04T13:15")


def test_letters_of_any_script_pass(machine: Machine) -> None:
    """A name with accents, and words in another script, come back as they were typed."""
    machine.ok("chat", typed="new doe 14 named Zoë mini rex\n14 выглядит хорошо 🐇\n")
    journal = machine.ok("export", "--journal")
    assert "Zoë" in journal
    assert "выглядит хорошо 🐇" in journal


def test_the_book_is_handed_over_and_no_note_made(farm: Machine) -> None:
    """The words for it are no note; the file lies where it is told."""
    before = farm.ok("export", "--journal")
    told = farm.json("say", "export notes", "--json")
    assert told["facts"] == []
    path = told["reply"].splitlines()[-1].removeprefix("File: ")
    assert Path(path).read_text(encoding="utf-8") == farm.ok("export")
    chat = farm.ok("chat", typed="export\nf\n")
    assert "In which form?" in chat
    assert "farm-archive.zip" in chat
    assert farm.ok("export", "--journal") == before


def test_deleting_the_farm_is_left_to_its_command(farm: Machine) -> None:
    """Neither `say` nor the chat does it, or makes a note of it."""
    before = farm.ok("export", "--journal")
    assert "'haynote delete --last FILE'" in farm.ok("say", "delete my farm")
    assert "'haynote delete --stay'" in farm.ok("chat", typed="keep my farm\n")
    assert "Nobody asked" in farm.ok("delete", "--stay")
    assert farm.ok("export", "--journal") == before
