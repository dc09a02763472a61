"""Looking after the book: is it sound, what is in it, and copies of it."""

from __future__ import annotations

from contextlib import closing
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from bot.commands import options
from bot.commands.options import book_options, json_option, opened, refuse, to_line
from bot.settings import data_folder
from core.problem import Problem
from core.words import count

if TYPE_CHECKING:
    from core.app import App

#: How far ahead `status` looks for the next chore [days].
DUE_WITHIN_DAYS = 60


@click.command()
@click.option("--all-farms", is_flag=True, help="The whole book instead of one farm.")
@json_option
@book_options
def status(as_json: bool, book: str | None, farm: str | None, all_farms: bool) -> None:
    """What the book holds, and what waits to be read or sent."""
    if all_farms:
        _whole(book, as_json=as_json)
        return
    app = opened(book, farm, as_json=as_json)
    found = {**app.status(), **_served(book), "next_due": _next_due(app)}
    click.echo(to_line(found) if as_json else in_words(found, app.timezone()))


def _whole(book: str | None, *, as_json: bool) -> None:
    """The status of a book of many farms."""
    from core.app import open_house  # noqa: PLC0415 - few host farms

    house = open_house(book or options.outside(as_json=as_json).database_url)
    if isinstance(house, Problem):
        refuse(house, as_json=as_json)
    with closing(house):
        found = {**house.status(options.clock()), **_served(book)}
    click.echo(to_line(found) if as_json else whole_in_words(found))


def whole_in_words(found: dict[str, Any]) -> str:
    """The status of a book of many farms as lines, times in UTC."""
    held = ", ".join(f"{who} {number}" for who, number in found["held"].items()) or "none"
    return "\n".join(
        (
            f"Book: {found['book']}",
            f"{count(found['farms'], 'farm')}, {found['database']}; {found['to_look_at']} to be looked at for what is due.",
            f"Messages that came in: {in_states(found['inbox'])}. In hand: {held}. That go out: {in_states(found['outbox'])}.",
            f"Served: {_sign(found, UTC)}. Last copy: {found['last_copy'] or 'none'}.",
        )
    )


def _served(book: str | None) -> dict[str, Any]:
    """Whether a server runs for the book, and when it last gave a sign of life."""
    when, runs = options.served(book)
    return {"served": runs, "last_sign": None if when is None else datetime.fromtimestamp(when, UTC).isoformat()}


def _next_due(app: App) -> dict[str, Any] | None:
    """The next chore."""
    chores = app.due(options.clock(), DUE_WITHIN_DAYS).document["chores"]
    return {name: chores[0][name] for name in ("on", "text")} if chores else None


def in_words(found: dict[str, Any], zone: tzinfo) -> str:
    """The status as lines, times at the farm."""
    last = f"{datetime.fromisoformat(found['last_note']).astimezone(zone):%A, %d %B %Y, %H:%M}" if found["last_note"] else "never"
    people = ", ".join(f"{member['name']} ({member['role']})" for member in found["members"]) or "nobody yet"
    photos = f"; {count(found['photos'], 'photo')}" if found["photos"] else ""
    return "\n".join(
        (
            f"Book: {found['book']}",
            f"Farm {found['farm']}, {found['database']}: {count(found['notes'], 'note')}, the last {last}{photos}.",
            f"People: {people}. Chats: {found['chats']}.",
            f"Messages that came in: {in_states(found['inbox'])}. That go out: {in_states(found['outbox'])}.",
            f"Served: {_sign(found, zone)}. Last copy: {found['last_copy'] or 'none'}. Next due: {_chore(found['next_due'])}.",
        )
    )


def _sign(found: dict[str, Any], zone: tzinfo) -> str:
    """Whether the bot runs; of one that does not, when it last did."""
    if found["last_sign"] is None:
        return "no"
    when = f"{datetime.fromisoformat(found['last_sign']).astimezone(zone):%d %B %Y, %H:%M}"
    return f"yes, last sign {when}" if found["served"] else f"no, last {when}"


def _chore(chore: dict[str, Any] | None) -> str:
    return "nothing" if chore is None else f"{chore['text']} ({chore['on']})"


def in_states(counted: dict[str, int]) -> str:
    """How many messages are in each state: `3 done, 1 waiting`."""
    return ", ".join(f"{number} {state}" for state, number in sorted(counted.items())) or "none"


@click.command()
@json_option
@book_options
def check(as_json: bool, book: str | None, farm: str | None) -> None:
    """Look through the whole book for damage. Ends with 1 where there is some."""
    problems = opened(book, farm, as_json=as_json).check()
    if problems:
        refuse(Problem(problems[0].code, "\n".join(problem.text for problem in problems), remedy=problems[0].remedy), as_json=as_json)
    click.echo(to_line({"sound": True}) if as_json else "The book is sound.")


@click.command(short_help="Copy the whole book into FILE while it is in use.")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@json_option
@book_options
def backup(file: Path, as_json: bool, book: str | None, farm: str | None) -> None:
    """Copy the whole book into FILE while it is in use, and look whether the copy is whole."""
    problem = opened(book, farm, as_json=as_json).backup(file)
    if problem is not None:
        refuse(problem, as_json=as_json)
    click.echo(to_line({"copied_to": str(file)}) if as_json else f"The book is copied to {file}, and the copy is whole.")


@click.command(short_help="Take a backup, a journal or an archive into a new book.")
@click.argument("file", type=click.Path(path_type=Path))
@json_option
@book_options
def restore(file: Path, as_json: bool, book: str | None, farm: str | None) -> None:
    """Take a backup, an exported journal, or an archive into a new book: all of it or nothing."""
    from bot.tables.zips import unzipped  # noqa: PLC0415 - few restore

    app = opened(book, farm, as_json=as_json)
    spare = data_folder() / "photos"
    try:
        parts = unzipped(file)
        done = app.restore_file(file, spare) if parts is None else app.take_archive(parts, app.photo_folder(spare), options.clock())
    except (OSError, ValueError) as error:
        refuse(
            Problem("no_file", f"{file} can't be read: {options.why_not(error)}.", remedy="Give a backup, a journal or an archive."),
            as_json=as_json,
        )
    if isinstance(done, Problem):
        refuse(done, as_json=as_json)
    click.echo(to_line({"restored": done}) if as_json else f"{count(done, 'note')} restored.")
