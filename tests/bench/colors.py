"""Whether what is said of hidden color genes is true, in simulated herds: `python -m tests.bench.colors [HERDS]` (default 100).

Herds of a few breeders over four rounds of litters; how common each form is among the founders differs from herd to herd, and one color
in five is not noted. Two questions are asked of each herd: does a breeder of a dominant color carry what it does not show (by tenths
of the chance that was told), and what will the next litter of a pair be. Raw counts stand beside: the share of a breeder's kits that
show the form, and the colors that the pair's kits had so far.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import log

import numpy as np

from core.reckon.colour import LOCI, PLAIN, named
from core.reckon.pedigree import Pedigree, Row, pedigree
from core.reports.coat import Coats

DOES, BUCKS, ROUNDS, KITS = 8, 2, 4, 6
NOTED = 0.8
#: Forms that founders may have, and the Beta that their share is drawn from.
FORMS = {"A": "a", "B": "b", "C": "c", "D": "d", "E": "e"}
SHARE = (1.0, 2.0)
#: What the raw count leaves for colors that the pair's kits did not show, shared by all that the herd shows: else a logarithm is endless.
UNSEEN = 0.1

FLOOR = 1e-4  # a forecast leaves out what is rarer, and says so

Genes = dict[str, tuple[str, str]]


@dataclass
class Herd:
    """A simulated herd: rows of the family book, true genes, and the breeders of the last round."""

    rows: list[Row] = field(default_factory=list)
    genes: dict[str, Genes] = field(default_factory=dict)
    does: list[str] = field(default_factory=list)
    bucks: list[str] = field(default_factory=list)

    def add(self, sire: str | None, dam: str | None, genes: Genes) -> str:
        """One more animal, under the next number."""
        key = str(len(self.rows))
        self.rows.append((key, sire, dam))
        self.genes[key] = genes
        return key

    def coat(self, key: str) -> str:
        """What the animal looks like."""
        return named({locus: "/".join(pair) for locus, pair in self.genes[key].items()})


@dataclass
class Tally:
    """What was told and what was true. `told`: tenth of the chance -> how often, and how often it was so."""

    told: dict[int, list[int]] = field(default_factory=dict)
    squares: list[tuple[float, float]] = field(default_factory=list)
    logs: list[tuple[float, float]] = field(default_factory=list)


def kit(rng: np.random.Generator, sire: Genes, dam: Genes) -> Genes:
    """A kit's genes, one form from each parent at each locus."""
    return {locus: (sire[locus][rng.integers(2)], dam[locus][rng.integers(2)]) for locus in LOCI}


def simulated(rng: np.random.Generator) -> Herd:
    """A herd of founders and some rounds of litters, each round's new breeders taken from the kits."""
    herd = Herd()
    shares = {locus: rng.beta(*SHARE) for locus in FORMS}
    for _ in range(DOES + BUCKS):
        plain: Genes = {locus: (PLAIN[locus].split("/")[0],) * 2 for locus in LOCI}  # type: ignore[misc]
        drawn = {
            locus: tuple(FORMS[locus] if rng.random() < share else plain[locus][0] for _ in range(2)) for locus, share in shares.items()
        }
        herd.add(None, None, plain | drawn)  # type: ignore[arg-type]
    herd.does, herd.bucks = [str(at) for at in range(DOES)], [str(DOES + at) for at in range(BUCKS)]
    for _ in range(ROUNDS):
        born = [
            herd.add(buck, doe, kit(rng, herd.genes[buck], herd.genes[doe]))
            for doe in herd.does
            for buck in rng.choice(herd.bucks, 1)
            for _ in range(KITS)
        ]
        new = [str(one) for one in rng.choice(born, 3, replace=False)]
        herd.does[: len(new) - 1], herd.bucks[0] = new[1:], new[0]
        rng.shuffle(herd.does)
    return herd


def measure(rng: np.random.Generator, herd: Herd, tally: Tally) -> None:
    """Ask both questions of one herd."""
    book = pedigree(herd.rows)
    if not isinstance(book, Pedigree):
        raise TypeError(book)
    coats = Coats(book, {key: herd.coat(key) if rng.random() < NOTED else None for key in book.ids})
    breeders = [*herd.does, *herd.bucks]
    genes = coats.genes(breeders)
    kits = {one: [row[0] for row in herd.rows if one in row[1:]] for one in breeders}
    for one in breeders:
        for form, chance in coats.carries(one, genes[one]).items():
            locus = next(locus for locus, own in FORMS.items() if own == form)
            true = form in herd.genes[one][locus]
            cell = tally.told.setdefault(min(int(chance * 10), 9), [0, 0])
            cell[0] += 1
            cell[1] += true
            showing = sum(herd.genes[each][locus] == (form, form) for each in kits[one])
            raw = min(4 * showing / len(kits[one]), 1.0) if kits[one] else 0.5
            tally.squares.append(((chance - true) ** 2, (raw - true) ** 2))
    for doe in herd.does:
        for buck in herd.bucks:
            so_far = Counter(color for row in herd.rows if row[1:] == (buck, doe) and (color := coats.colors[row[0]]))
            if so_far:
                coming = named({locus: "/".join(pair) for locus, pair in kit(rng, herd.genes[buck], herd.genes[doe]).items()})
                told = coats.mating(buck, doe).colors.get(coming, 0.0)
                raw = so_far[coming] / so_far.total() * (1 - UNSEEN) + UNSEEN / len(set(coats.colors.values()))
                tally.logs.append((log(max(told, FLOOR)), log(raw)))


def report(herds: int, seed: int = 20261125) -> Iterator[str]:
    """The figures, a line each."""
    rng, tally = np.random.default_rng(seed), Tally()
    for _ in range(herds):
        measure(rng, simulated(rng), tally)
    for tenth, (many, true) in sorted(tally.told.items()):
        yield f"carries it, told {tenth * 10:3d} to {tenth * 10 + 10:3d} %: true of {true / many * 100:5.1f} % of {many}"
    told, raw = np.mean(tally.squares, axis=0)
    yield f"mean squared error of the chance to carry: {told:.3f}; of four times the share of kits that show it: {raw:.3f}"
    told, raw = np.exp(np.mean(tally.logs, axis=0))
    yield f"chance given to the color of a next kit (geometric mean of {len(tally.logs)}): {told:.3f}; by the pair's kits so far: {raw:.3f}"


if __name__ == "__main__":
    for line in report(int(sys.argv[1]) if len(sys.argv) > 1 else 100):
        print(line)
