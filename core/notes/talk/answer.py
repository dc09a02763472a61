"""Answers: a number, an animal, a day, a yes or a choice that completes what a question was about.

Whatever is more than the bare thing is read as the rest of the sentence that it completes: "5, all alive" after "how many did 14
have?" is read as "14 kindled 5, all alive".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, replace
from datetime import date

from core.herd.questions import fitting
from core.herd.state import Herd
from core.notes.fact import Fact, Json, field_names, from_json, to_json
from core.notes.kinds import KIND_OF
from core.notes.meaning import Meaning
from core.notes.reading import Ask, Draft, Reading
from core.notes.slots.dates import date_at, days_of
from core.notes.slots.numbers import spoken
from core.notes.slots.tokens import NUMBER, tokens
from core.notes.talk.carriers import CARRIERS
from core.notes.talk.correction_fields import birth_agreed

Reads = Callable[[str], Reading]  # a note on its own, as it would be read today

YES = frozenset(
    """
    yes, y, yse, yess, yep, yeah, yea, yup, sure, right, correct, ok, okay, confirm, confirmed, true, exactly, definitely, indeed, yes please,
    that's right, thats right, that is right, yes it is, it is, record it, do it, go ahead, of course, for sure, yes again, yes another,
    another, another one, i'm sure, im sure, yes i'm sure, yes im sure, yes she did, yes he did, yes it was, it was, i am sure
    """.replace("\n    ", " ")
    .strip()
    .split(", ")
)
NO = frozenset(
    """
    no, n, nope, nah, not, wrong, cancel, nevermind, stop, ignore, never mind, no it's not, same, the same, it's the same, no the same,
    no same one, same one, forget it, don't, dont, no don't, no dont, leave it, no thanks, not really, drop it, my mistake, no my mistake
    """.replace("\n    ", " ")
    .strip()
    .split(", ")
)
#: A birth day that nobody knows: the animal is taken without it.
UNKNOWN = frozenset(
    {"leave it out", "don't know", "dont know", "i don't know", "i dont know", "idk", "unknown", "no idea", "not sure", "skip"}
)
_LEAD = re.compile(
    r"^(?:(?:oh|um+|uh+|er|sorry|well|i think|i guess|it was|it is|it's|its|that was|that's|thats|was|is|were|there were|there are|"
    r"she had|she has|(?:(?:he|she|they|i|we) )?(?:means?|meant)|he|she|with|to|by|from|of|about|the|a|just|only|doe|buck|tag|number|no\.|called|it|make it|make that)\b[\s,:]*)+",
    re.IGNORECASE,
)
_TAIL = re.compile(
    r"(?:\s+(?:kits?|babies|bunnies|ones?|of them|of em|in all|total|all told|born|please|i think|i guess|i mean|i meant|sorry|lol|days?|then|today))+$",
    re.IGNORECASE,
)
#: A tag alone, on the book or not.
_TAG = re.compile(r"[a-z]{0,3}[ -]?\d{1,5}[a-z]?")
#: Behind a yes they tell that not all is so.
_TAKES_BACK = re.compile(r"\d|\b(?:but|not|no|except|only|though|wrong|wait|never)\b|n't\b")
_DENIED = re.compile(r"^(?:no|nope|nah)\b[\s,.;:-]*(?:it(?:'s| is| was)|that(?:'s| is| was)|make it|i mean(?:t)?)?\s*", re.IGNORECASE)

#: A number with what it counts, or more numbers: not the tag of somebody else.
COUNTS = re.compile(
    r"^\d+(?!\d)\s*(?:[,;.&+]|and\b|kits?\b|babies\b|bunnies\b|born\b|alive\b|live\b|living\b|total\b|all\b|bucks?\b|does\b|dead\b|\d)"
)

#: Fields that hold an animal's tag, a whole number; and what is asked where one is missing.
ANIMALS = {"who", "doe", "buck", "dam", "sire", "from", "to", "with", "litter_of"}
WHOLE = {"count", "born", "alive", "dead", "falls", "bucks", "does", "bags", "withdrawal_days", "age_days"}
MEASURED = {"grams", "live_grams", "dressed_grams", "price", "score", "amount", "celsius"}
_QUESTIONS: Mapping[str, tuple[str, str]] = {
    "count": ("how_many", "How many?"),
    "born": ("how_many", "How many kits were born?"),
    "buck": ("which_animal", "Which buck? Send his tag or name."),
    "doe": ("which_animal", "Which doe? Send her tag or name."),
    "who": ("which_animal", "Which animal? Send its tag or name."),
    "from": ("which_animal", "From which doe? Send her tag or name."),
    "on": ("when", "On which day?"),
    "result": ("what", "Bred, open or unsure?"),
    "change": ("what", "Box in or out?"),
}


def plain(text: str) -> str:
    """An answer in lower case, without what surrounds it."""
    return " ".join(text.lower().replace("’", "'").strip(" \t\n.!,;:👍✅🙂").split())


def answered(ask: Ask, text: str, herd: Herd, today: date, reads: Reads) -> Meaning | None:
    """What the answer completes; None where the text is no answer to this question."""
    draft = ask.draft
    if draft is None:
        return None
    said = plain(text)
    if draft.wanted == "confirm" or said in NO:
        return _yes_or_no(draft, said, text, today, reads)
    if _wants_birthday(draft):
        said = plain(ask.choices[0]) if said in YES and ask.choices else said
        if said in UNKNOWN:
            return completed(draft, {}, today)
    if ask.why == "confirm" and said in YES:
        return completed(draft, {draft.wanted: ask.choices[0]}, today)  # "did you say R22 or 22?": the likeliest
    value = _value(draft, ask, said, herd, today)
    if value is not None:
        return completed(draft, {draft.wanted: value}, today)
    counted = draft.wanted in WHOLE and COUNTS.match(said)
    if not counted and _is_full_note(reads(text)):
        return None
    return carried(draft, text, today, reads)


def _wants_birthday(draft: Draft) -> bool:
    """Whether a day is asked for: `born` of an animal; of a litter it is how many were born."""
    return draft.kind == "animal" and draft.wanted == "born"


def affirms(said: str) -> bool:
    """Whether the words only say yes, once or twice: "yes that's right"."""
    first, _, rest = said.partition(" ")
    return said in YES or (first.strip(",") in YES and rest in YES)


def _affirmed_in_passing(said: str, reads: Reads) -> bool:
    """`yes, I saw them too`: a yes, and words behind it that change nothing."""
    first, comma, rest = said.partition(",")
    if first not in YES or not comma or _TAKES_BACK.search(rest):
        return False
    behind = reads(rest)
    return behind.ask is None and all(fact.kind == "remark" for fact in behind.facts)


def _yes_or_no(draft: Draft, said: str, text: str, today: date, reads: Reads) -> Meaning | None:
    if affirms(said) or _affirmed_in_passing(said, reads):
        return replace(completed(draft, {}, today), sure=True)
    if said in NO:
        return Meaning(subject=draft.known.get("who") or draft.known.get("doe"), notices=("Not recorded, then.",), settled=True)
    denied = _DENIED.match(text)
    if denied and denied.end() and not _is_full_note(reads(text[denied.end() :])):
        return carried(draft, text[denied.end() :], today, reads)
    return None


def _value(draft: Draft, ask: Ask, said: str, herd: Herd, today: date) -> Json:
    """The bare thing asked for; None where the answer is something else."""
    if draft.wanted in ANIMALS:
        return animal_said(herd, said)
    birthday = _wants_birthday(draft)
    if draft.wanted in WHOLE and not birthday:
        return whole_number(_bare(said))
    if draft.wanted in ("on", "until") or birthday:
        plans = draft.wanted == "until" or draft.kind in ("remind", "planned")
        day = day_alone(said, herd, today, "plan" if plans else "past") or day_alone(_bare(said), herd, today, "plan" if plans else "past")
        return day.isoformat() if day else None
    if draft.wanted == "tag" and _TAG.fullmatch(said):
        return said.replace(" ", "").replace("-", "").upper()
    choices = {choice.lower(): choice for choice in ask.choices}
    return choices.get(said) if draft.wanted not in MEASURED else None


def animal_said(herd: Herd, text: str) -> str | None:
    """The tag of the one animal that an answer names, whatever small words stand around it."""
    said = plain(text)
    number = whole_number(_bare(said))
    spoken_tag = str(number) if number is not None else said
    ways = (said, _bare(said), said.removesuffix("'s").removesuffix("s'"), spoken_tag)
    return next((tag for way in ways if (tag := _animal(herd, way)) is not None), None)


def _bare(said: str) -> str:
    return _TAIL.sub("", _LEAD.sub("", said)) or said


def _animal(herd: Herd, said: str) -> str | None:
    """The tag of the one animal that the words name."""
    found = fitting(herd, said)
    return found[0].tag if len(found) == 1 else None


def whole_number(said: str) -> int | None:
    """A number alone, in figures or in words."""
    if said[:1].isdecimal():
        return int(said) if said.isdecimal() else None
    found = tokens(said)
    if not found or found[0].sort == NUMBER:
        return None
    value = spoken(found, 0)
    return int(value[0]) if value and value[1] == len(found) and value[0] == int(value[0]) else None


def day_alone(said: str, herd: Herd, today: date, direction: str) -> date | None:
    """The day, where the words are nothing but one; `direction` is `past` or `plan`."""
    found = tokens(said)
    span = date_at(found, 0) if found else None
    if span is None or span[1] != len(found):
        return None
    return days_of(span[0], today, direction, herd.settings.date_order).on


def day_within(said: str, herd: Herd, today: date, direction: str) -> date | None:
    """The first day that the words name."""
    found = tokens(said)
    spans = (date_at(found, at) for at in range(len(found)))
    span = next((each for each in spans if each is not None), None)
    return days_of(span[0], today, direction, herd.settings.date_order).on if span else None


def completed(draft: Draft, put: Mapping[str, Json], today: date) -> Meaning:
    """The facts of the draft with what was missing; or the next question, where something still is."""
    facts: list[Fact] = []
    for each in (draft, *draft.rest):
        known = {name: value for name, value in each.known.items() if value is not None} | {
            (each.wanted if name == draft.wanted else name): value for name, value in put.items()
        }
        known = _one_or_litter(known)
        missing = _missing(each.kind, known, today)
        if missing:
            why, text = _QUESTIONS.get(missing, ("what", "What is missing? Send the whole note once more."))
            ask = Ask(why, text, (), Draft(each.kind, known, missing))
            return Meaning(tuple(facts), ask, subject=known.get("who") or known.get("doe"))
        facts.append(from_json(KIND_OF[each.kind].fact, known))
    return Meaning(tuple(facts))


def _one_or_litter(known: dict[str, Json]) -> dict[str, Json]:
    """One animal needs no count; several are kits of the doe that was named."""
    if "litter_of" in known or "who" not in known or known.get("count") is None:
        return known
    rest = {name: value for name, value in known.items() if name not in ("who", "count")}
    return rest | ({"who": known["who"]} if known["count"] == 1 else {"litter_of": known["who"], "count": known["count"]})


def _missing(kind: str, known: dict[str, Json], today: date) -> str | None:
    """The first needed field that is not known; a day not said is today."""
    fact = KIND_OF[kind].fact
    by_code = {names.code: names.json for names in field_names(fact)}
    needed = [by_code[field.name] for field in fields(fact) if field.default is MISSING]
    if "on" in needed:
        known.setdefault("on", today.isoformat())
    return next((name for name in needed if known.get(name) is None), None)


def carried(draft: Draft, text: str, today: date, reads: Reads) -> Meaning | None:
    """The draft completed by the answer read as the rest of its sentence; None where that says nothing new of it."""
    for carrier in CARRIERS.get(draft.kind, ()):
        sentence = _filled(carrier, draft, text)
        reading = reads(sentence) if sentence else Reading()
        facts = [fact for fact in reading.facts if fact.kind not in ("remark", "query", "undo", "correct")]
        own = next((fact for fact in facts if fact.kind == draft.kind), None)
        if own is not None and reading.ask is None:
            merged = completed(replace(draft, rest=()), _news(draft, own, today), today)
            others = tuple(fact for fact in facts if fact is not own)
            return replace(merged, facts=(*merged.facts, *others), unread=reading.unread)
    return None


def _filled(carrier: str, draft: Draft, text: str) -> str | None:
    """The carrier sentence with what is known; None where it needs what is not."""
    known = {name.rstrip("_"): value for name, value in draft.known.items() if name != draft.wanted}
    try:
        return carrier.format(said=_LEAD.sub("", text.strip()) or text, **known)
    except KeyError:
        return None


def _news(draft: Draft, own: Fact, today: date) -> dict[str, Json]:
    """What the sentence adds to the draft; its day only where the answer named one."""
    said = {name: value for name, value in to_json(own).items() if name != "kind"}
    if said.get("on") == today.isoformat() and "on" in draft.known and draft.wanted != "on":
        del said["on"]
    if draft.kind == "kindled":
        changed = {name: value for name, value in said.items() if draft.known.get(name) != value}
        said = birth_agreed(draft.known, {**draft.known, **said}, changed)
    return said


def _is_full_note(reading: Reading) -> bool:
    """Whether the words stand on their own: they record, ask or take back something without any question before them."""
    return any(fact.kind != "remark" for fact in reading.facts)
