"""What stands before a note, and what only looks like one: polite heads, plans in the ing form, times gone by, deeds taken back."""

from __future__ import annotations

import pytest

from core.notes.reader import read
from core.notes.reading import Message, Reading
from tests.core.notes.test_read_notes import AT, herd


def said(text: str) -> Reading:
    """What the message gives."""
    return read(Message(text, AT), herd())


def kinds(text: str) -> list[str]:
    """The kinds of the facts that the message gives."""
    return [fact.kind for fact in said(text).facts]


@pytest.mark.parametrize(
    ("headed", "bare"),
    [
        ("please sold R22 for 40", "sold R22 for 40"),
        ("pls, R21 5 lb 3", "R21 5 lb 3"),
        ("okay so Moss is off feed", "Moss is off feed"),
        ("please what if I sold R22", "what if I sold R22"),
        ("would you please note that R21 weighs 5 lb", "R21 weighs 5 lb"),
        ("can you put down R22 weighs 5 lb", "R22 weighs 5 lb"),
        ("put down that R22 weighs 5 lb", "R22 weighs 5 lb"),
        ("put down that Moss bit me at chores", "Moss bit me at chores"),
        ("record Sorrel has 6 kits", "Sorrel has 6 kits"),
        ("can u log Sorrel has 6 kits", "Sorrel has 6 kits"),
    ],
)
def test_a_head_before_a_note_changes_nothing(headed: str, bare: str) -> None:
    """Politeness, and a wish to write it down, leave the facts as they are."""
    assert said(headed).facts == said(bare).facts


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("log Sorrel", "query"),
        ("please", "remark"),
        ("please ! ", "remark"),
        ("please , : fetch hay", "remark"),
        ("note Moss is lovely", "remark"),
        ("put down R22", "died"),
        ("please call the vet about prices", "remark"),
    ],
)
def test_a_head_without_a_note_behind_it_is_read_as_it_stands(text: str, kind: str) -> None:
    """`log Sorrel` asks for her journal; `put down R22` is a death; a wish to nobody is a remark."""
    assert kinds(text) == [kind]


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("weaning Thistle on friday", "remind"),
        ("palpating 15 tomorrow", "remind"),
        ("breeding 22 to Moss on sunday", "planned"),
        ("breeding 22 to Moss tomorrow", "planned"),
        ("weaning Thistle last friday", "weaned"),
        ("weaning today: Thistle, 5 kits", "weaned"),
        ("breeding 22 to Moss on sunday, 2 falls", "bred"),
        ("breeding 22 to Moss yesterday", "bred"),
        ("weaning Thistle and cleaning her cage on friday", "remark"),
    ],
)
def test_work_in_the_ing_form_with_a_day_to_come_is_no_deed(text: str, kind: str) -> None:
    """A day to come behind the animal makes it a plan; a day gone by, or how it went, a deed."""
    assert kind in kinds(text) or (kind == "remark" and "weaned" not in kinds(text))


def test_a_time_gone_by_is_no_birth_of_today() -> None:
    """`last time` is kept as words, a month gone by is asked about, a comparison is neither."""
    assert kinds("Juno had 7 the last time") == ["remark"]
    assert kinds("Sorrel lost 2 last time") == ["remark"]
    assert "kindled" not in kinds("Juno had 7 last march")
    asked = said("Juno kindled 7 last march").ask
    assert asked is not None
    assert asked.why == "when"
    assert kinds("Juno kindled 7 as last time") == ["kindled"]


def test_a_mating_that_the_next_breath_takes_back_is_only_a_refusal() -> None:
    """The refusal keeps the buck and the day; falls counted, another doe or another buck leave the mating."""
    (refused,) = said("bred 22 to Moss yesterday, she wouldn't lift").facts
    assert refused.kind == "refused"
    assert (getattr(refused, "buck"), getattr(refused, "on").day) == ("5", 24)  # noqa: B009 - a field of its kind only
    assert kinds("bred 22 to Moss, 2 falls, then she wouldn't lift") == ["bred", "refused"]
    assert kinds("bred 22 to Moss. 15 refused Flint") == ["bred", "refused"]
    assert kinds("bred 22 to Moss and 15 to Flint, she wouldn't lift").count("bred") >= 1


@pytest.mark.parametrize(
    "text",
    ["R22 sold? no", "R22 sold? nope!", "Moss is next to be culled", "R21 was to be sold", "Sorrel lost 2 teeth", "R22 lost 3 claws"],
)
def test_what_was_denied_or_lies_ahead_is_no_loss(text: str) -> None:
    """Asked and answered no, still to be done, or a part of the body: nobody leaves the book."""
    assert set(kinds(text)) <= {"remark"}


def test_a_breeding_that_failed_is_no_plan() -> None:
    """The word alone plans nothing."""
    assert "planned" not in kinds("breeding attempted, 22 to Moss")


def test_who_has_it_now_tells_what_lost_and_gave_mean() -> None:
    """A buyer makes it a sale, a buck of the book a mating."""
    assert kinds("lost R22 to a customer from town") == ["sold"]
    assert kinds("lost R22 yesterday to a good customer") == ["sold"]
    assert kinds("lost R22 to a hawk") == ["died"]
    assert kinds("lost R22, and a customer called") == ["died"]
    assert kinds("gave 15 to Moss for the morning") == ["bred"]
    assert kinds("gave 15 to my cousin") == ["given_away"]
    assert kinds("gave 15 to 22") != ["bred"]
