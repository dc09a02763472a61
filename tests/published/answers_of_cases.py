"""What the program answers to a worked case, kind by kind: the case's input goes to the public functions of `core.reckon`.

An answer holds everything that a case of its kind may ask; the runner compares what the case expects. `expected` is looked at only
for the form of the question: which printed contrast of a book is wanted, or how many of a list.

Over 300 lines: a function for each kind of case, a few lines each.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from fractions import Fraction
from itertools import combinations
from typing import Any

import numpy as np

from core.reckon import colour, survival
from core.reckon.ancestry import founders
from core.reckon.breeders import Candidate, Kept, Wanted, best_kept
from core.reckon.genotype import Impossible, genotype_chances
from core.reckon.growth import fitted
from core.reckon.kinship import coi, frontier, inbreeding, inbreeding_array, kinship
from core.reckon.mixed_model import BreedingValues, Record, Variances, breeding_values, mendelian, relationship_inverse
from core.reckon.pedigree import Pedigree, PedigreeProblem, Row, pedigree, sound_pedigree
from core.reckon.still_alive import still_alive
from core.reckon.trend import survival_trend
from tests.published import invented_pedigrees

Told = Mapping[str, Any]
Answer = dict[str, Any]

#: What is wrong whatever else holds.
NEVER = frozenset({"own_parent", "loop", "two_rows", "one_parent_twice", "younger_parent", "wrong_sex"})
SEXES = {"M": "buck", "F": "doe", "buck": "buck", "doe": "doe"}
#: Variances that are not a further effect's.
GENES = frozenset({"animal", "residual", "maternal"})
#: Sets up to which every choice is tried, to hold the best one against.
MOST_SETS = 200_000


class Refused(Exception):  # noqa: N818 - what happened, in words
    """The program would not answer, and why."""


def rows_of(told: Told, rows: str = "pedigree") -> list[Row]:
    """The rows of a pedigree, ids as text."""
    one, sire, dam = range(3)
    text = [[None if part is None else str(part) for part in row] for row in told[rows]]
    return [(row[one] or "", row[sire], row[dam]) for row in text]


def book_of(told: Told, rows: str = "pedigree") -> Pedigree:
    """The case's family book."""
    book = pedigree(rows_of(told, rows))
    if not isinstance(book, Pedigree):
        raise Refused(f"the pedigree is refused: {book.code} at {', '.join(book.ids)}")
    return book


def inbreeding_answer(told: Told, _expected: Told) -> Answer:
    """F, kinship of pairs and groups, and the matrices in the order asked."""
    book = book_of(told)
    order = told.get("order", list(book.ids))
    places = [book.place[animal] for animal in order]
    inbred = inbreeding_array(book)
    group = kinship(book, told.get("group", order))
    behind = founders(book, told.get("group", order))
    return {
        "F": inbreeding(book),
        "kinship": [kinship(book, pair).of(*pair) for pair in told.get("pairs", ())],
        "coi_of_mating": [coi(book, *mates) for mates in told.get("matings", ())],
        "A": (2 * kinship(book, order).table).tolist(),
        "Ainv": relationship_inverse(book, inbred).toarray()[np.ix_(places, places)].tolist(),
        "D": mendelian(book, inbred)[places].tolist(),
        "mean_kinship": {animal: group.mean_of(animal) for animal in group.among},
        "group_mean_kinship": group.mean(),
        "group_mean_kinship_excl_self": group.mean_between(),
        "generations": {animal: book.generations(animal) for animal in book.ids},
        "effective_founders": behind.effective if behind else None,
        "founder_shares": dict(behind.shares) if behind else {},
    }


def pedigree_error_answer(told: Told, expected: Told) -> Answer:
    """Refused, or flagged beside the book; an animal of the case must be named, the expected one where there is one."""
    found = pedigree(rows_of(told))
    refused = isinstance(found, PedigreeProblem)
    problems = (found,) if isinstance(found, PedigreeProblem) else (*found.warnings, *_against_each_other(told))
    named = [animal for problem in problems for animal in problem.ids]
    told_animals = {animal for row in rows_of(told) for animal in row if animal}
    known = bool(named) and set(named) <= told_animals
    wanted = expected.get("animal")
    return {
        "error": known and (refused or any(problem.code in NEVER for problem in problems)),
        "error_or_warning": known,
        "animal": wanted if wanted in named else ", ".join(named),
    }


def _against_each_other(told: Told) -> tuple[PedigreeProblem, ...]:
    """What birthdays and sexes say against the parents, where the case tells them: `born` in days or dates, `sex` M and F."""
    born = {
        str(animal): date.fromisoformat(day).toordinal() if isinstance(day, str) else day for animal, day in told.get("born", {}).items()
    }
    sexes = {str(animal): SEXES[sex] for animal, sex in told.get("sex", {}).items()}
    return sound_pedigree(rows_of(told), born, sexes)[1]


def breeding_values_of(told: Told) -> BreedingValues:
    """The animal model of a case, with every further random effect that has a variance.

    `maternal` and its covariance with the animal's own (any name that begins with `cov`) make a nurse's genes count; what is lasting in
    the nurse beside them (`pe` in such a model) has her for its level. A level that is not told (null) is nobody else's.
    """
    var = told["var"]
    covariance = next((size for name, size in var.items() if name.startswith("cov")), 0.0)
    wanted = set(told.get("random", var)) | {"animal"}
    others = {name: size for name, size in var.items() if name in wanted and name not in GENES and not name.startswith("cov")}
    kin = {str(row[0]): row for row in told["pedigree"]}
    records = [
        Record(
            str(record["animal"]),
            float(record["y"]),
            {factor: str(record[factor]) for factor in told.get("fixed_factors", ())},
            {effect: _level(record, effect, at, kin if "maternal" in var else {}) for effect in others},
            {name: float(record[name]) for name in told.get("covariates", ())},
        )
        for at, record in enumerate(told["records"])
    ]
    rows = told["pedigree"] + [[animal, None, None] for animal in dict.fromkeys(one.animal for one in records) if animal not in kin]
    variances = Variances(var["animal"], var["residual"], others, var.get("maternal", 0.0), covariance)
    return breeding_values(book_of({"pedigree": rows}), records, variances)


def _level(record: Told, effect: str, at: int, nurses: Mapping[str, Any]) -> str:
    if effect in record:
        return f"record {at}" if record[effect] is None else str(record[effect])
    animal = str(record["animal"])
    nurse = nurses[animal][2] if animal in nurses else None
    return str(nurse) if effect == "pe" and nurse is not None else animal


def blup_answer(told: Told, expected: Told) -> Answer:
    """Breeding values, their errors and reliabilities, further effects, and the fixed effects of each record."""
    solved = breeding_values_of(told)
    asked = solved.asked
    answer: Answer = {
        "ebv": dict(solved.values),
        "pev": {animal: one.pev for animal, one in asked.items()},
        "sep": {animal: one.standard_error for animal, one in asked.items()},
        "reliability": {animal: one.reliability for animal, one in asked.items()},
        "reliability_F": {animal: one.reliability_inbred for animal, one in asked.items()},
        "accuracy": {animal: max(one.reliability, 0.0) ** 0.5 for animal, one in asked.items()},
        "fitted_fixed": list(solved.fitted),
        "maternal": {animal: one.value for animal, one in solved.maternal.items()},
        "p_better": [solved.better(*map(str, pair)) for pair in told.get("pairs", ())],
        **{effect: dict(levels) for effect, levels in solved.effects.items()},
    }
    wanted = {**{key: key for key in expected}, **{key: key for key in expected.get("published", {})}}
    for name in wanted:
        answer.setdefault(name, _fixed(told, solved, name))
    answer["published"] = {name: answer[name] for name in expected.get("published", {})}
    return {name: found for name, found in answer.items() if found is not None}


def _fixed(told: Told, solved: BreedingValues, name: str) -> Any:
    """A fixed effect as books print it: the levels of the only factor, `hys2-hys1`, or `parity1 at hys1`."""
    if name in told.get("fixed_factors", ()) and len(told["fixed_factors"]) == 1:
        return {str(record[name]): fixed for record, fixed in zip(told["records"], solved.fitted, strict=True)}
    for factor in told.get("fixed_factors", ()):
        levels = re.fullmatch(rf"{factor}(\S+)-{factor}(\S+)", name)
        if levels:
            contrast = solved.contrast(factor, levels[1], levels[2])
            return None if contrast is None else contrast.difference
    both = re.fullmatch(r"(\S+) at (\S+)", name)
    if both is None:
        return None
    for record, fixed in zip(told["records"], solved.fitted, strict=True):
        if {f"{factor}{record[factor]}" for factor in told["fixed_factors"]} == {both[1], both[2]}:
            return fixed
    return None


def sire_model_answer(told: Told, expected: Told) -> Answer:
    """Bucks compared by their kits: the same model with the sire in the animal's place."""
    records = [{**record, "animal": record["sire"]} for record in told["records"]]
    variances = {"animal" if effect == "sire" else effect: size for effect, size in told["var"].items()}
    same = {**told, "records": records, "var": variances, "pedigree": told.get("sires") or told.get("pedigree") or []}
    answer = blup_answer(same, expected)
    return {**answer, "sire": answer["ebv"]}


def survival_posterior_answer(told: Told, expected: Told) -> Answer:
    """Her Beta, its interval of any width (`ci90`), and the next litter."""
    litters = [(int(born), int(weaned)) for born, weaned in told["litters_born_weaned"]]
    found = survival.survival(litters, survival.Prior(*told["prior"]))
    wide = {name: replace(found, level=int(name[2:]) / 100) for name in expected if re.fullmatch(r"ci\d\d", name)}
    following = told.get("next_litter", {"born": 0, "at_least": 0})
    return {
        "alpha": found.alpha,
        "beta": found.beta,
        "mean": found.estimate,
        "sd": found.deviation,
        **{name: [one.low, one.high] for name, one in wide.items()},
        "p_at_least": found.chance_at_least(following["born"], following["at_least"]),
        "expected": found.expected(following["born"]),
    }


def survival_compare_answer(told: Told, _expected: Told) -> Answer:
    """The chance that one doe is truly better."""
    one, other = (survival.Survival(0, 0, 0, *told[doe]) for doe in ("doe1", "doe2"))
    return {"p_better": survival.chance_better(one, other)}


def empirical_bayes_answer(told: Told, _expected: Told) -> Answer:
    """The herd's prior by maximum likelihood and the shrunk means; and the first, quick fit by moments."""
    units = [(int(n), int(k)) for n, k in told["units_n_k"]]
    found = survival.herd_prior(units, survival.Prior(1.0, 1.0), least=2, cap=1e6)  # the farm's guards against few does are not asked for
    alive, kept = np.array(units, dtype=float).T
    answer: Answer = {
        "alpha": found.alpha,
        "beta": found.beta,
        "mean": found.mean,
        "loglik": survival.log_likelihood(alive, kept, found.alpha, found.beta),
        "posterior_mean_first5": [survival.survival([unit], found).estimate for unit in units[:5]],
    }
    quick = survival.moment_prior(units[:-1])
    if quick is not None:
        rounded = survival.Prior(round(quick.alpha, 1), round(quick.beta, 1))
        answer["published"] = {
            f"moment_alpha_beta_first{len(units) - 1}": [rounded.alpha, rounded.beta],
            f"posterior_mean_group{len(units)}_with_moment_prior": round(survival.survival(units[-1:], quick).estimate, 3),
        }
    return answer


def survival_trend_answer(told: Told, _expected: Told) -> Answer:
    """The logistic line over her litters, without a prior."""
    found = survival_trend([(int(born), int(weaned)) for born, weaned in told["litters_born_weaned"]], prior_sd=0.5)
    line = found.fitted if found else None
    if line is None:
        return {"too_few": True, "logit_slope_per_litter": None}
    return {
        "logit_slope_per_litter": line.slope,
        "intercept": line.intercept,
        "se_slope": line.se_slope,
        "z": line.z,
        "p_two_sided": line.p_two_sided,
        "too_few": False,
    }


def survival_km_answer(told: Told, _expected: Told) -> Answer:
    """The share still alive at each age asked for, kits sold or moved counted until they left."""
    share = still_alive(list(zip(told["time"], map(bool, told["died"]), strict=True)))
    return {"S": {str(at): share(at) for at in told["ask"]}}


def gompertz_answer(told: Told, _expected: Told) -> Answer:
    """The fitted curve, its landmarks and the day of the target."""
    found = fitted(list(zip(told["age_days"], told["weight_g"], strict=True)))
    if found is None:
        raise Refused("no curve fits these weights")
    target = told.get("target_g")
    age = found.age_at(target) if target else None
    day = found.date_of(date.fromisoformat(told["born"]), target) if target else None
    return {
        "A": found.adult_g,
        "b": found.b,
        "k": found.k,
        "rss": found.rss,
        "inflection_age": found.inflection_age,
        "max_gain_per_day": found.greatest_gain,
        "target_age_days": age,
        "target_date": day.isoformat() if day else None,
        "reachable": age is not None,
    }


def colour_litter_answer(told: Told, _expected: Told) -> Answer:
    """Each colour's exact share, and the chance to see one."""
    found = colour.litter_colours(told["sire"], told["dam"])
    answer: Answer = {"distribution": found}
    if "colour" in told:
        answer["p_at_least_one"] = colour.at_least_one(found.get(told["colour"], Fraction(0)), told["litter_size"])
    return answer


def colour_posterior_answer(told: Told, _expected: Told) -> Answer:
    """The chances of the hidden genotypes of the animal asked about, or that the family is impossible."""
    shares = {allele: float(Fraction(share)) for allele, share in told.get("founder_allele_freq", {}).items()}
    error = float(Fraction(told.get("error_rate", told.get("error", 0))))
    found = genotype_chances(book_of(told), told["locus"], told["allowed_genotypes"], shares or None, error)
    if isinstance(found, Impossible):
        return {"impossible": bool(found.animals)}
    if not isinstance(found, dict):
        raise Refused(f"too tangled: {found.cells} cells")
    return {"impossible": False, "posterior": found.get(told.get("target", ""), {}), "posteriors": found}


def selection_answer(told: Told, _expected: Told) -> Answer:
    """The best set within the limits, the next best, and what every set together comes to."""
    animals = [str(one["id"]) for one in told["candidates"]]
    table = kinship(book_of(told), animals).table
    candidates = [Candidate(str(one["id"]), SEXES[one["sex"]], one["value"], one.get("feed", 0.0)) for one in told["candidates"]]
    wanted = Wanted(told["keep_bucks"], told["keep_does"], told.get("max_group_mean_kinship"), told.get("max_feed"))
    best = best_kept(candidates, table, wanted)
    if not isinstance(best, Kept):
        return {"infeasible": True, "least_group_mean_kinship": best.least_kinship, "group_mean_kinship_of_only_set": best.least_kinship}
    second = best_kept(candidates, table, wanted, [best.animals])
    free = best_kept(candidates, table, Wanted(wanted.bucks, wanted.does))
    answer = {
        "infeasible": False,
        "best_value": best.value,
        "kept": sorted(best.animals),
        "group_mean_kinship": best.kinship,
        "feed": best.feed,
        "second_best_value": second.value if isinstance(second, Kept) else None,
        "unconstrained_value": free.value if isinstance(free, Kept) else None,
    }
    return answer | _every_set(candidates, table, wanted)


def _every_set(candidates: list[Candidate], table: Any, wanted: Wanted) -> Answer:
    """How many sets keep to the limits, by trying each."""
    bucks, does = ([at for at, one in enumerate(candidates) if one.sex == sex] for sex in ("buck", "doe"))
    sets = [(*one, *other) for one in combinations(bucks, wanted.bucks) for other in combinations(does, wanted.does)]
    if len(sets) > MOST_SETS:
        return {}
    fit = 0
    for kept in sets:
        mean = float(table[np.ix_(kept, kept)].mean())
        feed = sum(candidates[at].feed for at in kept)
        fit += (wanted.most_kinship is None or mean <= wanted.most_kinship) and (wanted.most_feed is None or feed <= wanted.most_feed)
    return {"feasible_sets": fit}


def scale_answer(told: Told, _expected: Told) -> Answer:
    """Sums over the inbreeding of a large invented pedigree."""
    sires, dams = getattr(invented_pedigrees, told["generator"])(told["n"], told["seed"])
    found, _ = frontier(sires, dams, np.empty(0, dtype=np.int64))
    return {
        "sum_sire": int(sires.sum()),
        "sum_dam": int(dams.sum()),
        "sum_F": float(found.sum()),
        "max_F": float(found.max()),
        "F_last": float(found[-1]),
    }


#: What answers each kind of case.
ANSWERS: dict[str, Callable[[Told, Told], Answer]] = {
    "inbreeding": inbreeding_answer,
    "pedigree_error": pedigree_error_answer,
    "blup": blup_answer,
    "sire_model": sire_model_answer,
    "survival_posterior": survival_posterior_answer,
    "survival_compare": survival_compare_answer,
    "survival_km": survival_km_answer,
    "empirical_bayes": empirical_bayes_answer,
    "survival_trend": survival_trend_answer,
    "gompertz": gompertz_answer,
    "colour_litter": colour_litter_answer,
    "colour_posterior": colour_posterior_answer,
    "colour_error": colour_posterior_answer,
    "selection": selection_answer,
    "selection_infeasible": selection_answer,
    "scale": scale_answer,
}
