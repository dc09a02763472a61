"""Pedigrees on paper."""

from __future__ import annotations

from core.herd.state import Animal, Herd
from core.reports.papers.pedigree import pedigree_tree
from core.reports.papers.tree import PedigreeTree
from core.reports.papers.wanted import Wanted
from tests.farm import TODAY, ago, small_herd, tell


def tree(herd: Herd, who: str, generations: int | None = None) -> PedigreeTree:
    """The pedigree; there must be one."""
    found = pedigree_tree(herd, TODAY, Wanted(who, generations=generations))
    assert found is not None
    return found


def family() -> Herd:
    """A doe out of her sire's daughter: inbred by a quarter."""
    herd = tell(Herd(), "animal", tag="S", name="Old Tom", sex="buck", breed="Mini Rex", color="black", born=ago(1500))
    herd = tell(herd, "animal", tag="D", sex="doe", breed="Satin", born=ago(1400))
    herd = tell(herd, "animal", tag="K", sex="doe", breed="Mini Rex", born=ago(900), sire="S", dam="D")
    herd = tell(herd, "animal", tag="I", sex="doe", breed="Mini Rex", color="opal", born=ago(80), sire="S", dam="K")
    return tell(tell(herd, "weighed", who="I", grams=1500, on=ago(10)), "weighed", who="S", grams=1900, on=ago(900))


def test_sires_stand_over_dams() -> None:
    """Generation by generation, each as long as it can be; who is not known has an empty place."""
    rows = tree(family(), "I").generations
    assert [len(row) for row in rows] == [2, 4, 8, 16]
    assert [one.named if one else None for one in rows[0]] == ["S Old Tom", "K"]
    assert [one.named if one else None for one in rows[1]] == [None, None, "S Old Tom", "D"]
    assert set(rows[2]) == set(rows[3]) == {None}


def test_what_is_known_of_each() -> None:
    """Colour, birth and weight; the breed where it is another; the age of a weight where it was young."""
    told = tree(family(), "I")
    assert told.animal.told == ("Mini Rex", "opal", "born 6 Sep 2026", "3 lb 5 oz at 10 weeks")
    sire, dam = told.generations[0]
    assert sire is not None
    assert sire.told == ("black", "born 17 Oct 2022", "4 lb 3 oz")
    assert dam is not None
    assert dam.told == ("born 8 Jun 2024",)
    grandam = told.generations[1][3]
    assert grandam is not None
    assert grandam.told[0] == "Satin"


def test_how_inbred_it_is_and_through_whom() -> None:
    """The COI of the animal, and of an ancestor where it has one."""
    assert tree(family(), "I").lines == ("COI 25.0 %, all ancestors known for 1 generation.", "Through S Old Tom 25.0 %.")
    herd = tell(family(), "animal", tag="G", sex="buck", sire="S", dam="I")
    dam = tree(herd, "G").generations[0][1]
    assert dam is not None
    assert dam.told[-1] == "COI 25.0 %"
    assert tree(small_herd(), "31").lines == ("COI 0.0 %, all ancestors known for 1 generation.",)
    assert tree(family(), "D").lines == ("COI unknown: neither sire nor dam is on the book.",)


def test_as_many_generations_as_fit() -> None:
    """Three to five, four where none are named."""
    assert [len(tree(family(), "I", wanted).generations) for wanted in (1, 3, None, 5, 9)] == [3, 3, 4, 5, 5]


def test_a_parent_without_a_page_of_its_own() -> None:
    """Known by nothing but its tag, or of an age nobody told."""
    herd = Herd().with_animal(Animal("1", "1", sire="Old Tom"))
    herd = tell(herd, "weighed", who="1", grams=1900, on=ago(900))
    told = tree(herd, "1")
    assert told.animal.told == ("4 lb 3 oz",)
    sire = told.generations[0][0]
    assert sire is not None
    assert (sire.named, sire.told) == ("Old Tom", ())


def test_no_pedigree_of_nobody() -> None:
    """Nobody named, or nobody there."""
    assert pedigree_tree(family(), TODAY, Wanted()) is None
    assert pedigree_tree(family(), TODAY, Wanted("77")) is None
