"""Papers of lists: the plan, the chores, the crib."""

from __future__ import annotations

from datetime import timedelta

from core.handbook import health
from core.herd.state import Herd
from core.notes.situations import SITUATIONS
from core.reports.due import due
from core.reports.keep_or_cull import keep_or_cull
from core.reports.papers.chores_sheet import AHEAD, chores_sheet
from core.reports.papers.crib_sheet import crib_sheet
from core.reports.papers.leaf import HARD_SPACE, Leaf
from core.reports.papers.plan_sheet import plan_sheet
from core.reports.papers.wanted import Wanted
from tests.farm import TODAY, ago, small_herd, tell


def plan(herd: Herd | None = None, **wish: str) -> Leaf:
    """The plan; there must be one."""
    found = plan_sheet(small_herd() if herd is None else herd, TODAY, Wanted(**wish))  # type: ignore[arg-type]
    assert found is not None
    return found


def test_the_plan_has_everybody_with_all_the_reasons() -> None:
    """The same as `keep` tells, verdict by verdict."""
    advice = keep_or_cull(small_herd(), TODAY)
    leaf = plan()
    rows = {row[0]: row for section in leaf.sections for row in section.rows}
    assert set(rows) == {one.called for one in advice.verdicts}
    for one in advice.verdicts:
        assert all(reason.text in rows[one.called][2] for reason in one.shown)
    assert leaf.foot[-1] == health.ADVICE
    assert all(line in leaf.foot for line in advice.plan.lines(small_herd(), TODAY))


def test_those_who_go_are_ticked_off_and_not_too_early() -> None:
    """A doe with kits waits for their weaning, and the day has its year."""
    herd = tell(small_herd(), "planned", who="12", what="cull")
    (section,) = plan(herd, who="12").sections
    assert section.head == "Cull: 1 animal"
    assert section.to_tick
    assert "Not before " in section.rows[0][2]
    assert section.rows[0][2].endswith("2026.")
    assert not plan(who="5").sections[0].to_tick


def test_a_part_of_the_plan() -> None:
    """Bucks, say: then what the whole plan saves is not under it, but what to heed is."""
    leaf = plan(scope="bucks")
    assert {row[0] for section in leaf.sections for row in section.rows} == {"3 Flint", "5 Moss"}
    herd = tell(small_herd(), "planned", who="12", what="cull")
    whole, part = plan(herd), plan(herd, breed="New Zealand")
    assert len(whole.foot) == len(part.foot) + 1
    assert health.SLAUGHTER in part.foot


def test_no_plan_where_nobody_is_weaned() -> None:
    """There is nothing to print."""
    assert plan_sheet(Herd(), TODAY, Wanted()) is None


def test_the_chores_are_those_that_are_due() -> None:
    """All of a week's, under their days, overdue ones first; days without any are told."""
    herd = tell(small_herd(), "remind", text="trim nails on 3", on=ago(-2), time="16:30", who="3")
    leaf = chores_sheet(herd, TODAY, Wanted())
    chores = due(herd, TODAY, AHEAD).chores
    told = [row[0] for section in leaf.sections for row in section.rows]
    assert len(told) == len(chores)
    assert all(chore.text.lower() in line.lower() for chore, line in zip(chores, told, strict=True))
    assert [section.head for section in leaf.sections] == [
        "Before today", "Wed 25 Nov", "Thu 26 Nov", "Fri 27 Nov", "Sat 28 Nov", "Sun 29 Nov", "Mon 30 Nov", "Tue 1 Dec",
    ]  # fmt: skip
    assert "16:30 trim nails on 3" in told
    assert leaf.title == "Chores, Wed 25 Nov 2026 to Tue 1 Dec 2026"
    assert any(section.lines == ("Nothing is due.",) for section in leaf.sections)


def test_a_long_time_has_only_days_with_chores() -> None:
    """Three months of empty days are no use on a wall."""
    leaf = chores_sheet(small_herd(), TODAY, Wanted(days=90))
    assert all(section.rows for section in leaf.sections)
    assert len(leaf.sections) < 90


def test_one_animals_chores_on_paper() -> None:
    """Hers only; nothing late, no section for it."""
    leaf = chores_sheet(small_herd(), TODAY, Wanted("22", days=0))
    chores = due(small_herd(), TODAY, 0).of("22").chores
    assert leaf.title == "Chores for 22, Wed 25 Nov 2026"
    assert len(chores) == sum(len(section.rows) for section in leaf.sections) == 1


def test_a_doe_far_over_her_time_has_a_caution() -> None:
    """On the sheet too."""
    herd = tell(small_herd(), "bred", doe="15", buck="3", on=TODAY - timedelta(35))
    assert any(health.LONG_KINDLING in line for line in chores_sheet(herd, TODAY, Wanted()).foot)


def test_the_crib_has_every_saying_unbroken() -> None:
    """As `help` tells them."""
    (section,) = crib_sheet().sections
    assert [row[0].lower() for row in section.rows] == [one.name for one in SITUATIONS]
    for row, one in zip(section.rows, SITUATIONS, strict=True):
        assert all(saying.replace(" ", HARD_SPACE) in row[1] for saying in one.sayings)
