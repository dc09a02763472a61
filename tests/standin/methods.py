"""The bot's side: what each method of the Bot API does to the world, and what it answers."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from tests.standin import markup, texts
from tests.standin.bodies import Upload
from tests.standin.texts import Refused
from tests.standin.world import Chat, StoredFile, World

Params = dict[str, Any]
Uploads = dict[str, Upload]
Method = Callable[[World, Params, Uploads], Any]

DOWNLOAD_LIMIT = 20 * 1024 * 1024
PHOTO_LIMIT = 10 * 1024 * 1024
UPLOAD_LIMIT = 50 * 1024 * 1024


def get_updates(world: World, params: Params, _: Uploads) -> list[dict[str, Any]]:
    """See World.poll."""
    return world.poll(
        offset=params.get("offset", 0),
        limit=params.get("limit", 100),
        timeout=params.get("timeout", 0),
        allowed=params.get("allowed_updates"),
    )


def get_me(world: World, _: Params, __: Uploads) -> dict[str, Any]:
    """The bot itself."""
    return world.me


def get_chat(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """What the service tells of a chat."""
    return world.chat(params["chat_id"]).about


def get_webhook_info(world: World, _: Params, __: Uploads) -> dict[str, Any]:
    """Whether a webhook stands in the way of polling."""
    return {"url": world.webhook_url, "has_custom_certificate": False, "pending_update_count": len(world.waiting)}


def set_webhook(world: World, params: Params, _: Uploads) -> bool:
    """Updates are brought to an address from now on. The real service wants https; here the loopback will do."""
    if not params["url"].startswith(("https://", "http://127.0.0.1:")):
        raise Refused(texts.NO_HTTPS)
    world.set_hook(params["url"], params.get("secret_token", ""), params.get("allowed_updates"))
    return True


def delete_webhook(world: World, params: Params, _: Uploads) -> bool:
    """Back to polling; with `drop_pending_updates` what waits is lost."""
    world.set_hook("", "", None)
    if params.get("drop_pending_updates"):
        world.waiting.clear()
    return True


def send_message(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """A text message of the bot."""
    chat = world.chat(params["chat_id"])
    return _send(world, chat, params, _text(params, "text", "entities"))


def send_photo(world: World, params: Params, uploads: Uploads) -> dict[str, Any]:
    """A picture: PNG or JPEG, at most 10 MB."""
    chat = world.chat(params["chat_id"])
    file_id, file = _file(world, "photo", params, uploads)
    if len(file.content) > PHOTO_LIMIT:
        raise Refused(texts.FILE_TOO_BIG)
    width, height = _picture_size(file.content)
    photo = [{**_about_file(file_id, file), "width": width, "height": height}]
    return _send(world, chat, params, {"photo": photo} | _caption(params))


def send_document(world: World, params: Params, uploads: Uploads) -> dict[str, Any]:
    """Any file."""
    chat = world.chat(params["chat_id"])
    file_id, file = _file(world, "document", params, uploads)
    document = _about_file(file_id, file) | {"file_name": file.name, "mime_type": file.mime_type}
    return _send(world, chat, params, {"document": document} | _caption(params))


def edit_message_text(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """A new text, and the keyboard given with it or none."""
    return _edit(world, params, "text", texts.NO_TEXT_TO_EDIT, lambda: _text(params, "text", "entities"))


def edit_message_caption(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """A new caption under a picture or file."""
    return _edit(world, params, "caption", texts.NO_CAPTION_TO_EDIT, lambda: _caption(params))


def edit_message_reply_markup(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """A new keyboard, or none, the text as it was."""
    return _edit(world, params, "", texts.NO_TEXT_TO_EDIT, dict)


def delete_message(world: World, params: Params, _: Uploads) -> bool:
    """A message gone."""
    chat = world.chat(params["chat_id"])
    if chat.messages.pop(params["message_id"], None) is None:
        raise Refused(texts.DELETE_NOT_FOUND)
    return True


def answer_callback_query(world: World, params: Params, _: Uploads) -> bool:
    """Ends the spinner on a pressed button. One answer a press."""
    if params["callback_query_id"] not in world.queries:
        raise Refused(texts.QUERY_TOO_OLD)
    world.queries.discard(params["callback_query_id"])
    return True


def set_message_reaction(world: World, params: Params, _: Uploads) -> bool:
    """One emoji of the service's list on a message; no list, no emoji."""
    chat = world.chat(params["chat_id"])
    if params["message_id"] not in chat.messages:
        raise Refused(texts.REACT_NOT_FOUND)
    reactions = params.get("reaction", [])
    if len(reactions) > 1:
        raise Refused(texts.REACTION_INVALID)
    world.reactions[chat.about["id"], params["message_id"]] = reactions
    return True


def send_chat_action(world: World, params: Params, _: Uploads) -> bool:
    """ "is typing" for a moment."""
    world.chat(params["chat_id"])
    return True


def set_my_commands(world: World, params: Params, _: Uploads) -> bool:
    """The menu of commands, kept a language."""
    if len(params["commands"]) > 100 or not all(re.fullmatch("[a-z0-9_]{1,32}", c["command"]) for c in params["commands"]):
        raise Refused(texts.COMMAND_INVALID)
    world.commands[params.get("language_code", "")] = params["commands"]
    return True


def get_my_commands(world: World, params: Params, _: Uploads) -> list[dict[str, Any]]:
    """The menu of commands."""
    return world.commands.get(params.get("language_code", ""), [])


def get_file(world: World, params: Params, _: Uploads) -> dict[str, Any]:
    """Where a file can be fetched, up to 20 MB."""
    file = world.files.get(params["file_id"])
    if file is None:
        raise Refused(texts.FILE_UNKNOWN)
    if len(file.content) > DOWNLOAD_LIMIT:
        raise Refused(texts.FILE_TOO_BIG)
    return _about_file(params["file_id"], file) | {"file_path": f"files/{params['file_id']}"}


METHODS: dict[str, Method] = {
    "getUpdates": get_updates,
    "getMe": get_me,
    "getChat": get_chat,
    "getWebhookInfo": get_webhook_info,
    "setWebhook": set_webhook,
    "deleteWebhook": delete_webhook,
    "sendMessage": send_message,
    "sendPhoto": send_photo,
    "sendDocument": send_document,
    "sendChatAction": send_chat_action,
    "editMessageText": edit_message_text,
    "editMessageCaption": edit_message_caption,
    "editMessageReplyMarkup": edit_message_reply_markup,
    "deleteMessage": delete_message,
    "answerCallbackQuery": answer_callback_query,
    "setMessageReaction": set_message_reaction,
    "setMyCommands": set_my_commands,
    "getMyCommands": get_my_commands,
    "getFile": get_file,
}


def _text(params: Params, name: str, entities_name: str) -> dict[str, Any]:
    text, entities = params.get(name, ""), params.get(entities_name, [])
    if params.get("parse_mode") == "HTML":
        text, entities = markup.read_html(text)
    elif "parse_mode" in params:
        raise Refused(texts.MALFORMED, what="the stand-in reads HTML only")
    if not text.strip():
        raise Refused(texts.TEXT_EMPTY)
    return {name: text.rstrip()} | ({entities_name: entities} if entities else {})


def _caption(params: Params) -> dict[str, Any]:
    return _text(params, "caption", "caption_entities") if params.get("caption") else {}


def _send(world: World, chat: Chat, params: Params, content: dict[str, Any]) -> dict[str, Any]:
    reply = params.get("reply_parameters")
    if reply is not None:
        replied = chat.messages.get(reply["message_id"])
        if replied is not None:
            content["reply_to_message"] = {k: v for k, v in replied.items() if k != "reply_to_message"}
        elif not reply.get("allow_sending_without_reply"):
            raise Refused(texts.REPLIED_NOT_FOUND)
    if "inline_keyboard" in params.get("reply_markup", {}):
        content["reply_markup"] = params["reply_markup"]
    return world.add_message(chat, world.me, content)


def _edit(world: World, params: Params, field: str, without: tuple[int, str], content: Callable[[], dict[str, Any]]) -> dict[str, Any]:
    chat = world.chat(params.get("chat_id"))
    message = chat.messages.get(params.get("message_id", 0))
    if message is None:
        raise Refused(texts.EDIT_NOT_FOUND)
    if message["from"]["id"] != world.me["id"]:
        raise Refused(texts.EDIT_NOT_ALLOWED)
    if (field == "text" and "text" not in message) or (field == "caption" and not {"photo", "document"} & set(message)):
        raise Refused(without)
    changed = content()
    keyboard = params.get("reply_markup", {})
    if keyboard.get("inline_keyboard"):
        changed["reply_markup"] = keyboard
    replaced = {field, {"text": "entities", "caption": "caption_entities"}.get(field), "reply_markup"}
    if {k: v for k, v in message.items() if k in replaced} == changed:
        raise Refused(texts.NOT_MODIFIED)
    edited = {k: v for k, v in message.items() if k not in replaced} | changed | {"edit_date": world.timestamp()}
    chat.messages[message["message_id"]] = edited
    world.turn.notify_all()
    return edited


def _file(world: World, name: str, params: Params, uploads: Uploads) -> tuple[str, StoredFile]:
    given = str(params.get(name, ""))
    upload = uploads.get(name) or uploads.get(given.removeprefix("attach://"))
    if upload is None:
        if given not in world.files:
            raise Refused(texts.FILE_WRONG)
        return given, world.files[given]
    if not upload.content:
        raise Refused(texts.FILE_EMPTY)
    if len(upload.content) > UPLOAD_LIMIT:
        raise Refused((413, "Request Entity Too Large"))
    file_id = world.store_file(upload.filename, upload.mime_type, upload.content)["file_id"]
    return file_id, world.files[file_id]


def _about_file(file_id: str, file: StoredFile) -> dict[str, Any]:
    return {"file_id": file_id, "file_unique_id": file_id.replace("file-", "u"), "file_size": len(file.content)}


def _picture_size(content: bytes) -> tuple[int, int]:
    if content.startswith(b"\x89PNG\r\n\x1a\n"):
        return int.from_bytes(content[16:20]), int.from_bytes(content[20:24])
    if content.startswith(b"\xff\xd8"):
        return 800, 600  # a JPEG's real size stands deeper inside, and no bot asks for it
    raise Refused(texts.NO_PICTURE)
