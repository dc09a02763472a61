"""What is said in answer to one note, however much was told since."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.listen import Heard, listen
from core.notes.reading import Message, ReplyTo
from core.notes.replay import Book, book
from core.notes.talk.about_note import GONE, LEFT, about
from core.reply import Reply

AT = datetime(2026, 3, 4, 13, 15, tzinfo=UTC)


class Barn:
    """A book that is told things, each a minute after the one before."""

    def __init__(self) -> None:
        self.book: Book = book(Herd())
        self.told = 0
        for text in ("new doe 14 nz", "new doe 15 nz", "new buck 3 nz", "bred 14 to 3 31 days ago"):
            self.say(text)

    def say(self, text: str, to: Note | None = None, *, author: str = "ann", days: float = 0, edit: int = 0) -> Heard:
        """What the farm makes of it."""
        self.told += 0 if edit else 1
        answers = about(to) if to is not None else None
        sent = Message(text, AT + timedelta(minutes=self.told, days=days), author, "c", str(self.told), edit, answers)
        heard = listen(self.book, sent, lambda query, asked, at: Reply(("asked",)))
        self.book = heard.book
        return heard

    def facts(self, kind: str) -> list[object]:
        """The facts of that kind that stand."""
        return [entry.fact for entry in self.book.standing() if entry.fact.kind == kind]


@pytest.fixture
def barn() -> Barn:
    """Two does and a buck; 14 is due."""
    return Barn()


def test_undo_takes_back_that_very_note(barn: Barn) -> None:
    """Not the last one, and whoever told it."""
    first = barn.say("14 weighed 8-2").note
    barn.say("15 weighed 9-0")
    reply = barn.say("undo", first, author="bo").reply
    assert reply.text == "Taken back: Doe 14: 8 lb 2 oz."
    assert [fact.who for fact in barn.facts("weighed")] == ["15"]  # type: ignore[attr-defined]


def test_what_is_gone_is_not_taken_back_again(barn: Barn) -> None:
    """An old button, or one pressed after a correction, says so and leaves everything else alone."""
    barn.say("15 weighed 9-0")
    first = barn.say("14 weighed 8-2").note
    barn.say("undo", first)
    barn.say("15 ate well")
    for words in ("undo", "fix", "15 not 14"):
        assert barn.say(words, first).reply.text == GONE
    assert len(barn.facts("weighed")) == 1


def test_a_correction_puts_that_very_note_right(barn: Barn) -> None:
    """`15 not 14` in answer to an older note."""
    first = barn.say("14 weighed 8-2").note
    barn.say("14 ate well")
    barn.say("15 not 14", first)
    assert [fact.who for fact in barn.facts("weighed")] == ["15"]  # type: ignore[attr-defined]


def test_words_are_about_the_animal_of_the_note(barn: Barn) -> None:
    """`lost one` under the kindling of 14, although 15 was spoken of since."""
    birth = barn.say("14 kindled 8").note
    barn.say("15 weighed 9-0")
    barn.say("she lost one", birth)
    (lost,) = barn.facts("kits_lost")
    assert lost.doe == "14"  # type: ignore[attr-defined]


def test_an_answer_to_its_question(barn: Barn) -> None:
    """Although another question is open since."""
    first = barn.say("14 kindled").note
    assert first.ask is not None
    barn.say("weaned 15")
    barn.say("8", first)
    (birth,) = barn.facts("kindled")
    assert (birth.doe, birth.born) == ("14", 8)  # type: ignore[attr-defined]


def test_fix_asks_and_the_next_words_take_its_place(barn: Barn) -> None:
    """The note as it should be is read as on its own day, and what it said no longer counts."""
    first = barn.say("14 weighed 8-2").note
    question = barn.say("fix", first).reply.text
    assert question.startswith("It says “14 weighed 8-2”. What should it say?")
    reply = barn.say("15 weighed 9-1", days=0.5).reply
    assert reply.lines == ("Doe 15: 9 lb 1 oz (yesterday).", "Was: Doe 14: 8 lb 2 oz.")
    (weighed,) = barn.facts("weighed")
    assert (weighed.who, weighed.on.isoformat()) == ("15", "2026-03-04")  # type: ignore[attr-defined]


def test_fix_and_what_was_wrong(barn: Barn) -> None:
    """A correction does as well."""
    first = barn.say("14 weighed 8-2").note
    barn.say("15 weighed 9-0")
    barn.say("fix", first)
    barn.say("it was 8-4")
    assert sorted(fact.grams for fact in barn.facts("weighed")) == [3742, 4082]  # type: ignore[attr-defined]


def test_fix_and_no_leaves_it(barn: Barn) -> None:
    """And so does a note that has gone in the meantime, and words that tell nothing."""
    first = barn.say("14 weighed 8-2").note
    barn.say("fix", first)
    assert barn.say("no").reply.text == LEFT
    barn.say("fix", first)
    assert "Still open: It says" in barn.say("hmm let me think").reply.text
    barn.say("undo", first)
    barn.say("fix", first)
    assert barn.facts("weighed") == []


def test_fix_of_a_note_taken_back_meanwhile(barn: Barn) -> None:
    """Nothing takes the place of nothing."""
    first = barn.say("14 weighed 8-2").note
    asked = barn.say("fix", first).note
    barn.say("undo", first)
    assert barn.say("14 weighed 8-4", asked).reply.text == GONE


def test_a_doubtful_new_wording_leaves_the_note_until_it_is_settled(barn: Barn) -> None:
    """What would be asked about is asked; a yes then takes it, anything unknown wants the whole note."""
    barn.say("14 weighed 8-0 2 days ago")
    first = barn.say("14 weighed 8-2").note
    barn.say("fix", first)
    doubt = barn.say("14 weighed 13-8").note
    assert doubt.ask is not None
    assert "Until then it stays as it was." in doubt.ask.text
    assert [fact.grams for fact in barn.facts("weighed")] == [3629, 3685]  # type: ignore[attr-defined]
    barn.say("99 weighed 8-2")
    assert [fact.grams for fact in barn.facts("weighed")] == [3629, 3685]  # type: ignore[attr-defined]
    barn.say("14 weighed 13-8")
    barn.say("yes")
    assert [fact.grams for fact in barn.facts("weighed")] == [3629, 6123]  # type: ignore[attr-defined]


def test_an_edited_note_is_meant_as_it_is_now(barn: Barn) -> None:
    """Undo under the first answer takes back what the message says by now."""
    first = barn.say("14 weighed 8-2").note
    barn.say("14 weighed 8-4", edit=1)
    assert barn.say("undo", first).reply.text == "Taken back: Doe 14: 8 lb 4 oz."
    assert barn.facts("weighed") == []


def test_a_note_that_nobody_knows_is_no_answer(barn: Barn) -> None:
    """Then the words stand on their own."""
    heard = listen(barn.book, Message("14 weighed 8-2", AT, "ann", "c", "x", 0, ReplyTo("note", None, "999")), lambda *_: Reply(()))
    assert heard.reply.text == "Doe 14: 8 lb 2 oz."


def test_a_question_dropped_after_something_was_told(barn: Barn) -> None:
    """An old question can't be undone once its talk went on; one just asked can."""
    first = barn.say("14 kindled").note
    assert barn.say("undo", first).reply.text == "Dropped: “14 kindled”."
    again = barn.say("weaned 15").note
    barn.say("15 weighed 9-0")
    assert barn.say("undo", again).reply.text == GONE
    assert len(barn.facts("weighed")) == 1


def test_an_answer_to_the_question_after_fix(barn: Barn) -> None:
    """Words that tell nothing leave it open."""
    first = barn.say("14 weighed 8-2").note
    asked = barn.say("fix", first).note
    barn.say("hmm let me think", asked)
    assert [fact.grams for fact in barn.facts("weighed")] == [3685]  # type: ignore[attr-defined]
