"""Dictated notes: words that an ear put for others, and statements told in one breath."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path

import pytest

from core.herd.state import Herd
from core.notes.clauses.scene import Scene
from core.notes.clauses.statements import statements
from core.notes.fact import to_json
from core.notes.grammar import LEXICON, OPENS
from core.notes.reader import read
from core.notes.reading import Context, Message
from core.notes.roster import herd_of
from core.notes.slots.animals import words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.tokens import tokens

ROSTER = Path(__file__).parents[3] / "corpus" / "roster.json"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
DAY = "2026-11-25"


@pytest.fixture(scope="module")
def herd() -> Herd:
    """The sample farm's herd."""
    return herd_of(json.loads(ROSTER.read_text(encoding="utf-8")))


def told(text: str, herd: Herd) -> list[str]:
    """Kind, animal and the telling values of each fact."""
    reading = read(Message(text, AT), herd)
    assert reading.ask is None, reading.ask
    return sorted(
        " ".join(str(value) for name, value in to_json(fact).items() if not (name == "on" and value == DAY)) for fact in reading.facts
    )


@pytest.mark.parametrize(
    ("heard", "typed"),
    [
        ("red dough fifteen to book seven", "bred 15 to 7"),
        ("and red fifteen too flint", "bred 15 to Flint"),
        ("bred sixteen two flint too falls", "bred 16 to Flint, 2 falls"),
        ("put fifteen two buck seven", "bred 15 to 7"),
        ("moss has soar hawks", "5 sore hocks"),
        ("moss has soar hocks", "5 sore hocks"),
        ("moss has sore hops", "5 sore hocks"),
        ("clover has my status", "9 mastitis"),
        ("sorrel lost two las night", "12 lost 2 last night"),
        ("fifteen would not left for flint", "15 refused Flint"),
        ("fifteen wouldnt left for flint", "15 refused Flint"),
        ("wind sixteen three bucks two does", "weaned 16, 3 bucks 2 does"),
        ("weaned sixteen free bucks to does", "weaned 16, 3 bucks 2 does"),
        ("fourteen kindled ate two were dead", "14 kindled 8, 2 dead"),
        ("thirty one weighs four to", "31 4-2"),
        ("weighed thirty one four ate", "31 4-8"),
        ("clover weighs ten too", "9 10 lb"),
        ("one twenty pounds of feed left", "120 lb feed left"),
        ("tattooed are thirty out of sixteen", "tattooed R30 out of 16"),
        ("bought for bags of feed fifty pounds nineteen fifty each", "bought 4 bags feed 50 lb 19.50 each"),
        ("moss has sore hox", "5 sore hocks"),
        ("moss has a soar hawk", "5 sore hock"),
        ("clover has ear mights", "9 ear mites"),
        ("pal patted clover nothing there", "palpated 9 nothing there"),
        ("weaned sixteen one box four doze", "weaned 16: 1 buck 4 does"),
        ("moss b c s four", "5 bcs 4"),
        ("fifteen would not lift four flint", "15 would not lift for Flint"),
        ("sold pip for thirty dollars to a four h kid", "sold R23 for 30 dollars to a 4h kid"),
        ("when is clover do", "when is 9 due"),
        ("biscuit is open so i bread her to moss", "22 palpated open. bred 22 to 5"),
        ("biscuit is open so i red her back to moss", "22 palpated open. bred 22 to 5"),
        ("clover had half a dozen", "9 kindled 6"),
        ("clover had a half dozen kits", "9 kindled 6"),
        ("clover had half dozen", "9 kindled 6"),
        ("clover had nine and one's dead", "9 kindled 9, 1 dead"),
        ("clover had nine and every one of em's alive", "9 kindled 9, 9 alive"),
        ("thirty three four pounds two no wait that was thirty two", "32 4 lb 2"),
        ("moss ten pounds six no wait that was clover", "9 10 lb 6"),
        ("moss got out this morning. 31 four pounds two no wait that was 32", "moss got out this morning. 32 4 lb 2"),
        ("clover had nine kits at six fifteen this morning", "9 kindled 9"),
        ("send my reminders at six fifteen in the evening", "reminders at 18:15"),
        ("remind me tomorrow at seven forty five am to call the vet", "remind me tomorrow at 7:45 am to call the vet"),
        ("bought three bags for sixty bucks", "bought 3 bags, $60"),
        ("got another bag of feed for twenty bucks", "bought 1 bag of feed, $20"),
        ("fifteen by flint what do you think of that", "15 x 3?"),
        ("what has thirty one been weighing", "weights of 31"),
        ("rebread fifteen to flint", "bred 15 to 3"),
        ("who is the sire on thirty one", "pedigree of 31"),
        ("the nest box in twelve came out today", "box out 12"),
        ("counted seven for sorrel", "12 has 7 kits"),
        ("list pip for forty dollars until the end of december", "list R23 for $40 until dec 31"),
        ("list pip for forty dollars until the end of january", "list R23 for $40 until jan 31"),
        ("list pip for forty dollars until the end of november", "list R23 for $40 until nov 30"),
        ("clover kindled six at the end of september", "clover kindled six on september 30"),
        ("bred fifteen to flint at the end of november", "bred 15 to 3 on 11/30/25"),
        ("juno has seven new ones in the nest all alive", "14 kindled 7, 7 alive"),
        ("nest box went in with clover", "box in 9"),
        ("thistle went over to flint he fell off twice", "bred 16 to 3, 2 falls"),
        ("thistle went to flint this morning he fell off twice", "bred 16 to 3, 2 falls"),
        ("moss is up to five ounces a day", "moss gets 5 oz a day"),
        ("moss is up to half a cup", "moss gets 1/2 cup"),
        ("bought two bags forty pounders eighteen dollars each", "bought 2 bags 40 lb each 18 dollars each"),
        ("keeping thirty three to replace clover", "replace 9 with 33"),
        ("thirty three will replace clover", "replace 9 with 33"),
        ("thirty three's type is a four and her fur's a three", "33 type 4 fur 3"),
        ("is sixteen open right now", "is 16 open?"),
        ("is sixteen pregnant", "is 16 pregnant?"),
        ("weaned sixteen three bucks two does and sold two of em", "weaned 16: 3 bucks 2 does. sold 2 of 16's kits"),
        ("bred fifteen to flint on the twenty first", "bred 15 to 3 on the 21st"),
        ("thirty three type for fur four", "33 type 4 fur 4"),
        ("sorrel lost too more", "12 lost 2 more"),
        ("fostered too kits from twelve to sixteen", "fostered 2 kits from 12 to 16"),
        ("juno kindled nine and too were dead", "14 kindled 9, 2 dead"),
        ("juno had nine kits and won was dead", "14 had 9 kits, 1 dead"),
        ("moved moss to c seven", "5 to C7"),
        ("moved moss into bee ten", "5 to B10"),
        ("thirty two three pounds ten no eleven ounces", "32 3-11"),
        ("thirty two three pounds ten no wait eleven", "32 3-11"),
        ("thirty two three pounds ten um make that four pounds", "32 4-0"),
        ("bred sixteen to moss scratch that to flint", "bred 16 to Flint"),
        ("fur on thirty one is a four", "31 fur 4"),
    ],
)
def test_what_was_heard_is_what_was_meant(heard: str, typed: str, herd: Herd) -> None:
    """A dictated note gives the facts of the same note typed."""
    assert told(heard, herd) == told(typed, herd)


@pytest.mark.parametrize(
    ("breath", "apart"),
    [
        ("bred fifteen to flint weaned sixteen four bucks one doe", ["bred 15 to 3", "weaned 16: 4 bucks 1 doe"]),
        ("sold thirty one for forty dollars gave thirty three to my aunt", ["sold 31 for 40", "gave 33 to my aunt"]),
        ("box out of sixteen moss weighs nine pounds", ["box out 16", "5 9-0"]),
        ("twelve has seven kits sixteen has five", ["12 has 7 kits", "16 has 5 kits"]),
        ("moved moss to cage b nine flint is b c s three", ["5 to B9", "3 bcs 3"]),
        ("pulled the box from sixteen she just keeps lounging in it", ["box out 16", "16 lounging in the box"]),
        ("biscuit is open put her back in with moss", ["22 palpated open", "bred 22 to 5"]),
        ("moss has sore hocks so i put some salve on him", ["5 sore hocks", "treated 5 with salve"]),
        ("flint is sweet and moss is mean", ["3 is sweet", "5 is mean"]),
        ("fifteen wouldn't lift for flint so i put her in with juno's boy", ["15 refused Flint", "bred 15 to 7"]),
        ("flint bred fifteen then weighed him four pounds nine", ["bred 15 to 3", "3 4-9"]),
    ],
)
def test_one_breath_holds_several_statements(breath: str, apart: list[str], herd: Herd) -> None:
    """No comma and no full stop: the verbs and their animals part the statements."""
    assert sorted(fact.split()[0] for fact in told(breath, herd)) == sorted(part.split()[0] for each in apart for part in told(each, herd))


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("read the red doe's card", "bred"),
        ("red doe looks fine", "bred"),
        ("what do we do", "due"),
        ("two falls on a wet floor", "bred"),
        ("my pal came by", "palpated"),
        ("the box is full of hawks and mice", "ailment"),
        ("twenty first graders came to see the rabbits", "kits_lost"),
        ("thistle's five are eating hay", "kits_lost"),
        ("the soar is over", "ailment"),
        ("soar", "ailment"),
        ("the cage is full of mice", "ailment"),
        ("d fence is bent", "fault"),
        ("four of the dose is left", "weaned"),
        ("red fifteen flint sixteen", "bred"),
        ("keep 33 she has the best fur of the bunch", "shown"),
    ],
)
def test_words_in_their_own_sense_stay(text: str, kind: str, herd: Herd) -> None:
    """The same words elsewhere mean what they say."""
    assert kind not in {to_json(fact)["kind"] for fact in read(Message(text, AT), herd).facts}


def test_a_predator_takes_a_grown_rabbit(herd: Herd) -> None:
    """An animal right behind the verb died; the chickens' dog is the cause."""
    assert [fact.split()[:1] for fact in told("the dogs got in and killed thirty two", herd)] == [["died"]]


@pytest.mark.parametrize(
    "text",
    [
        "moved fifteen was weighed thirty one",
        "palpated biscuit not sold thirty one",
        "weighed sixteen four pounds because she bit me",
        "bred fifteen to flint of moss is fine",
        "weighed fifteen beside thirty one",
        "sold thirty one cheap flint",
        "sold thirty one cheap three lads",
        "moved moss yesterday flint whistled",
        "twelve has a box and she bit me",
        "twelve has a box she looks fine",
        "moved thirty one yesterday sold",
        "moved thirty one again sixteen",
    ],
)
def test_no_new_statement_where_something_leads_to_the_words(text: str, herd: Herd) -> None:
    """A word that leads to the animal or the verb, or no verb at all, keeps the breath whole."""
    scene = Scene(herd, words_of(herd), AT.date(), Context(), text)
    assert len(statements(Scan(tokens(text), scene.words, LEXICON).run(), scene, OPENS)) == 1 + text.count("because") + text.count(" and ")


def test_a_dead_kit_found_behind_a_count_is_a_loss(herd: Herd) -> None:
    """What is left, and the one found dead, are two facts."""
    assert told("sorrel is down to six we found one dead", herd) == ["kit_count 12 6", "kits_lost 12 1"]


def test_a_loss_behind_a_count_has_its_own_day(herd: Herd) -> None:
    """The kits are counted today, and one was lost last night."""
    facts = told("sorrel has six kits now lost one overnight", herd)
    assert any("2026-11-24" in fact for fact in facts)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("r twenty one is a buck not a doe", "confirm"),
        ("r twenty one is a buck not the doe", "confirm"),
        ("turns out r twenty one is a buck not doe", "confirm"),
        ("thirty one and thirty two are weaned sold one of them", "which_animal"),
    ],
)
def test_what_is_doubtful_is_asked(text: str, why: str, herd: Herd) -> None:
    """A sex against the book, one of two, a slip that could mean either: no fact, a question."""
    reading = read(Message(text, AT), herd)
    assert reading.ask is not None or why == "confirm"
    assert why == "confirm" or (reading.ask is not None and reading.ask.why == why and not reading.facts)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("bred fifteen to flint what do you think", ["bred"]),
        ("fifteen by thistle what do you think", ["remark"]),
        ("tell me what you want", ["remark"]),
        ("31 was weighed at four fifteen this morning and i had to go", ["weighed"]),
    ],
)
def test_an_opinion_asked_hides_no_deed(text: str, kinds: list[str], herd: Herd) -> None:
    """What the person did is recorded, whatever is asked behind it."""
    assert [fact.kind for fact in read(Message(text, AT), herd).facts] == kinds


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("cull thirty two the first week of december", "2026-12-01", "2026-12-07"),
        ("cull thirty two the third week of january", "2027-01-15", "2027-01-21"),
        ("cull thirty two the last week of december", "2026-12-25", "2026-12-31"),
    ],
)
def test_a_week_of_a_month_is_seven_days(text: str, first: str, last: str, herd: Herd) -> None:
    """By its number from the month's first day on; the last one up to its last day."""
    assert told(text, herd) == [f"planned 32 cull {first} {last}"]


def test_a_week_of_a_month_gone_is_no_day(herd: Herd) -> None:
    """What happened then has no one day: it is asked for."""
    reading = read(Message("12 died the last week of october", AT), herd)
    assert reading.ask is not None
    assert reading.ask.why == "when"


@pytest.mark.parametrize("text", ["bred fifteen to flint never mind", "sold pip for forty dollars, scratch that.", "moved 31 to b4 nvm"])
def test_words_that_take_themselves_back_record_nothing(text: str, herd: Herd) -> None:
    """Neither what they told nor an undo of something sent before."""
    assert [fact.kind for fact in read(Message(text, AT), herd).facts] == ["remark"]


@pytest.mark.parametrize(
    "text", ["oh shoot never mind", "the sale of pip never mind", "juno 14 never mind", "never mind the sale of pip", "bred never mind"]
)
def test_words_that_only_take_back_undo_the_last_note(text: str, herd: Herd) -> None:
    """What they name was sent before."""
    assert [fact.kind for fact in read(Message(text, AT), herd).facts] == ["undo"]
