"""The whole farm out in one file, and in on another machine."""

from __future__ import annotations

from tests.machine import Machine


def test_a_farm_goes_to_another_machine(farm: Machine) -> None:
    """It is the same farm there."""
    farm.ok("export", "--archive", "--to", "farm.zip")
    told = farm.json("restore", "farm.zip", "--book", "new.sqlite")
    assert told == {"restored": 7}
    assert farm.json("herd", "--book", "new.sqlite") == farm.json("herd")
    assert farm.ok("export", "--journal", "--book", "new.sqlite") == farm.ok("export", "--journal")
    assert farm.refused("restore", "farm.zip")["code"] == "not_empty"


def test_archives_that_are_none(farm: Machine) -> None:
    """A broken ZIP, and a ZIP of something else."""
    farm.ok("export", "--csv", "--to", "tables.zip")
    assert farm.refused("restore", "tables.zip", "--book", "new.sqlite")["code"] == "bad_archive"
    farm.ok("export", "--archive", "--to", "farm.zip")
    content = bytearray((farm.folder / "farm.zip").read_bytes())
    content[60:80] = b"x" * 20
    (farm.folder / "broken.zip").write_bytes(bytes(content))
    assert farm.refused("restore", "broken.zip", "--book", "new.sqlite")["code"] == "no_file"


def test_an_archive_wants_a_file(farm: Machine) -> None:
    """It is no text."""
    result = farm.run("export", "--archive")
    assert result.exit_code == 2
    assert "--to book.zip" in result.stderr
