"""Answers that bring a paper along."""

from __future__ import annotations

from datetime import date

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.reply import Attached, Reply
from core.reports.answers import answered
from core.reports.papers.replies import TAKE_IN
from tests.farm import TODAY, small_herd


def ask(said: str, herd: Herd | None = None, **fields: object) -> Reply:
    """The answer to a question as it was typed."""
    return answered(Query(**fields), small_herd() if herd is None else herd, TODAY, (), said)  # type: ignore[arg-type]


def test_the_chores_come_as_a_calendar() -> None:
    """Where the question asks for one, and only then."""
    told = ask("send me the calendar", about="due")
    (file,) = told.attached
    assert told.lines == (file.alt, TAKE_IN)
    assert file == Attached("calendar", "chores", None, "chores.ics", "13 chores until Wed 9 Dec, for your calendar.")
    assert not ask("who is due", about="due").attached


def test_a_calendar_of_one_animal_for_some_days() -> None:
    """The key of the file says which."""
    (file,) = ask("calendar of 14", about="due", who="14", until=TODAY.replace(month=12)).attached
    assert file.key == "who=14&days=30"


def test_no_calendar_where_nothing_is_due() -> None:
    """Words instead."""
    told = ask("calendar", Herd(), about="due")
    assert told == Reply(("Nothing is due yet.",))


def test_cage_cards_come_as_a_paper() -> None:
    """Of those that were asked for, on the size that was named."""
    told = ask("cage cards for the bucks on A4", about="card", scope="bucks")
    (file,) = told.attached
    assert told.lines == ("2 cage cards to print.",)
    assert file == Attached("paper", "cards", "scope=bucks&size=a4", "cage-cards.pdf", "2 cage cards to print.")
    assert ask("print card 14", about="card", who="14").attached[0].key == "who=14"


def test_words_stay_words() -> None:
    """A card that nobody wants printed, even of a doe with paper in her nest."""
    assert not ask("card 14", about="card", who="14").attached
    assert not ask("how is 14 doing with shredded paper", about="card", who="14").attached


def test_no_paper_where_there_is_nothing_to_print() -> None:
    """Words instead: nobody there, or a stranger, whose cards are not everybody's."""
    assert ask("cage cards", Herd(), about="card").lines == (
        "There is nothing to print: no such animal sits in a cage of its own. Add one: new doe 40 mini rex born 3/4",
    )
    assert ask("cage card for 77", about="card").lines[0].startswith("77 is not on the book.")


def test_each_paper_can_be_asked_for() -> None:
    """In words, with what the question says about it."""
    asked = (
        ("pedigree of 31 as pdf, 5 generations", {"about": "pedigree", "who": "31"}, "pedigree", "who=31&generations=5"),
        ("litter record 16", {"about": "litters", "who": "16"}, "litter", "who=16"),
        ("print the litter of 16", {"about": "card", "who": "16"}, "litter", "who=16"),
        ("print the plan", {"about": "keep"}, "plan", None),
        ("chores sheet for 10 days", {"about": "due"}, "chores", "days=10"),
        ("print what is due until sunday", {"about": "due", "until": date(2026, 11, 29)}, "chores", "days=4"),
        ("print the crib", {"about": "help"}, "crib", None),
    )
    for said, query, about, key in asked:
        (file,) = ask(said, **query).attached
        assert (file.what, file.about, file.key) == ("paper", about, key), said


def test_words_where_the_paper_can_not_be() -> None:
    """Why not, with an example that works."""
    assert ask("pedigree as pdf", about="pedigree").lines == ("Whose pedigree? Name one: pedigree of 14",)
    assert ask("print the notes", about="journal").attached == ()
