"""How the farm wants things.

Over 300 lines: two dozen settings, each with its own words and limits.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd import settings
from core.herd.questions import breed_on_book
from core.herd.state import Herd
from core.herd.wishes import BY_BREED, WISHES, normal
from core.notes.clauses.clause import Clause
from core.notes.clauses.leftovers import ASKED
from core.notes.clauses.scene import Found, Need
from core.notes.clauses.wished import WISHED
from core.notes.fact import SettingValue
from core.notes.kind import Example, Kind
from core.notes.settings_page import ABOUT
from core.notes.slots.items import breed_said
from core.notes.slots.measures import clock_time
from core.notes.telling import breed_written, grams, money
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingChanged:
    """How the farm wants things."""

    kind: ClassVar[str] = "setting"

    name: str
    value: SettingValue
    breed: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example(
        "we have 30 cages. feed is 22.75 a bag now",
        ({"name": "cages", "value": 30}, {"name": "feed_price", "value": "22.75"}),
    ),
    Example(
        "9 gets 1 cup\nfeed is 24 a bag now",
        ({"name": "feed_price", "value": "24.00"}, {"kind": "ration", "who": "9", "amount": 1, "unit": "cup", "on": "2026-11-25"}),
    ),
    Example("timezone america/chicago", ({"name": "timezone", "value": "america/chicago"},)),
    Example("keep two bucks a breed", ({"name": "bucks_a_breed", "value": 2},)),
    Example("cup = 5 oz", ({"name": "cup_weight", "value": 142},)),
    Example("there are 18 cages", ({"name": "cages", "value": 18},)),
    Example("24 cages", ({"name": "cages", "value": 24},)),
    Example("only 9 cages", ({"name": "cages", "value": 9},)),
    Example("winter dec 10", ({"name": "winter", "value": "2026-12-10"},)),
    Example("bucks/breed 3", ({"name": "bucks_a_breed", "value": 3},)),
    Example("Would you send the reminders at 7 in the evening, please", ({"name": "reminder_time", "value": "19:00"},)),
    Example(
        "Hey, can you make my reminders at 5:45, the rooster has me up by then anyhow and I like to have my list before coffee, if that can be done",
        ({"name": "reminder_time", "value": "05:45"},),
    ),
    Example("keep three bucks a breed", ({"name": "bucks_a_breed", "value": 3},)),
    Example("Setting: winter starts 1 Dec.", ({"name": "winter", "value": "2026-12-01"},)),
    Example(
        "Setting: quiet hours 21:00 to 06:30.",
        (
            {"name": "quiet_from", "value": "21:00"},
            {"name": "quiet_to", "value": "06:30"},
        ),
    ),
    Example("Setting: target weight Mini Rex 4 lb.", ({"name": "target_weight", "value": 1814, "breed": "Mini Rex"},)),
    Example("feed has gone up to $23 a bag", ({"name": "feed_price", "value": "23.00"},)),
    Example("set the weights to kilos please", ({"name": "weight_units", "value": "kg"},)),
    Example("we are on mountain time here, America/Denver", ({"name": "timezone", "value": "America/Denver"},)),
    Example("kindly use celsius", ({"name": "temperature_units", "value": "C"},)),
    Example("temperature in fahrenheit from now on", ({"name": "temperature_units", "value": "F"},)),
    Example("use kilograms from now on", ({"name": "weight_units", "value": "kg"},)),
    Example("Feed's $20.50 a bag now.", ({"name": "feed_price", "value": "20.50"},)),
    Example("feed is up again, they want 23.50 a bag now", ({"name": "feed_price", "value": "23.50"},)),
    Example("winter nights are 10F", ({"name": "winter_low", "value": -12.2},)),
    Example("usual winter low is 15 F here", ({"name": "winter_low", "value": -9.4},)),
    Example("winter nights get down to -5 C", ({"name": "winter_low", "value": -5.0},)),
    Example("nights in winter are around 20 degrees", ({"name": "winter_low", "value": -6.7},)),
    Example("feed now 21.75/bag", ({"name": "feed_price", "value": "21.75"},)),
    Example("12 mouths through winter", ({"name": "mouths", "value": 12},)),
    Example("20 rabbits at most this winter", ({"name": "mouths", "value": 20},)),
    Example("8 litters wanted in spring", ({"name": "litters_wanted", "value": 8},)),
    Example("we want 3 Mini Rex litters in spring", ({"name": "litters_wanted", "value": 3, "breed": "Mini Rex"},)),
    Example("12 bags of feed until spring", ({"name": "winter_feed", "value": 272160},)),
    Example("600 lb of feed for the winter", ({"name": "winter_feed", "value": 272155},)),
    Example("no biters", ({"name": "lowest_temper", "value": "good"},)),
    Example("temper doesn't matter", ({"name": "lowest_temper", "value": "any"},)),
    Example("take no risk", ({"name": "risk", "value": "low"},)),
    Example("willing to take a chance on young ones", ({"name": "risk", "value": "high"},)),
    Example("a thumb up is enough", ({"name": "plain_notes", "value": "thumb"},)),
    Example("just give me a thumbs up from now on", ({"name": "plain_notes", "value": "thumb"},)),
    Example("quiet mode on", ({"name": "plain_notes", "value": "thumb"},)),
    Example("answer me in words again", ({"name": "plain_notes", "value": "words"},)),
    Example("no more thumbs please", ({"name": "plain_notes", "value": "words"},)),
)
NOT_THIS: tuple[str, ...] = (
    "cleaned the cages",
    "we have to scrub 18 cages",
    "24 cages to clean",
    "it was a long winter",
    "winter low tonight 15F",
    "winter nights are long",
    "cold winter night, down to 12F",
    "feed is what 9 cares about",
    "keep 7 until he's proven",
    "feed now 3 bags",
    "bought 12 bags of feed for the winter",
    "14 had 2 litters in spring",
    "we want 2 litters out of 14 in spring",
    "no biters in this litter",
    "no risk of frost tonight",
    "take no risk with 14",
    "got my thumb in the cage door",
    "thumbs up for 14 from the judge",
    "14 is good, in plain words again",
)

OPENS: Final = ()
CUES: Final = {
    "setting": "use celsius | use fahrenheit | use kilograms | use kilos | use kg | use pounds | feed has gone up to | feed has gone to | the digest on | the digest every | dates day first | dates month first | day first | month first | colors we want | colours we want | colors i want | inbreeding go over | inbreeding over | inbreeding above | max inbreeding | inbreeding limit | pellets weighs | pellets weigh | feed weighs | number of cages | cup = | cup is | bucks / breed | does / breed | of feed weighs | setting | settings | set | a breed | per breed | each breed | breed limit | digest day | digest on | digest every | digest is | daily reminder at | daily reminders at | reminder time | reminders at | reminders come at | reminders to come at | remind me at | quiet | quiet hours | date order | weight units | weights in | weights to | farm is on | farm is in | we are on | temperature in | temp in"
    " | temperature units | temps in | temperatures in | timezone | time zone | cup weight | cup weighs | cup of feed weighs | feed bag | feed bags are | bag is | bags are | the bag is | the bags are | feed now | feed is now | a bag now | per bag now | feed went up to | feed went up again | feed went up | feed went to | feed up to | feed price | feed is | feed costs | feed budget | feed money | mouths | mouths to feed"
    " | of us to feed | people to feed | cages | winter | winter nights | winter low | winter lows | nights in winter | winter temps | spring | lowest survival | highest coi | coi limit | max coi | colors wanted | colours wanted | aim | target weight | dotted weight | our aim | my aim | goal | digest | bags of feed are | a bag of feed is | pellets are | our goal"
    " | mouths through | mouths through winter | mouths through the winter | mouths for winter | mouths for the winter | mouths this winter | mouths over winter | rabbits at most | animals at most | litters wanted | litters wanted in spring | wanted in spring | litters in spring | litters this spring | litters next spring | litters for spring | spring litters"
    " | feed until spring | feed till spring | feed til spring | feed for winter | feed for the winter | feed for this winter | feed through winter | feed through the winter | bags of feed until spring | bags of feed for the winter | bags of feed for winter | bags until spring | bags for the winter | of feed for the winter | of feed until spring | of feed for winter"
    " | no biters | lowest temper | temper does not matter | temper doesnt matter | any temper | take no risk | take no risks | take little risk | take few risks | take some risk | take more risk | risk is | a chance on | winter feed"
    " | from now on | cages for winter | cages for the winter | cages this winter | cages through winter | only want | we only want | i only want | only wanting"
    " | thumb up is | thumbs up is | thumb is | thumbs are | just a thumb | just a thumbs up | just give me a thumb | just give me a thumbs up | just thumb | no more thumbs | no thumbs"
    " | in words | words again | plain notes | quiet mode"
    " | dont text me | no messages | dont message me | a bag of feed costs | dont text | no texts | units | bag of feed",
    "unit_word": "kg | kilos | lb | lbs | pounds | kilograms | grams | celsius | fahrenheit | f | c | metric",
}  # fmt: skip

#: Questions in form only: `could you send my reminders at six`.
REQUESTS: Final = frozenset({"could you", "can you", "would you"})
_BY_BREED: Final = frozenset({"bucks_a_breed", "does_a_breed", "litters_wanted", "target_weight", "colors_wanted"})
#: Their value is a word.
_WORDED: Final = frozenset(
    {"date_order", "dotted_weight", "weight_units", "temperature_units", "timezone", "lowest_temper", "risk", "plain_notes"}
)
_FREE: Final = frozenset({"aim", "colors_wanted"})  # their words may name an animal


def read(c: Clause) -> None:
    """A wish of the farm's: its name and its value."""
    opening = c.opening()
    if not c.has("setting") or (
        opening is not None
        and c.said(opening) not in REQUESTS
        and any(mark == "question" or mark.startswith("ask:what_if") for mark in c.items[opening].marks)
    ):
        return
    text = c.text()
    hours = _quiet_hours(c, text) if "quiet" in text else []
    if len(hours) > 1:
        for name, time in zip(("quiet_from", "quiet_to"), hours, strict=False):
            c.take(Found(SettingChanged, {"name": name, "value": time}, list(c.items), _more_than(c, 2)))
        return
    for name, wanted, value in WISHED:
        if re.search(wanted, text):
            said = value(c)
            if said is not None:
                used = list(c.items)
                breed = _breed(c, text) if name in _BY_BREED else None
                more = _beside_words(c, str(said)) if name in _FREE else _more_than(c, 0 if name in _WORDED else 1)
                c.take(Found(SettingChanged, {"name": name, "value": said, "breed": breed}, used, more))
                return


def _quiet_hours(c: Clause, text: str) -> list[str]:
    """`quiet hours 9pm to 6am`, `quiet from 9pm to 6`: the hours told, in order."""
    times = [
        time
        for i in c.sorted_as("time", "clock")
        if (time := c.items[i].value if c.items[i].sort == "time" else clock_time(c.items[i].value))
    ]
    if len(times) == 1 and "quiet from" in text:
        times += [
            f"{hour:02d}:00"
            for i in c.sorted_as("num")
            if (hour := c.whole(i)) is not None and c.said(i - 1) in {"to", "until", "till", "-"}
        ]
    return times


def _breed(c: Clause, text: str) -> str | None:
    """The breed that a setting is for: one of the handbook, or as an animal of the herd has it."""
    return next((breed for item in c.items if (breed := breed_said(item))), None) or breed_on_book(c.herd, text)


def _more_than(c: Clause, most: int) -> Need | None:
    """What is said where the words hold more numbers than the setting takes, or an animal."""
    numbers = [
        item
        for item in c.items
        if (item.sort == "time" or item.sort in ASKED - {"animal", "code"}) and not (item.sort == "cup" and item.value == 1)
    ]  # "a cup of feed weighs 5 oz"
    return None if len(numbers) <= most and not c.explicit() else _one_thing()


def _beside_words(c: Clause, said: str) -> Need | None:
    """The same of a setting that is words: a number outside them."""
    outside = [item for item in c.items if item.sort in ASKED and item.said not in said and not (item.sort == "animal" and item.value.tags)]
    return _one_thing() if outside else None


def _one_thing() -> Need:
    return Need("what", "", "One thing at a time, please: send the setting and the rest each as its own note.")


def check(fact: SettingChanged, _herd: Herd, _today: date) -> Problem | None:
    """A setting there is, and a value that it can have."""
    if fact.name not in WISHES:
        return Problem("what", f"There is no setting {fact.name}.", (), 'Ask "help settings" for all there are.')
    if fact.breed is not None and fact.name not in BY_BREED:
        return Problem("what", f"{_plain(fact.name)} can't be set for one breed.", (), "Send it again without the breed.")
    if normal(fact.name, fact.value) is None:
        remedy = f"Send it again with another value, for example \u201c{ABOUT[fact.name][1]}\u201d."
        return Problem("what", f"{_plain(fact.name)} can't be {fact.value}.", (), remedy)
    return None


def apply(fact: SettingChanged, herd: Herd) -> Herd:
    """The farm wants it so from then on."""
    value = normal(fact.name, fact.value)
    if value is None:
        return herd
    return replace(herd, settings=settings.changed(herd.settings, fact.name, value, fact.breed))


_GRAMS = frozenset({"target_weight", "feed_bag", "cup_weight", "winter_feed"})
_SHARES = frozenset({"highest_coi", "lowest_survival"})
_DAYS = frozenset({"winter", "spring"})
_PRICES = frozenset({"feed_price", "feed_money"})


def _plain(name: str) -> str:
    return name.replace("_", " ").capitalize().replace("coi", "COI")


def reply(fact: SettingChanged, before: Herd, after: Herd) -> tuple[str, ...]:
    """The setting in plain words, in the farm's own units; told so where it was the same before."""
    value = normal(fact.name, fact.value)
    if value is None:
        return (f"{_plain(fact.name)} can't be {fact.value}.",)
    breed = f" of {fact.breed}" if fact.breed is not None else ""
    told = _SAID[fact.name].format(value=_shown(fact.name, value, after), breed=breed, each=breed or " of each breed")
    if before is not after and before.settings == after.settings:
        head, stop, more = told.partition(". ")
        told = f"{head}, as before{stop}{more}"
    said = words.sentence(told)
    return (said, *_quiet_hour(after)) if fact.name in _HOURS else (said,)


#: Settings that say together when reminders come.
_HOURS: Final = frozenset({"reminder_time", "quiet_from", "quiet_to"})


def _quiet_hour(herd: Herd) -> tuple[str, ...]:
    """What becomes of reminders whose hour is quiet."""
    hour, really = settings.reminder_time(herd.settings), settings.reminders_from(herd.settings)
    return () if hour == really else (f"{hour} is in your quiet hours, so reminders come when those end: at {really}.",)


#: Each setting as a person would say it.
_SAID: Final = {
    "bucks_a_breed": "bucks you keep{each}: {value}",
    "does_a_breed": "does you keep{each}: {value}",
    "cages": "cages: {value}",
    "mouths": "rabbits to feed through the winter, untagged kits too: {value} at most. Did you mean people? Then say undo",
    "litters_wanted": "litters you want{breed} in spring: {value}",
    "winter_feed": "feed until spring: {value} at most",
    "lowest_temper": "temper: {value}",
    "risk": "risk on thin evidence: {value}",
    "winter": "winter begins {value}",
    "spring": "winter is over {value}",
    "winter_low": "a winter's night here is {value}",
    "feed_price": "feed price: {value} a bag",
    "feed_money": "feed money for the winter: {value}",
    "feed_bag": "a bag of feed weighs {value}",
    "cup_weight": "a cup of pellets weighs {value}",
    "target_weight": "target weight of a grow-out{breed}: {value}",
    "weight_units": "a weight without a unit is in {value}",
    "temperature_units": "a temperature without a unit is in °{value}",
    "date_order": "dates in numbers are read {value}",
    "dotted_weight": "4.6 is {value}",
    "timezone": "the farm's time zone: {value}",
    "reminder_time": "reminders come at {value}",
    "digest_day": "the digest comes on {value}",
    "quiet_from": "nothing is sent from {value} on",
    "quiet_to": "nothing is sent before {value}",
    "plain_notes": "{value}",
    "highest_coi": "you are warned from an inbreeding of {value} on",
    "lowest_survival": "a doe should raise {value} of her live-born kits",
    "colors_wanted": "colors you breed for{breed}: {value}",
    "aim": "what the rabbits are for: {value}",
    "junior_age": "a young one counts as a junior from {value} days on",
}
_IN_WORDS: Final = {
    "MDY": "month first: 3/4 is March 4",
    "DMY": "day first: 3/4 is the third of April",
    "YMD": "year first: 2026/3/4 is March 4",
    "decimal": "4.6 lb",
    "ounces": "4 lb 6 oz",
    "any": "it doesn't count",
    "mixed": "two bad notes in 12 months count against an animal",
    "good": "one bad note in 12 months counts against an animal",
    "low": "little; an animal that is not well known counts for less",
    "some": "some",
    "words": "every note is answered in words",
    "thumb": "on Telegram a note that needs no answer gets a thumb up; what asks, warns or tells more still comes in words",
    "high": "much; an animal that is not well known counts for what may be expected of it",
}


WRITTEN = ("setting {name:WORD}(?: for {breed:BREED})? is {value:REST}",)


def _shown(name: str, value: SettingValue, herd: Herd) -> str:
    """The value as the farm says it."""
    if name in _GRAMS:
        return grams(herd, int(value))
    if name in _SHARES:
        return f"{words.plain(round(float(value) * 100, 1))} %"  # not a figure: per cent, as it was set: 12.5 %
    if name in _DAYS:
        return words.full_day(date.fromisoformat(str(value)))
    if name == "winter_low":
        return words.temperature(float(value), herd.settings.temperature_units)
    if name in _PRICES:
        return money(herd, int(str(value).replace(".", "")))
    return str(value).capitalize() if name == "digest_day" else _IN_WORDS.get(str(value), str(value))


def show(fact: SettingChanged, _herd: Herd) -> str:
    """`setting target_weight for Mini Rex is 2041`."""
    breed = f" for {breed_written(fact.breed)}" if fact.breed is not None else ""
    return f"setting {fact.name}{breed} is {fact.value}"


KIND = Kind(fact=SettingChanged, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
