"""The reference page of the farm's settings: `python -m core.notes.settings_page > docs/reference/settings.md`."""

from __future__ import annotations

import sys
from calendar import month_name
from typing import Final

from core import words
from core.herd import settings
from core.herd.settings import Settings
from core.herd.wishes import BY_BREED

_HEAD: Final = """# Settings

How the farm wants things. Every setting is changed by a note, like anything else, and `undo` takes it back. Made by
`python -m core.notes.settings_page`; don't edit it by hand. Where the defaults come from: [Figures](figures.md).

Those marked *by breed* can be said for one breed: `target weight for mini rex 3 lb 8`. Any of them can be said in full, too:
`setting cages is 12`. The names are those of `haynote read`.

| setting | what it is for | default | a note that changes it |
|---|---|---|---|"""

_OUTSIDE: Final = """## Settings from outside

These belong to the machine, not to the farm. They are environment variables, or lines of a settings file such as `bot_token = "..."`; where both
say something, the variable wins. The file is `settings.toml` in your folder for settings (on Linux `~/.config/haynote`), or in the data folder that
`HAYNOTE_DATA` names; `HAYNOTE_SETTINGS` names any other. `haynote setup` writes the token into it.

| variable | in the file | what it is for | default |
|---|---|---|---|
| `HAYNOTE_DATABASE_URL` | `database_url` | where the book is: an address such as `sqlite:////home/me/book.sqlite`, or of a PostgreSQL database; `--book` wins | a file in your data folder |
| `HAYNOTE_DATA` | `data` | the data folder | where your system keeps such data |
| `HAYNOTE_BOT_TOKEN` | `bot_token` | the key of your Telegram bot; keep it secret | none: `haynote serve` needs it |
| `HAYNOTE_BOT_API` | `bot_api` | the address of the Bot API | `https://api.telegram.org` |
| `HAYNOTE_WEBHOOK` | `webhook` | the https address to which Telegram brings updates; `--webhook` wins | none: the bot asks for them |
| `HAYNOTE_LISTEN` | `listen` | where to listen for them; `--listen` wins | `127.0.0.1:8443` |
| `HAYNOTE_VOICE_MODEL` | `voice_model` | the folder of a model to hear voice notes with | the packaged one |
| `HAYNOTE_KEEP_VOICE` | `keep_voice`: `true` or `false` | whether recordings are kept once they were heard | no |"""

#: Setting -> what it is for, and a note that changes it.
ABOUT: Final[dict[str, tuple[str, str]]] = {
    "bucks_a_breed": ("how many bucks of a breed you keep; more are flagged", "keep two bucks a breed"),
    "does_a_breed": ("how many does of a breed you mean to keep", "keep 8 does a breed"),
    "cages": ("how many cages there are", "setting cages is 12"),
    "mouths": ("how many rabbits you can feed through the winter, untagged kits too", "12 mouths through winter"),
    "litters_wanted": ("how many litters you want in spring", "8 litters wanted in spring"),
    "lowest_temper": ("which temper you put up with: good (no bad note in 12 months), mixed (one), any", "no biters"),
    "risk": ("how much may rest on thin evidence: low, some or high", "take no risk"),
    "winter": ("the day your winter begins", "winter starts dec 15"),
    "spring": ("the day your winter is over; feed is counted until then", "spring is april 15"),
    "winter_low": ("how cold a usual winter's night is at the rabbits; the cold asks for more feed", "winter nights are 10F"),
    "feed_price": ("what a bag of feed costs", "feed is 22 a bag"),
    "feed_money": ("what you can spend on feed over the winter", "feed budget 300"),
    "winter_feed": ("how much feed there may be until spring", "12 bags of feed until spring"),
    "feed_bag": ("what a bag of feed weighs", "feed bags are 50 lb"),
    "cup_weight": ("what a cup of your pellets weighs", "a cup of feed weighs 5 oz"),
    "target_weight": ("what a grow-out should weigh at sixteen weeks; lighter ones are flagged", "target weight 4 lb 8 oz"),
    "weight_units": ("what a bare weight is in", "weights in kg"),
    "temperature_units": ("what a bare temperature is in", "temperatures in celsius"),
    "date_order": ("how 3/4 is read: MDY, DMY or YMD", "date order dmy"),
    "dotted_weight": ("whether 4.6 is pounds and a fraction, or pounds and ounces", "dotted weight ounces"),
    "timezone": ("where the farm is", "timezone America/Denver"),
    "reminder_time": ("when reminders are sent", "reminders at 8 am"),
    "digest_day": ("the day of the weekly digest", "digest on saturday"),
    "quiet_from": ("from when nothing is sent", "quiet after 10 pm"),
    "quiet_to": ("until when nothing is sent", "quiet until 6:00"),
    "plain_notes": ("what a note that needs no answer gets on Telegram: words, or a thumb up", "a thumb up is enough"),
    "highest_coi": ("the inbreeding of kits from which you want to be warned", "highest coi 10%"),
    "lowest_survival": ("the share of live-born kits that a doe should raise", "lowest survival 65%"),
    "colors_wanted": ("the colors you breed for", "colors wanted castor, opal"),
    "aim": ("what the rabbits are for", "aim is meat and show"),
    "junior_age": ("from which age a young one counts as a junior, in days", "setting junior_age is 160"),
}


def page() -> str:
    """The whole page, in Markdown."""
    rows = [f"| `{name}`{_by_breed(name)} | {what} | {default(name)} | `{note}` |" for name, (what, note) in ABOUT.items()]
    return "\n".join((_HEAD, *rows)) + "\n\n" + _OUTSIDE + "\n"


def _by_breed(name: str) -> str:
    return " *by breed*" if name in BY_BREED else ""


def default(name: str) -> str:
    """What holds until the farm says otherwise, in words."""
    return _IN_WORDS.get(name, "not said")


def _defaults() -> dict[str, str]:
    fresh = Settings()
    quiet_from, quiet_to = settings.quiet_hours(fresh)
    return {
        "bucks_a_breed": str(settings.bucks_a_breed(fresh)),
        "lowest_temper": settings.lowest_temper(fresh),
        "risk": settings.risk(fresh),
        "winter": _day(settings.WINTER_BEGINS),
        "spring": _day(settings.SPRING_BEGINS),
        "feed_bag": words.weight(settings.feed_bag(fresh), "lb"),
        "cup_weight": words.weight(settings.cup_weight(fresh), "lb"),
        "target_weight": f"by the breed's size; {words.weight(settings.target_weight(fresh), 'lb')} where the breed is unknown",
        "weight_units": fresh.weight_units,
        "temperature_units": fresh.temperature_units,
        "date_order": fresh.date_order,
        "dotted_weight": "asked once",
        "timezone": "this machine's, else UTC",
        "reminder_time": settings.reminder_time(fresh),
        "digest_day": settings.digest_day(fresh),
        "quiet_from": quiet_from,
        "quiet_to": quiet_to,
        "plain_notes": settings.plain_notes(fresh),
        "highest_coi": words.share(settings.highest_coi(fresh)),
        "lowest_survival": words.share(settings.lowest_survival(fresh)),
        "junior_age": str(settings.junior_age(fresh)),
    }


def _day(season: tuple[int, int]) -> str:
    month, day = season
    return f"{day} {month_name[month]}"


_IN_WORDS: Final = _defaults()

if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
