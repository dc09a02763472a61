"""What the other ear is made of: a language model of the farm's sentences, and how their words are said."""

from __future__ import annotations

import pytest

from bot.voice import sphinx
from bot.voice.arpa import arpa
from bot.voice.letters import sounds
from bot.voice.sphinx import can_hear, in_a_row, pronounced, read_dictionary

SENTENCES = ["doe fourteen kindled eight", "doe fourteen kindled six", "doe twelve missed"]


def grams(model: str) -> dict[tuple[str, ...], tuple[float, float | None]]:
    """Each gram's chance and its weight for backing off, both no logarithms any more."""
    found: dict[tuple[str, ...], tuple[float, float | None]] = {}
    for line in model.splitlines():
        if line.count("\t"):
            chance, words, *back = line.split("\t")
            found[tuple(words.split())] = (10 ** float(chance), 10 ** float(back[0]) if back else None)
    return found


def chance(model: dict[tuple[str, ...], tuple[float, float | None]], words: tuple[str, ...]) -> float:
    """The chance of the last word after those before it, as a recogniser works it out."""
    if words in model:
        return model[words][0]
    before = model.get(words[:-1])
    return (1.0 if before is None or before[1] is None else before[1]) * chance(model, words[1:])


@pytest.mark.parametrize("before", [(), ("doe",), ("doe", "fourteen"), ("twelve", "kindled"), ("<s>", "six")])
def test_chances_add_up_to_one(before: tuple[str, ...]) -> None:
    """After any words, seen or not: something follows."""
    model = grams(arpa(SENTENCES))
    words = [word for gram in model if len(gram) == 1 for word in gram if word != "<s>"]
    assert sum(chance(model, (*before, word)) for word in words) == pytest.approx(1, abs=1e-3)


def test_what_was_said_is_likelier_than_what_was_not() -> None:
    """And what was never said is not impossible."""
    model = grams(arpa(SENTENCES))
    assert chance(model, ("doe", "fourteen", "kindled")) > chance(model, ("doe", "twelve", "kindled")) > 0


def test_the_counts_stand_in_the_head() -> None:
    """As recognisers check them."""
    head = arpa(SENTENCES).splitlines()[:4]
    assert head == ["\\data\\", "ngram 1=9", "ngram 2=10", "ngram 3=9"]


def test_a_sentence_that_nobody_can_say_is_left_out() -> None:
    """Names are spelled out, the dictionary gives several ways, and a word that neither has costs its sentences."""
    known = read_dictionary("doe D OW\nkindled K IH N D AH L D\nkindled(2) K IH N D L D\n")
    sentences, entries = pronounced(["doe kindled", "juno kindled", "doe xyzzy", "hocks"], ["Juno"], known)
    assert sentences == ["doe kindled", "juno kindled", "hocks"]
    assert entries == ["doe D OW", "hocks HH AA K S", "juno JH AH N AA", "kindled K IH N D AH L D", "kindled(2) K IH N D L D"]


def test_notes_come_in_a_row() -> None:
    """After a breath, which is a word of silence."""
    row = in_a_row(["doe kindled", "doe missed"])
    assert row == ["doe kindled", "doe missed", "doe kindled , doe missed", "doe missed , doe kindled"]
    assert pronounced(row[2:3], [], {word: ["D"] for word in ("doe", "kindled", "missed")})[1][0] == ", SIL"


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("flint", "F L IH N T"),
        ("clover", "K L AA V ER"),
        ("thistle", "TH IH S T L"),
        ("bella", "B EH L AH"),
        ("quill", "K W IH L"),
        ("a", "AH"),
        ("77", ""),
    ],
)
def test_a_name_letter_by_letter(word: str, said: str) -> None:
    """Roughly as it is said."""
    assert sounds(word) == said


def test_the_other_ear_may_be_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    """Then nothing is ever sure."""
    monkeypatch.setattr(sphinx, "find_spec", lambda _name: None)
    assert not can_hear()
