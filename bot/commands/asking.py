"""Questions to the book: what is due, the week's digest, who to keep, the herd, one animal."""

from __future__ import annotations

import click

from bot.commands.options import book_options, json_option, moment, now_option, opened, refuse, tell
from core.problem import Problem


@click.command(short_help="Chores not yet done, overdue ones first.")
@click.option("--days", type=click.IntRange(min=0), help="How many days ahead. Default: 14.")
@json_option
@now_option
@book_options
def due(days: int | None, as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """Chores not yet done: overdue ones first, then those of the coming days."""
    app = opened(book, farm, as_json=as_json)
    told = app.due(moment(app, now), days)
    tell(told.document, told.reply, as_json=as_json)


@click.command(short_help="The week: chores, flagged animals, the herd in numbers, feed.")
@json_option
@now_option
@book_options
def digest(as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """The week: chores, flagged animals with their evidence, the herd in numbers, feed left."""
    app = opened(book, farm, as_json=as_json)
    told = app.digest(moment(app, now))
    tell(told.document, told.reply, as_json=as_json)


@click.command(short_help="Who to keep, sell, cull or watch, and why.")
@json_option
@now_option
@book_options
def keep(as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """Who to keep, sell, cull or watch, with reasons, numbers and what it saves. It advises; you decide."""
    app = opened(book, farm, as_json=as_json)
    told = app.keep(moment(app, now))
    tell(told.document, told.reply, as_json=as_json)


@click.command(short_help="Every living animal.")
@json_option
@now_option
@book_options
def herd(as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """Every living animal, with its age, stage and what the book says of it."""
    app = opened(book, farm, as_json=as_json)
    told = app.herd(moment(app, now))
    tell(told.document, told.reply, as_json=as_json)


@click.command()
@click.argument("tag")
@json_option
@now_option
@book_options
def card(tag: str, as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """One animal's whole story, by its tag or name."""
    app = opened(book, farm, as_json=as_json)
    told = app.card(tag, moment(app, now))
    if isinstance(told, Problem):
        refuse(told, as_json=as_json)
    tell(told.document, told.reply, as_json=as_json)
