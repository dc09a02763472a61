"""Reminders at the farm's hour and the digest on its day: each once, quiet hours kept, late rather than lost."""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.app import Message
from core.app.book import App
from core.app.letters import MOST_ON_PAD
from core.app.ticking import HOW_MANY, _letter
from core.herd.chore import Chore
from core.notes.kinds.reminder import Reminder
from core.notes.kinds.setting import SettingChanged
from core.store.outgoing import Outgoing
from tests.core.app.conftest import AT, Say, record

HOME = ZoneInfo("America/Chicago")
DAY = AT.date() + timedelta(days=1)


def clock(hours: int, minutes: int = 0, *, days: int = 0) -> datetime:
    """A moment of the day after the first notes, on the farm's clock."""
    return datetime.combine(DAY + timedelta(days=days), time(hours, minutes), HOME).astimezone(UTC)


@pytest.fixture
def farm(app: App, small_farm: Say) -> App:
    """A farm with a chat, in its timezone, without animals that cause chores on the days of these tests."""
    record(app, SettingChanged(name="timezone", value="America/Chicago"))
    app.take_updates("bot", [(1, "c", "{}")])
    update = app.next_update("w", AT)
    assert update is not None
    app.hear_update(update, Message("remind me tomorrow to trim nails on 14", AT, "ann", "c", "900"), AT)
    sent(app, AT)
    return app


def sent(app: App, now: datetime) -> list[Outgoing]:
    """What goes out at that time."""
    found = []
    while (out := app.claim_outgoing("w", now)) is not None:
        found.append(out)
        app.mark_sent(out, f"m{out.id}")
    return found


def told(app: App, now: datetime) -> list[str]:
    """What a tick of the clock puts out, as texts."""
    app.tick(now)
    return ["\n".join(out.payload["lines"]) for out in sent(app, now)]


def test_a_reminder_comes_at_the_farms_hour(farm: App) -> None:
    """Not before it, and then once, however often the clock asks."""
    assert told(farm, clock(6, 59)) == []
    (text,) = told(farm, clock(7))
    assert "trim nails" in text
    assert told(farm, clock(7, 1)) == []
    assert told(farm, clock(12, days=1)) == []


def test_a_missed_hour_is_made_up(farm: App) -> None:
    """The machine was off in the morning, or for days."""
    assert len(told(farm, clock(19))) == 1


def test_what_is_long_past_is_not_dug_up(farm: App) -> None:
    """After a week it stands in the digest alone."""
    assert told(farm, clock(12, days=8)) == []


def test_quiet_hours_are_kept(farm: App) -> None:
    """A machine that comes back at night waits for the morning."""
    assert told(farm, clock(23)) == []
    assert told(farm, clock(3, days=1)) == []
    assert len(told(farm, clock(7, days=1))) == 1


def test_quiet_hours_of_one_day(farm: App) -> None:
    """They need not run past midnight."""
    record(farm, SettingChanged(name="quiet_from", value="12:00"), SettingChanged(name="quiet_to", value="14:00"))
    assert told(farm, clock(13)) == []
    assert len(told(farm, clock(14))) == 1


def test_reminders_whose_hour_is_quiet_come_when_that_ends(farm: App) -> None:
    """On the day itself and not never, nor a day late; the answer to the setting says so, and the digest keeps the same hour."""
    said = farm.hear(Message("reminders at 22:00", AT, "ann", "c", "901")).text
    assert said.endswith("22:00 is in your quiet hours, so reminders come when those end: at 06:30.")
    assert told(farm, clock(6, 29)) == []
    assert len(told(farm, clock(6, 30))) == 1
    saturday = clock(6, 30, days=2)
    record(farm, SettingChanged(name="digest_day", value="saturday"))
    assert any("week" in text.lower() for text in told(farm, saturday))


def test_a_named_time_is_kept(farm: App) -> None:
    """A person who says when means it, quiet hours or not."""
    record(farm, Reminder(text="close the vents", on=DAY, time="22:30"))
    assert not any("vents" in text for text in told(farm, clock(22, 29)))
    assert any("vents" in text for text in told(farm, clock(22, 30)))


def test_reminders_of_one_moment_are_one_message(farm: App) -> None:
    """Each with a button that answers it, and not the others."""
    record(farm, Reminder(text="buy hay", on=DAY))
    farm.tick(clock(7))
    (out,) = sent(farm, clock(7))
    assert len(out.payload["lines"]) == 2
    assert len(out.payload["choices"]) == 2
    assert farm.reply_to("c", f"m{out.id}") is None
    first, second = (choice["key"] for choice in out.payload["choices"])
    pressed = farm.press(first, "c", "ann", clock(8))
    assert pressed.says == "done"
    assert pressed.reply_to is not None
    said = Message(pressed.says, clock(8), "ann", "c", "press:1", reply_to=pressed.reply_to)
    farm.take_updates("bot", [(2, "c", "{}")])
    update = farm.next_update("w", clock(8))
    assert update is not None
    farm.hear_update(update, said, clock(8), button=first)
    assert farm.press(first, "c", "ann", clock(8)).state == "used"
    assert farm.press(second, "c", "ann", clock(8)).state == "ok"
    left = [chore["text"] for chore in farm.due(clock(9), 0).document["chores"]]
    assert len(left) == 1


def test_a_reminder_put_off_comes_again(farm: App) -> None:
    """On its new day; the day that it was moved from is forgotten."""
    farm.tick(clock(7))
    (out,) = sent(farm, clock(7))
    answers = farm.reply_to("c", f"m{out.id}")
    farm.hear(Message("tomorrow", clock(8), "ann", "c", "901", reply_to=answers))
    assert told(farm, clock(9)) == []
    assert len(told(farm, clock(7, days=1))) == 1


@pytest.mark.parametrize(
    ("hour", "says", "again"),
    [(8, "later today", "11:00"), (19, "later today", "21:00"), (22, "in 2 hours", "00:00"), (8, "in an hour", "09:00")],
)
def test_a_reminder_put_off_to_another_hour_comes_again(farm: App, hour: int, says: str, again: str) -> None:
    """On the same day, before the quiet hours unless the person named the hours; and once."""
    farm.tick(clock(7))
    (out,) = sent(farm, clock(7))
    answers = farm.reply_to("c", f"m{out.id}")
    said = farm.hear(Message(says, clock(hour), "ann", "c", "901", reply_to=answers)).text
    assert said.endswith(f" at {again}.")
    due = datetime.combine(DAY + timedelta(days=hour == 22), time.fromisoformat(again), HOME).astimezone(UTC)
    assert told(farm, due - timedelta(minutes=1)) == []
    assert len(told(farm, due)) == 1
    assert told(farm, due + timedelta(minutes=5)) == []


def test_late_in_the_evening_later_today_is_asked_about(farm: App) -> None:
    """Nothing of today is left."""
    farm.tick(clock(7))
    (out,) = sent(farm, clock(7))
    answers = farm.reply_to("c", f"m{out.id}")
    said = farm.hear(Message("later today", clock(22), "ann", "c", "901", reply_to=answers)).text
    assert said.startswith("When should I remind you again?")


def test_a_reminder_taken_back_is_not_sent(farm: App) -> None:
    """Nothing was scheduled, so nothing is left behind."""
    farm.hear(Message("undo", AT + timedelta(hours=2), "ann", "c", "902"))
    assert told(farm, clock(7)) == []


def test_reminders_go_to_every_chat(farm: App) -> None:
    """A farm may have several."""
    farm.take_updates("bot", [(2, "d", "{}")])
    update = farm.next_update("w", AT)
    assert update is not None
    farm.hear_update(update, Message("16 looks rough", AT, "bo", "d", "1"), AT)
    sent(farm, AT)
    farm.tick(clock(7))
    assert [out.chat for out in sent(farm, clock(7))] == ["c", "d"]


def test_a_farm_without_a_chat_keeps_its_reminders(app: App, small_farm: Say) -> None:
    """They are sent once there is somebody to send them to."""
    small_farm("remind me tomorrow to trim nails on 14")
    assert app.tick(clock(12)) == 0


@pytest.mark.parametrize(("days", "messages"), [(-1, 0), (0, 1), (1, 1), (2, 1), (3, 0)])
def test_the_digest_comes_on_its_day_or_a_little_late(farm: App, days: int, messages: int) -> None:
    """On the farm's day at its hour, once a week; a machine that was off makes it late, not lost."""
    record(farm, SettingChanged(name="digest_day", value="saturday"))
    saturday = 2 + 7 * 2
    found = [text for text in told(farm, clock(7, days=saturday + days)) if "week" in text.lower()]
    assert len(found) == messages
    assert not any("week" in text.lower() for text in told(farm, clock(8, days=saturday + days)))


def test_an_empty_farm_gets_no_digest(app: App) -> None:
    """There is nothing to tell."""
    app.take_updates("bot", [(1, "c", "{}")])
    update = app.next_update("w", AT)
    assert update is not None
    app.hear_update(update, Message("hello", AT, "ann", "c", "1"), AT)
    sent(app, AT)
    assert [app.tick(AT + timedelta(days=days)) for days in range(7)] == [0] * 7


@pytest.mark.parametrize(("chore", "asks"), HOW_MANY.items())
def test_kits_to_count_have_numbers_to_press(chore: str, asks: str) -> None:
    """Above done, tomorrow and skip, with a line that says what the number stands for."""
    letter = _letter("c", [Chore(DAY, chore, "14", "It is time", f"{chore}:14", None)], DAY)
    assert letter.lines[-1] == asks
    assert [offer.choice.label for offer in letter.offers if not offer.apart] == [str(each) for each in range(1, MOST_ON_PAD + 1)]
    assert [offer.choice.label for offer in letter.offers if offer.apart] == ["Done", "Later today", "Tomorrow", "Skip"]
