"""Cases of every form, harder than the printed ones, answered here by plain arithmetic that shares nothing with the program.

Kinship by the recursive definition; the inverse of A by inverting A; breeding values by generalised least squares with the whole
variance matrix; the best set by trying each; errors by logic. The books are tangled: unknown parents, parents without a row, parent x
offspring, the same animal as both parents, rows in any order; the records are one, none, repeated, confounded.

Over 300 lines: the plain arithmetic of every form stands here a second time, on purpose.
"""

from __future__ import annotations

import itertools
import json
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest

from tests.published.genetics_cases import main, misses

Floats = npt.NDArray[np.float64]
TOLERANCE = {"abs": 1e-7}


def case(kind: str, told: dict[str, Any], expected: dict[str, Any]) -> dict[str, Any]:
    """A case as files hold them."""
    return {
        "id": "harder",
        "kind": kind,
        "title": "",
        "input": told,
        "expected": expected,
        "tol": TOLERANCE,
        "source": "arithmetic of this file",
    }


# --- books ---------------------------------------------------------------------------------------------------------


def tangled(rng: np.random.Generator, animals: int, *, selfing: bool = False) -> list[list[str | None]]:
    """A book of close matings with a fifth of the parents unknown, some parents without a row, in any order."""
    rows: list[list[str | None]] = []
    for at in range(animals):
        close = [f"a{one}" for one in range(max(at - 6, 0), at)]
        parents: list[str | None] = [None, None]
        if close and rng.random() < 0.85:
            sire = str(rng.choice(close))
            others = [one for one in close if selfing or one != sire]
            parents = [sire, str(rng.choice(others)) if others else None]
        rows.append([f"a{at}", *(None if rng.random() < 0.2 else parent for parent in parents)])
    told = [row for row in rows if row[1] or row[2] or rng.random() < 0.5]
    named = {one for row in told for one in row}
    told += [row for row in rows if row[0] not in named]
    return [told[at] for at in rng.permutation(len(told))]


def everyone(rows: list[list[str | None]]) -> list[str]:
    """All animals, parents before their kits: by number."""
    return sorted({one for row in rows for one in row if one}, key=lambda one: int(one[1:]))


def relationship(rows: list[list[str | None]]) -> Floats:
    """A of all animals by the definition of kinship: f(i, i) = (1 + f(sire, dam)) / 2, else the younger one's parents' mean."""
    parents = {row[0]: (row[1], row[2]) for row in rows}

    @cache
    def kin(one: str | None, other: str | None) -> float:
        if one is None or other is None:
            return 0.0
        if one == other:
            return 0.5 + 0.5 * kin(*parents.get(one, (None, None)))
        young, old = (one, other) if int(one[1:]) > int(other[1:]) else (other, one)
        sire, dam = parents.get(young, (None, None))
        return 0.5 * (kin(sire, old) + kin(dam, old))

    names = everyone(rows)
    return np.array([[2 * kin(one, other) for other in names] for one in names])


@pytest.mark.parametrize("seed", range(12))
def test_inbreeding_of_tangled_books(seed: int) -> None:
    """F, pairs, matings, groups, A, its inverse and D of a book of 25; in some a parent stands on both sides."""
    rng = np.random.default_rng(seed)
    rows = tangled(rng, 25, selfing=seed % 3 == 0)
    names, a = everyone(rows), relationship(rows)
    place = {one: at for at, one in enumerate(names)}
    group = [str(one) for one in rng.choice(names, 5, replace=False)]
    pairs = [[str(each) for each in rng.choice(names, 2)] for _ in range(6)]
    inside = a[np.ix_([place[one] for one in group], [place[one] for one in group])] / 2
    parents = {row[0]: (row[1], row[2]) for row in rows}
    own = [1 - sum(a[place[parent], place[parent]] / 4 for parent in parents.get(one, ()) if parent) for one in names]
    between = [[a[place[one], place[other]] / 2] for one, other in pairs]
    expected = {
        "F": {one: a[at, at] - 1 for one, at in place.items()},
        "kinship": [value for (value,) in between],
        "coi_of_mating": [value for (value,) in between],
        "A": a.tolist(),
        "Ainv": np.linalg.inv(a).tolist(),
        "D": own,
        "mean_kinship": dict(zip(group, inside.mean(axis=1).tolist(), strict=True)),
        "group_mean_kinship": float(inside.mean()),
        "group_mean_kinship_excl_self": float((inside.sum() - np.trace(inside)) / 20),
    }
    told = {"pedigree": rows, "order": names, "pairs": pairs, "matings": pairs, "group": group}
    assert misses(case("inbreeding", told, expected)) == []


# --- breeding values -----------------------------------------------------------------------------------------------


def least_squares(a: Floats, told: dict[str, Any], names: list[str], sizes: dict[str, float]) -> dict[str, Any]:
    """Breeding values with the whole variance matrix V: u = G Z' V^-1 (y - X b), PEV = G - G Z' P Z G."""
    records, place = told["records"], {one: at for at, one in enumerate(names)}
    y = np.array([record["y"] for record in records])
    columns = [
        [float(record[factor] == level) for record in records]
        for factor in told["fixed_factors"]
        for level in sorted({r[factor] for r in records})
    ]
    columns += [[record[name] for record in records] for name in told.get("covariates", [])]
    x = np.array(columns if told["fixed_factors"] else [[1.0] * len(records), *columns]).T
    z = np.zeros((len(records), len(names)))
    z[np.arange(len(records)), [place[record["animal"]] for record in records]] = 1
    levels = {effect: sorted({record[effect] for record in records}) for effect in sizes if effect not in {"animal", "residual"}}
    w = {effect: np.array([[float(record[effect] == level) for level in of] for record in records]) for effect, of in levels.items()}
    v = z @ a @ z.T * sizes["animal"] + np.eye(len(y)) * sizes["residual"] + sum(w[effect] @ w[effect].T * sizes[effect] for effect in w)
    inverse = np.linalg.inv(v)
    back = np.linalg.pinv(x.T @ inverse @ x)
    fixed = back @ x.T @ inverse @ y
    p = inverse - inverse @ x @ back @ x.T @ inverse
    left = inverse @ (y - x @ fixed)
    g = a * sizes["animal"]
    pev = np.diag(g - g @ z.T @ p @ z @ g)
    named = lambda values: dict(zip(names, np.asarray(values).tolist(), strict=True))  # noqa: E731 - one line a table
    return {
        "ebv": named(g @ z.T @ left),
        "pev": named(pev),
        "sep": named(np.sqrt(pev)),
        "reliability": named(1 - pev / sizes["animal"]),
        "reliability_F": named(1 - pev / np.diag(g)),
        "fitted_fixed": (x @ fixed).tolist(),
        **{effect: dict(zip(of, (sizes[effect] * w[effect].T @ left).tolist(), strict=True)) for effect, of in levels.items()},
    }


#: How many records, fixed factors, further effects with their variance, covariates.
FORMS: tuple[tuple[int, list[str], dict[str, float], list[str]], ...] = (
    (1, [], {}, []),
    (1, ["sex"], {"litter": 0.5}, []),
    (2, ["sex", "season"], {}, []),
    (8, ["sex"], {"pe": 0.7}, []),
    (25, ["sex", "season", "parity"], {"litter": 2.0, "dam": 0.3, "pe": 1e-3}, []),
    (25, ["sex", "twin_of_sex"], {"litter": 1.0}, ["nest"]),
    (40, [], {"litter": 1.0}, ["nest", "age"]),
    (40, ["one"], {"pe": 5.0, "litter": 5.0}, []),
)


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("form", FORMS, ids=lambda form: f"{form[0]} records, {','.join(form[1])};{','.join(form[2])};{','.join(form[3])}")
def test_breeding_values_of_tangled_books(seed: int, form: tuple[int, list[str], dict[str, float], list[str]]) -> None:
    """Repeated and single records, factors that are confounded or have one level, effects of all sizes, covariates."""
    rng = np.random.default_rng(seed)
    many, fixed, effects, covariates = form
    rows = tangled(rng, 18)
    names, a = everyone(rows), relationship(rows)
    records = []
    for _ in range(many):
        animal, sex = str(rng.choice(names)), str(rng.choice(["M", "F"]))
        said = {"sex": sex, "twin_of_sex": sex.lower(), "season": str(rng.integers(3)), "parity": str(rng.integers(4)), "one": "1"}
        random = {"litter": f"l{rng.integers(6)}", "dam": f"d{rng.integers(3)}", "pe": animal}
        numbers = {"nest": float(rng.integers(2, 11)), "age": float(rng.normal(70, 5))}
        records.append({"animal": animal, **said, **random, **numbers, "y": float(rng.normal(10, 3))})
    sizes = {"animal": 2.0, "residual": 3.0, **effects}
    told = {
        "pedigree": rows,
        "records": records,
        "fixed_factors": fixed,
        "var": sizes,
        "random": ["animal", *effects],
        "covariates": covariates,
    }
    expected = least_squares(a, told, names, sizes)
    assert misses(case("blup", told, expected)) == []


def test_a_variance_of_zero_is_an_effect_that_is_not_there() -> None:
    """Its levels are zero and nothing else changes."""
    rows: list[list[str | None]] = [["a2", "a0", "a1"], ["a3", "a0", "a2"]]
    records = [{"animal": f"a{at}", "sex": "MF"[at % 2], "litter": f"l{at}", "y": 3.0 + at} for at in range(4)]
    told = {"pedigree": rows, "records": records, "fixed_factors": ["sex"], "random": ["animal", "litter"]}
    names = everyone(rows)
    expected = least_squares(relationship(rows), told, names, {"animal": 2.0, "residual": 3.0})
    expected["litter"] = {f"l{at}": 0.0 for at in range(4)}
    assert misses(case("blup", told | {"var": {"animal": 2.0, "residual": 3.0, "litter": 0.0}}, expected)) == []


def test_no_record_at_all() -> None:
    """Everybody is average, and nothing is known: the error is the whole variance, (1 + F) of it for the inbred."""
    rows: list[list[str | None]] = [["a2", "a0", "a1"], ["a3", "a0", "a2"]]
    told = {"pedigree": rows, "records": [], "fixed_factors": ["sex"], "var": {"animal": 2.0, "residual": 3.0}, "random": ["animal"]}
    names = everyone(rows)
    expected = {
        "ebv": dict.fromkeys(names, 0.0),
        "pev": {"a0": 2.0, "a1": 2.0, "a2": 2.0, "a3": 2.5},
        "reliability_F": dict.fromkeys(names, 0.0),
    }
    assert misses(case("blup", told, expected)) == []


def test_an_animal_without_kin_on_the_book() -> None:
    """One record, of an animal that no row names, one mean: its own value can't be told from the mean's, so it is 0."""
    told = {"pedigree": [], "records": [{"animal": "lone", "y": 7.0}], "fixed_factors": [], "var": {"animal": 2.0, "residual": 3.0}}
    assert misses(case("blup", told, {"ebv": {"lone": 0.0}, "pev": {"lone": 2.0}, "fitted_fixed": [7.0]})) == []


def test_litters_that_nobody_noted_are_not_one_litter() -> None:
    """Two animals of unknown litters share none."""
    records = [{"animal": one, "litter": None, "y": y} for one, y in (("a0", 1.0), ("a1", 2.0), ("a2", 6.0))]
    apart = [{**record, "litter": f"l{at}"} for at, record in enumerate(records)]
    told = {"pedigree": [], "fixed_factors": [], "var": {"animal": 2.0, "residual": 3.0, "litter": 1.0}, "random": ["animal", "litter"]}
    found = least_squares(np.eye(3), told | {"records": apart}, ["a0", "a1", "a2"], told["var"])
    assert misses(case("blup", told | {"records": records}, {"ebv": found["ebv"], "pev": found["pev"]})) == []


@pytest.mark.parametrize("seed", range(4))
def test_maternal_values(seed: int) -> None:
    """Own and nurse's genes, correlated, with what is lasting in the nurse: against V of the whole model."""
    rng = np.random.default_rng(seed)
    rows = tangled(rng, 16)
    names, a = everyone(rows), relationship(rows)
    dams = {row[0]: row[2] for row in rows if row[2]}
    records = [{"animal": str(one), "sex": str(rng.choice(["M", "F"])), "y": float(rng.normal(50, 8))} for one in rng.choice([*dams], 14)]
    own, nurse, both, lasting, rest = 4.0, 2.0, -1.0, 1.5, 6.0
    told = {
        "pedigree": rows,
        "records": records,
        "fixed_factors": ["sex"],
        "random": ["animal", "maternal", "pe"],
        "var": {"animal": own, "maternal": nurse, "cov_animal_maternal": both, "pe": lasting, "residual": rest},
    }
    place = {one: at for at, one in enumerate(names)}
    z, m = np.zeros((2, len(records), len(names)))
    for at, record in enumerate(records):
        z[at, place[record["animal"]]] = 1
        m[at, place[str(dams[record["animal"]])]] = 1
    x = np.array([[float(record["sex"] == sex) for sex in sorted({each["sex"] for each in records})] for record in records])
    g = np.block([[a * own, a * both], [a * both, a * nurse]])
    zm = np.hstack([z, m])
    inverse = np.linalg.inv(zm @ g @ zm.T + m @ m.T * lasting + np.eye(len(records)) * rest)
    y = np.array([record["y"] for record in records])
    back = np.linalg.pinv(x.T @ inverse @ x)
    p = inverse - inverse @ x @ back @ x.T @ inverse
    values, pev = g @ zm.T @ p @ y, np.diag(g - g @ zm.T @ p @ zm @ g)
    n = len(names)
    expected = {
        "ebv": dict(zip(names, values[:n].tolist(), strict=True)),
        "pev": dict(zip(names, pev[:n].tolist(), strict=True)),
        "maternal": dict(zip(names, values[n:].tolist(), strict=True)),
    }
    assert misses(case("blup", told, expected)) == []


@pytest.mark.parametrize("related", [False, True])
def test_sire_models(related: bool) -> None:
    """Bucks by their kits, as strangers and as sire and son, with one of them without a kit."""
    rng = np.random.default_rng(5)
    sires: list[list[str | None]] = [["a0", None, None], ["a1", "a0" if related else None, None], ["a2", None, None]]
    records = [{"sire": f"a{rng.integers(2)}", "sex": str(rng.choice(["M", "F"])), "y": float(rng.normal(1800, 120))} for _ in range(20)]
    told = {"sires": sires, "records": records, "fixed_factors": ["sex"], "var": {"sire": 900.0, "residual": 14000.0}}
    as_animals = told | {"records": [{**record, "animal": record["sire"]} for record in records]}
    found = least_squares(relationship(sires), as_animals, ["a0", "a1", "a2"], {"animal": 900.0, "residual": 14000.0})
    expected = {"sire": found["ebv"], "pev": found["pev"], "reliability": found["reliability"]}
    assert misses(case("sire_model", told, expected)) == []


# --- who to keep ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(10))
def test_the_best_set_is_the_best_of_all_sets(seed: int) -> None:
    """Every choice tried: value, second best, and whether there is one at all; caps on feed and kinship, or on one, or none."""
    rng = np.random.default_rng(seed)
    rows = tangled(rng, 14)
    names, a = everyone(rows), relationship(rows)
    sexes = {one: "MF"[at % 2] for at, one in enumerate(names)}
    values = {one: round(float(rng.normal()), 2) for one in names}
    feeds = {one: round(float(rng.uniform(0.1, 0.3)), 3) for one in names}
    bucks, does = (0, 3) if seed == 3 else (2, 3)
    sets = [
        (*one, *other)
        for one in itertools.combinations([n for n in names if sexes[n] == "M"], bucks)
        for other in itertools.combinations([n for n in names if sexes[n] == "F"], does)
    ]
    place = {one: at for at, one in enumerate(names)}
    mean = {kept: float(a[np.ix_([place[one] for one in kept], [place[one] for one in kept])].mean()) / 2 for kept in sets}
    feed = {kept: sum(feeds[one] for one in kept) for kept in sets}
    cap = None if seed % 4 == 1 else float(np.quantile(list(mean.values()), 0.15)) + 1e-7
    most = None if seed % 4 == 2 else float(np.quantile(list(feed.values()), 0.4)) + 1e-7
    fit = [kept for kept in sets if (cap is None or mean[kept] <= cap) and (most is None or feed[kept] <= most)]
    told = {
        "pedigree": rows,
        "candidates": [{"id": one, "sex": sexes[one], "value": values[one], "feed": feeds[one]} for one in names],
        "keep_bucks": bucks,
        "keep_does": does,
        "max_group_mean_kinship": cap,
        "max_feed": most,
    }
    totals = sorted((sum(values[one] for one in kept) for kept in fit), reverse=True)
    if not fit:
        assert misses(case("selection_infeasible", told, {"infeasible": True})) == []
        return
    expected = {
        "best_value": totals[0],
        "feasible_sets": len(fit),
        "unconstrained_value": max(sum(values[one] for one in kept) for kept in sets),
    }
    if len(totals) > 1:
        expected["second_best_value"] = totals[1]
    assert misses(case("selection", told, expected)) == []


def test_too_few_animals_are_no_set() -> None:
    """Three bucks wanted of two: nothing fits, whatever the caps."""
    animals = [{"id": "b1", "sex": "M", "value": 1.0}, {"id": "b2", "sex": "M", "value": 1.0}, {"id": "d", "sex": "F", "value": 1.0}]
    told = {"pedigree": [[one["id"], None, None] for one in animals], "candidates": animals, "keep_bucks": 3, "keep_does": 1}
    assert misses(case("selection_infeasible", told, {"infeasible": True})) == []


# --- what can't be --------------------------------------------------------------------------------------------------

Rows = list[list[str | None]]


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ({"pedigree": [["a", "b", "c"], ["b", "d", "e"], ["d", "f", "a"]]}, {"error": True}),
        ({"pedigree": [["a", None, "a"]]}, {"error": True, "animal": "a"}),
        ({"pedigree": [["k", "x", "y"], ["x", "k", None]]}, {"error": True}),
        ({"pedigree": [["a", "b", "c"], ["a", "b", "d"]]}, {"error": True, "animal": "a"}),
        ({"pedigree": [["a", "p", "p"]]}, {"error": True, "animal": "p"}),
        ({"pedigree": [["a", "p", "q"], ["b", "q", "p"]]}, {"error_or_warning": True, "animal": "q"}),
        ({"pedigree": [["a", "p", "q"]], "born": {"a": "2025-01-01", "p": "2026-01-01"}}, {"error": True, "animal": "p"}),
        ({"pedigree": [["a", "p", "q"]], "born": {"a": 10, "q": 400}}, {"error": True, "animal": "q"}),
        ({"pedigree": [["a", "p", "q"]], "sex": {"p": "F", "q": "F"}}, {"error": True, "animal": "p"}),
        ({"pedigree": [["a", "p", "q"]], "sex": {"q": "M"}}, {"error": True, "animal": "q"}),
        ({"pedigree": [["a", "p", "q"], ["b", "p", "q"]], "sex": {"q": "F"}, "born": {"a": 10, "q": 4}}, {"error": False, "error_or_warning": False}),
        ({"pedigree": [["a", "p", "q"], ["a", "p", "q"]]}, {"error": False}),
    ],
)  # fmt: skip
def test_what_cannot_be_is_named(told: dict[str, Any], expected: dict[str, Any]) -> None:
    """Long loops, own parents, rows that contradict, both parents one animal, birthdays and sexes against it; and sound books pass."""
    assert misses(case("pedigree_error", told, expected)) == []


def test_a_loop_of_a_thousand_generations_is_found() -> None:
    """Deep books neither overflow nor take long."""
    rows: Rows = [[f"a{at}", f"a{at + 1}", None] for at in range(3000)]
    rows.append(["a3000", "a0", None])
    assert misses(case("pedigree_error", {"pedigree": rows}, {"error": True})) == []


def test_a_file_of_such_cases_runs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Through the command that others use."""
    told = case("pedigree_error", {"pedigree": [["a", None, "a"]]}, {"error": True, "animal": "a"})
    (tmp_path / "harder.json").write_text(json.dumps({"format": 1, "cases": [told]}))
    assert main([str(tmp_path / "harder.json")]) == 0
    assert capsys.readouterr().out.endswith("1 of 1 cases pass\n")
