"""A litter's record on paper."""

from __future__ import annotations

from core.herd.state import Herd, Litter
from core.reports.papers.leaf import Leaf, Section
from core.reports.papers.litter_record import LINES, litter_records
from core.reports.papers.wanted import Wanted
from tests.farm import ago, small_herd, tell


def record(who: str, herd: Herd | None = None) -> Leaf:
    """The one record."""
    (leaf,) = litter_records(small_herd() if herd is None else herd, Wanted(who))
    return leaf


def part(leaf: Leaf, head: str) -> Section:
    """That section of it."""
    return next(section for section in leaf.sections if section.head == head)


def facts(leaf: Leaf) -> dict[str, str]:
    """What stands at its head."""
    return dict(leaf.sections[0].rows)  # type: ignore[arg-type]


def test_its_parents_and_birth() -> None:
    """With the days, and empty where nobody told."""
    leaf = record("16")
    assert leaf.title == "Litter of 16 Thistle, 8 Oct 2026"
    assert facts(leaf) == {
        "Dam": "16 Thistle, Mini Rex, black",
        "Sire": "3 Flint, Mini Rex, black",
        "Bred": "7 Sep 2026, due 8 Oct 2026",
        "Nest box in": "",
        "Kindled": "8 Oct 2026",
        "Born": "5 alive, 1 dead",
        "Nest box out": "",
        "Weaned": "5 on 12 Nov 2026",
        "Colors": "",
    }


def test_a_line_for_each_kit() -> None:
    """Those with tags have theirs; the others are left to the pencil."""
    herd = tell(small_herd(), "weighed", who="31", grams=1800, on=ago(129 - 72))
    herd = tell(herd, "weighed", who="31", grams=1500, on=ago(129 - 65))
    herd = tell(herd, "weighed", who="31", grams=1850, on=ago(129 - 74))
    kits = part(record("14", herd), "Kits")
    assert kits.columns == ("Kit", "Sex", "Color", "8 weeks", "10 weeks", "12 weeks", "16 weeks", "What became of it")
    assert kits.rows == (("31", "buck", "castor", "", "3 lb 15 oz", "", "", ""),)
    assert part(record("16"), "Kits").rows == (("",) * 8,) * 5
    sold = tell(tell(herd, "sold", who="31", on=ago(3)), "weaned", doe="14", count=4, on=ago(94))
    assert part(record("14", sold), "Kits").rows[0][-1] == "sold 22 Nov 2026"


def test_what_was_lost_and_fostered_and_weighed() -> None:
    """Each with its day; a part that has nothing is left out."""
    herd = tell(small_herd(), "kits_lost", doe="12", count=2, cause="cold", on=ago(14))
    herd = tell(herd, "kits_lost", doe="12", count=1, on=ago(13))
    herd = tell(herd, "kindled", doe="9", born=3, on=ago(0))
    herd = tell(herd, "fostered", from_="12", to="9", count=1, on=ago(0))
    herd = tell(herd, "litter_weighed", doe="12", grams=900, count=3, on=ago(0))
    leaf = record("12", herd)
    assert part(leaf, "Lost").rows == (("11 Nov 2026", "1 day", "2", "cold"), ("12 Nov 2026", "2 days", "1", "no cause noted"))
    assert part(leaf, "Fostered").rows == (("25 Nov 2026", "1", "to 9"),)
    assert part(leaf, "Weighed together").rows == (("25 Nov 2026", "2 weeks", "3", "2 lb", "11 oz"),)
    assert part(record("9", herd), "Fostered").rows == (("25 Nov 2026", "1", "from 12"),)
    assert {section.head for section in record("16").sections} == {"", "Kits", "Notes"}


def test_what_is_not_known_is_left_out_of_the_reckoning() -> None:
    """A birth without its mating, its count or its sire; kits from nobody knows where; weights without a count."""
    herd = tell(Herd(), "animal", tag="1", sex="doe")
    herd = herd.with_litter(Litter("1@2026-11-22", "1", None, (), ago(3), weighings=((ago(0), 900, None),)))
    herd = tell(herd, "fostered", from_="9", to="1", count=2, on=ago(1))
    leaf = record("1", herd)
    known = facts(leaf)
    assert (known["Sire"], known["Bred"], known["Nest box in"], known["Born"], known["Weaned"]) == ("", "", "", "", "")
    assert part(leaf, "Fostered").rows[0][2] == "from another litter"
    assert part(leaf, "Weighed together").rows[0][2:] == ("", "2 lb", "")


def test_two_sires_are_both_told() -> None:
    """Nobody knows which."""
    herd = tell(tell(small_herd(), "bred", doe="15", buck="3", on=ago(31)), "bred", doe="15", buck="5", on=ago(30))
    herd = tell(herd, "kindled", doe="15", born=6, on=ago(0))
    assert facts(record("15", herd))["Sire"] in {"3 Flint or 5 Moss", "5 Moss or 3 Flint"}


def test_weaned_by_sex_and_colors() -> None:
    """As they were told."""
    herd = tell(small_herd(), "weaned", doe="12", count=7, bucks=3, does=4, on=ago(0))
    herd = tell(herd, "litter_colors", doe="12", colors=(("red", 4), ("white", 3)), on=ago(0))
    known = facts(record("12", herd))
    assert known["Weaned"] == "7 (3 bucks, 4 does) on 25 Nov 2026"
    assert known["Colors"] == "4 red, 3 white"


def test_which_litter_is_meant() -> None:
    """A doe's newest, else the newest a buck sired, else the one it was born in; without a name all under their does."""
    assert record("3").title.startswith("Litter of 16")
    assert record("31").title.startswith("Litter of 14")
    assert [leaf.title for leaf in litter_records(small_herd(), Wanted())] == ["Litter of 12 Sorrel, 10 Nov 2026"]
    assert litter_records(small_herd(), Wanted("22")) == ()
    assert litter_records(Herd(), Wanted()) == ()


def test_a_litter_that_was_never_counted_right_does_not_fill_a_book() -> None:
    """Fifty kits have as many lines as fit."""
    litter = Litter("1@2026-11-01", "1", None, (), ago(24), born=50)
    (leaf,) = litter_records(Herd().with_litter(litter), Wanted())
    assert len(part(leaf, "Kits").rows) == LINES
