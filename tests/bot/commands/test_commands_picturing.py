"""Pictures by command."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from bot.commands.picturing import PICTURES
from core.app.pictures import OF_FARM, OF_ONE
from core.reports.pictures import picture
from tests.machine import Machine


@pytest.fixture
def farm(machine: Machine) -> Machine:
    """A farm with a weighed grow-out and a doe."""
    machine.tell("new doe 14 named Juno mini rex born 3/4/2025", "new buck 31 mini rex born 9/2/2026", "31 1-14")
    return machine


def test_a_picture_is_a_file(farm: Machine) -> None:
    """By tag or name, where it is wanted; what it shows is told."""
    told = farm.ok("picture", "growing", "31", "--out", "g.png")
    assert told.startswith("Buck 31: 1 lb 14 oz at 12 weeks.\n")
    assert told.endswith("File: g.png\n")
    assert Image.open(io.BytesIO((farm.folder / "g.png").read_bytes())).width == 1080
    assert farm.json("picture", "week")["file"] == "week.png"


def test_a_picture_on_standard_output(farm: Machine) -> None:
    """For another program."""
    done = farm.run("picture", "winter", "--out", "-")
    assert Image.open(io.BytesIO(done.stdout_bytes)).format == "PNG"


def test_nothing_to_show(farm: Machine) -> None:
    """What is missing, and how to tell it; who is not on the book."""
    assert farm.refused("picture", "dams")["code"] == "nothing_to_show"
    assert farm.refused("picture", "bucks", "--breed", "Rex")["code"] == "nothing_to_show"
    for about in ("growing", "litter", "litters"):
        assert farm.refused("picture", about, "Juno")["code"] == "nothing_to_show"
        assert farm.refused("picture", about, "99")["code"] == "no_animal"


def test_an_animal_where_one_is_needed(farm: Machine) -> None:
    """And none where the picture is of the farm."""
    for words in (("growing",), ("week", "14")):
        assert farm.run("picture", *words).exit_code == 2


def test_every_picture_has_its_command() -> None:
    """One list of them all, in the reports, at the door and here."""
    assert set(PICTURES) == {*OF_ONE, *OF_FARM}
    assert (set(picture.OF_ONE), set(picture.OF_FARM)) == (set(OF_ONE), set(OF_FARM))
