"""Photos: one with a tag under it joins that animal's card. The files lie in a folder beside the book, named by what they hold."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from core.app.hearing import Turn
from core.app.letters import answer_of, letter_of, put
from core.app.room import Room
from core.herd.questions import fitting
from core.herd.state import Animal, Herd
from core.notes.replay import local_day
from core.problem import Problem
from core.reply import Attached, Choice, Reply
from core.store import intake, people
from core.store import photos as kept
from core.store.names import URL
from core.store.photos import Photo
from core.words import count, full_day

if TYPE_CHECKING:
    from core.notes.kinds.query import Query
    from core.notes.listen import Heard
    from core.notes.reading import Message
    from core.notes.replay import Book
    from core.store.intake import Update

#: So many photos are shown at once, the newest.
SHOWN = 6
#: What may stand beside a tag under a photo that tells nothing more.
ONLY_WHOSE = re.compile(
    r"\b(?:photos?|pictures?|pics?|snaps?|of|this|that|is|here|heres|its|it|the|my|our|a|doe|buck|rabbit|bunny|for)\b|[^\w\s-]",
    re.IGNORECASE,
)
#: What helps where a photo's file is gone or damaged.
FROM_A_COPY = "The notes are whole. Copy the photos' folder from a backup to that place."
WHOSE = "Whose photo is that? Send it again with the tag under it, for example: 14"


@dataclass(frozen=True, slots=True)
class Sent:
    """A photo as it came: `ending` says what it is (jpg, png, webp), `album` what several sent at once have in common."""

    content: bytes
    ending: str
    album: str | None = None

    @property
    def file(self) -> str:
        """The name of its file: what it holds, told in few letters."""
        return f"{hashlib.sha256(self.content).hexdigest()}.{self.ending}"


class Photos(Room):
    """The farm's photos."""

    def photo_folder(self, spare: Path) -> Path:
        """Where the files lie: beside the book; of a book that is in no file in the spare place."""
        return folder_of(self._engine.url) or spare

    def photo_update(self, update: Update, message: Message, sent: Sent, now: datetime, folder: Path) -> Reply | None:
        """Keep a photo with whom its words name, hear what else they say, answer, and be done with the update: all or nothing.

        The file comes first: one that no row knows of does no harm.
        """
        lay_down(folder, sent.file, sent.content)
        with self._hearing.turn() as turn:
            photo = Photo(message.chat, message.number or "", sent.file, message.at, message.author, sent.album)
            reply = _taken(turn, photo, message, now)
            people.know_chat(turn.connection, self._farm, message.chat)
            intake.mark(turn.connection, self._farm, update.id, "done")
        return reply

    def photo(self, file: str, folder: Path) -> bytes | Problem:
        """A photo's file, as it came; none that holds something else by now."""
        try:
            content = (folder / Path(file).name).read_bytes()
        except OSError:
            return Problem("no_file", "The photo's file is not there any more.", remedy="Look in a backup.")
        return content if is_whole(file, content) else Problem("no_file", "The photo's file is damaged.", remedy="Look in a backup.")

    def photos(self, folder: Path) -> Iterator[tuple[str, bytes]]:
        """Every photo that shows an animal: the name of its file, and what it holds; those whose file is gone or damaged are left out."""
        with self._engine.begin() as connection:
            files = dict.fromkeys(one.file for one in kept.all_of(connection, self._farm) if one.animal)
        for file in files:
            content = self.photo(file, folder)
            if isinstance(content, bytes):
                yield file, content

    def take_photos(self, rows: Sequence[Photo], sources: Iterable[Path], folder: Path) -> None:
        """Photos from another book, with their files from its folders, as far as they are there."""
        with self._engine.begin() as connection:
            for row in rows:
                kept.keep(connection, self._farm, row)
        for source in sources:
            carried(source, folder, (row.file for row in rows))

    def harmed_photos(self) -> tuple[Problem, ...]:
        """That photos' files are not in the folder beside the book, or hold something else than what was sent, where that is so."""
        folder = folder_of(self._engine.url)
        if folder is None:
            return ()
        files = dict.fromkeys(one.file for one in self.photo_rows())
        gone = [file for file in files if not (folder / file).is_file()]
        damaged = [file for file in files if file not in gone and isinstance(self.photo(file, folder), Problem)]
        told = ((gone, f"the file is not in {folder}"), (damaged, f"the file in {folder} is damaged"))
        texts = [f"{count(len(those), 'photo')} of {len(files)}: {what}." for those, what in told if those]
        return tuple(Problem("unsound", text, remedy=FROM_A_COPY) for text in texts)

    def photo_rows(self) -> tuple[Photo, ...]:
        """Every photo of the farm: whose it is, and in which file it lies."""
        with self._engine.begin() as connection:
            return kept.all_of(connection, self._farm)


def carried(source: Path, target: Path, files: Iterable[str]) -> int:
    """The files copied from folder to folder, as far as they are there and whole; how many. OSError where the target can't be written."""
    return sum(_carried(source / file, target) for file in dict.fromkeys(files) if (source / file).is_file())


def _carried(file: Path, target: Path) -> bool:
    """Whether the target has the file by now. One of that name and length there is not read again: a day's copy must be quick."""
    there = target / file.name
    if there.is_file() and there.stat().st_size == file.stat().st_size:
        return True
    content = file.read_bytes()
    if is_whole(file.name, content):
        lay_down(target, file.name, content)
    return is_whole(file.name, content)


def is_whole(file: str, content: bytes) -> bool:
    """Whether that is what a photo's file of that name held when it was sent."""
    return hashlib.sha256(content).hexdigest() == file.partition(".")[0]


def folder_of(url: URL, what: str = "photos") -> Path | None:
    """Where the photos, or other files, of a book lie that is in a file: beside it."""
    in_a_file = url.get_backend_name() == "sqlite" and url.database not in {None, "", ":memory:"}
    return Path(f"{url.database}.{what}").absolute() if in_a_file else None


def lay_down(folder: Path, file: str, content: bytes) -> None:
    """Put a file into the folder unless it is there as it should be; in its place only once it is whole."""
    place = folder / file
    if place.is_file() and place.read_bytes() == content:
        return
    folder.mkdir(parents=True, exist_ok=True)
    part = place.with_name(file + ".part")
    part.write_bytes(content)
    part.replace(place)


def _taken(turn: Turn, photo: Photo, message: Message, now: datetime) -> Reply | None:
    """Keep the photo and put the answer into the outbox; what is answered, or nothing, where an album was answered before."""
    said = message.text.strip()
    whose = named_alone(turn.book.herd, said)
    if said and whose is None:
        return _with_a_note(turn, photo, message, now)
    photo = _kept(turn, photo, whose.key if whose else None)
    if photo.animal is None:
        reply, key = Reply((WHOSE,)), "whose"
    else:
        reply, key = _joined(turn, photo.animal), "photo"
    letter = letter_of(f"{key}:{photo.chat}:{photo.album or photo.number}:{message.edit}", photo.chat, reply, photo.number)
    return reply if put(turn.connection, turn.farm, letter, now) else None


def _kept(turn: Turn, photo: Photo, animal: str | None) -> Photo:
    """The photo kept, with its album where it came in one; one that nobody's is and in no album is let go."""
    if animal is None and photo.album is None:
        return kept.known(turn.connection, turn.farm, photo.chat, photo.number) or photo
    photo = kept.keep(turn.connection, turn.farm, replace(photo, animal=animal))
    if animal is not None:
        kept.show(turn.connection, turn.farm, photo, animal)
    return photo


def _with_a_note(turn: Turn, photo: Photo, message: Message, now: datetime) -> Reply:
    """The words under the photo are a note: it is heard, and the photo is that animal's of whom it tells."""
    heard = turn.hear(message)
    animal = told_of(heard)
    photo = _kept(turn, photo, animal.key if animal else None)
    line = _line(turn.book.herd, photo.animal) if photo.animal else WHOSE
    heard = replace(heard, reply=replace(heard.reply, lines=(*heard.reply.lines, line)))
    put(
        turn.connection,
        turn.farm,
        answer_of(f"reply:{message.chat}:{message.number}:{message.edit}", message.chat, heard, photo.number),
        now,
    )
    return heard.reply


def named_alone(herd: Herd, said: str) -> Animal | None:
    """The animal that the words name and of which they say nothing else: `14`, `Juno`, `photo of doe 14`."""
    words = " ".join(ONLY_WHOSE.sub(" ", said).split())
    parts = {one.key: one for part in (words, *words.split()) for one in fitting(herd, part)} if words else {}
    told = {word.lower() for one in parts.values() for word in f"{one.tag} {one.name or ''}".split()}
    return next(iter(parts.values())) if len(parts) == 1 and set(words.lower().split()) <= told else None


def told_of(heard: Heard) -> Animal | None:
    """The animal that a note tells of, by the first of its facts that names one, or that it asks about; None for a question of a person's."""
    herd, note = heard.book.herd, heard.note
    for fact in note.facts:
        names = (getattr(fact, name, None) for name in ("who", "doe", "tag", "litter_of"))
        found = next((one for name in names if name and (one := herd.find(name))), None)
        if found is not None and fact.kind != "query":
            return found
    return herd.find(note.subject) if note.ask is not None and note.subject and note.subject in note.text.split() else None


def _line(herd: Herd, key: str) -> str:
    animal = herd.animals.get(key)
    return f"The photo is kept with {called(animal) if animal else key}."


def called(animal: Animal) -> str:
    """`doe 14 (Juno)`."""
    return f"{animal.sex or 'rabbit'} {animal.tag}" + (f" ({animal.name})" if animal.name else "")


def _joined(turn: Turn, key: str) -> Reply:
    """That the photo is kept, and with whom; a button shows them all."""
    animal = turn.book.herd.animals.get(key)
    number = len(kept.of_animal(turn.connection, turn.farm, key))
    tag = animal.tag if animal else key
    return Reply((_line(turn.book.herd, key),), (Choice(f"Photos of {tag}", f"photos {tag}"),) if number else ())


def with_photos(turn: Turn, query: Query, book: Book, reply: Reply) -> Reply:
    """An answer with the photos that belong to it: those asked for, or a button for them under a card."""
    wanted = next((one for one in reply.attached if one.what == "photo"), None)
    if wanted is not None:
        return _shown(turn, book, wanted)
    if query.about != "card" or query.who is None:
        return reply
    found = fitting(book.herd, query.who)
    number = len(kept.of_animal(turn.connection, turn.farm, found[0].key)) if len(found) == 1 else 0
    button = (Choice(count(number, "photo"), f"photos {found[0].tag}"),) if number else ()
    return replace(reply, choices=(*reply.choices, *button))


def _shown(turn: Turn, book: Book, wanted: Attached) -> Reply:
    """The newest photos of an animal, each with its day; how to send one where there is none."""
    animal = book.herd.animals[wanted.key or ""]
    found = kept.of_animal(turn.connection, turn.farm, animal.key)
    if not found:
        return Reply((f"No photo of {called(animal)} yet. Send one with {animal.tag} under it.",))
    more = f", the newest {SHOWN}" if len(found) > SHOWN else ""
    shown = tuple(
        Attached("photo", "photo", one.file, f"{wanted.name}-{at}.{one.file.rpartition('.')[2]}", _when(book, animal, one.sent_at))
        for at, one in enumerate(found[:SHOWN], start=1)
    )
    return Reply((f"{called(animal)[:1].upper()}{called(animal)[1:]}: {count(len(found), 'photo')}{more}.",), attached=shown)


def _when(book: Book, animal: Animal, at: datetime) -> str:
    return f"{animal.tag}, {full_day(local_day(at, book.herd))}"
