"""Frost, cold or heat at the barn.

Over 300 lines: nearly half is examples and words.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import ClassVar, Final

from core import words
from core.handbook import health, reproduction
from core.handbook import weather as figures
from core.handbook.weather import COLD_FROM_C, HEAT_FROM_C
from core.herd.litters import alive_now, nests_at_risk
from core.herd.matings import open_mating
from core.herd.state import Event, Herd, Litter, Mating
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need, when
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
from core.notes.telling import dated, noted, parts, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherNoted:
    """Frost, cold or heat at the barn."""

    kind: ClassVar[str] = "weather"

    what: str
    on: date
    celsius: float | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("30 below!!", ({"what": "cold", "celsius": -34.4, "on": "2026-11-25"},)),
    Example("20 below zero last night", ({"what": "cold", "celsius": -28.9, "on": "2026-11-24"},)),
    Example(
        "trimmed nails on Moss today. cold one coming tonight, they say down to 20",
        (
            {"what": "cold", "on": "2026-11-25", "celsius": -6.7},
            {"kind": "done", "chore": "trimmed nails", "who": "5", "on": "2026-11-25"},
        ),
    ),
    Example("frost last night", ({"what": "frost", "on": "2026-11-24"},)),
    Example("woke up to the first hard frost, the water bottles were solid", ({"what": "frost", "on": "2026-11-25"},)),
    Example("had a killing frost last night and there went the last tomatoes", ({"what": "frost", "on": "2026-11-24"},)),
    Example("heat wave, 97F", ({"what": "heat", "on": "2026-11-25", "celsius": 36.1},)),
    Example("snow storm tonight", ({"what": "other", "on": "2026-11-25"},)),
    Example("18 F last night", ({"what": "cold", "on": "2026-11-24", "celsius": -7.8},)),
    Example("Supposed to be 95 degrees tomorrow", ({"what": "heat", "on": "2026-11-26", "celsius": 35},)),
    Example("low 22F tonight", ({"what": "cold", "on": "2026-11-25", "celsius": -5.6},)),
    Example("101F", ({"what": "heat", "on": "2026-11-25", "celsius": 38.3},)),
    Example("twenty degrees tonight", ({"what": "cold", "on": "2026-11-25", "celsius": -6.7},)),
    Example("cold one tonight, down to 12", ({"what": "cold", "on": "2026-11-25", "celsius": -11.1},)),
    Example("Weather 24 Nov: low 22 F.", ({"what": "cold", "on": "2026-11-24", "celsius": -5.6},)),
    Example(
        "Log: 20 Nov, 30 F, frost. 22 Nov, 20 F, no wind.",
        ({"what": "frost", "celsius": -1.1, "on": "2026-11-20"}, {"what": "cold", "celsius": -6.7, "on": "2026-11-22"}),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "moved 14 C2 -> A4",
    "We went down to 12 cages after the storm",
    "froze 2 kits' worth of meat",
    "12 lost 2 cold",
    "need to fix the roof before the snow flies",
    "moss gets 15 g a day",
    "5 has a cold",
    "no wind today",
)

OPENS: Final = ("weather",)
CUES: Final = {
    "weather:frost": "frost | hard frost | first frost | frosty | killing frost",
    "weather:cold": "cold snap | cold front | freezing | freeze | hard freeze | below zero | cold spell | culled snap | called snep | cold night | cold tonight | bitter cold | deep freeze | polar | wind chill | cold wave | cold",
    "weather:heat": "heat wave | heatwave | hot spell | heat index | hot day | scorching | heat | hot | sweltering | triple digits | humid",
    "weather:other": "storm | snow | rain | thunderstorm | blizzard | ice storm | hail | flood | tornado | windy | power outage | power is out | snowing | thunder | wind | rainy",
    "weather": "first frost | hard frost | killing frost | frost | cold snap | cold front | heat wave | heatwave | snow | storm | thunderstorm | blizzard | ice storm | weather | hard freeze | cold spell | deep freeze | forecast",
    "thermometer": "thermometer",
    "degrees_verb": "got up to | gets up to | climbed to | rose to | get down to | gets down to | go down to | going down to | dropping to | getting down to | supposed to hit | lows of | highs of | gonna hit | going to hit | dropped to | low of | high of | got down to | supposed to get to | hit",
    "outdoors": "tonight | weather | outside | barn | forecast | degrees | low | high | supposed to hit | tomorrow | last night | overnight | getting down to | dropped to | down to | gonna be | going to be | hit",
}  # fmt: skip


SMALL_WORDS: Final = frozenset(
    {
        "its", "it", "is", "was", "got", "gets", "so", "very", "really", "already", "now", "out", "outside", "here", "in", "the", "barn",
        "at", "today", "tonight", "this", "morning", "only", "down", "up", "to", "again", "gonna", "going", "supposed", "be", "about",
        "around", "it's", "we're", "that", "warning", "advisory", "watch", "one", "coming", "they", "say", "says", "saying", "calling",
        "for", "of", "expected", "should", "drop", "get", "a", "night",
    }
)  # fmt: skip

AHEAD: Final = frozenset({"before", "until", "till", "til", "if", "unless", "once"})
AHEAD_OF: Final = 3  # not a figure: items: `before the first snow`

#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"temp"})


#: Told of the air, they need no degrees.
SAID_BARE: Final = frozenset({"heat", "cold", "frost"})


def read(c: Clause) -> None:
    """Frost, cold or heat; degrees where they were said, in the farm's scale unless the note names one."""
    temps = c.sorted_as("temp")
    places = c.each("weather:frost", "weather:cold", "weather:heat", "weather:other")
    word = next((mark.removeprefix("weather:") for i in places for mark in sorted(c.items[i].marks) if mark.startswith("weather:")), None)
    numbers = [i for i in c.sorted_as("num") if not _a_cold_one(c, i)]
    if not temps and not (c.has("weather") and word) and not _gone_up_to(c) and not (word in SAID_BARE and _of_the_air(c, numbers)):
        return
    if _of_something_else(c, temps, places) or (not temps and len(numbers) > 1):
        return
    celsius, used = _celsius(c, temps)
    earlier = word == "frost" and _of_the_day_before(c, temps)
    what = "frost" if c.has("weather:frost") and not earlier else _by_degrees(celsius, None if earlier else word)
    if what is None:
        return
    used += [item for item in c.items if any(mark.startswith("weather") for mark in item.marks)]
    if _told_already(c, what, earlier=earlier, more=celsius is not None or bool(c.dates())):
        c.use(i for i, item in enumerate(c.items) if item in used)
        return
    on, items, need = _day(c)
    c.take(Found(WeatherNoted, {"what": what, "celsius": celsius, "on": on}, [*used, *items], need))


def _gone_up_to(c: Clause) -> bool:
    """`supposed to hit 95 tomorrow`: degrees by their verb and a day, or by where they were read."""
    verb = c.first("degrees_verb")
    gone = verb is not None and c.whole(verb + 1) is not None and (bool(c.dates()) or _indoors(c, verb))
    return gone or (c.has("thermometer") and any(c.said(i - 1) in READ_OFF for i in c.sorted_as("num")))


#: Before the degrees, of a thermometer.
READ_OFF: Final = frozenset({"said", "says", "read", "reads", "shows", "showed", "showing", "at"})


def _of_the_air(c: Clause, numbers: list[int]) -> bool:
    """Whether a word such as `cold` is of the air, by the degrees beside it or by the time and place."""
    return _with_degrees(c, numbers) or (not numbers and not c.sorted_as("animal", "code") and _out_there(c) and _of_weather_alone(c))


def _with_degrees(c: Clause, numbers: list[int]) -> bool:
    """`18 out, very cold this morning`: one number, and nothing but small words."""
    return (
        len(numbers) == 1
        and _are_degrees(c, numbers[0])
        and not any(item.sort == "word" and not item.marks and item.said not in SMALL_WORDS for item in c.items)
    )


def _out_there(c: Clause) -> bool:
    """`cold one coming tonight`: a day, a night or the outdoors is told."""
    return (
        bool(c.dates())
        or c.has("outdoors")
        or bool({"out", "outside"} & {item.said for item in c.items})
        or any("night" in item.said for item in c.items)
    )


def _of_weather_alone(c: Clause) -> bool:
    """Whether every word is small or one of the weather."""
    return all(
        item.sort != "word"
        or item.said in SMALL_WORDS
        or any(mark.startswith(("weather", "outdoors", "degrees_verb", "intent")) for mark in item.marks)
        for item in c.items
    )


def _of_something_else(c: Clause, temps: list[int], places: list[int]) -> bool:
    """`fix the roof before the snow flies`, `5 has a cold`: the weather is no news, or it is none."""
    if not temps and places and any(c.said(j) in AHEAD for j in range(max(places[0] - AHEAD_OF, 0), places[0])):
        return True
    return bool(c.explicit()) or c.has("kits", "litter", "ail", "lose", "die") or (not temps and c.has("kindle", "breed"))


def _told_already(c: Clause, what: str, *, earlier: bool, more: bool) -> bool:
    """`15F, frost`: both are of one night, and what was read of it takes the word on, unless there is more to tell."""
    before = next((found for found in (c.before.found if c.before is not None else []) if found.fact is WeatherNoted), None)
    if before is None:
        return False
    if earlier or (what == "frost" and not more):
        before.values["what"] = "frost"
    return not more


def _day(c: Clause) -> tuple[date, list[Item], Need | None]:
    """The day of the weather, its words, and the question where no day is meant; a forecast looks ahead."""
    days, items, said = c.days("past")
    morning = _morning_after(c, days.on)
    items = [*items, *morning]
    on = (days.on or c.today) + timedelta(len(morning))
    if said is not None and said.shape != "near":
        on = c.resolved(said, "plan" if "supposed" in c.text() or "coming" in c.text() or "forecast" in c.text() else "past").on or on
    return on, items, when(said) if items and days.on is None and on == c.today else None


def _morning_after(c: Clause, night: date | None) -> list[Item]:
    """`hard freeze overnight, 18 this morning`: the morning after the night, and the day of the degrees."""
    days = [c.items[i] for i in c.dates()]
    if night is None or len(days) != 2 or c.resolved(days[1].value, "past").on != night + timedelta(1):
        return []
    return days[1:] if days[1].value.shape == "near" else []


def _indoors(c: Clause, verb: int) -> bool:
    """`it got up to ninety four in the barn`: degrees by where they were read."""
    return (
        c.said(verb).endswith("to")
        and any("outdoors" in item.marks for item in c.items[verb + 2 :])
        and c.said(verb - 1) in {"it", "", "temp"}
    )


def _of_the_day_before(c: Clause, temps: list[int]) -> bool:
    """`..., frost. 23 Nov, 18 F`: the word closed the sentence before the degrees."""
    frost = c.first("weather:frost") or 0
    return bool(temps) and any(c.said(i) == "." for i in range(frost, temps[0]))


def _a_cold_one(c: Clause, i: int) -> bool:
    """`a cold one coming`: the night, no degree."""
    return c.said(i) == "one"


def _celsius(c: Clause, temps: list[int]) -> tuple[float | None, list[Item]]:
    if temps:
        item = c.items[temps[0]]
        return _in_celsius(c, float(item.value), item.unit), [c.items[i] for i in temps[:1]]
    numbers = [i for i in c.sorted_as("num") if _are_degrees(c, i) and not _a_cold_one(c, i)]
    if len(numbers) == 1:
        return _in_celsius(c, float(c.items[numbers[0]].value), ""), [c.items[numbers[0]]]
    return None, []


def _are_degrees(c: Clause, i: int) -> bool:
    """Whether a bare number stands where degrees do: at an end, or before a day or a word of the weather; `5 inches of snow` are none."""
    following = c.items[i + 1] if i + 1 < len(c.items) else None
    return (
        following is None
        or following.sort in {"date", "mark", "break"}
        or any(mark.startswith("weather") or mark in {"outdoors", "negation"} for mark in following.marks)
        or following.said in {"in", "out", "outside", "above", "below", "this", "by", "at", "when"}
    )


def _in_celsius(c: Clause, degrees: float, scale: str) -> float:
    return words.celsius(degrees, scale or c.herd.settings.temperature_units)


def _by_degrees(celsius: float | None, word: str | None) -> str | None:
    if word in {"cold", "heat", "frost"} and word != "frost":
        return word
    if celsius is not None:
        if celsius <= COLD_FROM_C.value:
            return "cold"
        if celsius >= HEAT_FROM_C.value:
            return "heat"
        return word or "other"
    return word


def check(fact: WeatherNoted, _herd: Herd, _today: date) -> Problem | None:
    """A temperature that air can have. Weather may be told ahead."""
    low, high = figures.COLDEST_BELIEVABLE_C.value, figures.HOTTEST_BELIEVABLE_C.value
    if fact.celsius is None or low <= fact.celsius <= high:
        return None
    return Problem("impossible", f"{fact.celsius:g} °C can't be. How warm is it?", (), 'Send it again with its unit: "15F".')


def apply(fact: WeatherNoted, herd: Herd) -> Herd:
    """Kept for the day: losses to weather are not the doe's."""
    return replace(herd, weather=(*herd.weather, Event(fact.on, fact.kind, said(fact))))


def reply(fact: WeatherNoted, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The weather; in the cold the litters at risk by age, in the heat whom to watch."""
    warmth = words.temperature(fact.celsius, after.settings.temperature_units) if fact.celsius is not None else None
    line = dated(parts(f"Noted: {fact.what}", warmth), fact.on, after)
    if fact.what in {"cold", "frost"}:
        return (line, *_in_the_cold(after, fact.on))
    return (line, *_in_the_heat(after, fact.on)) if fact.what == "heat" else (line,)


def _in_the_cold(herd: Herd, on: date) -> tuple[str, ...]:
    at_risk = nests_at_risk(herd, on)
    nests = [_nest(herd, litter, age, leaving=leaving) for litter, age, leaving in at_risk]
    due = [f"Doe {_tag(herd, mating.doe)} is due: box in, dry straw, out of the draught." for mating in _due_now(herd, on)]
    return (*nests, *due, health.COLD) if nests or due else ("No litter in the nest just now.",)


def _nest(herd: Herd, litter: Litter, age: int, *, leaving: bool) -> str:
    where = "leaving the nest: look for kits outside the box" if leaving else "in the nest"
    naked = ", still naked" if age <= figures.KIT_NAKED_UNTIL_DAYS.value else ""
    return f"Doe {_tag(herd, litter.dam)}: {words.count(alive_now(litter), 'kit')}, {words.count(age, 'day')} old{naked}, {where}."


def _due_now(herd: Herd, on: date) -> tuple[Mating, ...]:
    """Open matings of living does from the day the box goes in."""
    matings = (open_mating(herd, animal.key, on) for animal in herd.animals.values() if animal.living)
    return tuple(m for m in matings if m and m.on + timedelta(reproduction.NEST_BOX_IN_DAY.whole) <= on)


def _in_the_heat(herd: Herd, on: date) -> tuple[str, ...]:
    due = [_tag(herd, mating.doe) for mating in _due_now(herd, on)]
    nursing = [_tag(herd, litter.dam) for litter, _, _ in nests_at_risk(herd, on)]
    first = (f"Look first at does near kindling and nursing: {words.listed(dict.fromkeys((*due, *nursing)))}.",) if due or nursing else ()
    bucks = f"Bucks may be less fertile for {figures.HEAT_BUCK_REST_DAYS.whole} days."
    return (*first, health.HEAT, bucks)


def _tag(herd: Herd, key: str) -> str:
    animal = herd.animals.get(key)
    return animal.tag if animal else key


WRITTEN = ("weather (?P<what>frost|cold|heat|other)(?:, {celsius:DEC} C)?",)


def show(fact: WeatherNoted, _herd: Herd) -> str:
    """`2026-11-25: weather cold, -9.4 C`."""
    return noted(fact.on, parts(f"weather {fact.what}", None if fact.celsius is None else f"{fact.celsius:g} C"))


KIND = Kind(fact=WeatherNoted, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
