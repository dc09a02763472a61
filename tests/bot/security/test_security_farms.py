"""Somebody of one farm goes through every row of the table of handlers, after what another farm has: they find nothing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from bot.telegram.handlers import HANDLERS, Handler
from core.app import App, open_book
from tests.bot.security.test_security_buttons import forge, key_of
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_house import barns, url
from tests.postgres import postgres_server, postgres_template, postgres_url

__all__ = ["barns", "postgres_server", "postgres_template", "postgres_url", "url"]

#: What Hill alone knows, in words that Bo never says.
SECRETS = ("Californian", "badger", "Thistle", "9 lb 3 oz")

ASKED = [
    "card of 77", "digest", "/digest", "due", "who is due", "keep", "keep 77", "herd", "help", "people", "/people", "who is on the farm",
    "/farm", "/farm Hill", "/farm@barn_notes_bot hill", "export csv", "/export", "export journal", "undo", "77 died", "7 not 6",
    "delete my farm", "yes, delete my farm", "keep my farm",
    "done", "picture of the litters", "pedigree of 77", "which doe", "invite helper", "leave the box in", "remove Ann from the people",
    "tag,breed,sex\n77,Mini Rex,doe\n78,Mini Rex,buck\n79,Mini Rex,doe", "@barn_notes_bot card of 77",
]  # fmt: skip


def journal(url: str) -> list[str]:
    """All that Hill's book holds."""
    app = open_book(url, "Hill")
    assert isinstance(app, App)
    try:
        return list(app.export_journal())
    finally:
        app.close()


def _account(served: Served, who: str) -> str:
    """How the journal names a person of the chat service."""
    return f"telegram:{served.standin.person(who)['id']}"


def heard(served: Served, who: str) -> str:
    """Everything that the bot ever sent a person, as it went over the line."""
    chat = served.standin.person(who)["id"]
    calls: list[Any] = [*served.standin.calls("answerCallbackQuery"), *served.standin.calls()]
    mine = [call for call in calls if call.params.get("chat_id") == chat or call.method == "answerCallbackQuery"]
    return repr([(call.params, call.uploads) for call in mine])


def _asks(barns: Served) -> dict[str, Any]:
    """Bo asks for what there is, then sends a note of his own, which is given."""
    for words in ASKED:
        barns.standin.say("Bo", words)
    return barns.standin.say("Bo", "hay was good")


def _files_and_groups(barns: Served) -> None:
    """Bo and Cy send all else that a chat can send."""
    standin = barns.standin
    standin.send_file("Bo", "photo", b"\xff\xd8", caption="77")
    standin.send_file("Bo", "voice", b"OggS")
    standin.send_place("Bo")
    standin.edit(standin.send_file("Bo", "voice", b"OggS", caption="x"), "")
    standin.send_file("Bo", "document", b"tag,sex\n77,doe\n", name="a.csv", mime_type="text/csv")
    standin.say("Cy", "card of 77")
    standin.group("Barn", "Bo", "Cy")
    standin.say("Bo", "@barn_notes_bot card of 77", chat="Barn")
    standin.migrate("Barn")
    barns.reply(standin.say("Bo", "the hay smells good"))
    standin.block("Bo")


def test_every_row_of_the_table_finds_nothing_of_another_farm(barns: Served, url: str, monkeypatch: Any, tmp_path: Path) -> None:
    """Words, commands, buttons, answers, edits, files, photos and groups: none reads or changes the other's book."""
    monkeypatch.setenv("HAYNOTE_DATA", str(tmp_path))
    standin, used = barns.standin, set()

    def spied(row: Handler) -> Handler:
        async def does(desk: Any, act: Any) -> None:
            used.add(row.what)
            await row.does(desk, act)

        return Handler(row.what, row.fits, does)

    barns.ask("Ann", "/farm hill")
    for words in ("new doe 77 californian", "remark on 77: bites like a badger", "new buck Thistle"):
        question = standin.wait_answer(standin.say("Ann", words))
    note = standin.say("Ann", "77 weighed 9 lb 3 oz")
    answer = barns.reply(note)
    before = journal(url)
    assert _account(barns, "Ann") in before[-1]
    monkeypatch.setattr("bot.telegram.handlers.HANDLERS", tuple(map(spied, HANDLERS)))

    mine = _asks(barns)
    said = barns.reply(mine)
    for label in ("Undo", "Fix"):
        forge(standin, "Bo", said, key_of(answer, label))
        forge(standin, "Bo", question, key_of(question, label))
        forge(standin, "Cy", said, key_of(answer, label))
    for number in (note["message_id"], answer["message_id"]):
        standin.say("Bo", "it was 8-4", reply_to={**said, "message_id": number})
    standin.edit(mine, "card of 77")
    _files_and_groups(barns)

    for words in ("card of 77", "herd"):
        barns.ask("Ann", words)
    assert [secret for secret in SECRETS if secret not in heard(barns, "Ann")] == []
    told = heard(barns, "Bo") + heard(barns, "Cy")
    assert "77" in told
    assert [secret for secret in SECRETS if secret in told] == []
    assert journal(url)[: len(before)] == before
    assert not any(person in line for line in journal(url)[len(before) :] for person in (_account(barns, "Bo"), _account(barns, "Cy")))
    assert {row.what for row in HANDLERS} - used <= {"anything else", "an edit of something else"}
