"""Generators of property tests, all in one place."""

from __future__ import annotations

from hypothesis import settings
from hypothesis import strategies as st

from core.reckon.colour import LOCI, genotypes

# A slow or busy machine is no fault of the code; and the same examples each run, so that a red test stays red.
settings.register_profile("barn", deadline=None, derandomize=True)
settings.load_profile("barn")


@st.composite
def pedigree_rows(draw: st.DrawFn, most: int = 14) -> list[tuple[str, str | None, str | None]]:
    """Small tangled family books: even places are bucks, odd ones does, parents older than their kits; rows in any order."""
    size = draw(st.integers(min_value=1, max_value=most))
    rows: list[tuple[str, str | None, str | None]] = []
    for at in range(size):
        bucks = [None, *(f"r{one}" for one in range(0, at, 2))]
        does = [None, *(f"r{one}" for one in range(1, at, 2))]
        rows.append((f"r{at}", draw(st.sampled_from(bucks)), draw(st.sampled_from(does))))
    return draw(st.permutations(rows))


def colour_genotypes() -> st.SearchStrategy[dict[str, str]]:
    """A rabbit's genotype at every colour locus."""
    return st.fixed_dictionaries({locus: st.sampled_from(genotypes(locus)) for locus in LOCI})


def kit_counts(most: int = 12) -> st.SearchStrategy[tuple[int, int]]:
    """A litter's kits alive, and of them kept."""
    return st.integers(min_value=0, max_value=most).flatmap(lambda alive: st.tuples(st.just(alive), st.integers(0, alive)))
