"""Something to be reminded of."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import ClassVar, Final

from core import words
from core.herd.calendar import key_of, reminder_chores
from core.herd.questions import same_tag
from core.herd.state import Herd, Reminding
from core.notes.checking import already_past, animal_problem, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.leftovers import ASKED
from core.notes.clauses.scene import Found, Need, first_need, unknown_animal
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.slots.dates import Days
from core.notes.slots.items import Item
from core.notes.slots.measures import clock_time
from core.notes.telling import own_words, whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Reminder:
    """Something to be reminded of."""

    kind: ClassVar[str] = "remind"

    text: str
    on: date
    time: str | None = None
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("remind me on the 3rd to trim nails", ({"text": "trim nails", "on": "2026-12-03"},)),
    Example("remind me to weigh 31 and 32 on the 5th", ({"text": "weigh 31 and 32", "on": "2026-12-05", "who": "32"},)),
    Example("remind me at 6 to feed", ({"text": "feed", "on": "2026-11-25", "time": "18:00"},)),
    Example("remind me at 6 am to feed", ({"text": "feed", "on": "2026-11-26", "time": "06:00"},)),
    Example("remind me at 9 to feed", ({"text": "feed", "on": "2026-11-25", "time": "09:00"},)),
    Example("remind me tonight at 12 to check 9", ({"text": "check 9", "on": "2026-11-26", "time": "00:00", "who": "9"},)),
    Example("vet friday for 9", ({"text": "vet for 9", "on": "2026-11-27", "who": "9"},)),
    Example("weighing 33 on friday", ({"text": "weighing 33", "on": "2026-11-27", "who": "33"},)),
    Example("remind me friday to worm 22", ({"text": "worm 22", "on": "2026-11-27", "who": "22"},)),
    Example("remind me at 6:15 tonight to check 9", ({"text": "check 9", "on": "2026-11-25", "time": "18:15", "who": "9"},)),
    Example("remind me dec 1 at 7:30 to check 9", ({"text": "check 9", "on": "2026-12-01", "time": "07:30", "who": "9"},)),
    Example("don't let me forget to order hay on monday", ({"text": "order hay", "on": "2026-11-30"},)),
    Example("reminder: 3 dec, tattoo 16's kits", ({"text": "tattoo 16's kits", "on": "2026-12-03", "who": "16"},)),
    Example("Remind me to order feed on Monday", ({"text": "order feed", "on": "2026-11-30"},)),
    Example("rem 12/1 order feed", ({"text": "order feed", "on": "2026-12-01"},)),
    Example(
        "Reminder: 27 Nov 07:30, trim nails, doe 9.",
        ({"text": "trim nails, doe 9 .", "on": "2026-11-27", "time": "07:30", "who": "9"},),
    ),
    Example("remnid me tmrw to weigh 31", ({"text": "weigh 31", "on": "2026-11-26", "who": "31"},)),
)
NOT_THIS: tuple[str, ...] = (
    "done trimming nails 9",
    "Sorrel reminds me of her mother",
    "cull 12 on dec 3",
)

OPENS: Final = ("remind",)
CUES: Final = {
    "remind": "nudge me | ping me | remind me at | remind me | remind | reminder | rem | dont let me forget | dont forget | remember to | i need to remember | reminders | remind us | set a reminder | remind me again | need a reminder | give me a reminder",
    "appointment": "vet | vet visit | vet appointment | the vet | the vet is coming | vet comes | appointment",
    "remind_filler": "to | that | about | me | please | can you | could you | would you | on | for | at",
}  # fmt: skip


def is_appointment(c: Clause) -> bool:
    """`vet friday for 9`: somebody is to come on a day, and nothing else is said."""
    opening = c.opening()
    if opening is None or "appointment" not in c.items[opening].marks or not c.dates():
        return False
    told = [item for i, item in enumerate(c.items) if i != opening and item.sort not in {"mark", "break", "date", "time"}]
    ahead = c.resolved(c.items[c.dates()[0]].value, "plan").on
    return (
        ahead is not None
        and ahead >= c.today
        and c.items[c.dates()[0]].value.modifier != "last"
        and all(
            item.sort in {"animal", "num", "code"} or item.said in {"for", "at", "with", "on", "and", "the", "visit", "here"}
            for item in told
        )
    )


#: Work that is told beforehand in the ing form: `weaning 16 on saturday`.
WORK: Final = frozenset({"weaning", "weighing", "palpating", "palping", "tattooing", "tagging", "moving", "worming", "deworming"})


def is_intended(c: Clause) -> bool:
    """`weaning 16 on saturday`: work in the ing form, its animal and a day to come, and nothing of how it went."""
    opening = c.opening()
    if opening is None or c.said(opening) not in WORK or not c.to_come(opening):
        return False
    return all(
        item.sort in {"date", "mark", "num", "animal", "code"} or item.said in {"on", "and", "this"} for item in c.items[opening + 1 :]
    )


def is_told_to(c: Clause) -> bool:
    """`tell me friday to order hay`, `tell me in 10 days to check 9`: a day right behind the asking, and what to do."""
    opening = c.opening()
    if opening is None or c.said(opening) != "tell me":
        return False
    following = c.items[opening + 1 : opening + 3]
    return len(following) == 2 and following[0].sort == "date" and following[1].said == "to"


def read(c: Clause) -> None:
    """What to be reminded of, the day and the time, and the animal in it."""
    asked = c.first("remind") if not is_told_to(c) else c.opening()
    cue = asked or 0
    dates = c.dates()
    said = c.items[dates[0]].value if dates else None
    days = c.resolved(said, "plan") if said else Days(None)
    time_items = c.sorted_as("time", "clock")
    time, spent = _time(c, time_items)
    if time is not None and said is not None and any(item.said in AFTER_NOON for item in c.items):
        time = _after_noon(time)
        if time.startswith("12:") and any(item.said in AT_NIGHT for item in c.items) and days.on is not None:
            time, days = f"00{time[2:]}", Days(days.on + timedelta(1))  # "tonight at 12" is midnight
    spans = c.sorted_as("span") if said is None else []
    on = days.on
    need = None
    if said is None and time is not None:
        on, time = _next(c, time, spent)
    if on is None or on < c.today:
        need = Need("when", "on", "When should I remind you? For example: friday, or dec 3.", ("tomorrow", "in a week"))
    skip = {id(item) for item in spent} | {id(c.items[i]) for i in [*dates[:1], *spans, *([asked] if asked is not None else [])]}
    for i in dates[:1]:
        if c.said(i - 1) == "the":
            skip |= {id(c.items[i - 1]), *([id(c.items[i - 2])] if i > 1 and c.said(i - 2) == "on" else [])}
    text = _text(c, cue, skip)
    places = [i for i in c.explicit() if c.known(i)] or [
        i for i in c.sorted_as("num") if c.known(i) and not c.counted(i) and c.items[i] not in spent
    ]
    values: dict[str, object] = {"text": text, "on": on, "time": time}
    if places:
        values["who"] = (c.mention(places[-1]) or Mention((), "")).tag
    elif c.has("appointment") and (unknown := _patient(c)) is not None:
        need = first_need(need, unknown_animal(unknown, "who", c.scene.words))
    if not text:
        need = first_need(need, Need("what", "text", "What should I remind you of?"))
    lost = [item for item in c.items[:cue] if item.sort in ASKED and id(item) not in skip and item.said not in text]
    if lost:
        need = first_need(need, Need("what", "", f"I can't place \u201c{lost[0].said}\u201d in that. Please send it again in other words."))
    c.take(Found(Reminder, values, list(c.items), need))


def _patient(c: Clause) -> Mention | None:
    """The animal behind `for`, where it is not on the book."""
    for i in range(1, len(c.items)):
        if c.said(i - 1) == "for" and c.items[i].sort in {"num", "code", "animal"}:
            return c.mention(i)
    return None


AFTER_NOON: Final = frozenset({"tonight", "this evening", "this afternoon", "tomorrow night", "tomorrow evening", "tomorrow afternoon"})


AT_NIGHT: Final = frozenset({"tonight", "tomorrow night"})


def _next(c: Clause, time: str, spent: list[Item]) -> tuple[date, str]:
    """The next time of that name that comes: `at 6`, said at seven in the morning, is six in the evening; `at 6 am` tomorrow's."""
    if time > c.scene.clock:
        return c.today, time
    bare = not any(item.said.startswith("0") or (item.sort == "time" and any(map(str.isalpha, item.said))) for item in spent)
    later = _after_noon(time)
    return (c.today, later) if bare and later > c.scene.clock else (c.today + timedelta(1), time)


def _after_noon(time: str) -> str:
    """`5:30 tonight` is 17:30; an hour past noon stays as it is."""
    hours = int(time[:2])
    return f"{hours + 12:02d}{time[2:]}" if 0 < hours < 12 else time  # not a figure: hours of the clock


def _time(c: Clause, places: list[int]) -> tuple[str | None, list[Item]]:
    for i in places:
        item = c.items[i]
        time = item.value if item.sort == "time" else clock_time(item.value)
        if time:
            before = [c.items[i - 1]] if c.said(i - 1) == "at" else []
            return str(time), [item, *before]
    at = next((i for i, item in enumerate(c.items) if item.said in {"at", "remind me at"} and c.whole(i + 1) is not None), None)
    if at is None:
        return None, []
    hours, minutes = c.whole(at + 1) or 0, c.whole(at + 2)
    if minutes is not None and 0 <= minutes < 60 and hours < 24:  # not a figure: hours and minutes
        return f"{hours:02d}:{minutes:02d}", [c.items[at], c.items[at + 1], c.items[at + 2]]
    return (f"{hours:02d}:00", [c.items[at], c.items[at + 1]]) if hours < 24 else (None, [])  # not a figure: hours and minutes


def _text(c: Clause, cue: int, skip: set[int]) -> str:
    """The words that are neither the asking nor the day."""
    words = [item for item in c.items[cue:] if id(item) not in skip]
    while words and (words[0].marks & {"remind_filler"} or words[0].said in {",", ":", "-", "to"}):
        words.pop(0)
    while words and words[-1].said in {",", "on", "at", "by", ":", "please", "-"}:
        words.pop()
    before = [item for item in c.items[:cue] if id(item) not in skip and item.sort != "mark"]
    chosen = words or before
    return " ".join(map(_spelled, chosen)).replace(" ' s", "'s").replace(" ,", ",")


def _spelled(item: Item) -> str:
    """The words of an item; a tag that was taken apart as the book spells it: `R21's`."""
    mention = item.value if item.sort == "animal" else None
    if not isinstance(mention, Mention) or mention.tag is None or not same_tag(mention.said, mention.tag):
        return item.said
    return mention.tag + item.said.removeprefix(mention.said)


def check(fact: Reminder, herd: Herd, today: date) -> Problem | None:
    """A day to come; an animal on the book, where one is named."""
    return worst(already_past(fact.on, today), None if fact.who is None or herd.find(fact.who) else animal_problem(herd, fact.who, today))


def apply(fact: Reminder, herd: Herd) -> Herd:
    """One more reminder; with a key it puts that chore off."""
    animal = herd.find(fact.who) if fact.who is not None else None
    who = animal.key if animal else None
    key = fact.key or key_of("custom", who or "", fact.on, "-".join(fact.text.lower().split()))
    reminding = Reminding(fact.text, fact.on, key, time=fact.time, who=who, told_on=herd.day)
    open_again = {other: day for other, day in herd.closed.items() if other != key}
    return replace(herd, reminders=(*herd.reminders, reminding), closed=open_again)


def reply(fact: Reminder, _before: Herd, after: Herd) -> tuple[str, ...]:
    """When what comes up."""
    time = f" at {fact.time}" if fact.time else ""
    who = f" ({whom(after, fact.who)})" if fact.who is not None and fact.who not in fact.text else ""
    moved = "Put off: " if fact.key and not fact.key.startswith("custom:") else "I will remind you: "
    return (words.sentence(f"{moved}{fact.text}{who}, {words.full_day(fact.on)}{time}"),)


WRITTEN = (r"remind on {on:DAY}(?: at (?P<time>\d{2}:\d{2}))?(?: for {who:TAG})?(?: key {key:KEY})?: {text:WORDS}",)


def show(fact: Reminder, _herd: Herd) -> str:
    """`remind on 2026-11-27 at 07:00 for 9 key kindling:9:2026-10-28: trim nails`."""
    time = f" at {fact.time}" if fact.time else ""
    who = f" for {fact.who}" if fact.who is not None else ""
    key = f" key {fact.key}" if fact.key else ""
    return f"remind on {fact.on.isoformat()}{time}{who}{key}: {own_words(fact.text)}"


KIND = Kind(
    fact=Reminder,
    examples=EXAMPLES,
    not_this=NOT_THIS,
    check=check,
    apply=apply,
    chores=reminder_chores,
    reply=reply,
    show=show,
    written=WRITTEN,
)
