"""Many farms in one database: whatever is asked of one, every statement names it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import event

from core.app import Message, ReplyTo
from core.app.book import App
from core.reply import Choice, Reply
from core.store.people import Member
from core.store.tables import farms, metadata
from tests.core.app.conftest import AT, opened

LATER = AT + timedelta(days=40)
TABLES = set(metadata.tables) - {farms.name}

#: Where a statement reads a table, or writes to one.
MENTION = re.compile(r"\b(?:FROM|JOIN|INTO|UPDATE)\s+\"?(\w+)\"?", re.IGNORECASE)


@contextmanager
def statements(app: App) -> Iterator[list[str]]:
    """What the database is told meanwhile."""
    told: list[str] = []

    def note(_connection: Any, _cursor: Any, statement: str, *_rest: Any) -> None:
        told.append(statement)

    event.listen(app._engine, "before_cursor_execute", note)
    yield told
    event.remove(app._engine, "before_cursor_execute", note)


def live(app: App, folder: Path) -> None:
    """Everything that a shell can ask of a farm."""
    code = app.setup_code(AT, anew=True)
    app.take_updates("bot", [(number, "c", "{}") for number in range(1, 9)])
    handled: list[Callable[[Any], Any]] = [
        lambda update: app.admit_update(update, Member("telegram:1", "Ann", ""), str(code), AT),
        lambda update: app.hear_update(update, Message("new doe 14 mini rex", AT, "ann", "c", "1"), AT),
        lambda update: app.hear_update(update, Message("undo", AT, "ann", "c", "2"), AT),
        lambda update: app.answer_update(update, Reply(("Hello.",), (Choice("Yes", "yes"),)), AT),
        lambda update: app.failed(update, AT),
        lambda update: app.failed(update, AT),
        lambda update: app.failed(update, AT),
    ]
    for handle in handled:
        update = app.next_update("w", AT)
        assert update is not None
        handle(update)
    app.begin_work("w")
    app.hear(Message("done", AT, "ann", "c", "3", reply_to=ReplyTo("custom", None, "k")))
    app.say(Message("remind me tomorrow to buy hay", AT, "ann", "c", "4"))
    app.replay("2026-03-04 the hay smells good")
    app.tick(AT + timedelta(days=1))
    post(app)
    for ask in (app.due, app.digest, app.keep, app.herd):
        ask(LATER)
    app.card("14", LATER)
    list(app.export_notes())
    app.restore(app.export_journal())
    assert app.backup(folder / f"{app.name}.sqlite") is None
    assert app.check() == ()
    app.status()
    app.members()


def post(app: App) -> None:
    """Send, fail, drop and press."""
    key = app.offer("c", Choice("Yes", "yes"), "b", AT)
    app.press(key, "c", "ann", AT)
    app.send("x", "d", Reply(("Hello.",)), AT)
    ends: list[Callable[[Any], Any]] = [
        lambda out: app.mark_sent(out, "1"),
        lambda out: app.retry_at(out, AT),
        lambda out: app.drop(out, chat_gone=True),
    ]
    for end in ends:
        out = app.claim_outgoing("w", LATER)
        assert out is not None
        end(out)
    app.reply_to("c", "1")


def test_every_statement_names_the_farm(app: App, tmp_path: Path) -> None:
    """No row of a table is read or written without saying whose."""
    with statements(app) as told:
        live(app, tmp_path)
    touching = [statement for statement in told if TABLES & set(MENTION.findall(statement))]
    assert {name for statement in touching for name in MENTION.findall(statement)} >= {
        "notes",
        "facts",
        "inbox",
        "outbox",
        "sent",
        "buttons",
    }
    assert [statement for statement in touching if statement.count("farm_id") == 0] == []


def test_what_one_farm_does_leaves_the_other_as_it_was(place: Path, tmp_path: Path) -> None:
    """A farm that shares its book, with the same chats and message numbers, lives as one that is alone in it."""
    pair = [opened(place, "Hill"), opened(place, "Dale", create=True)]
    alone = opened(tmp_path / "alone.sqlite")
    pair[1].take_updates("its own bot", [(1, "c", "{}")])
    pair[1].hear(Message("new doe 22 mini rex", AT, "bo", "c", "1"))
    for app in (pair[0], alone):
        live(app, tmp_path)
    assert list(pair[0].export_journal())[1:] == list(alone.export_journal())[1:]
    unlike = {"farm": "", "book": ""}
    assert pair[0].status() | unlike == alone.status() | unlike
    assert len(list(pair[1].export_journal())) == 2
    for app in (*pair, alone):
        app.close()
