"""Inbox, outbox and buttons: order, claims, tries, and nothing twice."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

from sqlalchemy import Connection

from core.notes.reading import ReplyTo
from core.store import buttons, intake, outgoing
from core.store.buttons import Button, Press, Pressed
from core.store.intake import Came
from core.store.outgoing import Parcel
from core.store.people import add_farm

NOW = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)
LATER = NOW + intake.LEASE


def taken(connection: Connection, *updates: tuple[int, str]) -> None:
    """Updates (number, chat) in the inbox."""
    for number, chat in updates:
        assert intake.take(connection, 1, Came("bot", number, chat, "{}"))


def numbers(connection: Connection, times: int, now: datetime = NOW) -> list[int | None]:
    """The numbers of the next updates handed out."""
    found = [intake.next_update(connection, 1, "w", now) for _ in range(times)]
    return [each and each.update_id for each in found]


def test_an_update_is_kept_once(connection: Connection) -> None:
    """Sent again, or to another farm's worker, it is known."""
    assert intake.take(connection, 1, Came("bot", 7, "c", "{}"))
    assert not intake.take(connection, 1, Came("bot", 7, "c", "{}"))
    assert not intake.take(connection, add_farm(connection, "other"), Came("bot", 7, "c", "{}"))
    assert intake.take(connection, 1, Came("other bot", 7, "c", "{}"))


def test_each_chat_in_its_order(connection: Connection) -> None:
    """A chat's second message waits for its first; another chat's does not."""
    taken(connection, (3, "a"), (2, "a"), (5, "b"))
    assert numbers(connection, 3) == [2, 5, None]


def test_done_lets_the_next_through(connection: Connection) -> None:
    """Once the first is done, the second comes."""
    taken(connection, (2, "a"), (3, "a"))
    first = intake.next_update(connection, 1, "w", NOW)
    assert first is not None
    intake.mark(connection, 1, first.id, "done")
    assert numbers(connection, 2) == [3, None]
    assert intake.waiting(connection, 1) == {"done": 1, "pending": 1}


def test_what_a_dead_worker_held_comes_back(connection: Connection) -> None:
    """By its own return at once, by another's after a while."""
    taken(connection, (2, "a"))
    assert numbers(connection, 2) == [2, None]
    intake.release(connection, 1, "somebody else")
    assert numbers(connection, 1) == [None]
    intake.release(connection, 1, "w")
    assert numbers(connection, 2) == [2, None]
    assert numbers(connection, 1, LATER) == [2]


def test_three_failures_set_an_update_aside(connection: Connection) -> None:
    """It is tried three times; then its chat goes on."""
    taken(connection, (2, "a"), (3, "a"))
    for last in (False, False, True):
        update = intake.next_update(connection, 1, "w", NOW)
        assert update is not None
        assert update.update_id == 2
        assert intake.failed(connection, 1, update.id) is last
    assert numbers(connection, 1) == [3]


def test_an_update_that_kills_the_program_is_known_by_how_often_it_came(connection: Connection) -> None:
    """No failure was ever told, but it has been handed out too often."""
    taken(connection, (2, "a"))
    for _ in range(intake.HANDED_OUT):
        update = intake.next_update(connection, 1, "w", NOW)
        assert update is not None
        assert update.tries == 0
        intake.release(connection, 1, "w")
    update = intake.next_update(connection, 1, "w", NOW)
    assert update is not None
    assert update.tries == intake.TRIES


def test_the_outbox_takes_a_key_once(connection: Connection) -> None:
    """A second message of that key is not put in, sent or not."""
    assert not outgoing.known(connection, 1, "k")
    assert outgoing.put(connection, 1, Parcel("k", "c", {"lines": ["a"]}, NOW))
    assert not outgoing.put(connection, 1, Parcel("k", "c", {"lines": ["b"]}, NOW))
    assert outgoing.known(connection, 1, "k")
    assert outgoing.put(connection, add_farm(connection, "other"), Parcel("k", "c", {}, NOW))


def test_answers_keep_their_order(connection: Connection) -> None:
    """A chat's messages go out one after the other, those of other chats beside them."""
    for key, chat in (("1", "a"), ("2", "a"), ("3", "b")):
        outgoing.put(connection, 1, Parcel(key, chat, {}, NOW))
    first, other, none = (outgoing.claim(connection, 1, "w", NOW) for _ in range(3))
    assert first is not None
    assert other is not None
    assert (first.key, other.key, none) == ("1", "3", None)
    outgoing.mark_sent(connection, 1, first.id, "77")
    second = outgoing.claim(connection, 1, "w", NOW)
    assert second is not None
    assert second.key == "2"


def test_a_failed_message_waits_and_holds_its_chat(connection: Connection) -> None:
    """It is tried again at its time, and nothing overtakes it."""
    for key in ("1", "2"):
        outgoing.put(connection, 1, Parcel(key, "a", {"lines": [key]}, NOW))
    first = outgoing.claim(connection, 1, "w", NOW)
    assert first is not None
    outgoing.retry(connection, 1, first.id, LATER)
    assert outgoing.claim(connection, 1, "w", NOW) is None
    again = outgoing.claim(connection, 1, "w", LATER)
    assert again is not None
    assert (again.key, again.tries, again.payload) == ("1", 1, {"lines": ["1"]})


def test_what_can_never_be_sent_is_dropped(connection: Connection) -> None:
    """It makes way for the next."""
    for key in ("1", "2"):
        outgoing.put(connection, 1, Parcel(key, "a", {}, NOW))
    first = outgoing.claim(connection, 1, "w", NOW)
    assert first is not None
    outgoing.drop(connection, 1, first.id)
    second = outgoing.claim(connection, 1, "w", NOW)
    assert second is not None
    assert second.key == "2"
    assert outgoing.waiting(connection, 1) == {"dropped": 1, "waiting": 1}


def test_a_sender_that_died_sends_again(connection: Connection) -> None:
    """Rather twice than never: on its return at once, else after a while."""
    outgoing.put(connection, 1, Parcel("1", "a", {}, NOW))
    assert outgoing.claim(connection, 1, "w", NOW) is not None
    assert outgoing.claim(connection, 1, "v", NOW) is None
    outgoing.release(connection, 1, "w")
    assert outgoing.claim(connection, 1, "v", NOW) is not None
    assert outgoing.claim(connection, 1, "w", LATER) is not None


def test_what_stood_in_a_sent_message(connection: Connection) -> None:
    """An answer to it can be understood by the number that the service gave it."""
    outgoing.put(connection, 1, Parcel("1", "a", {"lines": ["x"]}, NOW))
    out = outgoing.claim(connection, 1, "w", NOW)
    assert out is not None
    outgoing.mark_sent(connection, 1, out.id, "77")
    assert outgoing.payload_of(connection, 1, "a", "77") == {"lines": ["x"]}
    assert outgoing.payload_of(connection, 1, "b", "77") is None


def test_a_reminder_is_new_once_a_day_it_is_due(connection: Connection) -> None:
    """Put off to another day, it is new again."""
    assert outgoing.first_time(connection, 1, "wean:14", date(2026, 3, 4), NOW)
    assert not outgoing.first_time(connection, 1, "wean:14", date(2026, 3, 4), LATER)
    assert outgoing.first_time(connection, 1, "wean:14", date(2026, 3, 6), LATER)


def test_a_button_says_its_words(connection: Connection) -> None:
    """It can be looked at any number of times until it is spent, and its bundle with it."""
    answers = ReplyTo("wean", "14", "wean:14")
    yes = buttons.offer(connection, 1, Button("b", "c", "Yes", "yes", reply_to=answers), NOW)
    no = buttons.offer(connection, 1, Button("b", "c", "No", "no"), NOW)
    other = buttons.offer(connection, 1, Button("b2", "c", "No", "no"), NOW)
    assert buttons.look(connection, 1, Press(yes, "c", "ann", NOW)) == Pressed("ok", "yes", "Yes", answers)
    buttons.spend(connection, 1, yes, NOW)
    assert [buttons.look(connection, 1, Press(key, "c", "ann", NOW)).state for key in (yes, no, other)] == ["used", "used", "ok"]


def test_a_button_is_for_its_chat_and_person(connection: Connection) -> None:
    """In another chat, or for another person, it is not theirs; on another farm nobody knows it."""
    key = buttons.offer(connection, 1, Button("b", "c", "Yes", "yes", person="ann"), NOW)
    assert len(key.encode()) <= 64
    assert buttons.look(connection, 1, Press(key, "c", "ann", NOW)).state == "ok"
    assert buttons.look(connection, 1, Press(key, "c", "bo", NOW)).state == "not_yours"
    assert buttons.look(connection, 1, Press(key, "d", "ann", NOW)).state == "elsewhere"
    assert buttons.look(connection, 1, Press("no such key", "c", "ann", NOW)) == Pressed("unknown")
    assert buttons.look(connection, add_farm(connection, "other"), Press(key, "c", "ann", NOW)).state == "unknown"


def test_a_button_grows_old(connection: Connection) -> None:
    """After a month the question is asked anew."""
    key = buttons.offer(connection, 1, Button("b", "c", "Yes", "yes"), NOW)
    assert buttons.look(connection, 1, Press(key, "c", "ann", NOW + timedelta(days=30))).state == "expired"


def test_of_all_farms_together(connection: Connection) -> None:
    """One queue: a chat's order holds whatever farms it speaks to, and each row says whose it is."""
    other = add_farm(connection, "other")
    taken(connection, (2, "a"))
    assert intake.take(connection, other, Came("bot", 3, "a", "{}"))
    assert intake.take(connection, other, Came("bot", 4, "b", "{}"))
    handed = [intake.next_update(connection, None, "w", NOW) for _ in range(3)]
    assert [(each.update_id, each.farm) if each else None for each in handed] == [(2, 1), (4, other), None]
    assert intake.held(connection) == {"w": 2}
    assert intake.waiting(connection, None) == {"pending": 3}
    intake.release(connection, None, "w")
    assert intake.held(connection) == {}
    outgoing.put(connection, 1, Parcel("k", "a", {}, NOW))
    outgoing.put(connection, other, Parcel("k", "a", {}, NOW))
    first = outgoing.claim(connection, None, "w", NOW)
    assert first is not None
    assert first.farm == 1
    assert outgoing.claim(connection, None, "w", NOW) is None
    outgoing.release(connection, None, "w")
    assert outgoing.claim(connection, None, "v", NOW) == first
    assert outgoing.waiting(connection, None) == {"waiting": 2}
