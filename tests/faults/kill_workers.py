"""Kill the server and its workers at random moments while people of several farms send notes, and count what became of them.

    python -m tests.faults.kill_workers --notes 2000 --kills 100 --workers 4

A book on PostgreSQL, a server of all farms and so many workers: each a process of its own, killed with SIGKILL, one at a time, and started again at
once. Every note must be in its own farm's journal once, with its one fact, in the order in which its chat sent it, and be answered in that order.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import subprocess
import sys
import tempfile
import threading
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from time import monotonic
from typing import IO, Any

from core.app import App, Member, open_book
from core.store.people import add_member
from tests.faults.kill_serve import OUNCES, TOKEN, overtaken
from tests.postgres import server as postgres
from tests.standin import StandIn

FARMS = ("Hill", "Dale", "Brook")
PEOPLE_A_FARM = 2

#: The longest between two kills, and the longest that everything may take to be answered in the end [s].
BETWEEN_S = 1.0
PATIENCE_S = 240


@dataclass
class Outcome:
    """What became of the notes."""

    sent: int = 0
    recorded: int = 0
    twice: int = 0
    elsewhere: int = 0
    facts: int = 0
    answered: int = 0
    answers: int = 0
    out_of_order: int = 0
    kills: int = 0
    killed: dict[str, int] = field(default_factory=dict)
    seconds: float = 0.0
    last_exits: list[int] = field(default_factory=list)
    token_seen: bool = False
    complaints: list[str] = field(default_factory=list)

    @property
    def sound(self) -> bool:
        """Whether nothing was lost, doubled, misplaced or left unanswered."""
        wrong = self.twice or self.elsewhere or self.out_of_order or any(self.last_exits) or self.token_seen or self.complaints
        return not wrong and all(count == self.sent for count in (self.recorded, self.facts, self.answered))

    def __str__(self) -> str:
        shown = {name: getattr(self, name) for name in self.__dataclass_fields__}
        return json.dumps(shown | {"sound": self.sound}, indent=1)


class Run:
    """One run: a stand-in, a book, a server and workers that come and go."""

    def __init__(self, url: str, folder: Path, workers: int, seed: int) -> None:
        self.url = url
        self.folder = folder
        self.log = folder / "log"
        self.dice = random.Random(seed)
        self.standin = StandIn(token=TOKEN)
        self.people = {f"{farm} {number}": farm for farm in FARMS for number in range(PEOPLE_A_FARM)}
        self.names = ["serve", *(f"work {number}" for number in range(workers))]
        self.running: dict[str, subprocess.Popen[str]] = {}
        self.said: dict[str, list[dict[str, Any]]] = {who: [] for who in self.people}
        self.over = threading.Event()

    def run(self, notes: int, kills: int) -> Outcome:
        """Send all notes while processes are killed; then let them finish."""
        outcome, begun = Outcome(kills=kills), monotonic()
        with self.standin, self.log.open("w+") as log:
            self._settle(notes)
            for name in self.names:
                self._start(name, log)
            talking = threading.Thread(target=self._talk, args=(notes, kills))
            talking.start()
            killed = Counter(self._kill_one(log) for _ in range(kills))
            self.over.set()
            talking.join()
            self._finish()
            outcome.last_exits = [self._end(name) for name in self.names]
            log.seek(0)
            outcome.token_seen = TOKEN in log.read()
        outcome.killed, outcome.seconds = dict(killed), round(monotonic() - begun, 1)
        self._count(outcome)
        return outcome

    def _settle(self, notes: int) -> None:
        """The farms, each with its people and enough does."""
        does = notes // OUNCES + 1
        for farm in FARMS:
            app = self._opened(farm)
            app.replay("\n".join(f"2026-03-01 {8 + doe // 60:02d}:{doe % 60:02d} new doe {100 + doe} new zealand" for doe in range(does)))
            with app._engine.begin() as connection:
                for who, where in self.people.items():
                    if where == farm:
                        account = f"telegram:{self.standin.person(who)['id']}"
                        add_member(connection, app._farm, Member(account, who, "owner"), self.standin.world.now)
            app.close()

    def _opened(self, farm: str) -> App:
        app = open_book(self.url, farm, create=True)
        assert isinstance(app, App), app
        return app

    def _start(self, name: str, log: IO[str]) -> None:
        outside = {"HAYNOTE_BOT_TOKEN": TOKEN, "HAYNOTE_BOT_API": self.standin.url, "HAYNOTE_DATA": str(self.folder)}
        command = [sys.executable, "-m", "bot", *(["serve", "--all-farms"] if name == "serve" else ["work"]), "--book", self.url]
        self.running[name] = subprocess.Popen(command, stdout=log, stderr=log, text=True, env=os.environ | outside)

    def _kill_one(self, log: IO[str]) -> str:
        """Kill one of them after a while, and start it again."""
        threading.Event().wait(self.dice.uniform(0, BETWEEN_S))
        name = self.dice.choice(self.names)
        self.running[name].kill()
        status = self.running[name].wait()
        if status != -9:
            raise RuntimeError(f"{name} had ended by itself with {status}: {self.log.read_text()[-2000:]}")
        self._start(name, log)
        return name.split()[0]

    def _talk(self, notes: int, kills: int) -> None:
        """All notes, spread over the kills; no two of a farm say the same."""
        breath = kills * BETWEEN_S / 2 / notes
        told: Counter[str] = Counter()
        for _ in range(notes):
            who = self.dice.choice(list(self.people))
            number = told[self.people[who]]
            told[self.people[who]] += 1
            self.standin.world.pass_time(self.dice.randint(1, 10))
            self.said[who].append(self.standin.say(who, f"{100 + number // OUNCES} weighed 9-{number % OUNCES}"))
            self.over.wait(self.dice.uniform(0, 2 * breath))

    def _finish(self) -> None:
        """Let everything be answered."""
        ends = monotonic() + PATIENCE_S
        while monotonic() < ends and any(note["message_id"] not in self._answers(who) for who in self.people for note in self.said[who]):
            threading.Event().wait(0.2)
        self.standin.wait_confirmed(timeout=60)

    def _end(self, name: str) -> int:
        self.running[name].terminate()
        return self.running[name].wait(20)

    def _answers(self, who: str) -> list[int]:
        """The notes of a person that were answered, in the order of the answers."""
        replies = (answer.get("reply_to_message", {}).get("message_id") for answer in self.standin.answers(who))
        return [number for number in replies if number is not None]

    def _count(self, out: Outcome) -> None:
        """Compare what was said with the journals and with the answers."""
        kept: dict[str, list[dict[str, Any]]] = {}
        for farm in FARMS:
            app = self._opened(farm)
            kept[farm] = [note for line in app.export_journal() if " weighed " in (note := json.loads(line)).get("text", "")]
            out.complaints += [problem.text for problem in app.check()]
            app.close()
        out.facts = sum(len(note["facts"]) for notes in kept.values() for note in notes)
        for who, farm in self.people.items():
            chat = str(self.standin.person(who)["id"])
            mine = Counter(note["text"] for note in kept[farm] if note["chat"] == chat)
            said, answered = self.said[who], self._answers(who)
            out.sent += len(said)
            out.recorded += sum(mine[note["text"]] >= 1 for note in said)
            out.twice += sum(mine[note["text"]] > 1 for note in said)
            out.elsewhere += sum(note["chat"] == chat for other in FARMS if other != farm for note in kept[other])
            out.answers += len(answered)
            out.answered += len({note["message_id"] for note in said} & set(answered))
            out.out_of_order += overtaken([n["text"] for n in said], [note["text"] for note in kept[farm] if note["chat"] == chat])
            out.out_of_order += overtaken([note["message_id"] for note in said], answered)


def run(notes: int, kills: int, workers: int, seed: int = 1) -> Outcome:
    """The outcome of a run on a database server of its own."""
    with tempfile.TemporaryDirectory() as folder, postgres() as server:
        return Run(server.render_as_string(hide_password=False), Path(folder), workers, seed).run(notes, kills)


def main() -> None:
    """The command: the outcome on standard output, exit status 1 where anything is wrong."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    for name, default in (("notes", 2000), ("kills", 100), ("workers", 4), ("seed", 1)):
        asked.add_argument(f"--{name}", type=int, default=default)
    given = asked.parse_args()
    outcome = run(given.notes, given.kills, given.workers, given.seed)
    sys.stdout.write(f"{outcome}\n")
    sys.exit(0 if outcome.sound else 1)


if __name__ == "__main__":
    main()
