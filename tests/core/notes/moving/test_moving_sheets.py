"""Messy sheets of our own, of the sorts that people really keep, in `tests/sheets`: every row is accounted for."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from bot.tables.sheets import sheets_of
from bot.tables.workbook import workbook
from core.herd.state import Herd
from core.notes.fact import Fact, to_json
from core.notes.journal import Note
from core.notes.moving.document import document
from core.notes.moving.grid import Grid, decoded, grid_of, tidy
from core.notes.moving.intake import Intake, intake
from core.notes.moving.own_in import document_facts, notes_of, own_facts
from core.notes.moving.own_tables import own_tables
from core.notes.replay import book
from core.problem import Problem
from tests.core.notes.talking import NOW
from tests.farm import TODAY

SHEETS = Path(__file__).parents[3] / "sheets"
DECIDED = {
    "show-herd.csv": {"weighed": "2025-12-31"},
    "litters-by-doe.txt": {"weaned": "35"},
    "scale-sheet.csv": {"dots": "ounces"},
    "growing-pens.xlsx": {"dates": "MDY"},
    "everything.csv": {"gone": "2025-01-01", "left": "ignore"},
}


def sheet(name: str) -> Grid:
    """One of the sheets."""
    if name.endswith(".xlsx"):
        ((title, rows),) = sheets_of(name, (SHEETS / name).read_bytes())
        return tidy(title, rows)
    return grid_of(decoded((SHEETS / name).read_bytes()), name.partition(".")[0])


def taken(text: str, herd: Herd | None = None, standing: tuple[Fact, ...] = (), **decisions: str) -> Intake:
    """What a sheet typed here comes to."""
    return intake([grid_of(text, "sheet")], herd or Herd(), standing, decisions, TODAY)


def told(found: Intake, kind: str = "") -> list[dict[str, Any]]:
    """The facts, or those of a kind."""
    return [to_json(fact) for fact, _ in found.facts if kind in {"", fact.kind}]


def test_these_are_all_the_sheets() -> None:
    """Each is looked at below."""
    assert {path.name for path in SHEETS.iterdir()} == set(DECIDED)


@pytest.mark.parametrize("name", sorted(DECIDED))
def test_every_row_and_every_word_is_accounted_for(name: str) -> None:
    """A row gives facts, was told before, or says why it gives none; nothing is left to ask once it is decided."""
    grid = sheet(name)
    found = intake([grid], Herd(), (), DECIDED[name], TODAY)
    assert found.questions == ()
    assert [row.line for row in found.rows] == sorted(line for line, _ in grid.rows)
    assert all(row.facts or row.known or row.why for row in found.rows)
    assert sum(len(row.facts) for row in found.rows) == len(found.facts)


@pytest.mark.parametrize("name", sorted(DECIDED))
def test_a_sheet_that_comes_again_brings_nothing(name: str) -> None:
    """All that it says stands by then, on another day too."""
    once = intake([sheet(name)], Herd(), (), DECIDED[name], TODAY)
    facts = tuple(fact for fact, _ in once.facts)
    after = book(Herd(), [Note(1, "", NOW, "ann", facts=facts)])
    again = intake([sheet(name)], after.herd, facts, DECIDED[name], date(2026, 11, 28))
    assert [to_json(fact) for fact, _ in again.facts] == []


def test_a_herd_with_days_points_and_commas() -> None:
    """Letters of Windows, days first, kilograms with commas, parents by name, the same as above."""
    found = intake([sheet("show-herd.csv")], Herd(), (), DECIDED["show-herd.csv"], TODAY)
    animals = {each["tag"]: each for each in told(found, "animal")}
    assert animals["J14"] == {
        "kind": "animal", "tag": "J14", "sex": "buck", "breed": "Mini Rex", "color": "opal", "born": "2025-03-31", "sire": "B1", "dam": "B2",
    }  # fmt: skip
    assert animals["B3"]["breed"] == "Mini Rex"
    assert {"kind": "weighed", "who": "B2", "grams": 2050, "on": "2025-12-31"} in told(found)
    assert {"kind": "remark", "who": "B1", "text": "calm, throws big kits", "on": TODAY.isoformat()} in told(found)


def test_litters_with_ditto_signs_and_headings_again() -> None:
    """Does that nothing else brought are put on the book; a mating without its buck stays words."""
    found = intake([sheet("litters-by-doe.txt")], Herd(), (), DECIDED["litters-by-doe.txt"], TODAY)
    assert told(found, "kindled") == [
        {"kind": "kindled", "doe": "Hazel", "born": 9, "alive": 8, "dead": 1, "on": "2025-02-04"},
        {"kind": "kindled", "doe": "Fern", "born": 7, "on": "2025-03-28"},
        {"kind": "kindled", "doe": "Hazel", "born": 6, "alive": 6, "dead": 0, "on": "2025-05-02"},
    ]
    assert {"kind": "weaned", "doe": "Hazel", "count": 7, "on": "2025-03-11"} in told(found)
    assert [each["tag"] for each in told(found, "animal")] == ["Hazel", "Bramble", "Fern"]
    row = next(row for row in found.rows if row.line == 5)
    assert row.doubts[:2] == ["bred, but no buck is named", "five is no number"]


def test_a_sheet_off_the_scale() -> None:
    """Pounds and ounces in every spelling, days in the headings, a row twice, a weight that can't be."""
    found = intake([sheet("scale-sheet.csv")], Herd(), (), DECIDED["scale-sheet.csv"], TODAY)
    weights = [(each["who"], each["grams"], each["on"]) for each in told(found, "weighed")]
    assert ("R1", 1871, "2025-03-15") in weights
    assert ("R3", 2126, "2025-03-15") in weights
    assert ("R1", 1786, "2025-03-07") in weights
    assert next(row for row in found.rows if row.line == 5).facts == []
    assert any("not taken" in each["text"] for each in told(found, "remark"))


def test_pens_weighed_week_by_week() -> None:
    """A workbook with merged titles, days as headings, units in the cells, lines that part it, a row twice, and a row of sums."""
    found = intake([sheet("growing-pens.xlsx")], Herd(), (), DECIDED["growing-pens.xlsx"], TODAY)
    assert [(each["who"], each["grams"], each["on"]) for each in told(found, "weighed")] == [
        ("K1", 1162, "2026-03-29"),
        ("K2", 1077, "2026-03-29"),
        ("K3", 1200, "2026-03-29"),
        ("K4", 879, "2026-03-29"),
        ("K1", 1389, "2026-04-05"),
        ("K2", 1304, "2026-04-05"),
        ("K4", 1106, "2026-04-05"),
    ]
    assert [each["text"] for each in told(found, "remark")] == ["biggest", "runty, watch", "sold in April"]
    assert [row.line for row in found.rows if not row.facts] == [1, 2, 3, 4, 5, 9, 11, 13]
    assert next(row for row in found.rows if row.line == 6).text.startswith("K1 | doe | NZW | 2026-02-01 | 2 lb 9 oz")


@pytest.mark.parametrize("name", sorted(DECIDED))
def test_the_book_that_a_sheet_makes_goes_out_and_comes_in_equal(name: str) -> None:
    """As tables in a workbook and as JSON: the same facts, and the same herd."""
    facts = tuple(fact for fact, _ in intake([sheet(name)], Herd(), (), DECIDED[name], TODAY).facts)
    before = book(Herd(), [Note(1, "moved in", NOW, "ann", facts=facts)])
    tables = [tidy(title, rows) for title, rows in sheets_of("book.xlsx", workbook(own_tables(before, "home")))]
    for back in (own_facts(tables), document_facts(json.loads(json.dumps(document(before, "home"))))):
        assert not isinstance(back, Problem)
        again = book(Herd(), notes_of(back))
        assert [entry.fact for entry in again.standing()] == list(facts)
        assert again.herd == before.herd


def test_those_that_left_nobody_knows_when() -> None:
    """On the day that somebody says; what a sale brought comes with it."""
    found = intake([sheet("everything.csv")], Herd(), (), DECIDED["everything.csv"], TODAY)
    assert told(found, "sold") == [{"kind": "sold", "who": "Pepper", "price": "45.00", "to": "a neighbour", "on": "2025-01-01"}]
    assert [each["who"] for each in told(found, "died") + told(found, "culled")] == ["Sage", "Thyme"]
    assert [question.key for question in intake([sheet("everything.csv")], Herd(), (), {}, TODAY).questions] == ["gone"]


def test_animals_come_after_their_parents_and_kits_after_their_birth() -> None:
    """Whatever the order of the rows and of the sheets."""
    animals = grid_of("Tag,Sex,DOB,Sire,Dam\n31,d,2025-07-04,3,14\n14,d,,3,\n3,b,,14,3\n", "herd")
    litters = grid_of("Doe,Buck,Bred,Kindled,Kits\n14,3,2025-06-03,2025-07-04,8\n", "litters")
    found = intake([animals, litters], Herd(), (), {}, TODAY)
    order = [(fact.kind, getattr(fact, "tag", None)) for fact, _ in found.facts]
    assert order.index(("animal", "3")) < order.index(("animal", "14")) < order.index(("kindled", None)) < order.index(("animal", "31"))


def test_what_became_of_animals() -> None:
    """A day in its column, a tick with the day that was decided, a price that is none, a buyer of one that died."""
    head = "Tag,Sex,Sold,Sale price,Sold to,Died,Butchered,Status\n"
    found = taken(
        head
        + "1,d,2025-01-02,45,Ann,,,\n2,d,2025-01-02,lots,,,,\n3,d,,,Bob,2025-01-03,,\n4,d,,,,,x,\n5,d,,,,,,gave away\n6,d,,5,,,,moved out\n",
        gone="2025-02-01",
    )
    assert told(found, "sold") == [
        {"kind": "sold", "who": "1", "on": "2025-01-02", "price": "45.00", "to": "Ann"},
        {"kind": "sold", "who": "2", "on": "2025-01-02"},
    ]
    assert [(each["kind"], each["who"], each["on"]) for kind in ("died", "culled", "given_away") for each in told(found, kind)] == [
        ("died", "3", "2025-01-03"), ("culled", "4", "2025-02-01"), ("given_away", "5", "2025-02-01"),
    ]  # fmt: skip
    words = {each["who"]: each["text"] for each in told(found, "remark")}
    assert words == {"2": "Sale price: lots", "3": "Sold to: Bob", "6": "Status: moved out; Sale price: 5"}


def test_what_rows_of_animals_may_hold() -> None:
    """Cages, prices, ounces in a column of their own, a sex that is none, a parent that is itself, both names of one animal."""
    found = taken(
        "Tag,Name,Sex,Sire,Dam,Cage,Price paid,Date acquired,Wt lb,Wt oz,Date\n"
        "14,Juno,spayed,14,12 (Vera),A4,$50,2025-01-05,4,6,2025-02-01\n12,Vera,d,,,,free,,4,99,2025-02-01\n15,Vera,d,,Vera,,,,,3,2099-01-01\n"
    )
    animals = {each["tag"]: each for each in told(found, "animal")}
    assert animals["14"] == {
        "kind": "animal",
        "tag": "14",
        "name": "Juno",
        "dam": "12",
        "origin": "bought",
        "price": "50.00",
        "on": "2025-01-05",
    }
    assert told(found, "moved") == [{"kind": "moved", "who": "14", "cage": "A4", "on": "2025-02-01"}]
    assert [(each["who"], each["grams"]) for each in told(found, "weighed")] == [("14", 1984), ("12", 1814)]
    words = {each["who"]: each["text"] for each in told(found, "remark")}
    assert words == {"14": "Sex: spayed; Sire: 14", "12": "Price paid: free", "15": "Date: 2099-01-01"}
    assert next(row for row in found.rows if row.line == 4).doubts == ["2099-01-01 is still to come"]


def test_weights_at_an_age_want_a_birth_day() -> None:
    """From the row, from another sheet, or from the book."""
    herd = book(Herd(), [Note(1, "", NOW, "ann", facts=tuple(fact for fact, _ in taken("Tag,DOB\n9,2025-01-01\n").facts))]).herd
    both = [grid_of("Tag,DOB\n8,2025-01-01\n8,\n", "herd"), grid_of("Tag,8 wk wt\n7,3-0\n8,3-0\n9,3-0\n", "weights")]
    found = intake(both, herd, (), {}, TODAY)
    assert [(each["who"], each["on"]) for each in told(found, "weighed")] == [("8", "2025-02-26"), ("9", "2025-02-26")]
    assert any("a weight without a day" in doubt for row in found.rows for doubt in row.doubts)


def test_lines_that_part_a_sheet() -> None:
    """`Does:` holds for the rows below; a title is none, and a sum neither."""
    found = taken("Tag,Breed,DOB\nDoes:,,\n14,Satin,2025-01-01\nBucks,,\n3,Satin,2025-01-01\nRow B,,\n4,Satin,\nTotal,3,\n,,\n,?,-\n")
    assert [(each["tag"], each["sex"]) for each in told(found, "animal")] == [("14", "doe"), ("3", "buck"), ("4", "buck")]
    assert [row.why for row in found.rows] == [
        "these are the headings", "it parts the sheet", "", "it parts the sheet", "", "it parts the sheet", "", "it only sums up", "it only sums up",
    ]  # fmt: skip


def test_rows_that_name_nobody() -> None:
    """Their words are kept all the same."""
    found = taken("Tag,Sex,Notes\n14,d,\n,d,by the door\n")
    assert told(found, "remark")[0]["text"] == "d | by the door"
    litters = taken("Doe,Kindled,Kits,Notes\n14,2025-01-01,8,\n,2025-02-01,6,no doe\n15,,8,\n16,2025-01-01,8,\n")
    assert [row.why for row in litters.rows] == ["these are the headings", "", "it names no doe", "", ""]
    assert "kits, but no day they were born" in litters.rows[3].doubts


def test_rows_of_litters() -> None:
    """A day bred without a buck, none weaned, weaned on a day, a litter bred to itself."""
    found = taken(
        "Doe,Buck,Bred,Kindled,Kits,Weaned,Date weaned\n14,3,2025-06-03,2025-07-04,8,7,2025-08-08\n15,15,2025-06-03,,,,\n14,3,,2025-10-04,8,0,2025-11-08\n16,,,,,,2025-11-08\n"
    )
    assert told(found, "weaned") == [{"kind": "weaned", "doe": "14", "count": 7, "on": "2025-08-08"}]
    words = {each["text"] for each in told(found, "remark")}
    assert words == {"Buck: 3; Weaned: 0", "Bred: 2025-06-03; Buck: 15", "Date weaned: 2025-11-08"}
    assert len(told(found, "bred")) == 1


def test_what_contradicts_the_book_is_not_taken() -> None:
    """It is kept as words beside the animal, with the reason."""
    facts = tuple(fact for fact, _ in taken("Tag,Sex,DOB\n14,d,2025-01-01\n15,d,2025-01-01\n").facts)
    herd = book(Herd(), [Note(1, "", NOW, "ann", facts=facts)]).herd
    found = taken("Tag,Sex,DOB,Died\n14,b,2025-01-01,\n15,d,2025-01-01,2024-01-01\n", herd, facts)
    assert [each["who"] for each in told(found)] == ["14", "15"]
    assert all(each["text"].startswith("not taken: ") for each in told(found))
    assert sum("kept as words" in doubt for row in found.rows for doubt in row.doubts) == len(told(found))


def test_an_animal_that_is_gone_and_stands_in_the_sheet_still() -> None:
    """It is the one on the book, not another of that tag."""
    facts = tuple(fact for fact, _ in taken("Tag,Sex,DOB,Died\n14,d,2025-01-01,2025-02-01\n").facts)
    herd = book(Herd(), [Note(1, "", NOW, "ann", facts=facts)]).herd
    assert told(taken("Tag,Sex,DOB\n14,d,2025-01-01\n", herd)) == []
    assert [each["tag"] for each in told(taken("Tag,Sex,DOB\n14,d,2026-01-01\n", herd))] == ["14"]


def test_what_is_told_of_it_all() -> None:
    """Columns, counts, and the rows with something to look at, the first of them by name."""
    rows = "".join(f"R{number},d,2025-02-30\n" for number in range(25))
    found = taken("Tag,Sex,DOB\n" + rows + "R1,d,2025-02-30\n")
    lines = list(found.lines())
    assert lines[0] == "sheet: 26 rows of animals. Tag = tag, Sex = sex, DOB = born."
    assert lines[1] == "50 notes: 25 animal, 25 remark."
    assert lines[2] == "2 notes told before: left out."
    assert lines[3] == "sheet, row 2: 2025-02-30 is no day (R0 | d | 2025-02-30)"
    assert lines[-1] == "And 6 rows more to look at: --json lists them all."
    document = found.document()
    assert document["sheets"] == [
        {
            "name": "sheet", "of": "animals", "rows": 26, "dates": "MDY",
            "columns": [
                {"heading": "Tag", "means": "tag", "unit": None}, {"heading": "Sex", "means": "sex", "unit": None}, {"heading": "DOB", "means": "born", "unit": None},
            ],
        }
    ]  # fmt: skip
    assert document["rows"][26]["known"] == 2
    assert list(taken("Tag,Sex\n14,\n").lines())[1:] == ["1 note: 1 animal."]


def test_progress_is_told() -> None:
    """Now and then, and at the end."""
    seen: list[tuple[int, int]] = []
    intake(
        [grid_of("Tag,Sex\n" + "".join(f"R{at},d\n" for at in range(600)), "s")],
        Herd(),
        (),
        {},
        TODAY,
        lambda done, length: seen.append((done, length)),
    )
    assert seen == [(500, 600), (600, 600)]
