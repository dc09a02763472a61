"""An animal is given away."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import takewhile
from typing import ClassVar, Final

from core.herd.changes import gone, left
from core.herd.litters import the_litter
from core.herd.state import Herd
from core.notes.checking import leaver_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.leaving import leaving
from core.notes.clauses.others import NAMED_PERSONS
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, kits_after, motherless, noted, of_kits, quoted, said, whom, withdrawal_caution
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAway:
    """An animal is given away."""

    kind: ClassVar[str] = "given_away"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    to: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("gave R21 to a boy from the feed store", ({"on": "2026-11-25", "who": "R21", "to": "a boy from the feed store"},)),
    Example("lost 32, he went to a nice family", ({"who": "32", "on": "2026-11-25"},)),
    Example("gave 33 away", ({"on": "2026-11-25", "who": "33"},)),
    Example("donated R21 to the school", ({"on": "2026-11-25", "who": "R21", "to": "the school"},)),
    Example("my cousin took R21 home", ({"on": "2026-11-25", "who": "R21", "to": "my cousin"},)),
    Example("rehomed 31", ({"on": "2026-11-25", "who": "31"},)),
    Example("gave two of 16's kits to my cousin", ({"on": "2026-11-25", "litter_of": "16", "count": 2, "to": "my cousin"},)),
    Example("Gave R21 to my niece", ({"on": "2026-11-25", "who": "R21", "to": "my niece"},)),
    Example("Given away: R21 to a 4-H family.", ({"on": "2026-11-25", "who": "R21", "to": "a 4-h family"},)),
)
NOT_THIS: tuple[str, ...] = (
    "gave 22 ivermectin .2 ml",
    "gave moss 1/2 cup",
    "Flint gave himself away by thumping",
    "took Moss home from the show",
    "the judge took Moss home to look at him",
    "my shoes took water home",
    "moved 2 kits from 12 to 16",
    "Gave Moss a good brushing to keep him calm",
    "I gave it an hour to be sure, Thistle's cage stayed quiet",
)

OPENS: Final = ("give",)
CUES: Final = {
    "let": "let",
    "took": "took",
    "give": "gave | given | given away | gave away | rehomed | gifted | donated | giving away | gave to | gve",
}  # fmt: skip


def read(c: Clause) -> None:
    """Which animal, or how many kits, and to whom; a gift of feed or medicine is something else."""
    cue = c.first("give")
    if cue is None and "give" not in c.virtual:
        if _taken_home(c):
            return
        cue = next((i for i in range(len(c.items)) if c.said(i) == "let"), None)
        if cue is None or not any(c.said(i) == "have" and c.known(i + 1) for i in range(cue, len(c.items))):
            return
        leaving(c, GivenAway, cue, to=True, money=False)
        return
    fed = any("ration" in item.marks and item.said != "on" for item in c.items)  # "on a happier note"
    if fed or c.has("drug", "treat", "withdrawal", "feed", "per_day", "gave_up") or c.sorted_as("dose", "cup", "weight"):
        return
    if cue is not None and (_something_given(c, cue) or _to_a_mate(c, cue) or c.said(cue + 1) in THEMSELVES):
        return
    away = (cue is not None and c.said(cue) in {"given away", "gave away", "rehomed", "gifted", "donated", "giving away"}) or any(
        item.said == "away" for item in c.items
    )
    to = [
        i
        for i, item in enumerate(c.items)
        if item.said in {"to", "for"} and i + 1 < len(c.items) and c.items[i + 1].sort == "word" and c.said(i + 1) not in INFINITIVES
    ]
    if not away and not to and "give" not in c.virtual:
        _to_somebody(c, (cue or 0) + 1)
        return
    leaving(c, GivenAway, cue, to=True, money=False)


#: What gives itself away is only found out.
THEMSELVES: Final = frozenset({"herself", "himself", "itself", "themselves", "myself"})
#: Behind `to` they tell what for, not to whom.
INFINITIVES: Final = frozenset({"be", "make", "see", "do", "get", "let", "have", "help", "keep"})
ARTICLES: Final = frozenset({"a", "an", "another", "some", "the", "more", "extra", "one", "plenty", "lots"})


def _something_given(c: Clause, cue: int) -> bool:
    """`gave it the night`, `gave 33 a five for type`, `gave Moss a good brushing`: what is given goes to the animal; a new home does not."""
    receiver, article = cue + 1, cue + 2
    if c.known(receiver) is None and not (receiver < len(c.items) and "pronoun" in c.items[receiver].marks):
        return False
    return c.said(article) in ARTICLES and not any(item.said in {"home", "away"} for item in c.items[article:])


def _to_a_mate(c: Clause, cue: int) -> bool:
    """`gave 22 to Flint for an hour`: a doe to a buck of the book is no gift."""
    given, receiver = c.known(cue + 1), c.known(cue + 3)
    return c.said(cue + 2) == "to" and given is not None and receiver is not None and {given.sex, receiver.sex} == {"doe", "buck"}


def _taken_home(c: Clause) -> bool:
    """`my neighbor took R22 home`: somebody else did, and no money is spoken of."""
    took = c.first("took")
    if took is None or took + 1 not in c.explicit() or c.said(took + 2) != "home" or c.sorted_as("money"):
        return False
    start = c.opening() or 0
    whom = c.items[start:took]
    if len(whom) < 2 or whom[0].said not in {"my", "our", "the", "a"} or not any(item.said in NAMED_PERSONS for item in whom):
        return False
    c.take(c.past(GivenAway, c.pick(took + 1), "who", {"to": " ".join(item.said for item in whom)}, [*whom, c.items[took]]))
    return True


def _to_somebody(c: Clause, start: int) -> None:
    """`gave my neighbor R22`: whom stands between the verb and the animal."""
    whom = list(takewhile(lambda item: item.sort == "word" and not item.marks, c.items[start:]))
    if len(whom) > 1 and whom[0].said in {"my", "our", "the", "a"} and start + len(whom) in c.explicit():
        for found in leaving(c, GivenAway, start - 1, to=False, money=False):
            found.values["to"] = " ".join(item.said for item in whom)
            found.used += whom


def check(fact: GivenAway, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, or no more untagged kits than there are."""
    return worst(not_yet(fact.on, today), leaver_problem(herd, fact.who, fact.litter_of, fact.count, fact.on, "given away"))


def apply(fact: GivenAway, herd: Herd) -> Herd:
    """Gone; untagged kits are fewer."""
    if fact.who is not None:
        return gone(herd, fact.who, fact.on, fact.kind, said(fact))
    doe = herd.find(fact.litter_of or "")
    litter = the_litter(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(left(litter, fact.on, fact.count or 0, fact.kind, said(fact, "litter_of", "count"))) if litter else herd


def reply(fact: GivenAway, before: Herd, after: Herd) -> tuple[str, ...]:
    """Who was given to whom."""
    who = whom(before, fact.who) if fact.who is not None else of_kits(None, fact.litter_of, fact.count)
    line = dated(f"Gave away {who}{f' to {fact.to}' if fact.to else ''}", fact.on, after)
    caution = withdrawal_caution(before, fact.who, fact.on)
    return tuple(
        each for each in (line, kits_after(fact.litter_of, before, after, fact.on), motherless(before, fact.who, fact.on), caution) if each
    )


WRITTEN = (
    "gave away {who:TAG}(?: to {to:TEXT})?",
    "gave away {count:NUM} kits? of doe {litter_of:TAG}(?: to {to:TEXT})?",
)


def show(fact: GivenAway, _herd: Herd) -> str:
    """`2026-11-25: gave away R22 to "the neighbor"`."""
    return noted(
        fact.on, f"gave away {of_kits(fact.who, fact.litter_of, fact.count)}" + (f" to {quoted(fact.to)}" if fact.to is not None else "")
    )


KIND = Kind(fact=GivenAway, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
