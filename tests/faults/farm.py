"""A small farm on the brink: a message to take in, reminders to send, and what can be counted afterwards."""

from __future__ import annotations

from collections import Counter
from datetime import UTC, datetime, timedelta
from typing import Any

from sqlalchemy import select

from core.app import Message, Problem, open_book
from core.app.book import App
from core.store.tables import inbox, outbox, sent

NOW = datetime(2026, 3, 4, 13, 15, tzinfo=UTC)
CHAT = "c"
WORKER = "serve"
NOTES = ("new doe 14 mini rex", "new buck 3 mini rex", "bred 14 to 3", "14 kindled 8, 2 dead", "16 looks rough today", "undo")


def opened(url: str) -> App:
    """The farm's book."""
    app = open_book(url)
    assert not isinstance(app, Problem), app.text
    return app


def message(number: int) -> Message:
    """The note of that number, as it was typed."""
    return Message(NOTES[number % len(NOTES)], NOW + timedelta(days=number), "ann", CHAT, str(number))


def deliver(app: App, number: int) -> None:
    """Take a message in and work it off, as a shell does. Delivered again it changes nothing."""
    now = NOW + timedelta(days=number)
    app.take_updates("bot", [(number, CHAT, "{}")])
    while (update := app.next_update(WORKER, now)) is not None:
        app.hear_update(update, message(update.update_id), now)


def send_all(app: App, now: datetime) -> list[str]:
    """Send what waits; the keys of what was sent."""
    keys = []
    while (out := app.claim_outgoing(WORKER, now)) is not None:
        keys.append(out.key)
        app.mark_sent(out, str(out.id))
    return keys


def counted(app: App) -> dict[str, Any]:
    """What is in the book: how often each message was recorded and answered, and what is left to do."""
    import json

    notes = [json.loads(line) for line in list(app.export_journal())[1:]]
    with app._engine.begin() as connection:
        answers = connection.scalars(select(outbox.c.key).where(outbox.c.farm_id == 1)).all()
        states = connection.scalars(select(inbox.c.state).where(inbox.c.farm_id == 1)).all()
        gone = connection.execute(select(sent.c.key, sent.c.day).where(sent.c.farm_id == 1)).all()
    return {
        "notes": dict(Counter(note["number"] for note in notes)),
        "answers": dict(Counter(answers)),
        "states": dict(Counter(states)),
        "sent": [[row.key, row.day.isoformat()] for row in gone],
    }
