"""One litter in a line."""

from __future__ import annotations

from core.herd.state import Litter
from core.reports.litter_story import story
from tests.farm import ago
from tests.herds import Barn


def told(barn: Barn, tag: str = "22") -> str:
    """The story of the newest litter as that animal's."""
    litter = max(barn.herd.litters.values(), key=lambda one: one.born_on)
    return story(barn.seen, barn.find(tag), litter)


def test_losses_are_told_by_cause() -> None:
    """Born, lost and of what, alive now, and when the box went in and out."""
    barn = Barn().buck("3").doe("22").say("bred", doe="22", buck="3", on=ago(46)).say("nest_box", doe="22", change="in", on=ago(18))
    barn.say("kindled", doe="22", born=9, alive=9, dead=0, on=ago(15)).lost("22", 3, ago(13), "cold").lost("22", 2, ago(11))
    assert told(barn) == "Tue 10 Nov (by 3): 9 born alive, 5 lost (3 cold, 2 no cause noted), 4 now, nest box in Sat 7 Nov"
    assert told(barn, "3").startswith("Tue 10 Nov (out of 22): 9 born alive")
    barn.say("nest_box", doe="22", change="out", on=ago(1))
    assert told(barn).endswith("nest box in Sat 7 Nov and out yesterday")


def test_fostered_kits_are_told() -> None:
    """Kits that came and kits that went."""
    barn = Barn().buck("3").doe("22").doe("9").litter("9", "3", 6, 4).litter("22", "3", 5, 8)
    barn.say("fostered", count=2, from_="22", to="9", on=ago(4)).say("fostered", count=1, from_="9", to="22", on=ago(3))
    assert told(barn) == "Fri 20 Nov (by 3): 8 born alive, 1 fostered in, 2 fostered out, 7 now"


def test_litter_of_which_little_is_known() -> None:
    """No count told, no sire, weaned on an unknown day: that is said, or left out."""
    barn = Barn().doe("22")
    litter = Litter("22@2026-11-21", "22", None, (), ago(4), weaned=5)
    assert story(barn.seen, barn.find("22"), litter) == "Sat 21 Nov: count not told, 5 weaned"
