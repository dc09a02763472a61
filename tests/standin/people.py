"""The people's side: what persons do in their chat app, and what of it reaches the bot.

Persons and groups are named by plain words ("Ann", "Barn"): a name that was never heard before makes a new one. Results are
messages, users and chats as plain dictionaries, so that all of this can also be done from another process.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

from tests.standin import markup, texts
from tests.standin.world import Chat, World

Message = dict[str, Any]


class People:
    """Acts of persons."""

    def __init__(self, world: World) -> None:
        self.world = world

    def person(self, name: str, **more: Any) -> dict[str, Any]:
        """The user of that name, with the private chat between them and the bot."""
        world = self.world
        with world.turn:
            if name not in world.people:
                user = {"id": 1001 + len(world.people), "is_bot": False, "first_name": name, "language_code": "en", **more}
                world.people[name] = user
                world.chats[user["id"]] = Chat({"id": user["id"], "type": "private", "first_name": name}, [user])
            return world.people[name]

    def group(self, title: str, *names: str) -> dict[str, Any]:
        """The group of that title as it is now, the named persons its members."""
        world = self.world
        with world.turn:
            chat = self._group(title)
            if chat is None:
                chat = Chat({"id": -2001 - len(world.chats), "type": "group", "title": title})
                world.chats[chat.about["id"]] = chat
            chat.members += [user for user in map(self.person, names) if user not in chat.members]
            return chat.about

    def say(self, who: str, text: str, *, chat: str | None = None, reply_to: Message | None = None, **more: Any) -> Message:
        """A text message in the private chat or in a group. `more` are further fields of the message (`forward_origin`, ...).

        In a group a bot in privacy mode gets only commands, mentions of it and replies to it.
        """
        with self.world.turn:
            content: dict[str, Any] = {"text": text, **more}
            if entities := markup.typed_entities(text):
                content["entities"] = entities
            return self._send(who, chat, reply_to, content)

    def send_file(
        self, who: str, kind: str, content: bytes, *, chat: str | None = None, name: str = "file", mime_type: str = "", **more: Any
    ) -> Message:
        """A `document`, `photo`, `voice` or `audio` (`duration` in `more`). Fields of the message, such as `caption`, go into `more` too."""
        with self.world.turn:
            mime_type = mime_type or {"photo": "image/jpeg", "voice": "audio/ogg"}.get(kind, "application/octet-stream")
            stored = self.world.store_file(name, mime_type, content)
            about: Any = {**stored, "mime_type": mime_type}
            if kind == "photo":
                about = [{**stored, "width": 800, "height": 600}]
            elif kind in {"voice", "audio"}:
                about["duration"] = more.pop("duration", 3)
            elif kind == "document":
                about["file_name"] = name
            return self._send(who, chat, None, {kind: about, **more})

    def send_place(self, who: str, **more: Any) -> Message:
        """Where the person is: something that is neither text nor a file."""
        with self.world.turn:
            return self._send(who, None, None, {"location": {"latitude": 44.9, "longitude": -93.1}, **more})

    def edit(self, message: Message, text: str) -> Message:
        """A person changes a message of theirs."""
        world = self.world
        with world.turn:
            kept = world.chats[message["chat"]["id"]].messages[message["message_id"]]
            kept["text"], kept["edit_date"] = text, world.timestamp()
            kept.pop("entities", None)
            if entities := markup.typed_entities(text):
                kept["entities"] = entities
            self._deliver("edited_message", kept)
            return dict(kept)

    def press(self, who: str, message: Message, button: str) -> str:
        """A person presses the button with that label, or that data, under the bot's message as it stands now; the query's id."""
        world = self.world
        with world.turn:
            kept = world.chats[message["chat"]["id"]].messages[message["message_id"]]
            rows = kept.get("reply_markup", {}).get("inline_keyboard", [])
            found = [b for row in rows for b in row if button in (b["text"], b.get("callback_data")) and "callback_data" in b]
            if not found:
                raise LookupError(f"no button {button!r} under {kept.get('text')!r}: {[b['text'] for row in rows for b in row]}")
            query = {
                "id": world.new_query_id(),
                "from": self.person(who),
                "message": dict(kept),
                "chat_instance": str(kept["chat"]["id"]),
                "data": found[0]["callback_data"],
            }
            world.queue("callback_query", query)
            return str(query["id"])

    def block(self, who: str) -> None:
        """A person blocks the bot."""
        self._shut(self.world.chats[self.person(who)["id"]], who, texts.BLOCKED, "member", "kicked")

    def unblock(self, who: str) -> None:
        """A person lets the bot write to them again."""
        self._shut(self.world.chats[self.person(who)["id"]], who, None, "kicked", "member")

    def kick(self, who: str, chat: str) -> None:
        """A member throws the bot out of a group."""
        self._shut(self._known_group(chat), who, texts.KICKED, "member", "kicked")

    def migrate(self, chat: str) -> dict[str, Any]:
        """A group becomes a supergroup: a new id, told by a message in the old chat and one in the new; the new chat."""
        world = self.world
        with world.turn:
            old = self._known_group(chat)
            old_id, new_id = old.about["id"], -1_000_000_000_000 + old.about["id"]
            new = Chat({"id": new_id, "type": "supergroup", "title": chat}, old.members)
            world.chats[new_id] = new
            sender = old.members[0]
            world.queue("message", world.add_message(old, sender, {"migrate_to_chat_id": new_id}))
            world.queue("message", world.add_message(new, sender, {"migrate_from_chat_id": old_id}))
            old.moved_to = new_id
            return new.about

    def expire_presses(self) -> None:
        """Every press that is not answered yet becomes too old to answer."""
        with self.world.turn:
            self.world.queries.clear()

    def set_now(self, at: str | datetime) -> None:
        """Set the service's clock; messages carry it as their date. ISO 8601 with an offset."""
        with self.world.turn:
            self.world.now = datetime.fromisoformat(at) if isinstance(at, str) else at

    def _group(self, title: str) -> Chat | None:
        standing = (chat for chat in self.world.chats.values() if chat.about.get("title") == title and chat.moved_to is None)
        return next(standing, None)

    def _known_group(self, title: str) -> Chat:
        chat = self._group(title)
        if chat is None:
            raise LookupError(f"no group {title!r}: make it with group()")
        return chat

    def _send(self, who: str, chat: str | None, reply_to: Message | None, content: dict[str, Any]) -> Message:
        world = self.world
        user = self.person(who)
        room = world.chats[user["id"]] if chat is None else self._known_group(chat)
        if reply_to is not None:
            content["reply_to_message"] = {k: v for k, v in reply_to.items() if k != "reply_to_message"}
        message = world.add_message(room, user, content)
        self._deliver("message", message)
        return dict(message)

    def _deliver(self, kind: str, message: Message) -> None:
        if self._reaches_bot(message):
            self.world.queue(kind, dict(message))

    def _reaches_bot(self, message: Message) -> bool:
        me = self.world.me
        if message["chat"]["type"] == "private" or me["can_read_all_group_messages"]:
            return True
        text = message.get("text") or message.get("caption") or ""
        to_bot = message.get("reply_to_message", {}).get("from", {}).get("id") == me["id"]
        return text.startswith("/") or f"@{me['username']}" in text or to_bot

    def _shut(self, chat: Chat, who: str, how: tuple[int, str] | None, old: str, new: str) -> None:
        world = self.world
        with world.turn:
            chat.shut = how
            change = {
                "chat": chat.about,
                "from": self.person(who),
                "date": world.timestamp(),
                "old_chat_member": {"user": world.me, "status": old} | ({"until_date": 0} if old == "kicked" else {}),
                "new_chat_member": {"user": world.me, "status": new} | ({"until_date": 0} if new == "kicked" else {}),
            }
            world.queue("my_chat_member", change)
