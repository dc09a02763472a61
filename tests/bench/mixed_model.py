"""Breeding values of 10,000 and 100,000 animals beside a plain sparse LU of the whole system: time, memory, growth.

Animal + common litter, sex and four seasons fixed, records of 80 animals in 100; the reliabilities of the last 80 animals are
worked out. Times are the processor's. The plain way factors the same equations with their fixed rows inside, by `scipy.sparse.linalg.splu` as it comes, and
solves for the same 80. Each runs in its own process, so that the peak of memory is its own. The two must agree.
"""

from __future__ import annotations

import math

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import splu

from core.reckon.equations import equations
from core.reckon.kinship import inbreeding_array
from core.reckon.mixed_model import Record, Variances, breeding_values, penalty, relationship_inverse
from core.reckon.pedigree import Pedigree
from tests.bench.fresh import fresh
from tests.published import invented_pedigrees

SEED = 20261125
SIZES = (10_000, 100_000)
LIVING = 80
ROUNDS = 3
VARIANCES = Variances(0.2, 0.5, {"litter": 0.3})
POWER_WANTED = 1.3

_ONE = """
import json, time
from tests.bench.fresh import peak
from tests.bench.mixed_model import {reckoner}, herd
told = herd("{shape}", {animals})
times = []
for _ in range({rounds}):
    began = time.process_time()
    answer = {reckoner}(*told)
    times.append(time.process_time() - began)
print(json.dumps([min(times), peak(), answer]))
"""


def herd(shape: str, animals: int) -> tuple[Pedigree, list[Record], tuple[str, ...]]:
    """A family book, records of four animals in five, and the last animals."""
    sires, dams = getattr(invented_pedigrees, shape)(animals, SEED)
    random = np.random.default_rng(SEED)
    ids = tuple(str(at) for at in range(animals))
    book = Pedigree(ids, tuple(sires.tolist()), tuple(dams.tolist()), {animal: at for at, animal in enumerate(ids)})
    sexes, values = random.integers(0, 2, animals), random.normal(size=animals)
    records = [
        Record(ids[at], float(values[at]), {"sex": "bd"[sexes[at]], "season": "wsfa"[at // 512 % 4]}, {"litter": f"{dams[at]}.{at // 512}"})
        for at in np.flatnonzero(random.random(animals) < 0.8).tolist()
    ]
    return book, records, ids[-LIVING:]


def ours(book: Pedigree, records: list[Record], living: tuple[str, ...]) -> list[float]:
    """Value and error of each living animal, one after the other."""
    found = breeding_values(book, records, VARIANCES, living)
    return [number for animal in living for number in (found.values[animal], found.of(animal).pev)]


def plain(book: Pedigree, records: list[Record], living: tuple[str, ...]) -> list[float]:
    """The same by one factor of the whole system, fixed effects among the rest (one season left out, so that it can be solved)."""
    sums = equations(book, records, ("litter",))
    kept = [at for pair, at in sums.columns.items() if pair != ("season", "w")]
    held = sums.zz + penalty(sums.layout, VARIANCES, relationship_inverse(book, inbreeding_array(book)))
    crossed = sparse.csr_matrix(sums.zx[:, kept])
    whole = sparse.csc_matrix(sparse.block_array([[held, crossed], [crossed.T, sparse.csr_matrix(sums.xx[np.ix_(kept, kept)])]]))
    solver = splu(whole)
    solved = solver.solve(np.concatenate([sums.zy, sums.xy[kept]]))
    places = [book.place[animal] for animal in living]
    units = np.zeros((whole.shape[0], len(places)))
    units[places, np.arange(len(places))] = 1.0
    errors = np.diagonal(solver.solve(units)[places]) * VARIANCES.residual
    return [float(number) for at, error in zip(places, errors, strict=True) for number in (solved[at], error)]


def measured(reckoner: str, shape: str, animals: int) -> tuple[float, float, list[float]]:
    """Processor time of the best round [s], peak memory [MB] and the answer, in a process of its own."""
    rounds = ROUNDS if reckoner == "ours" else 1
    script = _ONE.format(reckoner=reckoner, shape=shape, animals=animals, rounds=rounds)
    seconds, megabytes, answer = fresh(script)
    return seconds, megabytes, answer


def main() -> None:
    """Print time, memory and growth for two shapes of herd."""
    for shape in ("deep", "wide"):
        times = []
        for animals in SIZES:
            mine, memory, answer = measured("ours", shape, animals)
            peers, peers_memory, same = measured("plain", shape, animals)
            off = float(np.abs(np.array(answer) - np.array(same)).max())
            times.append(mine)
            print(f"{shape} {animals}: {mine:.2f} s and {memory:.0f} MB, plain LU {peers:.2f} s and {peers_memory:.0f} MB,")
            print(f"  ratio {peers / mine:.1f}; values and errors of {LIVING} animals differ by {off:.0e}")
            assert off < 1e-8, "the two don't agree"
        power = math.log(times[-1] / times[0]) / math.log(SIZES[-1] / SIZES[0])
        print(f"{shape}: cost grows with the {power:.2f}th power of the animals (below {POWER_WANTED} is wanted)")


if __name__ == "__main__":
    main()
