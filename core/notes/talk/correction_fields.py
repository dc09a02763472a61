"""Which field a correction means, and the fact with that field put right."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from core.herd.questions import fitting, same_tag
from core.herd.state import Herd
from core.notes.fact import Fact, Fields, Json, field_names, from_json, to_json
from core.notes.kinds.correction import Correct
from core.notes.slots.numbers import spoken
from core.notes.slots.tokens import NUMBER, tokens
from core.words import grams_of, pounds_and_ounces

#: What somebody calls wrong: "15, not 14".
WRONG = re.compile(r"\b(?:not|instead of|rather than)\s+(?:the\s+|tag\s+|doe\s+|buck\s+)?([\w.#-]+)\s*\W*$", re.IGNORECASE)
_MAKE_THAT = re.compile(r"\bmake (?:that|it)\b|\b(?:kits?|babies|bunnies|born|falls)\b", re.IGNORECASE)

_OUNCES_ALONE = re.compile(r"^\D*(?<![\d.-])\d{1,2}(?:\.\d+)?\s*(?:oz|ounces?)\b\D*$", re.IGNORECASE)
_WEIGHTS = frozenset({"weighed", "litter_weighed"})

#: What a plain number corrects in a fact of each kind, where that isn't its `count`.
COUNT = {"kindled": "born", "bred": "falls", "condition": "score", "scored": "score", "ration": "amount", "feed_bought": "bags"}

MOST_FALLS = 9  # a breeding's falls; more are somebody's tag

#: The field that holds a fact's animal, where it has no `who`.
ANIMALS = ("doe", "litter_of", "from", "tag")

#: What else a value may be called in a correction.
ALSO = {
    "grams": ("live_grams",),
    "dam": ("doe",),
    "sire": ("buck",),
    "mother": ("dam", "doe"),
    "father": ("sire", "buck"),
    "doe": ("who", "dam"),
    "buck": ("with", "who", "sire"),
    "reason": ("cause",),
    "cause": ("reason",),
    "on": ("until",),
    "until": ("on",),
    "price": (),
}


def field_for(fact: Fact, name: str, value: Json, herd: Herd) -> str | None:
    """The fact's own name for the field that a correction sets; None where it has none."""
    names = {each.json for each in field_names(fact)}
    if name == "who":
        return _animal_field(fact, names, value, herd)
    if name == "count" and fact.kind in COUNT:
        return COUNT[fact.kind]
    said = to_json(fact)
    if name == "dead" and fact.kind == "kits_lost":
        return "count"
    if name == "count" and "who" in said:  # one animal has no count
        return None
    candidates = [name, *ALSO.get(name, ())]
    present = [each for each in candidates if each in said]
    return next((each for each in (*present, *candidates) if each in names), None)


def _animal_field(fact: Fact, names: set[str], value: Json, herd: Herd) -> str | None:
    """Where the animal belongs: `buck` for a buck in a mating, else whom the fact is about."""
    animal = herd.find(str(value))
    if "buck" in names and animal is not None and animal.sex == "buck":
        return "buck"
    if "who" in names and ("litter_of" not in names or "litter_of" not in to_json(fact)):
        return "who"
    return next((name for name in ANIMALS if name in names and (name != "litter_of" or "litter_of" in to_json(fact))), None)


def senses(fact: Fact, correct: Correct, text: str, herd: Herd) -> tuple[Correct, ...]:
    """What the correction may mean: a number alone may be a tag or the count, unless "make that" or "not 7" tells.

    Ounces alone put right a weight with pounds in it: they are its ounces, or all of it. Where there is a price and no count, it is the price.
    """
    name, value = next(iter(correct.set), ("", None))
    pounds = _pounds_kept(fact, correct, text)
    if pounds:
        return (replace(correct, set=Fields((("grams", grams_of(pounds) + int(value or 0)),))), correct)
    if name == "count" and len(correct.set) == 1 and is_priced(fact) and isinstance(value, int):
        return (replace(correct, set=Fields((("price", f"{value}.00"),))),)
    count = field_for(fact, "count", value, herd)
    animal = field_for(fact, "who", value, herd)
    number = str(value)
    if len(correct.set) != 1 or name not in ("who", "count") or not number.isdigit() or count is None:
        return (correct,)
    if animal is None:  # "no 5" behind four bags of feed
        return (replace(correct, set=Fields((("count", int(number)),))),)
    as_count, as_animal = (replace(correct, set=Fields((each,))) for each in (("count", int(number)), ("who", number)))
    if re.search(rf"\b(?:doe|buck|rabbit|tag)\s+0*{number}\b", text, re.IGNORECASE):
        return (as_animal,)
    if _MAKE_THAT.search(text) or herd.find(number) is None:
        return (as_count,)
    if count not in to_json(fact) or not _says_number(text, int(number)):
        return (as_animal,)
    if not _believable(count, int(number)):
        return (as_animal,)
    wrong = WRONG.search(text)
    if wrong:
        return (as_count,) if str(to_json(fact).get(count)) == wrong.group(1) else (correct,)
    return (as_animal, as_count)


def _believable(name: str, number: int) -> bool:
    """Whether a field can have that number: nobody counts sixteen falls."""
    return name != "falls" or number <= MOST_FALLS


def _says_number(text: str, number: int) -> bool:
    """Whether the words hold that number, in figures or in words."""
    found = tokens(text)
    told = (spoken(found, at) for at in range(len(found)) if found[at].sort != NUMBER)
    return any(each is not None and each[0] == number for each in told) or bool(re.search(rf"\b0*{number}\b", text))


def is_priced(fact: Fact) -> bool:
    """Whether the only plain number in it is its price: one animal sold or offered."""
    said = to_json(fact)
    return "who" in said and "price" in said


def _pounds_kept(fact: Fact, correct: Correct, text: str) -> int:
    """The whole pounds of the weight that ounces alone put right; 0 where nothing of the kind was said."""
    weight = to_json(fact).get("grams")
    if fact.kind not in _WEIGHTS or len(correct.set) != 1 or correct.set[0][0] != "grams" or not isinstance(weight, int):
        return 0
    return pounds_and_ounces(weight)[0] if _OUNCES_ALONE.match(text) else 0


def holds(fact: Fact, said: str, herd: Herd) -> bool:
    """Whether the fact holds what somebody calls wrong: an animal by tag or name, a number, a word."""
    values = [value for name, value in to_json(fact).items() if name != "kind"]
    called = {animal.tag for animal in fitting(herd, said)} | {said}
    return any(_same(value, each) for value in values for each in called)


def _same(value: Json, said: str) -> bool:
    return str(value).lower() == said.lower() or (isinstance(value, str) and same_tag(value, said))


def amended(fact: Fact, put: Mapping[str, Json]) -> Fact | None:
    """The fact with these fields put right, and with them what follows from them; None where that makes no such fact."""
    said = to_json(fact)
    types = {names.json: str(fact.__dataclass_fields__[names.code].type) for names in field_names(fact)}
    if any(types.get(name, "").startswith("int") and not isinstance(value, int) for name, value in put.items()):
        return None  # a word is no number
    new = {name: value for name, value in said.items() if name != "kind"} | dict(put)
    if fact.kind == "kindled":
        new = birth_agreed(said, new, put)
    if fact.kind == "weaned":
        new = _weaning(new, put)
    try:
        return from_json(type(fact), new)
    except (TypeError, ValueError):
        return None


def birth_agreed(said: Mapping[str, Json], new: dict[str, Json], put: Mapping[str, Json]) -> dict[str, Json]:
    """Born, alive and dead agree: the two that were said last hold, the third follows."""
    born: Json = new.get("born")
    alive: Json = new.get("alive")
    dead: Json = new.get("dead")
    if {"alive", "dead"} <= put.keys() and "born" not in put:
        new["born"] = alive + dead
    elif "born" in put and alive is not None and "alive" not in put:
        all_alive = said.get("alive") == said.get("born")
        new["alive"] = max(0, born - dead) if dead is not None else (born if all_alive else alive)
    elif "dead" in put and born is not None and "alive" not in put:
        new["alive"] = max(0, born - dead)
    elif "alive" in put and born is not None and "born" not in put:
        if dead is None or alive > born:
            new["born"] = max(born, alive + (dead or 0))
        else:
            new["dead"] = born - alive
    return new


def _weaning(new: dict[str, Json], put: Mapping[str, Json]) -> dict[str, Json]:
    """Bucks and does make the count; a new count alone leaves them unsaid where they no longer do."""
    bucks, does = new.get("bucks"), new.get("does")
    if "count" not in put and bucks is not None and does is not None:
        new["count"] = bucks + does
    if (bucks or 0) + (does or 0) > new["count"] or (bucks is not None and does is not None and bucks + does != new["count"]):
        new = {name: value for name, value in new.items() if name not in ("bucks", "does")}
    return new
