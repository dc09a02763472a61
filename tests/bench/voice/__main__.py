"""How well the ears hear, each alone and both together: words, slots, notes right, and notes silently wrong, which must be none.

    python -m tests.bench.voice [tuned] [unseen] [long] [talk] [clean] [opus] [noisy] [--kept FILE]

Needs the extra `voice` and voices (`tests/bench/voice/sounds.py`). What was heard is kept in FILE, if one is named: with it the figures can be
worked out again without listening.
"""

from __future__ import annotations

import json
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from bot.voice.decode import RATE, decoded
from bot.voice.pieces import pieces
from bot.voice.sphinx import Sphinx
from bot.voice.whisper import Whisper, model_folder
from core.notes.fact import to_json
from core.notes.journal import Note
from core.notes.listen import noted
from core.notes.reading import Message
from core.notes.replay import Book, book
from core.notes.roster import herd_of
from core.notes.sayings import in_words
from core.notes.spoken import Ears, judged, primer
from tests.bench.voice.sounds import clips, voices

HERE = Path(__file__).parent
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
CONDITIONS = ("clean", "opus", "noisy")


@dataclass
class Clip:
    """A sentence spoken by a voice, and what was heard of it."""

    group: str
    text: str
    voice: str
    condition: str
    first: str = ""
    second: str = ""
    first_s: float = 0.0
    second_s: float = 0.0
    length_s: float = 0.0


def farm() -> Book:
    """The farm that is spoken of."""
    return book(herd_of(json.loads((HERE.parents[1] / "corpus" / "roster.json").read_text())))


def sentences() -> dict[str, list[str]]:
    """Group -> its sentences."""
    found: dict[str, list[str]] = defaultdict(list)
    group = ""
    for line in (HERE / "notes.txt").read_text().splitlines():
        if line.startswith("["):
            group = line.strip("[]")
        elif line and not line.startswith("#"):
            found[group].append(line)
    return found


def listened(wanted: Iterable[str], conditions: Sequence[str] = CONDITIONS) -> list[Clip]:
    """Every sentence of these groups by every voice, heard by both ears."""
    told = primer(farm().herd)
    first, second, speakers = Whisper(model_folder(None)), Sphinx(told.sayings, told.names), voices()
    found: list[Clip] = []
    for group in wanted:
        for at, text in enumerate(sentences()[group]):
            for voice, speak in speakers.items():
                for condition, sound in clips(speak(text), at):
                    if condition in conditions:
                        found.append(heard(Clip(group, text, voice, condition), sound, told.manner, first, second))
        print(f"{group}: heard", file=sys.stderr)
    return found


def heard(clip: Clip, sound: bytes, manner: str, first: Whisper, second: Sphinx) -> Clip:
    """The clip with what both ears heard, and how long each took."""
    with tempfile.NamedTemporaryFile(suffix=".ogg") as file:
        Path(file.name).write_bytes(sound)
        samples = decoded(Path(file.name))
    clip.length_s = len(samples) / RATE
    begin = time.perf_counter()
    clip.first = " ".join(filter(None, (first.hear(piece, manner) for piece in pieces(samples, RATE))))
    clip.first_s = time.perf_counter() - begin
    begin = time.perf_counter()
    clip.second = " ".join(filter(None, (second.hear(piece) for piece in pieces(samples, RATE)))) if clip.first else ""
    clip.second_s = time.perf_counter() - begin
    return clip


# what is counted


def words(text: str) -> list[str]:
    """The words of a text, numbers in words."""
    plain = "".join(letter if letter.isalnum() or letter == "'" else " " for letter in text.lower())
    return " ".join(in_words(int(word) % 1000) if word.isdecimal() else word for word in plain.split()).split()


def distance(one: Sequence[Any], other: Sequence[Any]) -> int:
    """How many words must be changed, added or left out."""
    row = list(range(len(other) + 1))
    for at, word in enumerate(one, 1):
        before, row[0] = row[0], at
        for place, with_ in enumerate(other, 1):
            before, row[place] = row[place], min(row[place] + 1, row[place - 1] + 1, before + (word != with_))
    return row[-1]


def slots(note: Note) -> list[tuple[str, ...]]:
    """What a note puts on the book, field by field; free text by its words."""
    return [
        (fact.kind, name, " ".join(words(value)) if isinstance(value, str) else repr(value))
        for fact in note.facts
        for name, value in to_json(fact).items()
        if name not in {"kind", "on", "text"} or fact.kind == "remind"
    ]


def missing(wanted: list[tuple[str, ...]], got: list[tuple[str, ...]]) -> int:
    """How many of them are not there, or another is."""
    left = list(got)
    gone = 0
    for slot in wanted:
        if slot in left:
            left.remove(slot)
        else:
            gone += 1
    return gone


def same(one: Note, other: Note) -> bool:
    """Whether both put the same on the book."""
    return slots(one) == slots(other) and (one.ask is None) == (other.ask is None)


def note_of(known: Book, text: str) -> Note:
    """What a text becomes."""
    return noted(known, Message(text, AT))


def row(name: str, told: list[Clip], known: Book) -> str:
    """The figures of these clips."""
    shares: list[str] = []
    for ear in ("first", "second"):
        errors = sum(distance(words(clip.text), words(getattr(clip, ear))) for clip in told)
        of = sum(len(words(clip.text)) for clip in told)
        meant = [slots(note_of(known, clip.text)) for clip in told]
        lost = sum(missing(wanted, slots(note_of(known, getattr(clip, ear)))) for wanted, clip in zip(meant, told, strict=True))
        right = sum(same(note_of(known, clip.text), note_of(known, getattr(clip, ear))) for clip in told)
        shares.append(f"{100 * errors / of:5.1f} {100 * lost / max(sum(map(len, meant)), 1):5.1f} {100 * right / len(told):4.0f}")
    found = [judged(known, Ears(clip.first, clip.second), Message("", AT)) for clip in told]
    sure = [(clip, each) for clip, each in zip(told, found, strict=True) if each.sure]
    wrong = [(clip, each) for clip, each in sure if not same(each.note, note_of(known, clip.text))]
    offered = sum(
        any(same(note_of(known, text), note_of(known, clip.text)) for text in (each.text, *each.others))
        for clip, each in zip(told, found, strict=True)
    )
    for clip, each in wrong:
        print(f"SILENTLY WRONG {clip.voice} {clip.condition}: {clip.text} -> {each.text} | {clip.second}", file=sys.stderr)
    return f"{name:26} {len(told):4}   {shares[0]}   {shares[1]}   {100 * len(sure) / len(told):5.0f} {len(wrong):6} {100 * offered / len(told):8.0f}"


HEAD = f"{'':26} {'n':>4}   {'first ear':>16}   {'second ear':>16}   {'both together':>21}\n{'':26} {'':4}   {'WER  slot right':>16}   {'WER  slot right':>16}   {'saved  wrong  a tap away':>24}"


def table(told: list[Clip]) -> list[str]:
    """All rows."""
    known = farm()
    lines = [HEAD]
    for group in dict.fromkeys(clip.group for clip in told if clip.group != "talk"):
        of_group = [clip for clip in told if clip.group == group]
        for condition in dict.fromkeys(clip.condition for clip in of_group):
            here = [clip for clip in of_group if clip.condition == condition]
            lines.append(row(f"{group}, {condition}", here, known))
            lines += [
                row(f"  {voice}", [clip for clip in here if clip.voice == voice], known) for voice in dict.fromkeys(c.voice for c in here)
            ]
    talk = [clip for clip in told if clip.group == "talk"]
    if talk:
        found = [judged(known, Ears(clip.first, clip.second), Message("", AT)) for clip in talk]
        notes = sum(each.tells for each in found)
        lines.append(f"talk: {len(talk)} clips, {sum(each.sure for each in found)} saved, {notes} shown as if a note was in them")
    if told:
        lines.append(
            f"seconds a clip of {sum(c.length_s for c in told) / len(told):.1f} s: first ear {sum(c.first_s for c in told) / len(told):.2f}, second ear {sum(c.second_s for c in told) / len(told):.2f}"
        )
    return lines


def main() -> None:
    """Listen, or take what was heard before, and print the table."""
    kept = Path(sys.argv[sys.argv.index("--kept") + 1]) if "--kept" in sys.argv else None
    if kept is not None and kept.exists():
        told = [Clip(**each) for each in json.loads(kept.read_text())]
    else:
        wanted = [each for each in sentences() if each in sys.argv] or list(sentences())
        told = listened(wanted, tuple(each for each in CONDITIONS if each in sys.argv) or ("opus", "noisy"))
        if kept is not None:
            kept.write_text(json.dumps([asdict(clip) for clip in told]))
    print("\n".join(table(told)))


if __name__ == "__main__":
    main()
