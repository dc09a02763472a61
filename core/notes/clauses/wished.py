"""The settings that a farm can wish for: the words of each, and its value as the statement tells it."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from core import words
from core.herd import settings
from core.notes.clauses.amounts import bare_weight, cents
from core.notes.clauses.clause import Clause
from core.notes.fact import SettingValue
from core.notes.slots.items import color_said
from core.notes.slots.measures import clock_time

WEEKDAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
RISKS: Final = {"low": "low", "no": "low", "little": "low", "few": "low", "some": "some", "high": "high", "more": "high", "chance": "high"}


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
    """Money, else the only number."""
    numbers = c.sorted_as("num")
    place = next(iter(c.sorted_as("money")), numbers[0] if len(numbers) == 1 else None)
    return None if place is None else words.money(cents(c, place))


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
    return None if found is None else RISKS[next(word for word in found.groups() if word)]


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
            return WEEKDAYS[said.a]
    if c.dates():
        return None  # "digest sunday on the 45th"
    found = re.search(r"\b(mon|tue|wed|thu|fri|sat|sun)[a-z]*\b", c.text())
    return next((day for day in WEEKDAYS if found and day.lower().startswith(found.group(1))), None)


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


ONLY: Final = frozenset(
    {
        "only want", "i only want", "we only want", "only wanting", "and", "or", "from now on", "from", "here", "on", "now", "i", "we",
        "please", "this", "year", "the", "colors", "colours", "in",
    }
)  # fmt: skip


def _only_colors(c: Clause) -> SettingValue | None:
    """`only want castor and opal from here on`: colours alone, and no more of other things."""
    told = [item for item in c.items if item.said not in ONLY and item.sort != "mark"]
    colors = [color for item in told if (color := color_said(item))]
    return " and ".join(colors) if colors and len(colors) == len(told) else None


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
COLD_SEASON: Final = r"\bwinter (?:nights|lows?|temps?|temperatures?)\b|\b(?:nights|lows?|temps?|temperatures?) in (?:the )?winter\b"
#: Each setting with the words that it is wished in, and how its value is told; the first that fits has it.
WISHED: Final[tuple[tuple[str, str, Callable[[Clause], SettingValue | None]], ...]] = (
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
    ("winter_low", COLD_SEASON, _low),
    ("winter", rf"^(?!.*(?:{COLD_SEASON})).*\bwinter\b", _day),
    ("spring", r"\bspring\b", _day),
    ("cages", r"\bcages\b", _whole),
    ("aim", r"\b(?:aim|goal)\b", _behind("aim", "goal")),
)
