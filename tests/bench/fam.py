"""The .fam file of an invented herd as sgkit takes it: `python -m tests.bench.fam` writes tests/published/fam_kinship.json.

Needs the extra `bench` (sgkit). The tests then need none: they hold the herd's own kinship against what is stored.
"""

from __future__ import annotations

import json
import random
from pathlib import Path

from core.herd.state import Herd
from core.reports.papers.fam import fam_lines
from tests.farm import ago, tell

STORED = Path(__file__).parents[1] / "published" / "fam_kinship.json"
SEED = 20261126
ANIMALS = 60


def invented_herd() -> Herd:
    """Closely kept: some parents unknown, tags with blanks, names in other scripts."""
    draw = random.Random(SEED)
    herd = Herd()
    bucks: list[str] = []
    does: list[str] = []
    for number in range(ANIMALS):
        tag, buck = f"R {number}" if number % 7 == 0 else f"Ж{number}", number % 3 == 0
        sire = draw.choice(bucks[-4:]) if bucks and draw.random() > 0.15 else None
        dam = draw.choice(does[-6:]) if does and draw.random() > 0.15 else None
        sex = "buck" if buck else "doe"
        herd = tell(herd, "animal", tag=tag, sex=sex, born=ago(2000 - 20 * number), sire=sire, dam=dam)
        (bucks if buck else does).append(tag)
    return herd


def by_sgkit(lines: tuple[str, ...]) -> dict[str, object]:
    """Kinship of all animals of the file; of a kit with one known parent the other counts as unrelated."""
    import numpy as np
    import sgkit
    import xarray

    rows = [line.split() for line in lines]
    told = xarray.Dataset()
    told["sample_id"] = ("samples", np.array([row[1] for row in rows]))
    told["parent_id"] = (("samples", "parents"), np.array([row[2:4] for row in rows]))
    told = sgkit.parent_indices(told, missing="0")
    found = sgkit.pedigree_kinship(told, allow_half_founders=True)["stat_pedigree_kinship"].values
    return {"made_by": f"sgkit {sgkit.__version__}: python -m tests.bench.fam", "lines": list(lines), "kinship": found.tolist()}


def main() -> None:
    """Write what sgkit makes of it."""
    STORED.write_text(json.dumps(by_sgkit(fam_lines(invented_herd(), "hill farm")), ensure_ascii=False) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
