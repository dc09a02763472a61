"""The whole book taken away from a chat: every form as a file, to an owner and in private only."""

from __future__ import annotations

import io
import json
import zipfile
from typing import Any

import pytest
from openpyxl import load_workbook

from core.app.members import OWNERS_ONLY
from core.app.taking_away import FORMS, ONLY_IN_PRIVATE
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_people import invited
from tests.standin import StandIn


def file_of(standin: StandIn, message: dict[str, Any]) -> bytes:
    """The file of a message, as the service keeps it."""
    return standin.world.files[message["document"]["file_id"]].content


def sent(barn: Served, standin: StandIn, words: str) -> dict[str, Any]:
    """The message that answers the owner's words."""
    return standin.wait_answer(standin.say("Ann", words))


def test_every_form_comes_as_its_file(barn: Served, standin: StandIn) -> None:
    """The same as the command writes."""
    app = barn.app
    got = {form: sent(barn, standin, f"export {form}") for form in FORMS}
    assert [message["document"]["file_name"] for message in got.values()] == [form.name for form in FORMS.values()]
    files = {form: file_of(standin, message) for form, message in got.items()}
    assert files["notes"].decode().splitlines() == list(app.export_notes())
    assert json.loads(files["json"]) == app.export_document()
    assert files["fam"].decode().splitlines() == list(app.export_fam())
    assert load_workbook(io.BytesIO(files["xlsx"])).sheetnames == [table.name for table in app.export_tables()]
    assert dict(parts(files["csv"])) == dict(app.export_csv())
    assert {"journal.jsonl", "people.json"} <= dict(parts(files["archive"])).keys()


def parts(content: bytes) -> list[tuple[str, bytes]]:
    """The files in a ZIP."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        return [(name, archive.read(name)) for name in archive.namelist()]


def test_a_button_hands_the_form_over_once(barn: Served, standin: StandIn) -> None:
    """And nothing of it is a note."""
    before = barn.notes()
    asked = sent(barn, standin, "export")
    standin.press("Ann", asked, "Notes")
    shown = standin.wait_answer("Ann", after=asked["message_id"])
    assert shown["document"]["file_name"] == "notes.txt"
    assert barn.notes() == before


def test_who_is_no_owner_gets_nothing(barn: Served) -> None:
    """Neither helpers nor lookers, in any form; nor somebody nobody knows."""
    barn.ask("Bo", invited(barn, "helper"))
    barn.ask("Lu", invited(barn, "looker"))
    before = barn.notes()
    for person in ("Bo", "Lu"):
        for words in ("export", "send me all my notes", "export archive"):
            assert barn.ask(person, words) == OWNERS_ONLY
    assert "private bot" in barn.ask("Eve", "export archive")
    assert barn.notes() == before


@pytest.mark.parametrize("words", ["@barn_notes_bot export notes", "/export archive"])
def test_in_a_group_it_is_asked_for_in_private(barn: Served, standin: StandIn, words: str) -> None:
    """Everybody in it would have the file."""
    standin.group("Barn", "Ann")
    answer = standin.wait_answer(standin.say("Ann", words, chat="Barn"))
    assert answer["text"] == ONLY_IN_PRIVATE
