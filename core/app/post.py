"""What shells need to lose nothing: messages are kept before they are confirmed, and answers until they are delivered."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import AbstractContextManager
from datetime import datetime
from typing import Any

from core.app.leaving import Leave, done_about_leaving
from core.app.letters import answer_of, letter_of, put
from core.app.members import LOOKS_ONLY, OWNER, OWNERS_ONLY, REFUSED, Knock, Wish, admitted, done_about_people, farms_of
from core.app.room import Room
from core.app.taking_away import handed_over
from core.notes.listen import Heard
from core.notes.reading import Message, ReplyTo
from core.notes.talk.about_note import NOTE
from core.reply import Choice, Reply
from core.store import buttons, intake, journal, outgoing, people, whose
from core.store.buttons import Button, Press, Pressed
from core.store.intake import Came, Update
from core.store.names import Connection
from core.store.outgoing import Outgoing
from core.store.whose import Hint

#: What tells whose a raw update is; None for one that says nothing.
HintOf = Callable[[str], Hint | None]

#: What a person reads when their message could not be taken in after all tries.
PARKED = Reply(("Something went wrong here with your last message. It is kept, but not in the book: please send it again in other words.",))

#: A stranger who goes on writing hears so often a day that this is no place for them: somebody may have mistyped the code.
REFUSALS_A_DAY = 3


class Post(Room):
    """A farm's inbox and outbox."""

    def begin_work(self, worker: str) -> None:
        """Take up again what this worker held when it last went down. To be called once, when it starts."""
        with self._begin() as connection:
            intake.release(connection, self._farm, worker)
            outgoing.release(connection, self._farm, worker)

    def take_updates(
        self, bot_id: str, updates: Iterable[tuple[int, str, str]], _hint: HintOf | None = None, _now: datetime | None = None
    ) -> int:
        """Keep updates (number, chat, raw JSON) as they came: once this returns they may be confirmed. How many were new.

        Whose they are is no question where there is one farm.
        """
        with self._begin() as connection:
            return sum(intake.take(connection, self._farm, Came(bot_id, number, chat, raw)) for number, chat, raw in updates)

    def next_update(self, worker: str, now: datetime) -> Update | None:
        """The next update to work on, in each chat's order; one that keeps killing the program is set aside instead."""
        while True:
            with self._begin() as connection:
                update = intake.next_update(connection, self._farm, worker, now)
                if update is None or update.tries < intake.TRIES:
                    return update
                self._park(connection, update, now)

    def hear_update(self, update: Update, message: Message, now: datetime, *, button: str | None = None) -> Heard:
        """Take a message in, put its answer into the outbox, spend the button that said it, and be done with the update: all or nothing."""
        with self._hearing.turn() as turn:
            heard = turn.hear(message)
            people.know_chat(turn.connection, self._farm, message.chat)
            key = f"reply:{message.chat}:{message.number}:{message.edit}"
            put(turn.connection, self._farm, answer_of(key, message.chat, heard, message.number), now)
            if button is not None:
                buttons.spend(turn.connection, self._farm, button, now)
            intake.mark(turn.connection, self._farm, update.id, "done")
        return heard

    def ask_update(self, update: Update, message: Message, now: datetime, *, button: str | None = None) -> Reply:
        """Answer somebody who may only ask: what would be recorded is refused, and not even the words are kept."""
        with self._hearing.turn() as turn:
            heard = turn.look(message)
            only_asks = heard.note.ask is None and all(fact.kind == "query" for fact in heard.note.facts) and bool(heard.note.facts)
            reply = heard.reply if only_asks else Reply((LOOKS_ONLY,))
            people.know_chat(turn.connection, self._farm, message.chat)
            put(turn.connection, self._farm, letter_of(_key(update), message.chat, reply, message.number, person=message.author), now)
            if button is not None:
                buttons.spend(turn.connection, self._farm, button, now)
            intake.mark(turn.connection, self._farm, update.id, "done")
        return reply

    def people_update(self, update: Update, wish: Wish, link: Callable[[str], str]) -> Reply:
        """Do what is wished about the farm's people, and tell what came of it."""
        with self._begin() as connection:
            reply = done_about_people(connection, self._farm, wish, link)
            self._put(connection, (_key(update), update.chat, reply), wish.at)
            intake.mark(connection, self._farm, update.id, "done")
        return reply

    def export_update(self, update: Update, who: people.Member, form: str, now: datetime, *, button: str | None = None) -> Reply:
        """Hand the book over in a form to who may have it, and refuse everybody else before any of it is on its way."""
        reply = handed_over(form, owner=who.role == OWNER)
        with self._begin() as connection:
            self._be_done(connection, update, reply, now, button)
        return reply

    def leaving_update(self, update: Update, who: people.Member, wish: Leave, *, button: str | None = None) -> Reply:
        """Do what an owner wishes about deleting the farm, and tell what came of it: with the letter that the last archive goes with, or not at all."""
        with self._begin() as connection:
            reply = done_about_leaving(connection, self._farm, wish) if who.role == OWNER else Reply((OWNERS_ONLY,))
            self._be_done(connection, update, reply, wish.at, button)
        return reply

    def farm_update(self, update: Update, who: people.Member, farm: str, now: datetime, *, group: bool) -> Reply:
        """Say which farm the chat means. One that was wanted is meant already: the update was laid before it."""
        with self._begin() as connection:
            names = tuple(name for _, name in whose.named(connection, who.account))
            reply = farms_of(names, self.name, farm, group=group)
            self._put(connection, (_key(update), update.chat, reply), now)
            intake.mark(connection, self._farm, update.id, "done")
        return reply

    def chat_moved(self, update: Update, to: str) -> None:
        """A group got another number: reminders go there from now on."""
        with self._begin() as connection:
            if update.chat in people.active_chats(connection, self._farm):
                people.mark_chat(connection, self._farm, update.chat, active=False)
                people.know_chat(connection, self._farm, to)
            whose.moved(connection, self._farm, update.chat, to)
            intake.mark(connection, self._farm, update.id, "done")

    def knows_chat(self, chat: str) -> bool:
        """Whether the chat belongs to the farm."""
        with self._begin() as connection:
            return people.knows_chat(connection, self._farm, chat)

    def answer_update(self, update: Update, reply: Reply | None, now: datetime, *, chat: str | None = None) -> None:
        """Be done with an update that is no note; with a reply for the outbox, if there is one."""
        with self._begin() as connection:
            if reply is not None:
                self._put(connection, (_key(update), chat or update.chat, reply), now)
            intake.mark(connection, self._farm, update.id, "done")

    def admit_update(self, update: Update, member: people.Member, code: str, now: datetime) -> Reply:
        """Let a stranger in who sends a code, or refuse them, a few times a day; the answer goes to the outbox. Neither code nor words are kept."""
        with self._begin() as connection:
            reply = admitted(connection, self._farm, Knock(member, update.chat, code), now)
            refused = [f"refused:{member.account}:{now.date()}:{time}" for time in range(REFUSALS_A_DAY)]
            keys = refused if reply.lines == (REFUSED,) else [_key(update)]
            any(self._put(connection, (key, update.chat, reply), now) for key in keys)
            intake.mark(connection, self._farm, update.id, "done")
            intake.forget(connection, self._farm, update.id)
        return reply

    def park(self, update: Update, now: datetime) -> None:
        """Set an update aside that keeps killing the program; the person is told."""
        with self._begin() as connection:
            self._park(connection, update, now)

    def failed(self, update: Update, now: datetime) -> bool:
        """Note that an update could not be worked off. After the third time it is set aside, the person is told, and this is True."""
        with self._begin() as connection:
            parked = intake.failed(connection, self._farm, update.id)
            if parked:
                self._park(connection, update, now)
        return parked

    def send(self, key: str, chat: str, reply: Reply, now: datetime) -> bool:
        """Put a message into the outbox; False if one of that key was ever there."""
        with self._begin() as connection:
            return self._put(connection, (key, chat, reply), now)

    def claim_outgoing(self, worker: str, now: datetime) -> Outgoing | None:
        """The next message to send: its `payload` holds `lines`, `choices` ({label, key, apart}), `attached` (files to make, as of `at`), `thumb` and perhaps `answers`."""
        with self._begin() as connection:
            return outgoing.claim(connection, self._farm, worker, now)

    def mark_sent(self, out: Outgoing, number: str | None = None) -> None:
        """The service has it, under that number."""
        with self._begin() as connection:
            outgoing.mark_sent(connection, self._farm, out.id, number)

    def retry_at(self, out: Outgoing, when: datetime) -> None:
        """It could not be sent; try again, not before that moment."""
        with self._begin() as connection:
            outgoing.retry(connection, self._farm, out.id, when)

    def drop(self, out: Outgoing, *, chat_gone: bool = False, moved_to: str | None = None) -> None:
        """It can never be sent; `chat_gone` where the person blocked the bot: then no reminders go there either, but to where it moved."""
        with self._begin() as connection:
            outgoing.drop(connection, self._farm, out.id)
            if chat_gone:
                people.mark_chat(connection, self._farm, out.chat, active=False)
            if moved_to is not None:
                people.know_chat(connection, self._farm, moved_to)
                whose.moved(connection, self._farm, out.chat, moved_to)

    def reply_to(self, chat: str, number: str, said: str = "") -> ReplyTo | None:
        """What the message of that number is about: the one chore that the bot reminded of, or the note that it answered or that a person sent there.

        A message of the bot's own whose number is not written down yet, since the bot died or is slow, is known by what it `said`.
        """
        with self._begin() as connection:
            payload = outgoing.payload_of(connection, self._farm, chat, number) or {}
            if not payload and said:
                payload = outgoing.payload_said(connection, self._farm, chat, said) or {}
            note = payload.get("note") or journal.note_sent(connection, self._farm, chat, number)
        chores = payload.get("chores", ())
        if note is not None:
            return ReplyTo(NOTE, None, str(note))
        return ReplyTo(**chores[0]) if len(chores) == 1 else None

    def press(self, key: str, chat: str, person: str, now: datetime) -> Pressed:
        """What a pressed button says. It is spent by `hear_update`, together with what it leads to."""
        with self._begin() as connection:
            return buttons.look(connection, self._farm, Press(key, chat, person, now))

    def buttons_left(self, chat: str, number: str) -> list[dict[str, Any]]:
        """The choices under the message of that number that can still be pressed: of several chores those that nobody answered."""
        with self._begin() as connection:
            choices = (outgoing.payload_of(connection, self._farm, chat, number) or {}).get("choices", [])
            fresh = buttons.unspent(connection, self._farm, [choice["key"] for choice in choices]) if choices else set()
        return [choice for choice in choices if choice["key"] in fresh]

    def offer(self, chat: str, choice: Choice, bundle: str, now: datetime) -> str:
        """The key of a new button that says the choice's words; buttons of one bundle are spent together."""
        with self._begin() as connection:
            return buttons.offer(connection, self._farm, Button(bundle, chat, choice.label, choice.says), now)

    def _begin(self) -> AbstractContextManager[Connection]:
        return self._engine.begin()

    def _park(self, connection: Connection, update: Update, now: datetime) -> None:
        intake.mark(connection, self._farm, update.id, "parked")
        self._put(connection, (_key(update), update.chat, PARKED), now)

    def _be_done(self, connection: Connection, update: Update, reply: Reply, now: datetime, button: str | None) -> None:
        """Put the answer into the outbox, spend the button that led to it, and be done with the update."""
        self._put(connection, (_key(update), update.chat, reply), now)
        if button is not None:
            buttons.spend(connection, self._farm, button, now)
        intake.mark(connection, self._farm, update.id, "done")

    def _put(self, connection: Connection, letter: tuple[str, str, Reply], now: datetime) -> bool:
        key, chat, reply = letter
        return put(connection, self._farm, letter_of(key, chat, reply), now)


def _key(update: Update) -> str:
    """The one answer to an update."""
    return f"update:{update.bot_id}:{update.update_id}"
