"""Whom to breed an animal to, whom it was bred to, and which doe next."""

from __future__ import annotations

import pytest

from core.reply import Reply
from core.reports.mates import bred_to, mates, next_does
from tests.core.reports.test_answers import ask
from tests.farm import ago
from tests.herds import Barn


def farm() -> Barn:
    """A doe with her brother, her half brother and a stranger; one of another breed without a buck."""
    barn = Barn().buck("3").doe("1").doe("2").doe("10", sire="3", dam="1", age=400).buck("11", sire="3", dam="1", age=400)
    return barn.buck("12", sire="3", dam="2", age=400).buck("20").doe("40", breed="Mini Rex")


def told(barn: Barn, tag: str) -> Reply:
    """The mates for that animal."""
    return mates(barn.seen, barn.find(tag)).reply()


def test_the_least_inbred_kits_come_first() -> None:
    """A stranger, then the half brother, then father and brother with the warning; the pair itself is a button."""
    reply = told(farm(), "10")
    assert reply.lines[0] == "Doe 10 to which buck? The least inbred kits first."
    assert [line.split(":")[0] for line in reply.lines[1:3]] == ["20", "12"]
    assert {line.split(":")[0] for line in reply.lines[3:] if "25.0 % inbred" in line and "Too close" in line} == {"3", "11"}
    assert reply.choices[0].says == "10 x 20?"


def test_who_leaves_or_is_disqualified_is_no_mate() -> None:
    """For sale, to be culled, or with a disqualifying fault: not named; of another breed only where her own has none."""
    barn = farm().say("for_sale", who="20", on=ago(3)).say("planned", who="12", what="cull")
    barn.say("fault", who="3", fault="white toenail", disqualifies=True, on=ago(3))
    assert [line.split(":")[0] for line in told(barn, "10").lines[1:]] == ["11"]
    assert told(barn, "40").lines[0].startswith("No grown buck of the breed of Doe 40 is free; of other breeds")
    barn.say("sold", who="11", on=ago(1))
    assert told(barn, "10").lines == ("No grown buck on the farm is free for Doe 10.",)


def test_what_speaks_against_the_animal_itself_stands_once() -> None:
    """A doe bred already is told so, under the list."""
    lines = told(farm().say("bred", doe="10", buck="20", on=ago(5)), "10").lines
    assert [line for line in lines if "was bred" in line] == [lines[-1]]
    assert told(farm(), "20").lines[0].startswith("Buck 20 to which doe?")


def test_next_does_with_their_bucks() -> None:
    """Open does each with a buck; one far from all bucks is told; the rest by name; none open says so."""
    barn = farm()
    lines = next_does(barn.seen, None).lines
    assert lines[0] == "The open does, the best first."
    assert any("10: to 20, kits 0.0 % inbred" in line for line in lines)
    assert any("40: to " in line and "(another breed)" in line for line in lines)
    for tag in ("12", "20"):
        barn.say("sold", who=tag, on=ago(1))
    assert any("10: no buck here is far enough from her" in line for line in next_does(barn.seen, None).lines)
    for tag in ("51", "52", "53"):
        barn.doe(tag)
    assert next_does(barn.seen, None).lines[-1].startswith("Open too: ")
    assert next_does(Barn().seen, None).lines == ("No doe is open: each grown one is bred, nurses or is to go.",)


@pytest.mark.parametrize(("kind", "came"), [(None, "due about"), ("missed", "she missed")])
def test_whom_she_was_bred_to(kind: str | None, came: str) -> None:
    """The last mating and what came of it; from either side; none is said too."""
    barn = farm().say("bred", doe="10", buck="20", on=ago(33))
    barn = barn.say(kind, doe="10", on=ago(0)) if kind else barn
    assert came in bred_to(barn.seen, barn.find("10")).text
    assert bred_to(barn.seen, barn.find("20")).text.startswith("Buck 20 was last bred to 10 ")
    assert "no mating on the book" in bred_to(barn.seen, barn.find("1")).text


def test_the_question_finds_its_answer() -> None:
    """The words decide; an animal of unknown sex is asked about; of no animal at all the way to ask is told."""
    barn = farm().say("animal", tag="50", breed="Rex")
    assert ask(barn, "pair", said="who should I breed next").lines[0].startswith("The open does")
    assert ask(barn, "pair", who="10", said="who should I breed 10 to").lines[0].startswith("Doe 10 to which buck?")
    assert "no mating" in ask(barn, "pair", who="10", said="who is 10 bred to").text
    assert "a doe or a buck?" in ask(barn, "pair", who="50", said="who should I breed 50 to").text
