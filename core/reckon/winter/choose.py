"""The best set for the winter: all animals at once, within the limits, with the matings that it leaves."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from statistics import fmean

import numpy as np

from core.reckon.winter.pins import prices
from core.reckon.winter.programme import HIGHEST, Asked, Programme, asked, programme
from core.reckon.winter.solving import Solved, ceiling, solved
from core.reckon.winter.turning import flips
from core.reckon.winter.types import Candidate, Choice, Kin, Limits, Mating, Unfit
from core.reckon.winter.unfit import mended, or_lift

#: In a large herd: how far below the margin an animal is out of the question [share of the greatest worth], and how near to the best will do.
MARGIN, NEARLY = 0.05, 1e-3  # not a figure: how exact


def best(candidates: Iterable[Candidate], limits: Limits, kin: Kin) -> Choice | Unfit:
    """The set that is worth most within the limits and pins; where none is, the smallest change that makes one fit.

    A breed that has a pair within the COI limit keeps one, as long as pins and limits let it: as few breeds as can be are left
    unable to breed on, and each of these is told. Equal sets go by key, whatever the order in which the candidates are told.
    """
    told = tuple(candidates)
    of = asked(told, limits, kin)
    found = chosen(of)
    if found is not None:
        return _told(told, of, *found)
    changes, fitting = mended(of)
    changed = replace(of, limits=fitting)
    again = chosen(changed)
    if again is None:  # pragma: no cover - the mended limits were measured with these animals
        raise ArithmeticError("nothing fits the mended limits")
    in_the_way = or_lift(of)
    return Unfit(changes, fitting, _told(told, changed, *again), tuple(one.key for one in told if one.key in in_the_way))


def chosen(of: Asked) -> tuple[Programme, Solved] | None:
    """The best choice, with the fewest breeds left unable to breed on; None where nothing fits."""
    whole = programme(of)
    found = _best(whole)
    if found is not None or not whole.let_down:
        return None if found is None else (whole, found)
    fewest = _fewest_let_down(whole)
    if fewest is None:
        return None
    letting = whole.letting_down(fewest)
    found = _best(letting)
    return None if found is None else (letting, found)


def _best(whole: Programme) -> Solved | None:
    """The best choice. In a large herd all that lies far from the margin is held fixed first, and nearly the best is good enough."""
    low, high = whole.bounds()
    if not whole.large:
        return solved(whole, low, high)
    top = ceiling(whole, low, high)
    if top is None:
        return None
    narrow = solved(whole, *top.fixed_for(top.height - MARGIN * HIGHEST, low, high), near=NEARLY)
    return narrow or solved(whole, low, high, near=NEARLY)


def _fewest_let_down(whole: Programme) -> int | None:
    """How many breeds must be left without a pair; None where nothing fits even so."""
    gains = np.zeros(whole.columns)
    gains[list(whole.let_down)] = -1.0
    found = solved(whole.letting_down(len(whole.let_down)), *whole.bounds(), gains=gains)
    return None if found is None else round(-found.objective)


def _told(order: tuple[Candidate, ...], of: Asked, whole: Programme, found: Solved) -> Choice:
    kept = {one.key for one, stays in zip(of.animals, found.kept, strict=True) if stays}
    stay = [one for one in order if one.key in kept]
    top = ceiling(whole, *whole.bounds())
    if top is None:  # pragma: no cover - a choice fits, so animals in part do
        raise ArithmeticError("nothing fits under the ceiling")
    return Choice(
        kept=tuple(one.key for one in stay),
        going=tuple(one.key for one in order if one.key not in kept),
        worth=of.worth(kept),
        feed_g=sum(one.feed_g for one in stay),
        places=sum(one.places for one in stay),
        mouths=sum(one.mouths for one in stay),
        matings=_matings(order, of, kept),
        mean_kinship=_mean_kinship(of, kept),
        price_of_pin=prices(order, whole, found, top, chosen),
        flips=flips(order, whole, found, top),
        lacking=_lacking(of, kept),
    )


def _matings(order: tuple[Candidate, ...], of: Asked, kept: set[str]) -> tuple[Mating, ...]:
    most = of.limits.highest_coi
    found = []
    for doe in (one.key for one in order if one.key in of.coi and one.key in kept):
        mates = [(coi, buck) for buck, coi in of.coi[doe].items() if buck in kept and coi <= most]
        found += [Mating(doe, buck, coi) for coi, buck in sorted(mates)]
    return tuple(found)


def _mean_kinship(of: Asked, kept: set[str]) -> float | None:
    pairs = [coi for doe, bucks in of.coi.items() if doe in kept for buck, coi in bucks.items() if buck in kept]
    return fmean(pairs) if pairs else None


def _lacking(of: Asked, kept: set[str]) -> Mapping[str, str]:
    """The breeds with grown stock among those asked about that the set leaves unable to breed on, and what they lack."""
    told = {breed: _lack(of, {one.key: one.sex for one in grown if one.key in kept}) for breed, grown in of.grown_of.items()}
    return {breed: lack for breed, lack in told.items() if lack is not None}


def _lack(of: Asked, sexes: Mapping[str, str | None]) -> str | None:
    here = set(sexes.values())
    if len(here) < len(("buck", "doe")):
        return "both" if not here else ("doe" if "buck" in here else "buck")
    fits = any(buck in sexes for doe in sexes if doe in of.coi for buck in of.mates(doe))
    return None if fits else "pair"
