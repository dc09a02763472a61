"""A doe is felt for kits."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core.handbook.reproduction import LARGEST_LITTER
from core.herd.changes import of_sex, seen, with_outcome
from core.herd.matings import open_mating, open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_tag, chores_of_mating, dated, noted, said, to_come
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Palpated:
    """A doe is felt for kits."""

    kind: ClassVar[str] = "palpated"

    doe: Tag
    result: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("22 palpated, felt three or four marbles", ({"doe": "22", "result": "bred", "on": "2026-11-25"},)),
    Example(
        "palped 14, 9: both open",
        ({"doe": "14", "result": "open", "on": "2026-11-25"}, {"doe": "9", "result": "open", "on": "2026-11-25"}),
    ),
    Example(
        "palped 14, 9 and 22: bred, open, bred",
        (
            {"doe": "14", "result": "bred", "on": "2026-11-25"},
            {"doe": "9", "result": "open", "on": "2026-11-25"},
            {"doe": "22", "result": "bred", "on": "2026-11-25"},
        ),
    ),
    Example(
        "twelve and sixteen are open",
        (
            {"doe": "12", "result": "open", "on": "2026-11-25"},
            {"doe": "16", "result": "open", "on": "2026-11-25"},
        ),
    ),
    Example("twenty two is open", ({"doe": "22", "result": "open", "on": "2026-11-25"},)),
    Example("palp 14 +", ({"doe": "14", "result": "bred", "on": "2026-11-25"},)),
    Example("palpated 9, bred", ({"doe": "9", "result": "bred", "on": "2026-11-25"},)),
    Example(
        "palped 14 and 9, both bred",
        (
            {"doe": "14", "result": "bred", "on": "2026-11-25"},
            {"doe": "9", "result": "bred", "on": "2026-11-25"},
        ),
    ),
    Example("22 palpated open", ({"doe": "22", "result": "open", "on": "2026-11-25"},)),
    Example("I palpated Biscuit and I definitely feel babies", ({"doe": "22", "result": "bred", "on": "2026-11-25"},)),
    Example("Felt nothing in 22 today", ({"doe": "22", "result": "open", "on": "2026-11-25"},)),
    Example("22 palp +", ({"doe": "22", "result": "bred", "on": "2026-11-25"},)),
    Example("9 palp bred", ({"doe": "9", "result": "bred", "on": "2026-11-25"},)),
    Example(
        "palp 14 neg, 9 pos",
        (
            {"doe": "14", "result": "open", "on": "2026-11-25"},
            {"doe": "9", "result": "bred", "on": "2026-11-25"},
        ),
    ),
    Example("23 Nov; doe 22; palpated; open", ({"doe": "22", "result": "open", "on": "2026-11-23"},)),
)
NOT_THIS: tuple[str, ...] = (
    "palpated 9, not open",
    "Somebody left the gate open on Biscuit's cage",
    "bred 15 to 3",
    "I felt sorry for 22",
)

SHORT_LIST: Final = 6  # items: `12, 16 and 22 are open` and little more
OPENS: Final = ("palpate",)
CUES: Final = {
    "palpate": "feel a thing | feel anything | palps | palpated | palpate | palp | palps | palpation | palpating | felt | palpations | palpated her | feel her belly | how paid it | helpated"
    " | repeated those | felt for kits | checked for kits | plapated | palpate check | palped",
    "pregnant": "gravid | in the family way | expecting | preggo | preggers | bred | positive | pos | preg | pregnant | loaded | babies | kits | grapes | marbles | feels bred | felt bred | yes | good | full | definitely bred | took",
    "open": "feel a thing | feel anything | is open | open | negative | neg | empty | not bred | nothing | not pregnant | no babies | no kits | didnt take | wasnt bred | isnt bred | not preg | no",
    "unsure": "tell one way or the other | tell way or the other | one way or the other | cannot tell | can not tell | i cannot tell | i cant tell | cant really tell | couldnt really say | couldnt really tell | cant really say | could go either way | not clear | too small to tell | cant say | couldnt say | could not say | cant be sure | couldnt be sure | hard to say | too early to tell | too soon to tell | too early to say | undecided | not conclusive | jury is out | jurys out | a toss up | toss up | up in the air | unsure | not sure | couldnt tell | cant tell | maybe | dont know | unclear | hard to tell | could not tell | not certain | inconclusive"
    " | couldnt feel | questionable | honestly dont know | no idea | uncertain | couldnt decide | iffy | might be",
}  # fmt: skip
RESULTS: Final = {"unsure": "unsure", "open": "open", "pregnant": "bred"}
_SIGNS: Final = {"+": "bred", "-": "open"}


def read(c: Clause) -> None:
    """A doe that was felt, and how she felt; `open` or `pregnant` alone will do where the word fits a doe."""
    cue = c.first("palpate")
    if cue is None and "palpate" not in c.virtual:
        cue = _result_alone(c)
        if cue is None:
            return
    c.use(_felt_so_many(c))
    result = _result(c)
    if result is None and cue is not None and c.said(cue) in {"felt", "feel"}:
        return
    if result is None and any(word.startswith("due") for word in c.words()):
        return  # "palpate due 6 Dec"
    used = [item for item in c.items if item.marks & {"palpate", "pregnant", "open", "unsure"}]
    does = c.listed_subjects(-1 if cue is None else cue)
    waiting = _waiting(c)
    felt = _in_order(c) if len(does) + len(waiting) > 1 else []
    if len(felt) == 1 and c.has("all"):
        felt *= len(does) + len(waiting)
    if len(felt) > 1 and len(felt) == len(does) + len(waiting):
        for found, each in zip(waiting, felt, strict=False):
            found.values["result"], found.need = each, None
        for pick, each in zip(does, felt[len(waiting) :], strict=True):
            c.take(c.past(Palpated, pick, "doe", {"result": each}, used))
        return
    if len(set(felt)) > 1:
        result = None
    need = None if result else Need("what", "result", "How did she feel: bred, open or unsure?", ("bred", "open", "unsure"))
    for pick in does:
        c.take(c.past(Palpated, pick, "doe", {"result": result}, used, need))


#: What kits feel like, a finger each.
FINGERED: Final = frozenset({"marbles", "grapes", "kits", "babies"})
SO_MANY: Final = frozenset({"or", "to", "-", "about", "maybe", "around", "like", "at", "least", "a"})


def _felt_so_many(c: Clause) -> list[int]:
    """`felt three or four marbles`: how many it seemed to be is no count."""
    many: list[int] = []
    for i in c.each("pregnant"):
        if c.said(i) not in FINGERED:
            continue
        j = i - 1
        while j > 0 and (c.whole(j) is not None or c.said(j) in SO_MANY):
            many += [j] if (c.whole(j) or 0) <= LARGEST_LITTER.value and c.whole(j) is not None else []
            j -= 1
        if c.said(j) not in {"felt", "feel", "feels"}:
            many = []
    return many


def _waiting(c: Clause) -> list[Found]:
    """The does named before in the same list, of whom nothing was said yet."""
    waiting: list[Found] = []
    before = c.before if "palpate" in c.virtual else None
    while before is not None and before.found and all(_lacks_result(found) for found in before.found):
        waiting = [*before.found, *waiting]
        before = before.before
    return waiting


def _lacks_result(found: Found) -> bool:
    return found.fact is Palpated and found.need is not None and found.need.wanted == "result"


def _in_order(c: Clause) -> list[str]:
    """What was felt, word by word: `palped 14, 9, 22: bred, open, bred`."""
    felt = [(i, result) for mark, result in RESULTS.items() for i in c.each(mark) if "palpate" not in c.items[i].marks]
    return [result for _, result in sorted(felt)]


def _result_alone(c: Clause) -> int | None:
    """`22 open`, `feels bred`, where nothing else is said."""
    for i in c.each("open", "pregnant"):
        said = c.items[i].said
        if said in {"feels bred", "felt bred", "pregnant", "preg", "not pregnant", "not preg", "definitely bred"}:
            return i
        if said == "empty" and _found_empty(c, i):
            return i
        hers = (said == "is open" and c.said(i - 1) == "she") or (
            said == "open" and c.said(i - 1) in {"shes", "she's"} and i == 1 and c.spoken_of() is not None
        )
        if hers and i == len(c.items) - 1:
            return i
        if said == "open" and i and c.mention(i - 1) and len(c.items) <= 3:
            return i
        if said == "open" and c.said(i - 1) == "are" and c.mention(i - 2) and len(c.items) <= SHORT_LIST:
            return i
        if said in {"is open", "shes open"} and i and c.mention(i - 1) and len(c.items) <= 4:
            return i
        ends = (
            i + 1 >= len(c.items)
            or c.items[i + 1].sort in {"mark", "break", "date"}
            or c.said(i + 1) in {"i", "we", "again", "so", "but", "and"}
        )
        if said == "open" and i > 1 and c.said(i - 1) in {"is", "shes", "she's"} and c.mention(i - 2) and ends:
            return i
    return None


def _found_empty(c: Clause, i: int) -> bool:
    """`she's empty`, `22 is empty` and nothing behind it: the doe, and no bottle of hers."""
    if i + 1 < len(c.items) and c.items[i + 1].sort not in {"mark", "break", "date"}:
        return False
    she = i - 1 if c.said(i - 1) in {"shes", "she's"} else (i - 2 if c.said(i - 1) in {"is", "was"} and c.said(i - 2) == "she" else None)
    if she is not None:
        return (she == 0 or c.items[she - 1].sort == "mark") and c.subject_of(i) is not None
    animal = c.known(i - 2) if c.said(i - 1) == "is" else None
    return animal is not None and animal.sex == "doe" and i - 2 == c.opening() and c.items[i - 2].unit != "possessive"


def _result(c: Clause) -> str | None:
    for mark, result in RESULTS.items():
        for i in c.each(mark):
            if mark == "pregnant" and c.items[i].said in {"kits", "babies", "took", "good", "yes"} and not c.has("palpate"):
                continue
            if i and "negation" in c.items[i - 1].marks and "palpate" not in c.items[i].marks:
                return None  # "not open"
            return result
    return _sign(c)


def _sign(c: Clause) -> str | None:
    """`palp 6 +`, `palp 6 -`: a sign behind the doe, and nothing behind the sign."""
    if c.has("palpate") and len(c.items) > 1 and c.items[-1].said == "?":
        return "unsure"  # "palp 6 ?"
    signs = [i for i, item in enumerate(c.items) if i and item.said in _SIGNS]
    if len(signs) != 1 or any(item.sort != "mark" for item in c.items[signs[0] + 1 :]):
        return None
    return _SIGNS[c.said(signs[0])]


def check(fact: Palpated, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: Palpated, herd: Herd) -> Herd:
    """Felt on her open matings; open ends them."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))
    felt = tuple(mating for mating in open_matings(herd, doe.key, fact.on) if mating.on < fact.on)
    known = tuple(replace(m, palpated=(*m.palpated, (fact.on, fact.result))) if m in felt else m for m in herd.matings)
    herd = replace(herd, matings=known)
    if fact.result != "open":
        return herd
    ended = tuple(mating for mating in open_matings(herd, doe.key, fact.on) if mating.on < fact.on)
    return with_outcome(herd, ended, "open", fact.on)


def reply(fact: Palpated, before: Herd, after: Herd) -> tuple[str, ...]:
    """What was felt on which day after the mating, and what follows."""
    doe = after.find(fact.doe)
    mating = open_mating(before, doe.key, fact.on) if doe else None
    age = f", day {(fact.on - mating.on).days} after buck {by_tag(before, mating.buck)}" if mating else ""
    line = dated(f"Doe {fact.doe} palpated {fact.result}{age}", fact.on, after)
    if doe is None or mating is None:
        return (line, "There is no open breeding of hers on the book.")
    if fact.result == "open":
        return (line, "That breeding is closed. She can be bred again.")
    again = "Feel again in a few days." if fact.result == "unsure" else None
    return tuple(each for each in (line, again, to_come(chores_of_mating(after, doe.key, fact.on), after.day)) if each)


WRITTEN = ("doe {doe:TAG} palpated (?P<result>bred|open|unsure)",)


def show(fact: Palpated, _herd: Herd) -> str:
    """`2026-11-25: doe 22 palpated open`."""
    return noted(fact.on, f"doe {fact.doe} palpated {fact.result}")


KIND = Kind(fact=Palpated, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
