"""The family book as a .fam file."""

from __future__ import annotations

from core.herd.state import Animal, Herd
from core.reports.papers.fam import fam_lines
from tests.farm import ago, small_herd, tell


def rows(herd: Herd, farm: str = "home") -> dict[str, list[str]]:
    """The fields of each animal's line, by its name there."""
    return {line.split(" ")[1]: line.split(" ") for line in fam_lines(herd, farm)}


def test_a_line_an_animal() -> None:
    """Six fields: farm, animal, sire, dam, sex, no trait; the gone are in it too."""
    told = rows(small_herd())
    assert set(told) == {animal.tag for animal in small_herd().animals.values()}
    assert told["31"] == ["home", "31", "3", "14", "1", "-9"]
    assert told["R23"] == ["home", "R23", "5", "9", "1", "-9"]
    assert told["14"] == ["home", "14", "0", "0", "2", "-9"]


def test_parents_stand_before_their_kits() -> None:
    """Some programs want it so."""
    order = list(rows(small_herd()))
    assert order.index("3") < order.index("31") > order.index("14")


def test_names_have_no_blanks_and_none_is_taken_for_nobody() -> None:
    """Neither of the farm nor of an animal; two never fall together."""
    herd = Herd()
    for tag in ("R 1", "R_1", "0"):
        herd = herd.with_animal(Animal(tag, tag, sex="doe"))
    told = fam_lines(herd, " hill\tfarm ")
    assert sorted(line.split(" ")[1] for line in told) == ["0_", "R_1", "R_1_"]
    assert all(line.startswith("hill_farm ") and len(line.split(" ")) == 6 for line in told)
    assert fam_lines(Herd().with_animal(Animal("1", "1")), "")[0].split(" ")[0] == "_"


def test_sex_by_its_kits_where_nobody_told() -> None:
    """A sire is a buck, a dam a doe; of the others it stays unknown. Parents that have no page of their own have their line."""
    herd = Herd().with_animal(Animal("k", "k", sire="Tom", dam="Ann"))
    assert {name: row[4] for name, row in rows(herd).items()} == {"Tom": "1", "Ann": "2", "k": "0"}


def test_what_contradicts_itself_counts_as_unknown() -> None:
    """Two that are told as each other's parents."""
    herd = tell(Herd(), "animal", tag="1", sex="doe", born=ago(500))
    herd = herd.with_animal(Animal("1", "1", sex="doe", dam="2")).with_animal(Animal("2", "2", sex="doe", dam="1"))
    assert {tuple(row[2:4]) for row in rows(herd).values()} == {("0", "0")}
