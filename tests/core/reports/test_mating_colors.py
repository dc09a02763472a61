"""The colors of a pairing in a breeder's words."""

from __future__ import annotations

import pytest

from core.reports.mating_colors import MatingColors, Wanted, named_in
from tests.herds import Barn


def of(barn: Barn, kits: float = 8.0) -> MatingColors:
    """The colors of doe 15 by buck 7."""
    return MatingColors(barn.seen, barn.find("15"), barn.find("7"), kits)


def carriers(doe: str = "castor", buck: str = "castor") -> Barn:
    """A doe and a buck, each with a blue parent: they carry self and blue for sure."""
    barn = Barn().doe("1", color="blue").doe("2", color="blue")
    return barn.doe("15", dam="1", color=doe, name="Juno").buck("7", dam="2", color=buck)


def test_colors_to_expect_and_what_is_hidden() -> None:
    """Nine castor, three opal, three black, one blue of sixteen; each carries for sure what its parent wore."""
    told = of(carriers())
    assert told.expected == {
        word: pytest.approx(part / 16, abs=0.02) for word, part in {"castor": 9, "black": 3, "opal": 3, "blue": 1}.items()
    }
    lines = told.lines()
    assert lines[0].startswith("Colors to expect: castor 56 %, ")
    assert lines[1:] == ["15 Juno carries unseen: self for sure and blue for sure.", "7 carries unseen: self for sure and blue for sure."]
    assert told.document()["carries"]["15"] == {"self": pytest.approx(1.0), "blue": pytest.approx(1.0)}


def test_what_is_sometimes_hidden_has_its_chance() -> None:
    """A black of two black carriers: 2 times in 3, said in tenths; a rare form not at all."""
    barn = Barn().doe("1", color="blue").doe("2", color="blue").doe("3", dam="1", color="black").buck("4", dam="2", color="black")
    barn.doe("15", sire="4", dam="3", color="black").buck("7", color="blue").doe("9", color="castor")
    assert of(barn).lines() == ["Colors to expect: black 67 %, blue 33 %.", "15 carries unseen: blue 7 times in 10."]


def test_almost_surely_hidden() -> None:
    """A share next to one is no certainty."""
    barn = Barn().doe("15", color="blue").buck("7", color="black")
    for number in range(8):
        barn.doe(f"b{number}", color="blue")
    assert "7 carries unseen: blue 9 times in 10." in of(barn).lines() or "7 carries unseen: blue almost surely." in of(barn).lines()


def test_many_colors_are_told_as_others() -> None:
    """Five at most by name."""
    barn = Barn().doe("1", color="lilac").doe("2", color="lilac").doe("15", dam="1", color="castor").buck("7", dam="2", color="castor")
    [line, *_] = of(barn).lines()
    assert line.count("%") == 6
    assert ", others " in line


@pytest.mark.parametrize(
    ("said", "colors"),
    [("castor , opal and Blue", ("castor", "opal", "blue")), ("broken or nonsense", ("broken",)), ("", ()), ("opal/opal", ("opal",))],
)
def test_colors_named_in_a_list(said: str, colors: tuple[str, ...]) -> None:
    """In any of the ways that people list."""
    assert named_in(said) == colors


def test_what_the_farm_breeds_for() -> None:
    """The chance for a kit, for a litter, and why not; nothing is said where no color is wanted or a coat is unknown."""
    barn = carriers().set("colors_wanted", "blue, opal and lilac")
    told = of(barn)
    assert told.wanted[0] == Wanted(
        "blue", pytest.approx(1 / 16, abs=0.01), pytest.approx(0.4, abs=0.05), (pytest.approx(1.0), pytest.approx(1.0))
    )
    assert told.lines()[1:4] == [
        "Blue, which you want: 6 % of the kits, one in a litter of 8 4 times in 10.",
        "Opal, which you want: 19 % of the kits, one in a litter of 8 8 times in 10.",
        "Lilac, which you want: hardly any: 15 Juno and 7 can hardly give it.",
    ]
    assert told.document()["wanted"][2]["color"] == "lilac"
    assert of(carriers()).wanted == ()
    assert of(Barn().doe("15").buck("7", color="blue").set("colors_wanted", "blue")).wanted == ()


def test_wanted_for_sure_and_wanted_by_chance_alone() -> None:
    """Blue to blue; and a color that both can give but seldom do together."""
    sure = of(Barn().doe("15", color="blue").buck("7", color="blue").set("colors_wanted", "blue"))
    assert sure.lines()[1] == "Blue, which you want: 100 % of the kits, surely one in a litter of 8."
    barn = Barn().doe("1", color="lilac").doe("2", color="lilac").doe("15", dam="1", color="castor").buck("7", dam="2", color="castor")
    assert "Lilac, which you want: hardly any." in of(barn.set("colors_wanted", "lilac")).lines()


def test_a_marking_that_is_wanted_is_any_color_so_marked() -> None:
    """Broken is no color by itself."""
    told = of(Barn().doe("15", color="broken black").buck("7", color="blue").set("colors_wanted", "broken"))
    assert told.wanted[0].chance == pytest.approx(0.5)


def test_two_brokens_are_warned_of() -> None:
    """A quarter charlies, and what they risk; none of a broken and a solid."""
    both = of(Barn().doe("15", color="broken black").buck("7", color="broken blue"))
    [warning] = both.warnings()
    assert warning.startswith("About 25 % of the kits would be charlies")
    assert "vet" in warning
    assert of(Barn().doe("15", color="broken black").buck("7", color="blue")).warnings() == ()
    assert of(Barn().doe("15").buck("7", color="broken blue")).warnings() == ()


@pytest.mark.parametrize(
    ("color", "line"),
    [(None, "Colors: note both parents' colors and I can tell what to expect."), ("gray", "Colors: I know no genes for gray.")],
)
def test_a_coat_that_tells_nothing(color: str | None, line: str) -> None:
    """Not noted, or a word too loose."""
    told = of(Barn().doe("15", color=color).buck("7", color="black"))
    assert (told.lines(), told.expected) == ([line], {})


def test_the_family_tells_of_a_parent_whose_coat_nobody_noted() -> None:
    """Out of two blues, she is blue; of a stranger nothing is told."""
    barn = Barn().doe("1", color="blue").buck("2", color="blue").doe("15", sire="2", dam="1").buck("7", color="blue")
    assert of(barn).expected == {"blue": pytest.approx(1.0)}


def test_genes_that_lie_close_are_told() -> None:
    """A broken that carries Dutch marking, by any mate."""
    barn = Barn().doe("1", color="dutch marked").doe("15", dam="1", color="broken black").buck("7", color="black")
    assert of(barn).lines()[-1] == "Spotting and Dutch marking lie close together, so these shares are a guess."
