"""Every question has its answer; what can't be answered says what to ask instead.

Over 300 lines: a test or two for each thing that can be asked.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from core.notes.journal import Note, Target
from core.notes.kinds.query import Query
from core.notes.kinds.undoing import Undo
from core.notes.replay import book
from core.reply import Reply
from core.reports.answers import ANSWERS, answer, answered
from core.reports.herd_document import herd_document
from tests.core.reports.notes import entry
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires

NOW = datetime(TODAY.year, TODAY.month, TODAY.day, 12, tzinfo=UTC)


def farm() -> Barn:
    """A little of everything."""
    barn = (
        Barn()
        .buck("3", name="Flint", color="black")
        .doe("14", name="Juno", color="castor")
        .doe("15", breed="Mini Rex", color="opal", age=400)
    )
    barn.buck("7", age=300, breed="Mini Rex", color="castor").litter("14", "3", 200, 8, dead=1, weaned=6)
    barn.kits("14", "31 32", 200, {70: 1800, 112: 2600}).litter("14", "3", 20, 7).lost("14", 1, ago(18), "cold")
    return barn.say("for_sale", who="32", price=6000, until=ago(4), on=ago(40))


def ask(barn: Barn, about: str, entries: Any = (), said: str = "", **fields: Any) -> Reply:
    """The answer to a question today."""
    return answered(Query(about=about, **fields), barn.herd, TODAY, entries, said)


ALL = (
    "card",
    "due",
    "digest",
    "keep",
    "why",
    "pair",
    "compare",
    "feed",
    "count",
    "weights",
    "pedigree",
    "flags",
    "open",
    "litters",
    "sales",
    "journal",
    "winter",
    "what_if",
    "picture",
    "help",
)


def test_every_question_of_the_contract_has_an_answer() -> None:
    """No `about` is forgotten."""
    assert set(ALL) == set(ANSWERS)


@pytest.mark.parametrize("about", ALL)
@pytest.mark.parametrize("who", [None, "14", "3", "31", "15"])
@pytest.mark.parametrize("rest", [{}, {"with_": "7"}, {"scope": "bucks"}, {"scope": "does", "breed": "mini rex"}, {"scope": "all"}])
def test_every_question_answers_in_short_lines(about: str, who: str | None, rest: dict[str, str]) -> None:
    """Whatever is asked, there is an answer of a few short lines, never an empty one."""
    lines = ask(farm(), about, who=who, **rest).lines
    assert lines
    assert len(lines) <= 20
    assert all(line.strip() for line in lines)


@pytest.mark.parametrize("about", ALL)
def test_every_question_answers_on_an_empty_book(about: str) -> None:
    """An empty book answers too."""
    assert ask(Barn(), about).lines


def test_answer_takes_the_book_and_the_time() -> None:
    """The door for the app: a book and the time of the question, in the farm's own day."""
    at = datetime(2026, 12, 1, 2, tzinfo=UTC)
    start = farm().set("timezone", "America/Chicago").herd
    assert answer(Query(about="winter"), book(start), at).lines[0].startswith("Winter from tomorrow")


def test_what_was_taken_back_is_told_when_asked() -> None:
    """`what did i just undo`: the last undo's own words, and how to have it back; before any undo that there was none."""
    asked, start = Query(about="journal"), farm().herd
    question = Note(9, "what did i undo", NOW, "me", facts=(asked,))
    told = Note(1, "31 4-0", NOW, "me")
    undo = Note(2, "undo", NOW, "me", facts=(Undo(),), reverses=(Target(1),), reply="Taken back: 31: 4 lb.")
    assert answer(asked, book(start, (told, question)), NOW).lines == ("Nothing was taken back yet.",)
    lines = answer(asked, book(start, (told, undo, question)), NOW).lines
    assert lines == ("Taken back: 31: 4 lb.", "That was \u201cundo\u201d. To have it back, send the note again.")


def test_unknown_animal_says_what_to_ask() -> None:
    """A tag that nobody knows gets one that would work; on an empty book, how to add it."""
    assert ask(farm(), "card", who="99").lines == ("99 is not on the book. Try a tag on the book, such as 3, or ask for the herd.",)
    assert "Add it: new doe 40" in ask(Barn(), "card", who="99").text
    assert "98 is not on the book." in ask(farm(), "pair", who="15", with_="98").text


def test_animal_is_found_by_name() -> None:
    """A name serves as well as a tag."""
    assert ask(farm(), "card", who="juno").lines[0].startswith("Doe 14 (Juno): ")


def test_name_that_fits_several_is_asked_about() -> None:
    """Two of one name: which one, with both as choices."""
    barn = Barn().doe("1", name="Ash").doe("2", name="Ash")
    reply = ask(barn, "card", who="ash")
    assert reply.lines == ("Which ash? Ask by tag.",)
    assert [one.says for one in reply.choices] == ["1", "2"]


@pytest.mark.parametrize(("about", "example"), [("card", "card 14"), ("why", "why 14"), ("pair", "15 x 7?"), ("pedigree", "pedigree 33")])
def test_question_without_its_animal(about: str, example: str) -> None:
    """A question that needs an animal shows how to ask it."""
    assert ask(farm(), about).lines == (f"Which animal? Ask like this: {example}",)


def test_due_until_a_day_and_of_one() -> None:
    """`until` sets how far, an animal whose."""
    assert ask(farm(), "due", until=TODAY).lines[0] == "2 chores overdue, none for today."
    assert all("14" in line for line in ask(farm(), "due", who="14").lines[1:])
    assert ask(farm(), "due", until=TODAY - timedelta(3)).lines


def test_keep_by_scope_and_breed() -> None:
    """Only those asked for."""
    text = ask(farm(), "keep", breed="mini rex").text
    assert "15" in text
    assert "Juno" not in text
    assert ask(farm(), "keep", who="14").lines[0].startswith("Doe 14 (Juno): ")


def test_pair_needs_a_doe_and_a_buck() -> None:
    """Two does can't be paired; an animal of unknown sex neither."""
    assert "both does" in ask(farm(), "pair", who="14", with_="15").text
    unknown = farm().say("animal", tag="50", breed="Rex")
    assert "not known to be a doe and a buck" in ask(unknown, "pair", who="50", with_="3").text
    assert ask(farm(), "pair", who="3", with_="14").lines[0].startswith("14 Juno x 3 Flint: ")


def test_compare_needs_two() -> None:
    """Two animals are compared; bucks, does or a breed are lined up; nothing asks."""
    assert ask(farm(), "compare", who="3", with_="7").lines[0] == "3 Flint and 7."
    assert ask(farm(), "compare", scope="bucks").lines[0].startswith("Bucks by the growth")
    assert ask(farm(), "compare", scope="does").lines[0].startswith("Does by what they wean")
    heads = [line.split()[0] for line in ask(farm(), "compare", breed="mini rex").lines]
    assert heads[0] == "Bucks"
    assert "Does" in heads or "No" in heads
    assert ask(farm(), "compare").lines == ("Which two? Ask like this: compare 3 and 7",)


def test_count_of_the_herd_a_kind_and_a_doe() -> None:
    """How many: all, bucks, or the kits under a doe."""
    assert ask(farm(), "count").lines == ("16 rabbits: 3 bucks, 3 does, 4 grow-outs and 6 kits in 1 litter.",)
    assert ask(farm(), "count", scope="bucks", breed="mini rex").lines == ("1 mini rex buck on the farm.",)
    assert ask(farm(), "count", who="14").lines == ("Doe 14 (Juno): 6 kits under her, born Thu 5 Nov.",)
    assert ask(farm(), "count", who="15").lines == ("Doe 15 has no kits under her or untagged.",)
    weaned = Barn().doe("9").buck("3").litter("9", "3", 60, 7, weaned=6)
    assert "6 kits weaned and untagged" in ask(weaned, "count", who="9").text


def test_flags_of_the_herd_a_breed_and_one() -> None:
    """Flags with their evidence."""
    assert "Doe 32: For sale until Sat 21 Nov" in ask(farm(), "flags").text
    assert ask(farm(), "flags", breed="mini rex").lines[0].endswith(".")
    assert ask(farm(), "flags", who="32").lines[0] == "Doe 32: 1 flag."
    assert ask(Barn().buck("3"), "flags").lines == ("Nothing is flagged.",)
    gone = farm().say("sold", who="31", price=3000)
    assert ask(gone, "flags", who="31").lines == ("Buck 31: 0 flags.",)


def test_winter_tells_the_dates_first() -> None:
    """The dates of winter and spring, then the plan."""
    assert ask(farm(), "winter").lines[0] == "Winter from Tue 1 Dec until spring, Thu 1 Apr 2027: 127 days from today."


def test_what_if_tells_the_difference_and_records_nothing() -> None:
    """It tells what would change, and names the note that would make it so; without an idea of what is supposed it shows how to ask."""
    reply = ask(farm(), "what_if", who="14", said="what if I sold 14")
    assert any("Nothing was recorded. To have it so, send: plan to sell 14" in line for line in reply.lines)
    assert "Ask like this: what if I keep 14" in ask(farm(), "what_if").text
    assert ask(farm(), "what_if", said="what if I keep 777").text.startswith("777 is not on the book.")


def test_a_picture_comes_along() -> None:
    """With its words."""
    told = ask(farm(), "picture", who="31")
    assert told.lines[0] == "Buck 31: 5 lb 12 oz at 16 weeks."
    assert told.attached[0].about == "growing"


def test_help_shows_notes_and_questions() -> None:
    """Help is examples."""
    assert "doe 14 kindled 8, 2 dead" in ask(farm(), "help").lines


def test_help_with_one_thing() -> None:
    """Notes for one situation; every setting where those are asked for."""
    barn = farm()
    told = answered(Query(about="help"), barn.herd, TODAY, (), "help breeding").lines
    assert told[0] == "Breeding, for example:"
    assert "bred 15 to Flint, 2 falls" in told
    assert "quiet until 6:00" in answered(Query(about="help"), barn.herd, TODAY, (), "help settings").lines


# --- lists of the herd --------------------------------------------------------------------------------------------


def test_open_does() -> None:
    """Does that are neither bred nor nursing; long open ones say since when."""
    barn = (
        Barn().doe("14").doe("15", age=400).doe("16", age=200).buck("3").litter("14", "3", 10, 6).say("bred", doe="15", buck="3", on=ago(5))
    )
    assert ask(barn, "open").lines == ("1 open doe.", "16: ready to be bred.")
    assert "Open for 156 days" in ask(Barn().doe("15", age=400), "open").text
    assert ask(Barn().buck("3"), "open").lines == ("No doe is open: each grown one is bred or nurses.",)


def test_litters_under_the_does() -> None:
    """Litters with kits, sire and age, weaned ones without tags after them."""
    barn = farm().doe("9").litter("9", "3", 60, 6, weaned=5)
    lines = ask(barn, "litters").lines
    assert lines[0] == "1 litter with 6 kits under the does."
    assert "14: 6 kits by 3, 2 weeks old" in lines
    assert "5 untagged of 9, weaned, 8 weeks old" in lines
    assert ask(Barn(), "litters").lines == ("No litters on the farm now.",)


def test_litter_without_a_sire() -> None:
    """An unknown sire is left out."""
    barn = Barn().doe("9").say("kindled", doe="9", born=5, alive=5, on=ago(4))
    assert ask(barn, "litters").lines[1] == "9: 5 kits, 4 days old"
    assert ask(barn, "litters", who="9").lines[1] == "Sat 21 Nov: 5 born alive, 5 now"


def test_litters_of_one() -> None:
    """A doe's or a buck's litters, the newest first, with what became of them."""
    assert ask(farm(), "litters", who="14").lines[1:] == (
        "Thu 5 Nov (by 3): 7 born alive, 1 lost (1 cold), 6 now",
        "Sat 9 May (by 3): 8 born alive, 1 dead, 6 weaned Sat 13 Jun",
    )
    assert ask(farm(), "litters", who="3").lines[1].startswith("Thu 5 Nov (out of 14)")
    assert ask(farm(), "litters", who="15").lines == ("Doe 15 has no litter on the book.",)


def test_weights_of_one() -> None:
    """The newest first, with age; without any, how to tell one."""
    assert ask(farm(), "weights", who="31").lines[1:] == ("Sat 29 Aug: 5 lb 12 oz at 16 weeks", "Sat 18 Jul: 3 lb 15 oz at 10 weeks")
    assert ask(farm(), "weights", who="15").lines == ("Doe 15 was never weighed. Tell me: 15 4-6",)
    young = Barn().doe("33", age=90).weigh("33", 1500, 2)
    assert ask(young, "weights", who="33").lines[0] == "Doe 33: 1 weight. 5 lb is wanted at 16 weeks."
    unborn = Barn().doe("34", age=None).weigh("34", 4000)
    assert ask(unborn, "weights", who="34").lines[1] == "Today: 8 lb 13 oz"


def test_weights_of_the_young_and_of_the_grown() -> None:
    """Grow-outs by default, against their herd mates; bucks or does when asked."""
    barn = Barn().doe("33", age=90).weigh("33", 1500, 2).doe("34", age=90).weigh("34", 1700, 2).doe("9", age=None).weigh("9", 4500)
    lines = ask(barn, "weights").lines
    assert lines[0] == "Newest weights of 2 grow-outs."
    assert lines[1].startswith("34: 3 lb 12 oz at 12 weeks, ")
    assert ask(barn, "weights", scope="does").lines[1] == "9: 9 lb 15 oz today"
    assert ask(barn, "weights", scope="all").lines[0] == "Newest weights of 3 rabbits."
    assert ask(barn, "weights", scope="bucks").lines == ("No weights of bucks yet. Tell me one: 31 4-6",)


def test_pedigree() -> None:
    """Parents, grandparents, inbreeding and what it passes on."""
    barn = two_sires()
    lines = ask(barn, "pedigree", who="R62").lines
    assert lines[1].startswith("Sire: ")
    assert any(line.startswith("Inbreeding 0.0 %, all ancestors known for 1 generation.") for line in lines)
    assert any(line.startswith("Passes on growth ") for line in lines)
    assert "no parents on the book" in ask(barn, "pedigree", who="3").text


def test_pedigree_with_one_parent_and_grandparents() -> None:
    """An unknown parent is called unknown; grandparents stand in brackets."""
    barn = Barn().doe("1").doe("2", dam="1").doe("3", dam="2")
    lines = ask(barn, "pedigree", who="3").lines
    assert lines[1:3] == ("Sire: unknown", "Dam: 2 (unknown x 1)")


def test_pedigree_that_contradicts_itself() -> None:
    """A loop in the family book is named."""
    barn = Barn().doe("1").doe("2", dam="1")
    barn.herd = barn.herd.with_animal(replace(barn.find("1"), dam="2"))
    assert "1 and 2 are told as each other's ancestors." in ask(barn, "pedigree", who="2").text


def test_sales() -> None:
    """Who is for sale, past the date or not, kits too, and what the year's sales brought."""
    barn = farm().doe("9").litter("9", "3", 60, 6, weaned=5).say("for_sale", litter_of="9", count=3, price=2500)
    barn.say("sold", who="31", price=4000, on=ago(3)).say("for_sale", who="15")
    lines = ask(barn, "sales").lines
    assert lines[0] == "3 for sale. Sold in 2026: 1, $40.00."
    assert "32 for $60.00 until Sat 21 Nov (past its date)" in lines
    assert "15" in lines
    assert "3 kits of 9 for $25.00" in lines
    assert ask(Barn(), "sales").lines == ("Nobody is for sale. List one: list 32 for 60 until dec 20", "Nothing sold in 2026 yet.")


def test_sale_of_kits_without_a_price() -> None:
    """Kits offered without a price are told without one."""
    barn = Barn().doe("9").buck("3").litter("9", "3", 60, 6, weaned=5).say("for_sale", litter_of="9", count=3)
    assert ask(barn, "sales").lines[1] == "3 kits of 9"


def test_journal() -> None:
    """The last notes, the newest first, of all or of one animal."""
    entries = [entry("31 4-6", "weighed", 3, who="31", grams=1984), entry("bred 15 to 7", "bred", 1, doe="15", buck="7")]
    assert ask(farm(), "journal", entries).lines == ("The last of 2 notes:", "Yesterday, ann: bred 15 to 7", "Sun 22 Nov, ann: 31 4-6")
    assert ask(farm(), "journal", entries, who="31").lines == ("The last of 1 note about 31:", "Sun 22 Nov, ann: 31 4-6")
    assert ask(farm(), "journal", who="31").lines == ("No notes about 31 yet.",)


def test_questions_are_no_notes() -> None:
    """What was asked of the book does not stand among what it was told."""
    entries = [entry("31 4-6", "weighed", 3, who="31", grams=1984), entry("notes on 31", "query", about="journal", who="31")]
    assert ask(farm(), "journal", entries, who="31").lines == ("The last of 1 note about 31:", "Sun 22 Nov, ann: 31 4-6")


def typed(barn: Barn, text: str, about: str, **fields: Any) -> Reply:
    """The answer to a question that was typed in these words."""
    return answered(Query(about=about, **fields), barn.herd, TODAY, (), text)


def test_question_about_a_stranger_says_so() -> None:
    """A tag in the question that is not on the book is named; one that is, is asked for properly."""
    assert typed(farm(), "why 77", "why").lines[0].startswith("77 is not on the book. Try a tag")
    assert typed(farm(), "pedigree R7", "pedigree").lines[0].startswith("R7 is not on the book.")
    assert typed(farm(), "why", "why").lines == ("Which animal? Ask like this: why 14",)
    assert typed(farm(), "card of 14", "card").lines == ("Which animal? Ask like this: card 14",)


def test_herd_is_a_list() -> None:
    """`herd` lists the animals as the command does; a number that is asked for is a number; `due all` is not cut."""
    barn = farm()
    assert typed(barn, "herd", "count").lines == herd_document(barn.herd, TODAY).reply().lines
    assert len(typed(barn, "how many in the herd", "count").lines) == 1
    assert len(typed(barn, "how many does in the herd", "count", scope="does").lines) == 1


def test_whole_list_of_chores_on_request() -> None:
    """The hint under a cut list, typed as it stands, brings all of it; so does a question for everybody's chores."""
    barn = Barn().buck("3")
    for number in range(10, 30):
        barn.doe(str(number)).say("bred", doe=str(number), buck="3", on=ago(14))
    cut = typed(barn, "due", "due").lines
    hint = cut[-1].partition("To see them all: ")[2]
    assert hint == "due all"
    assert len(cut) < len(typed(barn, hint, "due").lines) == len(typed(barn, "due", "due", scope="all").lines)


def test_typed_words_come_from_the_book() -> None:
    """The question's own note tells how it was typed."""
    query = Query(about="why")
    note = Note(1, "why 77", datetime(TODAY.year, TODAY.month, TODAY.day, 12, tzinfo=UTC), "ann", facts=(query,))
    asked = book(farm().herd, (note,))
    assert answer(query, asked, note.at).lines[0].startswith("77 is not on the book.")


def test_long_lists_are_cut() -> None:
    """A list longer than a phone says how many are left."""
    barn = Barn()
    for number in range(15):
        barn.doe(f"{number + 10}", age=200)
    assert ask(barn, "open").lines[-1] == "And 3 more."


def test_no_words_for_what_nobody_should_say() -> None:
    """The advice never says that an animal should die."""
    barn = farm()
    for about in ALL:
        assert "should die" not in ask(barn, about, who="14").text


def test_a_question_about_all_of_them_gets_the_plan() -> None:
    """Who is to go and why, and why not keep the kits: the plan, or that none is old enough."""
    assert typed(farm(), "who should I cull and why", "why").lines[0].startswith("Keep ")
    assert "4 kits of 14" in typed(farm(), "why not keep the kits", "why").text
    assert typed(Barn().doe("1"), "why not keep the kits", "why").lines == (
        "None of them is old enough to say: they are judged from weaning.",
    )


def test_whether_they_were_fed() -> None:
    """The book knows it only from a note."""
    assert "only where somebody noted it" in typed(farm(), "did I feed them", "feed", who="14").text
