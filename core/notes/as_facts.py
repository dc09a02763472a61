"""From readings to facts: each said once, those in need as a question with its draft, and bare words as a remark."""

from __future__ import annotations

from datetime import date
from typing import Any

from core.notes.clauses.scene import Found, Need
from core.notes.fact import Fact, field_names, value_to_json
from core.notes.kinds.remark import Remark
from core.notes.reading import Ask, Draft, Reading


def each_once(founds: list[Found]) -> list[Found]:
    """Each fact once, however often the message says it, and where it is told most fully."""
    if len(founds) < 2 or _each_of_another(founds):
        return founds
    return _without_repeats(_without_repeats(founds)[::-1])[::-1]


def _each_of_another(founds: list[Found]) -> bool:
    """Whether no two readings are of one kind, or each is of another animal: none repeats another then."""
    if len({found.fact for found in founds}) == len(founds):
        return True
    for name in ("who", "doe"):
        told = {(found.fact, tag) for found in founds if (tag := found.values.get(name)) is not None}
        if len(told) == len(founds):
            return True
    return False


def _without_repeats(founds: list[Found]) -> list[Found]:
    """The readings that say more than any before them."""
    kept: list[Found] = []
    telling: dict[tuple[type[Fact], str, str], list[Found]] = {}  # a kind's field and what it says -> the readings that say so
    for found in founds:
        told = [(found.fact, name, repr(value)) for name, value in _told_by(found).items()]
        alike = min((telling.get(each, []) for each in told), key=len, default=kept)
        if not any(found.fact is other.fact and _says_no_more(found, other) for other in alike):
            kept.append(found)
            for each in told:
                telling.setdefault(each, []).append(found)
    return kept


def _told_by(found: Found) -> dict[str, Any]:
    """What a reading says; a second word for the same temper is no second fact."""
    return {name: value for name, value in found.values.items() if value is not None and (name, found.fact.kind) != ("sign", "temper")}


def _says_no_more(found: Found, other: Found) -> bool:
    """Whether a reading only repeats another."""
    return all(other.values.get(name) == value for name, value in _told_by(found).items())


def subject_told(founds: list[Found]) -> str | None:
    """The animal last spoken of."""
    for found in reversed(founds):
        for name in ("who", "doe", "litter_of", "tag", "to"):
            tag = found.values.get(name)
            if isinstance(tag, str) and name != "to":
                return tag
    return None


def fact_of(found: Found) -> Fact:
    known = {names.code for names in field_names(found.fact)}
    return found.fact(**{name: value for name, value in found.values.items() if name in known})


def ask_for(found: Found, need: Need, rest: tuple[Found, ...]) -> Ask:
    if not need.wanted:
        return Ask(need.why, need.text, need.choices)
    return Ask(need.why, need.text, need.choices, _draft(found, need.wanted, rest))


def _draft(found: Found, wanted: str, rest: tuple[Found, ...] = ()) -> Draft:
    known = {
        name.rstrip("_"): value_to_json(value)
        for name, value in found.values.items()
        if value is not None and name.rstrip("_") != wanted.rstrip("_")
    }
    return Draft(found.fact.kind, known, wanted.rstrip("_"), tuple(_draft(other, wanted) for other in rest))


def remark_of(text: str, today: date, who: str | None) -> Fact:
    return Remark(text=text, on=today, who=who)


def kept_as_remark(text: str, today: date, who: str | None) -> Reading:
    """The words kept as they are."""
    if not any(sign.isalpha() for sign in text):
        return Reading()
    return Reading((remark_of(text, today, who),), None, "", who)
