"""May it be eaten: the notes' answer, never more, and the caution."""

from __future__ import annotations

import pytest

from core.handbook import health
from core.notes.clauses.asked_about import ASKS_TO_EAT
from core.notes.kinds.query import Query
from core.reports.answers import answered
from core.reports.withdrawal import may_be_eaten
from tests.core.reports.test_card import of
from tests.farm import TODAY, ago
from tests.herds import Barn


def treated(days: int | None, on_ago: int = 7) -> Barn:
    """A buck that was given a medicine, with its withdrawal time where one was noted."""
    return Barn().buck("9", name="Hank").say("treated", who="9", with_="ivermectin", withdrawal_days=days, on=ago(on_ago))


def told(barn: Barn) -> str:
    """The answer for that buck."""
    return " ".join(may_be_eaten(barn.seen, barn.find("9")))


def test_running_withdrawal_says_no_with_its_day() -> None:
    """No, until when, and that label and vet come first."""
    assert told(treated(28)) == (
        "Buck 9 (Hank): no, not by the notes. Not to be eaten until after Wed 16 Dec 2026, by the withdrawal time you noted. "
        + health.WITHDRAWAL
    )


def test_untold_withdrawal_sends_to_the_vet() -> None:
    """A medicine without its days is never a yes, however long ago."""
    assert told(treated(None, 300)).startswith("Buck 9 (Hank): no, not by the notes. Treated with ivermectin")
    assert health.WITHDRAWAL_UNKNOWN in told(treated(None, 300))


def test_yes_says_by_what() -> None:
    """Over, with the day it ended; or no medicine on the book; the caution all the same."""
    assert "yes, as far as the notes go. The withdrawal time you noted ended Mon 23 Nov 2026." in told(treated(5))
    never = told(Barn().buck("9"))
    assert never.startswith("Buck 9: yes, as far as the notes go. No medicine is on the book")
    assert never.endswith(health.WITHDRAWAL)


def test_ill_or_dead_by_itself_is_no() -> None:
    """Not well by the last notes, or died: no."""
    assert health.ASK_BEFORE in told(Barn().buck("9").say("ailment", who="9", sign="snotty nose"))
    assert health.DIED_BY_ITSELF in told(Barn().buck("9").say("died", who="9"))
    assert "no, not by the notes" in told(treated(28).say("culled", who="9"))


@pytest.mark.parametrize("said", ["can i eat hank", "is hank safe to eat", "withdrawal on hank", "when can hank be eaten"])
def test_question_of_eating_is_answered_before_the_card(said: str) -> None:
    """The answer first, then the card, each line once."""
    lines = answered(Query(about="card", who="9"), treated(28).herd, TODAY, (), said).lines
    assert lines[0] == "Buck 9 (Hank): no, not by the notes."
    assert sum(line.startswith("Not to be eaten") for line in lines) == 1
    assert any(line.startswith("Buck 9 (Hank): New Zealand") for line in lines)


def test_withdrawal_alone_lists_all_that_wait() -> None:
    """Everybody that is not for the table; where nobody waits, that; a stranger is no list."""
    assert answered(Query(about="card"), treated(28).buck("3").herd, TODAY, (), "withdrawal").lines[:2] == (
        "Not to be eaten:",
        "9 Hank: Not to be eaten until after Wed 16 Dec 2026, by the withdrawal time you noted.",
    )
    none = answered(Query(about="card"), Barn().buck("3").herd, TODAY, (), "withdrawal").lines
    assert none == ("No withdrawal time is running by your notes.", health.WITHDRAWAL)
    assert "77 is not on the book" in answered(Query(about="card"), Barn().buck("3").herd, TODAY, (), "withdrawal on 77").text


@pytest.mark.parametrize(
    "said",
    [
        "can hank eat carrots",
        "what does hank eat",
        "is hank eating",
        "is hank ok to be bred",
        "how much do they eat",
        "can we eat hank's kits",
        "hank",
    ],
)
def test_what_it_eats_is_another_question(said: str) -> None:
    """Eating and being eaten."""
    assert not ASKS_TO_EAT.search(said)


def test_card_tells_withdrawal_condition_and_temper() -> None:
    """The safety line right under the name; the newest condition and the last word on its temper with their days."""
    barn = treated(28).say("condition", who="9", score=3, on=ago(40)).say("condition", who="9", score=4, on=ago(2))
    barn.say("temper", who="9", grade="bad", sign="bit me", on=ago(1))
    lines = of(barn, "9").reply().lines
    assert lines[1] == "Not to be eaten until after Wed 16 Dec 2026, by the withdrawal time you noted."
    assert "Condition 4, fat, Mon 23 Nov." in lines
    assert "Temper: bit me, yesterday (1 bad note in 12 months)." in lines
    assert "Temper: good, today." in of(barn.doe("5").say("temper", who="5", grade="good"), "5").reply().lines
