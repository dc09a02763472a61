"""What the pictures of litters show: how one grows, and how large a doe's were."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.herd.litters import live_born
from core.problem import Problem
from core.reports.evidence import evidence
from core.reports.litter_size import next_litter, size_of
from core.reports.pictures.litter import KITS_SHOWN, TOGETHER, growing_litter
from core.reports.pictures.litters import LITTERS_SHOWN, litter_sizes
from core.reports.pictures.values import Born, Growing, Litters
from core.words import POUND_G
from tests.farm import TODAY, ago
from tests.herds import Barn

POUND = float(POUND_G)


def one_litter(grams: dict[int, int] | None = None, tags: str = "K1 K2", born_ago: int = 80) -> Barn:
    """A doe 14 with a litter of eight weaned, some of it tagged and weighed at these ages."""
    barn = Barn().doe("14", name="Juno").buck("3").litter("14", "3", born_ago, 8, weaned=8)
    return barn.kits("14", tags, born_ago, grams) if tags else barn


def grows(barn: Barn, tag: str = "14") -> Growing:
    """The picture of that doe's litter."""
    found = growing_litter(barn.seen, barn.find(tag))
    assert isinstance(found, Growing)
    return found


def sizes(barn: Barn, tag: str = "14") -> Litters:
    """The picture of her litters."""
    found = litter_sizes(barn.seen, barn.find(tag))
    assert isinstance(found, Litters)
    return found


def test_each_kit_has_its_line() -> None:
    """By its tag, the lightest first; its breed's curve and the target beside it."""
    barn = one_litter({56: 1500}).weigh("K1", 2000, 10).weigh("K2", 1900, 10)
    told = grows(barn)
    assert [one.name for one in told.series] == ["K2", "K1"]
    assert told.series[1].points == ((8.0, 1500 / POUND), (10.0, 2000 / POUND))
    assert told.usual
    assert told.target_said == "5 lb wanted at 16 weeks"
    assert told.alt.endswith("2 kits weighed, from K2 4 lb 3 oz at 10 weeks to K1 4 lb 7 oz at 10 weeks.")
    assert told.note == "New Zealand, 2 kits weighed, last at 10 weeks"
    assert told.today == 80 / 7


def test_one_kit_is_no_range() -> None:
    """It is named alone."""
    assert grows(one_litter({56: 1500}, "K1")).alt.endswith("One kit weighed: K1 3 lb 5 oz at 8 weeks.")


def test_kits_weighed_together_are_told_by_their_mean() -> None:
    """Their number shares the weight; where nobody told the number there is nothing to share by."""
    barn = one_litter(tags="").say("litter_weighed", doe="14", grams=8000, count=8, on=ago(30))
    told = grows(barn)
    assert told.series[0].name == TOGETHER
    assert told.series[0].points == ((50 / 7, 1000 / POUND),)
    assert told.alt.endswith("Weighed together: 2 lb 3 oz a kit at 7 weeks.")
    assert told.note.endswith("weighed together, last at 7 weeks")


def test_of_many_kits_the_ends_are_shown() -> None:
    """The lightest and the heaviest."""
    tags = [f"K{number:02}" for number in range(15)]
    barn = Barn().doe("14").buck("3").litter("14", "3", 80, 15, weaned=15).kits("14", " ".join(tags), 80)
    for at, tag in enumerate(tags):
        barn.weigh(tag, 1500 + 10 * at, 10)
    names = [one.name for one in grows(barn).series]
    assert len(names) == KITS_SHOWN
    assert names == [*tags[:6], *tags[-6:]]


def test_weights_of_grown_kits_stay_out_of_the_picture() -> None:
    """The picture ends where a rabbit is grown; the lines end within it."""
    barn = one_litter({56: 1500}, born_ago=500).weigh("K1", 4500, 5)
    told = grows(barn)
    assert all(along <= told.along.end for one in told.series for along, _ in one.points)
    assert told.today is None


def test_the_newest_weighed_litter_is_shown() -> None:
    """A younger one that nobody weighed leaves the picture to the one before."""
    barn = one_litter({56: 1500}, born_ago=200).litter("14", "3", 20, 6)
    assert (
        grows(barn).title
        == f"Litter of 14 Juno, born {(TODAY - timedelta(200)):%a} {(TODAY - timedelta(200)).day} {(TODAY - timedelta(200)):%b}"
    )


def test_no_kit_weighed_yet() -> None:
    """How to weigh them."""
    barn = one_litter()
    found = growing_litter(barn.seen, barn.find("14"))
    assert isinstance(found, Problem)
    assert found.text.startswith("No kit of Doe 14 (Juno) was weighed yet.")


def test_a_does_litters_stand_in_order() -> None:
    """Born alive, born dead, weaned; the year where it is new; what to expect of the next."""
    barn = (
        Barn().doe("14").buck("3").litter("14", "3", 400, 8, dead=1, weaned=7).litter("14", "3", 100, 6, weaned=5).litter("14", "3", 20, 7)
    )
    told = sizes(barn)
    assert told.litters == (Born("21 Oct\n2025", 8, 1, 7), Born("17 Aug\n2026", 6, 0, 5), Born("5 Nov", 7, 0, None))
    size = size_of(barn.seen, barn.find("14"))
    low, high = next_litter(size)
    assert told.following == (low, size.following, high)
    assert told.alt.split("\n")[:2] == ["Doe 14: 3 litters; 8, 6 and 7 born alive, 1 born dead.", "Weaned: 7 and 5."]


def test_born_and_alive_tell_the_dead() -> None:
    """Where nobody counted them."""
    barn = Barn().doe("14").buck("3").say("bred", doe="14", buck="3", on=ago(60)).say("kindled", doe="14", born=9, alive=7, on=ago(29))
    assert sizes(barn).litters[0].dead == 2


def test_a_bucks_litters_foretell_no_next() -> None:
    """Nor do those of a doe that is gone."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 6, weaned=5)
    assert sizes(barn, "3").following is None
    assert sizes(barn.say("sold", who="14")).following is None


def test_of_many_litters_the_newest_are_shown() -> None:
    """The note says of how many; the words tell all."""
    barn = Barn().doe("14", age=2000).buck("3", age=2000)
    for born_ago in range(1400, 1400 - 80 * 15, -80):
        barn.litter("14", "3", born_ago, 6, weaned=5)
    told = sizes(barn)
    assert len(told.litters) == LITTERS_SHOWN
    assert told.note == "New Zealand, the newest 12 of 15 litters"
    assert told.alt.split(";", 1)[0] == "Doe 14: 15 litters"


def test_no_litter_counted() -> None:
    """Nothing to show; a litter that was not born yet on that day is none."""
    barn = Barn().doe("14", breed=None).buck("3").litter("14", "3", 20, 6)
    early = evidence(barn.herd, ago(21))
    for seen, tag in ((barn.seen, "3"), (barn.seen, "14")):
        assert not isinstance(litter_sizes(seen, barn.find(tag)), Problem)
    assert isinstance(litter_sizes(early, barn.find("14")), Problem)
    assert sizes(barn).note == "1 litter"


@pytest.mark.parametrize("alive", [0, 1])
def test_a_litter_without_kits_is_drawn_all_the_same(alive: int) -> None:
    """A dead litter is one of hers."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 20, alive, dead=3)
    told = sizes(barn)
    assert (told.litters[0].alive, told.litters[0].dead) == (alive, 3)
    assert live_born(next(iter(barn.herd.litters.values()))) == alive
