"""Turns of phrase in which a word of the barn says something else."""

from __future__ import annotations

import pytest

from core.notes.reader import read
from core.notes.reading import Message, Reading
from tests.core.notes.test_read_notes import AT, herd


def reading(text: str) -> Reading:
    """What the reader makes of it."""
    return read(Message(text, AT), herd())


def kinds(text: str) -> set[str]:
    """The kinds of the facts that the message gives."""
    return {fact.kind for fact in reading(text).facts}


@pytest.mark.parametrize(
    "text",
    [
        "31 is 4 oz short",
        "31 has 4 oz to go",
        "31 got 4 lbs of hay",
        "31 got 4 lbs hay",
        "31 under 4-6",
        "31 more than 4 lb",
        "31 was born at 2 oz",
        "moss ate 1/2 cup",
        "gave moss 1 cup of water",
        "gave moss a quarter cup of oats",
        "gave moss 1/2 cup tonight",
        "the bag says 1 cup a day for does",
        "22 bit the wire",
        "sweet feed for 9",
        "the judge was mean to 22",
        "check 5 for mites",
        "5 is over his snuffles",
        "5 is healed from sore hock",
        "check 31 for white toenails",
        "31 isn't dq",
        "R22 stopped dead",
        "the gizmo died by 14",
        "R22 passed on breakfast",
        "lost R22 in the class",
        "lost R22's card",
        "12 has 2 dead flies in the water",
        "lost count at 7 with 12",
        "15 refuses to eat",
        "the vet refused to see 15",
        "the buyer refused 22",
        "no new doe 40, nothing to report",
        "new doe 40, but the deal fell through",
        "new doe 46 didn't come after all",
        "I was told there is a new buck 47 at the fair",
        "gave R22 to the judge to look at",
        "gave R22 to Ann to hold",
        "gave R22 back to his mom",
        "sale of R23 fell through",
        "R23 is as good as sold",
        "sold on R23, he's great",
        "5 and 3 are for the sale",
        "grocery list: 32 apples",
        "list of 32",
        "butchering day cost 32",
        "no plan to cull 12",
        "review the book for 7",
        "keep 7 on hay only",
        "replace 14's water bottle",
        "well done 9",
        "9 is done for",
        "bought 3 bags of dog food",
        "bought 2 bags of concrete 50 lb",
        "120 lb of chicken feed left",
        "first show for 3 on saturday",
        "incubator 99.5F",
        "cold water for 9",
        "hit or miss with 14",
        "neighbor butchered 5",
        "the neighbor palpated his doe 22 open",
        "Sam's 31 weighs 4-6",
        "31 feels like 4-6",
        "a 4-6 buck like 31",
        "31 won 4-6 of hay",
        "moss begged for 1/2 cup",
        "R22 scared me to death",
        "R22 passed out from the heat but came round",
        "lost 33 votes",
        "R23 sold himself to the judge",
        "R23 sold? not yet",
        "32 escaped freezer camp",
        "32 dodged the butcher",
        "culled my notes on 32",
        "14 belongs in B3",
        "built cage B3 for 14",
        "14 moved around in B3",
        "22's ivermectin withdrawal ends friday",
        "weaning stress in 16",
        "16 weaned herself off hay",
        "16's kits look weaned",
        "mites in the hay by 5",
        "dog has mites, 5 ok",
        "vet cleared 5 of mites",
        "bloat scare with 5 was nothing",
        "15 x 7 would make nice kits",
        "15 x 3 should be fine",
        "33 looks almost black",
        "33 is blue today",
        "I stepped on 16's water bottle",
        "retire the old 12 gauge",
        "the neighbor has 120 lb feed left",
    ],
)
def test_a_turn_of_phrase_is_no_fact(text: str) -> None:
    """Nothing but the words themselves is kept."""
    assert kinds(text) <= {"remark"}


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("31 just over 4-6", "weighed"),
        ("31 is a 4-6", "weighed"),
        ("31 got best of breed, weighed 4-6", "weighed"),
        ("a fox got into Sorrel's cage and she lost 3 kits", "kits_lost"),
        ("R22 lost at the show, placed 4th", "shown"),
        ("33 is blue", "color"),
        ("31 is 4 lb of trouble", "weighed"),
        ("gave moss 1/2 cup today, that's what he gets from now on", "ration"),
        ("22 bit the vet", "temper"),
        ("9 is a sweet doe", "temper"),
        ("checked 5 and found mites", "ailment"),
        ("lost R22 in the night", "died"),
        ("lost 33 in the cold snap", "died"),
        ("12 has 2 dead overnight", "kits_lost"),
        ("15 refused to lift for 3", "refused"),
        ("the neighbor gave us a new buck, tag 51", "animal"),
        ("gave R22 to Ann", "given_away"),
        ("keep 7 for breeding", "planned"),
        ("done trimming nails 9", "done"),
        ("14 missed, nothing in the box", "missed"),
        ("neighbor saw Juno kindled 6", "kindled"),
        ("18 degrees last night, every water bottle froze", "weather"),
    ],
)
def test_plain_words_stay_facts(text: str, kind: str) -> None:
    """The same words in their plain sense."""
    assert kind in kinds(text)


@pytest.mark.parametrize(
    ("text", "choices"),
    [
        ("R22's dam died", ("9",)),
        ("31's sire had a white toenail", ("3",)),
        ("31's late mother weighs 4-6", ("14",)),
        ("31's sister weighs 4-6", ()),
        ("bred 15 to 31's brother", ()),
    ],
)
def test_kin_of_a_named_animal_are_asked_for(text: str, choices: tuple[str, ...]) -> None:
    """It is not the animal whose kin they are; a parent on the book is the choice."""
    found = reading(text)
    assert found.facts == ()
    assert found.ask is not None
    assert (found.ask.why, found.ask.choices) == ("which_animal", choices)


def test_kin_with_a_tag_of_its_own_is_never_the_other() -> None:
    """`14's daughter 33` is not 14."""
    assert all(getattr(fact, "who", None) != "14" for fact in reading("14's daughter 33 weighs 3-12").facts)


def test_an_animal_lost_somewhere_is_asked_about() -> None:
    """Lost in the weeds may be dead or only out of sight."""
    found = reading("lost R22 in the weeds")
    assert found.facts == ()
    assert found.ask is not None
    assert "out of sight" in found.ask.text
