"""What the commands share: the options for the book, the clock and JSON, and how an answer or a refusal is printed."""

from __future__ import annotations

import json
import shlex
import sys
from collections.abc import Callable
from datetime import UTC, datetime, tzinfo
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar

import click

from bot.settings import Settings, data_folder, settings
from bot.terminal.width import on_screen
from core.app import open_book
from core.problem import Problem
from core.reply import Reply

if TYPE_CHECKING:
    from core.app import App

Command = TypeVar("Command", bound=Callable[..., Any])


def book_options(command: Command) -> Command:
    """--book and --farm."""
    command = click.option("--farm", metavar="NAME", help="Which farm, needed only when a book holds several.")(command)
    return click.option(
        "--book", metavar="URL", help="The book: a file or a database address. Default: HAYNOTE_DATABASE_URL, else a file of yours."
    )(command)


def now_option(command: Command) -> Command:
    """--now, the clock."""
    return click.option(
        "--now", metavar="TIME", help="Answer as of this time (ISO 8601; farm time without an offset). Later notes don't count."
    )(command)


json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs.")


def opened(book: str | None, farm: str | None, *, as_json: bool = False, create: bool = False) -> App:
    """The farm's book; the command ends here with the reason where it can't be opened. `create`: a farm that is not there is made."""
    found = open_book(book or outside(as_json=as_json).database_url, farm, create=create)
    if isinstance(found, Problem):
        refuse(found, as_json=as_json)
    click.get_current_context().call_on_close(found.close)
    return found


def outside(*, as_json: bool = False) -> Settings:
    """The settings in force; the command ends here with the reason where their file can't be right."""
    kept = settings()
    if isinstance(kept, Problem):
        refuse(kept, as_json=as_json)
    return kept


def served(book: str | None) -> tuple[float | None, bool]:
    """When a server of that book last gave a sign of life [s since 1970], and whether one runs on this machine now."""
    from bot.telegram.lock import last_sign, lock_file  # noqa: PLC0415 - few commands ask

    kept = outside()
    return last_sign(lock_file(book or kept.database_url, (kept.bot_token or "").partition(":")[0], data_folder()))


def clock() -> datetime:
    """The real time. The shell is the one place where it is read."""
    return datetime.now(UTC)  # noqa: TID251 - see above


def moment(app: App, now: str | None) -> datetime:
    """The time to answer for: `--now` in farm time, else the real one. Wrong use where it is no time."""
    return clock() if now is None else time_of(now, app.timezone())


def time_of(text: str, zone: tzinfo) -> datetime:
    """An ISO 8601 time, in the zone where it names no offset. Wrong use where it is no time."""
    try:
        said = datetime.fromisoformat(text)
    except ValueError:
        raise click.BadParameter(f"'{text}' is no ISO 8601 time, such as 2026-11-25T07:10:00-06:00") from None
    return said if said.tzinfo else said.replace(tzinfo=zone)


def refuse(problem: Problem, *, as_json: bool = False) -> NoReturn:
    """Say what stands in the way and what to do, and end with 1."""
    if as_json:
        click.echo(to_line({"problem": {"code": problem.code, "text": problem.text, "remedy": problem.remedy}}))
    else:
        click.echo(f"{problem.text} {problem.remedy}".strip(), err=True)
    sys.exit(1)


def why_not(error: Exception) -> str:
    """What the system says of a file, without its numbers."""
    return (error.strerror or str(error)) if isinstance(error, OSError) else str(error)


def tell(document: dict[str, Any], reply: Reply, *, as_json: bool) -> None:
    """Print an answer in the form that was asked for."""
    click.echo(to_line(document) if as_json else on_screen(in_lines(reply)))


def in_lines(reply: Reply) -> str:
    """The reply where no chat goes on: under it, the commands that its choices stand for."""
    if not reply.choices:
        return reply.text
    asks = reply.lines[-1].endswith("?") if reply.lines else False
    lead = "Answer with one of:" if asks else "You can go on with:"
    return "\n".join((*reply.lines, lead, *(f"  haynote say {shlex.quote(choice.says)}" for choice in reply.choices)))


def to_line(document: Any) -> str:
    """JSON on one line, letters of any script as they are."""
    return json.dumps(document, ensure_ascii=False)
