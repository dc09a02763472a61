"""What is reckoned once for a day; and that it is right and quick on a whole season with known truth."""

from __future__ import annotations

import numpy as np
import pytest

from core.reports.evidence import Evidence, _Held, evidence
from core.reports.growth import grown
from tests.core.reports.season import END, Season, season
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


@pytest.fixture(scope="module")
def simulated() -> Season:
    """Twenty months of three breeds."""
    return season(3)


def test_one_herd_is_reckoned_once() -> None:
    """The same herd on the same day gives the same evidence; another day's is another's."""
    barn = two_sires()
    assert evidence(barn.herd, TODAY) is evidence(barn.herd, TODAY)
    assert evidence(barn.herd, TODAY) is not evidence(barn.herd, ago(1))
    assert _Held(barn.herd) != barn.herd


def test_better_is_none_for_strangers() -> None:
    """Two animals of which one is not asked about can't be compared."""
    growth = two_sires().seen.growth
    assert growth is not None
    assert growth.better("3", "nobody") is None
    assert growth.reliability("nobody") is None
    assert growth.value("nobody", ["3"]) is None
    assert growth.value("3", []) is None


def test_sound_book_has_no_problem() -> None:
    """Nothing is told where nothing contradicts."""
    assert two_sires().seen.book_problems == ()


def test_animal_of_unknown_birth_in_the_model() -> None:
    """Weights of an animal whose birth nobody knows tell nothing of growth."""
    barn = Barn().buck("1", age=None).weigh("1", 4000)
    assert barn.seen.standard == {}
    assert grown(barn.herd, barn.find("1"), TODAY, {}) is None


def test_breeding_values_follow_the_truth(simulated: Season) -> None:
    """Over all breeds the bucks' breeding values go with what they truly pass on, better than chance would."""
    barn = Evidence(simulated.herd, END)
    proven = [one for one in barn.living if barn.growth and barn.growth.of_litter.get(one.key, 0) >= 20 and one.sex == "buck"]
    values = [barn.growth.solved.values[one.key] for one in proven if barn.growth]
    assert len(proven) >= 7
    assert np.corrcoef(values, [simulated.growth[one.tag] for one in proven])[0, 1] > 0.5


def test_survival_follows_the_truth(simulated: Season) -> None:
    """The does' survival goes with the truth, and the intervals hold it about as often as they say."""
    dams = {doe: one for doe, one in Evidence(simulated.herd, END).dams.items() if doe in simulated.raises}
    truth = [simulated.raises[doe] for doe in dams]
    assert np.corrcoef([one.share.estimate for one in dams.values()], truth)[0, 1] > 0.5
    inside = [one.share.low <= simulated.raises[doe] <= one.share.high for doe, one in dams.items()]
    assert 0.5 <= np.mean(inside) <= 1
