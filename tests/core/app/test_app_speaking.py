"""What is answered to a spoken note: noted where it is sure, shown where it is not, and what its buttons do."""

from __future__ import annotations

from datetime import timedelta

from core.app import Ears, Message
from core.app.book import App
from core.app.speaking import DISCARDED, NO_NOTE, spoken
from core.reply import Reply
from tests.core.app.conftest import AT, Say

LATER = AT + timedelta(days=40)


def hear(app: App, first: str, second: str | None = None) -> Reply:
    """A recording of message 77, sent some days after the farm began."""
    return app.hear_spoken(Ears(first, second), Message("", LATER, "ann", "c", "77"))


def press(app: App, reply: Reply, label: str) -> Reply:
    """What is answered to the button of that label, pressed two days later."""
    waits = spoken(next(choice.says for choice in reply.choices if choice.label == label))
    assert waits is not None
    return app.answer_spoken(waits, Message("", LATER + timedelta(days=2), "ann", "c", "99"))


def count(app: App) -> int:
    """How many notes are in the journal."""
    return len(app._hearing.book().notes)


def test_both_ears_agree(app: App, say: Say) -> None:
    """It is noted at once, and the reply begins with what was heard."""
    say("new doe 12")
    say("new buck 3")
    say("bred 12 to 3", days=9)
    reply = hear(app, "Doe 12 kindled 8.", "doe twelve kindled eight")
    assert reply.lines[:2] == ("Heard: “Doe 12 kindled 8.”", "Doe 12: 8 born, 8 alive.")
    assert app._hearing.book().notes[-1].text == "Doe 12 kindled 8."


def test_one_ear_alone_is_shown(app: App, say: Say) -> None:
    """Nothing is noted until its button is pressed; the button says the note as it was spoken, then."""
    say("new doe 12")
    reply = hear(app, "12 weighed 9 pounds 4 ounces")
    assert reply.lines[0] == "Heard: “12 weighed 9 pounds 4 ounces”"
    assert reply.lines[1] == "Not noted yet. It would be:"
    assert [choice.label for choice in reply.choices] == ["Save", "Fix", "Discard"]
    assert count(app) == 1
    assert press(app, reply, "Save").text.startswith("Doe 12: 9 lb 4 oz.")
    note = app._hearing.book().notes[-1]
    assert (note.text, note.at, note.number) == ("12 weighed 9 pounds 4 ounces", LATER, "77")


def test_an_animal_that_is_not_there(app: App, say: Say) -> None:
    """The one that sounds like it is offered, in place of what was heard."""
    say("new doe 14")
    reply = hear(app, "40 weighed 9 pounds 4 ounces, and a long word about how well she looks today")
    assert reply.lines[1:] == ("Not noted yet.", "I don't know an animal “40”. Did you mean:")
    assert [choice.label for choice in reply.choices][1:] == ["Fix", "Discard"]
    assert reply.choices[0].label.startswith("14 weighed 9 pounds 4 ounces")
    assert reply.choices[0].label.endswith("…")


def test_two_ears_that_differ(app: App, say: Say) -> None:
    """What the other heard is a button of its own."""
    say("new doe 12")
    reply = hear(app, "12 weighed 9 pounds 4 ounces", "12 weighed 9 pounds 5 ounces")
    assert reply.lines[-1] == "Or did you mean:"
    assert [choice.label for choice in reply.choices] == ["Save", "12 weighed 9 pounds 5 ounces", "Fix", "Discard"]


def test_no_note(app: App, say: Say) -> None:
    """Silence, talk, and a number that says nothing: no record, and only the last can be put right."""
    assert hear(app, "") == Reply((NO_NOTE,))
    talk = hear(app, "The tractor will not start again.")
    assert (talk.lines[1], talk.choices) == (NO_NOTE, ())
    assert [choice.label for choice in hear(app, "14 14").choices] == ["Fix", "Discard"]
    say("new doe 31")
    odd = hear(app, "W831, 4 pounds 6 ounces.", "thirty one weighed four pounds six ounces")
    assert odd.lines[1] == "I heard no note. Did you mean:"
    assert odd.choices[0].label == "thirty one weighed four pounds six ounces"
    assert count(app) == 1


def test_a_question_is_answered_at_once(app: App, say: Say) -> None:
    """Nothing comes of mishearing it but another answer."""
    say("new doe 12")
    reply = hear(app, "what is due")
    assert reply.lines[0] == "Heard: “what is due”"
    assert len(reply.lines) > 1


def test_what_is_asked_is_told_before_it_is_saved(app: App, say: Say) -> None:
    """Saved, the note asks as a typed one does."""
    say("new doe 12")
    reply = hear(app, "12 kindled")
    assert reply.lines[1] == "Not noted yet."
    assert reply.lines[2].startswith("I would ask: How many")
    assert press(app, reply, "Save").text.startswith("How many")


def test_discard(app: App, say: Say) -> None:
    """It is let go; other buttons are not about spoken notes."""
    say("new doe 12")
    assert press(app, hear(app, "12 weighed 9 pounds 4 ounces"), "Discard") == Reply((DISCARDED,))
    assert count(app) == 1
    assert spoken("undo") is None


def test_what_is_typed_instead_teaches_a_name(app: App, say: Say) -> None:
    """What was heard is kept in the journal, and the next time the name is heard."""
    say("new doe 12 named Juno")
    fix = press(app, hear(app, "You know weighed 9 pounds"), "Fix")
    assert fix.lines == ("Then please type it as it should be. I heard: “You know weighed 9 pounds”",)
    say("Juno weighed 9 pounds", days=42)
    say("new doe 15", days=39)
    reply = hear(app, "You know weighed 9 pounds 1 ounce")
    assert reply.lines[0] == "Heard: “Juno weighed 9 pounds 1 ounce”"


def test_what_an_ear_is_told(app: App, say: Say) -> None:
    """The farm's tags."""
    say("new doe 12 named Juno")
    assert app.primer().names == ("Juno",)
