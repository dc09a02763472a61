"""Who may do what: owners, helpers and lookers, let in by a link that works once."""

from __future__ import annotations

import pytest

from bot.telegram.words import IN_PRIVATE, wish
from core.app.members import LOOKS_ONLY, OWNERS_ONLY
from core.app.post import REFUSALS_A_DAY
from core.reply import Choice, Reply
from tests.bot.telegram.served import Served
from tests.standin import StandIn


def invited(barn: Served, role: str) -> str:
    """What the link sends when somebody follows it."""
    link = barn.ask("Ann", f"invite {role}").splitlines()[-1]
    assert link.startswith("https://t.me/")
    return f"/start {link.split('start=')[1]}"


def roles(barn: Served) -> list[tuple[str, str]]:
    """Who is on the farm."""
    return sorted((member.name, member.role) for member in barn.app.members())


def test_a_helper_writes_notes(barn: Served) -> None:
    """And invites nobody."""
    assert "You can write notes" in barn.ask("Bo", invited(barn, "helper"))
    assert barn.ask("Bo", "14 weighed 8-2").startswith("Doe 14: 8 lb 2 oz.")
    for words in ("invite helper", "remove Ann from the people"):
        assert barn.ask("Bo", words) == OWNERS_ONLY
    assert roles(barn) == [("Ann", "owner"), ("Bo", "helper")]


def test_an_invitation_works_once_and_for_a_day(barn: Served, standin: StandIn) -> None:
    """Two at once do not end each other; one used, or a day old, is none. It is kept nowhere as it was told."""
    first, second = invited(barn, "helper"), invited(barn, "helper")
    assert "Welcome" in barn.ask("Bo", first)
    assert "private" in barn.ask("Eve", first)
    standin.world.pass_time(25 * 3600)
    assert "private" in barn.ask("Eve", second)
    assert roles(barn) == [("Ann", "owner"), ("Bo", "helper")]
    with barn.app._engine.begin() as connection:
        kept = repr(connection.exec_driver_sql("select * from setup_codes").all())
    assert "helper" in kept
    assert not any(code.split()[1].replace("-", "") in kept.replace("-", "") for code in (first, second))


def test_a_looker_asks_and_writes_nothing(barn: Served, standin: StandIn) -> None:
    """Neither by words nor by somebody else's buttons."""
    note = standin.wait_answer(standin.say("Ann", "14 weighed 8-2"))
    assert "You can ask" in barn.ask("Lu", invited(barn, "looker"))
    before = barn.notes()
    assert "14" in barn.ask("Lu", "card of 14")
    for words in ("14 weighed 9-2", "undo", "14 weighs 9 lb, who is due?", "hello there", "keep 14"):
        assert barn.ask("Lu", words) == LOOKS_ONLY
    assert barn.notes() == before
    assert note["text"].startswith("Doe 14: 8 lb 2 oz.")


def test_buttons_in_a_group_obey_the_role(barn: Served, standin: StandIn) -> None:
    """A looker's press on what is for all is refused in words, and nothing is recorded."""
    barn.ask("Lu", invited(barn, "looker"))
    group = standin.group("Barn", "Ann", "Lu")
    asked = barn.send("Ann", Reply(("Is she heavy?",), (Choice("Yes", "14 weighed 8-2"),)), chat=group["id"])
    standin.press("Lu", asked, "Yes")
    found = standin._wait(lambda: next((e for e in standin.answers(asked) if e["text"] == LOOKS_ONLY), None), "a refusal", 10)
    assert found["chat"]["id"] == group["id"]
    assert barn.app._hearing.book().herd.animals["14"].weights == ()


def test_people_are_told_removed_and_leave(barn: Served) -> None:
    """The last owner stays, whatever is wished."""
    barn.ask("Bo", invited(barn, "helper"))
    assert barn.ask("Ann", "/people").splitlines() == ["Ann: owner, does everything.", "Bo: helper, writes notes and asks."]
    assert "Nobody on the farm is called Cy." in barn.ask("Ann", "remove Cy from the people")
    assert "Bo is not on the farm any more." in barn.ask("Ann", "remove bo from our people")
    assert "private" in barn.ask("Bo", "14 weighed 8-2")
    assert "needs an owner" in barn.ask("Ann", "leave the farm")
    barn.ask("Di", invited(barn, "owner"))
    assert "not on the farm any more" in barn.ask("Ann", "leave the farm")
    assert roles(barn) == [("Di", "owner")]


def test_an_invitation_is_told_in_private(barn: Served, standin: StandIn) -> None:
    """In a group somebody else could use it; an unknown role lists those that there are."""
    standin.group("Barn", "Ann", "Eve")
    for words in ("/invite helper", "@barn_notes_bot invite helper", "/invite@barn_notes_bot helper"):
        assert standin.wait_answer(standin.say("Ann", words, chat="Barn"))["text"] == IN_PRIVATE
    assert barn.ask("Ann", "invite a friend").splitlines()[0] == "Invite whom? Say “invite owner”, “invite helper” or “invite looker”."


def test_a_stranger_reads_few_lines_a_day(barn: Served, standin: StandIn) -> None:
    """However much they write; a code still lets them in at any time."""
    code = invited(barn, "helper")
    for _ in range(REFUSALS_A_DAY):
        assert "private" in barn.ask("Eve", "hello")
    for _ in range(50):
        standin.say("Eve", "hello?")
    assert "Welcome" in standin.wait_answer(standin.say("Eve", code))["text"]
    assert len(standin.answers("Eve")) == REFUSALS_A_DAY + 1
    assert standin.answers("Eve")[-1]["text"].startswith("Welcome")


@pytest.mark.parametrize(
    "text", ["remove 14 from the people", "invited Bo to see 14", "people came by today", "leave the box in", "remove Moss from the farm"]
)
def test_notes_are_no_wishes(text: str) -> None:
    """Words of the barn stay notes."""
    assert wish(text) is None
