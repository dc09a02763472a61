"""The winter's choice, one matter at a time."""

from __future__ import annotations

from typing import Any

import pytest

from core.reckon.choose import Guess
from core.reckon.winter import programme
from core.reckon.winter.choose import best
from core.reckon.winter.types import Candidate, Choice, Limits


def one(key: str, sex: str | None, worth: float = 5000.0, **more: Any) -> Candidate:
    """A candidate of breed A."""
    told: dict[str, Any] = {"breed": "A", "grown": True, "feed_g": 10000.0} | more
    return Candidate(key, sex, worth=Guess(worth, told.pop("doubt", 0.0)), **told)  # type: ignore[arg-type]


def choice(animals: list[Candidate], limits: Limits | None = None, kin: dict[tuple[str, str], float] | None = None) -> Choice:
    """The choice of these; who is not told as kin is none."""
    found = best(animals, limits or Limits(), lambda buck, doe: (kin or {}).get((buck, doe), 0.0))
    assert isinstance(found, Choice)
    return found


def test_nobody_to_choose_from() -> None:
    """No candidates: nothing kept, nothing lacking."""
    assert choice([]) == Choice((), (), 0.0, 0.0, 0, 0, (), None, {}, (), {})


def test_equal_animals_go_by_key_whatever_the_order() -> None:
    """Of three equal does for two cages the first by key stay, and they are told in the order given."""
    does = [one(key, "doe") for key in "abc"]
    assert choice(does, Limits(cages=2)).kept == ("a", "b")
    assert choice(does[::-1], Limits(cages=2)).kept == ("b", "a")


def test_an_animal_that_eats_more_than_it_brings_goes() -> None:
    """Worth 500 and 10 kg of feed at 0.1 a gram."""
    assert choice([one("1", None, 500.0)], Limits(feed_worth=0.1)).going == ("1",)
    assert choice([one("1", None, 1500.0)], Limits(feed_worth=0.1)).kept == ("1",)


def test_doubt_counts_against_an_animal_as_far_as_caution_goes() -> None:
    """A sure 3000 before an unsure 4000 with caution, behind it without."""
    pair = [one("sure", None, 3000.0), one("unsure", None, 4000.0, doubt=2000.0)]
    assert choice(pair, Limits(cages=1, caution=1.0)).kept == ("sure",)
    assert choice(pair, Limits(cages=1)).kept == ("unsure",)


def test_a_breed_keeps_a_pair_though_others_are_worth_more() -> None:
    """Two cages: the poor pair of A stays rather than two good grow-outs."""
    animals = [one("buck", "buck", -100.0), one("doe", "doe", -100.0), one("x", None, grown=False), one("y", None, grown=False)]
    found = choice(animals, Limits(cages=2))
    assert found.kept == ("buck", "doe")
    assert found.lacking == {}


def test_the_pair_kept_is_one_within_the_limit() -> None:
    """The best buck is the doe's brother: the other stays for her."""
    animals = [one("brother", "buck", 9000.0), one("other", "buck", 10.0), one("doe", "doe")]
    found = choice(animals, Limits(cages=2, highest_coi=0.1), {("brother", "doe"): 0.25})
    assert found.kept == ("other", "doe")
    assert [(each.doe, each.buck) for each in found.matings] == [("doe", "other")]


def test_a_breed_that_cannot_breed_on_is_told() -> None:
    """A breed with no buck left, one with no doe, one with nobody, one with brother and sister only."""
    animals = [
        one("1", "doe", breed="no buck"),
        one("2", "buck", breed="no doe"),
        one("3", "doe", breed="nobody", pin="go"),
        one("4", "doe", breed="kin"),
        one("5", "buck", breed="kin"),
        one("6", "doe", breed="young", grown=False),
    ]
    found = choice(animals, Limits(highest_coi=0.1), {("5", "4"): 0.25})
    assert found.lacking == {"no buck": "buck", "no doe": "doe", "nobody": "both", "kin": "pair"}
    assert found.mean_kinship == 0.25


def test_too_few_cages_for_all_breeds_let_down_as_few_as_can_be() -> None:
    """Three pairs and two cages: one pair stays whole though single animals are worth more."""
    animals = [one(f"{breed}{sex}", sex, 100.0 * at, breed=breed) for at, breed in enumerate("ABC", 1) for sex in ("buck", "doe")]
    found = choice(animals, Limits(cages=2))
    assert found.kept == ("Cbuck", "Cdoe")
    assert found.lacking == {"A": "both", "B": "both"}


def test_a_pin_on_the_last_buck_is_priced_by_the_breed_that_could_go_on() -> None:
    """A buck that must go leaves his doe alone: without the pin both stay, and he costs a cage that a better one has now."""
    animals = [one("buck", "buck", 10.0, pin="go"), one("doe", "doe"), one("x", None, 8000.0, grown=False)]
    found = choice(animals, Limits(cages=2))
    assert found.kept == ("doe", "x")
    assert found.lacking == {"A": "buck"}
    price = found.price_of_pin["buck"]
    assert price.worth == pytest.approx(10.0 - 8000.0)
    assert (price.go, price.stay) == ((), ("x",))


def test_a_pin_that_agrees_with_the_best_choice_costs_nothing() -> None:
    """Keep the best, let the worst go: no entry, lifted or not."""
    animals = [one("1", None, 9000.0, pin="keep"), one("2", None, -5.0, pin="go"), one("3", None)]
    assert choice(animals, Limits(cages=1)).price_of_pin == {}
    alone = [one("buck", "buck", pin="keep"), one("doe", "doe", pin="go")]
    assert set(choice(alone).price_of_pin) == {"doe"}


def test_a_pinned_doe_costs_the_one_that_goes_instead() -> None:
    """Keep 14: she eats 12 kg, 9 goes instead, which would eat 10."""
    animals = [one("14", None, 1000.0, feed_g=12000.0, pin="keep"), one("9", None, 4000.0), one("3", None, 6000.0)]
    price = choice(animals, Limits(cages=2)).price_of_pin["14"]
    assert (price.worth, price.feed_g, price.more_feed_g, price.go, price.stay) == (3000.0, 12000.0, 2000.0, ("9",), ())


def test_inbreeding_and_no_mate_are_taken_off_a_doe() -> None:
    """A doe with her half brother loses by the COI, one without a mate loses more; never the two at once."""
    pair = [one("b", "buck", 0.0), one("d", "doe", 5000.0)]
    told = Limits(coi_cost=8000.0, unmated=2000.0)
    assert choice(pair, told, {("b", "d"): 0.125}).worth == pytest.approx(4000.0)
    assert choice(pair, told, {("b", "d"): 0.5}).worth == pytest.approx(3000.0)
    assert choice(pair[1:], told).worth == pytest.approx(3000.0)


def test_a_doe_with_very_many_unlike_mates_still_has_hers() -> None:
    """Twenty bucks, each of another kinship to her, two cages: the least related stays with her."""
    bucks = [one(f"{at:02d}", "buck", 100.0) for at in range(20)]
    kin = {(each.key, "doe"): 0.01 * (20 - at) for at, each in enumerate(bucks)}
    assert len(kin) > programme.MATE_CLASSES
    found = choice([*bucks, one("doe", "doe")], Limits(cages=2, coi_cost=20000.0, unmated=5000.0), kin)
    assert found.kept == ("19", "doe")


def test_matings_are_told_by_doe_the_least_inbred_first() -> None:
    """Two bucks for a doe, and none above the limit."""
    animals = [one("d", "doe"), one("a", "buck"), one("b", "buck"), one("c", "buck")]
    found = choice(animals, Limits(highest_coi=0.2), {("a", "d"): 0.1, ("c", "d"): 0.25})
    assert [(each.buck, each.coi) for each in found.matings] == [("b", 0.0), ("a", 0.1)]


def test_a_flip_needs_a_move_past_the_next_best() -> None:
    """5000 and 4600 for one cage: either turns on 500, neither on 300; one that a person pinned never does."""
    told = Limits(cages=1)
    assert choice([one("1", None, one_more=500.0), one("2", None, 4600.0, one_more=300.0)], told).flips == ("1",)
    assert choice([one("1", None, one_more=300.0), one("2", None, 4600.0, one_more=500.0)], told).flips == ("2",)
    assert choice([one("1", None, one_more=500.0, pin="keep"), one("2", None, 4600.0)], told).flips == ()
    assert choice([one("1", "doe", one_more=9000.0, places=3), one("2", None, 4600.0, one_more=9000.0)], Limits(cages=3)).flips == (
        "1",
        "2",
    )


def test_one_that_alone_can_sire_the_litters_wanted_never_turns() -> None:
    """However far his worth may move, without him nothing fits."""
    animals = [one("b", "buck", 100.0, one_more=90000.0), one("d", "doe"), one("x", None, 4000.0)]
    assert choice(animals, Limits(cages=2, litters={"A": 1})).flips == ()
