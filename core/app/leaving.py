"""Deleting a farm: asked for first, done once a waiting time is over. Its last archive is made by the shell, which knows where to.

A chat asks for it and takes it back. It is never done from there: the server that answers would go on with the farm that it keeps in mind.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from pathlib import Path
from typing import Final

from core.app.photos import folder_of, lay_down
from core.app.room import Room
from core.app.taking_away import handed_over
from core.problem import Problem
from core.reply import Choice, Reply
from core.store import journal, leaving, people
from core.store.names import Connection
from core.words import full_day

#: How long a farm that somebody wants deleted stays: time to think it over, and for the others on it to hear of it.
WAITING = timedelta(days=7)

_FARM: Final = r"(?:(?:my|our|the|this)\s+)?(?:whole\s+|entire\s+)?farm"
#: What a chat can wish about it, and the words for that: they are the whole message, which no note is.
_WORDS: Final = {
    "ask": re.compile(rf"/?(?:please\s+)?delete\s+(?:{_FARM}|everything)\W*", re.IGNORECASE),
    "go": re.compile(rf"yes\W+delete\s+(?:{_FARM}|everything)\W*", re.IGNORECASE),
    "stay": re.compile(rf"/?(?:please\s+)?keep\s+{_FARM}\W*", re.IGNORECASE),
}
_KEEP: Final = Choice("Keep my farm", "keep my farm")
BY_COMMAND: Final = "Here a command does that: 'haynote delete --last FILE' makes a last archive, and seven days begin. 'haynote delete --stay' takes it back."


class Leaving(Room):
    """How a farm goes."""

    def want_to_go(self, now: datetime) -> datetime:
        """Let the farm be deleted once the waiting time is over; from when on, by the first who wanted it."""
        with self._engine.begin() as connection:
            return _asked_for(connection, self._farm, now)

    def goes_at(self) -> datetime | None:
        """From when on it may be deleted; None where nobody wants that."""
        with self._engine.begin() as connection:
            return leaving.goes_at(connection, self._farm)

    def stay(self) -> bool:
        """Take back that it shall be deleted; whether there was something to take back."""
        with self._engine.begin() as connection:
            return leaving.stays(connection, self._farm)

    def keep_last(self, content: bytes, spare: Path, now: datetime) -> str:
        """Lay a last archive down that nobody named a place for: beside the book, or in the spare place where that is in no file. The file's name."""
        name = f"farm-{self._farm}-{now:%Y-%m-%d}.zip"
        lay_down(folder_of(self._engine.url, "last-archives") or spare, name, content)
        return name

    def delete(self, now: datetime, notes: int, folder: Path) -> Problem | None:
        """Delete the farm for good, with its photos; None once it is gone.

        notes   how many are in its last archive: with more by now nothing is deleted
        folder  where the photos lie
        """
        with self._engine.begin() as connection:
            journal.take_farm(connection, self._farm)
            at = leaving.goes_at(connection, self._farm)
            if at is None or at > now:
                text = f"The farm may be deleted from {full_day(at.date())} on." if at else "Nobody asked for the farm to be deleted."
                return Problem("too_early", text, remedy="'haynote delete --last FILE' asks for it, and does it once 7 days are over.")
            if journal.last_id(connection, self._farm) != notes:
                return Problem(
                    "too_early",
                    "A note came in after the last archive.",
                    remedy="Nothing was deleted. Stop 'haynote serve', and try again.",
                )
            files = leaving.delete_farm(connection, self._farm)
        for file in files:
            (folder / file).unlink(missing_ok=True)
        return None


@dataclass(frozen=True, slots=True)
class Leave:
    """What an owner wishes about it in a chat (`ask`, `go` or `stay`), when, and in which timezone the farm lives.

    kept  the name of the last archive on the machine, where it was just laid down
    """

    what: str
    at: datetime
    home: tzinfo
    kept: str = ""


def wanted_leaving(text: str) -> str | None:
    """What the words wish about deleting the farm; None where they are something else."""
    return next((what for what, words in _WORDS.items() if words.fullmatch(text.strip())), None)


def done_about_leaving(connection: Connection, farm: int, wish: Leave) -> Reply:
    """What came of it. Who says so once more after the waiting time hears where it is done."""
    if wish.what == "stay":
        return Reply((told_stays(taken_back=leaving.stays(connection, farm)),))
    goes_at = _asked_for(connection, farm, wish.at) if wish.what == "go" else leaving.goes_at(connection, farm)
    name = people.farm_name(connection, farm)
    if goes_at is None:
        return _sure(name)
    last = handed_over("archive", owner=True)
    told = _over(name) if goes_at <= wish.at else _waits(name, told_when(goes_at, wish.home))
    lies = f", and lies on the bot's machine as {wish.kept}" if wish.kept else ""
    return Reply((*told, f"The last archive comes with this{lies}. {last.text}"), (_KEEP,), last.attached)


def told_when(at: datetime, home: tzinfo) -> str:
    """The moment as it is told: the farm's day and hour."""
    return f"{at.astimezone(home):%A, %d %B %Y, %H:%M}"


def told_stays(*, taken_back: bool) -> str:
    """What is said once it shall not be deleted; it may be that nobody wanted that."""
    return "The farm stays." if taken_back else "Nobody asked for the farm to be deleted: it stays."


def _asked_for(connection: Connection, farm: int, now: datetime) -> datetime:
    """From when on it may be deleted, now that it is asked for: by the first who wanted it."""
    leaving.wants_to_go(connection, farm, now + WAITING)
    return leaving.goes_at(connection, farm) or now + WAITING


def _sure(name: str) -> Reply:
    lines = (
        f"Delete the whole farm {name}: its notes, people, chats and photos?",
        f"Not at once: the last archive comes first, here in the chat, and then {WAITING.days} days to think it over.",
    )
    return Reply(lines, (Choice("Yes, delete it", "yes, delete my farm"), _KEEP))


def _waits(name: str, when: str) -> tuple[str, ...]:
    return (
        f"The farm {name} may be deleted from {when} on, and never goes by itself: say “delete my farm” again then.",
        "Until then all goes on as ever, and “keep my farm” takes it back.",
    )


def _over(name: str) -> tuple[str, ...]:
    return (
        f"The {WAITING.days} days are over. The farm {name} still stays: while this bot runs nothing is deleted.",
        "Whoever keeps its machine deletes the farm: stop 'haynote serve', then 'haynote delete --last FILE'. “keep my farm” takes it back.",
    )
