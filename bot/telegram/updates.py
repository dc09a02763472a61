"""What an update says, in the few words that the rest of the shell needs: who, where, and what they did.

An update is kept as the service's own JSON and read again from there, so that what is understood of it may grow later.
"""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

#: The kinds of update that are asked for. The service remembers the list, so it is named every time.
ALLOWED = ("message", "edited_message", "callback_query")

#: What a person can send that is no text. Anything else is the service's own talk (who joined, a pinned message) and is passed over.
SENT = (
    "animation",
    "audio",
    "contact",
    "dice",
    "document",
    "location",
    "photo",
    "poll",
    "sticker",
    "story",
    "venue",
    "video",
    "video_note",
    "voice",
)

#: Media types of pictures that are sent as files, and how such a file's name ends.
PICTURES = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp"}

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Document:
    """A file: what its sender calls it, its name with the service, and how large it is [bytes]."""

    name: str
    file: str
    size: int


@dataclass(frozen=True, slots=True)
class Sound:
    """A recording: its name with the service, how long it is [s] where that is told, and how large [bytes]."""

    file: str
    seconds: float
    size: int


@dataclass(frozen=True, slots=True)
class Update:
    """One act of a person.

    account   the person, as the farm's members are named: `telegram:1001`
    chat      where, as the service numbers it
    number    the message, in that chat
    edit      0 as first sent, else the update's own number: it grows with each edit, also where two fall into one second
    text      what was typed (or stands under a picture), None where there is none
    album     what several pictures sent at once have in common
    answers   the number of the message that this one answers
    answered  what that message says, where a bot wrote it
    sent      what kind of thing was sent where it is no text
    moved_to  the number that a group has from now on, where it got another
    photo     (the file's name with the service, its ending) of a photo, or of a picture sent as a file
    document  a file that is no picture
    sound     a voice note, or a recording sent as a file
    press     (the press's own number, the button's key) where a button was pressed
    """

    account: str
    name: str
    chat: str
    number: str
    at: datetime
    group: bool = False
    edit: int = 0
    text: str | None = None
    album: str | None = None
    answers: str | None = None
    answered: str = ""
    sent: str | None = None
    moved_to: str | None = None
    press: tuple[str, str] | None = None
    photo: tuple[str, str] | None = None
    document: Document | None = None
    sound: Sound | None = None


def chat_of(body: Json) -> str:
    """The chat that an update belongs to; the person where there is no chat. Updates of one chat are worked off in order."""
    for kind in ALLOWED:
        if kind in body:
            about = body[kind].get("message", body[kind])
            return str(about.get("chat", body[kind].get("from", {})).get("id", ""))
    return ""


def read(raw: str) -> Update | None:
    """What the update says; None for one that no person made, or of a kind that nobody asked for."""
    body: Json = json.loads(raw)
    if "callback_query" in body:
        return _pressed(body["callback_query"])
    message = body.get("message") or body.get("edited_message")
    if message is None or "from" not in message or message["from"].get("is_bot"):
        return None
    return _said(message, edit=body["update_id"] if "edited_message" in body else 0)


def _said(message: Json, *, edit: int) -> Update | None:
    """A message, or what became of it."""
    text = message.get("text", message.get("caption"))
    sent = next((kind for kind in SENT if kind in message), None)
    moved = message.get("migrate_to_chat_id")
    if text is None and sent is None and moved is None:
        return None
    before = message.get("reply_to_message", {})
    answers = before.get("message_id")
    return Update(
        account=account(message["from"]),
        name=name(message["from"]),
        chat=str(message["chat"]["id"]),
        number=str(message["message_id"]),
        at=datetime.fromtimestamp(message["date"], UTC),
        group=message["chat"]["type"] != "private",
        edit=edit,
        text=text,
        album=message.get("media_group_id"),
        answers=None if answers is None else str(answers),
        answered=str(before.get("text", before.get("caption", ""))) if before.get("from", {}).get("is_bot") else "",
        sent=sent,
        photo=_photo(message),
        document=_document(message),
        sound=_sound(message),
        moved_to=None if moved is None else str(moved),
    )


def _photo(message: Json) -> tuple[str, str] | None:
    """Where the photo of a message is fetched, the largest that there is of it, and what it is."""
    sizes = [size for size in message.get("photo", ()) if "file_id" in size]
    if sizes:
        return str(max(sizes, key=lambda size: int(size.get("width", 0)))["file_id"]), "jpg"
    document = message.get("document", {})
    ending = PICTURES.get(str(document.get("mime_type", "")))
    return (str(document["file_id"]), ending) if ending and "file_id" in document else None


def _document(message: Json) -> Document | None:
    """The file of a message, where it is no picture and nothing that plays."""
    told = message.get("document", {})
    if "file_id" not in told or "animation" in message or _plays(told) or str(told.get("mime_type", "")) in PICTURES:
        return None
    return Document(str(told.get("file_name") or "list"), str(told["file_id"]), int(told.get("file_size", 0)))


def _sound(message: Json) -> Sound | None:
    """The recording of a message: spoken into the chat, or a file that says it is one."""
    told = message.get("voice") or message.get("audio") or message.get("document", {})
    if "file_id" not in told or ("document" in message and not _plays(told)):
        return None
    return Sound(str(told["file_id"]), float(told.get("duration", 0)), int(told.get("file_size", 0)))


def is_sound(raw: str) -> bool:
    """Whether the update brings a recording; one that nobody can read brings none."""
    with suppress(ValueError, KeyError, TypeError, AttributeError):
        said = read(raw)
        return said is not None and said.sound is not None
    return False


def _plays(told: Json) -> bool:
    return str(told.get("mime_type", "")).startswith("audio/")


def _pressed(query: Json) -> Update | None:
    """A button. One under a message so old that the service no longer shows it has no chat, and can't be answered there."""
    message = query.get("message")
    if message is None or "data" not in query:
        return None
    return Update(
        account=account(query["from"]),
        name=name(query["from"]),
        chat=str(message["chat"]["id"]),
        number=str(message["message_id"]),
        at=datetime.fromtimestamp(message["date"], UTC) if message.get("date") else datetime.fromtimestamp(0, UTC),
        group=message["chat"]["type"] != "private",
        press=(query["id"], query["data"]),
    )


def account(user: Json) -> str:
    """A person as the farm's members are named."""
    return f"telegram:{user['id']}"


def name(user: Json) -> str:
    """What a person calls themselves."""
    return " ".join(part for part in (user.get("first_name"), user.get("last_name")) if part) or user.get("username") or "somebody"
