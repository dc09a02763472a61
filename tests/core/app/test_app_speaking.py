"""What is answered to a spoken note: noted where it is sure, shown where it is not, and what its buttons do."""

from __future__ import annotations

from datetime import timedelta

from core.app import Ears, Message
from core.app.book import App
from core.app.speaking import DISCARDED, NO_NOTE, answered, spoken
from core.reply import Reply
from tests.core.app.conftest import AT, Say


def hear(app: App, first: str, second: str | None = None) -> Reply:
    """A recording of message 77, sent some days after the farm began."""
    return app.hear_spoken(Ears(first, second), Message("", AT + timedelta(days=40), "ann", "c", "77"), "a.ogg")


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
    waits = spoken(reply.choices[0].says)
    assert waits is not None
    assert answered(waits) is None
    assert waits.message("ann", "c") == Message("12 weighed 9 pounds 4 ounces", AT + timedelta(days=40), "ann", "c", "77")


def test_an_animal_that_is_not_there(app: App, say: Say) -> None:
    """The one that sounds like it is offered, in place of what was heard."""
    say("new doe 14")
    reply = hear(app, "40 weighed 9 pounds 4 ounces, and a long word about how well she looks today")
    assert "Did you mean one of these?" in reply.lines
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
    assert count(app) == 0


def test_a_question_is_answered_at_once(app: App, say: Say) -> None:
    """Nothing comes of mishearing it but another answer."""
    say("new doe 12")
    reply = hear(app, "what is due")
    assert reply.lines[0] == "Heard: “what is due”"
    assert len(reply.lines) > 1


def test_what_its_buttons_do(app: App, say: Say) -> None:
    """Discard lets it go, Fix asks for it typed; other buttons are not about spoken notes."""
    say("new doe 12")
    _, fix, discard = (spoken(choice.says) for choice in hear(app, "12 weighed 9 pounds 4 ounces").choices)
    assert fix is not None
    assert discard is not None
    assert answered(discard) == Reply((DISCARDED,))
    assert answered(fix) == Reply(("Then please type it as it should be. I heard: “12 weighed 9 pounds 4 ounces”",))
    assert (fix.file, discard.do) == ("a.ogg", "discard")
    assert spoken("undo") is None


def test_what_an_ear_is_told(app: App, say: Say) -> None:
    """The farm's tags."""
    say("new doe 12 named Juno")
    assert app.primer().names == ("Juno",)
