"""A doe's litter size in words: beside her breed's, the next one, a fall, and thin books."""

from __future__ import annotations

import pytest

from core.reports.litter_size import next_litter, size_document, size_lines, size_of
from core.reports.merits import merits
from tests.herds import Barn


def barn_of(*sizes: int, **fields: object) -> Barn:
    """Doe 14 with litters of these sizes, ten weeks apart."""
    barn = Barn().doe("14", 1200, **fields).buck("3")
    for at, size in enumerate(sizes):
        barn.litter("14", "3", 100 + 70 * (len(sizes) - 1 - at), size, weaned=size)
    return barn


def test_a_fall_is_told_from_noise() -> None:
    """Eleven, nine, six, three is a fall; eight, six, eight, seven is not."""
    falling, level = (size_of(each.seen, each.find("14")) for each in (barn_of(11, 9, 6, 3), barn_of(8, 6, 8, 7)))
    assert falling.chance_of_fall > 0.8
    assert level.chance_of_fall < 0.65
    assert falling.following < level.following


def test_a_small_first_litter_of_one_raised_here_is_no_rise() -> None:
    """Born here, her first litter is her first; of a doe that came grown it is not known."""
    raised, bought = (barn_of(7, 8, 8, origin=origin) for origin in ("born_here", "bought"))
    found = [size_of(each.seen, each.find("14")) for each in (raised, bought)]
    assert found[0].slope < 0.1 < found[1].slope


def test_a_doe_that_came_as_a_kit_kindles_her_first_here() -> None:
    """Bought at ten weeks: her first litter is smaller for that; one of no known age counts as grown."""
    kit = Barn().doe("14", 70).buck("3")
    old = Barn().doe("14", None).buck("3")
    assert size_of(kit.seen, kit.find("14")).following < size_of(old.seen, old.find("14")).following


@pytest.mark.parametrize(("breed", "usual"), [("New Zealand", 7.4), ("Netherland Dwarf", 3), ("Polish", 3), ("Dutch", 5), (None, 7.4)])
def test_small_breeds_are_held_to_small_litters(breed: str | None, usual: float) -> None:
    """What is expected of a first litter here, before any was born."""
    barn = Barn().doe("14", 70, breed)
    assert size_of(barn.seen, barn.find("14")).following == pytest.approx(usual, rel=0.12)


def test_the_next_litter_is_told_with_its_interval() -> None:
    """Wide, as one litter is; and no trend from one litter."""
    barn, one = barn_of(8, 8, 8), barn_of(8)
    size = size_of(barn.seen, barn.find("14"))
    low, high = next_litter(size)
    assert 0 < low < 7 < size.following < 8.6 < high
    assert size_document(size)["next_litter"] == {"estimate": size.following, "low": low, "high": high}
    assert size_document(size)["level_low"] < size.level < size_document(size)["level_high"]
    assert size_document(size_of(one.seen, one.find("14")))["chance_of_fall"] is None


def test_in_words_she_stands_beside_her_breed() -> None:
    """Above and below with the kits, level where it is no difference; few litters say what to note."""
    good, poor, usual = barn_of(11, 10, 12, 11), barn_of(3, 4, 3, 3), barn_of(8, 7)
    for barn in (good, poor, usual):
        barn.doe("15").doe("16")
        for mate in ("15", "16"):
            for days in (300, 230, 160):
                barn.litter(mate, "3", days, 8, weaned=7)
    told = [size_lines(each.seen, each.find("14"))[0] for each in (good, poor, usual)]
    assert "kits a litter above her breed's does here" in told[0]
    assert "kits a litter below her breed's does here" in told[1]
    assert told[2].startswith("Litter size: level with her breed's does here")
    assert told[2].endswith("alive. So few tell little of her: count each at kindling.")
    assert "So few" not in told[0]
    assert size_lines(Barn().doe("14").seen, Barn().doe("14").find("14")) == []


def test_large_litters_speak_for_a_doe() -> None:
    """Surely above her breed's does here, by so many litters; her mates are not."""
    barn = barn_of(11, 10, 12, 11, 11).doe("15")
    for days in (300, 230, 160):
        barn.litter("15", "3", days, 7, weaned=7)
    of_hers, of_mate = ({one.code: one for one in merits(barn.seen, barn.find(tag))} for tag in ("14", "15"))
    assert of_hers["large_litters"].text.endswith("her breed's does here, by 5 litters, allowing for luck.")
    assert of_hers["large_litters"].evidence["count"] == 5
    assert "large_litters" not in of_mate
