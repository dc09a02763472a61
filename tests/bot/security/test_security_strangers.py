"""Strangers who guess invitations, and strangers who write without end."""

from __future__ import annotations

import random
import string

import pytest

from core.app.post import REFUSALS_A_DAY
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_people import invited, roles
from tests.standin import StandIn

GUESSES = 200
MESSAGES = 1000


def near(code: str, rng: random.Random) -> str:
    """The code with one letter changed."""
    at = rng.choice([place for place, letter in enumerate(code) if letter.isalnum()])
    other = rng.choice([letter for letter in string.ascii_lowercase + string.digits if letter != code[at].lower()])
    return code[:at] + other + code[at + 1 :]


def test_a_guessed_invitation_lets_nobody_in(barn: Served, standin: StandIn) -> None:
    """Not one letter may be wrong. The right one works all the same, for whom it was meant."""
    link = invited(barn, "owner")
    code = link.removeprefix("/start ")
    rng = random.Random(7)
    letters = string.ascii_lowercase + string.digits
    for _ in range(GUESSES):
        standin.say("Eve", f"/start {near(code, rng)}")
        standin.say("Eve", "".join(rng.choice(letters) for _ in range(len(code))))
    for words in ("/start", "/start owner", f"/start {code[:-1]}", f"/start {code} x", "/start %", "/start ' OR 1=1 --"):
        standin.say("Eve", words)
    standin.wait_confirmed(timeout=60)
    assert "Welcome" in barn.ask("Bo", link)
    assert roles(barn) == [("Ann", "owner"), ("Bo", "owner")]
    assert len(standin.answers("Eve")) == REFUSALS_A_DAY


@pytest.mark.slow
def test_a_flood_from_a_stranger_drowns_nobody(barn: Served, standin: StandIn) -> None:
    """A thousand messages: a few polite lines, nothing of them kept, and the owner's note amid them is recorded."""
    before = barn.notes()
    for number in range(MESSAGES):
        standin.say("Eve", f"doe 14 died, message {number} of the flood")
        if number == MESSAGES // 2:
            note = standin.say("Ann", "14 weighed 8-2")
    assert barn.reply(note, timeout=120)["text"].startswith("Doe 14: 8 lb 2 oz.")
    standin.wait_confirmed(timeout=120)
    assert standin.wait_answer(standin.say("Ann", "who is due"), timeout=120)
    assert len(standin.answers("Eve")) == REFUSALS_A_DAY
    assert barn.notes() == [*before, "14 weighed 8-2", "who is due"]
    assert _kept(barn, "%") > MESSAGES
    standin._wait(lambda: _kept(barn, "%of the flood%") == 0 or None, "an inbox without the stranger's words", 120)


def _kept(barn: Served, like: str) -> int:
    """How many messages in the inbox read like that."""
    with barn.app._engine.begin() as connection:
        return int(connection.exec_driver_sql("select count(*) from inbox where raw like ?", (like,)).scalar_one())
