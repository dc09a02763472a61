"""The pieces that notes are read from: clean text, tokens, numbers in words, measures, animals, slips."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from core.herd.settings import Settings
from core.herd.state import Animal, Gone, Herd
from core.notes.grammar import LEXICON
from core.notes.layout.text import cleaned
from core.notes.roster import herd_of
from core.notes.slots.animals import HerdWords, closest_one, words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.items import Item
from core.notes.slots.measures import amount_at, clock_time, fraction, plain_number
from core.notes.slots.numbers import spoken
from core.notes.slots.tokens import tokens

ROSTER = Path(__file__).parents[3] / "corpus" / "roster.json"


@pytest.fixture(scope="module")
def herd() -> Herd:
    """The sample farm's herd."""
    return herd_of(json.loads(ROSTER.read_text(encoding="utf-8")))


def items(text: str, herd: Herd) -> list[Item]:
    """What the text is made of."""
    return Scan(tokens(cleaned(text)), words_of(herd), LEXICON).run()


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("\u001b[31mdoe 14\u001b[0m\u0007", "doe 14"),
        ("1\u200b4 kindled", "14 kindled"),
        ("\uff11\uff14 kindled \uff18", "14 kindled 8"),
        ("31 4\u20132", "31 4-2"),
        ("moss gets \u00bd cup", "moss gets 1/2 cup"),
        ("31 3\u00be lb", "31 3 3/4 lb"),
        ("**14** kindled", "14 kindled"),
        ("<b>14</b> kindled", "14 kindled"),
        ("sorrel &amp; thistle", "sorrel & thistle"),
        ("14 & 9; box in", "14 & 9; box in"),
        ("14 kindled \U0001f430 8", "14 kindled 8"),
        ("10\u00b0 tonight", "10\u00b0 tonight"),
        ("a\tb\r\nc", "a b\n\nc"),
        ("(1) 14 kindled", "14 kindled"),
        ("it\u2019s", "it's"),
    ],
)
def test_clean_text(text: str, plain: str) -> None:
    """What surrounds the words is gone, the words stay."""
    assert cleaned(text) == plain


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("twenty two", 22), ("twenty-two", 22), ("fourteen", 14), ("two hundred and five", 205), ("a", None), ("hundred", 100), ("hundred and twenty", 120),
        ("two thousand three hundred", 2300), ("two thousand", 2000), ("point three", Decimal("0.3")), ("one point seven five", Decimal("1.75")), ("dozen", 12), ("two dozen", 24),
        ("point 5", Decimal("0.5")), ("point", None), ("kits", None), ("one point", 1), ("eigth", 8),
    ],
)  # fmt: skip
def test_numbers_in_words(text: str, value: Decimal | int | None) -> None:
    """Compounds, decimals, dozens; a word that is no number is none."""
    found = spoken(tokens(text), 0)
    assert (found[0] if found else None) == value


def test_possessive_numbers() -> None:
    """`sixteens`, `thirty threes`: somebody's."""
    assert spoken(tokens("sixteens"), 0) == (16, 1, True)
    assert spoken(tokens("thirty threes"), 0) == (33, 2, True)
    assert spoken(tokens("thirty ones"), 0) == (31, 2, True)


@pytest.mark.parametrize(
    ("text", "value"),
    [("3 3/4 pounds", "3.75"), ("four and a quarter", "4.25"), ("two and a half", "2.5"), ("half", "0.5"), ("a half", "0.5"), ("three quarters", "0.75"), ("1 and 1/2", "1.5"), ("2 and three quarters", "2.75"), ("1,200", "1200"), ("2,1", "2.1"), ("1/2", "0.5")],
)  # fmt: skip
def test_amounts(text: str, value: str) -> None:
    """Whole numbers with their fractions."""
    found = amount_at(tokens(text), 0)
    assert found is not None
    assert found[0] == Decimal(value)


def test_no_amount() -> None:
    """A date with a slash is no fraction; a clock time must be one."""
    assert amount_at(tokens("11/20"), 0) is None
    assert fraction("5/4") is None
    assert plain_number("1,200.5") == Decimal("1200.5")
    assert clock_time("25:00") is None
    assert clock_time("12:05", "am") == "00:05"
    assert clock_time("1:05", "pm") == "13:05"


@pytest.mark.parametrize(
    ("text", "sort", "value"),
    [
        ("4 lb 6", "weight", 1984), ("4lb6", "weight", 1984), ("4#6", "pair", (4, 6)), ("4-6", "pair", (4, 6)), ("5lbs. 2oz.", "weight", 2325), ("four pounds six", "weight", 1984),
        ("4.6 lb", "weight", 2087), ("6 oz", "weight", 170), ("1.72 kg", "weight", 1720), ("1650 g", "weight", 1650), ("a pound and a half", "weight", 680), ("4 lb 18 oz", "weight", None),
        ("four pounds even", "weight", 1814), ("$40", "money", 4000), ("40 dollars", "money", 4000), ("18 dollars and 50 cents", "money", 1850), ("28 F", "temp", 28), ("-5F", "temp", -5),
        ("12 degrees celsius", "temp", 12), ("5 below", "num", 5), ("minus 3 degrees", "temp", -3), ("6 pm", "time", "18:00"), ("9 p m", "time", "21:00"), ("7 oclock", "time", "07:00"), ("6:30 a.m.", "time", "06:30"),
        ("3:15", "clock", "3:15"), ("12.5%", "percent", Decimal("12.5")), ("21 day", "span", (21, "day")), ("day 32", "span", (32, "day")), ("3 weeks old", "span", (3, "week")), ("4th", "ordinal", 4),
        ("half a cup", "cup", Decimal("0.5")), ("a cup and a half", "cup", Decimal("1.5")), ("0.3 ml", "dose", "0.3 ml"), (".3 c c", "dose", ".3 c c"), ("3+4", "sum", None), ("6-7 weeks", "span", (6, "range")),
        ("cage c seven", "cage", "C7"), ("cage see for", "cage", "C4"), ("pen 4", "cage", "4"), ("B3", "code", "B3"),
    ],
)  # fmt: skip
def test_measures(text: str, sort: str, value: object, herd: Herd) -> None:
    """A number with its unit, in one piece."""
    found = next(item for item in items(text, herd) if item.sort not in {"mark", "word"})
    assert found.sort == sort
    assert (found.value[0] if sort == "weight" else found.value) == value


@pytest.mark.parametrize(
    ("text", "tags"),
    [
        ("doe 14", ("14",)), ("doe: 14", ("14",)), ("R21", ("R21",)), ("r 21", ("R21",)), ("r-021", ("R21",)), ("r twenty one", ("R21",)), ("Juno's Boy", ("7",)), ("junos", ("14",)), ("flnt", ("3",)), ("Clover's", ("9",)),
        ("Juno 14", ("14",)), ("14 (Juno)", ("14",)), ("the opal doe", ("15",)), ("the black doe", ("16", "33")), ("#9", ("9",)), ("dough nine", ("9",)), ("book three", ("3",)), ("sixteens", ("16",)), ("32's", ("32",)),
        ("doe 77", ()), ("R99", ()), ("#77", ()), ("the opal doe, 15,", ("15",)), ("are twenty one", ("R21",)), ("the purple doe", None),
    ],
)  # fmt: skip
def test_animals(text: str, tags: tuple[str, ...] | None, herd: Herd) -> None:
    """By tag, name, slip, or description; unknown ones are known to be unknown."""
    found = [item for item in items(text, herd) if item.sort == "animal"]
    assert (found[0].value.tags if found else None) == tags


def test_a_tag_may_be_long_or_have_a_tail() -> None:
    """`one twenty` is 120 where such a doe is; `21a` a tag of its own."""
    herd = (
        Herd()
        .with_animal(Animal("120", "120", sex="doe"))
        .with_animal(Animal("21A", "21A", sex="doe"))
        .with_animal(Animal("15", "15", sex="doe"))
        .with_animal(Animal("50", "50", sex="buck"))
    )
    assert next(item for item in items("doe one twenty", herd) if item.sort == "animal").value.tag == "120"
    assert next(item for item in items("21a kindled", herd) if item.sort == "animal").value.tag == "21A"
    assert HerdWords(herd).sounds_like("15") == ("50",)
    assert HerdWords(herd).sounds_like("50") == ("15",)
    assert HerdWords(herd).sounds_like("120") == ()
    assert HerdWords(herd).sounds_like("16") == ()


def test_living_animals_before_gone_ones() -> None:
    """A name or tag used again is the living animal's; the gone one's where no other has it."""
    gone = Gone(date(2026, 1, 1), "sold", {})
    herd = (
        Herd()
        .with_animal(Animal("4", "4", name="Fern", gone=gone))
        .with_animal(Animal("4~2", "4", name="Fern"))
        .with_animal(Animal("6", "6", name="Ash", gone=gone))
    )
    words = HerdWords(herd)
    assert words.by_tag["4"].key == "4~2"
    assert words.names["fern"] == [((), ("4",))]
    assert words.names["ash"] == [((), ("6",))]
    assert words.by_slip("fe") == ()


def test_one_slip() -> None:
    """A letter missing, added, changed or swapped; not two."""
    assert all(closest_one(word, "flint") for word in ("flnt", "fliint", "flent", "flnit", "flin"))
    assert not closest_one("fnlt", "flint")


@pytest.mark.parametrize(
    ("slip", "word"),
    [
        ("kindeld", "kindled"),
        ("wieghed", "weighed"),
        ("swet", "sweet"),
        ("kep", "keep"),
        ("scaterd", "scattered"),
        ("whty", "why"),
        ("wldnt", "wouldnt"),
        ("xyzzy", None),
        ("r21", None),
        ("qq", None),
    ],
)
def test_slips(slip: str, word: str | None) -> None:
    """What an unknown word most likely stands for."""
    assert LEXICON.meant(slip) == word


def test_words_known_are_left_alone() -> None:
    """An everyday word is no slip of a barn word."""
    assert LEXICON.knows("bear")
    assert LEXICON.meant("bear") is None


def test_herd_words_are_kept_for_the_same_herd(herd: Herd) -> None:
    """A note costs no survey of the barn; a changed herd is surveyed again."""
    assert words_of(herd) is words_of(replace(herd, settings=Settings()))
    assert words_of(herd) is not words_of(herd.with_animal(Animal("99", "99")))
