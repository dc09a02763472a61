"""The figures as a whole: each has a source, each source is used, each value is in its range."""

from __future__ import annotations

import re

import pytest

from core.handbook import feeding, flags, growth, reproduction, survival, weather
from core.handbook.breeds import all_breeds
from core.handbook.coat_genes import COAT_PATTERNS, GENE_FORMS, TRADE_WORDS, CoatPattern, GeneForm, TradeWord
from core.handbook.figure import SEEN, Figure
from core.handbook.page import figures
from core.handbook.sources import SOURCES

FIGURES = dict(figures())


def test_there_are_figures() -> None:
    """The collection finds figures that stand alone, in a tuple and in a mapping."""
    assert {"reproduction.PALPATE_DAY", "growth.WEIGH_DAYS[3]", "stages.FIRST_MATING_DAYS[giant]"} <= FIGURES.keys()


@pytest.mark.parametrize("name", FIGURES)
def test_figure_has_a_source_a_unit_and_a_range(name: str) -> None:
    """Each figure names a known source and a unit, and its range holds its value."""
    figure = FIGURES[name]
    assert figure.source in SOURCES
    assert figure.unit
    assert figure.low <= figure.value <= figure.high


@pytest.mark.parametrize("name", [name for name, figure in FIGURES.items() if figure.source == "memory"])
def test_memory_is_told_as_memory(name: str) -> None:
    """What nobody looked up is shown as such on the page."""
    assert SOURCES[FIGURES[name].source].seen == "memory"


@pytest.mark.parametrize("key", SOURCES)
def test_source_is_used(key: str) -> None:
    """Every source stands behind a figure, a breed or a color gene, or is named in a figure's note as another reading."""
    noted = {word for figure in FIGURES.values() for word in re.findall(r"[A-Za-z0-9-]+", figure.note)}
    used = {figure.source for figure in FIGURES.values()} | {source for breed in all_breeds() for source in breed.sources}
    assert key in used | noted | {row.source for row in (*GENE_FORMS, *COAT_PATTERNS, *TRADE_WORDS)}


@pytest.mark.parametrize("row", [*GENE_FORMS, *COAT_PATTERNS, *TRADE_WORDS], ids=repr)
def test_color_rows_name_their_source(row: GeneForm | CoatPattern | TradeWord) -> None:
    """A color gene's form, a pattern and a word each say whence they are known, or that nobody looked it up."""
    assert row.source in SOURCES


@pytest.mark.parametrize("key", SOURCES)
def test_source_says_how_far_it_was_seen(key: str) -> None:
    """`seen` is one of the known words, and the title is not empty."""
    assert SOURCES[key].seen in SEEN
    assert SOURCES[key].title


def test_range_must_hold_the_value() -> None:
    """A figure outside its own range is refused when it is written."""
    with pytest.raises(ValueError, match="31 days is outside 32 to 33"):
        Figure(31, "days", 32, 33, "ours")


def test_whole_is_an_integer() -> None:
    """A figure that counts days gives an int, so that it can be added to a date."""
    assert reproduction.GESTATION_DAYS.whole == 31
    assert isinstance(Figure(31.0, "days", 30, 33, "ours").whole, int)


def test_whole_refuses_a_fraction() -> None:
    """Half a kit is not silently cut off."""
    with pytest.raises(ValueError, match="not a whole number"):
        _ = survival.LOWEST_SURVIVAL.whole


def test_chores_follow_the_agreed_days() -> None:
    """The chore table: palpate 12, box in 28, due 31 (30 to 33), check 1, box out 18, wean 35, rebreed 35, weigh 56, 70, 84, 112."""
    r = reproduction
    mated = (r.PALPATE_DAY, r.NEST_BOX_IN_DAY, r.GESTATION_DAYS, r.KINDLING_WINDOW_FIRST, r.KINDLING_WINDOW_LAST)
    born = (r.CHECK_NEST_DAY, r.NEST_BOX_OUT_DAY, r.WEAN_DAY, r.REBREED_DAY)
    assert [figure.value for figure in mated] == [12, 28, 31, 30, 33]
    assert [figure.value for figure in born] == [1, 18, 35, 35]
    assert [figure.value for figure in growth.WEIGH_DAYS] == [56, 70, 84, 112]


def test_flags_follow_the_agreed_thresholds() -> None:
    """The flag table: 112 days, two litters or 12 kits, 0.70 at one half, three litters at 0.8, 60 days, two, two in a year, 1.5 and 3."""
    thresholds = (
        growth.LIGHT_AGE_DAYS, survival.JUDGED_FROM_LITTERS, survival.JUDGED_FROM_LIVE_BORN, survival.LOWEST_SURVIVAL,
        survival.LOW_SURVIVAL_CHANCE, survival.SHRINKING_FROM_LITTERS, survival.SHRINKING_CHANCE, flags.LONG_OPEN_DAYS,
        flags.MISSED_IN_A_ROW, flags.BAD_TEMPER_NOTES, flags.BAD_NOTES_WITHIN_DAYS, flags.HEAVY_FEEDER_TIMES,
        flags.HEAVY_FEEDER_CONDITION, flags.BUCKS_A_BREED,
    )  # fmt: skip
    assert [figure.value for figure in thresholds] == [112, 2, 12, 0.70, 0.5, 3, 0.8, 60, 2, 2, 365, 1.5, 3, 2]


def test_questions_follow_the_agreed_limits() -> None:
    """When to ask: day 28, day 36, weaned under 25 days, sire 28 to 35 days before; cold to 5, heat from 29 degrees; a cup of 142 g."""
    r = reproduction
    limits = (r.EARLIEST_KINDLING_DAY, r.ASK_KINDLING_DAY, r.ASK_WEAN_DAY, r.SIRE_FIRST_DAY, r.SIRE_LAST_DAY)
    assert [figure.value for figure in limits] == [28, 36, 25, 28, 35]
    assert (weather.COLD_FROM_C.value, weather.HEAT_FROM_C.value, feeding.CUP_G.value) == (5, 29, 142)
