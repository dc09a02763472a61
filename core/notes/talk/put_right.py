"""The last note put right in a few words: "price was 45", "B4 not B3", "4-8, I mean", "should be 2.5".

What is wrong is found in the fact itself: the field that the words name, or the one that holds what stands behind "not". The new value
is read the way that field is said. Words that fit no field put nothing right: they are a note of their own.

Over 300 lines: a quarter is tables of what people call the fields, which its rules can't be read without.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal, InvalidOperation
from typing import Final

from core.handbook.breeds import breed_words
from core.handbook.colors import color_words
from core.herd.state import Herd
from core.notes.fact import Fact, Fields, Json, field_names, to_json
from core.notes.kinds.correction import Correct
from core.notes.talk.answer import Reads, animal_said, day_alone, plain, whole_number
from core.notes.talk.correction_fields import field_for

Says = Callable[[str], Mapping[str, Json]]  # what "no, X" sets, as the reader of notes has it

_LEAD: Final = re.compile(
    r"^(?:\*+|(?:no|nope|oops|whoops|woops|sorry|sry|srry|soz|actually|correction|edit|wait|typo|my mistake|my bad|i mean|i meant|make (?:that|it)|"
    r"(?:change|fix) (?:that|it)(?: to)?|(?:that|it)(?:'?s| was| is) for|(?:that|it) (?:was|is|should be|should say|should have been)|"
    r"(?:scratch|strike) that(?=[\s,]+\d)|they were|should(?:'?ve)? (?:be|say|been|said|have been|have said)|(?:she|he|they) means?|"
    r"i (?:miscounted|misread|counted wrong)|miscounted|misread|counted wrong|recount(?:ed)?|wrong (?:doe|buck|rabbit|animal|one|cage|date|day|number|weight|price)|"
    r"other way (?:a)?round|the scale|only(?= \w+$))(?!\w)(?:[\s,:;]|[.-](?!\d))*)+",
    re.IGNORECASE,
)
_TAIL: Final = re.compile(
    r"(?:\s*\*|[\s,.]*(?:\b(?:i mean|i meant|sorry|sry|srry|soz|actually|rather|oops|my mistake|my bad)[\s,.!]*)+)$", re.IGNORECASE
)
#: Small talk before it, that marks nothing.
_NOISE: Final = re.compile(
    r"^(?:(?:and|also|oh|ah|ugh|argh|ok|okay|um+|uh+|hm+|well|shoot|crap|darn|dang|jeez|lol|hey|ope)\b[\s,.:;!-]*)+(?=\S)", re.IGNORECASE
)
_ADDED: Final = re.compile(r"^(?:and|also)\b", re.IGNORECASE)
_BEHIND: Final = re.compile(r"^(?P<said>.+?)\s+(?P<name>dressed|live|falls?|bags?|withdrawal)$", re.IGNORECASE)
_TO: Final = re.compile(r"^to\s+(?P<said>\D+)$", re.IGNORECASE)
_OUT_OF: Final = re.compile(r"^(?:out of|from)\s+(?P<said>\w+)$", re.IGNORECASE)
_EACH: Final = re.compile(r"\s+(?:each|ea|apiece|a bag|per bag)$", re.IGNORECASE)
_DAYS_SAID: Final = re.compile(r"^(?P<said>\w+(?: \w+)?) days?(?: withdrawal)?$", re.IGNORECASE)
_DOSE: Final = re.compile(r"^(?P<said>\d*\.?\d+)\s*(?P<unit>ml|cc|ccs|mg|drops?|tablets?|iu|tsp)?$", re.IGNORECASE)
_COUNT_ALONE: Final = re.compile(r"^(?P<said>\d+(?:\.\d+)?)(?: ?(?P<unit>lbs?|pounds|kg|kilos))?$", re.IGNORECASE)
_DEGREES: Final = re.compile(r"^(?P<said>-?\d+(?:\.\d)?)\s*(?:\u00b0|degrees?|deg)?\s*(?P<unit>[fc])?$", re.IGNORECASE)
_SMALL: Final = re.compile(
    r"^(?:(?:it'?s|its|she'?s|he'?s|she is|he is|it was|was|the|a|an|to|for|got|(?:\w+ed|did|sold|found) (?:him|her|it|them))\s+)+",
    re.IGNORECASE,
)
_NOT: Final = re.compile(r"^(?P<right>.+?)[\s,]+(?:not|instead of|rather than)\s+(?P<wrong>.+)$", re.IGNORECASE)
_NOT_FIRST: Final = re.compile(r"^not\s+(?P<wrong>[^,]+),\s*(?P<right>.+)$", re.IGNORECASE)
_READ_ELSEWHERE: Final = re.compile(
    r"(?:no|it was|that was|actually|correction|i meant?|make (?:that|it)|should be)\b", re.IGNORECASE
)  # the reader of notes knows these
_WAS: Final = re.compile(r"^(\S+) was (.+)$", re.IGNORECASE)
_ANIMAL_WAS: Final = re.compile(
    r"^(?:(?:.*\bwrong (?:doe|buck|rabbit|animal|one)\b[\s,.:-]*(?:(?:it|that) (?:was|is|should be) |should be |i mean |i meant )?(?:doe |buck )?)"
    r"|(?:.*\b(?:that was|it was|i mean|i meant) (?:doe|buck|rabbit|tag) ))(\w+)$",
    re.IGNORECASE,
)
_ORDINAL: Final = re.compile(r"(?:on )?(?:the )?\d+(?:st|nd|rd|th)")
_FROM_TO: Final = re.compile(r"^from\s+(\w+)\s+to\s+(\w+)$", re.IGNORECASE)
_SEXES_COUNTED: Final = re.compile(r"^(\w+) (?:bucks?|boys?|males?)(?: and)? (\w+) (?:does?|girls?|females?)$", re.IGNORECASE)

#: What people call a field, and the names that it may have in a fact.
_NAMES: Final[Mapping[str, tuple[str, ...]]] = {
    "date": ("on",), "day": ("on",), "price": ("price",), "cost": ("price",), "falls": ("falls",), "weight": ("grams", "live_grams"),
    "live weight": ("live_grams",), "live": ("live_grams", "alive"), "dressed": ("dressed_grams",), "dressed weight": ("dressed_grams",), "cage": ("cage",),
    "pen": ("cage",), "score": ("score",), "bcs": ("score",), "breed": ("breed",), "color": ("color",), "colour": ("color",), "sex": ("sex",),
    "tag": ("tag",), "withdrawal": ("withdrawal_days",), "dose": ("dose",), "cause": ("cause",), "until": ("until",), "til": ("until",), "till": ("until",), "alive": ("alive",),
    "dead": ("dead",), "born": ("born",), "count": ("count", "born"), "bucks": ("bucks",), "does": ("does",), "amount": ("amount",),
    "result": ("result",), "sign": ("sign",), "fall": ("falls",), "bag": ("bags",), "bags": ("bags",), "total": ("born", "count"),
}  # fmt: skip
_NAMED: Final = re.compile(
    rf"^(?:the |her |his |its )?({'|'.join(sorted(_NAMES, key=len, reverse=True))})(?:\s+(was|were|is|should be|should have been|should say)|\s*[:=])?\s+(.+)$",
    re.IGNORECASE,
)
_UNIT: Final = re.compile(
    r"\s+(?:kits?|falls?|bags?|born|alive|dead|live|days?|cups?|total|dollars|bucks|does|each|day withdrawal)$", re.IGNORECASE
)
#: Fields of what happens once: naming one again puts it right, where a birth's "2 dead" or a new weight would be news.
_ONCE: Final = frozenset({"falls", "dressed_grams", "until", "withdrawal_days", "dose"})
_ANIMALS: Final = frozenset({"who", "doe", "buck", "dam", "sire", "from", "to", "with", "litter_of", "on"})
_NO_ANIMAL: Final = frozenset({("to", "sold"), ("to", "given_away"), ("with", "treated")})
_DAYS: Final = frozenset({"on", "until"})
_COUNTS: Final = frozenset({"count", "alive", "dead", "falls", "bucks", "does", "bags", "withdrawal_days"})
_AMOUNTS: Final = frozenset({"score", "amount"})
_WEIGHTS: Final = frozenset({"grams", "live_grams", "dressed_grams"})
_WORDS: Final[Mapping[str, Mapping[str, str]]] = {
    "sex": dict.fromkeys(("buck", "male", "boy"), "buck") | dict.fromkeys(("doe", "female", "girl"), "doe"),
    "change": {"in": "in", "out": "out"},
    "result": {"open": "open", "bred": "bred", "pregnant": "bred", "unsure": "unsure", "not sure": "unsure"},
    "trait": {name: name for name in ("type", "fur", "color", "size", "overall")},
}
_FREE: Final = frozenset({"sign", "dose"})
#: Fields whose value is known by its looks, where the words are nothing else.
_BY_LOOKS: Final = ("change", "amount", "until", "on", "cage", "sex", "result", "color", "breed", "price", "score", "tag", "cause")
_AHEAD: Final = frozenset({"planned", "remind"})


@dataclass(frozen=True, slots=True)
class _Put:
    """A fact to be put right, and what its values are read by."""

    fact: Fact
    herd: Herd
    today: date
    says: Says
    reads: Reads

    @property
    def names(self) -> frozenset[str]:
        return frozenset(each.json for each in field_names(self.fact))

    def cause(self, said: str) -> Json:
        """What kits were lost to, read as the end of such a sentence."""
        lost = self.reads(f"{to_json(self.fact)['doe']} lost 1 kit {said}").facts
        return next((to_json(fact).get("cause") for fact in lost if fact.kind == "kits_lost"), None)

    def celsius(self, said: str) -> Json:
        """Degrees in the farm's scale, unless the words name one."""
        found = _DEGREES.match(said)
        if found is None:
            return None
        degrees = float(found["said"])
        fahrenheit = (found["unit"] or self.herd.settings.temperature_units).upper() == "F"
        return round((degrees - 32) * 5 / 9, 1) if fahrenheit else degrees  # not a figure: degrees Fahrenheit where water freezes

    def value(self, name: str, said: str) -> Json:
        """What the words say for that field; None where they can't."""
        if name in _FREE:
            return said
        told = plain(said)
        said = _SMALL.sub("", told)
        bare = _UNIT.sub("", said)
        if name in _DAYS or (name == "born" and self.fact.kind == "animal"):
            direction = "plan" if name == "until" else "past"
            day = day_alone(said, self.herd, self.today, direction) or day_alone(told, self.herd, self.today, direction)
            if day is None and _ORDINAL.fullmatch(told):
                return self.says(told).get("on")
            return day.isoformat() if day else None
        if name in _COUNTS or name == "born":
            return 0 if bare in ("none", "no") else whole_number(bare)
        if name in _AMOUNTS:
            return _amount(bare)
        if name in _WEIGHTS:
            alone = self.fact.kind == "feed_left" and _COUNT_ALONE.match(said)
            return self.says(f"{alone['said']} {self.herd.settings.weight_units}" if alone and not alone["unit"] else said).get("grams")
        if name == "celsius":
            return self.celsius(said)
        if name == "price":
            return _price(said)
        if name == "cage":
            found = re.fullmatch(r"(?:cage |pen )?([a-z]{1,2}-?\d{1,3}|\d{1,3}[a-z]?)", said)
            lettered = not str(to_json(self.fact).get("cage", "")).isdigit()
            other = lettered and said.isdigit() and self.herd.find(said) is not None  # "no, 32" behind "31 to B3"
            return found.group(1).upper() if found and not other else None
        if name == "tag":
            return said.upper() if re.fullmatch(r"[a-z]{0,3}-?\d{1,4}", said) else None
        if name in ("color", "breed"):
            return said if said in (color_words() if name == "color" else breed_words()) else None
        if name == "cause":
            return self.cause(told) if self.fact.kind == "kits_lost" else said
        return _WORDS[name].get(said) if name in _WORDS else None


def _amount(said: str) -> Json:
    """A score or a share of a cup, as a number; None where it is none."""
    found = re.fullmatch(r"(\d*\.?\d+)(?:/([1-9]))?", said)
    if found:
        return _number(Decimal(found.group(1)) / Decimal(found.group(2) or 1))
    return whole_number(said)


def _number(value: Decimal) -> Json:
    return int(value) if value == int(value) else float(round(value, 3))


def _price(said: str) -> Json:
    found = re.fullmatch(r"\$?\s?(\d{1,5})(?:\.(\d\d))?(?: dollars)?", said)
    if found:
        return f"{found.group(1)}.{found.group(2) or '00'}"
    words = whole_number(said.removesuffix(" dollars"))
    return f"{words}.00" if words is not None else None


def put_right(last: Sequence[Fact], message: str, herd: Herd, today: date, says: Says, reads: Reads) -> Correct | None:
    """The field that the words put right in one of the last facts, with its value; None where they are something else."""
    if not last:
        return None
    text = _without_and(message, herd, today) if _ADDED.match(message) else _NOISE.sub("", message)
    bare = text == message
    body = unmarked(text)
    marked = body != _trimmed(text)
    for fact in reversed(last):
        put = _Put(fact, herd, today, says, reads)
        found = (
            _animal_named(put, text)
            or _replaced(put, body)
            or _named(put, body, marked=marked)
            or _sexes(put, body)
            or (_by_looks(put, body) or _behind(put, body) if marked else {})
        )
        if found:
            return Correct(set=Fields(tuple(found.items())))
    if marked and not (bare and _READ_ELSEWHERE.match(text.strip())):
        values = says(re.sub(r"^(?:with|to|by)\s+", "", body)) if body else {}
        return Correct(set=Fields(tuple(values.items()))) if values else None
    return _weight_was(last, body, herd, says)


def _without_and(text: str, herd: Herd, today: date) -> str:
    """ "And it was yesterday": the rest; a day alone behind `and` puts the day right, as "it was" does."""
    rest = _NOISE.sub("", text.strip())
    day = re.sub(r"^on\s+", "", rest, flags=re.IGNORECASE)
    return f"it was {day}" if day_alone(plain(day), herd, today, "past") is not None else rest


def _weight_was(last: Sequence[Fact], body: str, herd: Herd, says: Says) -> Correct | None:
    """ "32 was 4-5" behind the weights of several: that animal's weight."""
    found = _WAS.match(body)
    tag = animal_said(herd, found.group(1)) if found else None
    if found is None or tag is None or not any(fact.kind == "weighed" and to_json(fact)["who"] == tag for fact in last):
        return None
    grams = says(found.group(2)).get("grams")
    return Correct(set=Fields((("grams", grams),)), who=tag) if grams is not None else None


def unmarked(text: str) -> str:
    """The words without what marks them as a correction."""
    return _TAIL.sub("", _LEAD.sub("", _trimmed(text))).lstrip(" ,!").rstrip(" ,.!")


def _trimmed(text: str) -> str:
    return text.lstrip().rstrip(" .!")


def _animal_named(put: _Put, text: str) -> dict[str, Json]:
    """ "Wrong doe, it was 9", "that was buck 3": a number that can only be the animal."""
    found = _ANIMAL_WAS.match(_trimmed(text))
    tag = animal_said(put.herd, found.group(1)) if found else None
    name = field_for(put.fact, "who", tag, put.herd) if tag else None
    return {name: tag} if name else {}


def _replaced(put: _Put, body: str) -> dict[str, Json]:
    """ "B4 not B3": the one field that holds what was wrong, with what is right."""
    found = _NOT.match(body) or _NOT_FIRST.match(body)
    if found is None:
        return {}
    label = _NAMED.match(found["right"])
    right = label.group(3) if label else found["right"]
    meant = _NAMES[label.group(1).lower()] if label else ()
    fits: dict[str, Json] = {}
    for name, old in to_json(put.fact).items():
        animal = name in _ANIMALS and (name, put.fact.kind) not in _NO_ANIMAL
        if name == "kind" or animal or (meant and name not in meant):
            continue
        value = _instead(put, name, old, right, found["wrong"])
        if value is not None:
            fits[name] = value
    return fits if len(fits) == 1 else {}


def _instead(put: _Put, name: str, old: Json, right: str, wrong: str) -> Json:
    """The right value of a field, where it holds the wrong one."""
    if name == "dose" and (found := _DOSE.match(right)) and (other := _DOSE.match(wrong)) and (held := _DOSE.match(str(old))):
        unit = found["unit"] or other["unit"] or held["unit"]
        return f"{found['said']} {unit}" if Decimal(other["said"]) == Decimal(held["said"]) else None
    if name in ("to", "sign", "dose", "with", "placing"):
        first, second = (re.sub(r"^to\s+", "", each.strip(), flags=re.IGNORECASE) for each in (right, wrong))
        unit = first.rpartition(" ")[2]
        same = str(old).lower() in (second.lower(), f"{second} {unit}".lower())
        return first if same else None
    same = put.value(name, wrong)
    if same is None and name in _DAYS:
        return _day_instead(put, name, old, right, wrong)
    return put.value(name, right) if same is not None and _equal(same, old) else None


def _day_instead(put: _Put, name: str, old: Json, right: str, wrong: str) -> Json:
    """ "dec 19 not 12": the day of the month alone was wrong."""
    number = whole_number(plain(wrong))
    return put.value(name, right) if number is not None and number == date.fromisoformat(str(old)).day else None


def _equal(one: Json, other: Json) -> bool:
    """Whether two values are the same: numbers by their size, words in any case."""
    try:
        return Decimal(str(one)) == Decimal(str(other))
    except InvalidOperation:
        return str(one).lower() == str(other).lower()


def _named(put: _Put, body: str, *, marked: bool) -> dict[str, Json]:
    """ "Price was 45", "cage B4" behind a "sorry": the field by its name."""
    found = _NAMED.match(body)
    if found is None:
        return {}
    name = next((each for each in _NAMES[found.group(1).lower()] if each in put.names), None)
    old = to_json(put.fact).get(name) if name else None
    if name is None or not (found.group(2) or marked or (name in _ONCE and old is not None)):
        return {}
    value = put.value(name, found.group(3))
    return {name: value} if value is not None and value != old else {}


def _sexes(put: _Put, body: str) -> dict[str, Json]:
    """Bucks and does of a weaning told anew; "from 16 to 12" of a fostering."""
    if put.fact.kind == "weaned" and (found := _SEXES_COUNTED.match(body)):
        bucks, does = (whole_number(each.lower()) for each in found.groups())
        return {"bucks": bucks, "does": does} if bucks is not None and does is not None else {}
    if put.fact.kind == "fostered" and (found := _FROM_TO.match(body)):
        giver, nurse = (animal_said(put.herd, each) for each in found.groups())
        return {"from": giver, "to": nurse} if giver and nurse else {}
    counted = re.fullmatch(r"(\w+) falls?", body, re.IGNORECASE)
    count = whole_number(counted.group(1).lower()) if counted and "falls" in to_json(put.fact) else None
    return {"falls": count} if count is not None else {}


def _behind(put: _Put, body: str) -> dict[str, Json]:
    """What is told by what stands beside the value: "2-10 dressed", "to my cousin", "out of 12", "21 days", ".3 ml", "18.50 each", "110", "18F"."""
    said = to_json(put.fact)
    for name, wanted in _BESIDE:
        found = wanted.search(body) if name in said else None
        value = _beside(put, name, body, found) if found else None
        if value is not None and value != said[name]:
            return {name: value}
    behind = _BEHIND.match(body)
    named = next((each for each in _NAMES[behind["name"].lower().rstrip("s")] if each in put.names), None) if behind else None
    value = put.value(named, behind["said"]) if behind and named else None
    return {named: value} if named and value is not None and value != said.get(named) else {}


def _beside(put: _Put, name: str, body: str, found: re.Match[str]) -> Json:
    said = to_json(put.fact)
    if name == "to":
        return found["said"] if put.fact.kind in ("sold", "given_away") else None
    if name == "litter_of":
        return animal_said(put.herd, found["said"]) if put.fact.kind == "tagged" else None
    if name == "withdrawal_days":
        return whole_number(plain(found["said"]))
    if name == "dose":
        unit = found["unit"] or (said["dose"].rpartition(" ")[2] if "." in found["said"] else "")
        return f"{found['said']} {unit}" if unit else None
    if name == "price":
        each = _price(plain(_EACH.sub("", body)))
        return f"{Decimal(str(each)) * said['bags']:.2f}" if each is not None and "bags" in said else None
    if name == "value":
        return _number(Decimal(found["said"])) if isinstance(said["value"], int | float) else None
    return put.value(name, body) if name != "grams" or put.fact.kind == "feed_left" else None


#: Fields that are known by the words beside their value.
_BESIDE: Final = (
    ("to", _TO),
    ("litter_of", _OUT_OF),
    ("withdrawal_days", _DAYS_SAID),
    ("dose", _DOSE),
    ("price", _EACH),
    ("grams", _COUNT_ALONE),
    ("value", _COUNT_ALONE),
    ("celsius", _DEGREES),
)


def _may_hold(fact: Fact, name: str) -> bool:
    """Whether a fact of that kind is often told without the field, which is then added."""
    return (name == "sex" and fact.kind in ("animal", "tagged")) or (name == "cause" and fact.kind == "kits_lost")


def _by_looks(put: _Put, body: str) -> dict[str, Json]:
    """A day, a cage, a colour ... alone: the field that such a value can only belong to."""
    said = to_json(put.fact)
    for name in _BY_LOOKS:
        whole = name in ("price", "score", "amount") and whole_number(plain(body)) is not None
        held = (name in said and name != "cause") or _may_hold(put.fact, name)
        if not held or whole or (name == "on" and put.fact.kind in _AHEAD) or (name == "tag" and put.fact.kind not in ("animal", "tagged")):
            continue
        value = put.value(name, body)
        if value is not None and value != said.get(name):
            return {name: value}
    return {}
