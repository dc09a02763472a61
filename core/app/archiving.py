"""The whole farm in one file: what was typed, the people, and the photos. Another machine takes it in and is the same farm."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from core.app.carrying import journal_lines, notes_of
from core.app.photos import Photos, is_whole, lay_down
from core.notes.journal import Note
from core.problem import Problem
from core.store import people, photos
from core.store.people import Member
from core.store.photos import Photo

FORM = "haynote archive"
VERSION = 1

#: What stays behind: it is of the machine, or of a moment.
LEFT_OUT = (
    "Messages that wait to be read or sent, buttons, and codes that let people in.",
    "Which reminders were sent already: one of that day may be sent once more.",
    "The bot's token: a secret is not put into files that go round.",
)
ABOUT, JOURNAL, PEOPLE, SHOWN, FOLDER = "about.json", "journal.jsonl", "people.json", "photos.json", "photos/"


class Archiving(Photos):
    """The farm packed up, and unpacked."""

    def archive(self, folder: Path) -> dict[str, bytes]:
        """The parts of the archive, name -> content. `folder`: where the photos lie."""
        notes = self._hearing.book().notes
        with self._engine.begin() as connection:
            who = [asdict(member) for member in people.members_of(connection, self._farm)]
            told = {"members": who, "chats": list(people.active_chats(connection, self._farm))}
        shown = [asdict(row) | {"sent_at": row.sent_at.astimezone(UTC).isoformat()} for row in self.photo_rows()]
        about = {"form": FORM, "version": VERSION, "farm": self.name, "notes": len(notes), "not_here": list(LEFT_OUT)}
        return {
            ABOUT: _packed(about),
            JOURNAL: "".join(f"{line}\n" for line in journal_lines(self.name, notes)).encode(),
            PEOPLE: _packed(told),
            SHOWN: _packed(shown),
            **{f"{FOLDER}{file}": content for file, content in self.photos(folder)},
        }

    def take_archive(self, parts: Mapping[str, bytes], folder: Path, now: datetime) -> int | Problem:
        """An archive taken into an empty book, all of it or nothing; how many notes it had. OSError where photos can't be laid down."""
        held = _held_in(parts)
        if isinstance(held, Problem):
            return held
        for file, content in held.files.items():
            lay_down(folder, file, content)  # first: a file that no row knows of does no harm
        with self._hearing.turn() as turn:
            if turn.book.notes:
                return Problem("not_empty", "This book has notes already.", remedy="Restore into a new one: --book FILE.")
            for note in held.notes:
                turn.write(note)
            for place, member in enumerate(held.members):
                people.add_member(turn.connection, self._farm, member, now + timedelta(seconds=place))
            for chat in held.chats:
                people.know_chat(turn.connection, self._farm, chat)
            for row in held.rows:
                photos.keep(turn.connection, self._farm, row)
        return len(held.notes)


@dataclass(frozen=True, slots=True)
class Held:
    """What an archive holds; `files`: the photos by the names of their files."""

    notes: tuple[Note, ...]
    members: list[Member]
    chats: list[str]
    rows: list[Photo]
    files: dict[str, bytes]


def _held_in(parts: Mapping[str, bytes]) -> Held | Problem:
    """The archive read; or why it is none, or not whole."""
    try:
        about, told, shown = (json.loads(parts[name]) for name in (ABOUT, PEOPLE, SHOWN))
        members, chats, rows = _members(told), [str(chat) for chat in told["chats"]], [_photo(row) for row in shown]
        notes = notes_of(parts[JOURNAL].decode().splitlines())
        form, number = (about["form"], about["version"]), about["notes"]
    except (KeyError, TypeError, ValueError, AttributeError):
        return _bad("The archive is not whole.")
    if form != (FORM, VERSION):
        return _bad("This is an archive of another form.")
    if isinstance(notes, Problem) or len(notes) != number:
        return _bad("The archive is not whole: notes are missing or broken.")
    files = {name.removeprefix(FOLDER): content for name, content in parts.items() if name.startswith(FOLDER)}
    if any("/" in file or not is_whole(file, content) for file, content in files.items()):
        return _bad("The archive is not whole: a photo is not what its name says.")
    return Held(notes, members, chats, rows, files)


def _packed(told: Any) -> bytes:
    return json.dumps(told, ensure_ascii=False, indent=1).encode()


def _members(told: Any) -> list[Member]:
    return [Member(str(one["account"]), str(one["name"]), str(one["role"])) for one in told["members"]]


def _photo(row: Any) -> Photo:
    return Photo(**{**row, "sent_at": datetime.fromisoformat(row["sent_at"])})


def _bad(text: str) -> Problem:
    return Problem("bad_archive", text, remedy="Nothing was changed. Give a whole file that 'haynote export --archive' wrote.")
