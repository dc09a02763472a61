"""How the farm wants things.

Over 300 lines: two dozen settings, each with its own words and limits.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd import settings
from core.herd.questions import breed_on_book
from core.herd.state import Herd
from core.herd.wishes import BY_BREED, WISHES, normal
from core.notes.clauses.amounts import bare_weight
from core.notes.clauses.clause import Clause
from core.notes.clauses.leftovers import ASKED
from core.notes.clauses.scene import Found, Need
from core.notes.fact import SettingValue
from core.notes.kind import Example, Kind
from core.notes.settings_page import ABOUT
from core.notes.slots.items import breed_said, color_said
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
_WEEKDAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


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
    times = [
        time
        for i in c.sorted_as("time", "clock")
        if (time := c.items[i].value if c.items[i].sort == "time" else clock_time(c.items[i].value))
    ]
    if "quiet" in text and len(times) == 1 and "quiet from" in text:
        times += [
            f"{hour:02d}:00"
            for i in c.sorted_as("num")
            if (hour := c.whole(i)) is not None and c.said(i - 1) in {"to", "until", "till", "-"}
        ]
    if "quiet" in text and len(times) > 1:
        for name, time in zip(("quiet_from", "quiet_to"), times, strict=False):
            c.take(Found(SettingChanged, {"name": name, "value": time}, list(c.items), _more_than(c, 2)))
        return
    for name, wanted, value in _SETTINGS:
        if re.search(wanted, text):
            said = value(c)
            if said is not None:
                used = list(c.items)
                breed = _breed(c, text) if name in _BY_BREED else None
                more = _beside_words(c, str(said)) if name in _FREE else _more_than(c, 0 if name in _WORDED else 1)
                c.take(Found(SettingChanged, {"name": name, "value": said, "breed": breed}, used, more))
                return


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


def _whole(c: Clause) -> SettingValue | None:
    numbers = [c.whole(i) for i in c.sorted_as("num") if c.whole(i) is not None]
    return numbers[0] if len(numbers) == 1 else None


def _share(c: Clause) -> SettingValue | None:
    for i in c.sorted_as("percent", "num"):
        value = float(c.items[i].value)
        share = round(value / 100 if c.items[i].sort == "percent" or value > 1 else value, 4)
        return share if share <= 1 else value  # over a hundred per cent: left as said, for the check to refuse
    return None


def _money(c: Clause) -> SettingValue | None:
    for i in c.sorted_as("money"):
        return f"{c.items[i].value // 100}.{c.items[i].value % 100:02d}"
    numbers = c.sorted_as("num")
    if len(numbers) == 1:
        cents = int((c.items[numbers[0]].value * 100).to_integral_value())
        return f"{cents // 100}.{cents % 100:02d}"
    return None


def _litters(c: Clause) -> SettingValue | None:
    """How many litters are wanted; nothing of one doe, nor of litters that were."""
    return (
        _whole(c) if re.search(r"\b(?:want(?:ed)?|need(?:ed)?|spring litters|aim(?:ing)? for)\b", c.text()) and not c.explicit() else None
    )


def _feed_to_spend(c: Clause) -> SettingValue | None:
    """What may be eaten until spring [g]: a weight, or bags at the farm's weight of one; nothing where bags are bought."""
    if c.has("buy", "purchase", "money"):
        return None
    bags = [c.whole(i) for i in c.sorted_as("num") if c.said(i + 1).split(" ")[0] in {"bag", "bags", "sack", "sacks"}]
    if bags:
        return None if bags[0] is None else bags[0] * settings.feed_bag(c.herd.settings)
    return _grams(c) if c.sorted_as("weight", "pair") else None


def _temper(c: Clause) -> SettingValue | None:
    """Which temper is put up with: `good`, `mixed` or `any`."""
    text = c.text()
    if re.fullmatch(r"(?:setting:? )?(?:we (?:want|keep) |i (?:want|keep) )?no biters(?: here| please| this winter)?[ .!]*", text):
        return "good"
    if re.search(r"\btemper does(?:nt|n't| not) matter\b|\bany temper\b", text):
        return "any"
    found = re.search(r"\blowest[ _]temper\b[\s:=]*(?:is |to )?(any|mixed|good)\b", text)
    return found.group(1) if found else None


def _risk(c: Clause) -> SettingValue | None:
    """How much may rest on thin evidence: `low`, `some` or `high`; of one animal it is no setting."""
    text = c.text()
    if c.explicit() or c.sorted_as("num"):
        return None
    found = re.search(r"\brisk\b[\s:=]*(?:is |to )?(low|some|high)\b|\btake (no|little|few|some|more) risks?\b|\b(chance) on\b", text)
    return None if found is None else _RISKS[next(word for word in found.groups() if word)]


_RISKS: Final = {"low": "low", "no": "low", "little": "low", "few": "low", "some": "some", "high": "high", "more": "high", "chance": "high"}


def _plain_notes(c: Clause) -> SettingValue | None:
    """What a plain note is answered with: `words` or `thumb`; of an animal it is no setting."""
    text = c.text()
    if c.explicit() or c.sorted_as("num"):
        return None
    if re.search(
        r"\b(?:answer|reply|talk|write|speak)\b.*\bwords\b|\bwords again\b|\bno (?:more )?thumbs\b|\bmode off\b|\bnotes (?:is |in |to )?words\b",
        text,
    ):
        return "words"
    enough = r"\bthumbs?(?: up)? (?:is|are) (?:enough|fine|plenty|all)\b|\bjust (?:give me )?(?:a )?thumbs?\b"
    return "thumb" if re.search(rf"{enough}|\bmode(?: on)?$|\bnotes (?:is |in |to )?thumb\b", text) else None


def _price_of_feed(c: Clause) -> SettingValue | None:
    """Money, unless the number counts bags: `feed now 3 bags` tells what is left."""
    counted = any(c.said(i + 1) in {"bag", "bags", "sack", "sacks"} for i in c.sorted_as("num"))
    return None if counted else _money(c)


def _grams(c: Clause) -> SettingValue | None:
    for i in c.sorted_as("weight", "pair"):
        return c.grams(i)
    numbers = c.sorted_as("num")
    return bare_weight(c, numbers[0])[0] if len(numbers) == 1 else None


def _low(c: Clause) -> SettingValue | None:
    """How cold winter's nights are [C]; with a day it is that night's weather and no setting."""
    told = c.sorted_as("temp") or c.sorted_as("num")
    if len(told) != 1 or c.dates():
        return None
    item = c.items[told[0]]
    scale = (item.unit if item.sort == "temp" else "") or c.herd.settings.temperature_units
    return words.celsius(float(item.value), scale)


def _day(c: Clause) -> SettingValue | None:
    for i in c.dates():
        days = c.resolved(c.items[i].value, "plan")
        return days.on.isoformat() if days.on else None
    return None


def _weekday(c: Clause) -> SettingValue | None:
    for i in c.dates():
        said = c.items[i].value
        if said.shape == "weekday":
            return _WEEKDAYS[said.a]
    if c.dates():
        return None  # "digest sunday on the 45th"
    found = re.search(r"\b(mon|tue|wed|thu|fri|sat|sun)[a-z]*\b", c.text())
    return next((day for day in _WEEKDAYS if found and day.lower().startswith(found.group(1))), None)


def _time(c: Clause) -> SettingValue | None:
    for i in c.sorted_as("time"):
        return str(c.items[i].value)
    for i in c.sorted_as("clock"):
        return clock_time(c.items[i].value)
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    if len(numbers) == 1 and 0 <= (c.whole(numbers[0]) or 0) < 24:  # not a figure: hours in a day
        return f"{c.whole(numbers[0]):02d}:00"
    return None


def _units(c: Clause) -> SettingValue | None:
    return (
        "kg"
        if re.search(r"\b(kg|kilos?|kilograms|grams|metric)\b", c.text())
        else ("lb" if re.search(r"\b(lbs?|pounds)\b", c.text()) else None)
    )


def _degrees(c: Clause) -> SettingValue | None:
    return "C" if re.search(r"\b(c|celsius|centigrade)\b", c.text()) else ("F" if re.search(r"\b(f|fahrenheit)\b", c.text()) else None)


def _order(c: Clause) -> SettingValue | None:
    found = re.search(r"\b(mdy|dmy|ymd)\b", c.text())
    if found is None and re.search(r"\b(day|month) first\b", c.text()):
        return "DMY" if "day first" in c.text() else "MDY"
    return found.group(1).upper() if found else None


def _dotted(c: Clause) -> SettingValue | None:
    found = re.search(r"\b(decimal|ounces)\b", c.text())
    return found.group(1) if found else None


def _only_colors(c: Clause) -> SettingValue | None:
    """`only want castor and opal from here on`: colours alone, and no more of other things."""
    told = [item for item in c.items if item.said not in ONLY and item.sort != "mark"]
    colors = [color for item in told if (color := color_said(item))]
    return " and ".join(colors) if colors and len(colors) == len(told) else None


ONLY: Final = frozenset(
    {
        "only want", "i only want", "we only want", "only wanting", "and", "or", "from now on", "from", "here", "on", "now", "i", "we",
        "please", "this", "year", "the", "colors", "colours", "in",
    }
)  # fmt: skip


def _behind(*words: str) -> Callable[[Clause], SettingValue | None]:
    def value(c: Clause) -> SettingValue | None:
        text = c.text()
        for word in words:
            found = re.search(rf"\b{word}\b[\s:=]*(?:is|are|to|for)?\s*(.+)", text)
            if found:
                return re.sub(r"\s+,", ",", found.groups()[-1]).strip(" .")
        return None

    return value


def _zone(c: Clause) -> SettingValue | None:
    """A name of the world's table of time zones, as typed: `America/New_York`."""
    found = re.search(r"[A-Za-z]+/[A-Za-z_]+(?:[/ ][A-Za-z_]+)*|\bUTC\b", c.scene.text)
    return found.group().replace(" ", "_") if found else None


#: Words for a usual night of winter.
_COLD_SEASON: Final = r"\bwinter (?:nights|lows?|temps?|temperatures?)\b|\b(?:nights|lows?|temps?|temperatures?) in (?:the )?winter\b"
_SETTINGS: Final[tuple[tuple[str, str, Callable[[Clause], SettingValue | None]], ...]] = (
    ("litters_wanted", r"\blitters\b", _litters),
    ("winter_feed", r"\b(?:feed|bags) (?:until|till?|for|through) (?:the |this )?(?:winter|spring)\b|\bwinter feed\b", _feed_to_spend),
    ("lowest_temper", r"\bbiters\b|\btemper\b", _temper),
    ("risk", r"\brisks?\b|\ba chance on\b", _risk),
    ("plain_notes", r"\bthumbs?\b|\bwords\b|\bplain[ _]notes\b|\bquiet mode\b", _plain_notes),
    ("bucks_a_breed", r"\bbucks?\b.*\b(breed)\b|\bbucks a\b", _whole),
    ("does_a_breed", r"\bdoes\b.*\b(breed)\b", _whole),
    ("target_weight", r"\btarget weight\b|\btarget\b", _grams),
    ("date_order", r"\bdate order\b|\b(?:day|month) first\b|\bdates? (?:are|in|is)\b", _order),
    ("dotted_weight", r"\bdotted\b", _dotted),
    (
        "weight_units",
        r"\bweight units?\b|\bweights (?:are )?(?:in|to)\b|\bunits\b.*\b(?:kg|lbs?|pounds|metric)\b|\buse (?:kg|kilos|kilograms|grams|pounds)\b",
        _units,
    ),
    ("temperature_units", r"\btemp\w*\b|\buse (?:celsius|fahrenheit)\b", _degrees),
    ("timezone", r"\btime ?zone\b|\b(?:we are|farm is) (?:on|in)\b", _zone),
    ("reminder_time", r"\breminders? (?:(?:to )?come )?(?:time|at)\b|\bremind me at\b(?!.*\bto\b)|\breminders?\b.*\bfrom now on\b", _time),
    ("digest_day", r"\bdigest\b", _weekday),
    ("quiet_to", r"\b(?:before|quiet (?:until|till?|to))\b", _time),
    ("quiet_from", r"\bquiet\b|\bafter\b", _time),
    ("lowest_survival", r"\bsurvival\b", _share),
    ("highest_coi", r"\bcoi\b|\binbreeding\b", _share),
    ("colors_wanted", r"\bonly want(?:ing)?\b", _only_colors),
    ("colors_wanted", r"\bcolou?rs (?:wanted|we want|i want)\b", _behind("colou?rs (?:wanted|we want|i want)")),
    ("cup_weight", r"\bcup\b", _grams),
    (
        "feed_bag",
        r"\bfeed bags?\b(?!.*\$)|^(?:the |our )?bags? (?:is|are)\b.*\b(?:lbs?|pounds|kg|kilos)\b|\bbags? of feed\b.*\b(?:lbs?|pounds|kg)\b",
        _grams,
    ),
    ("feed_money", r"\bfeed (?:budget|money)\b", _money),
    (
        "feed_price",
        r"\bfeed (?:price|is|costs|now|up to|went (?:up )?to|went up(?: again)?|has gone (?:up )?to)\b|\bfeed \$? ?[\d.]+ (?:a|per) bag now\b|\bfeed\b.* (?:a|per) bag now\b|\bbag of feed\b|\bpellets are\b",
        _price_of_feed,
    ),
    ("mouths", r"\bmouths\b|\bof us\b|\bpeople to feed\b|\b(?:rabbits|animals) at most\b", _whole),
    ("winter_low", _COLD_SEASON, _low),
    ("winter", rf"^(?!.*(?:{_COLD_SEASON})).*\bwinter\b", _day),
    ("spring", r"\bspring\b", _day),
    ("cages", r"\bcages\b", _whole),
    ("aim", r"\b(?:aim|goal)\b", _behind("aim", "goal")),
)


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


def reply(fact: SettingChanged, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The setting in plain words, in the farm's own units."""
    value = normal(fact.name, fact.value)
    if value is None:
        return (f"{_plain(fact.name)} can't be {fact.value}.",)
    breed = f" of {fact.breed}" if fact.breed is not None else ""
    said = words.sentence(_SAID[fact.name].format(value=_shown(fact.name, value, after), breed=breed, each=breed or " of each breed"))
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
