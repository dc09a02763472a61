"""What can't be in the family book, colors included, in a breeder's words."""

from __future__ import annotations

from core.reports.family import family_problems, impossible_colors
from tests.core.reports.notes import entry
from tests.farm import ago
from tests.herds import Barn


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
        "15 Juno (black), 7 (black) and R2 (chestnut): these colors can't all be right in one family. Send the right color or the right parent."
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
    assert found.text == "15 is told as a parent of 16 but is younger. Send the right birthday, or the right parent of 16."
