"""Is a request one that the Bot API's own documentation allows?

The schemas beside this module are generated from published type definitions (see schemas/generate.mjs), not written
by hand, so they don't share a misunderstanding with the bot. Schemas say which fields exist and of what type; lengths are
read out of the descriptions.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import fastjsonschema

from tests.standin import markup, texts
from tests.standin.bodies import Fields
from tests.standin.texts import Refused

SCHEMAS = Path(__file__).parent / "schemas"
LENGTH = re.compile(r"(\d+)-(\d+) (characters|bytes)(?P<parsed> after entit)?")
#: Methods without parameters: the source of the schemas has no definition for them.
BARE = {"type": "object", "additionalProperties": False}


@dataclass(frozen=True, slots=True)
class Violation:
    """One way in which a request breaks the documentation, with the answer that the service would give."""

    text: str
    refusal: Refused


@cache
def definitions(name: str) -> dict[str, Any]:
    """Definitions of params.json or objects.json."""
    found: dict[str, Any] = json.loads((SCHEMAS / name).read_text())["definitions"]
    return found


@cache
def validator(name: str, definition: str) -> Callable[[Any], Any]:
    """Compiled check of one definition."""
    known = definitions(name)
    schema = {"definitions": known, "$ref": f"#/definitions/{definition}"} if definition in known else BARE
    compiled: Callable[[Any], Any] = fastjsonschema.compile(schema, use_default=False)
    return compiled


def check_object(kind: str, value: dict[str, Any]) -> dict[str, Any]:
    """`value`, when it is a right Update, Message, ... ; AssertionError when the stand-in itself built it wrong."""
    try:
        validator("objects.json", f"Telegram{kind}")(value)
    except fastjsonschema.JsonSchemaValueException as error:
        raise AssertionError(f"the stand-in made a wrong {kind}: {error.message}") from error
    return value


def check_request(method: str, fields: Fields) -> tuple[dict[str, Any], list[Violation]]:
    """A request's parameters in their JSON types, and what is wrong with them."""
    name = f"{method[:1].upper()}{method[1:]}Params"
    schema = definitions("params.json").get(name, BARE)
    params, violations = _typed(fields, schema)
    attached = set(re.findall(r"attach://([^\"\s,}\]]+)", json.dumps(params)))
    parts = {part: {"size": len(file.content), "type": file.mime_type} for part, file in fields.uploads.items() if part not in attached}
    try:
        validator("params.json", name)(params | parts)
    except fastjsonschema.JsonSchemaValueException as error:
        what = error.message.replace("data.", "").replace("data ", f"{method} ")
        violations.append(Violation(what, Refused((400, f"Bad Request: {what}"))))
    violations += [_length_violation(method, *excess) for excess in _wrong_lengths(params, schema, "", params.get("parse_mode"))]
    return params, violations


def _typed(fields: Fields, schema: dict[str, Any]) -> tuple[dict[str, Any], list[Violation]]:
    if fields.typed:
        return fields.values, []
    params: dict[str, Any] = {}
    violations = []
    for name, value in fields.values.items():
        try:
            params[name] = _from_form(value, json_types(schema.get("properties", {}).get(name, {"type": "string"})))
        except ValueError:
            params[name] = value
            violations.append(Violation(f"{name} is not JSON", Refused((400, f"Bad Request: can't parse {name} JSON object"))))
    return params, violations


def _from_form(value: str, types: set[str]) -> Any:
    if "number" in types and re.fullmatch(r"-?\d+", value):
        return int(value)
    return value if "string" in types else json.loads(value)


def json_types(schema: dict[str, Any]) -> set[str]:
    """The JSON types that a schema allows, through its references and alternatives."""
    if "$ref" in schema:
        return json_types(_referred(schema))
    if "anyOf" in schema:
        return set().union(*map(json_types, schema["anyOf"]))
    kinds = schema.get("type", "object")
    return {kinds} if isinstance(kinds, str) else set(kinds)


def _referred(schema: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = definitions("params.json")[schema["$ref"].rpartition("/")[2]]
    return found


def _wrong_lengths(value: Any, schema: dict[str, Any], field: str, mode: str | None) -> Iterator[tuple[str, str, int, int]]:
    """(field, limit in words, lowest length, length) of each string inside that is too short or too long."""
    if "$ref" in schema:
        yield from _wrong_lengths(value, _referred(schema), field, mode)
    elif isinstance(value, list):
        for item in value:
            yield from _wrong_lengths(item, schema.get("items", {}), field, mode)
    elif isinstance(value, dict):
        for name, inner in value.items():
            yield from _wrong_lengths(inner, _property(schema, name, set(value)), name, mode)
    elif isinstance(value, str) and (limit := LENGTH.search(str(schema.get("description", "")))):
        size = _size(value, limit, mode)
        if not int(limit[1]) <= size <= int(limit[2]):
            yield field, f"{limit[1]}-{limit[2]} {limit[3]}", int(limit[1]), size


def _property(schema: dict[str, Any], name: str, names: set[str]) -> dict[str, Any]:
    """The schema of one property, of the alternative that knows all of the value's properties."""
    for branch in schema.get("anyOf", [schema]):
        full = _referred(branch) if "$ref" in branch else branch
        if "anyOf" in full:
            return _property(full, name, names)
        if names <= set(full.get("properties", {})):
            found: dict[str, Any] = full["properties"][name]
            return found
    return {}


def _size(value: str, limit: re.Match[str], mode: str | None) -> int:
    if limit[3] == "bytes":
        return len(value.encode())
    if limit["parsed"] and mode == "HTML":
        try:
            return markup.length(markup.read_html(value)[0])
        except Refused:
            return int(limit[2])  # refused for its markup a moment later
    return markup.length(value)


def _length_violation(method: str, field: str, limit: str, lowest: int, size: int) -> Violation:
    text = f"{field} is {size} long, not {limit}"
    known = {
        "text": texts.TEXT_EMPTY if size < lowest else texts.TEXT_TOO_LONG,
        "caption": texts.CAPTION_TOO_LONG,
        "callback_data": texts.BUTTON_DATA_INVALID,
        "command": texts.COMMAND_INVALID,
    }
    if field in known and (field != "text" or method in ("sendMessage", "editMessageText")):
        return Violation(text, Refused(known[field]))
    return Violation(text, Refused(texts.OUT_OF_LENGTH, field=field, limit=limit))
