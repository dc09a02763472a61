"""Texts as the chat service reads them: HTML to plain text with entities, lengths in UTF-16 units."""

from __future__ import annotations

import re
from html import unescape
from typing import Any

from tests.standin import texts
from tests.standin.texts import Refused

ENTITY_OF = {
    "b": "bold", "strong": "bold", "i": "italic", "em": "italic", "u": "underline", "ins": "underline",
    "s": "strikethrough", "strike": "strikethrough", "del": "strikethrough", "code": "code", "pre": "pre",
    "blockquote": "blockquote", "tg-spoiler": "spoiler", "a": "text_link",
}  # fmt: skip
PIECE = re.compile(r"<(?P<end>/?)(?P<tag>[a-zA-Z0-9-]*)(?P<rest>[^<>]*)>?|(?P<char>&(?:#\d+|#x[0-9a-fA-F]+|lt|gt|amp|quot);)")
HREF = re.compile(r"""\bhref\s*=\s*["']?([^"'\s>]+)""")
COMMAND_OR_MENTION = re.compile(r"(?<!\S)(?:/[a-zA-Z0-9_]{1,32}(?:@\w+)?|@\w{4,32})")


def length(text: str) -> int:
    """Length in UTF-16 units, the stricter of the two ways in which the limits can be read."""
    return len(text.encode("utf-16-le")) // 2


def read_html(text: str) -> tuple[str, list[dict[str, Any]]]:
    """Plain text and entities of a text in HTML; Refused as the service refuses what it can't parse."""
    plain, at = "", 0
    opened: list[tuple[str, int, dict[str, Any]]] = []
    entities: list[dict[str, Any]] = []
    for piece in PIECE.finditer(text):
        plain += text[at : piece.start()]
        at = piece.end()
        if piece["char"]:
            plain += unescape(piece["char"])
        elif piece["end"]:
            entities.append(_closed(opened, piece, len(text[: piece.start()].encode()), plain))
        else:
            opened.append((*_opened(piece, len(text[: piece.start()].encode()), plain),))
    if opened:
        raise Refused(texts.UNCLOSED, tag=opened[-1][0])
    plain = (plain + text[at:]).rstrip()
    return plain, sorted((e for e in entities if e["length"]), key=lambda entity: entity["offset"])


def _opened(piece: re.Match[str], at: int, plain: str) -> tuple[str, int, dict[str, Any]]:
    tag = piece["tag"].lower()
    spoiler = tag == "span" and "tg-spoiler" in piece["rest"]
    if not piece[0].endswith(">") or (tag not in ENTITY_OF and not spoiler):
        raise Refused(texts.UNSUPPORTED_TAG, tag=tag, at=at)
    entity: dict[str, Any] = {"type": "spoiler" if spoiler else ENTITY_OF[tag]}
    if tag == "a":
        href = HREF.search(piece["rest"])
        entity["url"] = unescape(href[1]) if href else ""
    return tag, length(plain), entity


def _closed(opened: list[tuple[str, int, dict[str, Any]]], piece: re.Match[str], at: int, plain: str) -> dict[str, Any]:
    tag = piece["tag"].lower()
    if not opened:
        raise Refused(texts.UNEXPECTED_END, at=at)
    expected, offset, entity = opened.pop()
    if expected != tag:
        raise Refused(texts.WRONG_END, at=at, expected=expected, tag=tag)
    return entity | {"offset": offset, "length": length(plain) - offset}


def typed_entities(text: str) -> list[dict[str, Any]]:
    """Commands and mentions that the service marks in what a person typed."""
    return [
        {
            "type": "mention" if found[0].startswith("@") else "bot_command",
            "offset": length(text[: found.start()]),
            "length": length(found[0]),
        }
        for found in COMMAND_OR_MENTION.finditer(text)
    ]
