"""Answers to a reminder: "8, 2 dead", "done", "not yet", "tomorrow", "skip".

A day to come puts the chore off, under the key of that chore; "done" gives the event that the reminder asked for; anything else is
read as the rest of a sentence about the reminder's animal.

Over 300 lines: one answer a kind of chore, a few lines each, that share the same few words.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Final

from core.handbook.asking import LATER_TODAY_HOURS
from core.herd.calendar import all_chores
from core.herd.chore import Chore, chore_named
from core.herd.litters import alive_now, litter_meant, untagged
from core.herd.litters import the_litter as litter_with_kits
from core.herd.questions import same_tag
from core.herd.settings import is_quiet, quiet_hours
from core.herd.state import Herd
from core.notes.kinds.doing import ChoreDone
from core.notes.kinds.remark import Remark
from core.notes.kinds.reminder import Reminder
from core.notes.kinds.skipping import Skipped
from core.notes.meaning import Meaning, meaning_of
from core.notes.reading import Ask, Draft, Reading, ReplyTo
from core.notes.slots.animals import closest_one
from core.notes.talk.answer import COUNTS, Reads, completed, day_alone, day_within, plain

_DONE = re.compile(
    r"^(?:(?:all |it'?s |its |just |ok |okay |yes |yep |yeah |got it |already )*"
    r"(?:done|did it|did that|did|finished|completed?|took care of it|handled)|yes|yep|yeah|yup|ok|okay|check|✅|👍|✔️?)(?!\w)[\s,.!:;-]*",
    re.IGNORECASE,
)
_NOT_YET = re.compile(
    r"^(?:no(?:pe)?|nah|not yet|not done|(?:no,? )?nothing(?: yet)?|no kits(?: yet)?|still (?:waiting|nothing|no kits)|none yet|"
    r"(?:nothing|no kits|none)(?: yet)?,? (?:on )?day \d+|day \d+,? (?:and )?(?:still )?(?:nothing|no kits|none)(?: yet)?|"
    r"didn'?t(?: do it)?(?: yet)?|haven'?t(?: yet)?|hasn'?t(?: yet)?|no sign.*|no,? not yet)$",
    re.IGNORECASE,
)
_SKIP = re.compile(
    r"^(?:skip\b.*|\D*[,.] (?:please )?skip(?: (?:it|this|that)(?: one)?)?(?: please)?|no need|don'?t bother|drop it|cancel(?: it)?|never ?mind|forget it|leave it)$",
    re.IGNORECASE,
)
_PUT_OFF = re.compile(
    r"^(?:(?:remind me(?: again)?|ask(?: me)?(?: again)?|put (?:it|this|that)? ?off|move (?:it|this)?|snooze(?: it)?|later|"
    r"do (?:it|that)|will do(?: it)?|i'?ll do (?:it|that)|not today|not yet|no|postpone(?: it)?|try(?: again)?|wait|ok(?:ay)?|"
    r"give (?:it|her|him|them|me)|let'?s (?:wait|do it|say)|hold off|push (?:it|that)(?: back)?|wait|after|nope|nah|"
    r"make it|maybe|again|on|til|till|until|to|for|by|this)\b[\s,.]*)*",
    re.IGNORECASE,
)
_STILL_NOT = re.compile(r"^not yet\b\D*$")
_LEFT_FOR = re.compile(r"\b(?:leav\w+|till?|until|will|doing|gonna|going to|wait\w*|check|again|give|later|hold)\b")
#: Chores that nothing but the doing answers: "boxes are dirty, friday" tells of a day to come.
_SET_UP = frozenset({"nest_box_in", "nest_box_out", "custom"})
_HAPPENED = re.compile(r"\d|\b(?:in|out|put|took|had|got|gave|went|was|were|pulled|added|moved|cleaned|trimmed|removed|last|this)\b")
_MORE = re.compile(r"\b(?:(?:another|(?:a|one) more) (day|week|month)|(\w+) more (days|weeks|months))$")
_LATER_TODAY = frozenset({"later today", "later on today", "later on", "later today please", "remind me later today", "ask me later today"})
_IN_HOURS = re.compile(r"^(?:(?:remind me|ask me|ask|snooze(?: it)?|again) )*(?:again )?(?:in|for) (an|one|a|\d{1,2}) hours?(?: please)?$")
_LATER = frozenset({"later", "snooze", "not today", "remind me later", "later please", "put it off", "ask me later"})


DAY_NAMES: Final = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "tomorrow")
SHORTEST_SLIP: Final = 5  # not a figure: letters: a shorter word may be any


@dataclass(frozen=True, slots=True)
class Due:
    """The chore that a reminder was about: its name, its animal's tag and its key, where they are known."""

    chore: str
    who: str | None
    key: str | None
    text: str


def due_of(herd: Herd, reply_to: ReplyTo, today: date) -> Due:
    """The chore that was reminded of; its key as given, else that of the herd's own chore of that name and animal."""
    chore = chore_named(reply_to.chore) or "custom"
    found = herd.find(reply_to.who) if reply_to.who else None
    who = found.tag if found else reply_to.who
    meant = _chore(herd, chore, who, reply_to.key, today)
    words = meant.text if meant else reply_to.chore.replace("_", " ")
    return Due(chore, who, reply_to.key or (meant.key if meant else None), words)


def _chore(herd: Herd, chore: str, who: str | None, key: str | None, today: date) -> Chore | None:
    """The herd's chore of that key; without a key the earliest of that name and animal."""
    for each in all_chores(herd, today):
        if key is not None and each.key == key:
            return each
        if key is None and each.chore == chore and (who is None or (each.tag is not None and same_tag(each.tag, who))):
            return each
    return None


def chore_reply(herd: Herd, reply_to: ReplyTo, text: str, now: datetime, reads: Reads) -> Meaning:
    """What the answer to a reminder means; `now` is farm time."""
    today = now.date()
    due = due_of(herd, reply_to, today)
    said = plain(text)
    meaning = _later_today(herd, due, said, now) or _plain_answer(herd, due, said, text, today) or _told(herd, due, text, today, reads)
    return replace(meaning, subject=meaning.subject or due.who)


def _later_today(herd: Herd, due: Due, said: str, now: datetime) -> Meaning | None:
    """`later today`, `in 2 hours`: the same chore at another hour. Hours that somebody names may be quiet ones."""
    named = _IN_HOURS.match(said)
    if named is None and said not in _LATER_TODAY:
        return None
    hours = LATER_TODAY_HOURS.whole if named is None else int(named.group(1)) if named.group(1).isdigit() else 1
    again = now + timedelta(hours=hours)
    time = f"{again:%H:%M}"
    if named is None and (again.date() != now.date() or is_quiet(herd.settings, time)):
        time = quiet_hours(herd.settings)[0]  # the last moment before the night
        if not f"{now:%H:%M}" < time:
            return _when_again(due)
        again = now
    return Meaning((Reminder(text=due.text, on=again.date(), time=time, who=due.who, key=due.key),))


def _when_again(due: Due) -> Meaning:
    draft = Draft("remind", {"text": due.text, "who": due.who, "key": due.key}, "on")
    return Meaning((), Ask("when", "When should I remind you again?", ("tomorrow", "in 2 days", "in a week"), draft), settled=True)


def _plain_answer(herd: Herd, due: Due, said: str, text: str, today: date) -> Meaning | None:
    if _SKIP.match(said):
        return Meaning((Skipped(chore=due.chore, who=due.who, on=today),))
    if said in _LATER:
        return _when_again(due)
    told = _CHORE_SAYS.get((due.chore, said))
    if told is not None:
        return told(herd, due, today)
    later = _later_day(herd, due.chore, said, today)
    if later is None and (_NOT_YET.match(said) or _STILL_NOT.match(said)):
        return Meaning((Remark(text=text.strip(), who=due.who, on=today),))
    if later is not None and later > today and not said.startswith(("yesterday", "last")):
        return Meaning((Reminder(text=due.text, on=later, who=due.who, key=due.key),))
    return None


def _later_day(herd: Herd, chore: str, said: str, today: date) -> date | None:
    """The day to which the words put the chore off: "tomorrow", "check again friday", "leave it another week"."""
    said = _MORE.sub(lambda found: f"in 1 {found.group(1)}" if found.group(1) else f"in {found.group(2)} {found.group(3)}", said)
    rest = _PUT_OFF.sub("", said) or said
    rest = next((day for day in DAY_NAMES if closest_one(rest, day)), rest) if len(rest) >= SHORTEST_SLIP else rest
    alone = day_alone(rest, herd, today, "plan") or (day_within(f"in {rest}", herd, today, "plan") if rest.isalpha() else None)
    if alone is not None or re.search(r"\b(?:done|did)\b", said):
        return alone
    for found in re.finditer(r"\s+", said):
        day = day_alone(said[found.end() :], herd, today, "plan")
        if day is not None:
            before = said[: found.start()]
            undone = chore in _SET_UP and not _HAPPENED.search(before)
            return day if undone or _LEFT_FOR.search(before) else None
    return None


# --- done, and told in the words of its own event -----------------------------------------------------------------


def _told(herd: Herd, due: Due, text: str, today: date, reads: Reads) -> Meaning:
    """The event that the chore asked for; a full note of something else stands as it is."""
    done = _DONE.match(text.strip())
    rest = _in_a_row(text.strip()[done.end() :] if done else text.strip())
    on = today if done and not rest else day_alone(plain(rest), herd, today, "past")
    if on is not None and (on <= today if done else on < today):
        return _DONE_GIVES.get(due.chore, _just_done)(herd, due, on)
    own = reads(text)
    if not (due.chore in _COUNTED and COUNTS.match(plain(rest))) and any(fact.kind not in (*_ANYHOW, "query") for fact in own.facts):
        return meaning_of(own)
    told = _as_sentence(due, rest, reads, done=bool(done))
    if told is not None and told.ask is None:
        return meaning_of(told)
    if done and told is not None and re.search(r"\d", _SPENT.sub("", rest)):
        return meaning_of(told)  # never a number dropped
    if done:
        return replace(_DONE_GIVES.get(due.chore, _just_done)(herd, due, today), unread=rest)
    if any(fact.kind == "query" for fact in own.facts):
        return meaning_of(own)
    if told is not None and re.search(r"\d", rest):
        return meaning_of(told)
    if due.chore == "check_nest" and due.who and _DIED.search(rest):
        return _ask_dead(herd, due, today)
    return Meaning((Remark(text=text.strip(), who=due.who, on=today),) if text.strip() else ())


def _in_a_row(rest: str) -> str:
    """The lines of a form as one row: `Bucks: 2`, `Does: 3` below each other are `2 Bucks, 3 Does`."""
    return _LABELLED.sub(r"\2 \1", rest.replace("\n", ", ")) if "\n" in rest or ":" in rest else rest


#: When it was done, or how long it took: nothing that must be recorded.
_SPENT = re.compile(
    r"\b(?:at|around|by|about) \d{1,2}(?::\d\d)?(?: ?[ap]m)?\b(?! kits?)|\b\d+ (?:minutes?|mins?|hours?|hrs?)\b", re.IGNORECASE
)
_LABELLED = re.compile(r"\b(born|alive|live|dead|doa|kits|bucks?|does?|falls?)\s*[:=]\s*(\d+)(?![\d./#:-])", re.IGNORECASE)


def _as_sentence(due: Due, rest: str, reads: Reads, *, done: bool) -> Reading | None:
    """The first sentence about the chore's animal that the answer completes; else the first that raises a question."""
    asked = None
    rest = _as_told_of(due.chore, _NO.sub("", rest))
    for carrier in sorted(_SENTENCES[due.chore], key=lambda carrier: done and not carrier.startswith(_LEAVING)):
        if "lost" in carrier and not _DEAD.search(rest):
            continue
        if carrier.startswith(_LEAVING) and (_AGAINST.search(rest) or not _FIGURE.search(rest)):
            continue
        reading = reads(carrier.format(who=due.who or "", said=rest, kits=_COUNT.sub(r"\1 kits", rest)))
        if any(fact.kind in _NO_ANSWER or (due.chore in _OF_KITS and fact.kind == "died") for fact in reading.facts):
            continue
        if reading.ask is None and any(fact.kind not in (*_ANYHOW, "query") for fact in reading.facts):
            return reading
        asked = asked or (reading if reading.ask else None)
    return asked


def _as_told_of(chore: str, rest: str) -> str:
    """The answer in the words of its chore's own sentence: "it" is the box that was to be looked into, "5 left" are kits."""
    if chore == "kindling":
        return _LOST_OF_THEM.sub(r", \1 dead", rest)
    if chore == "check_nest":
        rest = re.sub(r"\b(in|on) it\b", r"\1 the box", rest)
        return re.sub(r"^all (?=\d)", "", re.sub(r",?\s*(?<!\w)(\d+) left$", r", \1 kits left", rest))
    return re.sub(r"^drop(?:ped|ping)? the price to \$?(?=\d)", "listed for $", rest) if chore == "sale_date" else rest


_LOST_OF_THEM = re.compile(r"[,.]?\s+(?:she )?lost (\w+)(?: of them)?$", re.IGNORECASE)
#: No reminder asks for these; words that give them are no answer but something said.
_NO_ANSWER = frozenset({"correct", "undo", "color"})
#: Chores about a doe's kits: "dead" tells of them, not of her.
_OF_KITS = frozenset({"kindling", "check_nest"})
_LEAVING = ("butchered", "sold", "list")
_NO = re.compile(r"^(?:no|nope|nah|actually|well|hm+)\b[\s,.!]*", re.IGNORECASE)
_AGAINST = re.compile(
    r"\b(?:not?|keep\w*|wait\w*|until|till?|give|chang\w+|hold\w*|yet|later|n't|didn'?t|won'?t|maybe|might|if)\b", re.IGNORECASE
)
_FIGURE = re.compile(r"\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|\w+ty|pounds?|dressed|dollars)\b", re.IGNORECASE)
_DEAD = re.compile(r"\b(?:dead|died|lost|froze\w*|cold|gone|missing|crushed|ate|eaten|runts?)\b", re.IGNORECASE)
_DIED = re.compile(r"(?<!\bno )(?<!\bnone )(?<!\bnot )\b(?:dead|died)\b(?! tired)", re.IGNORECASE)
_COUNT = re.compile(r"^\W*(\d+|[a-z]+)\b(?! kits?)", re.IGNORECASE)

#: Kinds that nearly any words give: not enough to pass over the reminder's own sentence.
_ANYHOW = frozenset({"remark", "done", "skipped"})

#: Chores answered with counts, where a leading number is no tag.
_COUNTED = frozenset({"kindling", "wean", "check_nest"})


#: The sentences that an answer to a chore may be the rest of, the likeliest first.
_SENTENCES: Mapping[str, tuple[str, ...]] = {
    "palpate": ("palpated {who} {said}", "{who} palpated {said}"),
    "nest_box_in": ("nest box in {who} {said}", "{who} {said}"),
    "kindling": ("{who} kindled {said}", "{who} {said}"),
    "check_nest": ("{who} lost {said}", "{who} has {said}", "{who} has {kits}", "{who} {said}"),
    "nest_box_out": ("nest box out {who} {said}", "{who} {said}"),
    "wean": ("weaned {who} {said}", "{who} {said}"),
    "weigh": ("{who} weighed {said}", "{who} litter weighed {said}", "{who} {said}"),
    "rebreed": ("bred {who} to {said}", "bred {who} {said}", "{who} {said}"),
    "sale_date": ("{who} {said}", "sold {who} {said}", "list {who} {said}"),
    "cull_date": ("{who} {said}", "butchered {who} {said}"),
    "review": ("{said} {who}", "{who} {said}"),
    "custom": ("{who} {said}",),
}


def _just_done(_herd: Herd, due: Due, on: date) -> Meaning:
    return Meaning((ChoreDone(chore=due.text if due.chore == "custom" else due.chore, who=due.who, key=due.key, on=on),))


def _ask_result(_herd: Herd, due: Due, on: date) -> Meaning:
    draft = Draft("palpated", {"doe": due.who, "on": on.isoformat()}, "result")
    return Meaning((), Ask("what", f"How did {due.who} feel: bred, open or unsure?", ("bred", "open", "unsure"), draft), settled=True)


def _box(change: str) -> Callable[[Herd, Due, date], Meaning]:
    return lambda _herd, due, on: completed(Draft("nest_box", {"doe": due.who, "change": change, "on": on.isoformat()}, ""), {}, on)


def _ask_kits(_herd: Herd, due: Due, on: date) -> Meaning:
    draft = Draft("kindled", {"doe": due.who, "on": on.isoformat()}, "born")
    text = f"How many did {due.who} have? Send the number, for example “8, 2 dead”."
    return Meaning((), Ask("how_many", text, (), draft), settled=True)


def _weaned(herd: Herd, due: Due, on: date) -> Meaning:
    """Weaned with the count on the book; where the book knows none, it is asked."""
    doe = herd.find(due.who) if due.who else None
    litter = litter_with_kits(herd, doe.key) or litter_meant(herd, doe.key) if doe else None
    kits = (untagged(herd, litter) or alive_now(litter)) if litter else 0
    known = {"doe": due.who, "on": on.isoformat()} | ({"count": kits} if kits else {})
    return completed(Draft("weaned", known, "count"), {}, on)


def _ask_buck(_herd: Herd, due: Due, on: date) -> Meaning:
    draft = Draft("bred", {"doe": due.who, "on": on.isoformat()}, "buck")
    return Meaning((), Ask("which_animal", f"Which buck was {due.who} bred to? Send his tag or name.", (), draft), settled=True)


def _left(kind: str) -> Callable[[Herd, Due, date], Meaning]:
    return lambda _herd, due, on: completed(Draft(kind, {"who": due.who, "on": on.isoformat()}, ""), {}, on)


def _felt(result: str) -> Callable[[Herd, Due, date], Meaning]:
    return lambda _herd, due, on: completed(Draft("palpated", {"doe": due.who, "on": on.isoformat(), "result": result}, ""), {}, on)


def _ask_dead(_herd: Herd, due: Due, on: date) -> Meaning:
    draft = Draft("kits_lost", {"doe": due.who, "on": on.isoformat()}, "count")
    return Meaning((), Ask("how_many", f"How many of {due.who}'s kits were dead? Send the number.", (), draft), settled=True)


#: Short answers that only the chore gives a meaning.
_CHORE_SAYS: Mapping[tuple[str, str], Callable[[Herd, Due, date], Meaning]] = {
    **{
        ("kindling", said): _ask_kits
        for said in ("kindled", "she kindled", "she did", "had them", "she had them", "she has", "kits are here")
    },
    **{
        ("palpate", said): _felt("bred")
        for said in (
            "yes she is",
            "she is",
            "yes, she is",
            "felt a couple",
            "felt a few",
            "felt some",
            "felt several",
            "felt them",
            "felt one",
        )
    },
    **{
        ("check_nest", said): _just_done
        for said in ("all good", "all fine", "all well", "fine", "looks good", "all ok", "all okay", "good")
    },
    **{
        ("palpate", said): _felt("open")
        for said in ("she isn't", "she is not", "no she isn't", "no, she isn't", "no she's not", "no, she's not")
    },
}

#: What a bare "done" records, by chore; a chore with no event of its own is `done`.
_DONE_GIVES: Mapping[str, Callable[[Herd, Due, date], Meaning]] = {
    "palpate": _ask_result,
    "nest_box_in": _box("in"),
    "nest_box_out": _box("out"),
    "kindling": _ask_kits,
    "wean": _weaned,
    "rebreed": _ask_buck,
    "sale_date": _left("sold"),
    "cull_date": _left("culled"),
}
