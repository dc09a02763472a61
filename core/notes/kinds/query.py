"""A question for the book."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.state import Herd
from core.notes.checking import worst
from core.notes.clauses.asked_about import SCOPES, SEXES, asked_about, asks_for_paper, parent_asked_of
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.dates import days_from
from core.notes.slots.items import breed_said
from core.notes.telling import breed_written, parts, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """A question for the book."""

    kind: ClassVar[str] = "query"

    about: str
    who: Tag | None = None
    with_: Tag | None = None
    scope: str | None = None
    breed: str | None = None
    until: date | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("list my rabbits", ({"about": "count", "scope": "all"},)),
    Example("what are my settings", ({"about": "help"},)),
    Example("who is in cage 3", ({"about": "count"},)),
    Example("how many litters did Juno have so far?", ({"about": "litters", "who": "14"},)),
    Example("what does the book say about 9", ({"about": "card", "who": "9"},)),
    Example("what reminders are there", ({"about": "due"},)),
    Example("who should I breed next", ({"about": "pair"},)),
    Example("who is sick", ({"about": "flags"},)),
    Example("is juno due yet", ({"about": "due", "who": "14"},)),
    Example("Could somebody tell me why 14 is flagged", ({"about": "why", "who": "14"},)),
    Example("did Juno kindle?", ({"about": "litters", "who": "14"},)),
    Example("Has 22 been treated?", ({"about": "card", "who": "22"},)),
    Example("which does are open, with everything going on I can't say", ({"about": "open", "scope": "does"},)),
    Example("14 vs 9", ({"about": "compare", "who": "14", "with": "9"},)),
    Example("digest", ({"about": "digest"},)),
    Example("herd", ({"about": "count"},)),
    Example("due list", ({"about": "due"},)),
    Example("print cage cards for the bucks", ({"about": "card", "scope": "bucks"},)),
    Example("cage cards on a4", ({"about": "card"},)),
    Example("cage card 14", ({"about": "card", "who": "14"},)),
    Example("print the pedigree of 14 on letter, 5 generations", ({"about": "pedigree", "who": "14"},)),
    Example("litter record 14", ({"about": "litters", "who": "14"},)),
    Example("print the plan", ({"about": "keep"},)),
    Example("chores sheet", ({"about": "due"},)),
    Example("print the crib", ({"about": "help"},)),
    Example("calendar", ({"about": "due"},)),
    Example("send me the chores as a calendar", ({"about": "due"},)),
    Example("could you show me 16 and Moss side by side", ({"about": "compare", "who": "16", "with": "5"},)),
    Example("Can you put 14 and 16 side by side?", ({"about": "compare", "who": "14", "with": "16"},)),
    Example("which buck makes the fastest kits?", ({"about": "compare", "scope": "bucks"},)),
    Example("Is 7 better than his sire?", ({"about": "compare", "who": "7", "with": "3"},)),
    Example("compare bucks", ({"about": "compare", "scope": "bucks"},)),
    Example("compare the mini rex does", ({"about": "compare", "scope": "does", "breed": "Mini Rex"},)),
    Example("compare 31 and 33", ({"about": "compare", "who": "31", "with": "33"},)),
    Example("pedigree of R22", ({"about": "pedigree", "who": "R22"},)),
    Example("what if I sold Flint", ({"about": "what_if", "who": "3"},)),
    Example("show me a picture of 31", ({"about": "picture", "who": "31"},)),
    Example("show 31 growing", ({"about": "picture", "who": "31"},)),
    Example("photos 14", ({"about": "picture", "who": "14"},)),
    Example("How's Juno doing?", ({"about": "card", "who": "14"},)),
    Example("When is Clover due?", ({"about": "due", "who": "9"},)),
    Example("Which does are open right now?", ({"about": "open", "scope": "does"},)),
    Example("Who should I breed 15 to?", ({"about": "pair", "who": "15"},)),
    Example("Requested: weights of 31; pedigree of 7.", ({"about": "weights", "who": "31"}, {"about": "pedigree", "who": "7"})),
)
NOT_THIS: tuple[str, ...] = (
    "did you know 14 has the softest fur?",
    "is Juno jealous or what?",
    "the show is on december 5th, taking 31 and 33",
    "14 kindled 8, 2 dead",
    "remind me friday to trim nails on 9",
    "31 4-6",
    "wrote 14 on the calendar",
    "new cage card on 14's door",
    "took photos of 14 today",
    "Questions: none today; all is well",
)

OPENS: Final = ()
CUES: Final = {
    "ask:due": "whos overdue | who is overdue | whats overdue | what is overdue | whos late | who is late | anyone overdue | anybody overdue | anything overdue | chores sheet | chore sheet | this weeks chores | weeks chores | calendar | calendar file | calendar of | calendar for | chore calendar | chores calendar | ics | ics file | what reminders | which reminders | whats all due | whats due all | what is due all | everything that is due | everything thats due | due all | all due | all chores | everything due | all the chores | every chore | whats dew | whos dew | dew | whose do | whose due | due | due list | whats due | whos due | who is due | who's due | coming up | to do | todo | on the list | this week | chores | whats next | due today | whos do | what do i need to do | what needs doing | chore list | what should i be doing",
    "ask:why": "why",
    "ask:best": "best | fastest | faster | rank | quickest | bigger | biggest | heaviest",
    "ask:compare": "compare | side by side | better | versus | vs | or | difference between",
    "ask:pedigree": "pedigree | ped | parents | grandparents | family tree | bloodline | lineage | ancestors | sire of | dam of | sire on | dam on | sire to | the sire | the dam | father of | mother of | daddy of",
    "ask:open": "whos open | who is open | open does | empty does | is open | any open",
    "ask:litters": "litter record | litter records | litter sheet | litters | litter",
    "ask:sales": "for sale | whos for sale | who is for sale | whats for sale | sales | sold | have we sold | did we sell | income | made on",
    "ask:flags": "who is sick | whos sick | anyone sick | anybody sick | is anyone sick | is anybody sick | sick list | look off | anything off | flags | flag | flagged | problems | red flags | anything wrong | trouble",
    "ask:count": "how meny | how mny | hw many | how many | count | counts | how many kits | head count | headcount | total",
    "ask:weights": "wts | weights for | weights on | weights of | weights | weight | weigh | growth | how heavy | weighed | weighing | been weighing | gaining",
    "ask:feed": "feed | pellets | how much feed | feed cost | feed bill | feed bills | feed last | feeding cost",
    "ask:keep": "who should go | who has to go | who should i cull | who should i keep | who needs to go | who to keep | who to cull | cull plan | keep plan | the plan on paper | plan on paper | print the plan | print the cull list | plan as pdf | plan as a pdf | keep | keeper | a keeper | a keep | keeping | worth keeping | cull | hang on to | get rid of | keepers | hold back | keep or cull | keep list | cull list | should i sell | who goes",
    "ask:pair": "related | too related | pair | x | putting | pairing | cross | mate | inbreeding | with",
    "ask:journal": "journal | went on | whats been going on | going on | what happened | told you | have i told you | tell you | notes | history of notes | what did i say | what did i write | log",
    "ask:winter": "winter plan | before winter | through winter | this winter | winter",
    "ask:what_if": "what if | what would happen | what happens if | if i sold | if i culled | suppose i",
    "ask:picture": "picture | pic | chart | graph | plot | photo | picture of | growth chart | pictures | photos | pics | draw | draw me",
    "ask:help": "crib | the crib | notes crib | crib sheet | help | what can you do | how do i | commands | how does this work | what can i say | things can i say | things can i tell | can i say to you | instructions",
    "ask:card": "cage card | cage cards | cage card for | cage cards for | cage card of | cage cards of | print cards | what does the book say about | what do you have on | what do we know about | card | everything on | all on | tell me about | show me | info on | record on | history on | everything about | hows | how is | whats up with | details on | status of | stats on | look up | record for | summary of",
    "ask:herd": "herd | the herd | my herd | our herd",
    "ask:digest": "digest | weekly digest | the digest | this weeks digest",
    "show_me": "print | print me | print out | read me | show | show me | list | give me | tell me | let me see | can i see | could i see | query | display | see | pull up | send me",
}  # fmt: skip
_GENERATIONS: Final = frozenset({"generation", "generations", "gen", "gens"})


def read(c: Clause) -> None:
    """What the person wants to know, about whom."""
    places = _animals(c)
    about = asked_about(c, places)
    if about is None:
        return
    c.take(Found(Query, _values(c, about, places), list(c.items)))


def _animals(c: Clause) -> list[int]:
    places: list[int] = []
    seen: set[object] = set()
    for i in range(len(c.items)):
        item = c.items[i]
        known = c.known(i)
        if (item.said.replace(" ", "").lower() == "a4" and not known) or c.said(i + 1) in _GENERATIONS:
            continue  # a size of paper, or how far back a pedigree goes
        if item.sort in {"animal", "code"} or (
            item.sort == "num" and known and not c.counted(i) and c.said(i - 1) not in {"next", "last", "past"}
        ):
            key = known.tag if known else item.said
            if key not in seen:
                places.append(i)
            seen.add(key)
    return places


def _values(c: Clause, about: str, places: list[int]) -> dict[str, object]:
    mentions = [mention for i in places if (mention := c.mention(i))]
    tags = [mention.tag or mention.said.upper() for mention in mentions]
    values: dict[str, object] = {"about": about}
    if about == "pair":
        does = [mention.tag for mention in mentions if mention.tag and (animal := c.herd.find(mention.tag)) and animal.sex == "doe"]
        others = [tag for tag in tags if not does or tag != does[0]]
        tags = [*does[:1], *others]
    if tags:
        values["who"] = tags[0]
    elif c.has("pronoun") and (spoken := c.spoken_of()):
        values["who"] = spoken.tag
    if len(tags) > 1:
        values["with_"] = tags[1]
    parent = parent_asked_of(c, places) if about == "compare" else None
    if parent is not None:
        values["with_"] = parent.tag
    if (
        not tags
        and about == "due"
        and any("ask:due" in item.marks and {"all", "every", "everything"} & set(item.said.split()) for item in c.items)
    ):
        values["scope"] = "all"
    elif not tags:
        scopes = SCOPES | SEXES if about in {"compare", "feed"} or asks_for_paper(c) else SCOPES
        values["scope"] = next((scope for mark, scope in scopes.items() if c.has(mark)), None)
    values["breed"] = next((breed for item in c.items if (breed := breed_said(item))), None)
    until = _until(c)
    if until is not None:
        values["until"] = until
    return values


def _until(c: Clause) -> date | None:
    for i in c.dates():
        days = c.resolved(c.items[i].value, "plan")
        return days.until or days.on
    for i in c.sorted_as("span"):
        count, period = c.items[i].value
        step = {"day": 1, "week": 7, "month": 30}.get(period)  # not a figure: days in the calendar's units
        if step and c.said(i - 1) in {"next", "in", "the next"}:
            return days_from(c.today, count * step)
    return None


def check(fact: Query, herd: Herd, _today: date) -> Problem | None:
    """Animals that are, or were, on the book."""
    return worst(*(_unknown(herd, tag) for tag in (fact.who, fact.with_) if tag is not None))


def _unknown(herd: Herd, tag: str) -> Problem | None:
    if herd.find(tag) is not None:
        return None
    return Problem("which_animal", f"There is no {tag} on the book. Whom do you mean?", (), "Ask again with a tag or a name.")


def reply(_fact: Query, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: a question is answered by its report."""
    return ()


WRITTEN = (
    "query {about:WORD}(?:, who {who:TAG})?(?:, with {with:TAG})?(?:, scope {scope:WORD})?(?:, breed {breed:BREED})?(?:, until {until:DAY})?",
)


def show(fact: Query, _herd: Herd) -> str:
    """`query pair, who 15, with 7, scope does, breed Mini Rex, until 2026-12-01`."""
    return parts(
        f"query {fact.about}",
        told("who ", fact.who),
        told("with ", fact.with_),
        told("scope ", fact.scope),
        told("breed ", breed_written(fact.breed)),
        told("until ", fact.until),
    )


KIND = Kind(fact=Query, examples=EXAMPLES, not_this=NOT_THIS, check=check, reply=reply, show=show, written=WRITTEN)
