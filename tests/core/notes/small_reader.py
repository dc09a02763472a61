"""A reader of a dozen sentences, so that what is said around a note can be tested without the grammar of all notes."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date

from core.herd.questions import fitting
from core.herd.state import Herd
from core.notes.fact import Fact, Json, from_json
from core.notes.kinds import KIND_OF
from core.notes.reading import Ask, Context, Draft, Message, Reading
from core.notes.replay import local_day
from core.notes.talk.answer import day_alone
from core.words import grams_of

_SENTENCES: dict[str, str] = {
    "kindled": r"(?P<doe>\w+) kindled (?P<born>\d+)(?:,? (?P<dead>\d+) dead)?(?P<all>,? all alive)?",
    "bred": r"bred (?P<doe>\w+) to (?P<buck>\w+)(?: (?P<falls>\d+) falls)?",
    "missed": r"(?P<doe>\w+) missed",
    "palpated": r"palpated (?P<doe>\w+) (?P<result>bred|open|unsure)",
    "kits_lost": r"(?P<doe>\w+) lost (?P<count>\d+)(?: \w+)?(?: (?P<cause>cold|sick))?",
    "weighed": r"(?P<who>\w+) (?:weighed )?(?P<lb>\d+)-(?P<oz>\d+)",
    "weaned": r"weaned (?P<doe>\w+) (?:(?P<bucks>\d+) bucks (?P<does>\d+) does|(?P<count>\d+))",
    "kit_count": r"(?P<doe>\w+) has (?P<count>\d+)(?: kits)?",
    "sold": r"sold (?P<who>\w+)(?: (?P<price>\d+))?",
    "died": r"found (?P<who>\w+) dead",
    "ailment": r"(?:(?P<who>\w+) )?(?P<sign>ear mites|sneezing)",
    "nest_manners": r"(?P<doe>\w+) (?P<sign>lounging)",
    "query": r"(?P<about>why|due)(?: (?P<who>\w+))?",
    "undo": r"undo(?: the (?P<about>weighed|kindled))?(?: on (?P<who>\w+))?",
    "done": r"done (?P<chore>trimming)",
    "planned": r"(?P<what>keep|sell) (?P<who>\w+)",
}
_CORRECT = re.compile(
    r"(?:no,?|sorry|i mean|make that|that was)\s+(?:(it) was a rat|(\d+)-(\d+)|(dead|born|on|buck) (\S+)|(\w+))(?: not \S+)?$"
)
_ANIMALS = frozenset({"who", "doe", "buck"})
_COUNTS = frozenset({"born", "dead", "count", "bucks", "does", "falls"})


def read(message: Message, herd: Herd, context: Context) -> Reading:
    """The facts of each clause (`;` between them); words that it doesn't know are a remark."""
    today = local_day(message.at, herd)
    readings = [_clause(clause.strip(), herd, context, today) for clause in message.text.lower().split(";")]
    facts = tuple(fact for reading in readings for fact in reading.facts)
    ask = next((reading.ask for reading in readings if reading.ask), None)
    return Reading(facts, ask, "", next((reading.subject for reading in readings if reading.subject), None))


def _clause(text: str, herd: Herd, context: Context, today: date) -> Reading:
    if not text:
        return Reading()
    if re.fullmatch(r"\w+ kindled|bred \w+", text):
        return _lacking(text, herd, today)
    for kind, sentence in _SENTENCES.items():
        found = re.fullmatch(sentence, text)
        if found:
            return _fact(kind, {name: value for name, value in found.groupdict().items() if value}, herd, context, today)
    named = re.fullmatch(r"(\w+) should be (\d+)-(\d+)", text)
    if named:
        grams = grams_of(int(named.group(2)), int(named.group(3)))
        return Reading((from_json(KIND_OF["correct"].fact, {"set": {"grams": grams}, "who": named.group(1)}),))
    asked = re.fullmatch(r"remind me (\S+) to (.+)", text)
    ahead = day_alone(asked.group(1), herd, today, "plan") if asked else None
    if asked and ahead:
        return Reading((from_json(KIND_OF["remind"].fact, {"text": asked.group(2), "on": ahead.isoformat()}),))
    corrected = _CORRECT.fullmatch(text)
    if corrected and " kindl" not in text:
        return Reading((_correct(corrected, herd, today),))
    return Reading((from_json(KIND_OF["remark"].fact, {"text": text, "on": today.isoformat()}),))


def _lacking(text: str, herd: Herd, today: date) -> Reading:
    named = fitting(herd, text.removesuffix(" kindled").removeprefix("bred "))
    if not named:
        return Reading((), Ask("which_animal", "Which doe?"))
    doe = named[0].tag
    known = {"doe": doe, "on": today.isoformat()}
    if "kindled" in text:
        return Reading((), Ask("how_many", "How many?", (), Draft("kindled", known, "born")), "", doe)
    return Reading((), Ask("which_animal", "Which buck?", ("3", "5"), Draft("bred", known, "buck")), "", doe)


def _fact(kind: str, said: dict[str, Json], herd: Herd, context: Context, today: date) -> Reading:
    if kind == "ailment" and "who" not in said:
        if context.subject is None:
            return Reading((), Ask("which_animal", "Which animal?"))
        said["who"] = context.subject
    for name in _ANIMALS & set(said):
        found = fitting(herd, said[name])
        if not found:
            return Reading((), Ask("which_animal", f"Which animal is {said[name]}?"))
        said[name] = found[0].tag
    if "lb" in said:
        said["grams"] = grams_of(int(said.pop("lb")), int(said.pop("oz")))
    said = {name: int(value) if name in _COUNTS else value for name, value in said.items()}
    if kind == "kindled" and said.pop("all", None):
        said["alive"] = said["born"]
    if kind == "kindled" and "dead" in said:
        said["alive"] = said["born"] - said["dead"]
    if kind == "weaned":
        said.setdefault("count", said.get("bucks", 0) + said.get("does", 0))
    if kind not in ("query", "undo", "planned"):
        said["on"] = today.isoformat()
    return Reading((from_json(KIND_OF[kind].fact, said),))


def _correct(found: re.Match[str], herd: Herd, today: date) -> Fact:
    rat, pounds, ounces, field, value, word = found.groups()
    if rat:
        put: tuple[str, Json] = ("cause", "predator")
    elif pounds:
        put = ("grams", grams_of(int(pounds), int(ounces)))
    elif field:
        put = (field, int(value) if value.isdigit() else value)
    elif day := day_alone(word, herd, today, "past"):
        put = ("on", day.isoformat())
    else:
        animals = fitting(herd, word)
        put = ("who", animals[0].tag) if animals else ("count", int(word) if word.isdigit() else word)
    return from_json(KIND_OF["correct"].fact, {"set": dict([put])})


Reads = Callable[[str], Reading]
