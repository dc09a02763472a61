"""A mapping with one thing more behaves as a plain one does, however large it is."""

from __future__ import annotations

from collections.abc import Mapping

from hypothesis import given
from hypothesis import strategies as st

from core.herd.layers import SMALL, Layered, with_entry


def grown(keys: list[int], start: int) -> tuple[Mapping[str, int], dict[str, int]]:
    """The same entries put into both sorts of mapping, one after the other."""
    plain = {str(key): key for key in range(start)}
    ours: Mapping[str, int] = dict(plain)
    for place, key in enumerate(keys):
        plain[str(key)] = -place
        ours = with_entry(ours, str(key), -place)
    return ours, plain


@given(st.lists(st.integers(0, 700), max_size=80), st.sampled_from([0, SMALL - 3, SMALL, 500]))
def test_it_is_as_a_plain_mapping(keys: list[int], start: int) -> None:
    """Entries, order, length, and what is not there."""
    ours, plain = grown(keys, start)
    assert ours == plain
    assert list(ours) == list(plain)
    assert list(ours.values()) == list(plain.values())
    assert list(ours.items()) == list(plain.items())
    assert len(ours) == len(plain)
    assert [ours.get(str(key)) for key in range(705)] == [plain.get(str(key)) for key in range(705)]
    assert ("x" in ours) is False


def test_many_entries_are_merged_now_and_then() -> None:
    """So that none of its two parts grows without end, and an older mapping stays what it was."""
    older, plain = grown(list(range(1000, 1000 + SMALL)), SMALL)
    newer = with_entry(older, "1", -1)
    assert isinstance(older, Layered)
    assert isinstance(newer, Layered)
    assert (len(older.newer), len(newer.newer)) == (SMALL, 1)
    assert older == plain
    assert (older["1"], newer["1"]) == (1, -1)


def test_a_small_mapping_is_a_plain_one() -> None:
    """As nearly every herd is."""
    assert type(with_entry({"a": 1}, "b", 2)) is dict
