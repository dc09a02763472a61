"""Messages that nobody means: very long, repeated, broken. Each is read without an exception, at a cost that grows with its length.

Cost is counted in calls, not in time, so that a busy machine fails nothing.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader

AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
ROSTER = Path(__file__).parent.parent.parent / "corpus" / "roster.json"
LONGEST = 4_000
#: Calls at four times the length, over calls at the length: four where the cost is linear, sixteen where it is quadratic.
MOST_GROWTH = 5.0

REPEATED = (
    "31 4-6, ",
    "31 4-6\n",
    "14 kindled 8, 2 dead. ",
    "6 live 2 dead. ",
    "we lost Moss overnight and I could cry ",
    "she lies in her box 16 ",
    "nobody wants Flint. ",
    "does get 1 cup, bucks 1/2 cup ",
    "no, ",
    "um no er ",
    "no kits ",
    "lost 33 ",
    "bred 14 to 3 ",
    "1/2 ",
    "\u00bd",
    "one hundred and ",
    "one thousand one hundred ",
    "correction 3 dead ",
    "7 999888777 #dead ",
    "New doe. Tag 40. White. Born 5/2/2026. ",
    "24 Nov, ",
    "bucks ",
    "d 3 ",
    "((",
    "[x] ",
    '"',
    "remind sat call vet re 5\nNB in 9, 14 yday ",
    "why 14?\n31 4-6\n",
)


@pytest.fixture(scope="module")
def ear() -> Reader:
    """A reader of the barn that all notes of the corpus are about."""
    made = reader(json.loads(ROSTER.read_text(encoding="utf-8")))
    assert isinstance(made, Reader)
    return made


def long(part: str, length: int = LONGEST) -> str:
    """The part over and over."""
    return (part * (length // len(part) + 1))[:length]


def calls(work: Callable[[], object]) -> int:
    """How many functions the work calls."""
    count = 0

    def called(_frame: FrameType, event: str, _arg: object) -> None:
        nonlocal count
        count += event in {"call", "c_call"}

    sys.setprofile(called)
    try:
        work()
    finally:
        sys.setprofile(None)
    return count


def facts(document: dict[str, Any], kind: str) -> list[dict[str, Any]]:
    """The facts of one kind."""
    return [fact for fact in document["facts"] if fact["kind"] == kind]


@pytest.mark.parametrize("part", REPEATED)
def test_cost_grows_no_faster_than_the_message(ear: Reader, part: str) -> None:
    """Four times as long a message may cost four times as much, not sixteen."""
    short, whole = long(part, LONGEST // 4), long(part)
    ear.read(short, AT)
    ear.read(whole, AT)
    assert calls(lambda: ear.read(whole, AT)) <= MOST_GROWTH * calls(lambda: ear.read(short, AT))


@pytest.mark.parametrize("text", ["x" * LONGEST, "(" * LONGEST, "9" * LONGEST, "7" + "." * LONGEST, "\n" * LONGEST, "\u2153" * LONGEST])
def test_one_sign_thousands_of_times_is_read(ear: Reader, text: str) -> None:
    """One long word, one long number, brackets and dots raise nothing."""
    assert set(ear.read(text, AT)) == {"facts", "ask", "unread"}


def test_five_hundred_numbers_in_one_sentence_are_asked_about(ear: Reader) -> None:
    """No list of tags is so long: what it means is asked, and nothing is recorded."""
    document = ear.read("moved " + " ".join(str(number) for number in range(500)), AT)
    assert document["facts"] == []
    assert document["ask"]["why"] == "what"
    assert "one animal a line" in document["ask"]["text"]


def test_what_stands_beside_five_hundred_numbers_is_recorded(ear: Reader) -> None:
    """A plain sentence is not lost for the other."""
    document = ear.read("31 weighed 4-6.\nmoved " + " ".join(str(number) for number in range(500)), AT)
    assert [fact["grams"] for fact in facts(document, "weighed")] == [1984]
    assert document["ask"]["why"] == "what"


@pytest.mark.parametrize("between", [", ", "\n", "; "])
def test_forty_weights_in_one_message_are_all_recorded(ear: Reader, between: str) -> None:
    """A whole weigh-in is one message."""
    tags = [str(number) for number in range(101, 141)]
    barn = reader({"animals": [{"tag": tag, "sex": "doe", "born": "2026-07-01"} for tag in tags]})
    assert isinstance(barn, Reader)
    document = barn.read(between.join(f"{tag} {3 + number % 2}-{number % 15}" for number, tag in enumerate(tags)), AT)
    assert document["ask"] is None
    assert [fact["who"] for fact in facts(document, "weighed")] == tags


def test_a_pasted_page_of_a_litter_book_is_read_in_full(ear: Reader) -> None:
    """Two hundred dated lines, each with its day, to the last one."""
    first = date(2026, 5, 1).toordinal()
    days = [date.fromordinal(first + number) for number in range(200)]
    text = "\n".join(f"{day:%m/%d/%y} 5 {4 + number % 2}-{number % 16}" for number, day in enumerate(days))
    assert len(text) <= LONGEST
    document = ear.read(text, AT)
    assert [fact["on"] for fact in facts(document, "weighed")] == [day.isoformat() for day in days]


def test_more_statements_than_a_message_tells_are_asked_for_again(ear: Reader) -> None:
    """The first are recorded; the question says where to begin again."""
    text = "\n".join(f"{31 + number % 3} {3 + number % 2}-{number % 15}" for number in range(500))
    document = ear.read(text, AT)
    assert facts(document, "weighed")
    assert document["ask"]["why"] == "what"
    assert "more than I can take in at once" in document["ask"]["text"]


def test_more_than_a_message_tells_in_one_sentence_is_asked_for_again(ear: Reader) -> None:
    """So it is where not even a comma parts the statements."""
    document = ear.read(long("wt 31 4-6 "), AT)
    assert document["ask"]["why"] == "what"
    assert "send the rest again" in document["ask"]["text"]


@pytest.mark.parametrize(
    "when", ["a 3881120 week from Saturday", "999999999 weeks from saturday", "in 99999999 days", "99999999 weeks ago"]
)
def test_a_day_past_all_calendars_is_asked_for(ear: Reader, when: str) -> None:
    """No calendar has it: nothing is recorded on it, and nothing raised."""
    assert ear.read(f"bred 14 to 3 {when}", AT)["facts"] == []


def test_an_initial_that_is_a_unit_stays_a_weight(ear: Reader) -> None:
    """`G.` before a capital is no initial of a name where it ends a weight."""
    document = ear.read("RATION, GROW-OUTS: 150 G. RATION, BUCKS: 120 G.", AT)
    assert {fact["amount"] for fact in facts(document, "ration")} <= {120, 150}


@pytest.mark.parametrize(
    "text",
    [
        "How would Sorrel and Biscuit compare?\n12 stpped on one of her kits",
        "with dollars of twenty one doze for bucks sold sixteens three and five weaned",
        "moss a cup cut bak half to",
        "new doe 41 mini rex 62209991 weeks old",
        "who is due next 73032631 weeks",
        "two on litter weight thistles pounds kits eight five.2 bags pellets $19.50 ea",
        "6849 [\n]Wean16",
    ],
)
def test_what_once_raised(ear: Reader, text: str) -> None:
    """Each of these broke the reader once; now it is read or asked about."""
    assert ear.read(text, AT)
