"""Pictures as files."""

from __future__ import annotations

from pathlib import Path

import click

from bot.commands.options import book_options, json_option, moment, now_option, opened, refuse
from bot.commands.papers import out_option, write
from core.problem import Problem

#: Each picture, and what it shows.
PICTURES = {
    "growing": "an animal's weights, where they lead, and the likely day of the weight that is wanted",
    "litter": "the same for each kit of a doe's newest weighed litter",
    "litters": "a doe's or a buck's litters, one by one",
    "dams": "does by the share of kits that they raise",
    "bucks": "bucks by the growth that they pass on",
    "winter": "mouths and feed until spring, with and without those advised to go",
    "week": "the chores of seven days",
}


@click.command(
    short_help="A picture: how one grows, the winter's feed and more.",
    epilog="\b\n" + "\n".join(f"{name:9}{what}" for name, what in PICTURES.items()),
)
@click.argument("what", type=click.Choice(list(PICTURES)))
@click.argument("tag", required=False)
@click.option("--breed", metavar="BREED", help="Does or bucks of this breed only.")
@out_option
@json_option
@now_option
@book_options
def picture(
    what: str, tag: str | None, breed: str | None, out: Path | None, as_json: bool, now: str | None, book: str | None, farm: str | None
) -> None:
    """A picture, as PNG: of the farm, or of one animal by its tag or name."""
    from bot.pictures.draw import png  # noqa: PLC0415 - loaded when it is wanted
    from core.app.pictures import OF_ONE  # noqa: PLC0415

    if (what in OF_ONE) != (tag is not None):
        raise click.UsageError(
            f"A picture of {what} is of the farm: give no tag." if tag else f"Whose? Give a tag: haynote picture {what} 14"
        )
    app = opened(book, farm, as_json=as_json)
    found = app.picture(what, tag or breed, moment(app, now))
    if isinstance(found, Problem):
        refuse(found, as_json=as_json)
    write(png(found), out or Path(f"{what}.png"), found.alt, as_json=as_json)
