"""Lists brought to the chat: a spreadsheet or pasted rows, looked at, asked about, taken in by a button, and taken back as one."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from bot.telegram import lists, words
from core.app.bringing import GONE, LEFT
from core.app.members import LOOKS_ONLY
from tests.bot.makers import dot
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_people import invited
from tests.standin import StandIn
from tests.workbooks import workbook

HERD = b"Tattoo,Name,Sex,Breed,DOB\nR1,Juno,doe,Mini Rex,2025-04-03\nR2,Hazel,doe,Mini Rex,2025-03-31\nR3,Duke,buck,Mini Rex,2024-02-01\n"
OPEN = b"Tattoo,Sex,DOB\nR1,doe,3/4/2025\n"


def sent(standin: StandIn, who: str, content: bytes, name: str = "herd.csv", **more: Any) -> dict[str, Any]:
    """The answer to a file."""
    return standin.wait_answer(standin.send_file(who, "document", content, name=name, **more))


def pressed(standin: StandIn, who: str, asked: dict[str, Any], label: str) -> dict[str, Any]:
    """The answer to a button."""
    standin.press(who, asked, label)
    return standin.wait_answer(who, after=asked["message_id"])


def labels(message: dict[str, Any]) -> list[str]:
    """What stands on the buttons under a message."""
    rows = message.get("reply_markup", {}).get("inline_keyboard", [])
    return [button["text"] for row in rows for button in row]


def tags(barn: Served) -> list[str]:
    """The living animals."""
    return [each["tag"] for each in barn.app.herd(barn.now()).document["animals"]]


def test_a_spreadsheet_is_looked_at_taken_in_and_taken_back(barn: Served, standin: StandIn) -> None:
    """Nothing stands before the button; all of it is one note, with the words that came with it."""
    before = barn.notes()
    asked = sent(standin, "Ann", HERD, caption="from the shed")
    assert asked["text"].splitlines() == [
        "herd: 3 rows of animals. Tattoo = tag, Name = name, Sex = sex, Breed = breed, DOB = born.",
        "3 notes: 3 animal.",
        "Nothing is recorded yet. Take it in?",
    ]
    assert labels(asked) == ["Take it in", "Leave it"]
    assert barn.notes() == before
    done = pressed(standin, "Ann", asked, "Take it in")
    assert done["text"] == "Taken in from herd.csv: 3 notes out of 3 rows.\nIt is one note: “undo” takes all of it back."
    assert {"R1", "R2", "R3"} <= set(tags(barn))
    assert barn.notes()[-1].startswith("moved in from herd.csv: from the shed\nherd, row 2: R1 | Juno")
    pressed(standin, "Ann", done, "Undo")
    assert sorted(tags(barn)) == ["14", "3"]


def test_undo_typed_takes_all_of_it_back(barn: Served, standin: StandIn) -> None:
    """As it takes back the last note of any sort."""
    pressed(standin, "Ann", sent(standin, "Ann", HERD), "Take it in")
    barn.ask("Ann", "undo")
    assert sorted(tags(barn)) == ["14", "3"]


def test_a_workbook_may_come_from_a_helper(barn: Served, standin: StandIn) -> None:
    """Sheets of cells, days among them."""
    barn.ask("Bo", invited(barn, "helper"))
    rows: list[list[object]] = [["Tag", "Sex", "Breed"], ["R1", "doe", "Mini Rex"], ["R2", "buck", "Mini Rex"]]
    pressed(standin, "Bo", sent(standin, "Bo", workbook(Herd=rows), "ours.xlsx"), "Take it in")
    assert {"R1", "R2"} <= set(tags(barn))


def test_what_is_unclear_is_asked_by_buttons(barn: Served, standin: StandIn) -> None:
    """And the answer is part of what is looked at next."""
    asked = sent(standin, "Ann", OPEN)
    assert "is the month first" in asked["text"]
    assert labels(asked) == ["Month first", "Day first", "Leave it"]
    asked = pressed(standin, "Ann", asked, "Day first")
    assert labels(asked) == ["Take it in", "Leave it"]
    pressed(standin, "Ann", asked, "Take it in")
    born = barn.now().date() - timedelta(barn.app.herd(barn.now()).document["animals"][-1]["age_days"])
    assert born == date(2025, 4, 3)


def test_a_list_that_is_left_leaves_nothing(barn: Served, standin: StandIn) -> None:
    """Its other button is spent with it."""
    before = barn.notes()
    asked = sent(standin, "Ann", HERD)
    assert pressed(standin, "Ann", asked, "Leave it")["text"] == LEFT
    assert barn.notes() == before


def test_the_same_again_brings_nothing(barn: Served, standin: StandIn) -> None:
    """There is nothing to press, then."""
    pressed(standin, "Ann", sent(standin, "Ann", HERD), "Take it in")
    again = sent(standin, "Ann", HERD)
    assert again["text"].splitlines()[-1] == "Nothing new is in it."
    assert labels(again) == []


@pytest.mark.parametrize(
    ("content", "name", "said"),
    [
        (b"%PDF-1.7", "papers.pdf", words.NO_LIST),
        (dot(), "herd.csv", "There are no rows in herd.csv."),
        (b"", "herd.csv", "There are no rows in herd.csv."),
        (b"PK\x03\x04 and no more", "herd.xlsx", "I can't read herd.xlsx: it is broken."),
        (b"\xd0\xcf\x11\xe0", "herd.xls", "old form"),
        (b'{"form": "other"}', "herd.json", "no book of Haynote"),
        (b"0" * (lists.LARGEST + 1), "herd.csv", words.LIST_TOO_LARGE),
    ],
)
def test_what_is_no_list_is_said_plainly(barn: Served, standin: StandIn, content: bytes, name: str, said: str) -> None:
    """Whatever its name says that it is."""
    before = barn.notes()
    answer = sent(standin, "Ann", content, name)
    assert said in answer["text"]
    assert labels(answer) == []
    assert barn.notes() == before


def test_who_may_only_ask_brings_nothing(barn: Served, standin: StandIn) -> None:
    """Nor does a stranger, nor by a button under somebody else's list."""
    barn.ask("Lu", invited(barn, "looker"))
    assert sent(standin, "Lu", HERD)["text"] == LOOKS_ONLY
    assert "private bot" in sent(standin, "Eve", HERD)["text"]
    assert barn.ask("Lu", HERD.decode()) == LOOKS_ONLY
    assert sorted(tags(barn)) == ["14", "3"]


def test_a_pasted_list_goes_the_same_way(barn: Served, standin: StandIn) -> None:
    """With headings or without."""
    for text in (HERD.decode(), "Juno, doe, Mini Rex, 2025-04-03\nDuke, buck, Mini Rex, 2024-02-01"):
        asked = standin.wait_answer(standin.say("Ann", text))
        assert labels(asked) == ["Take it in", "Leave it"]
        done = pressed(standin, "Ann", asked, "Take it in")
        assert done["text"].startswith("Taken in from your list: ")
        pressed(standin, "Ann", done, "Undo")
    assert sorted(tags(barn)) == ["14", "3"]


def test_a_server_that_starts_again_knows_the_list(standin: StandIn, tmp_path: Any) -> None:
    """Nothing is lost between the steps, and nothing is taken in twice."""
    book = tmp_path / "book.sqlite"
    with Served(standin, book) as server:
        server.owner()
        asked = sent(standin, "Ann", OPEN)
    with Served(standin, book):
        asked = pressed(standin, "Ann", asked, "Day first")
    with Served(standin, book):
        done = pressed(standin, "Ann", asked, "Take it in")
    with Served(standin, book) as server:
        assert len([text for text in server.notes() if text.startswith("moved in")]) == 1
        pressed(standin, "Ann", done, "Undo")
        assert tags(server) == []


def test_a_list_whose_file_is_gone_is_asked_for_again(barn: Served, standin: StandIn) -> None:
    """Somebody tidied the folder up."""
    asked = sent(standin, "Ann", HERD)
    for file in barn.app.upload_folder(barn.book).iterdir():
        file.unlink()
    assert pressed(standin, "Ann", asked, "Take it in")["text"] == GONE


def test_a_long_list_says_how_far_it_is(barn: Served, standin: StandIn, monkeypatch: pytest.MonkeyPatch) -> None:
    """One message that changes, beside the answer."""
    monkeypatch.setattr(lists, "LONG", 2)
    note = standin.send_file("Ann", "document", HERD, name="herd.csv")
    standin.wait_answer(note)
    barn.ask("Ann", "14 weighed 8-2")
    assert "herd.csv: all 3 notes read." in [answer.get("text") for answer in standin.answers("Ann", after=note["message_id"])]
