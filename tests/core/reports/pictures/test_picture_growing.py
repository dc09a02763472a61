"""What a picture of one animal's weights shows."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from core.problem import Problem
from core.reports.evidence import evidence
from core.reports.growing import breed_curve, curve_for, heading
from core.reports.pictures.growing import _aim_said, growing_animal
from core.reports.pictures.units import WEEK, day_marks
from core.reports.pictures.values import Growing
from core.words import POUND_G
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


def shown(barn: Barn, tag: str) -> Growing:
    """The picture of that animal."""
    found = growing_animal(barn.seen, barn.find(tag))
    assert isinstance(found, Growing)
    return found


def young(**weights: int) -> Barn:
    """A farm with weighed kits, and a grow-out K of 80 days with these weights, by age: `d56=1500`."""
    barn = two_sires().say("animal", tag="K", sex="buck", breed="New Zealand", born=ago(80), origin="born_here")
    for age, grams in weights.items():
        barn.weigh("K", grams, 80 - int(age.removeprefix("d")))
    return barn


def test_weights_stand_at_their_ages_in_the_farms_units() -> None:
    """Weeks along, pounds up."""
    told = shown(young(d56=1500, d70=1900), "K")
    assert told.series[0].points == ((56 / WEEK, 1500 / float(POUND_G)), (70 / WEEK, 1900 / float(POUND_G)))
    assert told.up.label == "lb"
    assert told.today == 80 / WEEK


def test_a_farm_that_weighs_in_kilograms_sees_kilograms() -> None:
    """Both the axis and the words."""
    told = shown(young(d70=1900).set("weight_units", "kg"), "K")
    assert told.up.label == "kg"
    assert told.series[0].points[0][1] == 1.9
    assert "1.90 kg at 10 weeks" in told.note


def test_the_lines_are_the_curves_of_the_card() -> None:
    """Its own curve, its breed's on this farm, and the target with its likely days."""
    barn = young(d56=1500, d70=1900)
    told, seen, one = shown(barn, "K"), barn.seen, barn.find("K")
    end, last = told.own[-1]
    assert last == pytest.approx(curve_for(seen, one).weight_at(end * WEEK) / float(POUND_G))
    end, last = told.usual[-1]
    assert last == pytest.approx(breed_curve(seen, "New Zealand", "buck").weight_at(end * WEEK) / float(POUND_G))
    card = heading(seen, one)
    assert told.aim is not None
    assert card.on is not None
    assert told.aim.on == (card.on - ago(80)).days / WEEK
    assert told.aim.early <= told.aim.on <= (told.aim.late or told.along.end) <= told.along.end
    assert told.target == card.target / float(POUND_G)


def test_everything_is_within_the_picture() -> None:
    """No weight, line or day runs out of it."""
    told = shown(young(d30=700, d56=1500, d70=2900), "K")
    for along, up in (*told.series[0].points, *told.own, *told.usual):
        assert 0 <= along <= told.along.end
        assert 0 <= up <= told.up.end


def test_the_words_say_the_same() -> None:
    """Who can't see the picture reads the weight, the day and what it stands on."""
    told = shown(young(d56=1500, d70=1900), "K")
    assert told.alt.startswith("Buck K: 4 lb 3 oz at 10 weeks.\nMakes 5 lb about ")
    assert told.aim is not None
    assert told.aim.said.startswith("makes it ")


def test_one_that_should_be_there_by_now_is_to_be_weighed() -> None:
    """An old weight just below the target: no day in the past is foretold."""
    told = shown(young(d30=700, d56=2200), "K")
    assert told.aim is not None
    assert told.aim.said == "should be there\nby now: weigh it"


def test_one_that_may_never_make_it() -> None:
    """A bar without an end, or no day at all."""
    aims = [shown(young(d70=1500).set("target_weight", target), "K").aim for target in range(2500, 4500, 100)]
    assert aims[-1] is None
    (first, *_) = [aim for aim in aims if aim is not None and aim.late is None]
    assert first.said.endswith("or never)")


def test_a_day_that_is_sure_stands_alone() -> None:
    """No bounds where both are the same day."""
    on = date(2026, 12, 1)
    assert _aim_said(on, on, on, TODAY) == "makes it Tue 1 Dec"


def test_one_that_made_it_has_no_day() -> None:
    """The target stands, reached."""
    told = shown(young(d78=2500), "K")
    assert told.aim is None
    assert told.target is not None


def test_a_grown_one_is_shown_by_days() -> None:
    """Months along, no target; the first year and each new one is named."""
    barn = Barn().doe("14", age=900, name="Juno").weigh("14", 4000, 400).weigh("14", 4200, 10)
    told = shown(barn, "14")
    assert told.series[0].points[0] == (0.0, 4000 / float(POUND_G))
    assert told.series[0].points[1][0] == 390
    assert (told.own, told.usual, told.target, told.today) == ((), (), None, None)
    assert told.title == "Doe 14 (Juno): weights"
    assert told.alt == "Doe 14 (Juno): 2 weights.\nNewest: 9 lb 4 oz at 2.4 years."


def test_one_whose_birth_nobody_told_is_shown_by_days() -> None:
    """One weight makes a picture too."""
    told = shown(Barn().doe("14", age=None).weigh("14", 4000, 1), "14")
    assert told.along.end == WEEK
    assert "yesterday" in told.note


def test_one_that_is_gone_leads_nowhere() -> None:
    """Its weights and its breed's curve, no day to come."""
    told = shown(young(d56=1500, d70=1900).say("sold", who="K", on=ago(3)), "K")
    assert (told.own, told.aim, told.today) == ((), None, None)
    assert told.usual


def test_one_that_was_never_weighed() -> None:
    """Nothing to show, and how to weigh it in."""
    barn = Barn().doe("14")
    told = growing_animal(barn.seen, barn.find("14"))
    assert told == Problem("nothing_to_show", "Doe 14 was never weighed.", remedy="Tell me: 14 4-6")


def test_weights_to_come_are_not_shown() -> None:
    """The day that is asked about counts."""
    barn = Barn().doe("14").weigh("14", 4000)
    found = growing_animal(evidence(barn.herd, TODAY - timedelta(1)), barn.find("14"))
    assert isinstance(found, Problem)


@pytest.mark.parametrize(
    ("first", "last", "marks"),
    [
        (date(2026, 11, 3), date(2026, 11, 20), ((6.0, "9 Nov"), (13.0, "16 Nov"))),
        (date(2026, 11, 3), date(2026, 11, 5), ((0.0, "3 Nov"),)),
        (date(2026, 8, 1), date(2026, 10, 20), ((0.0, "Aug"), (31.0, "Sep"), (61.0, "Oct"))),
        (date(2025, 11, 20), date(2026, 1, 20), ((11.0, "Dec\n2025"), (42.0, "Jan\n2026"))),
    ],
)
def test_days_are_marked_by_weeks_or_months(first: date, last: date, marks: tuple[tuple[float, str], ...]) -> None:
    """As many as fit; a new year is named."""
    assert day_marks(first, last) == marks


def test_years_of_days_have_few_marks() -> None:
    """What would run into each other is left out."""
    assert len(day_marks(date(2020, 1, 1), date(2026, 1, 1))) <= 7
