"""The litter of a pairing in a breeder's words."""

from __future__ import annotations

import pytest

from core.reports.mating_litter import MatingLitter
from tests.herds import Barn, two_sires


def of(barn: Barn, doe: str, buck: str) -> MatingLitter:
    """The litter of this doe by this buck."""
    return MatingLitter(barn.seen, barn.find(doe), barn.find(buck))


def test_her_own_litters_tell_what_to_expect() -> None:
    """Her number, its range, what she would raise, and the count behind it."""
    litter = of(two_sires(), "11", "7")
    assert litter.lines()[0] == (
        f"Litter to expect: about 7 born alive, likely {litter.lines()[0].split('likely ')[1].split(',')[0]}, about 6 raised; "
        "going by 4 litters of hers and her breed's here."
    )
    assert litter.raised() == pytest.approx(litter.size.following * 6 / 7, abs=0.3)


def test_a_doe_without_litters_goes_by_her_breed() -> None:
    """And that is said."""
    litter = of(two_sires().doe("40"), "40", "7")
    assert litter.raised() is None
    assert litter.lines()[0].endswith("; no litter of hers is on the book, so going by her breed's here.")


def test_a_breed_without_litters_goes_by_what_is_usual() -> None:
    """Nothing of the farm's own stands behind it, and that is said."""
    litter = of(Barn().doe("40").buck("7"), "40", "7")
    assert litter.lines()[0].endswith("; no litter of hers is on the book, so going by what is usual, for none of her breed is either.")


def test_growth_with_its_doubt_and_its_count() -> None:
    """The better sire's kits outgrow the mean, more often than not."""
    litter = of(two_sires(), "11", "7")
    above = litter.grows_above()
    assert above is not None
    assert 0.6 < above < 1
    [line] = litter.lines()[1:]
    assert line.startswith("Growth: kits should weigh ")
    assert line.endswith("(16 weighed kits of hers, 32 of his).")
    assert of(two_sires(), "11", "3").grows_above() == pytest.approx(1 - above, abs=0.1)
    assert litter.thin() == ()


def test_two_breeds_have_no_mean() -> None:
    """And that is said; nothing where nothing was weighed."""
    barn = two_sires().doe("40", breed="Satin")
    assert of(barn, "40", "7").lines()[1:] == ["Growth: they are of two breeds, so there is no mean to tell it against."]
    assert of(Barn().doe("15").buck("7"), "15", "7").lines()[1:] == []


def test_nothing_weighed_is_thin() -> None:
    """What to note next, and null as numbers."""
    litter = of(Barn().doe("15").buck("7"), "15", "7")
    assert litter.thin() == ("weights of kits at about 10 weeks",)
    told = litter.document()
    assert (told["weight_70d_grams"], told["weight_70d_above_mean"], told["kits_weighed"], told["raised"]) == (None, None, [0, 0], None)
