"""`haynote read`: what notes would become, without writing anything down. It opens no database where a roster is given."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from bot.commands import options
from bot.commands.explaining import explanation
from bot.commands.options import book_options, moment, opened, refuse, time_of, to_line, why_not
from core.app import reader
from core.problem import Problem

if TYPE_CHECKING:
    from core.app.reading import Reader


@click.command()
@click.argument("text", required=False)
@click.option(
    "--roster", "roster_file", type=click.Path(path_type=Path), metavar="FILE", help="The farm to read against; without it, your own book."
)
@click.option("--at", "--now", "at", metavar="TIME", help="When the message was sent (ISO 8601). Default: now.")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object a message.")
@click.option(
    "--jsonl", is_flag=True, help='Each input line is an object: {"text": ..., "at"?, "from"?, "conversation"?, "reply_to"?, "edit_of"?}.'
)
@click.option(
    "--explain", is_flag=True, help="Also show why: the words, what they were taken for, the rules that fired and those that almost did."
)
@book_options
def read(
    text: str | None,
    roster_file: Path | None,
    at: str | None,
    as_json: bool,
    jsonl: bool,
    explain: bool,
    book: str | None,
    farm: str | None,
) -> None:
    """Show what a note would become, and write nothing down. Without TEXT, each line of standard input is one message."""
    if roster_file:
        ear = from_roster(roster_file, as_json=as_json)
        sent = time_of(at, ear.timezone()) if at else options.clock()
    else:
        app = opened(book, farm, as_json=as_json)
        sent = moment(app, at)
        ear = app.reader(sent)
    ear.explains = explain
    show: Callable[[dict[str, Any]], str] = to_line if as_json else in_words
    if jsonl:
        sys.exit(read_objects(ear, sys.stdin, sent, show))
    for line in [text] if text is not None else (line.rstrip("\n") for line in sys.stdin):
        click.echo(show(ear.read(line, sent)))


def from_roster(path: Path, *, as_json: bool) -> Reader:
    """A reader for the farm in the file; the command ends here where it can't be read."""
    try:
        roster = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        refuse(
            Problem(
                "bad_roster",
                f"The roster {path} can't be read: {why_not(error)}.",
                remedy="Give a JSON file with farm, animals, breedings and litters.",
            ),
            as_json=as_json,
        )
    found = reader(roster)
    if isinstance(found, Problem):
        refuse(found, as_json=as_json)
    return found


def read_objects(ear: Reader, lines: Iterable[str], sent: datetime, show: Callable[[dict[str, Any]], str]) -> int:
    """Answer each line; the exit status: 2 where one was no object."""
    status = 0
    for line in lines:
        request = parsed(line)
        status = status if isinstance(request, dict) else 2
        click.echo(show(ear.read_request(request, sent)))
    return status


def parsed(line: str) -> Any:
    """The line's JSON; None where it is none."""
    try:
        return json.loads(line)
    except ValueError:
        return None


def in_words(document: dict[str, Any]) -> str:
    """A reading for people: a line a fact, then the question, then the words left over; then why, where that was asked for."""
    facts = [
        f"{fact['kind']}: " + ", ".join(f"{name} {value}" for name, value in fact.items() if name != "kind") for fact in document["facts"]
    ]
    ask = document["ask"]
    question = [f"asks ({ask['why']}): {ask['text']}"] if ask else []
    unread = [f"not read: {document['unread']}"] if document["unread"] else []
    told = [*facts, *question, *unread] or ["nothing to record"]
    return "\n".join([*told, *explanation(document["explain"])] if "explain" in document else told)
