"""Spreadsheets taken in by command: looked at, asked about, recorded, taken back; and a book that comes back equal."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path

import pytest

from tests.machine import Machine
from tests.workbooks import workbook

HERD = "Tag,Name,Sex,Breed,DOB,Sire,Dam\n14,Juno,d,Mini Rex,2025-03-14,3,\n3,Duke,b,Mini Rex,2024-03-15,,\n"


@pytest.fixture
def herd(machine: Machine) -> Machine:
    """A machine with a spreadsheet and no book."""
    (machine.folder / "herd.csv").write_text(HERD, encoding="utf-8")
    return machine


def test_a_dry_run_records_nothing(herd: Machine) -> None:
    """It shows what each row would become."""
    told = herd.json("import", "herd.csv", "--dry-run")
    assert (told["recorded"], told["dry_run"], told["facts"]) == (0, True, {"animal": 2})
    assert [[fact["tag"] for fact in row["facts"]] for row in told["rows"]] == [[], ["14"], ["3"]]
    assert herd.json("status")["notes"] == 0
    assert "Nothing is recorded" in herd.ok("import", "herd.csv", "--dry-run")


def test_it_is_one_note_with_its_origin_and_taken_back_as_one(herd: Machine) -> None:
    """Its words say which row each fact came from; it can come again afterwards."""
    assert herd.json("import", "herd.csv")["recorded"] == 2
    note = json.loads(herd.ok("export", "--journal").splitlines()[-1])
    assert note["text"] == (
        "moved in from herd.csv\nherd, row 2: 14 | Juno | d | Mini Rex | 2025-03-14 | 3\nherd, row 3: 3 | Duke | b | Mini Rex | 2024-03-15"
    )
    assert [each["tag"] for each in herd.json("herd")["animals"]] == ["3", "14"]
    assert "Nothing new was in it." in herd.ok("import", "herd.csv")
    herd.ok("say", "undo")
    assert herd.json("herd")["animals"] == []
    assert herd.json("import", "herd.csv")["recorded"] == 2
    assert len(herd.json("herd")["animals"]) == 2


def test_an_undo_of_many_names_the_first(machine: Machine) -> None:
    """And counts the rest."""
    (machine.folder / "herd.csv").write_text("Tag,Sex\n" + "".join(f"R{at},d\n" for at in range(100)), encoding="utf-8")
    machine.ok("import", "herd.csv")
    lines = machine.ok("say", "undo").splitlines()
    assert len(lines) == 13
    assert lines[-1] == "And 88 more of the same note."
    assert machine.json("herd")["animals"] == []


def test_what_is_unclear_is_asked_and_answered(machine: Machine) -> None:
    """With the words that answer it; nothing is recorded until then."""
    (machine.folder / "herd.csv").write_text("Left,Sex,DOB\n14,d,3/4/2025\n", encoding="utf-8")
    problem = machine.refused("import", "herd.csv")
    assert problem["code"] == "ask_first"
    assert problem["text"].splitlines() == [
        'Which column of herd names the animal? Its columns are Left, Sex, DOB. Say --as "HEADING=tag"',
        "herd: is the month first in its dates, or the day? Say --as dates=MDY|DMY",
    ]
    assert "To be asked: " in machine.ok("import", "herd.csv", "--dry-run")
    machine.ok("import", "herd.csv", "--as", "Left=tag", "--as", "dates=DMY")
    assert "grown Wed 3 Dec 2025" in machine.ok("card", "14")  # 244 days later
    only_dates = machine.folder / "more.csv"
    only_dates.write_text("Tag,Sex,Weight\n15,d,4-6\n", encoding="utf-8")
    assert machine.refused("import", "more.csv")["text"].endswith("Say --as weighed=DAY")


def test_a_workbook_of_several_sheets(machine: Machine) -> None:
    """The fifth of the messy ones: titles, days as headings, tags as numbers, sums, an empty sheet."""
    content = workbook(
        Breeders=[["Our rabbits 2025"], [], ["Ear #", "Rabbit", "B/D", "Variety", "Born", "Sire"], [14, "Juno", "D", "opal", datetime(2024, 3, 14), None], [3.0, "Duke", "B", "black", datetime(2023, 3, 15), "?"]],  # noqa: DTZ001 - as a workbook has it
        Weights=[["Tag", datetime(2024, 6, 1), datetime(2024, 7, 1)], [14, 2.75, 4.25], [3, None, 5], ["Average", 2.75, 4.6]],  # noqa: DTZ001
        Litters=[["Doe", "Buck", "Bred", "Kindled", "# born", "Weaned"], ["Juno", "Duke", datetime(2025, 6, 3), datetime(2025, 7, 4), 8, 7]],  # noqa: DTZ001
        Empty=[],
    )  # fmt: skip
    (machine.folder / "rabbits.xlsx").write_bytes(content)
    told = machine.json("import", "rabbits.xlsx", "--as", "weaned=35")
    assert told["facts"] == {"animal": 2, "weighed": 3, "bred": 1, "kindled": 1, "weaned": 1}
    assert [(row["sheet"], row["row"]) for row in told["rows"] if row["why"]] == [
        ("Breeders", 1), ("Breeders", 3), ("Weights", 1), ("Weights", 4), ("Litters", 1),
    ]  # fmt: skip


@pytest.mark.parametrize(("how", "name"), [("--csv", "tables"), ("--csv", "tables.zip"), ("--xlsx", "book.xlsx"), ("--json", "book.json")])
def test_out_and_in_again_is_an_equal_book(farm: Machine, how: str, name: str) -> None:
    """The same standing facts and the same herd, from each form."""
    farm.tell("box in 15", "14 4-2", "no, 4-6", "undo", "=1+1 is what the vet said about 3")
    farm.ok("export", how, "--to", name)
    assert farm.json("import", name, "--dry-run", "--book", "new.sqlite")["recorded"] == 0
    told = farm.json("import", name, "--book", "new.sqlite")
    assert told["recorded"] > 0
    assert farm.ok("export", "--notes", "--book", "new.sqlite") == farm.ok("export", "--notes")
    assert farm.json("herd", "--book", "new.sqlite") == farm.json("herd")
    assert farm.json("import", name)["recorded"] == 0


def test_a_book_into_another_brings_what_it_lacks(farm: Machine) -> None:
    """As one note."""
    farm.ok("export", "--json", "--to", "book.json")
    farm.tell("undo")
    assert "7 facts, 1 of them new here" in farm.ok("import", "book.json")
    assert farm.json("import", "book.json")["recorded"] == 0


@pytest.mark.parametrize(
    ("name", "content", "code"),
    [("none.csv", None, "no_file"), ("old.xls", b"\xd0\xcf\x11\xe0", "no_file"), ("empty.csv", b"", "bad_tables"), ("a.png", b"\x89PNG\r\n\x1a\n\x01,\x02", "bad_tables"), ("x.json", b"{", "bad_tables"), ("y.json", b"{}", "bad_tables")],
)  # fmt: skip
def test_files_that_hold_no_rows(machine: Machine, name: str, content: bytes | None, code: str) -> None:
    """Each is refused with what to give instead."""
    if content is not None:
        Path(machine.folder / name).write_bytes(content)
    assert machine.refused("import", name)["code"] == code


def test_a_decision_without_a_value_is_wrong_use(herd: Machine) -> None:
    """It ends with 2."""
    result = herd.run("import", "herd.csv", "--as", "dates")
    assert result.exit_code == 2
    assert "no WHAT=VALUE" in result.stderr
