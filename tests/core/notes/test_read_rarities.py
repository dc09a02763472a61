"""Forms that notes seldom take: odd days, spoken fractions, slashes, hyphens and homophones."""

from __future__ import annotations

import pytest

from core.app import reader
from core.app.reading import Reader
from tests.core.notes.kinds.reads import AT, ROSTER, Note, fact, holds, note, remark, unrecorded

DAYS: list[Note] = [
    note("bred 15 to Flint night before last", fact("bred", doe="15", buck="3", on="2026-11-23")),
    note("bred 15 to Flint yesterday last night", fact("bred", doe="15", buck="3", on="2026-11-24")),
    note("bred 15 to Flint last weekend, saturday", fact("bred", doe="15", buck="3", on="2026-11-21")),
    note("bred 15 to Flint 11/21 sat", fact("bred", doe="15", buck="3", on="2026-11-21")),
    note("bred 15 to Flint on nov 31", ask="when"),
    note("bred 15 to Flint 2 days ago friday", ask="when"),
    note("bred 15 to Flint in december", ask="when"),
    note("bred 15 to Flint 2 months from now", ask="when"),
    note("butcher 12 in february", fact("planned", who="12", what="cull", on="2027-02-01", until="2027-02-28")),
    note("breed 7 to 14 next january", fact("planned", who="14", what="breed", on="2027-01-01", until="2027-01-31", with_="7")),
    note("remind me in 99999 days to trim nails on 9", ask="when"),
    note("list 32 for 60 until new year's", fact("for_sale", who="32", price="60.00", until="2027-01-01")),
    note("keep 32 until new years eve", fact("planned", who="32", what="keep", until="2026-12-31")),
    note("breed 15 to Flint next month on the 5th", fact("planned", who="15", what="breed", on="2026-12-05", with_="3")),
    note("breed 15 to Flint on the 5th of next month", fact("planned", who="15", what="breed", on="2026-12-05", with_="3")),
    note("butcher 12 on the 31st of this month", ask="when"),
    note("weighed 31 4-6 on the 45th", ask="when"),
    note("14 kindled 8 on the 31st day", fact("kindled", doe="14", born=8)),
    note("bred 15 to Flint november the 20th", fact("bred", doe="15", buck="3", on="2026-11-20")),
    note("butcher 12 in march 2027", fact("planned", who="12", what="cull", on="2027-03-01", until="2027-03-31")),
    note("bred 15 to Flint last weekend", ask="when"),
    note("palpated 22 day 14 bred", fact("palpated", doe="22", result="bred")),
    note("bred 15 to Flint, mon 11/23", fact("bred", doe="15", buck="3", on="2026-11-23")),
    remark("12's kits saw the sun", "12"),
    remark("new years resolution: fewer does"),
    unrecorded("breed 15 to Flint 2 weeks from weaning"),
    remark("Sorrel may 3 weeks on be ready", "12"),
    unrecorded("sold Pip 3 mo buck for 40"),
]

AMOUNTS: list[Note] = [
    note("31 3 and 3 quarters lb", fact("weighed", who="31", grams=1701)),
    note("weighed 31 4-6 lb", fact("weighed", who="31", grams=1984)),
    note("weighed 31 3:15", fact("weighed", who="31", grams=1786)),
    note("weighed 31 4 lbs. 6 oz", fact("weighed", who="31", grams=1984)),
    note("weighed 31 four pounds ate ounces", fact("weighed", who="31", grams=2041)),
    note("fed 1 cup 1/2 to 7", fact("ration", who="7", amount=1.5, unit="cup")),
    note(
        "does get 1 cup, bucks 1/2",
        fact("ration", scope="does", amount=1.0, unit="cup"),
        fact("ration", scope="bucks", amount=0.5, unit="cup"),
    ),
    note("7 gets 1/2 a cup", fact("ration", who="7", amount=0.5, unit="cup")),
    note("7 gets a half a cup", fact("ration", who="7", amount=0.5, unit="cup")),
    note("gave 7 a heaping cup", fact("ration", who="7", amount=1.0, unit="cup")),
    note("7 gets a cup", fact("ration", who="7", amount=1.0, unit="cup")),
    note("a pound of feed left", fact("feed_left", grams=454)),
    note("sold 31 for a hundred and ten", fact("sold", who="31", price="110.00")),
    note("bought a couple bags feed", fact("feed_bought", bags=2)),
    note("12 has 6 kits, 3 weeks-old", fact("kit_count", doe="12", count=6, age_days=21)),
    note("12 has 6 kits 3 week's old", fact("kit_count", doe="12", count=6, age_days=21)),
    note("12 has 6 kits 3-week-old", fact("kit_count", doe="12", count=6, age_days=21)),
    note("31 4-6 lb oz", fact("weighed", who="31", grams=1984)),
    note("bucks get 3/4 of a cup each", fact("ration", scope="bucks", amount=0.75, unit="cup")),
    note("doe 12.6 kits", fact("kit_count", doe="12", count=6)),
    note("a hundred pounds of feed left", fact("feed_left", grams=45359)),
    note("a bag and a half of feed left", fact("feed_left", grams=34020)),
    note("we have 1.5 bags of feed left", fact("feed_left", grams=34020)),
    note("palpated 22 d14 bred", fact("palpated", doe="22", result="bred")),
    remark("gave 7 vit d", "7"),
    note("weighed 31 too lb", fact("weighed", who="31", grams=907)),
    note("12 lost too more", fact("kits_lost", doe="12", count=2)),
    note("12 lost too of the kits", fact("kits_lost", doe="12", count=2)),
    note("Juno kindled six and won died", fact("kindled", doe="14", born=6, alive=5, dead=1)),
    note("Juno kindled eight and too were dead", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("14 kindled for, all alive", fact("kindled", doe="14", born=4, alive=4)),
    note("Juno kindled too with one dead", fact("kindled", doe="14", born=2, alive=1, dead=1)),
    note("14 kindled a dozen", fact("kindled", doe="14", born=12)),
    note("found a couple dead in 12's box", fact("kits_lost", doe="12", count=2)),
    note(
        "31 scores type four fur for",
        fact("scored", who="31", trait="type", score=4.0),
        fact("scored", who="31", trait="fur", score=4.0),
    ),
    note("the red doe's seven kits are fat", fact("kit_count", doe="12", count=7)),
    unrecorded("bucks get 3/4"),
    unrecorded("lost r two and a half"),
    unrecorded("that doe half starved her kits"),
    unrecorded("cleaned the pen half way"),
]

PAIRS: list[Note] = [
    note("14 x3", fact("bred", doe="14", buck="3")),
    note("Clover: x3", fact("bred", doe="9", buck="3")),
    note("bred 15 to Flint x3", fact("bred", doe="15", buck="3", falls=3)),
    note("sold 31, 14 x3", fact("sold", who="31"), fact("bred", doe="14", buck="3")),
    note("sold 31. Clover x3", fact("sold", who="31"), fact("bred", doe="9", buck="3")),
    note("12 kindled 8 at 10 p.m.", ask="confirm"),
]

ANIMALS: list[Note] = [
    note("bred 15/7", fact("bred", doe="15", buck="7")),
    note("bred #15 to #7", fact("bred", doe="15", buck="7")),
    note("weighed #99 4-6", ask="which_animal"),
    note("99's box in", ask="which_animal"),
    note("weighed r-22 3 lb", fact("weighed", who="R22", grams=1361)),
    note("found r ninety nine dead", ask="which_animal"),
    note("doe one twenty kindled 8", ask="which_animal"),
    note("missed doe to", ask="which_animal"),
    note("the opal doe s box in", fact("nest_box", doe="15", change="in")),
    note("moved 14 to cage see seven", fact("moved", who="14", cage="C7")),
    note("moved 14 to cage see for", fact("moved", who="14", cage="C4")),
    note("moved Clover to cage c-7 this morning", fact("moved", who="9", cage="C7")),
    note("moved thirty one to c four", fact("moved", who="31", cage="C4")),
    note("moved 14 to b two kits", ask="what"),
    note("Opal doe 15 weighed 4 lb", fact("weighed", who="15", grams=1814)),
    unrecorded("mess in c four this morning"),
    note("weighed r 2-3", ask="which_animal"),
    note("14's, 14 has mites", fact("ailment", who="14", sign="mites")),
    remark("moved 14 to a couple nests", "14"),
    unrecorded("the new zealand doe from the fair is loud"),
    note(
        "new doe 41 Magpie new zealand white",
        fact("animal", tag="41", name="Magpie", sex="doe", breed="New Zealand", color="white"),
    ),
]


@pytest.mark.parametrize("row", DAYS + AMOUNTS + PAIRS + ANIMALS, ids=lambda row: row[0])
def test_a_rare_form_reads(row: Note) -> None:
    """Exactly those facts, and that question."""
    holds(row)


#: Animals whose names and tags are other words too.
NAMESAKES = [
    {"tag": "41", "name": "June", "sex": "doe", "breed": "Mini Rex", "color": "castor", "born": "2025-05-02", "stage": "senior"},
    {"tag": "42", "name": "Big Red", "sex": "doe", "breed": "New Zealand", "color": "red", "born": "2025-05-02", "stage": "senior"},
    {"tag": "AR7", "name": None, "sex": "buck", "breed": "New Zealand", "color": "white", "born": "2025-05-02", "stage": "senior"},
]


def told(text: str) -> dict[str, object]:
    """The one fact that a note becomes where those animals live too."""
    farm = reader({**ROSTER, "animals": ROSTER["animals"] + NAMESAKES})
    assert isinstance(farm, Reader)
    document = farm.read(text, AT)
    (found,) = document["facts"]
    assert document["ask"] is None
    return {name: value for name, value in found.items() if value is not None}


def test_a_month_is_a_month_though_a_doe_is_called_so() -> None:
    """`on june 12` is a day; `June` behind `bred` is the doe."""
    assert told("breed 15 to Flint on june 12")["on"] == "2027-06-12"
    assert told("bred June to Flint")["doe"] == "41"


def test_the_first_word_of_a_name_is_no_animal() -> None:
    """`big red` is the doe of that name; `doe big as a barn` tells of no doe."""
    assert told("doe big red weighed 9-2")["who"] == "42"
    assert told("doe big as a barn") == {"kind": "remark", "text": "doe big as a barn", "on": "2026-11-25"}


def test_a_tag_that_sounds_like_a_letter_is_read_as_it_is_spelled() -> None:
    """`ar7` is the buck with that tag, never R7."""
    assert told("sold ar7 for 40")["who"] == "AR7"
