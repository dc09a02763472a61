"""How an animal behaves to people."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.handbook import flags
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.others import NAMED_PERSONS
from core.notes.clauses.with_animals import LOOKS
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import bad_notes, called, dated, noted, parts, quoted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class TemperShown:
    """How an animal behaves to people."""

    kind: ClassVar[str] = "temper"

    who: Tag
    grade: str
    on: date
    sign: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("moss is getting cranky but didn't bite", ({"who": "5", "grade": "bad", "sign": "cranky", "on": "2026-11-25"},)),
    Example("22 scratched me", ({"who": "22", "grade": "bad", "on": "2026-11-25", "sign": "scratched me"},)),
    Example("Pip is sweet", ({"who": "R23", "grade": "good", "on": "2026-11-25", "sign": "sweet"},)),
    Example("Moss lunged at me", ({"who": "5", "grade": "bad", "on": "2026-11-25", "sign": "lunged"},)),
    Example("9 growls when I feed her", ({"who": "9", "grade": "bad", "on": "2026-11-25", "sign": "growls"},)),
    Example("Sorrel lunged at my hand again when I reached in", ({"who": "12", "grade": "bad", "on": "2026-11-25", "sign": "lunged"},)),
    Example("Biscuit bit right through my sleeve", ({"who": "22", "grade": "bad", "on": "2026-11-25", "sign": "bit"},)),
    Example("Clover is the calmest old girl", ({"who": "9", "grade": "good", "on": "2026-11-25", "sign": "calmest"},)),
    Example("5 growly", ({"who": "5", "grade": "bad", "on": "2026-11-25", "sign": "growly"},)),
    Example("Temperament: doe 22, bad, bit me.", ({"who": "22", "grade": "bad", "on": "2026-11-25", "sign": "bit me"},)),
    Example("clover is so swet", ({"who": "9", "grade": "good", "on": "2026-11-25", "sign": "sweet"},)),
)
NOT_THIS: tuple[str, ...] = (
    "I scratched 31 behind the ears and he melted",
    "clover fed well today",
    "hung a notice at the church to see who bites",
    "a gentle old lady stopped to look at Moss",
    "bit of rain today",
    "Pip has sore hocks",
)

OPENS: Final = ("temper",)
CUES: Final = {
    "temper:bad": "charged the front | charged my hand | took my finger off | about took my finger off | about took my hand off | took a swing | takes a swing | swung at | tried to swat | meanest | nastiest | crankiest | grumpiest | savage | took a nip | took a bite | took a chunk | took a swipe | takes a nip | takes a bite | swiped at | snapped at | snaps at | tried to bite | tries to bite | nips at | took a chunk out of | bit my hand | got me with her teeth | got me with his teeth | chomped me | chomped | lunges at | snappish | came at me | comes at me | bit me | bit my | bites | biting | bite | bit | lunged | lunges | lunging | growled | growls | growling | growly | charged | charges | charging | charged me | boxed me | boxed | boxes me"
    " | scratched me | scratched | kicked me | nipped | nips | nippy | aggressive | mean | grumpy | grouchy | nasty | cranky | attacked | attacks | vicious | grunted at | grunts at"
    " | bad temper | bad attitude | swatted | swats | hateful | cage aggressive | bit the | bit him | bit her | bit hand | bitey | got me good | bid me | bitten | ornery | grumps",
    "temper:good": "gentlest | calmest | friendliest | nicest | tamest | a teddy bear | like an angel | a cuddle bug | cuddlebug | snuggly | snuggler | puts up with anything | so chill | chill | a sweet girl | a sweet boy | good as gold | laid back | quiet to handle | handles well | handles nicely | sweetest | sweetest thing | the sweetest | sweet | gentle | calm | friendly | docile | good temper | easy to handle | cuddly | sweetheart | tame | mellow | good attitude | lap rabbit | love bug"
    " | lets me pet | easygoing | easy going | good natured | a doll | a lamb | well behaved | a sweetie | sweetie | loves pets | so good | angel | an angel | gentleman | perfect gentleman | a perfect gentleman | a gentleman",
    "temper": "charged the front | charged my hand | took a swing | takes a swing | swung at | gentlest | calmest | friendliest | tamest | meanest | nastiest | crankiest | grumpiest | took a nip | took a bite | took a chunk | took a swipe | takes a nip | takes a bite | swiped at | snapped at | snaps at | tried to bite | tries to bite | took a chunk out of | bit my hand | chomped me | chomped | came at me | comes at me | snappish | angel | an angel | sweetest | sweetest thing | the sweetest | gentleman | perfect gentleman | a perfect gentleman | temper | temperament | attitude | bit me | bit my | bites | biting | bit | lunged | growled | charged | scratched me | nipped | aggressive | mean | sweet | gentle | calm | friendly | docile",
}  # fmt: skip


def read(c: Clause) -> None:
    """How an animal behaves to people, and the words for it."""
    places = [
        i
        for i, item in enumerate(c.items)
        if item.marks & {"temper:bad", "temper:good"}
        and not c.taken(i)
        and not _of_people(c, i)
        and not (i and c.items[i - 1].marks & {"question"})
        and c.said(i - 1) not in {"i", "we", "i've", "kids"}
        and not (c.said(i).endswith("est") and i + 1 < len(c.items) and "trait" in c.items[i + 1].marks)  # "the nicest fur"
    ]
    if len(places) > 1:  # "grumpy but didn't bite": only what it did
        places = [i for i in places if "negation" not in c.items[i - 1].marks] or places
    graded = c.first("temper")
    if not places and graded is not None and c.said(graded) in {"temper", "temperament", "attitude"}:
        places = [i for i in range(graded + 1, len(c.items)) if c.said(i) in {"good", "bad", "great", "fine", "ok", "terrible", "awful"}]
    if not places or c.has("weather_word", "feed_left"):
        return
    bad = any("temper:bad" in c.items[i].marks or c.said(i) in {"bad", "terrible", "awful"} for i in places)
    picks = [pick for pick in c.listed_subjects(places[0]) if pick is not None]
    sign = " ".join(c.said(i) for i in places)
    used = [c.items[i] for i in places] + [item for item in c.items if "temper" in item.marks]
    for pick in picks:
        c.take(c.past(TemperShown, pick, "who", {"grade": "bad" if bad else "good", "sign": sign}, used))


def _of_people(c: Clause, i: int) -> bool:
    """`a sweet young couple`: whether the word is said of people."""
    if c.said(i) in TEETH and any(c.known(i - back) is not None for back in (1, 2)):
        return False  # "Thistle bit Ann"
    after = i + 1
    while c.said(after) in LOOKS | {"old"}:
        after += 1
    if c.said(after) in {"boy", "girl"} and c.explicit() and c.explicit()[0] < i:
        return False  # "the sweetest old boy"
    return c.said(after) in NAMED_PERSONS | FOLKS


TEETH: Final = frozenset(
    {"bit", "bites", "bite", "nipped", "nips", "scratched", "lunged", "charged", "attacked", "attacks", "swatted", "swats", "boxed"}
)
FOLKS: Final = frozenset({"couple", "family", "folks", "people", "ladies", "kids", "child", "children", "person", "gentleman"})


def check(fact: TemperShown, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: TemperShown, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: TemperShown, _before: Herd, after: Herd) -> tuple[str, ...]:
    """How it behaved, and how often it was bad within a year."""
    line = dated(parts(f"{called(after, fact.who)}: {fact.grade} temper", fact.sign), fact.on, after)
    bad = bad_notes(after.find(fact.who), fact.kind, fact.on) if fact.grade == "bad" else 0
    enough = bad >= flags.BAD_TEMPER_NOTES.value
    return (line, f"That is bad note {bad} in 12 months: it comes up in the digest.") if enough else (line,)


WRITTEN = ("{who:TAG} temper (?P<grade>good|bad)(?:, {sign:TEXT})?",)


def show(fact: TemperShown, _herd: Herd) -> str:
    """`2026-11-25: 22 temper bad, "bit me"`."""
    return noted(fact.on, parts(f"{fact.who} temper {fact.grade}", quoted(fact.sign)))


KIND = Kind(
    fact=TemperShown, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
