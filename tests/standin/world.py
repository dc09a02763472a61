"""What the chat service knows: people, chats, messages, files, and the updates that the bot has not confirmed yet."""

from __future__ import annotations

import threading
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from time import monotonic
from typing import Any

from tests.standin import checking, texts
from tests.standin.texts import Dropped, Refused

#: Update kinds that a bot gets only when it asks for them (Bot API, getUpdates, `allowed_updates`).
ON_REQUEST_ONLY = ("chat_member", "message_reaction", "message_reaction_count")
LONGEST_POLL = 50
DAY_ONE = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)


@dataclass(slots=True)
class Chat:
    """One chat, with the messages in it by their number."""

    about: dict[str, Any]
    members: list[dict[str, Any]] = field(default_factory=list)
    messages: dict[int, dict[str, Any]] = field(default_factory=dict)
    last_number: int = 0
    shut: tuple[int, str] | None = None
    moved_to: int | None = None


@dataclass(slots=True)
class StoredFile:
    """A file on the service's side."""

    name: str
    mime_type: str
    content: bytes


class World:
    """The service's state. Everything that reads or changes it holds `turn`, and tells it of changes that others wait for."""

    def __init__(self, *, token: str, username: str, reads_all: bool, now: datetime = DAY_ONE) -> None:
        self.turn = threading.Condition()
        self.now = now
        self.token = token
        self.me: dict[str, Any] = {
            "id": int(token.partition(":")[0]),
            "is_bot": True,
            "first_name": "Barn bot",
            "username": username,
            "can_join_groups": True,
            "can_read_all_group_messages": reads_all,
            "supports_inline_queries": False,
        }
        self.people: dict[str, dict[str, Any]] = {}
        self.chats: dict[int, Chat] = {}
        self.files: dict[str, StoredFile] = {}
        self.waiting: list[dict[str, Any]] = []
        self.queries: set[str] = set()
        self.commands: dict[str, list[dict[str, Any]]] = {}
        self.reactions: dict[tuple[int, int], list[dict[str, Any]]] = {}
        self.webhook_url = ""
        self.hook: tuple[str, str] | None = None  # the address and the secret, where updates are brought to the bot
        self.closing = False
        self._allowed: list[str] = []
        self._poll = 0
        self._update_ids = count(700_000_001)
        self._query_ids = count(4_000_001)
        self._file_ids = count(1)

    # chats and messages

    def chat(self, chat_id: object) -> Chat:
        """The chat that a call names; Refused when the bot can't write there."""
        chat = self.chats.get(chat_id) if isinstance(chat_id, int) else None
        if chat is None:
            raise Refused(texts.CHAT_NOT_FOUND)
        if chat.moved_to is not None:
            raise Refused(texts.UPGRADED, parameters={"migrate_to_chat_id": chat.moved_to})
        if chat.shut is not None:
            raise Refused(chat.shut, type=chat.about["type"])
        return chat

    def add_message(self, chat: Chat, sender: dict[str, Any], content: dict[str, Any]) -> dict[str, Any]:
        """A new message of that chat, with the chat's next number."""
        chat.last_number += 1
        message = {
            "message_id": chat.last_number,
            "date": self.timestamp(),
            "chat": chat.about,
            "from": sender,
            **content,
        }
        checking.check_object("Message", message)
        chat.messages[chat.last_number] = message
        self.turn.notify_all()
        return message

    def timestamp(self) -> int:
        """The service's clock, in whole seconds."""
        return int(self.now.timestamp())

    def pass_time(self, seconds: float) -> None:
        """Set the service's clock forward."""
        with self.turn:
            self.now += timedelta(seconds=seconds)

    def new_query_id(self) -> str:
        """The id of a press of a button; good until it is answered or expires."""
        query_id = str(next(self._query_ids))
        self.queries.add(query_id)
        return query_id

    def store_file(self, name: str, mime_type: str, content: bytes) -> dict[str, Any]:
        """Keep a file; its id and size as messages show them."""
        number = next(self._file_ids)
        file_id = f"file-{number}"
        self.files[file_id] = StoredFile(name, mime_type, content)
        return {"file_id": file_id, "file_unique_id": f"u{number}", "file_size": len(content)}

    # updates

    def queue(self, kind: str, body: dict[str, Any]) -> None:
        """Keep an update for the bot, if it wants that kind."""
        wanted = kind in self._allowed if self._allowed else kind not in ON_REQUEST_ONLY
        if wanted:
            update = checking.check_object("Update", {"update_id": next(self._update_ids), kind: body})
            self.waiting.append(update)
            self.turn.notify_all()

    def poll(self, *, offset: int = 0, limit: int = 100, timeout: int = 0, allowed: list[str] | None = None) -> list[dict[str, Any]]:
        """Unconfirmed updates from `offset` on, all before it confirmed and gone; waits up to `timeout` seconds for one.

        Refused when another poll begins meanwhile: the newer one wins.
        """
        with self.turn:
            if self.webhook_url:
                raise Refused(texts.WEBHOOK_IS_SET)
            self._poll += 1
            mine = self._poll
            self.turn.notify_all()
            if allowed is not None:
                self._allowed = allowed
            self._confirm(offset)
            ends = monotonic() + min(timeout, LONGEST_POLL)
            while not self.waiting and (left := ends - monotonic()) > 0:
                self.turn.wait(left)
                if self.closing:
                    raise Dropped
                if self._poll != mine:
                    raise Refused(texts.SECOND_POLLER)
            return self.waiting[: max(1, min(limit, 100))]

    def set_hook(self, url: str, secret: str, allowed: list[str] | None) -> None:
        """Bring updates to that address from now on; an empty one: no more. Nothing is brought to another machine."""
        self.webhook_url, self.hook = url, (url, secret) if url.startswith("http://127.0.0.1:") else None
        if allowed is not None:
            self._allowed = allowed
        self.turn.notify_all()

    def _confirm(self, offset: int) -> None:
        if offset < 0:
            self.waiting = self.waiting[offset:]
        else:
            self.waiting = [update for update in self.waiting if update["update_id"] >= offset]
        self.turn.notify_all()

    def close(self) -> None:
        """Let every waiting poll go."""
        with self.turn:
            self.closing = True
            self.turn.notify_all()
