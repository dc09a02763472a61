"""Why: the verdict, its reasons, and the notes behind each."""

from __future__ import annotations

from core.handbook import health
from core.reports.behind import notes_behind
from core.reports.why import Why, why
from tests.core.reports.notes import entry
from tests.farm import TODAY, ago
from tests.herds import Barn

LONG = "14 lost 2 kits, found on the wire this morning, the box was full of hay and she never went in"


def barn() -> Barn:
    """14 raises half her kits, 9 is there too."""
    told = Barn().doe("14", name="Juno").doe("9").buck("3")
    for born_ago in (420, 320, 220, 120):
        told.litter("14", "3", born_ago, 8, weaned=3)
    return told.say("bred", doe="14", buck="3", on=ago(50)).say("missed", doe="14", on=ago(16))


ENTRIES = (
    entry("doe 14 kindled 8", "kindled", 120, doe="14", born=8),
    entry(LONG, "kits_lost", 118, doe="14", count=2),
    entry("weaned 14: 3", "weaned", 85, doe="14", count=3),
    entry("9 kindled 7", "kindled", 100, doe="9", born=7),
    entry("14 9-2", "weighed", 30, who="14", grams=4139),
)


def asked(tag: str = "14", entries: tuple[object, ...] = ENTRIES) -> Why:
    """Why that animal's verdict is what it is."""
    told = barn()
    return why(told.herd, TODAY, told.find(tag), entries)  # type: ignore[arg-type]


def test_lists_the_notes_behind_each_reason() -> None:
    """Under the reason stand the notes of the kinds that it rests on, about this animal only, by day."""
    lines = asked().reply().lines
    assert lines[0] == "Doe 14 (Juno): cull."
    assert lines[1].startswith("12 of 32 kits raised in 4 litters")
    assert lines[2] == "  Tue 28 Jul: doe 14 kindled 8"
    assert lines[3].startswith("  Thu 30 Jul: 14 lost 2 kits, found on the wire this morning, the box was")
    assert lines[3].endswith("…")
    assert lines[4] == "  Tue 1 Sep: weaned 14: 3"
    assert not any("9-2" in line or "9 kindled" in line for line in lines)


def test_many_notes_are_counted() -> None:
    """Only the last notes are shown, the earlier ones counted."""
    many = tuple(entry(f"14 lost 1, {number}", "kits_lost", 120 - number, doe="14", count=1) for number in range(9))
    lines = asked(entries=many).reply().lines
    assert "  and 5 earlier notes" in lines
    assert sum(line.startswith("  ") for line in lines) == 5


def test_cull_carries_saving_and_cautions() -> None:
    """A cull says what it saves, the caution, and that the person decides."""
    lines = asked().reply().lines
    assert any(line.startswith("Saves 5 oz of feed a day, ") for line in lines)
    assert lines[-2:] == (health.SLAUGHTER, health.ADVICE)


def test_keep_has_no_slaughter_caution() -> None:
    """Nothing of slaughter beside a keep."""
    lines = asked("3").reply().lines
    assert lines[0] == "Buck 3: keep."
    assert health.SLAUGHTER not in lines


def test_held_back_says_not_before() -> None:
    """A doe with kits goes only later."""
    told = barn().litter("14", "3", 10, 5)
    assert why(told.herd, TODAY, told.find("14")).reply().lines[0] == "Doe 14 (Juno): cull, not before Sun 20 Dec."


def test_no_verdict_on_kits_and_the_gone() -> None:
    """A kit, or one that is gone, has no verdict; its card can be asked for."""
    told = barn().litter("9", "3", 20, 6).say("tagged", litter_of="9", tag="R1", sex="buck").say("sold", who="3")
    assert why(told.herd, TODAY, told.find("R1")).reply().lines[0].startswith("Buck R1 is not weaned yet")
    assert why(told.herd, TODAY, told.find("3")).reply().lines[0].startswith("Buck 3 is not on the farm any more.")
    assert why(told.herd, TODAY, told.find("R1")).document() == {"tag": "R1", "verdict": None, "reasons": []}
    assert why(told.herd, TODAY, told.find("R1")).notes(0) == ()


def test_document_has_the_notes() -> None:
    """Each reason's object carries its notes."""
    told = asked().document()
    assert told["verdict"] == "cull"
    assert next(one["text"] for one in told["reasons"][0]["notes"]) == "doe 14 kindled 8"


def test_notes_of_any_kind_each_once() -> None:
    """All notes about an animal, however its tag is typed; a plan counts on the day it was told."""
    plan = entry("cull 14 on dec 3", "planned", 2, who="14", what="cull", on=TODAY)
    two = entry("r014 14", "kindled", 1, doe="14", born=1)
    again = type(two)(two.note, 1, two.fact)
    found = notes_behind((*ENTRIES, plan, two, again), "014")
    assert [one.text for one in found][-2:] == ["cull 14 on dec 3", "r014 14"]
    assert found[-2].on == ago(2)
    assert len(found) == 6
