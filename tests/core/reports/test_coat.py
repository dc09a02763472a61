"""Colors and the genes they hide."""

from __future__ import annotations

from itertools import product
from math import prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reckon import elimination
from core.reckon.colour import genotypes, named, spelled
from core.reckon.genotype import TooTangled
from core.reckon.pedigree import Pedigree, pedigree
from core.reports import coat
from core.reports.coat import KIT, Coats, close_loci, gene_word, genotype_document, said_as
from tests.farm import ago
from tests.herds import Barn


def book(*rows: tuple[str, str | None, str | None]) -> Pedigree:
    """A family book."""
    made = pedigree(rows)
    assert isinstance(made, Pedigree)
    return made


@pytest.mark.parametrize(
    ("color", "word"),
    [
        ("castor", "chestnut"),
        ("broken castor", "broken chestnut"),
        ("black", "black"),
        ("White", "REW"),
        ("silvered fawn", None),
        ("purple", None),
        (None, None),
    ],
)
def test_trade_words_become_the_reckoning_s(color: str | None, word: str | None) -> None:
    """Known coats have a word, loose ones and others none."""
    assert gene_word(color) == word


def test_steel_brings_the_rare_alleles() -> None:
    """A steel on the book puts steel's alleles in account."""
    chances = Coats(book(("1", None, None)), {"1": "steel"}).genes(["1"])["1"]
    assert any("Es" in genotype for genotype in chances["E"])
    plain = Coats(book(("1", None, None)), {"1": "black"}).genes(["1"])["1"]
    assert not any("Es" in genotype for genotype in plain["E"])


def test_animals_outside_the_book_are_left_out() -> None:
    """Nothing is said of an animal that the family book doesn't have."""
    assert Coats(book(("1", None, None)), {"2": "black"}).genes(["2"]) == {}


def test_document_of_nothing_is_null() -> None:
    """No chances, no genotype."""
    assert genotype_document({}) is None


def test_farm_s_words() -> None:
    """The reckoning's words in the farm's: those it uses itself."""
    assert said_as(["castor", None, "purple"]) == {"chestnut": "castor"}


def test_tangled_locus_is_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a family is too tangled to sum, that locus is not told."""
    monkeypatch.setattr(coat, "joint_chances", lambda *_told: TooTangled(1))
    assert Coats(book(("1", None, None)), {"1": "black"}).genes(["1"]) == {"1": {}}


def test_untagged_kits_tell_by_their_litters_colors() -> None:
    """A blue kit in a litter of untagged ones proves both parents carriers; one that has its tag is not counted twice."""
    barn = (
        Barn()
        .doe("15", color="black")
        .buck("7", color="black")
        .litter("15", "7", 60, 4)
        .say("litter_colors", doe="15", colors=(("blue", 1),))
    )
    genes = barn.seen.coats.genes([barn.find("15").key])[barn.find("15").key]
    assert genes["D"] == {"D/d": pytest.approx(1.0)}
    barn.kits("15", "R1", 60).say("color", who="R1", color="blue")
    assert not [key for key in barn.seen.coats.colors if KIT in key]


def test_a_nest_with_foster_kits_tells_nothing_by_its_colors() -> None:
    """Nobody said whose kit the blue one is."""
    barn = (
        Barn().doe("15", color="black").doe("16", color="blue").buck("7", color="black").litter("15", "7", 60, 4).litter("16", "7", 60, 4)
    )
    barn.say("fostered", from_="16", to="15", count=1, on=ago(58)).say("litter_colors", doe="15", colors=(("blue", 1),))
    assert barn.seen.coats.genes([barn.find("15").key])[barn.find("15").key]["D"]["D/D"] > 0.1


def test_a_color_question_that_a_raw_count_gets_wrong() -> None:
    """Twelve black kits and no blue one of two blacks that each had a blue parent: still a quarter blue, and she carries it for sure."""
    barn = Barn().doe("1", color="blue").buck("2", color="blue").doe("3", color="black").buck("4", color="black")
    barn.doe("15", sire="4", dam="1", color="black").buck("7", sire="2", dam="3", color="black").litter("15", "7", 100, 12, weaned=12)
    barn.kits("15", " ".join(f"R{number}" for number in range(12)), 100)
    for number in range(12):
        barn.say("color", who=f"R{number}", color="black")
    coats, doe, buck = barn.seen.coats, barn.find("15").key, barn.find("7").key
    assert coats.can_give(doe, "blue") == pytest.approx(1.0)
    assert coats.mating(buck, doe).colors["blue"] == pytest.approx(0.25, abs=0.01)


def test_twelve_black_kits_by_a_blue_buck_speak_against_a_carrier() -> None:
    """A black doe with a blue litter sister: her own kits tell; a few by a black buck tell little."""
    chances = []
    for mate in ("blue", "black"):
        barn = Barn().doe("0", color="blue").doe("1", color="black").buck("2", color="black")
        barn.doe("15", color="black", sire="2", dam="1").doe("16", color="blue", sire="2", dam="1").buck("7", color=mate).litter(
            "15", "7", 100, 6
        )
        barn.say("litter_colors", doe="15", colors=(("black", 6),))
        chances.append(barn.seen.coats.can_give(barn.find("15").key, "blue"))
    assert chances[0] == pytest.approx(1 / 33)  # a litter sister is blue: 2 in 3 before her kits
    assert chances[1] is not None
    assert 0.3 < chances[1] < 2 / 3


def test_a_color_without_genes_can_not_be_asked_for() -> None:
    """None, not a made-up chance."""
    assert Coats(book(("1", None, None)), {"1": "black"}).can_give("1", "gray") is None


def test_what_a_kind_never_shows_is_rare_in_it() -> None:
    """Blue is common among the farm's Rex, so a Rex may carry it; not so a Satin, though both are black."""
    colors = {**dict.fromkeys("abc", "blue"), "d": "black", "e": "black"}
    told = Coats(book(*((one, None, None) for one in "abcde")), colors, {**dict.fromkeys("abcd", "rex"), "e": "satin"})
    genes = told.genes("de")
    assert told.carries("d", genes["d"])["d"] > 0.5
    assert told.carries("e", genes["e"])["d"] < 0.1


def test_whites_of_a_kind_that_shows_nothing_else_are_like_the_rest() -> None:
    """No coat of theirs tells of A: the farm's shares hold, not the plain form."""
    colors = {"a": "black", "b": "blue", "w": "white"}
    told = Coats(book(*((one, None, None) for one in "abw")), colors, {"a": "rex", "b": "rex", "w": "new zealand"})
    assert told.carries("w", told.genes("w")["w"])["a"] > 0.9


def test_whom_coats_tell_of() -> None:
    """Forebears and their descendants of whoever wears one; a mate and a stranger are told nothing of."""
    told = Coats(book(("k", "s", "d"), ("g", "k", "m"), ("h", "x", "d"), ("lone", None, None)), {"k": "blue", "lone": "gray"})
    assert told.told == {"k", "s", "d", "g", "h"}


def test_a_form_that_the_coat_wears_is_not_carried() -> None:
    """A blue wears d; a chestnut carries it; nothing is said of forms that nobody here shows."""
    told = Coats(book(("k", "blue", "chestnut")), {"blue": "blue", "chestnut": "chestnut", "k": "chestnut"})
    genes = told.genes(["blue", "k"])
    assert told.carries("blue", genes["blue"]) == {}
    assert told.carries("k", genes["k"]) == {"a": pytest.approx(1.0), "d": pytest.approx(1.0)}


def test_colors_that_contradict_the_family_are_doubted() -> None:
    """A black out of two blues: the three are named, and each color may be a slip from then on, so that chances are told still."""
    told = Coats(book(("k", "s", "d")), {"s": "blue", "d": "blue", "k": "black"})
    assert told.doubts["D",] == (("s", "d", "k"),)
    genes = told.genes(["k"])["k"]["D"]
    assert 0.1 < genes["d/d"] < 0.9


def test_steel_and_black_are_summed_over_both_genes() -> None:
    """A black bred from steels (two Es) by an agouti gives nothing but steel; a steel by an agouti half; Onslow 1922."""
    rows = (("steel", None, None), ("other", None, None), ("black", "steel", "other"), ("agouti", None, None), ("kit", "agouti", "black"))
    colors = {"steel": "steel", "other": "steel", "black": "black", "agouti": "chestnut"}
    herd = Coats(book(*rows), colors)
    assert herd.groups[0] == ("A", "E")
    steel = herd.mating("agouti", "steel").colors
    assert steel["black steel"] == pytest.approx(steel["chestnut"], rel=0.1)
    extracted = herd.mating("agouti", "black").colors
    assert extracted["black steel"] > 0.6


def test_what_is_too_tangled_is_cut_to_near_relatives(monkeypatch: pytest.MonkeyPatch) -> None:
    """Step by step; parent and kit still tell."""
    rows = [("k", "s", "d"), ("g", "k", "d"), ("h", "g", "k"), ("s", "a", "b"), ("d", "a", "b"), ("i", "h", "g")]
    colors = {"k": "black", "g": "blue", "a": "black", "i": "blue", "b": "black"}
    told = Coats(book(*rows), colors)
    assert told.doubts["D",] == ()
    whole = told.genes(["k"])["k"]["D"]
    monkeypatch.setattr(elimination, "MOST_CELLS", 12)
    near = told.genes(["k"])["k"]["D"]
    assert whole == {"D/d": pytest.approx(1.0)} == near


def test_genes_close_together_make_a_forecast_less_sure() -> None:
    """Only where one parent has both mixed."""
    both = {"En": {"En/en": 1.0}, "Du": {"Du/du": 0.9, "Du/Du": 0.1}}
    assert close_loci({}, both)
    assert not close_loci({"En": {"En/en": 1.0}}, {"Du": {"Du/du": 1.0}})


COATS = ["chestnut", "opal", "black", "blue", "black otter"]
GENES = list(product(genotypes("A"), genotypes("D")))


def kits_of(sire: tuple[str, str], dam: tuple[str, str]) -> dict[tuple[str, str], float]:
    """A kit's genotypes at A and D with their shares, by listing the gametes of both loci together."""
    found: dict[tuple[str, str], float] = {}
    for one in product(*(each.split("/") for each in sire)):
        for other in product(*(each.split("/") for each in dam)):
            kit = (spelled("A", f"{one[0]}/{other[0]}"), spelled("D", f"{one[1]}/{other[1]}"))
            found[kit] = found.get(kit, 0.0) + 1 / 16
    return found


def wears(genes: tuple[str, str], coat: str | None) -> bool:
    """Whether that genotype has that coat; an unknown coat fits all."""
    return coat is None or named({"A": genes[0], "D": genes[1]}) == coat


@settings(deadline=None, max_examples=40)
@given(sire=st.sampled_from([None, *COATS]), dam=st.sampled_from(COATS), kits=st.lists(st.sampled_from(COATS), max_size=4))
def test_a_forecast_is_what_listing_all_genotypes_gives(sire: str | None, dam: str, kits: list[str]) -> None:
    """Both parents' genotypes at A and D listed, weighed by their coats and by every kit's: from the words on to the words."""
    rows = [("s", None, None), ("d", None, None), *((f"k{at}", "s", "d") for at in range(len(kits)))]
    told = Coats(book(*rows), {"s": sire, "d": dam} | {f"k{at}": coat for at, coat in enumerate(kits)})
    shares = told.founders.common

    def founder(genes: tuple[str, str]) -> float:
        pairs = [(locus, *one.split("/")) for locus, one in zip("AD", genes, strict=True)]
        return prod(shares[locus][a] * shares[locus][b] * (1 if a == b else 2) for locus, a, b in pairs)

    wanted: dict[str, float] = {}
    for one, other in product((each for each in GENES if wears(each, sire)), (each for each in GENES if wears(each, dam))):
        litter = kits_of(one, other)
        weight = founder(one) * founder(other) * prod(sum(p for kit, p in litter.items() if wears(kit, coat)) for coat in kits)
        for kit, share in litter.items():
            word = named({"A": kit[0], "D": kit[1]})
            wanted[word] = wanted.get(word, 0.0) + weight * share
    total = sum(wanted.values())
    if total == 0:
        assert any(told.doubts.values())
        return
    found = told.mating("s", "d").colors
    assert all(found.get(word, 0.0) == pytest.approx(weight / total, abs=2e-3) for word, weight in wanted.items())


def test_a_steel_in_the_barn_makes_no_black_a_steel() -> None:
    """Unrelated blacks are black for the usual reason still, by two a, though two steels would look the same."""
    told = Coats(book(*((one, None, None) for one in "abcs")), {"a": "black", "b": "black", "c": "chestnut", "s": "steel"})
    genes = told.genes("a")["a"]
    assert genes["A"]["a/a"] > 0.7
    assert 0 < genes["E"]["Es/Es"] < 0.3


def test_forms_that_no_coat_shows_are_left_out_where_two_genes_are_summed_together() -> None:
    """Else a family of steels would soon be too tangled; an otter brings its form back."""
    rows = book(*((one, None, None) for one in "abc"))
    told = Coats(rows, {"a": "steel", "b": "black"})
    assert (told.alleles["A"], told.alleles["E"], told.alleles["B"]) == (("A", "a"), ("Es", "E"), ("B", "b"))
    assert Coats(rows, {"a": "steel", "b": "black", "c": "black otter"}).alleles["A"] == ("A", "at", "a")
