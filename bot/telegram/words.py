"""What this shell says itself, and how it takes what was typed: commands are the same words with a stroke before them."""

from __future__ import annotations

import re

from bot.papers.qr import note_of

ONLY_TEXT = "I can only read text so far. Please type it as a note."
SOUND_GONE = "I can't fetch that recording: it is too large, or gone. Send it as a voice note, or type it."
PHOTO_TOO_LARGE = "I can't fetch that photo: it is too large, or gone. Send it as a photo, not as a file, with the tag under it."
NO_LIST = "I can't read that file. I take a list of animals, litters or weights as a CSV file or a workbook (.xlsx), and photos."
LIST_TOO_LARGE = (
    "I can't fetch that file: it is larger than 20 MB, or gone. Send a part of it, or ask who keeps this bot to run “haynote import”."
)
IN_PRIVATE = "Ask me that in our own chat: whoever reads the link could use it."
NOT_YOURS = "This button is for the people of the farm."

#: What the window over a pressed button says where the press leads nowhere.
PRESSES = {
    "used": "That was answered already.",
    "expired": "That question is too old now. Please type your answer as a note.",
    "unknown": "I don't know that button any more. Please type your answer as a note.",
    "elsewhere": NOT_YOURS,
    "not_yours": "This button is for the person who was answered. Reply to the message in words instead.",
}

#: The role of a person who may ask, and write nothing.
LOOKER = "looker"

#: The longest text of that window (Bot API, answerCallbackQuery).
TOAST_LETTERS = 200

#: The menu: command, what it shows.
COMMANDS = (
    ("due", "What is due"),
    ("digest", "The week at a glance"),
    ("keep", "Who to keep, sell or cull, and why"),
    ("people", "Who is on the farm; “invite helper” brings one in"),
    ("help", "What you can say"),
)

#: Commands whose word is not the note's own.
MEANS = {"start": "help"}

COMMAND = re.compile(r"/([A-Za-z0-9_]+)(?:@\w+)?")


def meant(text: str, username: str) -> str:
    """The note in a message: a command is its word, and the bot's own name, by which a group speaks to it, is no part of a note."""
    if found := COMMAND.match(text):
        word = found[1].lower()
        if word == "start" and (note := note_of(text[found.end() :].strip())):
            return note
        return f"{MEANS.get(word, word)}{text[found.end() :]}".strip()
    mention = re.compile(rf"(?<!\w)@{re.escape(username)}\b[,:]?", re.IGNORECASE)
    return mention.sub("", text).strip() if mention.search(text) else text


_TO_THE_BOT = re.compile(r"^@\w+[\s,:]+")
_PEOPLE = re.compile(r"(?:people|who is on the farm)\W*", re.IGNORECASE)
_INVITE = re.compile(r"invite(?:\s+(?:an?\s+|another\s+)?(\w+))?\W*", re.IGNORECASE)
_REMOVE = re.compile(r"remove\s+(\D[^\n,]*?)\s+from (?:the |our )?people\W*", re.IGNORECASE)
_LEAVE = re.compile(r"leave the farm\W*", re.IGNORECASE)


def addressed(text: str) -> str:
    """What is said to the bot: a command without its stroke, words without the name that they are addressed to."""
    return _TO_THE_BOT.sub("", COMMAND.sub(lambda found: found[1], text, count=1) if text.startswith("/") else text).strip()


def wish(text: str) -> tuple[str, str] | None:
    """What is wished about the farm's people (what, about whom); None where the words are something else."""
    said = addressed(text)
    if _PEOPLE.fullmatch(said):
        return "people", ""
    if _LEAVE.fullmatch(said):
        return "leave", ""
    if found := _INVITE.fullmatch(said):
        return "invite", (found[1] or "").lower()
    found = _REMOVE.fullmatch(said)
    return ("remove", found[1]) if found else None


_FARM = re.compile(r"/farm(?:@\w+)?(?:\s+(.*))?", re.IGNORECASE | re.DOTALL)


def farm(text: str) -> str | None:
    """The farm that a chat is wanted to mean, empty where none is named; None where the words are something else."""
    found = _FARM.fullmatch(text.strip())
    return (found[1] or "").strip() if found else None


def listening(done: float, of: float) -> str:
    """How far the listening to a recording is."""
    return f"Listening: {done:.0f} of {of:.0f} s." if done < of else f"Heard all {of:.0f} s."


def reading(name: str, done: float, of: float) -> str:
    """How far the reading of a list is."""
    return f"Reading {name}: {done:,} of {of:,} notes." if done < of else f"{name}: all {of:,} notes read."


def link(username: str, code: str) -> str:
    """An address that opens the chat with the bot and sends the code."""
    return f"https://t.me/{username}?start={code}"


def code(text: str) -> str:
    """The set-up code in what a stranger sent: alone, or after /start as a link sends it."""
    return COMMAND.sub("", text, count=1).strip() if text.startswith("/start") else text.strip()
