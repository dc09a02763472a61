"""The other ear: a recogniser that knows nothing but the sentences of this farm. It hears a note in everything, so it only ever confirms."""

from __future__ import annotations

import tempfile
from collections.abc import Iterable, Iterator
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path
from typing import Final

from bot.voice.arpa import arpa
from bot.voice.letters import BARN, sounds
from bot.voice.pieces import Samples

NEEDS: Final = "pocketsphinx"
DICTIONARY: Final = "cmudict-en-us.dict"

#: What stands between two notes that are said in a row: a word whose only sound is a moment of silence.
BREATH: Final = ","
SILENCE: Final = "SIL"
#: Each sentence is followed, after a breath, by the one so many places on: prime, so that few meet their like.
STRIDE: Final = 7919

Dictionary = dict[str, list[str]]


def can_hear() -> bool:
    """Whether this ear is installed; without it nothing is ever sure."""
    return find_spec(NEEDS) is not None


def pronounced(sayings: Iterable[str], names: Iterable[str], known: Dictionary) -> tuple[list[str], list[str]]:
    """The sentences that can be said, and a line of a dictionary for each way to say each of their words."""
    known = known | {BREATH: [SILENCE]}
    extra = {word for name in names for word in name.lower().split()} | BARN.keys()
    said = {
        word: known.get(word) or ([sounds(word)] if word in extra and sounds(word) else []) for line in sayings for word in line.split()
    }
    sentences = [line for line in sayings if all(said[word] for word in line.split())]
    words = sorted({word for line in sentences for word in line.split()})
    return sentences, [line for word in words for line in _entries(word, said[word])]


def _entries(word: str, ways: list[str]) -> Iterator[str]:
    for at, way in enumerate(ways, start=1):
        yield f"{word} {way}" if at == 1 else f"{word}({at}) {way}"


def in_a_row(sentences: list[str]) -> list[str]:
    """The sentences, and each with another after a breath: a note of ten facts has no full stops that can be heard."""
    return [*sentences, *(f"{one} {BREATH} {sentences[(at * STRIDE + 1) % len(sentences)]}" for at, one in enumerate(sentences))]


def read_dictionary(text: str) -> Dictionary:
    """Each word with the ways to say it."""
    found: Dictionary = {}
    for line in text.splitlines():
        word, _, way = line.partition(" ")
        found.setdefault(word.partition("(")[0], []).append(way.strip())
    return found


class Sphinx:  # pragma: no cover - the extra's own tests
    """The recogniser, made for one farm's sentences."""

    def __init__(self, sayings: tuple[str, ...], names: tuple[str, ...]) -> None:
        """Takes half a second."""
        from pocketsphinx import Decoder, get_model_path  # noqa: PLC0415 - the extra

        place = Path(get_model_path()) / "en-us"
        sentences, entries = pronounced(in_a_row(list(sayings)), names, _known(place / DICTIONARY))
        with tempfile.TemporaryDirectory() as folder:
            model, words = Path(folder) / "farm.arpa", Path(folder) / "farm.dict"
            model.write_text(arpa(sentences), encoding="utf-8")
            words.write_text("\n".join(entries) + "\n", encoding="utf-8")
            self._decoder = Decoder(hmm=str(place / "en-us"), lm=str(model), dict=str(words), loglevel="FATAL")

    def hear(self, samples: Samples) -> str:
        """The words of a piece, all of them from the sentences."""
        self._decoder.start_utt()
        self._decoder.process_raw(samples.tobytes(), full_utt=True)
        self._decoder.end_utt()
        found = self._decoder.hyp()
        return str(found.hypstr).replace(f" {BREATH}", ".") if found is not None else ""


@lru_cache(maxsize=1)
def _known(place: Path) -> Dictionary:  # pragma: no cover - as above
    return read_dictionary(place.read_text(encoding="utf-8"))
