"""Two animals side by side."""

from __future__ import annotations

from core.reports.compare import Comparison, compare
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


def of(barn: Barn, one: str, other: str) -> Comparison:
    """These two compared."""
    return compare(barn.herd, TODAY, barn.find(one), barn.find(other))


def test_bucks_by_their_kits() -> None:
    """The buck whose kits grow faster comes out ahead, whoever is named first, with the count."""
    for one, other in (("3", "7"), ("7", "3")):
        assert (
            of(two_sires(), one, other).reply().lines[1]
            == "7 Rowan's kits would almost surely outgrow 3 Flint's, by 32 kits of 7 Rowan and 32 of 3 Flint weighed."
        )
    better = of(two_sires(), "7", "3").grows_better
    assert better is not None
    assert better > 0.8


def test_young_ones_by_their_own_weights() -> None:
    """Without kits their own weights speak."""
    barn = Barn().doe("31", age=100).weigh("31", 2000, 30).doe("32", age=100).weigh("32", 1500, 30)
    assert of(barn, "31", "32").reply().lines[1].endswith("by their own weights and their families'.")


def test_does_by_survival() -> None:
    """The doe that raises more comes out ahead, whoever is named first."""
    barn = Barn().doe("14").doe("9").buck("3")
    for born_ago in (420, 320, 220):
        barn.litter("14", "3", born_ago, 8, weaned=4).litter("9", "3", born_ago, 8, weaned=8)
    for one, other in (("14", "9"), ("9", "14")):
        assert any(
            line == "9 almost surely raises her kits better than 14, by 24 kits of hers and 24 of 14."
            for line in of(barn, one, other).reply().lines
        )
    assert "14: 22 months; 8.0 born alive a litter (3 litters); 12 of 24 kits raised" in of(barn, "14", "9").reply().text


def test_a_young_buck_beside_his_sire() -> None:
    """His kin is named, whoever is asked about first, and that he has no kits yet; a doubtful chance says what to weigh."""
    barn = two_sires().buck("20", age=200, sire="7", dam="11").weigh("20", 1800, 130)
    for one, other in (("20", "7"), ("7", "20")):
        said = of(barn, one, other).reply().lines
        assert said[1].startswith("7 Rowan's kits would outgrow his son 20's ")
        assert said[1].endswith("by 33 kits of 7 Rowan weighed and what 20 and family weigh.")
    better = two_sires().buck("20", age=200, sire="3", dam="11").weigh("20", 2600, 130)
    assert of(better, "3", "20").reply().lines[1].startswith("20's kits would outgrow his sire 3 Flint's ")
    assert "11's kits would outgrow her son 20's" in of(better, "20", "11").reply().lines[1]
    young = better.say("animal", tag="30", breed="New Zealand", dam="11", born=ago(100))
    assert "outgrow her kit 30's half the time" in of(young, "11", "30").reply().text
    assert "outgrow its dam 11's half the time" in of(young, "30", "11").reply().text


def test_a_doubtful_chance_says_what_to_weigh() -> None:
    """Bucks whose kits grew alike: not sure, and the remedy; where one has no kits, his."""
    alike = of(two_sires({"3": 1800, "7": 1800}), "3", "7").reply().lines
    assert alike[2] == "That is not sure: weigh more of their kits at 10 weeks."
    one = of(two_sires().buck("5"), "5", "11").reply().lines
    assert any(line.startswith("That is not sure: weigh kits of 5 at 10 weeks.") for line in one)


def test_two_breeds_are_each_held_against_their_own() -> None:
    """A dwarf outgrows no giant: across breeds the chance is told for each breed's own curve."""
    barn = two_sires().buck("5", breed="Mini Rex").weigh("5", 1900, 600)
    assert ", each for its breed, by " in of(barn, "5", "7").reply().lines[1]


def test_larger_litters_are_told_with_their_count() -> None:
    """Does with litters on the book: whose are larger, by how many."""
    barn = Barn().doe("14").doe("9").buck("3").doe("8")
    for born_ago in (420, 320, 220):
        barn.litter("14", "3", born_ago, 4, weaned=4).litter("9", "3", born_ago, 9, weaned=9)
    for one, other in (("14", "9"), ("9", "14")):
        told = of(barn, one, other).reply().lines
        assert "9 almost surely has larger litters than 14, by 3 litters of hers and 3 of 14." in told
    assert "larger litters" not in of(barn, "9", "8").reply().text
    assert "larger litters" not in of(barn, "9", "3").reply().text


def test_nothing_known_says_what_to_record() -> None:
    """Too little known: what to weigh and note."""
    text = of(Barn().buck("3", age=None).buck("7", age=None), "3", "7").reply().text
    assert text.split("\n")[1] == "Too little is known of both to say who is better: weigh their kits at 10 weeks and note their litters."
    assert [line[:20] for line in text.split("\n")[2:]] == ["By the plan: keep 3.", "By the plan: keep 7."]


def test_document() -> None:
    """Both animals and the chances; unknown is null."""
    told = of(two_sires(), "3", "7").document()
    assert told["one"]["tag"] == "3"
    assert told["chance_grows_better"] < 0.2
    assert told["chance_raises_better"] is None
    assert told["chance_larger_litters"] is None
