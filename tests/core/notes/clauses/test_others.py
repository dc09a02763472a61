"""Other people's rabbits stay out of the book."""

from __future__ import annotations

import pytest

from core.notes.reader import read
from core.notes.reading import Message
from tests.core.notes.test_read_notes import AT, herd


def kinds(text: str) -> list[str]:
    """The kinds of the facts that the message gives."""
    return [fact.kind for fact in read(Message(text, AT), herd()).facts]


@pytest.mark.parametrize(
    "text",
    [
        "My cousin's doe had nine last night, lucky woman",
        "The neighbor told me she lost four kits to the heat",
        "Our friend Ruth lost her whole litter to rats",
        "My daughter's doe had six",
        "My uncle had two die in the heat, and here I sit waiting on Clover",
    ],
)
def test_what_befell_other_peoples_rabbits_is_no_fact(text: str) -> None:
    """A person at the head of a statement without an animal of the book owns what is told."""
    assert set(kinds(text)) <= {"remark"}


def test_a_person_who_is_ill_is_no_animal() -> None:
    """Between a person and the sign stand only small words; an animal that ails stays one."""
    assert "ailment" not in kinds("Moss is out on the grass, my grandson has a runny nose")
    assert "ailment" in kinds("My wife noticed Moss has a runny nose")


def test_words_of_another_about_the_animal_spoken_of_are_kept() -> None:
    """What the neighbour reports of the doe named before is read."""
    assert "kits_lost" in kinds("Looked in on Sorrel. The neighbor says she lost two kits to the cold.")


def test_a_deed_of_the_house_is_read() -> None:
    """A husband who finds a dead kit under the doe spoken of found it here."""
    assert "kits_lost" in kinds("Sorrel is grumpy. My husband found two dead kits in her nest.")


def test_an_own_doe_named_beside_a_person_is_read() -> None:
    """An animal of the book named there is what the words are about."""
    assert "kindled" in kinds("My sister saw that Juno kindled 6")
