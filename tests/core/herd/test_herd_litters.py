"""Questions about litters."""

from __future__ import annotations

from dataclasses import replace

from core.herd import litters as asked
from core.herd.state import Foster, Herd, Litter, Loss
from tests.farm import TODAY, ago, small_herd, tell

KNOWN = Litter(key="1@x", dam="1", sire=None, sires_possible=(), born_on=ago(20), born=8, dead=1)


def test_kits_of_a_litter_without_history() -> None:
    """What came on the book at once is counted from its numbers."""
    litter = replace(
        KNOWN,
        losses=(Loss(ago(19), 2, None),),
        fostered_in=(Foster(ago(18), 3, None),),
        fostered_out=(Foster(ago(18), 1, None),),
    )

    assert asked.live_born(litter) == 7
    assert asked.alive_now(litter) == 7
    assert asked.alive_now(litter, ago(21)) == 0
    assert asked.live_born(replace(KNOWN, alive=5)) == 5


def test_kits_alive_on_a_day() -> None:
    """The count follows what happened, day by day."""
    herd = tell(small_herd(), "kits_lost", doe="12", count=2, on=ago(3))
    litter = herd.litters[f"12@{ago(15)}"]

    assert (asked.alive_now(litter), asked.alive_now(litter, ago(4)), asked.alive_now(litter, ago(16))) == (5, 7, 0)


def test_untagged_before_and_after_weaning() -> None:
    """Tagged kits and those that left are not counted; a kit that died before weaning is missing from the nest."""
    herd = tell(small_herd(), "tagged", litter_of="12", tag="R40")
    litter = f"12@{ago(15)}"
    assert asked.untagged(herd, herd.litters[litter]) == 6
    herd = tell(tell(herd, "died", who="R40"), "sold", litter_of="12", count=2)
    assert (asked.alive_now(herd.litters[litter]), asked.untagged(herd, herd.litters[litter])) == (4, 4)
    herd = tell(tell(herd, "tagged", litter_of="12", tag="R41"), "weaned", doe="12", count=4)
    assert asked.untagged(herd, herd.litters[litter]) == 3
    assert asked.on_book(herd, herd.litters[litter]) == 3
    herd = tell(tell(herd, "sold", who="R41"), "given_away", litter_of="12", count=1)
    assert asked.untagged(herd, herd.litters[litter]) == 2


def test_the_litter_is_the_youngest_with_untagged_kits() -> None:
    """ "The litter" is the youngest that has a kit without a tag; the one under her goes first where kits are nursed."""
    herd = small_herd()

    litter = asked.the_litter(herd, "16")
    assert litter is not None
    assert litter.born_on == ago(48)
    assert asked.the_litter(herd, "14") is None
    assert asked.newest_litter(herd, "14") is not None
    assert asked.nursed_litter(herd, "16") is None
    assert asked.litter_meant(herd, "16") == litter
    assert asked.litter_meant(herd, "12", ago(16)) is None
    assert asked.newest_litter(herd, "15") is None


def test_litter_born_within_a_night() -> None:
    """A birth date one day off is the same litter."""
    herd = small_herd()

    assert asked.litter_born(herd, "12", ago(14)) is not None
    assert asked.litter_born(herd, "12", ago(13)) is None


def test_parity_and_sired() -> None:
    """Litters borne and sired, the earliest first."""
    herd = small_herd()

    assert asked.parity(herd, "12") == 1
    assert [litter.dam for litter in asked.litters_sired(herd, "3")] == ["14", "16"]


def test_nests_at_risk() -> None:
    """Cold threatens unweaned litters up to four weeks, told apart by whether they leave the nest."""
    herd = tell(small_herd(), "kindled", doe="9", born=6)

    assert [(litter.dam, age, leaving) for litter, age, leaving in asked.nests_at_risk(herd, TODAY)] == [("9", 0, False), ("12", 15, True)]
    assert asked.nests_at_risk(Herd(), TODAY) == ()
