"""Said again, denied or told beside a setting in one message: what stands of it."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import read


@pytest.mark.parametrize(
    ("text", "kind", "field", "value"),
    [
        ("weaned 16, 5 kits, i mean 4", "weaned", "count", 4),
        ("14 kindled 8 born no 9 born", "kindled", "born", 9),
        ("bought 3 bags no 4 bags feed", "feed_bought", "bags", 4),
        ("31 weighs four two", "weighed", "grams", 1871),
        ("weighed thirty one four to", "weighed", "grams", 1871),
        ("weighed thirty one to", "", "", None),
        ("fur type four to", "", "", None),
        ("weighed five to", "", "", None),
        ("put clover inC3", "moved", "cage", "C3"),
    ],
)
def test_the_number_said_last_stands(text: str, kind: str, field: str, value: object) -> None:
    """A counted number, or a weight whose ounces sound like a small word; a tag is no pounds."""
    facts, _ = read(text)
    assert [fact.get(field) for fact in facts if fact["kind"] == kind] == ([value] if kind else [])


def test_another_count_behind_a_no_is_left_to_be_asked_about() -> None:
    """ "5 kits no 3 bucks": another word behind the number says something else."""
    facts, _ = read("weaned 16, 5 kits, no 3 opal")
    assert all(fact.get("count") != 3 for fact in facts)


def test_a_score_that_cannot_be_stops_the_row() -> None:
    """In a row of scores each has to be one."""
    _, ask = read("bcs moss 2.5 clover 7")
    assert ask is not None


def test_a_setting_that_lacks_something_is_not_told_apart() -> None:
    """Beside another sentence a setting must be whole."""
    _, ask = read("feed is 22 and 23 a bag now. moss gets 1 cup")
    assert ask is not None


def test_small_talk_beside_a_setting_is_let_go_but_never_its_figures() -> None:
    """Words alone are dropped; a number stays in a remark or asks."""
    assert [fact["kind"] for fact in read("feed is 23 a bag now. highway robbery.")[0]] == ["setting"]
    facts, ask = read("feed is 23 a bag now. I remember when the whole county sold it for less than 9 somehow")
    assert ask is not None or any(fact["kind"] == "remark" for fact in facts)


@pytest.mark.parametrize("text", ["12 no losses", "12 lost none", "12 no deaths", "12 0 lost", "no kits lost under 12, 7 still there"])
def test_a_denied_loss_is_none(text: str) -> None:
    """Nothing is lost and nobody died."""
    assert not {fact["kind"] for fact in read(text)[0]} & {"kits_lost", "died"}
