"""What the handbook takes for a usual litter, against published herds. All rows were seen as abstracts."""

from __future__ import annotations

from statistics import mean

import pytest

from core.handbook import reproduction, survival

#: Share of the live-born lost between birth and weaning.
LOST = {
    "Sorensen et al., World Rabbit Science article 444 (Danish White)": 0.180,
    "Planinc et al., Acta agriculturae Slovenica (SIKA; 8.15 born alive, 7.00 weaned)": 1 - 7.00 / 8.15,
    "Moura et al. 2000, World Rabbit Science article 433 (Botucatu, 1,065 litters)": 0.195,
    "Rastogi, Tropical Agriculture (Trinidad) 68(4), 210 litters": 0.227,
    "Elmaghraby and Elkholya (New Zealand White, 104 litters; to day 28)": 0.106 + 0.0055,
}
BORN_ALIVE = {"FONT": 6.74, "SIKA": 8.15, "WRS433": 7.46, "TRIN": 4.4}
WEANED = {"WRS444": 7.63, "SIKA": 7.00, "WRS433": 5.87, "TRIN": 3.4}
STILLBORN = {"EGY": 0.0696, "FONT": 0.0885, "TRIN": 0.102, "SIKA": 0.071}


def test_prior_mean_is_the_mean_herd() -> None:
    """The herd's starting survival is within 0.02 of the five herds' mean: they differ among themselves by 0.04 (one SD)."""
    assert survival.PRIOR_MEAN.value == pytest.approx(1 - mean(LOST.values()), abs=0.02)


@pytest.mark.parametrize("herd", LOST)
def test_no_average_herd_falls_below_the_farms_line(herd: str) -> None:
    """A doe as good as the mean of any printed herd is above the farm's line: the flag is for worse ones."""
    assert 1 - LOST[herd] > survival.LOWEST_SURVIVAL.value


@pytest.mark.parametrize(
    ("figure", "printed"),
    [
        (reproduction.USUAL_BORN_ALIVE, BORN_ALIVE),
        (reproduction.USUAL_WEANED, WEANED),
        (reproduction.USUAL_STILLBORN, STILLBORN),
    ],
    ids=["born alive", "weaned", "stillborn"],
)
def test_usual_litters_range_holds_every_herd(figure: reproduction.Figure, printed: dict[str, float]) -> None:
    """The printed herds (keys of the handbook's sources) lie in the figure's range, its value among them."""
    assert all(figure.low <= herd <= figure.high for herd in printed.values())
    assert min(printed.values()) <= figure.value <= max(printed.values())
