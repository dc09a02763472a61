"""What if: the difference against the plan as it stands."""

from __future__ import annotations

from datetime import date

import pytest

from core.notes.fact import to_json
from core.notes.kinds.query import Query
from core.reports.evidence import evidence
from core.reports.keep_or_cull import keep_or_cull
from core.reports.winter.supposed import supposed
from core.reports.winter.what_if import HOW_TO, what_if
from tests.farm import TODAY, ago
from tests.herds import Barn


def farm() -> Barn:
    """Two breeds: does 14 (Juno), 9 and 12, bucks 3 (Flint) and 7, a grow-out 31, and one that is gone."""
    barn = Barn().doe("14", name="Juno").doe("9", color="opal").doe("12").buck("3", name="Flint").buck("7").doe("50", breed="Rex")
    for doe in ("14", "9", "12"):
        barn.litter(doe, "3", 200, 7, weaned=6).say("sold", litter_of=doe, count=6, on=ago(150))
    return barn.buck("31", 90).doe("99").say("sold", who="99", on=ago(3))


def asked(text: str, **fields: object) -> list[dict[str, object]]:
    """What is supposed, as facts of the contract."""
    found = [to_json(fact) for fact in supposed(farm().seen, Query(about="what_if", **fields), text)]  # type: ignore[arg-type]
    return [{name: value for name, value in one.items() if name != "kind"} for one in found]


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("what if 6 cages", "cages", 6),
        ("What if we only had a dozen... no, twelve cages?", "cages", 12),
        ("what if there is a single cage", "cages", 1),
        ("what if 20 mouths", "mouths", 20),
        ("what if we want 8 litters", "litters_wanted", 8),
        ("what if feed is 22 a bag", "feed_price", "22.00"),
        ("what if feed goes up to $24.50", "feed_price", "24.50"),
        ("what if the feed budget is $300", "feed_money", "300.00"),
        ("what if I only have 250 dollars for feed", "feed_money", "250.00"),
        ("what if there are ten bags until spring", "winter_feed", 10 * 22680),
        ("what if I have 600 lb of feed", "winter_feed", 272155),
        ("what if I have 200 kg feed", "winter_feed", 200_000),
        ("what if I only kept one buck of each breed?", "bucks_a_breed", 1),
        ("what if no bucks", "bucks_a_breed", 0),
        ("what if two does a breed", "does_a_breed", 2),
        ("what if inbreeding up to 20 %", "highest_coi", 0.2),
        ("what if coi .06", "highest_coi", 0.06),
        ("what if I take no risk", "risk", "low"),
        ("what if risk is high", "risk", "high"),
    ],
)
def test_a_wish_supposed(text: str, name: str, value: object) -> None:
    """The farm's wishes in plain words."""
    assert asked(text) == [{"name": name, "value": value}]


def test_a_wish_of_one_breed() -> None:
    """Of the breed that is named; cages have none."""
    assert asked("what if only one NZ buck", breed="New Zealand") == [{"name": "bucks_a_breed", "value": 1, "breed": "New Zealand"}]
    assert asked("what if 6 cages for the NZ", breed="New Zealand") == [{"name": "cages", "value": 6}]


def test_another_spring() -> None:
    """A day for spring is the query's."""
    assert asked("what if spring is may 1", until=date(2027, 5, 1)) == [{"name": "spring", "value": "2027-05-01"}]
    assert asked("what if spring is late") == []


@pytest.mark.parametrize(
    ("text", "plans"),
    [
        ("what if I keep 14", {"14": "keep"}),
        ("what if 3 goes", {"3": "cull"}),
        ("what if I sold Flint", {"3": "sell"}),
        ("what if 14 stays and 9 and 12 go", {"14": "keep", "9": "keep", "12": "cull"}),
        ("what if I keep Juno, cull 9 and 12", {"14": "keep", "9": "cull", "12": "cull"}),
        ("suppose juno died", {"14": "cull"}),
        ("what if I keep the opal", {}),
        ("what if I keep 99", {}),
        ("what if 14", {}),
    ],
)
def test_animals_supposed(text: str, plans: dict[str, str]) -> None:
    """Each animal with the verb beside it; the living only, by tag or name."""
    assert {str(one["who"]): str(one["what"]) for one in asked(text)} == plans


def test_what_the_reader_understood_serves() -> None:
    """An animal that the note's reader found and these words don't name again; and all grow-outs."""
    assert asked("what if I keep her", who="14") == [{"who": "14", "what": "keep"}]
    assert asked("what if I sold the grow-outs", scope="grow-outs") == [{"who": "31", "what": "sell"}]


def test_wishes_and_animals_together() -> None:
    """A number that belongs to a wish is no animal."""
    assert asked("what if 14 cages and 9 goes") == [{"name": "cages", "value": 14}, {"who": "9", "what": "cull"}]


def told(text: str, barn: Barn | None = None, **fields: object) -> tuple[str, ...]:
    """The answer's lines."""
    of = barn or farm()
    return what_if(of.seen, Query(about="what_if", **fields), text).lines  # type: ignore[arg-type]


def test_letting_one_go() -> None:
    """Who goes, less feed, fewer kits, fewer matings, and the note that makes it so; the herd is as it was."""
    barn = farm()
    before = barn.herd
    lines = told("what if 9 goes", barn)
    assert lines[0].startswith("9 would go")
    assert " less and $" in lines[1]
    assert lines[2].startswith("Kits a year from those that stay: ")
    assert " less. Meat from the culls: " in lines[2]
    assert lines[3] == "2 does can be bred here in spring, 3 by the plan as it stands."
    assert lines[4] == "Nothing was recorded. To have it so, send: plan to cull 9"
    assert barn.herd == before


def test_nothing_changes() -> None:
    """More room than is needed moves nobody."""
    lines = told("what if 90 cages")
    assert lines[0] == "Who stays and who goes would not change."
    assert lines[1].endswith(", as now.")
    assert lines[2] == "Kits a year from those that stay: as now. Meat from the culls: as now."
    assert lines[3] == "3 does can be bred here in spring, as now."


def test_dearer_feed() -> None:
    """Another price moves nobody; the money alone is told."""
    lines = told("what if feed is 44 a bag", farm().set("feed_price", "22.00"))
    assert lines[0] == "Who stays and who goes would not change."
    assert " as now" not in lines[1]
    assert lines[1].endswith(" more.")


def test_keeping_one_that_goes() -> None:
    """Who is kept against the plan stays; the others go all the same; the bin is empty sooner."""
    barn = farm().say("fault", who="7", fault="white toenail", disqualifies=True).say("planned", who="9", what="cull")
    barn.say("planned", who="12", what="cull").say("feed_left", grams=25_000)
    lines = told("what if I keep 12", barn)
    assert "12 would stay; the other " in lines[0]
    assert "; the bin lasts until " in lines[1]


def test_a_bin_that_would_last() -> None:
    """Feed that is enough for fewer."""
    barn = farm()
    need = sum(grams for _, _, grams in keep_or_cull(barn.herd, TODAY).winter.fed.days)
    barn.say("feed_left", grams=round(3 * need))
    lines = told("what if I sold 14, 9, 12, 3, 7, 31 and 50", barn)
    assert "bin lasts" in lines[1] or "bin" not in lines[1]


def test_a_wish_that_can_t_be_is_told_first() -> None:
    """Where nothing fits, the smallest change comes before the difference."""
    barn = farm()
    for tag in ("14", "9", "3"):
        barn.say("planned", who=tag, what="keep")
    assert told("what if one cage", barn)[0].startswith("What you asked for can't all be.")


def test_what_is_not_understood() -> None:
    """The words that would work, or what is wrong with what was said."""
    assert told("what if the sky falls") == HOW_TO
    assert told("what if the coi is 40000 %")[0].startswith("Highest COI can't be 400.")


def test_everybody_or_nobody() -> None:
    """All past weaning; that nobody goes keeps them all; who goes already is told."""
    assert {one["what"] for one in asked("what if we keep everybody")} == {one["what"] for one in asked("what if nobody goes")} == {"keep"}
    assert {one["who"] for one in asked("what if I sell them all")} == {"14", "9", "12", "3", "7", "50", "31"}
    both = farm().say("planned", who="9", what="sell").say("planned", who="12", what="sell")
    assert "goes already" in told("what if I sell 9", both)[0]
    assert "go already" in told("what if I sell 9 and 12", both)[0]


def test_many_at_once() -> None:
    """A whole list is not sent back as notes."""
    barn = farm()
    for number in range(60, 70):
        barn.buck(str(number), 90)
    lines = told("what if I sold the grow-outs", barn, scope="grow-outs")
    assert " and " in lines[0]
    assert " more would go" in lines[0]
    assert "Nothing was recorded." in lines


def test_it_is_reckoned_from_the_same_evidence() -> None:
    """What stands of the animals is not reckoned again: wishes change nothing of it."""
    barn = farm()
    seen = evidence(barn.herd, TODAY)
    assert seen.growth is None
    told("what if 4 cages", barn)
    assert "growth" in vars(seen)
