"""What can't be in the family book, colors included, in a breeder's words."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from core.herd.state import Herd
from core.notes.listen import Heard, listen
from core.notes.reading import Message
from core.notes.replay import book
from core.reports.answers import answer
from core.reports.family import family_problems, impossible_colors, parents_note
from tests.core.reports.notes import entry
from tests.farm import ago
from tests.herds import Barn

AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")


def family() -> Barn:
    """Two blacks and their kits, the first three tagged."""
    barn = Barn().doe("15", color="black", name="Juno").buck("7", color="black").litter("15", "7", 100, 4, weaned=4)
    return barn.kits("15", "R1 R2 R3", 100).say("color", who="R1", color="black")


def test_a_family_of_sound_colors_has_no_problem() -> None:
    """Blues may come of blacks."""
    assert family_problems(family().say("color", who="R2", color="blue").seen) == ()


def test_a_color_that_cannot_be_names_the_animals_and_the_notes() -> None:
    """A chestnut of two blacks: who can't stand together, what to send, and the notes that told the colors."""
    barn = family().say("color", who="R2", color="chestnut")
    notes = [entry("R2 is chestnut", "color", 3, who="R2", color="chestnut"), entry("R1 is black", "color", 4, who="R1", color="black")]
    [found] = family_problems(barn.seen, notes)
    assert found.text == (
        "15 Juno (black), 7 (black) and R2 (chestnut): these colors can't all be right in one family. Send the right parents, or the right color: R2 is black"
    )
    assert (found.code, found.tags, [one.text for one in found.notes]) == ("colors", ("15", "7", "R2"), ["R2 is chestnut"])
    assert found.lines(barn.seen)[1] == "  Sun 22 Nov: R2 is chestnut"
    assert found.document()["code"] == "colors"
    assert family_problems(barn.seen, about=barn.find("R1")) == ()
    assert family_problems(barn.seen, about=barn.find("7")) == family_problems(barn.seen)


def test_several_kits_that_cannot_be_are_one_problem() -> None:
    """The parents are told once, with all the kits that don't fit."""
    barn = family().say("color", who="R2", color="chestnut").say("color", who="R3", color="opal")
    assert [[barn.herd.animals[key].tag for key in keys] for keys in impossible_colors(barn.seen)] == [["15", "7", "R2", "R3"]]


def test_an_untagged_kit_is_told_by_its_litter() -> None:
    """It has no tag to be named by."""
    barn = family().say("litter_colors", doe="15", colors=(("black", 3), ("opal", 2)), on=ago(70))
    [found] = family_problems(barn.seen)
    assert "15 Juno (black), 7 (black) and 2 opal kits of 15 Juno's litter of Mon 17 Aug: these colors" in found.text


def test_a_parent_younger_than_its_kit_is_told() -> None:
    """The book's own problems come first."""
    barn = Barn().doe("15", age=50).doe("16", age=200, dam="15")
    [found] = family_problems(barn.seen)
    assert found.text == (
        "15 is told as a parent of 16 but is younger. Send the right birthday, or the right parents: new doe 16 out of 14 by 3"
    )


def heard(*texts: str) -> list[Heard]:
    """These messages one after the other, as the chat hears them."""
    known, told = book(Herd()), []
    for number, text in enumerate(texts):
        told.append(listen(known, Message(text, AT + timedelta(minutes=number), "ann", "barn", str(number)), answer))
        known = told[-1].book
    return told


DOE_BUCK = ("new doe 14 mini rex born 2025-03-04", "new buck 3 mini rex born 2025-03-04")


def test_in_the_chat_an_animal_that_is_its_own_ancestor_is_told_with_the_notes() -> None:
    """Its card and pedigree say so and name every note that told it; the note to send is one that is read."""
    told = heard(*DOE_BUCK, "new doe 33 mini rex out of 14 by 3", "new doe 14 out of 33 by 3", "card 14", "pedigree 33", "flags")
    for answered in told[-3:]:
        lines = answered.reply.lines
        at = next(at for at, line in enumerate(lines) if "are told as each other's ancestors" in line)
        assert [line.split(": ", 1)[1] for line in lines[at + 1 : at + 4]] == [
            DOE_BUCK[0],
            "new doe 33 mini rex out of 14 by 3",
            "new doe 14 out of 33 by 3",
        ]


@pytest.mark.parametrize(
    ("notes", "says"),
    [
        (("new doe 33 mini rex out of 14 by 3", "33 was born 2024-09-04"), "14 is told as a parent of 33 but is younger."),
        (("new doe 33 mini rex out of 14 by 3", "new buck 14", "yes"), "14 is of the wrong sex to be that parent of 33."),
    ],
)
def test_in_the_chat_a_parent_that_cannot_be_is_told_with_the_notes(notes: tuple[str, ...], says: str) -> None:
    """Younger than its kit, or of the wrong sex: the pedigree of the kit says so, under it the notes."""
    lines = heard(*DOE_BUCK, *notes, "pedigree 33")[-1].reply.lines
    at = next(at for at, line in enumerate(lines) if line.startswith(says))
    assert any("new doe 33 mini rex out of 14 by 3" in line for line in lines[at + 1 :])


def test_what_is_to_be_sent_is_read() -> None:
    """The example note tells parents: sent, it puts the family right."""
    wrong = (*DOE_BUCK, "new doe 15 mini rex born 2024-01-01", "new doe 33 mini rex out of 14 by 3", "33 was born 2024-09-04")
    assert parents_note(heard(*wrong)[-1].book.herd.animals["33"]) == "new doe 33 out of 14 by 3"
    right = heard(*wrong, "new doe 33 out of 15 by 3", "yes")[-1].book.herd
    assert right.animals["33"].dam == "15"
    assert parents_note(Barn().doe("14").find("14")) == "new doe 14 out of 15 by 3"
    assert parents_note(Barn().buck("3").find("3")) == "new buck 3 out of 14 by 7"
