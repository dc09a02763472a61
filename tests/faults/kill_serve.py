"""Kill the server at random moments while people send notes, and count what became of them.

    python -m tests.faults.kill_serve --notes 1000 --kills 50

Every note must be in the journal once, with its one fact, in the order in which it was sent, and be answered. The server is a process of its own, killed with SIGKILL: it gets no
chance to tidy up. Most kills fall while it works off notes, some while it starts.
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
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from time import monotonic
from typing import IO, Any

from core.app import App, open_book
from tests.standin import StandIn

TOKEN = "7000001:a-token-for_the_kill-run"

#: Weights in ounces over 9 lb; so many different notes fit one doe without contradicting each other.
OUNCES = 16

#: The longest that a server lives once it listens, and, of those killed at the start, since they began [s].
LIVES_S = 0.5
STARTS_S = 1.5
KILLED_AT_START = 0.1

#: How long the last server may take to answer all that is left [s].
PATIENCE_S = 240


@dataclass
class Outcome:
    """What became of the notes."""

    sent: int = 0
    recorded: int = 0
    twice: int = 0
    facts: int = 0
    answered: int = 0
    wrongly_answered: int = 0
    out_of_order: int = 0
    answers: int = 0
    kills: int = 0
    restarts_with_work: int = 0
    seconds: float = 0.0
    last_exit: int = 0
    token_seen: bool = False
    complaints: list[str] = field(default_factory=list)

    @property
    def sound(self) -> bool:
        """Whether nothing was lost, doubled or left unanswered."""
        counts = (self.recorded, self.facts, self.answered)
        nothing_wrong = not (
            self.twice or self.wrongly_answered or self.out_of_order or self.last_exit or self.token_seen or self.complaints
        )
        return nothing_wrong and all(count == self.sent for count in counts)

    def __str__(self) -> str:
        shown = {name: getattr(self, name) for name in self.__dataclass_fields__}
        return json.dumps(shown | {"sound": self.sound}, indent=1)


class Run:
    """One run: a stand-in, a book, and servers that come and go."""

    def __init__(self, folder: Path, notes: int, kills: int, seed: int) -> None:
        self.book = folder / "book.sqlite"
        self.log = folder / "serve.log"
        self.notes = notes
        self.kills = kills
        self.dice = random.Random(seed)
        self.standin = StandIn(token=TOKEN)
        self.outcome = Outcome(kills=kills)
        self.said: list[dict[str, Any]] = []

    def run(self) -> Outcome:
        """Send all notes while the servers are killed; then let the last one finish."""
        begun = monotonic()
        with self.standin, self.log.open("w+") as log:
            self._settle(log)
            for life in range(self.kills):
                self._one_life(log, share=self.notes // (self.kills + 1), at_start=self.dice.random() < KILLED_AT_START, number=life)
            self._last_life(log)
            log.seek(0)
            self.outcome.token_seen = TOKEN in log.read()
        self.outcome.seconds = round(monotonic() - begun, 1)
        self._count()
        return self.outcome

    def _settle(self, log: IO[str]) -> None:
        """A farm with does enough, and Ann its owner."""
        app = _opened(self.book)
        does = self.notes // OUNCES + 1
        app.replay("\n".join(f"2026-03-01 {8 + doe // 60:02d}:{doe % 60:02d} new doe {100 + doe} new zealand" for doe in range(does)))
        app.close()
        server = self._server(log, stdout=subprocess.PIPE)
        assert server.stdout is not None
        with server.stdout as told:
            code = told.readline().partition(": ")[2].strip()
        assert "Welcome" in self.standin.wait_answer(self.standin.say("Ann", code))["text"]
        _end(server)

    def _server(self, log: IO[str], stdout: int | IO[str]) -> subprocess.Popen[str]:
        outside = {"HAYNOTE_BOT_TOKEN": TOKEN, "HAYNOTE_BOT_API": self.standin.url, "HAYNOTE_DATA": str(self.book.parent)}
        command = [sys.executable, "-m", "bot", "serve", "--book", str(self.book)]
        return subprocess.Popen(command, stdout=stdout, stderr=log, text=True, env=os.environ | outside)

    def _one_life(self, log: IO[str], share: int, *, at_start: bool, number: int) -> None:
        """A server that is killed while notes come in."""
        since = len(self.standin.calls())
        server = self._server(log, stdout=log)
        talking = threading.Thread(target=self._say_some, args=(share,))
        talking.start()
        if not at_start:
            self._until_it_listens(server, since)
        killed_at = threading.Event()
        killed_at.wait(self.dice.uniform(0, STARTS_S if at_start else LIVES_S))
        server.kill()
        server.wait()
        talking.join()
        self.outcome.restarts_with_work += len(self._unanswered()) > 0

    def _until_it_listens(self, server: subprocess.Popen[str], since: int) -> None:
        """Return when the server asks for news; RuntimeError with its last words where it ended before that."""
        for _ in range(120):
            with suppress(TimeoutError):
                self.standin.wait_calls("getUpdates", since=since, answered=False, timeout=0.5)
                return
            if server.poll() is not None:
                raise RuntimeError(f"the server ended by itself with {server.returncode}: {self.log.read_text()[-2000:]}")
        raise RuntimeError(f"the server did not listen within a minute: {self.log.read_text()[-2000:]}")

    def _last_life(self, log: IO[str]) -> None:
        """A server that may finish."""
        self._say_some(self.notes - len(self.said))
        server = self._server(log, stdout=log)
        ends = monotonic() + PATIENCE_S
        waiting = threading.Event()
        while self._unanswered() and monotonic() < ends:
            waiting.wait(0.1)
        self.standin.wait_confirmed(timeout=60)
        self.outcome.last_exit = _end(server)

    def _say_some(self, count: int) -> None:
        """So many notes, some at once and some with a breath between them. No two say the same."""
        pause = threading.Event()
        for _ in range(count):
            number = len(self.said)
            self.standin.world.pass_time(self.dice.randint(1, 30))
            self.said.append(self.standin.say("Ann", f"{100 + number // OUNCES} weighed 9-{number % OUNCES}"))
            if self.dice.random() < 0.5:
                pause.wait(self.dice.uniform(0, 0.02))

    def _answers(self) -> dict[int, list[str]]:
        """The answers to each note, by its number."""
        found: dict[int, list[str]] = {}
        for answer in self.standin.answers("Ann"):
            replied = answer.get("reply_to_message", {}).get("message_id")
            if replied is not None:
                found.setdefault(replied, []).append(answer["text"])
        return found

    def _unanswered(self) -> list[int]:
        answered = self._answers()
        return [note["message_id"] for note in self.said if note["message_id"] not in answered]

    def _count(self) -> None:
        """Compare what was said with the journal and with the answers."""
        out, answers = self.outcome, self._answers()
        out.sent, out.answers = len(self.said), sum(map(len, answers.values()))
        app = _opened(self.book)
        kept = [json.loads(line) for line in app.export_journal()]
        out.complaints = [problem.text for problem in app.check()]
        app.close()
        texts = Counter(each["text"] for each in kept if " weighed " in each.get("text", ""))
        out.facts = sum(len(each.get("facts", ())) for each in kept if " weighed " in each.get("text", ""))
        out.out_of_order = overtaken([note["text"] for note in self.said], [each.get("text", "") for each in kept])
        out.out_of_order += overtaken([note["message_id"] for note in self.said], list(answers))
        for note in self.said:
            said = answers.get(note["message_id"], [])
            out.recorded += texts[note["text"]] >= 1
            out.twice += texts[note["text"]] > 1
            out.answered += bool(said)
            out.wrongly_answered += any(not _echoes(note["text"], answer) for answer in said)


def overtaken(said: Sequence[object], there: Sequence[object]) -> int:
    """How many of what was said stand, where they first stand, behind something that was said later."""
    place = {what: at for at, what in enumerate(said)}
    order = list(dict.fromkeys(place[what] for what in there if what in place))
    return sum(at < max(order[:number], default=at) for number, at in enumerate(order))


def _echoes(note: str, answer: str) -> bool:
    """Whether the answer tells the note's animal and its weight, and asks nothing."""
    tag, weight = note.split(" weighed ")
    pounds, ounces = weight.split("-")
    told = f"{pounds} lb {ounces} oz" if ounces != "0" else f"{pounds} lb"
    return f"Doe {tag}" in answer and told in answer and "?" not in answer


def _opened(book: Path) -> App:
    app = open_book(str(book))
    assert isinstance(app, App), app
    return app


def _end(server: subprocess.Popen[str]) -> int:
    """An orderly end; the exit status."""
    server.terminate()
    return server.wait(15)


def run(notes: int, kills: int, seed: int = 1) -> Outcome:
    """The outcome of a run in a folder of its own."""
    with tempfile.TemporaryDirectory() as folder:
        return Run(Path(folder), notes, kills, seed).run()


def main() -> None:
    """The command: the outcome on standard output, exit status 1 where anything is wrong."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--notes", type=int, default=1000)
    asked.add_argument("--kills", type=int, default=50)
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    outcome = run(given.notes, given.kills, given.seed)
    sys.stdout.write(f"{outcome}\n")
    sys.exit(0 if outcome.sound else 1)


if __name__ == "__main__":
    main()
