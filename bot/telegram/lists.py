"""Lists that come through the chat: fetched, kept by what they hold, looked at, and taken in when a button says so."""

from __future__ import annotations

import logging
from functools import partial
from pathlib import Path

from telegram import Bot
from telegram.error import BadRequest

from bot.settings import data_folder
from bot.tables.sheets import NoSheetsError, Sheet, is_list_name, sheets_of
from bot.telegram import words
from bot.telegram.counter import Counter
from bot.telegram.progress import Progress
from bot.telegram.updates import Document
from bot.telegram.updates import Update as Said
from core.app import Brought, Update
from core.app.bringing import GONE, PASTED, Listed, kept
from core.reply import Reply

log = logging.getLogger("haynote.telegram")

#: What the service gives out at most [bytes] [D: Bot API, getFile].
LARGEST = 20 * 1024 * 1024
#: From so many notes on a person is told how far the reading is.
LONG = 2000


class Lists:
    """What is done with lists at a desk."""

    def __init__(self, bot: Bot, counter: Counter) -> None:
        self._bot = bot
        self._counter = counter

    async def sent(self, kept_update: Update, said: Said, document: Document) -> None:
        """A file: what each of its rows would become, or why it is no list."""
        if not is_list_name(document.name):
            await self._say(kept_update, words.NO_LIST)
            return
        content = await self._fetched(document)
        if content is None:
            await self._say(kept_update, words.LIST_TOO_LARGE)
            return
        wanted = await self._counter.make(kept, self._folder(), document.name, content, said.text or "")
        await self._answer(kept_update, said, wanted, content)

    async def pasted(self, kept_update: Update, said: Said, text: str) -> None:
        """The same for a list that was typed or pasted."""
        content = text.encode()
        wanted = await self._counter.make(kept, self._folder(), PASTED, content)
        await self._answer(kept_update, said, wanted, content)

    async def pressed(self, kept_update: Update, said: Said, wanted: Listed, button: str) -> None:
        """An answer to what was asked about a list, or that it may be taken in."""
        try:
            content = await self._counter.make((self._folder() / Path(wanted.file).name).read_bytes)
        except OSError as error:
            log.warning("A list that was sent can't be read again: %s", error)
            await self._say(kept_update, GONE)
            return
        await self._answer(kept_update, said, wanted, content, button)

    def _folder(self) -> Path:
        return self._counter.app.upload_folder(data_folder() / "uploads")

    async def _fetched(self, document: Document) -> bytes | None:
        """What the file holds; None where the service does not give it out."""
        if document.size > LARGEST:
            return None
        try:
            told = await self._bot.get_file(document.file)
            return bytes(await told.download_as_bytearray())
        except BadRequest as error:
            log.info("A list can't be fetched: %s", error)
            return None

    async def _answer(self, kept_update: Update, said: Said, wanted: Listed, content: bytes, button: str | None = None) -> None:
        """Look at it, or take it in; a long one with word of how far it is."""
        try:
            sheets: tuple[Sheet, ...] = await self._counter.make(sheets_of, wanted.name, content)
        except NoSheetsError as error:
            await self._say(kept_update, f"I can't read {wanted.name}: {error}.")
            return
        brought = Brought(wanted.name, sheets, said.account, self._counter.now(), wanted.words)
        watch = Progress(self._bot, int(said.chat), partial(words.reading, wanted.name), LONG).watch()
        await self._counter.ask(self._counter.app.bring_update, kept_update, brought, wanted, button=button, progress=watch)

    async def _say(self, kept_update: Update, text: str) -> None:
        await self._counter.ask(self._counter.app.answer_update, kept_update, Reply((text,)), self._counter.now())
