"""Why a note was read as it was: what was seen of the reader at work, and what was made of it."""

from __future__ import annotations

import json
import sys
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.explain import explained
from core.notes.kind import Example
from core.notes.kinds import KINDS
from core.notes.reading import Message
from core.notes.watching import watched

ROSTER = json.loads((Path(__file__).parents[2] / "corpus" / "roster.json").read_text(encoding="utf-8"))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")


def farm(*, explains: bool) -> Reader:
    """The sample farm's reader."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    found.explains = explains
    return found


PLAIN, WATCHED = farm(explains=False), farm(explains=True)


def why(text: str) -> dict[str, Any]:
    """The one pass of a note."""
    (one,) = explain(text)["readings"]
    return one


def explain(text: str) -> dict[str, Any]:
    """What is told of a note, as plain values."""
    told: dict[str, Any] = json.loads(json.dumps(WATCHED.read(text, AT)["explain"]))
    return told


@pytest.mark.parametrize("example", [kind.examples[0] for kind in KINDS], ids=[kind.name for kind in KINDS])
def test_a_watched_note_is_read_as_any_other(example: Example) -> None:
    """Watching changes nothing; and each fact of the reading has the rule that gave it, or the road that needs none."""
    told = WATCHED.read(example.text, AT)
    passes = told.pop("explain")["readings"]
    assert told == PLAIN.read(example.text, AT)
    fired = {rule["kind"] for one in passes for part in (one["whole"], *one["statements"]) for rule in part["fired"]}
    assert {fact["kind"] for fact in told["facts"]} <= fired | {"remark"} or any(one["road"] for one in passes)


def test_the_words_and_what_they_were_taken_for() -> None:
    """Tokens as typed; an animal by its tag, a cue by its mark, a number by its value, each with the kinds that used it."""
    one = why("doe 14 kindled 8, 2 dead yesterday")
    assert one["tokens"] == ["doe", "14", "kindled", "8", ",", "2", "dead", "yesterday"]
    assert one["items"][0] == {"said": "doe 14", "as": "animal", "value": "14", "cues": [], "used_by": ["kindled"]}
    assert one["items"][1]["cues"] == ["kindle"]
    assert one["items"][2] == {"said": "8", "as": "num", "value": "8", "cues": [], "used_by": ["kindled"]}
    assert one["items"][-1]["value"].startswith("near")


@pytest.mark.parametrize(
    ("text", "said", "value"),
    [
        ("weighed 31 4 lb 6 oz", "4 lb 6 oz", "1984 g"),
        ("31 4-6", "4-6", "4 6"),
        ("sold zed R99 for $40", "$40", "40.00"),
        ("bred R99 to 5", "R99", "unknown: R99"),
        ("culled last friday R22", "last friday", "weekday last"),
        ("33 is black", "black", "black"),
    ],
)
def test_values_in_words(text: str, said: str, value: str) -> None:
    """Each sort of value has its words."""
    found = {item["said"].replace(" ", ""): item["value"] for item in why(text)["items"]}
    assert found[said.replace(" ", "")].split(" | ")[0] == value


def test_the_rule_that_fired_with_its_place() -> None:
    """The kind, the file and line where it took its words, the words that called for it, and what it says."""
    (fired,) = why("14 kindled 8, 2 dead")["statements"][0]["fired"]
    assert fired["kind"] == "kindled"
    assert fired["at"].startswith("kindling.py:")
    assert fired["cues"]["kindled"] == ["kindle"]
    assert fired["says"] == {"born": 8, "alive": 6, "dead": 2, "on": "2026-11-25", "doe": "14"}
    assert fired["lacks"] is None
    assert fired["taken_back"] is None


def test_the_rules_that_almost_fired() -> None:
    """A kind that knows a word and read nothing, with the line where it gave up and the step that found nothing."""
    nearly = {rule["kind"]: rule for rule in why("16 had 2 cups of feed")["statements"][0]["nearly"]}
    assert nearly["kindled"]["cues"] == {"had": ["had"]}
    assert nearly["kindled"]["gave_up"].startswith("kindling.py:")
    assert ", after " in nearly["kindled"]["gave_up"]


def test_a_statement_that_no_rule_may_read() -> None:
    """What is denied, only possible, or about other animals says so."""
    reasons = [why(text)["statements"][0]["not_read"] for text in ("14 hasn't kindled yet", "might sell 31 someday", "14 chickens died")]
    assert [reason.split()[-1] for reason in reasons] == ["so", "be", "animals"]


def test_a_reading_taken_back() -> None:
    """By whom: an ordinary word in another sense, or a sign of an animal that the same note takes off the book."""
    doubted = [rule for rule in why("lost the key to 33's cage")["statements"][0]["fired"] if rule["taken_back"]]
    assert doubted
    assert all(rule["taken_back"].startswith("plausible.py, ") for rule in doubted)
    (limps,) = why("sold R22 to Ann 40 and she limps")["statements"][1]["fired"]
    assert limps["taken_back"] == "the same message tells why the animal left"


def test_what_the_speaker_takes_back() -> None:
    """A number put right at once stands apart."""
    assert why("14 kindled eight no seven")["put_right"] == ["eight", "no"]


def test_who_takes_nothing_back_takes_no_word_back() -> None:
    """A note without a word of correction keeps every word."""
    assert why("16 dropped 2 ounces")["put_right"] == []


def test_the_animal_carried_over() -> None:
    """The second statement speaks of the first one's."""
    assert [statement["about"] for statement in why("wormed 22. nose is runny")["statements"]] == [None, "22"]


def test_a_message_that_is_one_thing() -> None:
    """A correction fires as a whole; the kinds of statements are not asked."""
    one = why("no, 15 not 14")
    assert one["road"] == "it is one thing as a whole"
    assert one["statements"] == []
    assert one["whole"]["fired"][0]["says"] == {"set": {"who": "15"}}


def test_a_whole_message_that_was_almost_one() -> None:
    """A question that asks about nothing the book knows."""
    assert [rule["kind"] for rule in why("what colour is the moon?")["whole"]["nearly"]] == ["query"]


@pytest.mark.parametrize(
    ("text", "road"),
    [
        ("la coneja 14 tuvo 8 gazapos", "another language"),
        ("TRACTOR BARN\nFeed 50 lb 18.99\nSubtotal 18.99\nTax 1.20\nTotal 20.19\nVISA ending 1234", "a receipt"),
        ("15 color opal", "the book writes it"),
    ],
)
def test_other_roads(text: str, road: str) -> None:
    """Some messages are never cut into statements."""
    assert road in (why(text)["road"] or "")


def test_a_list_with_boxes_has_a_pass_for_each_part() -> None:
    """The parts first, then the whole."""
    passes = explain("[x] trim nails 16\n[ ] worm 22")["readings"]
    assert len(passes) > 1
    assert "boxes" in passes[-1]["road"]


def test_an_empty_note_is_read_all_the_same() -> None:
    """No words, no rules, no question."""
    one = why("")
    assert one["tokens"] == one["items"] == one["statements"] == []
    assert explain("")["asks"] is None


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("14 kindled", "lacks born"),
        ("14 kindled 8 9 31", "no rule took "),
        ("14 14", "no rule read anything"),
        ("31 4-6 tattoo", "no rule took the verb “tattoo”"),
        ("found are twenty two dead", "misheard"),
        ("FEED & SEED COUNTER\nRABBIT PELLET 50LB  4 @ 18.50  74.00\nTAX  5.19\nTOTAL  88.19\nCARD ****0014", "a receipt"),
        ("14 kindled 99, 2 dead", "against the book"),
    ],
)
def test_why_it_asks(text: str, because: str) -> None:
    """A rule lacks something, nobody took a number or a verb, nothing was read, or the book speaks against it."""
    asks = explain(text)["asks"]
    assert asks is not None
    assert because in asks["because"]


def test_a_message_known_already_is_not_read_again() -> None:
    """Nothing was seen, and nothing is made up."""
    book = PLAIN.start
    message = Message("sold R22 $40", AT, "me", "c", "1")
    note, _ = explained(book, message)
    again, told = explained(book.with_note(note), message)
    assert again == note
    assert told == {"readings": [], "asks": None}


def test_what_a_check_asks_may_have_no_fact_to_complete() -> None:
    """The same note twice within minutes is asked by the book."""
    book = PLAIN.start
    note, _ = explained(book, Message("sold R22 $40", AT, "me", "c", "1"))
    _, told = explained(book.with_note(note), Message("sold R22 $40", AT + timedelta(minutes=2), "me", "c", "2"))
    assert told["asks"]["why"] in {"duplicate", "impossible"}
    assert "against the book" in told["asks"]["because"]


def test_another_watcher_comes_back() -> None:
    """A profiler at work is only put aside, even where the act fails."""

    def other(*_: object) -> None:
        """Sees nothing."""

    before = sys.getprofile()
    sys.setprofile(other)
    try:
        with pytest.raises(ZeroDivisionError):
            watched(lambda: 1 // 0)
        assert sys.getprofile() is other
    finally:
        sys.setprofile(before)
    assert watched(lambda: 7) == (7, [])
