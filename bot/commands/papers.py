"""Files to print or to carry off: papers as PDF, the chores as a calendar."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from bot.commands.options import book_options, json_option, moment, now_option, opened, refuse, to_line, why_not
from bot.settings import data_folder
from core.problem import Problem

out_option = click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False, allow_dash=True),
    metavar="FILE",
    help="Write it there; - for standard output. Default: a file of its own name in this folder.",
)


#: Each paper, and what it is.
PAPERS = {
    "cards": "cage cards, six on a sheet, with QR codes that open the chat at the animal",
    "pedigree": "an animal's ancestors in three to five generations: --generations",
    "litter": "the record of a doe's, a buck's or a kit's newest litter; without a tag of each litter under a doe",
    "plan": "who should stay, be sold or go, and why",
    "chores": "what is due in the coming week, day by day, to tick off: --days",
    "crib": "what to text when",
}
#: Those that are of one animal.
OF_ONE = frozenset({"pedigree"})


@click.command(
    short_help="A paper to print: cage cards and more.",
    epilog="\b\n" + "\n".join(f"{name:10}{what}" for name, what in PAPERS.items()),
)
@click.argument("what", type=click.Choice(list(PAPERS)))
@click.argument("tag", required=False)
@click.option("--only", type=click.Choice(["bucks", "does", "grow-outs"]), help="Cards or plan of these only.")
@click.option("--breed", metavar="BREED", help="Cards or plan of this breed only.")
@click.option("--generations", type=click.IntRange(3, 5), help="Of a pedigree. Default: 4.")
@click.option("--days", type=click.IntRange(min=0), help="How many days ahead the chores are told. Default: 6, with today a week.")
@click.option("--size", type=click.Choice(["letter", "a4"]), help="The sheet. Default: letter where the farm weighs in pounds, else a4.")
@click.option("--bot", metavar="NAME", help="The bot that the QR codes open. Default: the one that last served this book.")
@out_option
@json_option
@now_option
@book_options
def paper(
    what: str,
    tag: str | None,
    only: str | None,
    breed: str | None,
    generations: int | None,
    days: int | None,
    size: str | None,
    bot: str | None,
    out: Path | None,
    as_json: bool,
    now: str | None,
    book: str | None,
    farm: str | None,
) -> None:
    """A paper to print, as PDF: of the herd, or of one animal by its tag or name.

    Text is shrunk until it fits and never cut.
    """
    from bot.papers.pdf import pdf  # noqa: PLC0415 - loaded when it is wanted
    from bot.telegram.met import bot_of  # noqa: PLC0415
    from core.app.papers import Wanted  # noqa: PLC0415

    if what in OF_ONE and tag is None:
        raise click.UsageError(f"Whose {what}? Give a tag: haynote paper {what} 14")
    app = opened(book, farm, as_json=as_json)
    told = app.paper(what, Wanted(tag, only, breed, days, generations, size), moment(app, now))
    if isinstance(told, Problem):
        refuse(told, as_json=as_json)
    made = pdf(told, bot.removeprefix("@") if bot else bot_of(data_folder(), app.place))
    if made.missing:
        click.echo(f"No font on this machine has {made.missing}: hollow boxes stand for these letters.", err=True)
    write(made.content, out or Path(told.name), told.alt, as_json=as_json)


@click.command(short_help="The chores as a calendar file.")
@click.option("--days", type=click.IntRange(min=0), help="How many days ahead. Default: 14.")
@out_option
@json_option
@now_option
@book_options
def calendar(days: int | None, out: Path | None, as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """The chores of the coming days, overdue ones first, as a calendar file (iCalendar) with alarms.

    Taking in a newer file replaces the chores of an older one. What is done by then has to be taken off by hand.
    """
    from bot.papers.calendar import ics  # noqa: PLC0415 - loaded when it is wanted
    from core.app.papers import Wanted  # noqa: PLC0415

    app = opened(book, farm, as_json=as_json)
    told = app.calendar(moment(app, now), Wanted(days=days))
    write(ics(told), out or Path("chores.ics"), told.alt, as_json=as_json)


def write(content: bytes, path: Path, alt: str, *, as_json: bool) -> None:
    """Put the file where it is wanted, and say so; the command ends here where that can't be."""
    if str(path) == "-":
        if as_json:
            raise click.UsageError("Standard output can't hold both the file and JSON: give --out FILE.")
        click.echo(content, nl=False)
        return
    try:
        path.write_bytes(content)
    except OSError as error:
        refuse(
            Problem("no_file", f"{path} can't be written: {why_not(error)}.", remedy="Give a place that you can write to."), as_json=as_json
        )
    if as_json:
        click.echo(to_line({"file": str(path), "bytes": len(content), "text": alt}))
    else:
        click.echo(f"{alt}\nFile: {path}", file=sys.stdout)
