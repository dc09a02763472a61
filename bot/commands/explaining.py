"""`haynote read --explain`: why a note was read as it was, in lines for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

WIDEST = 24  # what is said stands in a column of its own; longer words push the rest aside


def explanation(explain: Mapping[str, Any]) -> list[str]:
    """The lines under a reading: each pass through the reader, then where the question comes from."""
    lines = [line for one in explain["readings"] for line in _pass(one)] or ["", "read before, or answered without reading it as a note"]
    asks = explain["asks"]
    return [*lines, "", f"asks {asks['why']}: {asks['because']}"] if asks else lines


def _pass(one: Mapping[str, Any]) -> Iterator[str]:
    """One pass: its tokens, items and statements."""
    yield ""
    yield f"tokens: {' | '.join(word.replace(chr(10), '⏎') for word in one['tokens'])}" if one["tokens"] else f"text: {one['text']}"
    if one["road"]:
        yield f"not cut into statements: {one['road']}"
    if one["items"]:
        yield "taken for:"
        yield from (_item(item) for item in one["items"] if item["as"] not in {"mark", "break"})
    if one["put_right"]:
        yield f"taken back by the speaker: {' '.join(one['put_right'])}"
    yield from _rules(one["whole"])
    for number, statement in enumerate(one["statements"], start=1):
        yield from _statement(number, statement)


def _item(item: Mapping[str, Any]) -> str:
    """`  kindled   word, cue of kindle   used by kindled`."""
    taken_for = item["as"] + (f" {item['value']}" if item["value"] is not None else "")
    cues = f" [{', '.join(item['cues'])}]" if item["cues"] else ""
    users = f" -> {', '.join(item['used_by'])}" if item["used_by"] else ""
    return f"  {item['said']:{_width(item['said'])}}  {taken_for}{cues}{users}"


def _width(said: str) -> int:
    return max(len(said), WIDEST)


def _statement(number: int, statement: Mapping[str, Any]) -> Iterator[str]:
    about = f" (speaking of {statement['about']})" if statement["about"] else ""
    yield f"statement {number}: {statement['text'].strip()}{about}"
    if statement["not_read"]:
        yield f"  no rule was tried: {statement['not_read']}"
    yield from _rules(statement)
    if statement["left"]:
        yield f"  left over: {', '.join(statement['left'])}"


def _rules(tried: Mapping[str, Any]) -> Iterator[str]:
    """The rules that fired, then those that almost did."""
    for fired in tried["fired"]:
        says = ", ".join(f"{name} {value}" for name, value in fired["says"].items())
        yield f"  fired   {fired['kind']}{_on(fired['cues'])} at {fired['at']}"
        yield f"          {says}" + (f"; lacks {fired['lacks']['wanted'] or 'clear words'}" if fired["lacks"] else "")
        if fired["taken_back"]:
            yield f"          taken back: {fired['taken_back']}"
    yield from (f"  nearly  {nearly['kind']}{_on(nearly['cues'])} gave up at {nearly['gave_up']}" for nearly in tried["nearly"])


def _on(cues: Mapping[str, list[str]]) -> str:
    """` on "kindled" (kindle)`; without a word of its own, by the numbers' form."""
    if not cues:
        return ", by its form,"
    return " on " + ", ".join(f"“{word}” ({', '.join(marks)})" for word, marks in cues.items())
