"""The herd as objects."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.reports.herd_document import herd_document
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


def animals(barn: Barn) -> dict[str, dict[str, object]]:
    """The animals' objects by tag."""
    return {one["tag"]: one for one in herd_document(barn.herd, TODAY).document()["animals"]}


def test_every_living_animal_with_the_contract_s_fields() -> None:
    """Living animals only; every field is there, unknown is null."""
    told = animals(two_sires().say("animal", tag="50").say("bred", doe="11", buck="Duke"))
    assert "R0" not in told
    assert "Duke" not in told
    fields = {"tag", "name", "sex", "breed", "color", "stage", "age_days", "inbreeding", "breeding_values", "survival", "genotype"}
    assert all(fields <= set(one) for one in told.values())
    assert (told["50"]["age_days"], told["50"]["survival"], told["50"]["genotype"]) == (None, None, None)


def test_breeding_values_are_deviations_from_the_breed_s_living_mean() -> None:
    """The living of a breed average nought, the better sire lies above, and reliability is a share."""
    told = animals(two_sires())
    values = {tag: one["breeding_values"]["weight_70d"]["grams"] for tag, one in told.items()}  # type: ignore[index]
    assert sum(values.values()) == pytest.approx(0, abs=1e-6)
    assert values["7"] > 0 > values["3"]
    assert all(0 <= one["breeding_values"]["weight_70d"]["reliability"] <= 1 for one in told.values())  # type: ignore[index]
    assert told["7"]["breeding_values"]["weight_70d"]["reliability"] > told["11"]["breeding_values"]["weight_70d"]["reliability"]  # type: ignore[index]


def test_nothing_measured_is_null() -> None:
    """Without weights and litters the breeding values are null, not nought."""
    told = animals(Barn().buck("3"))["3"]["breeding_values"]
    grams = {"grams": None, "reliability": None, "records": 0}
    kits = {"kits": None, "reliability": None, "records": 0}
    assert told == {
        **{f"weight_{age}d": grams for age in (56, 70, 84, 112)},
        "daily_gain": grams,
        "born_alive": kits,
        "weaned": kits,
        "survival": {"share": None, "reliability": None, "records": 0},
    }


def test_survival_of_a_doe() -> None:
    """A doe with finished litters has her record."""
    told = animals(two_sires())["11"]["survival"]
    assert isinstance(told, dict)
    assert (told["alive"], told["kept"]) == (28, 24)


def test_genotype_from_coats_of_the_family() -> None:
    """A blue is d/d; a black out of blue and black carries it; a stranger without a coat has no genotype."""
    barn = (
        Barn()
        .doe("1", color="blue")
        .buck("2", color="black")
        .buck("3", sire="2", dam="1", color="black")
        .doe("4")
        .doe("5", dam="1", sire="2")
    )
    told = animals(barn)
    assert told["1"]["genotype"]["D"]["d/d"] > 0.95  # type: ignore[index]
    assert told["3"]["genotype"]["D"]["D/d"] > 0.95  # type: ignore[index]
    assert told["4"]["genotype"] is None
    assert told["5"]["genotype"] is not None


def test_contradicting_family_book_still_gives_objects() -> None:
    """A loop in the book leaves every animal on its own."""
    barn = Barn().doe("1").doe("2", dam="1")
    barn.herd = barn.herd.with_animal(replace(barn.find("1"), dam="2"))
    assert animals(barn)["2"]["inbreeding"] == 0


def test_reply_lists_the_herd() -> None:
    """The counts, then an animal a line, the grown ones first."""
    barn = Barn().doe("31", age=100, color="opal").buck("3", age=700).say("animal", tag="50", born=ago(400))
    assert herd_document(barn.herd, TODAY).reply().lines == (
        "1 buck, 0 does, 1 grow-out, 1 grown rabbit of unknown sex and 0 kits.",
        "50: senior of unknown sex, 13 months",
        "3: New Zealand, senior buck, 22 months",
        "31: New Zealand, opal, grow-out doe, 14 weeks",
    )


def test_kinship_and_founders_of_the_breeding_animals() -> None:
    """Two half sisters and their sire: 1/8, 1/4 and 1/4 akin; his is half of the blood, each unknown dam a founder of her own."""
    barn = Barn().buck("3", name="Flint").doe("1", sire="3", age=400).doe("2", sire="3", age=400)
    assert herd_document(barn.herd, TODAY).reply().lines[-1] == (
        "3 breeding New Zealand: any two are 20.8 % akin on average, the blood of about 2.0 founders of equal share; most of it: 3 Flint 67 %."
    )
    assert animals(barn)["3"]["mean_kinship"] == pytest.approx((1 / 2 + 1 / 4 + 1 / 4) / 3)


def test_each_breed_has_its_own_founders() -> None:
    """Breeds stand apart; one whose parents nobody told has no line."""
    barn = Barn().buck("3", breed=None, sire="9", dam="8").doe("1", breed=None, sire="9", dam="8").buck("5").doe("6")
    lines = herd_document(barn.herd, TODAY).reply().lines
    assert lines[-1].startswith("2 breeding animals of unknown breed: any two are 25.0 % akin on average, the blood of about 2.0 founders")
    assert "New Zealand:" not in lines[-2]
