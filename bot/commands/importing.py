"""Other people's spreadsheets in, and our own tables back."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from bot.commands.options import book_options, json_option, moment, now_option, opened, refuse, tell, why_not
from bot.commands.talking import at_home, author_option
from core.problem import Problem


@click.command("import", short_help="Take in a spreadsheet of animals, matings, litters or weights.")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--dry-run", "dry", is_flag=True, help="Only show what each row would become.")
@click.option(
    "--as",
    "decided",
    multiple=True,
    metavar="WHAT=VALUE",
    help="Answer a question beforehand, or say what a column is: dates=DMY, unit=oz, 'Left ear=tag', Lot=ignore. May be given several times.",
)
@author_option
@json_option
@now_option
@book_options
def import_(
    file: Path, dry: bool, decided: tuple[str, ...], author: str, as_json: bool, now: str | None, book: str | None, farm: str | None
) -> None:
    """Take in a spreadsheet: CSV in any letters and with any separator, or XLSX; or tables and JSON that 'haynote export' wrote.

    Columns are recognised by their headings and by what stands below. What is unclear is asked before anything is recorded; what can't
    be made a note of is kept as words. All of it is one note, which 'haynote say undo' takes back.
    """
    from bot.tables.sheets import NoSheetsError, sheets_in  # noqa: PLC0415 - most commands read no sheets
    from core.app import Brought  # noqa: PLC0415 - loads the store

    decisions = decisions_of(decided)
    try:
        sheets = sheets_in(file)
    except (OSError, NoSheetsError) as error:
        refuse(
            Problem(
                "no_file",
                f"{file} can't be read: {why_not(error) if isinstance(error, OSError) else error}.",
                remedy="Give a CSV file or a workbook (.xlsx).",
            ),
            as_json=as_json,
        )
    app = opened(book, farm, as_json=as_json)
    if not dry and not app.is_book(sheets):
        at_home(app, now)
    with click.progressbar(length=1, label="Reading rows", file=sys.stderr) as bar:

        def progress(done: int, length: int) -> None:
            bar.length = length
            bar.update(done - bar.pos)

        told = app.move_in(Brought(file.name, sheets, author, moment(app, now)), decisions, dry=dry, progress=progress)
    if isinstance(told, Problem):
        refuse(told, as_json=as_json)
    tell(told.document, told.reply, as_json=as_json)


def decisions_of(decided: tuple[str, ...]) -> dict[str, str]:
    """`WHAT=VALUE`, each. Wrong use where one has no equals sign."""
    for each in decided:
        if "=" not in each:
            raise click.BadParameter(f"'{each}' is no WHAT=VALUE, such as dates=DMY", param_hint="--as")
    pairs = (each.rpartition("=") for each in decided)
    return {what.strip(): value.strip() for what, _, value in pairs}
