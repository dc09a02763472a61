"""Files to print or to carry off, by command."""

from __future__ import annotations

from tests.machine import Machine


def test_a_calendar_is_written_and_told(farm: Machine) -> None:
    """Under its own name where none is given; for programs as JSON."""
    told = farm.ok("calendar")
    assert told.endswith("File: chores.ics\n")
    assert told.startswith("7 chores until ")
    content = (farm.folder / "chores.ics").read_bytes()
    document = farm.json("calendar", "--out", "other.ics")
    assert document == {"file": "other.ics", "bytes": len(content), "text": told.splitlines()[0]}
    assert (farm.folder / "other.ics").read_bytes() == content


def test_a_place_that_can_not_be_written_to(farm: Machine) -> None:
    """Says so, and what to do."""
    problem = farm.refused("calendar", "--out", "no/such/folder/chores.ics")
    assert problem["code"] == "no_file"


def test_standard_output_holds_one_thing(farm: Machine) -> None:
    """The file or JSON."""
    assert farm.run("calendar", "--out", "-", "--json").exit_code == 2
