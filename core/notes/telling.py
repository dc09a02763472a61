"""How replies and written-back notes speak: animals, days, weights and kits in the farm's own manner."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from datetime import date
from typing import Any

from core import words
from core.handbook import breeds, colors, flags, health, reproduction
from core.herd.calendar import litter_chores, mating_chores
from core.herd.chore import Chore
from core.herd.litters import alive_now, nursed_litter, the_litter, untagged
from core.herd.questions import days_later, events, in_withdrawal, withdrawal_untold
from core.herd.state import Animal, Herd, Litter
from core.notes.fact import Fact, field_names

#: Kinds whose sentence has its day, if any, inside; the others have it in front.
OWN_DAY = frozenset({"animal", "planned", "remind", "setting", "query", "undo", "correct"})

#: Fields that say whom and when; the rest is what was seen.
_ROLES = frozenset({"on", "who", "doe"})


def said(fact: Fact, *but: str) -> dict[str, Any]:
    """What the fact says beside animal and day, under the contract's names; unsaid fields left out."""
    values = {names.json: getattr(fact, names.code) for names in field_names(fact)}
    return {name: value for name, value in values.items() if value is not None and name not in _ROLES and name not in but}


def called(herd: Herd, tag: str) -> str:
    """An animal as a reply calls it: `Doe 14`, `Buck 5`, or `31` while its sex is not known."""
    animal = herd.find(tag)
    if animal is None:
        return tag
    return f"{animal.sex.capitalize()} {animal.tag}" if animal.sex else animal.tag


def whom(herd: Herd, tag: str) -> str:
    """The same inside a sentence: `doe 14`."""
    animal = herd.find(tag)
    return by_key(herd, animal.key) or tag if animal else tag


def by_key(herd: Herd, key: str | None) -> str | None:
    """The same for an animal known by its key, in lower case: `buck 3`."""
    animal = herd.animals.get(key or "")
    if animal is None:
        return key
    return f"{animal.sex} {animal.tag}" if animal.sex else animal.tag


def by_tag(herd: Herd, key: str) -> str:
    """The tag of an animal known by its key."""
    animal = herd.animals.get(key)
    return animal.tag if animal else key


def grams(herd: Herd, weight: float) -> str:
    """A weight in the farm's unit."""
    return words.weight(round(weight), herd.settings.weight_units)


def money(herd: Herd, cents: int) -> str:
    """A price in the farm's money."""
    return words.price(cents, herd.settings.currency)


def change(herd: Herd, weight: int) -> str:
    """A gain or a loss in the farm's unit."""
    return words.weight_change(weight, herd.settings.weight_units)


def when(day: date, today: date | None) -> str:
    """A day in a reply: `today`, `tomorrow`, or `Sun 13 Dec`, with its year where it is far off."""
    if today is None or abs((day - today).days) > 1:
        far = today is not None and day.year != today.year and abs((day - today).days) > _FAR_DAYS
        return words.full_day(day) if far else words.day(day)
    return {0: "today", 1: "tomorrow", -1: "yesterday"}[(day - today).days]


_FAR_DAYS = 180  # not a figure: from here a day without its year could be mistaken


def dated(line: str, on: date, herd: Herd) -> str:
    """The line with its day, unless that is the day it was told on."""
    return words.sentence(line) if herd.day == on else words.sentence(f"{line} ({when(on, herd.day)})")


def noted(on: date, text: str) -> str:
    """A written-back note with its day in front."""
    return f"{on.isoformat()}: {text}"


def parts(*pieces: str | None) -> str:
    """Pieces with commas between them; empty ones left out."""
    return ", ".join(piece for piece in pieces if piece)


def told(prefix: str, value: object | None) -> str | None:
    """`prefix value`, or nothing where there is no value."""
    return None if value is None else f"{prefix}{value}"


def kits_left(herd: Herd, litter: Litter | None, doe: str) -> str:
    """How many kits there are now: `6 kits left under doe 14.`"""
    if litter is None:
        return f"Doe {doe} has no litter on the book."
    if litter.weaned_on is not None:
        return f"{words.count(untagged(herd, litter), 'untagged kit')} of doe {doe} left."
    kits = alive_now(litter)
    if not kits:
        return f"No kits left under doe {doe}."
    return (
        f"{words.count(kits, 'kit')} under doe {doe} now."
        if _nurses(herd, litter)
        else f"{words.count(kits, 'kit')} of doe {doe} left, without her."
    )


def _nurses(herd: Herd, litter: Litter) -> bool:
    """Whether the litter's doe is on the farm; of one that is not on the book nothing is known."""
    dam = herd.animals.get(litter.dam)
    return dam is None or dam.living


def motherless(before: Herd, tag: str | None, on: date) -> str | None:
    """What a doe that leaves leaves behind: kits that are not weaned, and what to note of them next."""
    doe = before.find(tag) if tag is not None else None
    litter = nursed_litter(before, doe.key, on) if doe else None
    if doe is None or litter is None:
        return None
    kits = alive_now(litter)
    age = words.count((on - litter.born_on).days, "day")
    nurses = (each.tag for each in before.animals.values() if each.living and each != doe and nursed_litter(before, each.key, on))
    nurse = next(nurses, None)
    moved = f'"moved {words.count(kits, "kit")} from {doe.tag} to {nurse}", or ' if nurse else ""
    lost = f'"{doe.tag} lost {words.count(kits, "kit")}"'
    return f"That leaves {words.count(kits, 'kit')}, {age} old, without a doe. Note what becomes of them, for example {moved}{lost}."


def to_come(chores: Iterable[Chore], today: date | None) -> str | None:
    """Chores with their days in one line: `Check the nest tomorrow; nest box out Sun 13 Dec.`"""
    ahead = [f"{_SHORT[chore.chore]} {_by_when(chore, today)}" for chore in sorted(chores, key=lambda each: each.on)]
    return words.sentence("; ".join(ahead)) if ahead else None


def _by_when(chore: Chore, today: date | None) -> str:
    """The chore's day; a kindling is overdue only after its window."""
    grace = reproduction.KINDLING_WINDOW_LAST.whole - reproduction.GESTATION_DAYS.whole if chore.chore == "kindling" else 0
    late = today is not None and days_later(chore.on, grace) < today
    return f"{when(chore.on, today)} (overdue)" if late else when(chore.on, today)


_SHORT = {
    "palpate": "palpate",
    "nest_box_in": "nest box in",
    "kindling": "kits due",
    "check_nest": "check the nest",
    "nest_box_out": "nest box out",
    "wean": "wean",
}


def chores_of_mating(herd: Herd, doe: str, on: date) -> tuple[Chore, ...]:
    """What is still to do for the doe (by key) after her last mating."""
    return tuple(chore for chore in mating_chores(herd, on) if chore.key.split(":")[1] == doe)


def chores_of_litter(herd: Herd, litter: Litter, *names: str) -> tuple[Chore, ...]:
    """What is still to do for the litter, of these chores."""
    ending = f":{litter.dam}:{litter.born_on}"
    return tuple(chore for chore in litter_chores(herd, litter.born_on) if chore.key.endswith(ending) and chore.chore in names)


def quoted(text: str | None) -> str | None:
    """Somebody's own words inside a written-back note, in quotes: where they begin and end is then beyond doubt."""
    return None if text is None else _in_quotes(text)


def _in_quotes(text: str) -> str:
    """In quotes, on one line whatever the text holds."""
    return json.dumps(text, ensure_ascii=not text.isprintable())


def own_words(text: str) -> str:
    """Words that end a written-back note: as they are, or in quotes where their first letter or their ends would be lost."""
    bare = text == " ".join(text.split()) and text.isprintable() and not text.startswith('"')
    return text if bare and text and not text.lower().rstrip(" .!").endswith("confirmed") else _in_quotes(text)


def name_said(name: str) -> str:
    """A cage in a written-back note: one plain word bare, anything else in quotes."""
    return name if re.fullmatch(r'[^\s,:"]+', name) and name.isprintable() else _in_quotes(name)


def color_written(color: str | None) -> str | None:
    """A colour in a written-back note: the handbook's name bare, any other in quotes."""
    return color if color is not None and colors.color(color) == color else quoted(color)


def breed_written(breed: str | None) -> str | None:
    """A breed, the same way."""
    known = breeds.breed(breed)
    return breed if known is not None and known.name == breed else quoted(breed)


def shortened(text: str) -> str:
    """Somebody's own words as a reply repeats them: the first line, cut where it is long."""
    line = " ".join(text.split())
    return line if len(line) <= _LINE else line[:_LINE].rstrip() + "…"


_LINE = 80  # not a figure: letters of a line on a phone


def of_kits(who: str | None, litter_of: str | None, count: int | None) -> str:
    """Whom a written-back note is about: `R23`, or `3 kits of doe 12`."""
    return who if who is not None else f"{words.count(count or 0, 'kit')} of doe {litter_of}"


def kits_after(litter_of: str | None, before: Herd, after: Herd, on: date) -> str | None:
    """How many kits of the doe are left, where a note was about untagged ones."""
    doe = before.find(litter_of) if litter_of is not None else None
    litter = the_litter(before, doe.key, on) if doe else None
    return kits_left(after, after.litters[litter.key], litter_of or "") if litter else None


def withdrawal_caution(herd: Herd, tag: str | None, on: date) -> str | None:
    """The warning for an animal that was treated and leaves the farm: refused is nothing, hidden neither."""
    animal = herd.find(tag) if tag is not None else None
    if animal is None:
        return None
    until = in_withdrawal(animal, on)
    if until is not None:
        return f"{health.WITHDRAWAL_RUNNING} It runs until {words.full_day(until)}."
    untold = withdrawal_untold(animal, on)
    return f"Treated with {untold.detail.get('with')} {words.full_day(untold.on)}. {health.WITHDRAWAL_UNKNOWN}" if untold else None


def bad_notes(animal: Animal | None, what: str, on: date) -> int:
    """How many bad notes of a kind an animal got in the months before."""
    seen = events(animal, what) if animal else ()
    within = flags.BAD_NOTES_WITHIN_DAYS.value
    recent = [event.detail for event in seen if 0 <= (on - event.on).days <= within]
    return sum(1 for detail in recent if detail.get("grade") == "bad" or (detail.get("sign", "good") != "good" and "grade" not in detail))
