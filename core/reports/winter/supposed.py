"""What a person supposes: `what if 6 cages`, `what if I keep 14 and 3 goes`, as the facts that would make it so. Nothing is recorded."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Final

from core.herd.questions import fitting
from core.herd.settings import Settings, feed_bag
from core.herd.state import Animal, Herd
from core.notes.fact import Fact, SettingValue
from core.notes.kinds.plan import Planned
from core.notes.kinds.query import Query
from core.notes.kinds.setting import SettingChanged
from core.notes.slots.numbers import NUMBER_WORDS
from core.reports.evidence import Evidence
from core.words import OUNCE_G, OUNCES_IN_POUND

_SUPPOSE: Final = re.compile(r"^.*?\b(?:what if|what would happen|what happens|suppose)\b", re.IGNORECASE | re.DOTALL)
_WORDED: Final = "|".join(sorted(NUMBER_WORDS, key=len, reverse=True))
_N: Final = rf"\b(?P<n>\d+|{_WORDED})\b"
_FEW: Final = rf"\b(?P<n>\d+|no|none|an?|a single|{_WORDED})\b[ -]+(?:(?!and\b|or\b|\d)\w+[ -]+){{0,2}}?"
_MONEY: Final = r"\$? ?(?P<n>\d+(?:\.\d+)?)"
_WEIGHED: Final = r"\b(?P<n>\d+)"

_POUND: Final = float(OUNCES_IN_POUND * OUNCE_G)
_KG: Final = 1000.0  # not a figure: grams

Value = Callable[[Settings, str], SettingValue]


def _whole(_settings: Settings, said: str) -> SettingValue:
    word = said.lower()
    return int(word) if word.isdigit() else NUMBER_WORDS.get(word, 0 if word in {"no", "none"} else 1)


def _cents(_settings: Settings, said: str) -> SettingValue:
    return f"{float(said):.2f}"


def _bags(settings: Settings, said: str) -> SettingValue:
    return int(_whole(settings, said)) * feed_bag(settings)


def _pounds(_settings: Settings, said: str) -> SettingValue:
    return round(int(said) * _POUND)


def _kilos(_settings: Settings, said: str) -> SettingValue:
    return round(int(said) * _KG)


def _share(_settings: Settings, said: str) -> SettingValue:
    number = float(said)
    return number / 100 if number > 1 else number  # not a figure: per cent


#: What may be supposed of the farm's wishes: the setting, the words for it, and how its number is taken; the narrow before the broad.
_WISHES: Final[tuple[tuple[str, str, Value], ...]] = (
    ("cages", rf"{_FEW}cages?\b", _whole),
    ("mouths", rf"{_FEW}(?:mouths?|rabbits|animals|head)\b", _whole),
    ("litters_wanted", rf"{_FEW}litters?\b", _whole),
    ("feed_money", rf"\bfeed (?:money|budget)\b[^\d$]*{_MONEY}", _cents),
    ("feed_money", rf"{_MONEY} (?:dollars )?(?:for|on) feed\b", _cents),
    ("feed_price", rf"{_MONEY} ?(?:a|per|/) ?bag\b", _cents),
    ("feed_price", rf"\bfeed (?:is|was|were|costs?|at|goes|went|rises|drops)\b[^\d$]*{_MONEY}", _cents),
    ("winter_feed", rf"{_N} (?:bags?|sacks?)\b", _bags),
    ("winter_feed", rf"{_WEIGHED} ?(?:lbs?|pounds?|#) (?:of )?feed\b", _pounds),
    ("winter_feed", rf"{_WEIGHED} ?(?:kg|kilos?) (?:of )?feed\b", _kilos),
    ("bucks_a_breed", rf"{_FEW}bucks?\b", _whole),
    ("does_a_breed", rf"{_FEW}does?\b", _whole),
    ("highest_coi", r"\b(?:coi|inbreeding)\b\D*(?P<n>\d+(?:\.\d+)?) ?%?", _share),
)
_BY_BREED: Final = frozenset({"bucks_a_breed", "does_a_breed", "litters_wanted"})
_RISK: Final = re.compile(r"\brisk\b\D*\b(low|some|high)\b|\b(no|little|more) risks?\b", re.IGNORECASE)
_RISKS: Final = {"no": "low", "little": "low", "more": "high"}
_SEASON: Final = re.compile(r"\b(spring|winter)\b", re.IGNORECASE)

_VERBS: Final[Mapping[str, re.Pattern[str]]] = {
    what: re.compile(rf"\b(?:{words})\b", re.IGNORECASE)
    for what, words in (
        ("keep", "keep|keeps|kept|keeping|stay|stays|stayed|hold|hang"),
        ("sell", "sell|sells|sold|selling"),
        ("cull", "go|goes|going|gone|cull|culls|culled|culling|butcher|butchered|die|dies|died|lose|lost|rid|leave|leaves|left|eat|ate"),
    )
}
_EVERYBODY: Final = re.compile(r"\b(?:everybody|everyone|nobody|no one|none of them|all of them|them all|all)\b", re.IGNORECASE)
_NOBODY: Final = re.compile(r"\b(?:nobody|no one|none)\b", re.IGNORECASE)
_WORD: Final = re.compile(r"[\w-]+")
_APART: Final = re.compile(r"\s*(?:[,;?]|\band\b|\bbut\b)\s*", re.IGNORECASE)


def supposed(barn: Evidence, query: Query, said: str) -> tuple[Fact, ...]:
    """The facts that would make it so; none where nothing was understood."""
    wishes, rest = _wishes(barn.herd, query, _SUPPOSE.sub("", said, count=1))
    return (*wishes, *_plans(barn, query, rest))


def _wishes(herd: Herd, query: Query, text: str) -> tuple[list[Fact], str]:
    """The settings supposed, and the text without their words."""
    found: list[Fact] = []
    for name, words, value in _WISHES:
        told = re.search(words, text, re.IGNORECASE)
        if told is not None:
            breed = query.breed if name in _BY_BREED else None
            found.append(SettingChanged(name=name, value=value(herd.settings, told["n"]), breed=breed))
            text = f"{text[: told.start()]},{text[told.end() :]}"
    risk, season = _RISK.search(text), _SEASON.search(text)
    if risk is not None:
        word = (risk[1] or risk[2]).lower()
        found.append(SettingChanged(name="risk", value=_RISKS.get(word, word)))
    if season is not None and query.until is not None:
        found.append(SettingChanged(name=season[1].lower(), value=query.until.isoformat()))
    return found, text


def _plans(barn: Evidence, query: Query, text: str) -> list[Fact]:
    """What becomes of each animal that is named: the verb beside it, else the last one said."""
    found: dict[str, str] = {}
    last = _verb(text)
    for part in _APART.split(text):
        here = _verb(part)
        last = here or last
        if last is not None:
            found |= dict.fromkeys(_named(barn, part), last)
            if query.scope == "grow-outs" and here:
                found |= {one.tag: here for one in barn.living if barn.stages[one.key] == "grow-out"}
    if not found and last is not None and _EVERYBODY.search(text):
        what = "keep" if _NOBODY.search(text) else last
        found = {one.tag: what for one in barn.living if barn.stages[one.key] != "kit"}
    if not found and last is not None:
        found = {tag: last for tag in (query.who, query.with_) if tag}
    return [Planned(who=tag, what=what) for tag, what in found.items()]


def _verb(text: str) -> str | None:
    """The first verb of the text that says what becomes of an animal."""
    told = {what: found.start() for what, verb in _VERBS.items() if (found := verb.search(text))}
    return min(told, key=lambda what: told[what], default=None)


def _named(barn: Evidence, part: str) -> list[str]:
    """Tags of the living animals that these words name."""
    fits = [fitting(barn.herd, word) for word in _WORD.findall(part)]
    return [one[0].tag for one in fits if len(one) == 1 and _by_name(one[0], part)]


def _by_name(animal: Animal, part: str) -> bool:
    """Whether it is living and named by tag or name, not described: `opal` may be a colour."""
    words = {word.lower() for word in _WORD.findall(part)}
    return animal.living and not words.isdisjoint({animal.tag.lower(), (animal.name or animal.tag).lower()})
