"""Ordinary words that are words of the barn as well record nothing where their sentence is about something else."""

from __future__ import annotations

import json
from datetime import datetime
from functools import lru_cache
from pathlib import Path

import pytest

from core.herd.state import Herd
from core.notes.reader import read
from core.notes.reading import Message
from core.notes.roster import herd_of

ROSTER = Path(__file__).parents[3] / "corpus" / "roster.json"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")

ELSEWHERE = (
    "lost the key to 14's cage", "lost my glasses in 9's hay", "loss of appetite in 22", "Moss passed gas lol", "14 passed me a note haha",
    "put down fresh straw for 12", "Flint's old brother passed years ago", "the battery died in the barn camera by 14", "Pip is gone from his cage!",
    "Put 33 down for the fair", "I missed the alarm so 9 ate late", "Sorrel missed her water dish and spilled it", "cooked dinner late, fed 14 late",
    "processed the paperwork on R22", "sold the truck, R22 rode along", "my list for R22", "Moss sold me on New Zealands", "keep an eye on 16", "keep 9 warm tonight",
    "process of elimination says 5 did it", "I had 2 cups of coffee with Moss", "chopped some apples for Juno", "won the battle with 33's latch",
    "it's a bit cold in 9's corner", "16 bit through the waterline", "Flint nipped the carrot out of my hand", "Biscuit scratched her ear once",
    "14 charged the door to get hay", "what a mean wind, 14 is hiding", "my knee hurts, limping to 14's cage", "the runs are clean now for 12",
    "finished the crossword next to Juno", "brushed past Flint's cage and he jumped", "33 looks blue today", "33's latch is a mean one",
    "skipped breakfast because Clover got loose", "Thistle threw a toy out of her box again", "Doe 9 exam: no nasal discharge", "5's limp is all gone",
    "Moss needs his nails done", "no frost last night", "Juno x Flint gave nice kits last time", "Thistle 1 kit w eye infection", "the grow pen is where 16 is now",
    "normally moss gets a cup", "the book says 14 kindled 8", "would sell R22 if someone offered 60", "we were going to butcher 32",
    "Juno's july litter was small", "nobody has bought Pip yet",
)  # fmt: skip
OF_THE_BARN = {
    "lost 33": "died", "R22 passed away last night": "died", "had to put 33 down": "died", "14 missed": "missed", "processed R22": "culled", "sold my best buck R22 for 60": "sold",
    "R22 went home with a nice lady": "sold", "list R22 for 60": "for_sale", "keep 33": "planned", "moss gets 2 cups of pellets": "ration", "33 has a torn ear": "fault",
    "33 won first at the fair": "shown", "5 bit me": "temper", "R22 bit my hand": "temper", "Moss is mean": "temper", "5 is limping": "ailment", "5 not eating": "ailment",
    "33 is black": "color", "trimmed nails on 9": "done", "skip the nest check on 12": "skipped", "took the box out of 16": "nest_box", "12 has 6 kits": "kit_count",
    "hard frost last night": "weather", "15 x 7 today": "bred", "gave 9 pen .3 ml": "treated", "weaned 16": "weaned", "15 is named Ivy": "animal",
}  # fmt: skip


@lru_cache(maxsize=1)
def herd() -> Herd:
    """The sample farm's herd."""
    return herd_of(json.loads(ROSTER.read_text(encoding="utf-8")))


def kinds(text: str) -> set[str]:
    """What a note records."""
    return {fact.kind for fact in read(Message(text, AT), herd()).facts}


@pytest.mark.parametrize("text", ELSEWHERE)
def test_a_sentence_about_something_else_records_nothing(text: str) -> None:
    """Nothing but a remark comes of it."""
    assert kinds(text) <= {"remark"}


@pytest.mark.parametrize(("text", "kind"), OF_THE_BARN.items())
def test_the_same_words_of_an_animal_are_recorded(text: str, kind: str) -> None:
    """The word is taken where its frame fits."""
    assert kind in kinds(text)
