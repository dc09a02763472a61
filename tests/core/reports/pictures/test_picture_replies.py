"""Questions that are answered with a picture."""

from __future__ import annotations

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.reply import Attached, Choice, Reply
from core.reports.answers import answered
from tests.farm import TODAY
from tests.herds import Barn, two_sires


def ask(said: str, herd: Herd, **fields: object) -> Reply:
    """The answer to a question as it was typed."""
    return answered(Query(about="picture", **fields), herd, TODAY, (), said)  # type: ignore[arg-type]


def test_a_picture_comes_with_its_words() -> None:
    """The words that stand under it are what it shows."""
    told = ask("picture of 14", Barn().doe("14").weigh("14", 4000).herd, who="14")
    assert told.attached == (Attached("picture", "growing", "14", "growing-14.png", told.text),)
    assert told.text.startswith("Doe 14: 1 weight.")


def test_where_there_is_nothing_to_show_words_serve() -> None:
    """They tell how there would be."""
    assert ask("picture of 14", Barn().doe("14").herd, who="14") == Reply(("Doe 14 was never weighed. Tell me: 14 4-6",))


def test_a_question_that_leaves_it_open_gets_a_choice() -> None:
    """The first thing there is to look at."""
    told = ask("picture", two_sires().herd)
    assert told.lines == ("Which picture?",)
    assert told.choices[0].says.startswith("picture of R")


def test_an_empty_book_has_nothing_to_draw() -> None:
    """How to begin."""
    assert ask("picture", Herd()) == Reply(("Nothing to draw yet. Weigh one: 31 4-6",))


def test_a_file_has_a_name_for_any_machine() -> None:
    """A tag that was used twice, or that somebody made up."""
    herd = Barn().doe("A/9").weigh("A/9", 4000).herd
    (file,) = ask("picture", herd, who="A/9").attached
    assert file.name == "growing-a-9.png"


def test_weights_and_cards_lead_to_the_picture() -> None:
    """A button under each, where there are weights."""
    herd = Barn().doe("14").weigh("14", 4000).doe("15").herd
    button = Choice("Picture", "picture of 14")
    for about in ("weights", "card"):
        assert button in answered(Query(about=about, who="14"), herd, TODAY).choices
        assert all(one.label != "Picture" for one in answered(Query(about=about, who="15"), herd, TODAY).choices)
