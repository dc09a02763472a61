"""A family's week in a group chat: notes, edits, undos and reminders, while the service fails twice and the server is killed three times.

    python -m tests.faults.week --seed 1

What the book must hold is written down by the script as it talks, not asked of the bot. Time is the stand-in's and passes fifty times as fast while somebody waits; the server's
own waiting is shortened alike, so that "within a minute" means a minute of that clock.

Over 300 lines: the script of a week, its clock and its book in one place, to be read from Monday to Sunday.
"""

from __future__ import annotations

import argparse
import json
import random
import re
import sys
import tempfile
from collections import Counter as Tally
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import asdict, dataclass, field
from datetime import UTC, datetime, timedelta
from multiprocessing import get_context
from pathlib import Path
from threading import Event
from time import monotonic
from typing import Any, TypeVar
from zoneinfo import ZoneInfo

from core.notes.journal import Note
from tests.faults.farm import opened
from tests.faults.week_serve import FASTER, live
from tests.standin import StandIn
from tests.standin.people import Message

Found = TypeVar("Found")

FAMILY = ("Ann", "Ben", "Cat")
GROUP = "Barn"
FARM = ZoneInfo("America/New_York")
NOTES, EDITS, UNDOS, ANSWERS = 200, 40, 30, 60

#: The week has the night in it in which the clocks go forward.
MONDAY = datetime(2026, 3, 4, tzinfo=FARM)
DAYS = 7
A_DAY = 9  # does to be felt for kits
WEIGHED = range(300, 330)

#: What a person says of a doe that was felt for kits.
FELT = {"bred": "pregnant", "open": "open"}

#: One turn of waiting [s], and how much of the stand-in's time passes in it [s].
TURN_S = 0.04
PASSES_S = TURN_S * FASTER
GRAMS_AN_OUNCE = 28.349523125
REMINDER = re.compile(r"^Palpate doe (\d+) ", re.MULTILINE)


@dataclass
class Outcome:
    """What was done, and what came of it."""

    notes: int = 0
    edits: int = 0
    undos: int = 0
    reminders_answered: int = 0
    outages: int = 0
    kills: int = 0
    facts_expected: int = 0
    facts_lacking: list[str] = field(default_factory=list)
    facts_too_many: list[str] = field(default_factory=list)
    reminders_expected: int = 0
    reminders_missing: list[str] = field(default_factory=list)
    reminders_twice: list[str] = field(default_factory=list)
    sends_cut: int = 0
    twice_without_a_cut: list[str] = field(default_factory=list)
    late_s: list[float] = field(default_factory=list)  # the last reminder of each morning, after its hour or after the outage
    complaints: list[str] = field(default_factory=list)
    seconds: float = 0.0

    @property
    def whole(self) -> bool:
        """Whether the book is what the script says, and each reminder came once: whatever the machine's speed."""
        asked = (self.notes, self.edits, self.undos, self.reminders_answered, self.outages, self.kills)
        wrong = (self.facts_lacking, self.facts_too_many, self.reminders_missing, self.twice_without_a_cut, self.complaints)
        return asked == (NOTES, EDITS, UNDOS, ANSWERS, 2, 3) and not any(wrong)

    @property
    def sound(self) -> bool:
        """The same, and in time: each morning's reminders within the minute."""
        return self.whole and len(self.late_s) == DAYS and max(self.late_s) <= 60

    def __str__(self) -> str:
        return json.dumps(asdict(self) | {"sound": self.sound}, indent=1)


@dataclass
class Said:
    """A note in the chat, and the fact that it must be."""

    message: Message
    fact: tuple[Any, ...]


class Week:
    """One run."""

    def __init__(self, folder: Path, seed: int) -> None:
        self.book, self.clock = folder / "book.sqlite", folder / "clock"
        self.dice = random.Random(seed)
        self.standin = StandIn(reads_all=True, now=MONDAY.astimezone(UTC) - timedelta(hours=5))
        self.out = Outcome()
        self.facts: Tally[tuple[Any, ...]] = Tally()
        self.cut: set[str] = set()
        self.server: Any = None
        self.group = 0

    def run(self) -> Outcome:
        """The week, then the count."""
        begun = monotonic()
        self._set(self.standin.world.now)
        code = self._found()
        with self.standin:
            self._start()
            try:
                self._gather(code)
                for day in range(DAYS):
                    self._day(day)
                self._settled()
                self.server.terminate()
                self.server.join(15)
            finally:
                self.server.kill()
        self._count()
        self.out.seconds = round(monotonic() - begun, 1)
        return self.out

    # the farm and its server

    def _found(self) -> str:
        """Does that were bred twelve days before each day of the week, and others to be weighed; the code that lets the owner in."""
        lines = ["2026-02-01 08:00 new buck B1 new zealand"]
        does = [*WEIGHED, *(doe for day in range(DAYS) for doe in due(day))]
        lines += [f"2026-02-01 {9 + n // 60:02d}:{n % 60:02d} new doe {doe} new zealand" for n, doe in enumerate(does)]
        lines += [f"{bred(day):%Y-%m-%d} 10:{n:02d} bred {doe} to B1" for day in range(DAYS) for n, doe in enumerate(due(day))]
        app = opened(f"sqlite:///{self.book}")
        app.replay("\n".join(lines))
        code = app.setup_code(self.standin.world.now, anew=True)
        app.close()
        assert code is not None
        return code

    def _start(self) -> None:
        forks = get_context("forkserver")
        forks.set_forkserver_preload(["tests.faults.week_serve"])
        self.server = forks.Process(target=live, args=(f"sqlite:///{self.book}", self.standin.token, self.standin.url, str(self.clock)))
        self.server.start()

    def _kill(self) -> None:
        self.server.kill()
        self.server.join()
        self.out.kills += 1
        self._start()

    def _gather(self, code: str) -> None:
        """The owner, her helpers, and the group."""
        self._answer_to(self.standin.say("Ann", code))
        for name in FAMILY[1:]:
            told = self._answer_to(self.standin.say("Ann", "invite helper"))["text"]
            self._answer_to(self.standin.say(name, f"/start {told.split('start=')[-1].split()[0]}"))
        self.group = self.standin.group(GROUP, *FAMILY)["id"]
        self._answer_to(self.standin.say("Ann", f"/start@{self.standin.world.me['username']}", chat=GROUP))

    # time

    def _set(self, now: datetime) -> None:
        self.standin.set_now(now.astimezone(UTC))
        fresh = self.clock.with_suffix(".new")
        fresh.write_text(self.standin.world.now.isoformat(), encoding="utf-8")
        fresh.replace(self.clock)

    def _pass(self, seconds: float) -> None:
        Event().wait(TURN_S)
        self._set(self.standin.world.now + timedelta(seconds=seconds))

    def _wait(self, found: Callable[[], Found | None], what: str) -> Found:
        """What is found, while time passes; TimeoutError after a quarter of an hour of it."""
        ends = self.standin.world.now + timedelta(minutes=15)
        while (value := found()) is None:
            if self.standin.world.now > ends:
                raise TimeoutError(f"{what}; the last calls were {[(c.method, c.status) for c in self.standin.calls()[-6:]]}")
            self._pass(PASSES_S)
        return value

    def _reply(self, to: Message) -> Message:
        """The bot's reply to that very message."""
        return self._wait(lambda: next(iter(self._replies(to)), None), f"no reply to {to['text']!r}")

    def _answer_to(self, message: Message) -> Message:
        """What the bot says next in that chat."""
        return self._wait(lambda: next(iter(self.standin.answers(message)), None), f"no answer to {message['text']!r}")

    def _replies(self, to: Message) -> list[Message]:
        answers = self.standin.answers(to)
        return [each for each in answers if each.get("reply_to_message", {}).get("message_id") == to["message_id"]]

    def _settled(self) -> None:
        """All that was said is taken in and answered."""
        self._wait(lambda: self.standin.pending() == 0 or None, "updates are left over")
        self._pass(60)

    # a day

    def _day(self, day: int) -> None:
        """The morning's reminders, then the notes of the day, some of which are put right or taken back."""
        hour = (MONDAY + timedelta(days=day)).replace(hour=7)
        self._set(hour - timedelta(seconds=10))
        if day in (1, 4):
            self._morning_without_service(hour, "refuse" if day == 1 else "drop", killed=day == 1)
        elif day == 2:
            self._morning_with_a_death(hour)
        else:
            self._morning(hour, due(day))
        self._answer(day)
        said = self._notes(day, killed=day == 5)
        self.dice.shuffle(said)
        edits, undos = share(EDITS, day), share(UNDOS, day)
        weights = [each for each in said if each.fact[0] == "Weighed"]
        for each in weights[:edits]:
            self._edit(each)
        for each in [each for each in said if each not in weights[:edits]][:undos]:
            self._undo(each)
        self._settled()

    def _morning(self, since: datetime, does: range) -> None:
        """Wait until every chat has the day's reminders, and note how late the last one was."""
        wanted = {str(doe) for doe in does}
        self._wait(lambda: all(wanted <= set(self._reminded(chat)) for chat in self._chats()) or None, f"reminders of {does} lacking")
        self.out.late_s.append(round((self.standin.world.now - since).total_seconds(), 1))

    @contextmanager
    def _outage(self, kind: str) -> Iterator[None]:
        self.out.outages += 1
        for method in ("*", "getUpdates"):
            self.standin.fail(method, kind, times=1_000_000)
        yield
        with self.standin.world.turn:
            self.standin._faults.clear()

    def _morning_without_service(self, hour: datetime, kind: str, *, killed: bool) -> None:
        """The service is away from before the reminders' hour until after noon, and people write all the same."""
        day = (hour.date() - MONDAY.date()).days
        with self._outage(kind):
            for turn in range(60):
                self._pass(300)
                if turn in (10, 30):
                    self._say("Ben", f"rain again on morning {day} at turn {turn}")
                if killed and turn == 20:
                    self._kill()
            for _ in range(40):
                self._pass(PASSES_S)
        self._morning(self.standin.world.now, due(day))

    def _morning_with_a_death(self, hour: datetime) -> None:
        """The server is killed between a reminder's delivery and its being told so."""
        self.standin.fail("sendMessage", "hang", after=True)
        since = len(self.standin.calls())
        self._wait(lambda: self.standin.calls("sendMessage", since=since) or None, "nothing is sent")
        self._pass(PASSES_S)
        hanging = [call for call in self.standin.calls("sendMessage", since=since) if call.status is None]
        self.cut |= {str(call.params["chat_id"]) for call in hanging}
        self.out.sends_cut += len(hanging)
        self._kill()
        self.standin.release()
        self._morning(hour, due(2))

    def _answer(self, day: int) -> None:
        """The reminders of the day: one by its button, the rest by replies."""
        does = [str(doe) for doe in due(day)][: share(ANSWERS, day)]
        letter = next(m for m in self._letters(self.group) if does[0] in REMINDER.findall(m["text"]))
        for number, doe in enumerate(does):
            result = self.dice.choice(("bred", "open"))
            if number == 0:
                who = self.dice.choice(FAMILY)  # a reminder is for all, the question after it for whoever pressed
                asked = self._press(who, letter, f"doe {doe} ", f"How did {doe} feel")
                self._press(who, asked, result, f"Doe {doe} palpated {result}")
            else:
                self._reply(self.standin.say(self.dice.choice(FAMILY), f"{doe} is {FELT[result]}", chat=GROUP, reply_to=letter))
            self.facts["Palpated", doe, result] += 1
            self.out.reminders_answered += 1

    def _press(self, who: str, under: Message, label: str, told: str) -> Message:
        """Press the button that has those words; what the bot then tells."""
        rows = under["reply_markup"]["inline_keyboard"]
        button = next(b["callback_data"] for row in rows for b in row if label in f"{b['text']} ")
        self.standin.press(who, under, button)
        return self._wait(lambda: next((m for m in self.standin.answers(under) if m["text"].startswith(told)), None), f"not told: {told}")

    def _notes(self, day: int, *, killed: bool) -> list[Said]:
        """The day's notes, in bursts; on one day the server dies in the midst of them."""
        texts = [self._text(day, number) for number in range(share(NOTES - 4, day))]
        self.dice.shuffle(texts)
        said = []
        for number, (text, fact) in enumerate(texts):
            said.append(self._say(self.dice.choice(FAMILY), text, fact))
            if killed and number == len(texts) // 2:
                self._kill()
            if self.dice.random() < 0.3:
                self._pass(self.dice.randint(1, 600))
        for each in said:
            self._reply(each.message)
        return said

    def _text(self, day: int, number: int) -> tuple[str, tuple[Any, ...]]:
        """The note of that number on that day, and its fact. No two say the same."""
        if number < 16:
            ounces = self.dice.randint(1, 15)
            doe = WEIGHED[(day + number) % len(WEIGHED)]
            return f"{doe} weighed 9-{ounces}", ("Weighed", str(doe), grams(ounces))
        if number < 22:
            doe, cage = WEIGHED[(day + number) % len(WEIGHED)], f"C{day}{number}"
            return f"{doe} moved to {cage}", ("Moved", str(doe), cage)
        if number < 25:
            tag = f"N{day + 1}{number}"
            return f"bought doe {tag} mini rex", ("AnimalNoted", tag)
        text = f"the north gate creaked on day {day}, time {number}"
        return text, ("Remark", text)

    def _say(self, who: str, text: str, fact: tuple[Any, ...] = ()) -> Said:
        fact = fact or ("Remark", text)
        self.facts[fact] += 1
        self.out.notes += 1
        return Said(self.standin.say(who, text, chat=GROUP), fact)

    def _edit(self, said: Said) -> None:
        """Another weight; the answer tells it."""
        doe, before = said.fact[1], len(self._replies(said.message))
        ounces = self.dice.choice([n for n in range(1, 16) if grams(n) != said.fact[2]])
        self.standin.edit(said.message, f"{doe} weighed 9-{ounces}")
        self._wait(lambda: len(self._replies(said.message)) > before or None, "an edit is not answered")
        self.facts[said.fact] -= 1
        self.facts["Weighed", doe, grams(ounces)] += 1
        self.out.edits += 1

    def _undo(self, said: Said) -> None:
        """By the button under the answer, or by a reply to it."""
        answer = self._reply(said.message)
        if self.dice.random() < 0.5:
            last = self.standin.answers(answer, after=0)[-1:] or [answer]
            self.standin.press(said.message["from"]["first_name"], answer, "Undo")
            told = self._wait(lambda: next(iter(self.standin.answers(last[0])), None), "an undo is not answered")
        else:
            told = self._reply(self.standin.say(self.dice.choice(FAMILY), "undo", chat=GROUP, reply_to=answer))
        if not told["text"].startswith("Taken back"):
            self.out.complaints.append(f"{said.message['text']} is not taken back: {told['text']}")
        self.facts[said.fact] -= 1
        self.out.undos += 1

    # the count

    def _chats(self) -> list[int]:
        return [self.group, *(self.standin.person(name)["id"] for name in FAMILY)]

    def _letters(self, chat: int) -> list[Message]:
        """The reminders in a chat: what the bot said by itself, the digest apart."""
        said = self.standin.answers({"chat": {"id": chat}, "message_id": 0})
        return [m for m in said if REMINDER.match(m["text"]) and "reply_to_message" not in m]

    def _reminded(self, chat: int) -> list[str]:
        return [doe for letter in self._letters(chat) for doe in REMINDER.findall(letter["text"])]

    def _count(self) -> None:
        """Compare the book with the script's own list, and the chats with what was due."""
        out, expected = self.out, +self.facts
        app = opened(f"sqlite:///{self.book}")
        there = standing([note for note in app._hearing.book().notes if note.chat == str(self.group)])
        out.complaints += [problem.text for problem in app.check()]
        app.close()
        out.facts_expected = expected.total()
        out.facts_lacking, out.facts_too_many = shown(expected - there), shown(there - expected)
        for chat in self._chats():
            came = Tally(self._reminded(chat))
            wanted = [str(doe) for day in range(DAYS) for doe in due(day)]
            out.reminders_expected += len(wanted)
            out.reminders_missing += [f"{chat}: {doe}" for doe in wanted if not came[doe]]
            twice = [f"{chat}: {doe}" for doe in came if came[doe] > 1]
            out.reminders_twice += twice
            out.twice_without_a_cut += [each for each in twice if str(chat) not in self.cut or int(each.split()[1]) not in due(2)]
            out.twice_without_a_cut += [f"{chat}: {doe} {came[doe]} times" for doe in came if came[doe] > 2]


def due(day: int) -> range:
    """The does to be felt for kits on that day."""
    return range(100 + day * 20, 100 + day * 20 + A_DAY)


def bred(day: int) -> datetime:
    """The day on which they were bred: palpation is due on the twelfth day after it."""
    return MONDAY + timedelta(days=day - 12)


def share(total: int, day: int) -> int:
    """That day's part of a total."""
    return total * (day + 1) // DAYS - total * day // DAYS


def grams(ounces: int) -> int:
    """Nine pounds and so many ounces [g]."""
    return round((9 * 16 + ounces) * GRAMS_AN_OUNCE)


def standing(notes: list[Note]) -> Tally[tuple[Any, ...]]:
    """The facts that stand: those of notes that no later one reverses."""
    reversed_ = {target.note for note in notes for target in note.reverses}
    facts = [fact for note in notes if note.id not in reversed_ for fact in note.facts]
    return Tally(told for fact in facts if (told := as_told(fact)) is not None)


def as_told(fact: Any) -> tuple[Any, ...] | None:
    """A fact as the script lists it; None for what is a wish, not a fact."""
    fields = {
        "Weighed": ("who", "grams"),
        "Moved": ("who", "cage"),
        "AnimalNoted": ("tag",),
        "Remark": ("text",),
        "Palpated": ("doe", "result"),
    }
    kind = type(fact).__name__
    if kind in ("Undo", "Query"):
        return None
    return (kind, *(getattr(fact, name) for name in fields.get(kind, ())))


def shown(facts: Tally[tuple[Any, ...]]) -> list[str]:
    """Each with its number."""
    return [f"{count} x {fact}" for fact, count in facts.items()]


def run(seed: int = 1) -> Outcome:
    """The outcome of a week in a folder of its own."""
    with tempfile.TemporaryDirectory() as folder:
        return Week(Path(folder), seed).run()


def main() -> None:
    """The command: the outcome on standard output, exit status 1 where anything is wrong."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--seed", type=int, default=1)
    outcome = run(asked.parse_args().seed)
    sys.stdout.write(f"{outcome}\n")
    sys.exit(0 if outcome.sound else 1)


if __name__ == "__main__":
    main()
