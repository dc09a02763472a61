"""What is done with what people send: one table, read from the top; the first row that fits an update handles it."""

from __future__ import annotations

import logging
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from functools import partial

from telegram import Bot
from telegram.error import BadRequest, TelegramError

from bot.pictures.maker import photo_folder
from bot.telegram import words
from bot.telegram.counter import Counter
from bot.telegram.leaving import leave
from bot.telegram.lists import Lists
from bot.telegram.sender import keyboard
from bot.telegram.updates import Update
from bot.telegram.voices import Voices
from core.app import Member, Message, Sent, Wish
from core.app import Update as Kept
from core.app.bringing import Listed, is_list, listed
from core.app.leaving import wanted_leaving
from core.app.members import LOOKS_ONLY
from core.app.speaking import Spoken, spoken
from core.app.taking_away import ONLY_IN_PRIVATE, wanted_form
from core.reply import Reply

log = logging.getLogger("haynote.telegram")


@dataclass(frozen=True, slots=True)
class Act:
    """An update, with what is known of the person. `kept` is its row in the inbox."""

    kept: Kept
    update: Update
    member: Member | None

    @property
    def text(self) -> str:
        """What was typed; empty where nothing was."""
        return self.update.text or ""


class Desk:
    """Where updates are handled: the bot's name, its voice for what can't wait, and the book."""

    def __init__(self, bot: Bot, counter: Counter, voices: Voices) -> None:
        self.bot = bot
        self.counter = counter
        self.lists = Lists(bot, counter)
        self.voices = voices
        self._album: str | None = None

    async def handle(self, kept: Kept, update: Update | None) -> None:
        """Do what the update asks for and be done with it."""
        if update is None:
            await self._done(kept, None)
            return
        member = await self.counter.ask(self.counter.app.member, update.account)
        act = Act(kept, update, member)
        does = next(handler.does for handler in HANDLERS if handler.fits(act))
        await does(self, act)

    # what the rows of the table do

    async def admit(self, act: Act) -> None:
        """Let a stranger in who sends the set-up code, refuse every other."""
        code = words.code(act.text)
        who = Member(act.update.account, act.update.name, "")
        await self.counter.ask(self.counter.app.admit_update, act.kept, who, code, self.counter.now())

    async def turn_away(self, act: Act) -> None:
        """A stranger pressed a button: only the button's own window tells them."""
        await self._answer_press(act, words.NOT_YOURS)
        await self._done(act.kept, None)

    async def press(self, act: Act) -> None:
        """The button's words are heard as if the person had typed them."""
        number, key = act.update.press or ("", "")
        app, now = self.counter.app, self.counter.now()
        pressed = await self.counter.ask(app.press, key, act.update.chat, act.update.account, now)
        if pressed.state != "ok":
            await self._answer_press(act, words.PRESSES[pressed.state])
            await self._done(act.kept, None)
            return
        await self._answer_press(act, pressed.label)
        if (wanted := wanted_form(pressed.says)) is not None:
            await self._export(act, wanted, button=key)
            await self._take_buttons_away(act)
            return
        if wanted_leaving(pressed.says) is not None:
            await self.leave(act, pressed.says, key)
            await self._take_buttons_away(act)
            return
        if (wanted_list := listed(pressed.says)) is not None:
            await self._list_pressed(act, wanted_list, key)
            return
        if (waits := spoken(pressed.says)) is not None:
            await self._spoken_pressed(act, waits, key)
            return
        said = Message(pressed.says, now, act.update.account, act.update.chat, f"press:{number}", reply_to=pressed.reply_to)
        await self._hear(act, said, button=key)
        await self._take_buttons_away(act)

    async def _list_pressed(self, act: Act, wanted: Listed, button: str) -> None:
        """A button under a list that was looked at."""
        if looks(act):
            await self._done(act.kept, Reply((LOOKS_ONLY,)))
            return
        await self.lists.pressed(act.kept, act.update, wanted, button)
        await self._take_buttons_away(act)

    async def _spoken_pressed(self, act: Act, waits: Spoken, button: str) -> None:
        """A button under a spoken note that was shown."""
        if looks(act):
            await self._done(act.kept, Reply((LOOKS_ONLY,)))
            return
        await self.voices.pressed(self.counter, act.kept, act.update, waits, button)
        await self._take_buttons_away(act)

    async def listen(self, act: Act) -> None:
        """A recording: what was said in it, and what it becomes."""
        if act.update.sound is not None:
            await self.voices.sent(self.counter, act.kept, act.update, asks_only=looks(act))

    async def bring(self, act: Act) -> None:
        """A file that may be a list."""
        if looks(act):
            await self._done(act.kept, Reply((LOOKS_ONLY,)))
        elif act.update.document is not None:
            await self.lists.sent(act.kept, act.update, act.update.document)

    async def bring_pasted(self, act: Act) -> None:
        """A list typed or pasted."""
        await self.lists.pasted(act.kept, act.update, words.meant(act.text, self.bot.username))

    async def hear(self, act: Act) -> None:
        """A note, a question, an answer, or what became of one by an edit."""
        update, app = act.update, self.counter.app
        text = words.meant(act.text, self.bot.username)
        answers = await self.counter.ask(app.reply_to, update.chat, update.answers, update.answered) if update.answers else None
        said = Message(text, update.at, update.account, update.chat, update.number, update.edit, answers)
        await self._hear(act, said)

    async def _hear(self, act: Act, said: Message, button: str | None = None) -> None:
        """A looker is answered, everybody else heard."""
        hear = self.counter.app.ask_update if looks(act) else self.counter.app.hear_update
        await self.counter.ask(hear, act.kept, said, self.counter.now(), button=button)

    async def keep(self, act: Act) -> None:
        """A photo: it joins the card of the animal that its words name; what else they say is heard."""
        update, app = act.update, self.counter.app
        content, ending = b"", (update.photo or ("", ""))[1]
        try:
            told = await self.bot.get_file((update.photo or ("", ""))[0])
            content = bytes(await told.download_as_bytearray())
        except BadRequest as error:
            log.info("A photo can't be fetched: %s", error)
            await self._done(act.kept, Reply((words.PHOTO_TOO_LARGE,)))
            return
        said = Message(words.meant(act.text, self.bot.username), update.at, update.account, update.chat, update.number, update.edit)
        sent = Sent(content, ending, update.album)
        await self.counter.ask(app.photo_update, act.kept, said, sent, self.counter.now(), photo_folder(app))

    async def tell_farm(self, act: Act) -> None:
        """Which farm the chat means. The door has heard already which one is wanted."""
        who = act.member or Member(act.update.account, act.update.name, "")
        wanted = words.farm(act.text) or ""
        await self.counter.ask(self.counter.app.farm_update, act.kept, who, wanted, self.counter.now(), group=act.update.group)

    async def manage(self, act: Act) -> None:
        """Something about the farm's people. A code is told in private only."""
        what, about = words.wish(act.text) or ("people", "")
        if what == "invite" and act.update.group:
            await self._done(act.kept, Reply((words.IN_PRIVATE,)))
            return
        who = act.member or Member(act.update.account, act.update.name, "")
        link = partial(words.link, self.bot.username)
        await self.counter.ask(self.counter.app.people_update, act.kept, Wish(who, self.counter.now(), what, about), link)

    async def hand_over(self, act: Act) -> None:
        """The whole book, in a form."""
        await self._export(act, form(act) or "")

    async def _export(self, act: Act, wanted: str, button: str | None = None) -> None:
        """The book goes to an owner, and only in a chat of their own."""
        if act.update.group:
            await self._done(act.kept, Reply((ONLY_IN_PRIVATE,)))
            return
        who = act.member or Member(act.update.account, act.update.name, "")
        await self.counter.ask(self.counter.app.export_update, act.kept, who, wanted, self.counter.now(), button=button)

    async def leave(self, act: Act, pressed: str = "", button: str | None = None) -> None:
        """The farm is to be deleted, or to stay. That is an owner's to say, in a chat of their own: the last archive goes with the answer."""
        if act.update.group:
            await self._done(act.kept, Reply((ONLY_IN_PRIVATE,)))
            return
        who, what = act.member or Member(act.update.account, act.update.name, ""), wanted_leaving(pressed) or leaving(act)
        await leave(self.counter, act.kept, who, what or "ask", button)

    async def move(self, act: Act) -> None:
        """The group goes on under another number."""
        await self.counter.ask(self.counter.app.chat_moved, act.kept, act.update.moved_to or act.update.chat)

    async def only_text(self, act: Act) -> None:
        """Something that is no text: say so, once for several pictures sent together."""
        album, before = act.update.album, self._album
        self._album = album
        known = album is not None and album == before
        await self._done(act.kept, None if known else Reply((words.ONLY_TEXT,)))

    async def pass_over(self, act: Act) -> None:
        """Nothing that wants an answer."""
        await self._done(act.kept, None)

    async def _done(self, kept: Kept, reply: Reply | None) -> None:
        await self.counter.ask(self.counter.app.answer_update, kept, reply, self.counter.now())

    async def _answer_press(self, act: Act, text: str) -> None:
        """End the waiting sign on the button. Too late is no harm: the press itself is kept."""
        number, _ = act.update.press or ("", "")
        await self._try(self.bot.answer_callback_query(number, text[: words.TOAST_LETTERS]), "answer a button")

    async def _take_buttons_away(self, act: Act) -> None:
        """A question that is answered needs no buttons any more; what else its letter asks keeps its own."""
        left = await self.counter.ask(self.counter.app.buttons_left, act.update.chat, act.update.number)
        markup = self.bot.edit_message_reply_markup(int(act.update.chat), int(act.update.number), reply_markup=keyboard(left))
        await self._try(markup, "take buttons away")

    async def _try(self, call: Awaitable[object], what: str) -> None:
        """Do what is pleasant but not needed."""
        try:
            await call
        except TelegramError as error:
            log.info("Could not %s: %s", what, error)


@dataclass(frozen=True, slots=True)
class Handler:
    """A row of the table: which updates it is for, and what is done with them."""

    what: str
    fits: Callable[[Act], bool]
    does: Callable[[Desk, Act], Awaitable[None]]


def wishes(act: Act) -> bool:
    """Whether it is about who is on the farm; a command is the same words with a stroke before them."""
    return words.wish(act.text) is not None


def form(act: Act) -> str | None:
    """The form in which the whole book is wanted; None where something else is."""
    return wanted_form(words.addressed(act.text))


def leaving(act: Act) -> str | None:
    """What is wished about deleting the farm; None where something else is."""
    return wanted_leaving(words.addressed(act.text))


def pastes(act: Act) -> bool:
    """Whether it is a list of animals, from who may write, and nothing that changes an earlier message."""
    update = act.update
    return update.edit == 0 and update.sent is None and not looks(act) and is_list(words.addressed(act.text))


def speaks(act: Act) -> bool:
    """Whether it is a recording that says something by itself: words under it are the note."""
    return act.update.sound is not None and act.update.edit == 0 and not act.text.strip()


def looks(act: Act) -> bool:
    """Whether it is from somebody who may only ask."""
    return act.member is not None and act.member.role == words.LOOKER


HANDLERS = (
    Handler("a group that got another number", lambda act: act.update.moved_to is not None, Desk.move),
    Handler("a stranger's button", lambda act: act.member is None and act.update.press is not None, Desk.turn_away),
    Handler("a stranger", lambda act: act.member is None, Desk.admit),
    Handler("a button", lambda act: act.update.press is not None, Desk.press),
    Handler("another farm of one's own", lambda act: act.update.edit == 0 and words.farm(act.text) is not None, Desk.tell_farm),
    Handler("something about the farm's people", lambda act: act.update.edit == 0 and wishes(act), Desk.manage),
    Handler("the whole book is wanted", lambda act: act.update.edit == 0 and form(act) is not None, Desk.hand_over),
    Handler("the farm is to be deleted, or to stay", lambda act: act.update.edit == 0 and leaving(act) is not None, Desk.leave),
    Handler("a photo from who may write", lambda act: act.update.photo is not None and not looks(act), Desk.keep),
    Handler("a recording, with no words under it", speaks, Desk.listen),
    Handler("a file that may be a list", lambda act: act.update.document is not None and act.update.edit == 0, Desk.bring),
    Handler("a list, typed or pasted", pastes, Desk.bring_pasted),
    Handler("text, or the words under a picture", lambda act: bool(act.text.strip()), Desk.hear),
    Handler("an edit of something else", lambda act: act.update.edit > 0, Desk.pass_over),
    Handler("a picture, a film, a place, ...", lambda act: act.update.sent is not None, Desk.only_text),
    Handler("anything else", lambda _: True, Desk.pass_over),
)
