"""A planned mating: how close, what colors, what speaks against it."""

from __future__ import annotations

import pytest

from core.reports.pairing import Pairing, pairing
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


def of(barn: Barn, doe: str, buck: str) -> Pairing:
    """The pairing of these two."""
    return pairing(barn.herd, TODAY, barn.find(doe), barn.find(buck))


def family() -> Barn:
    """Grandparents, full and half sibs of age."""
    barn = Barn().buck("3", color="black").doe("1", color="black").doe("2", color="black")
    barn.doe("10", sire="3", dam="1", color="blue", age=400).buck("11", sire="3", dam="1", color="black", age=400)
    return barn.buck("12", sire="3", dam="2", color="black", age=400).buck("20", color="blue")


@pytest.mark.parametrize(
    ("buck", "coi", "warns"), [("11", 0.25, "Too close"), ("12", 0.125, "Close: over your line of 12 %"), ("20", 0.0, None)]
)
def test_closeness(buck: str, coi: float, warns: str | None) -> None:
    """Full sibs, half sibs and strangers, with their warnings."""
    found = of(family(), "10", buck)
    assert found.coi == pytest.approx(coi)
    assert [one for one in found.warnings if one.startswith(("Too close", "Close"))] == [
        one for one in found.warnings if warns and one.startswith(warns)
    ]
    assert bool(found.warnings) is bool(warns)


def test_line_of_the_farm() -> None:
    """The farm's own limit decides when to warn."""
    assert of(family().set("highest_coi", 0.2), "10", "12").warnings == ()


def test_depth_of_the_pedigree_is_told() -> None:
    """A COI says how deep it looks."""
    assert "Ancestors: all known for 1 generation on both sides." in of(family(), "10", "11").reply().lines
    assert "Not all parents are on the book, so it may be more." in of(family(), "10", "20").reply().lines


def test_colors_from_both_coats_and_the_family() -> None:
    """Blue to blue gives blue; a black buck out of a blue's parents carries it half the time or more."""
    assert max(of(family(), "10", "20").colors.items(), key=lambda one: one[1])[0] == "blue"
    mixed = of(family(), "10", "11").colors
    assert mixed["black"] > mixed["blue"] > 0.2


def test_colors_in_the_farm_s_own_words() -> None:
    """A breed that says castor gets castor, not chestnut."""
    barn = Barn().doe("15", breed="Mini Rex", color="castor").buck("7", breed="Mini Rex", color="castor")
    assert next(iter(of(barn, "15", "7").colors)) == "castor"


def test_unknown_coat_tells_no_colors() -> None:
    """Without both colors nothing is forecast."""
    barn = Barn().doe("15", color="black").buck("7")
    assert of(barn, "15", "7").colors == {}
    assert any("note both parents' colors" in line for line in of(barn, "15", "7").reply().lines)


def test_too_young_gone_bred_or_faulty() -> None:
    """What else speaks against it."""
    barn = Barn().doe("15", age=120).buck("7", age=None).say("bred", doe="15", buck="7", on=ago(3))
    barn.say("fault", who="7", fault="white toenail", disqualifies=True).say("sold", who="7")
    assert of(barn, "15", "7").warnings == (
        "Doe 15 is 17 weeks old; the breed is ready at about 21 weeks.",
        "Buck 7 is not on the farm.",
        "Doe 15 was bred Sun 22 Nov already.",
        "Buck 7 has a disqualifying fault: white toenail.",
    )
    assert not any("would kindle" in line for line in of(barn, "15", "7").reply().lines)


def test_unknown_breed_has_no_age() -> None:
    """Nothing is said of readiness where the breed isn't known."""
    assert of(Barn().doe("15", age=100, breed=None).buck("7", breed=None), "15", "7").warnings == ()


def test_reply_and_document() -> None:
    """Past litters, the day she would kindle, buttons for both cards; and the same as numbers."""
    barn = Barn().doe("15").buck("7").litter("15", "7", 200, 8, weaned=6)
    reply = of(barn, "15", "7").reply()
    assert reply.lines[0] == "15 x 7: kits would be 0.0 % inbred."
    assert "Together before: 8 born alive; 6 of 8 raised." in reply.lines
    assert reply.lines[-2] == "Bred today, she would kindle about Sat 26 Dec."
    assert reply.lines[-1] == "To be surer, note: who 15 and 7 are out of, the color of 15 and 7 and weights of kits at about 10 weeks."
    assert [one.says for one in reply.choices] == ["15", "7"]
    told = of(barn, "15", "7").document()
    assert (told["doe"], told["buck"], told["coi"], told["past_born_alive"]) == ("15", "7", 0.0, [8])
    assert (told["past_raised"], told["past_colors"], told["raised"] > 5) == ({"kept": 6, "of": 8}, [{}], True)
    assert told["litter_size"]["litters"] == 1


def test_past_litters_with_their_colors() -> None:
    """Tagged kits' colors, and those that were counted of the litter; a litter still in the nest is not raised yet."""
    barn = Barn().doe("15", color="black").buck("7", color="blue").litter("15", "7", 200, 4, weaned=4).litter("15", "7", 20, 7)
    barn.kits("15", "R1 R2", 200).say("color", who="R1", color="blue").say("color", who="R2", color="black")
    barn.say("litter_colors", doe="15", colors=(("blue", 3), ("black", 4)), on=ago(5))
    assert "Together before: 4 and 7 born alive; 4 of 4 raised; 4 blue, 5 black." in of(barn, "15", "7").reply().lines


def test_one_parent_unknown_is_asked_for_by_itself() -> None:
    """What is noted already is not asked for."""
    barn = two_sires().doe("40", color="black", sire="7", dam="11").buck("41", color="black")
    assert of(barn, "40", "41").thin() == ("who 41 is out of", "weights of kits at about 10 weeks")
    assert of(barn, "11", "7").thin() == ("who 11 and 7 Rowan are out of", "the color of 11 and 7 Rowan")


def test_colors_that_cannot_be_are_a_warning() -> None:
    """A chestnut kit of two blacks."""
    barn = Barn().doe("15", color="black").buck("7", color="black").litter("15", "7", 100, 4, weaned=4).kits("15", "R1", 100)
    barn.say("color", who="R1", color="chestnut")
    assert of(barn, "15", "7").warnings == (
        "15 (black), 7 (black) and R1 (chestnut): these colors can't all be right in one family. Send the right parents, or the right color: R1 is black",
    )
