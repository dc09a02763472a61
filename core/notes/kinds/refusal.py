"""A doe would not take the buck."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import of_sex, seen
from core.herd.matings import open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_born, not_yet, was_gone, worst, wrong_sex
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.telling import by_key, dated, noted, said, when
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """A doe would not take the buck."""

    kind: ClassVar[str] = "refused"

    doe: Tag
    on: date
    buck: Tag | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("put 15 in with Moss on Monday and she sat down and wouldnt lift at all", ({"doe": "15", "buck": "5", "on": "2026-11-23"},)),
    Example("Thistle didn't want a thing to do with Flint", ({"doe": "16", "buck": "3", "on": "2026-11-25"},)),
    Example("15 wants nothing to do with flint", ({"doe": "15", "on": "2026-11-25", "buck": "3"},)),
    Example("12 refused moss", ({"doe": "12", "on": "2026-11-25", "buck": "5"},)),
    Example("thistle wanted nothing to do with flint", ({"doe": "16", "on": "2026-11-25", "buck": "3"},)),
    Example("22 wouldn't stand for moss yesterday", ({"doe": "22", "on": "2026-11-24", "buck": "5"},)),
    Example("Refusal: doe 15, buck 3.", ({"doe": "15", "on": "2026-11-25", "buck": "3"},)),
    Example("15 would not take Moss.", ({"doe": "15", "buck": "5", "on": "2026-11-25"},)),
    Example("9 no lift", ({"doe": "9", "on": "2026-11-25"},)),
    Example("15 wouldnt lfit", ({"doe": "15", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "the book says rabbits won't breed in August, and 15 agrees",
    "bred 15 to Flint, she lifted right away",
    "22 refused her feed? no",
    "9 would not take the kits",
    "I finally sat down with Clover's papers",
)

OPENS: Final = ("refuse",)
CUES: Final = {
    "refuse": "said no to | says no to | ref | refd | rfsd | rfs | refused | refuses | refuse | refusal | wouldnt lift | wont lift | would not lift | didnt lift | not lift | not lifting | wouldnt stand"
    " | no lift | wouldnt breed | wouldnt take | not interested | wasnt interested | wanted nothing to do with | wants nothing to do with | want nothing to do with | would have nothing to do with | ran from | no interest"
    " | wouldnt cooperate | would not breed | wont breed | will not lift | didnt want | sat down | clamped down | wouldnt have him | wouldnt have it"
    " | would have none of | will have none of | having any of it | isnt having any of it | have anything to do with | wouldnt have anything to do with | didnt want anything to do with | doesnt want anything to do with | wants no part of | wanted no part of | would have none of it | wasnt having it | wasnt having any of it | not having it | isnt having it | having none of it | none of it | have none of it | will have none of it | had no use for | has no use for | had no time for | wants none of | wanted none of | isnt interested | is not interested | was not interested | not in the mood | wasnt in the mood | not receptive | wasnt receptive | isnt receptive | fought him off | wouldnt let him near | tucked her tail | sat tight | wouldnt go for | wouldnt accept | wont accept | wouldnt raise"
    " | wont take | would not take | will not take | would not accept | will not accept | ran off | would not stand | wont stand | nothing doing | wouldnt have a thing to do with | didnt want a thing to do with | wouldnt give him the time of day | wouldnt have a bit of it | turned down | rejected | didnt stand | isnt lifting | wouldnt let him",
}  # fmt: skip


def read(c: Clause) -> None:
    """A doe that would not; the buck where he is named."""
    cue = c.first("refuse")
    if cue is None and "refuse" not in c.virtual:
        return
    if cue is not None and c.said(cue) in {"turned down", "refused"} and c.items[cue + 1 : cue + 2] and _offered(c, cue + 1):
        c.use([cue + 1])
        return  # "turned down 40 for R23"
    if cue is not None and c.said(cue).endswith("no to") and not (_is(c, cue - 1, "doe") and _is(c, cue + 1, "buck")):
        return  # "the lady said no to 31"
    if cue is not None and (_of_the_speaker(c, cue) or c.said(cue - 1) in {"rabbits", "bunnies", "rabbit"}):
        return
    if cue is not None and any(
        {"feed", "kits"} & item.marks or item.said in {"water", "food", "hay"} for item in c.items[cue + 1 : cue + 4]
    ):
        return  # off its feed, or no mother to the kits: another matter
    places = [i for i in range(len(c.items)) if c.mention(i) and (c.items[i].sort != "num" or (c.known(i) and not c.counted(i)))]
    picks = {tag: c.pick(i) for i in reversed(places) if (tag := (c.mention(i) or Mention((), "")).tag)}
    sexes = {tag: animal.sex for tag in picks if (animal := c.herd.find(tag))}
    buck = next((picks[tag] for tag, sex in reversed(sexes.items()) if sex == "buck"), None)
    does: list[Pick | None] = [picks[tag] for tag, sex in reversed(sexes.items()) if sex != "buck"]
    if not does:
        unknown = next((c.pick(i) for i in places if c.known(i) is None), None)
        does = [unknown or _tried(c) or c.spoken_of() or buck]
        if buck is None and unknown is None and not sexes:
            buck = _tried(c, "buck")
        buck = None if does[0] is buck else buck
    tried = _tried(c) if not places else None
    if tried is not None and c.before is not None:
        _same_day(c)
    if c.before is not None and not c.dates() and _told_before(c, does, buck):
        c.use(i for i, item in enumerate(c.items) if "refuse" in item.marks)
        return
    for doe in does:
        found = c.past(Refused, doe, "doe", {}, [c.items[cue]] if cue is not None else [])
        if buck is not None:
            found.used.extend(buck.items)
            c.fill(found, buck, "buck")
        c.take(found)


def _is(c: Clause, i: int, sex: str) -> bool:
    animal = c.known(i)
    return animal is not None and animal.sex == sex


def _told_before(c: Clause, does: list[Pick | None], buck: Pick | None) -> bool:
    """`she clamped down and would not lift`: the breath before told of that refusal already, with its day."""
    told = [found.values for found in c.before.found if found.fact is Refused] if c.before is not None else []
    return (
        bool(told)
        and not c.explicit()
        and all(
            doe is not None
            and any(
                values.get("doe") == doe.mention.tag and (buck is None or values.get("buck") in {None, buck.mention.tag}) for values in told
            )
            for doe in does
        )
    )


def _offered(c: Clause, i: int) -> bool:
    """Whether a price stands there: an offer was refused."""
    return c.items[i].sort == "money" or (c.whole(i) is not None and c.said(i + 1) in {"for", "dollars", "bucks"})


def _of_the_speaker(c: Clause, cue: int) -> bool:
    """`I finally sat down with ...`: it is not the doe that did it."""
    before = cue - 1
    while c.said(before) in {"finally", "just", "then", "even", "also", "actually", "really"}:
        before -= 1
    return c.said(before) in {"i", "we", "my", "im", "i'm"}


def _same_day(c: Clause) -> None:
    """The day of the try, told before, is the refusal's; what told of the try says no more."""
    before = c.before
    while before is not None and not before.found:
        if before.dates() and not c.dates() and c.header is None:
            c.header = before.items[before.dates()[0]].value
        before.use(i for i, item in enumerate(before.items) if item.sort in {"word", "mark", "date"} or before.known(i))
        before = before.before


def _tried(c: Clause, sex: str = "doe") -> Pick | None:
    """The doe, or the buck, of the statement before, where she was put to a buck: `tried 15 with Moss but she would have none of it`."""
    before = c.before
    if before is None or c.explicit():
        return None
    if before.before is not None and not before.explicit() and not any(before.known(i) for i in range(len(before.items))):
        before = before.before
    sexes = {animal.sex: i for i in range(len(before.items)) if (animal := before.known(i)) and not before.counted(i)}
    return before.pick(sexes[sex]) if {"doe", "buck"} <= sexes.keys() else None


def check(fact: Refused, herd: Herd, today: date) -> Problem | None:
    """A doe that is there; a buck, where one is named."""
    buck = herd.find(fact.buck) if fact.buck else None
    return worst(
        not_yet(fact.on, today),
        animal_problem(herd, fact.doe, fact.on, "doe"),
        worst(wrong_sex(buck, "buck"), was_gone(buck, fact.on), not_born(buck, fact.on)) if buck else None,
    )


def apply(fact: Refused, herd: Herd) -> Herd:
    """Seen of the doe: no mating came of it."""
    return seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))


def reply(fact: Refused, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The refusal; nothing is due from it."""
    line = f"Doe {fact.doe} refused {f'buck {fact.buck}' if fact.buck else 'the buck'}"
    return (dated(line, fact.on, after), _of_her_breeding(fact, after))


def _of_her_breeding(fact: Refused, herd: Herd) -> str:
    """Whether a breeding of hers is on the book: a refusal takes none back."""
    doe = herd.find(fact.doe)
    mating = next(iter(reversed(open_matings(herd, doe.key, fact.on))), None) if doe else None
    if mating is None:
        return "No breeding recorded. Try again in a day or two."
    standing = f"Her breeding to {by_key(herd, mating.buck)} ({when(mating.on, herd.day)}) still stands"
    return (
        f'{standing}. If it never happened: "undo the breeding of {fact.doe}".' if mating.on == fact.on else f"{standing}; none is added."
    )


WRITTEN = ("doe {doe:TAG} refused (?:the buck|buck {buck:TAG})",)


def show(fact: Refused, _herd: Herd) -> str:
    """`2026-11-25: doe 22 refused buck 5`."""
    return noted(fact.on, f"doe {fact.doe} refused {f'buck {fact.buck}' if fact.buck else 'the buck'}")


KIND = Kind(fact=Refused, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
