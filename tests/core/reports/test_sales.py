"""What was sold, kits without a tag too, and what it brought."""

from __future__ import annotations

from datetime import timedelta

from core.notes.kinds import KIND_OF
from core.reports.litter_story import story
from core.reports.sales import sales
from tests.farm import TODAY, ago, fact, tell
from tests.herds import Barn


def weaned(kits: int = 6) -> Barn:
    """A doe with a weaned litter."""
    return Barn().buck("3").doe("9").litter("9", "3", 60, 8, weaned=kits)


def test_kits_without_a_tag_count_among_the_sales() -> None:
    """Their heads and their money; those without a price are told apart, not counted as nothing."""
    barn = weaned().doe("31").say("sold", who="31", price=4500, on=ago(3)).say("sold", litter_of="9", count=2, price=4000, on=ago(2))
    barn.say("sold", litter_of="9", count=1, on=ago(1))
    assert sales(barn.seen, None).lines[1] == "Sold in 2026: 4 (3 kits without a tag), $85.00, 1 of them with no price noted."
    assert sales(barn.seen, "Mini Rex").lines[1] == "Nothing sold in 2026 yet."


def test_sale_without_any_price_brings_no_zero() -> None:
    """No sum is told where no price was noted."""
    barn = weaned().say("sold", litter_of="9", count=1, on=ago(1)).say("given_away", litter_of="9", count=1, on=ago(1))
    assert sales(barn.seen, None).lines[1] == "Sold in 2026: 1 (1 kit without a tag), no price noted."


def test_no_more_kits_are_offered_than_are_there() -> None:
    """Three offered and four of six gone: two are left to offer; then none."""
    barn = weaned().say("for_sale", litter_of="9", count=3, until=TODAY + timedelta(9)).say("sold", litter_of="9", count=4)
    assert sales(barn.seen, None).lines[1] == "2 kits of 9"
    assert sales(barn.say("sold", litter_of="9", count=2).seen, None).lines[0].startswith("Nobody is for sale.")


def test_litter_tells_who_left_and_how_many_did_not() -> None:
    """Buyer, money and day of each kit that left; of a nest the count there is told already."""
    barn = weaned().say("sold", litter_of="9", count=2, price=4000, to="a neighbor", on=ago(1)).say("culled", litter_of="9", count=1)
    told = story(barn.seen, barn.find("9"), next(iter(barn.herd.litters.values())))
    assert told.endswith("2 sold to a neighbor for $40.00 yesterday, 1 butchered today, 3 without a tag left")
    nest = Barn().buck("3").doe("9").litter("9", "3", 30, 8).say("given_away", litter_of="9", count=1)
    assert story(nest.seen, nest.find("9"), next(iter(nest.herd.litters.values()))).endswith("7 now, 1 given away today")


def test_kits_sold_out_of_the_nest_get_a_word() -> None:
    """Sold younger than anybody weans: it is recorded, and said; older or weaned ones get none."""
    young = Barn().buck("3").doe("9").litter("9", "3", 5, 8).herd
    lines = KIND_OF["sold"].reply(fact("sold", litter_of="9", count=2), young, tell(young, "sold", litter_of="9", count=2))
    assert lines[2] == "They are 5 days old: kits need their mother's milk until they are weaned. Let them go after that."
    for herd in (Barn().buck("3").doe("9").litter("9", "3", 30, 8).herd, weaned().herd):
        after = tell(herd, "sold", litter_of="9", count=2)
        assert len(KIND_OF["sold"].reply(fact("sold", litter_of="9", count=2), herd, after)) == 2
