"""Two animals side by side."""

from __future__ import annotations

from core.reports.compare import Comparison, compare
from tests.farm import TODAY
from tests.herds import Barn, two_sires


def of(barn: Barn, one: str, other: str) -> Comparison:
    """These two compared."""
    return compare(barn.herd, TODAY, barn.find(one), barn.find(other))


def test_bucks_by_their_kits() -> None:
    """The buck whose kits grow faster comes out ahead, whoever is named first, with the count."""
    for one, other in (("3", "7"), ("7", "3")):
        assert (
            of(two_sires(), one, other).reply().lines[1]
            == "7 Rowan's kits would almost surely outgrow 3 Flint's, by 64 kits of theirs weighed."
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
        assert any(line == "9 almost surely raises her kits better than 14." for line in of(barn, one, other).reply().lines)
    assert "14: 22 months; 8.0 born alive a litter (3 litters); 12 of 24 kits raised" in of(barn, "14", "9").reply().text


def test_nothing_known_says_what_to_record() -> None:
    """Too little known: what to weigh and note."""
    text = of(Barn().buck("3", age=None).buck("7", age=None), "3", "7").reply().text
    assert text == "3 and 7.\nToo little is known of both to say who is better: weigh their kits at 10 weeks and note their litters."


def test_document() -> None:
    """Both animals and the chances; unknown is null."""
    told = of(two_sires(), "3", "7").document()
    assert told["one"]["tag"] == "3"
    assert told["chance_grows_better"] < 0.2
    assert told["chance_raises_better"] is None
