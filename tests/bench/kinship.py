"""Inbreeding of all animals against sgkit, on three shapes of pedigree, warm and in a fresh process.

Needs the extra `bench` (sgkit). The two must agree to 1e-12; times are minima of several rounds, and the ratio is sgkit's over ours.
sgkit compiles its loops with numba at the first call of a process, so its warm figures are those of a numba version.
In a fresh process the pedigree lies ready in a file: numpy's import, the reckoner's own and the first answer are timed, all else is not.
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from tests.bench.fresh import fresh
from tests.published import invented_pedigrees

SEED = 20261125
ROUNDS = 5
#: shape, animals, the ratio that is wanted warm
SHAPES = (("deep", 100_000, 1.2), ("wide", 100_000, 1.2), ("hard", 10_000, 10.0))
FRESH_WANTED = 50.0

_FRESH = """
import json, time
began = time.perf_counter()
import numpy
sires, dams = numpy.load({told!r})
from tests.bench.kinship import {reckoner}
{reckoner}(sires, dams)
seconds = time.perf_counter() - began
from tests.bench.fresh import peak
print(json.dumps([seconds, peak()]))
"""

Places = npt.NDArray[np.int64]


def ours(sires: Places, dams: Places) -> npt.NDArray[np.float64]:
    """F of all, by the table of breeders."""
    from core.reckon.kinship import frontier

    return frontier(sires, dams, np.empty(0, dtype=np.int64))[0]


def theirs(sires: Places, dams: Places) -> npt.NDArray[np.float64]:
    """F of all, by sgkit."""
    import xarray
    from sgkit.stats.pedigree import pedigree_inbreeding

    told = xarray.Dataset()
    told["parent"] = (("samples", "parents"), np.stack([sires, dams], axis=1))
    return np.asarray(pedigree_inbreeding(told)["stat_pedigree_inbreeding"].values)


def best(reckoner: Callable[[Places, Places], Any], sires: Places, dams: Places) -> float:
    """The quickest of several rounds [s], the first one apart."""
    reckoner(sires, dams)
    times = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        reckoner(sires, dams)
        times.append(time.perf_counter() - began)
    return min(times)


def in_a_fresh_process(reckoner: str, told: Path, rounds: int) -> tuple[float, float]:
    """The quickest of some new processes, from the first import to the answer [s], and its peak memory [MB]."""
    found = [fresh(_FRESH.format(reckoner=reckoner, told=str(told))) for _ in range(rounds)]
    return min((seconds, megabytes) for seconds, megabytes in found)


def main() -> None:
    """Print ratios and times, warm and fresh."""
    for shape, animals, wanted in SHAPES:
        sires, dams = getattr(invented_pedigrees, shape)(animals, SEED)
        off = float(np.abs(ours(sires, dams) - theirs(sires, dams)).max())
        mine, peers = best(ours, sires, dams), best(theirs, sires, dams)
        print(
            f"{shape} {animals}: {mine * 1000:.1f} ms, sgkit {peers * 1000:.1f} ms, ratio {peers / mine:.1f} ({wanted} is wanted); differ by {off:.0e}"
        )
        assert off <= 1e-12, "the two don't agree"
    with tempfile.TemporaryDirectory() as folder:
        told = Path(folder) / "pedigree.npy"
        np.save(told, np.array(invented_pedigrees.deep(100_000, SEED)))
        mine, memory = in_a_fresh_process("ours", told, ROUNDS)
        peers, peers_memory = in_a_fresh_process("theirs", told, 1)
    print(f"deep 100000 in a fresh process, imports and first answer: {mine:.2f} s and {memory:.0f} MB,")
    print(f"  sgkit {peers:.1f} s and {peers_memory:.0f} MB, ratio {peers / mine:.0f} ({FRESH_WANTED:.0f} is wanted)")


if __name__ == "__main__":
    main()
