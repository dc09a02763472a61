"""The answer to every question that a person can ask of the book. An animal that nobody knows gets the words that would work.

Over 300 lines: one short function a question, in the order of the table at its end.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, datetime

from core.herd.litters import on_book, the_litter
from core.herd.questions import fitting
from core.herd.state import Animal, Herd
from core.notes.clauses.asked_about import ASKS_TO_EAT
from core.notes.clauses.asked_barn import cage_asked, herd_asked, settings_asked
from core.notes.journal import Entry
from core.notes.kinds.query import Query
from core.notes.replay import Book, local_day
from core.notes.settings_page import ABOUT
from core.notes.situations import SITUATIONS, situation_named
from core.reply import Choice, Reply
from core.reports import asking
from core.reports.ailing import ailing, ailing_line, all_ailing
from core.reports.cages import cages_reply, settings_reply
from core.reports.card import card
from core.reports.compare import compare
from core.reports.counts import counted
from core.reports.digest import digest, flag_line, in_order
from core.reports.due import due
from core.reports.evidence import Evidence, evidence
from core.reports.family import family_problems
from core.reports.feed import feed, feed_of
from core.reports.flags import all_flags, flags_of
from core.reports.herd_document import herd_document
from core.reports.keep_or_cull import in_breed, keep_or_cull
from core.reports.line_up import line_up
from core.reports.mates import bred_to, mates, next_does
from core.reports.pairing import pairing
from core.reports.papers.replies import CALENDAR, calendar_reply, paper_reply, paper_wanted
from core.reports.pictures.replies import picture_reply, with_picture
from core.reports.sales import sales
from core.reports.why import why
from core.reports.winter.what_if import HOW_TO, what_if
from core.reports.withdrawal import all_held, may_be_eaten
from core.reports.wording import called, when
from core.words import count

HELP = (
    "Text me what happens in the barn, one note after the other:",
    "new doe 14 named Juno mini rex castor born 3/4/2025",
    "bred 15 to Flint",
    "doe 14 kindled 8, 2 dead",
    "31 4-6 (a weight)",
    "12 lost 2 kits froze",
    "weaned 16",
    "list 32 for 60 until dec 20",
    "Ask me: who's due · why 14 · 15 x 7? · who should I keep · feed · herd · digest",
    "Wrong? Say undo, or: no, 15 not 14",
    f"More: help and one of {', '.join(one.name.split()[0] for one in SITUATIONS if one.kinds != ('remark',))}",
)


#: How many troubles of the family book stand under the flags.
FAMILY = 2  # not a figure: what fits on a phone
#: From so many chores on a picture shows them better.
MANY = 12  # not a figure: lines on a phone
#: What asks for a whole list.
ALL_OF_THEM = re.compile(r"\b(all|everything|whole|full)\b", re.IGNORECASE)
#: What asks for the herd itself and not for a number.
HERD = re.compile(r"^(?!.*\b(how many|count|total)\b).*\bherd\b", re.IGNORECASE)
#: What asks for somebody to breed, and what asks about a mating that was.
WHOM = re.compile(r"\b(who|whom|which|next)\b", re.IGNORECASE)
BRED_TO = re.compile(r"^(?!.*\b(should|can|could|would)\b).*\bbred\b", re.IGNORECASE)
#: What asks for the plan and not for one animal; what asks whether a chore of every day was done.
GOES = re.compile(
    r"\bwho\b.*\b(keep|cull|sell|butcher|go)\b|\bwhy not (keep|cull|sell|butcher)\b.*\b(kits|all|every\w+|them|grow-?outs|bucks|does)\b",
    re.IGNORECASE,
)
NONE_YET = "None of them is old enough to say: they are judged from weaning."
KITS = re.compile(r"\b(kits|grow-?outs)\b", re.IGNORECASE)
FED = re.compile(r"^(did|have) (i|we|anybody|anyone|somebody|someone) (feed|fed)\b", re.IGNORECASE)
#: What asks for what was taken back, and not for the notes that stand.
UNDOING = re.compile(r"\b(undo|undid|undone|take back|delete|erase)", re.IGNORECASE)
#: What may be a tag.
TAG = re.compile(r"\b[A-Za-z]{0,2}-?\d+\b")
#: A number that is none: a size of paper, a count of days or generations.
NO_TAG = re.compile(r"\b(a4|\d+ (day|week|gen(eration)?)s?)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Asked:
    """A question with the herd, the day and the notes that it is answered from. `who` and `other` are the animals it names."""

    query: Query
    barn: Evidence
    entries: tuple[Entry, ...]
    who: Animal | None
    other: Animal | None
    said: str = ""  # the question as it was typed

    @property
    def herd(self) -> Herd:
        """The herd that is asked about."""
        return self.barn.herd

    @property
    def today(self) -> date:
        """The day of the question."""
        return self.barn.today


def answer(query: Query, book: Book, at: datetime) -> Reply:
    """The answer to a question that was sent at that time."""
    said = book.notes[-1].text if book.notes and query in book.notes[-1].facts else ""
    if query.about == "journal" and UNDOING.search(said):
        return asking.taken_back(book.notes)
    return answered(query, book.herd, local_day(at, book.herd), book.standing(), said)


def answered(query: Query, herd: Herd, today: date, entries: Iterable[Entry] = (), said: str = "") -> Reply:
    """The answer to a question on that day. `said` is the question as it was typed, where somebody typed it."""
    for named in (query.who, query.with_):
        if named is not None and found(herd, named) is None:
            return unknown(herd, named)
    who = found(herd, query.who) if query.who else None
    other = found(herd, query.with_) if query.with_ else None
    asked = Asked(query, evidence(herd, today), tuple(entries), who, other, said)
    paper = paper_wanted(asked)
    return ANSWERS.get(query.about, _help)(asked) if paper is None else _stranger(asked) or paper_reply(asked, paper)


def found(herd: Herd, said: str) -> Animal | None:
    """The one animal of that tag or name; None where there is none or several fit."""
    fits = fitting(herd, said)
    return fits[0] if len(fits) == 1 else None


def unknown(herd: Herd, said: str) -> Reply:
    """What to ask instead, where no animal or more than one fits."""
    fits = fitting(herd, said)
    if fits:
        return Reply((f"Which {said}? Ask by tag.",), tuple(Choice(called(one), one.tag) for one in fits[:5]))
    first = next((one.tag for one in herd.animals.values() if one.living), None)
    hint = f"Try a tag on the book, such as {first}, or ask for the herd." if first else "Add it: new doe 40 mini rex born 3/4"
    return Reply((f"{said} is not on the book. {hint}",))


def _needs(asked: Asked, example: str) -> Reply:
    """The reply to a question that lacks its animal, or names one that is not on the book."""
    return _stranger(asked) or Reply((f"Which animal? Ask like this: {example}",))


def _stranger(asked: Asked) -> Reply | None:
    """The reply to a question that names an animal which is not on the book; None where it names none."""
    said = NO_TAG.sub("", asked.said)
    stranger = next((tag for tag in TAG.findall(said) if not fitting(asked.herd, tag)), None)
    return None if stranger is None else unknown(asked.herd, stranger)


def _card(asked: Asked) -> Reply:
    if ASKS_TO_EAT.search(asked.said):
        return _eaten(asked)
    return card(asked.herd, asked.today, asked.who, asked.entries).reply() if asked.who else _needs(asked, "card 14")


def _eaten(asked: Asked) -> Reply:
    """Whether an animal may be eaten: that first, then its card; or all that may not."""
    if asked.who is None:
        return _stranger(asked) or all_held(asked.barn)
    told = card(asked.herd, asked.today, asked.who, asked.entries).reply()
    first = may_be_eaten(asked.barn, asked.who)
    return Reply((*first, *(line for line in told.lines if line not in first)), told.choices)


def _due(asked: Asked) -> Reply:
    until = asked.query.until
    days = max((until - asked.today).days, 0) if until else None
    if CALENDAR.search(asked.said):
        return calendar_reply(asked, days)
    chores = due(asked.herd, asked.today, days)
    if asked.who:
        return chores.of(asked.who.tag).reply(whole=True)
    told = chores.reply(whole=asked.query.scope == "all" or bool(ALL_OF_THEM.search(asked.said)))
    return with_picture(told, "picture of the week") if len(chores.chores) > MANY else told


def _digest(asked: Asked) -> Reply:
    return digest(asked.herd, asked.today).reply()


def _keep(asked: Asked) -> Reply:
    if asked.who:
        return why(asked.herd, asked.today, asked.who, asked.entries).reply()
    return keep_or_cull(asked.herd, asked.today).only(scope=asked.query.scope, breed=asked.query.breed).reply()


def _why(asked: Asked) -> Reply:
    if asked.who is None and GOES.search(asked.said):
        scope = "grow-outs" if KITS.search(asked.said) else asked.query.scope
        told = keep_or_cull(asked.herd, asked.today).only(scope=scope, breed=asked.query.breed)
        return _stranger(asked) or (told.reply() if told.verdicts else Reply((NONE_YET,)))
    return why(asked.herd, asked.today, asked.who, asked.entries).reply() if asked.who else _needs(asked, "why 14")


def _pair(asked: Asked) -> Reply:
    one, other = asked.who, asked.other
    if one is None or other is None:
        return _stranger(asked) or _mates(asked, one)
    if {one.sex, other.sex} != {"doe", "buck"}:
        same = f"both {one.sex}s" if one.sex and one.sex == other.sex else "not known to be a doe and a buck"
        return Reply((f"{called(one)} and {called(other)} are {same}. Ask for a doe and a buck: 15 x 7?",))
    doe, buck = (one, other) if one.sex == "doe" else (other, one)
    return pairing(asked.herd, asked.today, doe, buck).reply()


def _mates(asked: Asked, one: Animal | None) -> Reply:
    """Whom to breed the one to, whom it was bred to, or which doe next."""
    if one is None:
        return next_does(asked.barn, asked.query.breed) if WHOM.search(asked.said) else _needs(asked, "15 x 7?")
    if BRED_TO.search(asked.said):
        return bred_to(asked.barn, one)
    return mates(asked.barn, one).reply() if one.sex else Reply((f"Is {called(one)} a doe or a buck? Tell me: {one.tag} is a doe",))


def _compare(asked: Asked) -> Reply:
    if asked.who and asked.other:
        return compare(asked.herd, asked.today, asked.who, asked.other).reply()
    if asked.query.scope in {"bucks", "does"}:
        told = line_up(asked.herd, asked.today, asked.query.scope.removesuffix("s"), asked.query.breed)
        breed = f"{asked.query.breed} " if asked.query.breed else ""
        return with_picture(told.reply(), f"picture of the {breed}{asked.query.scope}") if told.rows else told.reply()
    if asked.query.breed:
        both = [line_up(asked.herd, asked.today, sex, asked.query.breed).reply() for sex in ("buck", "doe")]
        return Reply(tuple(line for one in both for line in one.lines), tuple(choice for one in both for choice in one.choices))
    return Reply(("Which two? Ask like this: compare 3 and 7",))


def _feed(asked: Asked) -> Reply:
    if FED.search(asked.said):
        told = "Whether they were fed stands on the book only where somebody noted it. What each eats a day: feed"
        return Reply((told,), (Choice("The last notes", "journal"), Choice("Feed", "feed")))
    if asked.who:
        return feed_of(asked.herd, asked.today, asked.who)
    return with_picture(feed(asked.herd, asked.today).reply(), "picture of the winter feed")


def _count(asked: Asked) -> Reply:
    if (cage := cage_asked(asked.said)) is not None:
        return cages_reply(asked.barn, cage)
    if asked.who is None:
        scope = asked.query.scope
        if herd_asked(asked.said) is not None:
            listed_ones = herd_document(asked.herd, asked.today)
            return listed_ones.of(scope) if scope in {"bucks", "does", "grow-outs"} else listed_ones.reply()
        told = counted(asked.barn, asked.query.scope, asked.query.breed)
        whole = asked.query.scope in {None, "all"} and asked.query.breed is None and HERD.search(asked.said)
        return herd_document(asked.herd, asked.today).reply() if whole else told
    litter = the_litter(asked.herd, asked.who.key, asked.today)
    if litter is None:
        return Reply((f"{called(asked.who)} has no kits under her or untagged.",))
    where = "under her" if litter.weaned_on is None else "weaned and untagged"
    return Reply((f"{called(asked.who)}: {count(on_book(asked.herd, litter), 'kit')} {where}, born {when(litter.born_on, asked.today)}.",))


def _weights(asked: Asked) -> Reply:
    return asking.weights(asked.barn, asked.who, asked.query.scope, asked.query.breed)


def _pedigree(asked: Asked) -> Reply:
    return asking.pedigree(asked.barn, asked.who, asked.entries) if asked.who else _needs(asked, "pedigree 33")


def _flags(asked: Asked) -> Reply:
    barn = asked.barn
    if asked.who is not None:
        flagged = flags_of(barn, asked.who) if asked.who.key in barn.stages else ()
        ill = ailing(barn, asked.who) if asked.who.living else None
        found = [*((ill,) if ill else ()), *flagged]
        return Reply((f"{called(asked.who)}: {count(len(flagged), 'flag')}.", *(one.text for one in found)))
    sick = [ailing_line(barn, one) for one in all_ailing(barn) if in_breed(asked.herd.animals[one.animal].breed, asked.query.breed)]
    flagged_ones = _flagged(asked)
    family = [] if asked.query.breed else [line for one in family_problems(barn, asked.entries)[:FAMILY] for line in one.lines(barn)]
    return Reply((*sick, *flagged_ones.lines, *family), flagged_ones.choices)


def _flagged(asked: Asked) -> Reply:
    """What is flagged in the herd, or in a breed of it."""
    barn = asked.barn
    told = [one for one in in_order(all_flags(barn)) if in_breed(asked.herd.animals[one.animal].breed, asked.query.breed)]
    if not told:
        return Reply(("Nothing is flagged.",))
    by_animal = {one.animal: [each for each in told if each.animal == one.animal] for one in told}
    lines = [flag_line(asked.herd, flags) for flags in by_animal.values()]
    return asking.first_lines(f"{count(len(told), 'flag')} on {count(len(by_animal), 'animal')}.", lines)


def _open(asked: Asked) -> Reply:
    return asking.open_does(asked.barn, asked.query.breed)


def _litters(asked: Asked) -> Reply:
    return asking.litters(asked.barn, asked.who, asked.query.breed)


def _sales(asked: Asked) -> Reply:
    return sales(asked.barn, asked.query.breed)


def _journal(asked: Asked) -> Reply:
    return asking.journal(asked.barn, asked.entries, asked.who)


def _winter(asked: Asked) -> Reply:
    return keep_or_cull(asked.herd, asked.today).only(breed=asked.query.breed).winter_reply()


def _what_if(asked: Asked) -> Reply:
    told = what_if(asked.barn, asked.query, asked.said)
    return (_stranger(asked) or told) if told.lines == HOW_TO else told


def _picture(asked: Asked) -> Reply:
    return (None if asked.who else _stranger(asked)) or picture_reply(asked)


def _help(asked: Asked) -> Reply:
    """What can be said, or what can be said of one thing: `help weights`; the settings as they are."""
    if settings_asked(asked.said):
        return settings_reply(asked.herd)
    situation = situation_named(asked.said)
    if situation is None:
        return Reply(HELP)
    notes = [note for _, note in ABOUT.values()] if situation.kinds == ("setting",) else situation.sayings
    return Reply((f"{situation.name.capitalize()}, for example:", *notes))


#: What answers each thing that can be asked about.
ANSWERS: dict[str, Callable[[Asked], Reply]] = {
    "card": _card,
    "due": _due,
    "digest": _digest,
    "keep": _keep,
    "why": _why,
    "pair": _pair,
    "compare": _compare,
    "feed": _feed,
    "count": _count,
    "weights": _weights,
    "pedigree": _pedigree,
    "flags": _flags,
    "open": _open,
    "litters": _litters,
    "sales": _sales,
    "journal": _journal,
    "winter": _winter,
    "what_if": _what_if,
    "picture": _picture,
    "help": _help,
}
