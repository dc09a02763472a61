"""A request's fields, however they were sent: query string, form, multipart or JSON."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import parse_qsl


@dataclass(frozen=True, slots=True)
class Upload:
    """A file that came with a request."""

    filename: str
    mime_type: str
    content: bytes


@dataclass(slots=True)
class Fields:
    """What a request carried; `typed` when the values arrived as JSON and not as strings of a form."""

    values: dict[str, Any] = field(default_factory=dict)
    uploads: dict[str, Upload] = field(default_factory=dict)
    typed: bool = False


def read_body(content_type: str, body: bytes, query: str = "") -> Fields:
    """Fields of a request body; ValueError when the body is not what its content type says."""
    fields = Fields(dict(parse_qsl(query, keep_blank_values=True)))
    kind = content_type.partition(";")[0].strip().lower()
    if kind == "application/json" and body:
        return Fields(_json_object(body), typed=True)
    if kind == "application/x-www-form-urlencoded":
        fields.values |= dict(parse_qsl(body.decode(), keep_blank_values=True))
    elif kind == "multipart/form-data":
        _read_multipart(fields, content_type, body)
    elif body:
        raise ValueError(f"a body of type {content_type or 'none'} is not read")
    return fields


def _json_object(body: bytes) -> dict[str, Any]:
    value = json.loads(body)
    if not isinstance(value, dict):
        raise ValueError("the JSON body must be an object")  # noqa: TRY004 - the body is wrong, not our argument
    return value


def _read_multipart(fields: Fields, content_type: str, body: bytes) -> None:
    boundary = re.search(r'boundary="?([^";]+)', content_type)
    if boundary is None:
        raise ValueError("multipart without a boundary")
    mark = b"\r\n--" + boundary[1].encode()
    for part in (b"\r\n" + body).split(mark)[1:]:
        if part.startswith(b"--"):
            return
        head, _, content = part.partition(b"\r\n\r\n")
        _read_part(fields, head.decode(), content)
    raise ValueError("multipart without its end")


def _read_part(fields: Fields, head: str, content: bytes) -> None:
    name = re.search(r'[; ]name="([^"]*)"', head)
    if name is None:
        raise ValueError("a part of the multipart body has no name")
    filename = re.search(r'filename=(?:"([^"]*)"|([^\s;"]+))', head)
    if filename is None:
        fields.values[name[1]] = content.decode()
        return
    mime_type = re.search(r"(?im)^content-type:\s*(\S+)", head)
    fields.uploads[name[1]] = Upload(filename[1] or filename[2] or "", mime_type[1] if mime_type else "application/octet-stream", content)
