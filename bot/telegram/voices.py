"""Voice notes: fetched, kept while their notes wait, listened to one at a time, answered, and let go."""

from __future__ import annotations

import asyncio
import logging
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from datetime import datetime, timedelta
from pathlib import Path

from telegram import Bot
from telegram.constants import ChatAction
from telegram.error import BadRequest, TelegramError

from bot.settings import data_folder, settings
from bot.telegram import words
from bot.telegram.counter import Counter
from bot.telegram.progress import Progress
from bot.telegram.updates import Sound
from bot.telegram.updates import Update as Said
from bot.voice import ear as voice
from bot.voice.ear import TOO_LONG, Ear, Sounds
from core.app import Message, Update
from core.app.speaking import Spoken
from core.problem import Problem
from core.reply import Reply

log = logging.getLogger("haynote.telegram")

#: A note is no longer than this [s], and no larger than this [bytes].
LONGEST_S = 120
LARGEST = 10 * 1024 * 1024
#: After that the buttons under a note are too old to be pressed.
BUTTONS_LAST = timedelta(days=30)


class Voices:
    """Who listens, for all farms of a server."""

    def __init__(self, bot: Bot) -> None:
        """Nothing is loaded before somebody speaks."""
        self._bot = bot
        self._ear: Ear | Problem | None = None
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="ear")

    async def sent(self, counter: Counter, kept: Update, said: Said, *, asks_only: bool) -> None:
        """A recording: what was heard, and what it becomes; or why nothing can be heard. `asks_only`: from somebody who may record nothing."""
        sound = said.sound or Sound("", 0, 0)
        found = await self._heard(counter, said, sound)
        if isinstance(found, Reply):
            await counter.ask(counter.app.answer_update, kept, found, counter.now())
            return
        sounds, file = found
        message = Message(sounds.ears.first if asks_only else "", said.at, said.account, said.chat, said.number)
        if asks_only:
            await counter.ask(counter.app.ask_update, kept, message, counter.now())
            waits = False
        else:
            waits = await counter.ask(counter.app.spoken_update, kept, sounds.ears, message, counter.now(), file.name)
        if not waits:
            let_go(file)

    async def pressed(self, counter: Counter, kept: Update, said: Said, waits: Spoken, button: str) -> None:
        """A button under a note that was shown. What is put right by typing needs no recording any more either."""
        message = Message("", counter.now(), said.account, said.chat, said.number)
        await counter.ask(counter.app.spoken_pressed, kept, waits, message, button)
        let_go(folder(counter) / Path(waits.file).name)

    def close(self) -> None:
        """No more listening."""
        self._thread.shutdown(wait=False, cancel_futures=True)
        if self._ear is not None and not isinstance(self._ear, Problem):
            self._ear.close()

    async def _heard(self, counter: Counter, said: Said, sound: Sound) -> tuple[Sounds, Path] | Reply:
        """What was heard, and the recording's file; what is answered where nothing can be."""
        self._ear = self._ear or voice.ear()
        if isinstance(self._ear, Problem):
            return refused(self._ear)
        if sound.seconds > LONGEST_S or sound.size > LARGEST:
            return refused(TOO_LONG)
        try:
            told = await self._bot.get_file(sound.file)
            content = bytes(await told.download_as_bytearray())
        except BadRequest as error:
            log.info("A recording can't be fetched: %s", error)
            return Reply((words.SOUND_GONE,))
        await self._signal(said)
        await counter.make(forget_old, folder(counter), counter.now())
        file = await counter.make(counter.app.keep_voice, folder(counter), content)
        watch = Progress(self._bot, int(said.chat), words.listening, voice.LONG_S).watch()
        primer = await counter.ask(counter.app.primer)
        found = await asyncio.get_running_loop().run_in_executor(self._thread, self._ear.hear, file, primer, watch)
        if isinstance(found, Problem):
            let_go(file)
            return refused(found)
        return found, file

    async def _signal(self, said: Said) -> None:
        """Show that something is done; pleasant, not needed."""
        with suppress(TelegramError):
            await self._bot.send_chat_action(int(said.chat), ChatAction.TYPING)


def folder(counter: Counter) -> Path:
    """Where recordings lie while their notes wait."""
    return counter.app.voice_folder(data_folder() / "voices")


def forget_old(place: Path, now: datetime) -> None:
    """Delete the recordings of notes that nobody answered as long as their buttons lasted."""
    for file in place.glob("*.sound"):
        if now.timestamp() - file.stat().st_mtime > BUTTONS_LAST.total_seconds():
            let_go(file)


def let_go(file: Path) -> None:
    """Delete a recording whose note is saved or let go, unless the operator keeps them."""
    said = settings()
    if file.name and (isinstance(said, Problem) or not said.keep_voice):
        with suppress(OSError):
            file.unlink(missing_ok=True)


def refused(problem: Problem) -> Reply:
    """A problem, as one line."""
    return Reply((f"{problem.text} {problem.remedy}".strip(),))
