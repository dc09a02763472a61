"""What stands on cage cards."""

from __future__ import annotations

from core.herd.state import Animal, Herd
from core.reports.papers.cage_cards import BUCK, DOE, LINES, YOUNG, CageCard, cage_cards
from core.reports.papers.wanted import Wanted
from tests.farm import TODAY, ago, small_herd, tell


def cards(herd: Herd | None = None, **wish: str) -> dict[str, CageCard]:
    """The cards by tag."""
    return {card.tag: card for card in cage_cards(small_herd() if herd is None else herd, TODAY, Wanted(**wish))}  # type: ignore[arg-type]


def test_a_doe_has_her_matings() -> None:
    """The last two: one that she kindled, one that is open, with the day she is due; the rest of the lines are empty."""
    card = cards()["14"]
    assert (card.name, card.told) == ("Juno", ("doe", "Mini Rex", "castor"))
    assert card.columns == DOE
    assert card.lines[:2] == (("18 Jun 2026", "3", "", "19 Jul 2026", "4", "4"), ("24 Oct 2026", "3", "24 Nov 2026", "", "", ""))
    assert card.lines[2:] == (("",) * len(DOE),) * (LINES - 2)


def test_a_buck_has_his_does() -> None:
    """When each was bred and what came of it."""
    card = cards()["3"]
    assert card.columns == BUCK
    assert card.lines[:3] == (("16", "7 Sep 2026", "8 Oct 2026", "5"), ("14", "24 Oct 2026", "", ""), ("",) * len(BUCK))


def test_a_young_one_has_its_weights() -> None:
    """And what it should weigh; its parents are told."""
    herd = tell(small_herd(), "weighed", who="31", grams=1800, on=ago(10))
    herd = tell(herd, "animal", tag="40", sex="doe", origin="bought")
    herd = tell(herd, "weighed", who="40", grams=1700, on=ago(10))
    herd = tell(herd, "animal", tag="41", sex="doe", born=ago(80))
    found = cards(herd)
    assert found["31"].columns == YOUNG
    assert found["31"].facts == (("Born", "19 Jul 2026"), ("Sire", "3 Flint"), ("Dam", "14 Juno"), ("Wanted at 16 weeks", "2 lb 8 oz"))
    assert found["31"].lines[0] == ("15 Nov 2026", "17 weeks", "3 lb 15 oz", "")
    assert found["41"].lines == (("",) * len(YOUNG),) * LINES
    assert found["40"].columns == DOE


def test_what_is_not_known_is_left_to_fill() -> None:
    """Born and parents; a cage only where it has one. A parent from nowhere is told as it was typed."""
    herd = tell(Herd(), "animal", tag="1", sire="Old Tom")
    (card,) = cards(herd).values()
    assert card.told == ("rabbit",)
    assert card.facts[0] == ("Born", "")
    assert dict(card.facts)["Dam"] == ""
    moved = tell(herd, "moved", who="1", cage="B2")
    assert dict(cards(moved)["1"].facts)["Cage"] == "B2"


def test_what_came_of_a_mating_without_kits_stands_in_a_word() -> None:
    """Palpated open, bred again; a missed one too."""
    herd = tell(small_herd(), "palpated", doe="22", result="open", on=ago(2))
    herd = tell(herd, "bred", doe="22", buck="3")
    assert cards(herd)["22"].lines[0][3] == "palpated open"


def test_only_those_that_are_wanted() -> None:
    """Bucks, does or grow-outs, a breed, one animal; never one that is gone, or a kit under its dam."""
    assert set(cards(scope="bucks")) == {"3", "5"}
    assert set(cards(scope="does")) == {"9", "12", "14", "15", "16", "22"}
    assert set(cards(scope="grow-outs")) == {"31"}
    assert set(cards(scope="does", breed="Mini Rex")) == {"14", "15", "16"}
    assert set(cards(who="22")) == {"22"}
    assert cards(who="99") == {}
    assert "R23" not in cards()


def test_they_come_in_the_order_of_the_cages() -> None:
    """B2 before B10, those without a cage last, whatever signs a cage's name has."""
    herd = small_herd()
    for tag, cage in (("22", "B10"), ("3", "B2"), ("9", "²b")):
        herd = tell(herd, "moved", who=tag, cage=cage)
    order = list(cards(herd))
    assert order[:3] == ["3", "22", "9"]
    assert len(order) == len(cards())


def test_a_code_asks_for_its_animal_and_no_other() -> None:
    """Where the chat would take the tag for another animal, or for nothing, there is no word for a code."""
    herd = small_herd()
    for tag in ("R 9", "ОЛ-7", "LONGTAG-2026-0003", "7&8", "A/B"):
        herd = herd.with_animal(Animal(tag, tag, sex="doe"))
    found = cards(herd)
    assert {tag: found[tag].asks for tag in ("14", "R 9", "ОЛ-7")} == {"14": "14", "R 9": "R9", "ОЛ-7": "ОЛ-7"}
    assert {found[tag].asks for tag in ("LONGTAG-2026-0003", "7&8", "A/B")} == {None}
