"""Questions that are answered with a picture."""

from __future__ import annotations

import pytest

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.reply import Attached, Choice, Reply
from core.reports.answers import answered
from tests.farm import TODAY, small_herd, tell
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
    """One that grows, and the farm's pictures; each button leads to its picture."""
    herd = two_sires().herd
    told = ask("picture", herd)
    assert told.lines == ("Which picture?",)
    assert told.choices[0].says.startswith("picture of R")
    assert [ask(choice.says, herd).attached[0].about for choice in told.choices[1:4]] == ["winter", "dams", "bucks"]
    assert ask("picture", Barn().doe("14").weigh("14", 4000).herd).choices[0].says == "picture of 14"
    assert ask("picture", Barn().doe("14").herd).choices[0].says == "picture of the winter feed"


def test_an_empty_book_has_nothing_to_draw() -> None:
    """How to begin."""
    assert ask("picture", Herd()).lines[0].startswith("Nothing to draw yet.")


@pytest.mark.parametrize(
    ("said", "fields", "about"),
    [
        ("picture of the dams", {}, "dams"),
        ("chart of the does", {"scope": "does"}, "dams"),
        ("plot the mini rex", {"scope": "bucks", "breed": "New Zealand"}, "bucks"),
        ("graph of the feed this winter", {}, "winter"),
        ("picture of this week", {}, "week"),
        ("picture of 11", {"who": "11"}, "litters"),
        ("picture of the litters of 11", {"who": "11"}, "litters"),
        ("picture of 11's litter", {"who": "11"}, "litter"),
        ("picture of R0", {"who": "R0"}, "growing"),
    ],
)
def test_words_choose_the_picture(said: str, fields: dict[str, str], about: str) -> None:
    """The narrow before the broad; an animal's own before the farm's."""
    (file,) = ask(said, two_sires().herd, **fields).attached
    assert file.about == about


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


def test_lists_lead_to_their_picture() -> None:
    """A button under the feed, the chores, the bucks and does and a doe's litters; none where there is nothing to draw."""
    herd = two_sires().litter("11", "7", 20, 6).herd
    for fields, says in (
        ({"about": "feed"}, "picture of the winter feed"),
        ({"about": "compare", "scope": "bucks"}, "picture of the bucks"),
        ({"about": "compare", "scope": "does", "breed": "New Zealand"}, "picture of the New Zealand does"),
        ({"about": "litters", "who": "11"}, "picture of the litters of 11"),
    ):
        assert answered(Query(**fields), herd, TODAY).choices[-1] == Choice("Picture", says)  # type: ignore[arg-type]
    few, many = small_herd(), small_herd()
    for number in range(12):
        many = tell(many, "remind", text=f"chore {number}", on=TODAY)
    assert answered(Query(about="due"), many, TODAY).choices == (Choice("Picture", "picture of the week"),)
    assert answered(Query(about="due", until=TODAY), few, TODAY).choices == ()
    for about, scope in (("due", None), ("compare", "does")):
        assert answered(Query(about=about, scope=scope), Herd(), TODAY).choices == ()


def test_photos_are_no_drawing() -> None:
    """Which there are the door puts in; the words name whose."""
    told = ask("photos of 14", Barn().doe("14", name="Juno").weigh("14", 4000).herd, who="14")
    assert told.attached == (Attached("photo", "photos", "14", "14-photo", "Photos of 14 Juno."),)


def test_a_picture_of_a_stranger_is_asked_about() -> None:
    """A tag that nobody knows is no question for the farm's pictures."""
    assert ask("picture of 99", Barn().doe("14").herd).lines[0].startswith("99 is not on the book.")
