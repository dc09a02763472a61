"""Generators of property tests, all in one place."""

from __future__ import annotations

from hypothesis import strategies as st


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
