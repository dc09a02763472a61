"""The herd as a list, who sits where, and the settings as they are."""

from __future__ import annotations

import pytest

from tests.core.reports.test_answers import ask
from tests.farm import ago
from tests.herds import Barn


def farm() -> Barn:
    """A doe with her litter and a buck in cages, a grow-out and a doe in none."""
    barn = Barn().buck("3", name="Flint").doe("14", name="Juno").doe("15").litter("14", "3", 20, 7).doe("31", age=90)
    return barn.say("moved", who="14", cage="B10", on=ago(9)).say("moved", who="3", cage="B2", on=ago(9))


def test_who_is_in_which_cage() -> None:
    """Each cage with those in it and their kits, by number; who is in none; how many nobody is noted in."""
    lines = ask(farm().set("cages", 9), "count", said="how many cages are empty").lines
    assert lines[:3] == ("9 cages: 2 with somebody in, 7 with nobody noted.", "B2: 3 Flint", "B10: 14 Juno and 7 kits")
    assert lines[3].startswith("In no cage as far as the notes tell: 15, 31.")
    assert "by your settings" in ask(farm().set("cages", 1), "count", said="cages").lines[0]
    assert "How many are there?" in ask(farm(), "count", said="cages").lines[0]
    crowd = Barn()
    for tag in range(1, 15):
        crowd.doe(str(tag))
    lines = ask(crowd, "count", said="cages").lines
    assert lines[0] == "The notes tell of nobody's cage yet."
    assert ", 12 and 2 more." in lines[1]
    housed = Barn().doe("1").say("moved", who="1", cage="barn", on=ago(1))
    assert ask(housed, "count", said="cages").lines[1:] == ("barn: 1",)


@pytest.mark.parametrize(("said", "told"), [("who's in b-10?", "Cage B10: 14 Juno and 7 kits."), ("who is in cage 4", "Cage 4: nobody")])
def test_who_is_in_one_cage(said: str, told: str) -> None:
    """That cage alone, however it is typed; of an empty one the note that would fill it."""
    assert ask(farm(), "count", said=said).text.startswith(told)


def test_the_herd_as_a_list() -> None:
    """All, or the bucks, does or grow-outs, an animal a line."""
    assert len(ask(farm(), "count", said="list my rabbits", scope="all").lines) > 4
    assert ask(farm(), "count", said="list bucks", scope="bucks").lines[0] == "1 buck on the farm."
    assert [line.split(":")[0] for line in ask(farm(), "count", said="list does", scope="does").lines[1:]] == ["14 Juno", "15"]
    assert [line.split(":")[0] for line in ask(farm(), "count", said="list grow-outs", scope="grow-outs").lines[1:]] == ["31"]


def test_the_settings_as_they_are() -> None:
    """What was said, for a breed too; then the usual ones; nothing said is told so."""
    lines = ask(farm().set("cages", 9).set("bucks_a_breed", 3, "Mini Rex"), "help", said="show my settings").lines
    assert lines[:3] == ("Your settings:", "Cages: 9.", "Bucks you keep of Mini Rex: 3.")
    assert "Reminders come at 07:00" in lines[3]
    assert ask(farm(), "help", said="settings").lines[0] == "You changed no setting yet."
    barn = farm().set("bucks_a_breed", 3).set("weight_units", "kg").set("reminder_time", "08:00").set("digest_day", "monday")
    assert not any(line.startswith("As usual") for line in ask(barn, "help", said="settings").lines)
