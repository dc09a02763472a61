"""Delivering the outbox: claimed, sent, marked. What the service does not take is sent again later; rather twice than never."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable, Sequence
from datetime import datetime, timedelta
from functools import partial
from typing import Any, Concatenate, ParamSpec

from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, Message, ReplyParameters
from telegram.constants import ReactionEmoji
from telegram.error import BadRequest, ChatMigrated, Forbidden, RetryAfter, TelegramError

from bot.attachments import File, finished, gathered
from bot.telegram.counter import WORKER, Counter
from bot.telegram.outage import log_trouble
from bot.telegram.pace import Pace
from bot.telegram.parcels import LARGEST_FILE, LARGEST_PHOTO, SHOWN, Part, parts_of
from bot.telegram.patience import Bells, seconds_of
from core.app import Outgoing
from core.problem import Problem
from core.reply import Attached

log = logging.getLogger("haynote.telegram")

P = ParamSpec("P")

#: Without a sign the outbox is looked at so often [s]: letters may be waiting for their hour.
LOOK_EVERY_S = 15.0

#: What is said in place of a file.
CANT_MAKE = Problem(
    "no_file", "The file could not be made: something went wrong here.", remedy="Ask again, or on the machine: haynote say."
)
TOO_LARGE = Problem("no_file", "The file is too large for the chat.", remedy="Take it from the machine itself.")

#: Letters on their way at the same time. One chat's go one after the other: the outbox sees to that.
HANDS = 4

#: Buttons with labels up to so many letters share a row, so many in one.
SHORT_LABEL = 8
IN_A_ROW = 4

#: Labels up to so many letters are numbers; so many share a row.
NUMBER_LABEL = 2
IN_A_ROW_OF_NUMBERS = 5


class Sender:
    """The loop that delivers. What it knows of letters half sent is a kindness: a run that starts anew sends them whole."""

    def __init__(self, bot: Bot, counter: Counter, bells: Bells, pace: Pace) -> None:
        self._bot = bot
        self._counter = counter
        self._bells = bells
        self._pace = pace
        self._under_way: set[asyncio.Task[None]] = set()
        self._in_hand: set[int] = set()  # the letters that these deliver
        self._again: dict[int, datetime] = {}  # letter -> not before
        self._gone: dict[int, int] = {}  # letter -> how many of its pieces are out
        self._bare: set[int] = set()  # letters that the service refused as they were
        self._failures = 0

    async def run(self) -> None:
        """Deliver until the bell says that it is over and nothing is left that could go out now."""
        while True:
            if len(self._under_way) >= HANDS:
                await asyncio.wait(self._under_way, return_when=asyncio.FIRST_COMPLETED)
            pause = await self._once()
            if pause and self._bells.letters.over:
                if not self._under_way:
                    return
                await asyncio.wait(self._under_way, return_when=asyncio.FIRST_COMPLETED)
            elif pause:
                await self._bells.letters.wait(pause)

    async def _once(self) -> float:
        """Send one letter on its way; how long to wait before the next [s]."""
        try:
            out = await self._counter.ask(self._counter.house.claim_outgoing, WORKER, self._counter.now())
        except Exception as error:  # noqa: BLE001 - the book itself is in trouble: wait for better times
            log_trouble("Could not look into the outbox.", error)
            self._failures += 1
            return self._bells.patience(self._failures)
        self._failures = 0
        if (
            out is None or out.id in self._in_hand
        ):  # the clock went on, as after a laptop's sleep: its time is up, and it is still being sent
            return self._until_next()
        task = asyncio.create_task(self._deliver(out))
        self._under_way.add(task)
        self._in_hand.add(out.id)
        task.add_done_callback(partial(self._arrived, out.id))
        return 0.0

    def _arrived(self, letter: int, task: asyncio.Task[None]) -> None:
        """The chat's next letter may go."""
        self._under_way.discard(task)
        self._in_hand.discard(letter)
        self._bells.letters.ring()
        if not task.cancelled() and (error := task.exception()) is not None:
            log.error("A letter could not be sent; it will be tried again at the next start.", exc_info=error)

    def _until_next(self) -> float:
        """How long until a letter that was put off may go again [s]."""
        waits = [(when - self._counter.now()).total_seconds() for when in self._again.values()]
        return max(0.01, min([LOOK_EVERY_S, *waits]))

    async def _deliver(self, out: Outgoing) -> None:
        """Send a letter, and note what became of it."""
        self._again.pop(out.id, None)
        try:
            number = await self._send(out, int(out.chat))
        except RetryAfter as error:
            self._pace.complained(out.chat, seconds_of(error))
            await self._put_off(out, seconds_of(error))
        except ChatMigrated as error:
            await self._send(out, error.new_chat_id)
            await self._give_up(out, chat_gone=True, moved_to=str(error.new_chat_id))
        except Forbidden as error:
            log.info("A chat is closed to the bot (%s): nothing more goes there until somebody writes from it.", error)
            await self._give_up(out, chat_gone=True)
        except BadRequest as error:
            await self._refused(out, error)
        except TelegramError as error:
            log.warning("A letter could not be sent (%s). It will be sent again.", error)
            await self._put_off(out, self._bells.patience(out.tries + 1))
        else:
            self._gone.pop(out.id, None)
            await self._note(self._counter.house.mark_sent, out, number)

    async def _refused(self, out: Outgoing, error: BadRequest) -> None:
        """The service finds fault with the letter: it goes again as bare text, and if that is refused too, never."""
        if out.id in self._bare:
            log.error("A letter was refused and is given up: %s", error)
            await self._give_up(out, chat_gone="chat not found" in str(error).lower())
            return
        self._bare.add(out.id)
        await self._put_off(out, 0.0)

    async def _put_off(self, out: Outgoing, seconds: float) -> None:
        when = self._counter.now() + timedelta(seconds=seconds)
        self._again[out.id] = when
        await self._note(self._counter.house.retry_at, out, when)

    async def _give_up(self, out: Outgoing, *, chat_gone: bool, moved_to: str | None = None) -> None:
        self._gone.pop(out.id, None)
        self._bare.discard(out.id)
        await self._note(partial(self._counter.house.drop, chat_gone=chat_gone, moved_to=moved_to), out)

    async def _note(self, what: Callable[Concatenate[Outgoing, P], None], out: Outgoing, *more: P.args, **named: P.kwargs) -> None:
        """Write down what became of a letter, as often as it takes: forgetting it would send the letter twice."""
        failures = 0
        while True:
            try:
                await self._counter.ask(what, out, *more, **named)
            except Exception as error:  # noqa: BLE001 - the book itself is in trouble: wait for better times
                log_trouble("Could not note what became of a letter.", error)
                failures += 1
                await asyncio.sleep(self._bells.patience(failures))
            else:
                return

    async def _send(self, out: Outgoing, chat: int) -> str | None:
        """Send what is not out yet of a letter; the number of its last piece, None for a thumb up or a letter with nothing in it."""
        bare = out.id in self._bare
        if out.payload.get("thumb") and not bare and await self._thumb_up(out, chat):
            return None
        parts = parts_of(out.payload, bare=bare)
        number = None
        for place in range(self._gone.get(out.id, 0), len(parts)):
            await self._pace.turn(out.chat)
            answers = None if bare or place else _answers(out.payload["answers"])
            buttons = None if bare or place < len(parts) - 1 else keyboard(out.payload["choices"])
            send = await self._ready(parts[place], out, bare=bare)
            sent = await send(chat, reply_parameters=answers, reply_markup=buttons)
            number = str(sent.message_id)
            self._gone[out.id] = place + 1
        return number

    async def _thumb_up(self, out: Outgoing, chat: int) -> bool:
        """A thumb up on the message that is answered; False where there is none to put it on, or the chat takes no such: then words do."""
        if not out.payload["answers"].isdigit():
            return False
        await self._pace.turn(out.chat)
        try:
            return await self._bot.set_message_reaction(chat, int(out.payload["answers"]), ReactionEmoji.THUMBS_UP)
        except BadRequest as error:
            log.info("A thumb up was refused (%s): the answer goes in words.", error)
            return False

    async def _ready(self, part: Part, out: Outgoing, *, bare: bool) -> Callable[..., Awaitable[Message]]:
        """What sends a part once it is told where to. A file is made for it now; where that fails, the words say so."""
        if part.attached is None:
            return partial(self._bot.send_message, text=part.text)
        file = await self._made(out, part.attached, datetime.fromisoformat(out.payload["at"]))
        if isinstance(file, Problem):
            return partial(self._bot.send_message, text="\n".join((part.text, f"{file.text} {file.remedy}".strip())).strip())
        if part.attached.what in SHOWN and len(file.content) <= LARGEST_PHOTO and not bare:
            return partial(self._bot.send_photo, photo=file.content, filename=file.name, caption=part.text)
        return partial(self._bot.send_document, document=file.content, filename=file.name, caption=part.text)

    async def _made(self, out: Outgoing, attached: Attached, at: datetime) -> File | Problem:
        """The file of a letter, as of that time; drawn in a thread of its own, so that neither the chat nor the book waits for it."""
        try:
            held = await self._counter.ask(gathered, self._counter.of(out.farm).app, attached, at)
            file = held if isinstance(held, Problem) else await self._counter.make(self._counter.house.reckon, finished, attached, held)
        except Exception:  # a mistake of ours in one picture must not stop the letters behind it
            log.exception("The file %s could not be made.", attached.name)
            return CANT_MAKE
        return TOO_LARGE if isinstance(file, File) and len(file.content) > LARGEST_FILE else file


def _answers(number: str) -> ReplyParameters | None:
    """The message that is answered; None where it was a button. It may be gone by now."""
    return ReplyParameters(int(number), allow_sending_without_reply=True) if number.isdigit() else None


def keyboard(choices: Sequence[dict[str, Any]]) -> InlineKeyboardMarkup | None:
    """The choices as buttons: short ones side by side, others below each other, those that stand apart in the last row.

    A button carries a key that tells nobody anything.
    """
    apart = [choice for choice in choices if choice.get("apart")]
    rest = [choice for choice in choices if not choice.get("apart")]
    longest = max((len(choice["label"]) for choice in rest), default=0)
    across = IN_A_ROW_OF_NUMBERS if longest <= NUMBER_LABEL else IN_A_ROW if longest <= SHORT_LABEL else 1
    rows = [rest[at : at + across] for at in range(0, len(rest), across)] + ([apart] if apart else [])
    buttons = [[InlineKeyboardButton(choice["label"], callback_data=choice["key"]) for choice in row] for row in rows]
    return InlineKeyboardMarkup(buttons) if buttons else None
