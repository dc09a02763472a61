"""The book written out: for spreadsheets, for programs, and back."""

from __future__ import annotations

import csv
import io
import json
import zipfile
from pathlib import Path

import fastjsonschema
import openpyxl
import pytest

from tests.machine import Machine

SCHEMA = json.loads((Path(__file__).parents[3] / "docs" / "reference" / "book.schema.json").read_text(encoding="utf-8"))


def test_csv_files_in_a_folder(farm: Machine) -> None:
    """One a table, with a mark that tells spreadsheets which letters these are."""
    farm.ok("export", "--csv", "--to", "tables")
    files = {path.name: path.read_bytes() for path in (farm.folder / "tables").iterdir()}
    assert {"about.csv", "animals.csv", "told-animal.csv", "told-bred.csv", "notes.csv"} <= set(files)
    assert all(content.startswith(b"\xef\xbb\xbf") for content in files.values())
    rows = list(csv.DictReader(io.StringIO(files["animals.csv"].decode("utf-8-sig"), newline="")))
    assert [row["tag"] for row in rows] == ["14", "15", "3"]


def test_csv_files_in_one_zip(farm: Machine) -> None:
    """The same files; made twice, it is the same file."""
    for name in ("a.zip", "b.ZIP"):
        farm.ok("export", "--csv", "--to", name)
    assert (farm.folder / "a.zip").read_bytes() == (farm.folder / "b.ZIP").read_bytes()
    farm.ok("export", "--csv", "--to", "tables")
    with zipfile.ZipFile(farm.folder / "a.zip") as archive:
        assert archive.testzip() is None
        assert {name: archive.read(name) for name in archive.namelist()} == {
            path.name: path.read_bytes() for path in (farm.folder / "tables").iterdir()
        }


def test_a_workbook(farm: Machine) -> None:
    """A sheet a table."""
    farm.ok("export", "--xlsx", "--to", "book.xlsx")
    book = openpyxl.load_workbook(farm.folder / "book.xlsx")
    assert book.sheetnames[:4] == ["about", "animals", "matings", "litters"]
    assert [row[0].value for row in book["animals"].iter_rows(min_row=2)] == ["14", "15", "3"]


def test_json_as_its_schema_says(farm: Machine) -> None:
    """One object on one line; the facts are those that the notes told."""
    told = json.loads(farm.ok("export", "--json"))
    fastjsonschema.validate(SCHEMA, told)
    assert [fact["fact"]["kind"] for fact in told["facts"]] == ["setting", "animal", "animal", "animal", "bred", "kindled", "bred"]


@pytest.mark.parametrize("what", ["--csv", "--xlsx"])
def test_what_is_no_text_wants_a_file(farm: Machine, what: str) -> None:
    """Wrong use, before anything is opened."""
    result = farm.run("export", what)
    assert result.exit_code == 2
    assert "--to book." in result.stderr


@pytest.mark.parametrize("what", ["--csv", "--xlsx"])
def test_a_place_where_nobody_can_write(farm: Machine, what: str) -> None:
    """Ends with 1, says so, and leaves nothing half done."""
    (farm.folder / "file").write_text("", encoding="utf-8")
    result = farm.run("export", what, "--to", "file/book.zip")
    assert result.exit_code == 1
    assert "can't be written" in result.stderr


def test_the_family_book_for_genetics_programs(farm: Machine) -> None:
    """A line an animal, on standard output or in a file."""
    farm.ok("export", "--fam", "--to", "herd.fam")
    text = (farm.folder / "herd.fam").read_text(encoding="utf-8")
    assert text == farm.ok("export", "--fam")
    assert text.splitlines() == ["home 14 0 0 2 -9", "home 15 0 0 2 -9", "home 3 0 0 1 -9"]
