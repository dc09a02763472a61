"""A question that nothing answers is told as such, with those nearest to it."""

from __future__ import annotations

import pytest

from core.herd.state import Herd
from core.notes.kinds.remark import Remark, reply
from core.notes.unanswered import is_asked, nearest
from tests.farm import TODAY
from tests.herds import Barn


@pytest.mark.parametrize(
    ("text", "asks"),
    [
        ("how much money did i make", True),
        ("who's bred", True),
        ("is Juno allergic to cats?", True),
        ("who knew rabbits could purr", False),
        ("did you know 14 has the softest fur?", False),
        ("what a doe", False),
        ("how 14 loves hay", False),
        ("when 14 kindles, box in 9", False),
        ("why, the door was open", False),
        ("gate was open", False),
    ],
)
def test_what_asks(text: str, asks: bool) -> None:
    """A mark or a question's first words; what only exclaims or tells asks nothing."""
    assert is_asked(text) is asks


def test_the_nearest_questions_come_first() -> None:
    """By the words they share; with an animal of the farm; with none, those that need none."""
    herd = Barn().doe("15").herd
    assert nearest("how much money did i make", herd, None)[:2] == ("sales", "what if I sold 15")
    assert nearest("how old is 14", herd, "14")[0] == "card 14"
    assert nearest("what is the meaning of life", Herd(), None) == ("who's due this week", "herd", "help")
    assert "{one}" not in " ".join(nearest("how much money", Herd(), None))


def test_the_reply_says_that_it_was_not_understood() -> None:
    """Not the reply of a plain remark."""
    herd = Barn().doe("15").herd
    (line,) = reply(Remark(text="how much money did i make", on=TODAY), herd, herd)
    assert line.startswith("I don't know that question (kept as words only: “how much money did i make”). What I can answer: sales · ")
