"""Lists and asides as barns write them: headings, chores told beside a note, figures put right, what was only heard, offered or fought over."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, read, read_after, remark, unrecorded

HEADINGS: list[Note] = [
    note(
        "Last night's chores. Watered everyone. 14 kindled 8. Box in 9.",
        fact("kindled", doe="14", born=8, on="2026-11-24"),
        fact("nest_box", doe="9", change="in", on="2026-11-24"),
    ),
    note("Okay so last night's chores. 14 kindled 8", fact("kindled", doe="14", born=8, on="2026-11-24")),
    note("I did last night's chores late. 14 kindled 8", fact("kindled", doe="14", born=8)),
    note("chores today", fact("query", about="due", until="2026-11-25")),
    note(
        "For sale until Dec 20\n31 $40\n32 $45\nR22 $35",
        fact("for_sale", who="31", price="40.00", until="2026-12-20"),
        fact("for_sale", who="32", price="45.00", until="2026-12-20"),
        fact("for_sale", who="R22", price="35.00", until="2026-12-20"),
    ),
    note(
        "Reminders please:\nfriday trim nails on 9\nsaturday weigh 31",
        fact("remind", text="trim nails on 9", on="2026-11-27", who="9"),
        fact("remind", text="weigh 31", on="2026-11-28", who="31"),
    ),
    note(
        "Plan for December\n3 - butcher 12\n10th breed 15 to Flint\n20 sell R22",
        fact("planned", who="12", what="cull", on="2026-12-03"),
        fact("planned", who="15", what="breed", on="2026-12-10", with_="3"),
        fact("planned", who="R22", what="sell", on="2026-12-20"),
    ),
    note(
        "Evening rounds\nJuno\nkindled 8\n2 dead\n\nClover\nbox in\n\nBiscuit\nbcs 2.5",
        fact("kindled", doe="14", born=8, alive=6, dead=2),
        fact("nest_box", doe="9", change="in"),
        fact("condition", who="22", score=2.5),
    ),
    note(
        "14: kindled 8\n  2 dead\n  good nest\n9: box in",
        fact("kindled", doe="14", born=8, alive=6, dead=2),
        fact("nest_manners", doe="14", sign="good"),
        fact("nest_box", doe="9", change="in"),
    ),
    note("31\n32\n33\nall fine", ask="what"),
    note("12 6 kits, lost 1", fact("kit_count", doe="12", count=6), fact("kits_lost", doe="12", count=1)),
    note("Doe: 14\nBorn: 8\nBorn: 7", ask="what"),
    note("Doe: 14\nDoe: 15\nDoe: 16", ask="what"),
    note(
        "feed is 22 a bag. 14 kindled 8. 12 nest clean",
        fact("setting", name="feed_price", value="22.00"),
        fact("kindled", doe="14", born=8),
        fact("remark", text="12 nest clean", who="12"),
    ),
    unrecorded("Thurs plan\n- palpate 22\n- list R23 for 35"),
    note(
        "Barn rounds\n14 kindled 8\n12 nest clean\nwater frozen in 6 crocks\n31 32 33 fine",
        fact("kindled", doe="14", born=8),
        fact("remark", text="12 nest clean\nwater frozen in 6 crocks", who="12"),
        fact("remark", text="31 32 33 fine", who="31"),
    ),
    note("Plan for December\n9 breed to Moss", fact("planned", who="9", what="breed", with_="5", on="2026-12-01", until="2026-12-31")),
    note(
        "New arrivals\n46 doe mini rex opal born 3/4\nbuck 47 new zealand white, $40\n48 buck satin",
        fact("animal", tag="48", sex="buck", breed="Satin"),
        fact("animal", tag="46", sex="doe", breed="Mini Rex", color="opal", born="2026-03-04"),
        fact("animal", tag="47", sex="buck", breed="New Zealand", color="white", origin="bought", price="40.00"),
    ),
    note(
        "9 - no kits yet\n12 - 7 kits, eyes open\n16 - bcs 2.5\nbarn 24F",
        fact("remark", text="9 - no kits yet", who="9"),
        fact("kit_count", doe="12", count=7),
        fact("condition", who="16", score=2.5),
        fact("weather", what="cold", celsius=-4.4),
    ),
    note(
        "16 litter:\n3 castor\n2 black\nweaned all 5, 2 bucks 3 does",
        fact("litter_colors", doe="16", colors={"castor": 3, "black": 2}),
        fact("weaned", doe="16", count=5, bucks=2, does=3),
    ),
    note(
        "Date,Feed,Cost\n11/20,4 bags,74.00\n11/22,100 lb,$37",
        fact("feed_bought", bags=4, price="74.00", on="2026-11-20"),
        fact("feed_bought", grams=45359, price="37.00", on="2026-11-22"),
    ),
    note("Date,Bags,Cost\n11/20,3,57.00", fact("feed_bought", bags=3, price="57.00", on="2026-11-20")),
    note("Cold night\n14F", fact("weather", what="cold", celsius=-10.0)),
    note("It got up to ninety four in the barn", fact("weather", what="heat", celsius=34.4)),
]

CHORES: list[Note] = [
    note(
        "scrubbed her tray, and then Biscuit turned around and bit",
        fact("done", chore="scrubbed her tray"),
        fact("temper", who="22", grade="bad", sign="bit"),
    ),
    note(
        "moved Moss to B2, trimmed his nails too",
        fact("moved", who="5", cage="B2"),
        fact("done", chore="trimmed his nails", who="5"),
    ),
    note("Cut the nails of 9 and moved her to B2", fact("done", chore="cut the nails", who="9"), fact("moved", who="9", cage="B2")),
    note(
        "scrubbed her tray and Biscuit bit me",
        fact("done", chore="scrubbed her tray"),
        fact("temper", who="22", grade="bad", sign="bit me"),
    ),
    note("cut Moss's nails", fact("done", chore="cut nails", who="5")),
    note("cleaned trays\nbrushed 14", fact("done", chore="cleaned trays"), fact("done", chore="brushed", who="14")),
    remark("moved the scale to cage 5"),
    note(
        "31, 32 and 33 to B1, B2 and B3", *(fact("moved", who=who, cage=cage) for who, cage in (("31", "B1"), ("32", "B2"), ("33", "B3")))
    ),
    note("moved 31 and 32 to B1", fact("moved", who="31", cage="B1"), fact("moved", who="32", cage="B1")),
    note(
        "put a nest box in with clover and one in with juno",
        fact("nest_box", doe="9", change="in"),
        fact("nest_box", doe="14", change="in"),
    ),
    note("the rat got in 12's box and took 3 kits", fact("kits_lost", doe="12", count=3, cause="predator")),
]

FIGURES: list[Note] = [
    note("sold R22 at church.40bucks", fact("sold", who="R22", price="40.00")),
    note("gave 22 ivermectin.2 ml", fact("treated", who="22", with_="ivermectin", dose=".2 ml")),
    note("gave 22 ivermectin .2 no .3 ml", fact("treated", who="22", with_="ivermectin", dose=".3 ml")),
    note(
        "12 lost 2 kits yesterday.5 left",
        fact("kits_lost", doe="12", count=2, on="2026-11-24"),
        fact("kit_count", doe="12", count=5, on="2026-11-24"),
    ),
    note(
        "33 type 4, fur 4. type 3 i mean", fact("scored", who="33", trait="type", score=3), fact("scored", who="33", trait="fur", score=4)
    ),
    note(
        "33 type 4, fur 4. size 3 i mean.",
        fact("scored", who="33", trait="type", score=4),
        fact("scored", who="33", trait="fur", score=4),
        fact("scored", who="33", trait="size", score=3),
    ),
    note("31 4-6, i mean", fact("weighed", who="31", grams=1984)),
    note("feed 3x50lb 57.00", fact("feed_bought", bags=3, grams=68039, price="57.00")),
    note("bag is 40 lb now", fact("setting", name="feed_bag", value=18144)),
    note("send the reminders at half past five", fact("setting", name="reminder_time", value="05:30")),
    note("i want reminders to come at six in the morning", fact("setting", name="reminder_time", value="06:00")),
    note("remind me at quarter to six pm to feed", fact("remind", text="feed", time="17:45")),
    note("remind me at half past six in the evening to feed", fact("remind", text="feed", time="18:30")),
    remark("half to 31", "31"),
    note("breed 15 to flint this wk", fact("planned", who="15", what="breed", on="2026-11-23", until="2026-11-29", with_="3")),
]

TELLING: list[Note] = [
    note(
        "new buck 46 mini rex black, named him Rusty", fact("animal", tag="46", name="Rusty", sex="buck", breed="Mini Rex", color="black")
    ),
    note("tag 46 (Ash) buck castor born aug 3", fact("animal", tag="46", name="Ash", sex="buck", color="castor", born="2026-08-03")),
    note("new doe 46 (bought) mini rex", fact("animal", tag="46", sex="doe", breed="Mini Rex", origin="bought")),
    note("9 is limping on her left back foot", fact("ailment", who="9", sign="limping on her left back foot")),
    note("9 is limping in the yard", fact("ailment", who="9", sign="limping")),
    note("7 has a cut on his ear", fact("ailment", who="7", sign="cut on his ear")),
    note("33 is going to take Juno's place", fact("planned", who="14", what="replace", with_="33")),
    remark("33 may take Juno's place", "14"),
    remark("ann heard 14 kindled 8", "14"),
    note("heard 22 sneezing", fact("ailment", who="22", sign="sneezing")),
    remark("cnt palpate 22", "22"),
    remark("9 due today", "9"),
    remark("14 was due yesterday", "14"),
    note("what does 5 eat", fact("query", about="feed", who="5")),
    note("what do the bucks eat", fact("query", about="feed", scope="bucks")),
    remark("turned down 40 for R23", "R23"),
    note("22 turned down Moss", fact("refused", doe="22", buck="5")),
    note("lost R22, he was in a fight", fact("died", who="R22")),
    note("14 kindled 8. 14 kindled 8, 2 dead", fact("kindled", doe="14", born=8, alive=6, dead=2)),
]


@pytest.mark.parametrize("row", HEADINGS + CHORES + FIGURES + TELLING, ids=lambda row: row[0])
def test_a_list_or_an_aside_reads(row: Note) -> None:
    """Exactly those facts, and that question."""
    holds(row)


def test_a_lost_fight_is_no_death() -> None:
    """Who lost stays on the book."""
    assert not [told for told in read("31 and 32 fought, 31 lost")[0] if told["kind"] == "died"]


def test_ounces_put_right_keep_their_pounds() -> None:
    """`8 oz not 6` behind 4 lb 6 is 4 lb 8; ounces that were never said ask."""
    assert read_after("31 4-6", "8 oz not 6")[0] == [{"kind": "correct", "set": {"grams": 2041}}]
    assert read_after("31 4-6", "8 oz not 7") == ([], "which_number")
    assert read_after("box in 9", "8 oz not 7") == ([], "which_number")
