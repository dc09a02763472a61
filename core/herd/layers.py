"""A mapping with one thing more, made without copying the thousands that are there already."""

from __future__ import annotations

from collections.abc import ItemsView, Iterator, Mapping, ValuesView
from typing import Final, TypeVar

Value = TypeVar("Value")

#: A mapping so small is copied: that costs nothing, and is the fastest to read. What is newer than the last copy is at most so much.
SMALL: Final = 256  # not a figure: entries


def with_entry(whole: Mapping[str, Value], key: str, value: Value) -> Mapping[str, Value]:
    """The mapping with that entry put in or replaced; the order is that of a plain one."""
    if len(whole) < SMALL:
        return {**whole, key: value}
    length = len(whole) + (key not in whole)
    if not isinstance(whole, Layered):
        return Layered(dict(whole), {key: value}, length)
    if len(whole.newer) < SMALL:
        return Layered(whole.base, {**whole.newer, key: value}, length)
    return Layered(whole.merged(), {key: value}, length)


class Layered(Mapping[str, Value]):
    """A large mapping and what is newer than it. Neither is ever changed."""

    __slots__ = ("_length", "_merged", "base", "newer")

    def __init__(self, base: dict[str, Value], newer: dict[str, Value], length: int) -> None:
        """Both are this mapping's own from now on; `length` is how many keys they have together."""
        self._length = length
        self.base = base
        self.newer = newer
        self._merged: dict[str, Value] | None = None

    def merged(self) -> dict[str, Value]:
        """Both as one, worked out once: for who goes through all of it."""
        if self._merged is None:
            self._merged = {**self.base, **self.newer}
        return self._merged

    def __getitem__(self, key: str) -> Value:
        """The newer entry, where there is one."""
        return self.newer[key] if key in self.newer else self.base[key]

    def __contains__(self, key: object) -> bool:
        """Whether either has it."""
        return key in self.newer or key in self.base

    def __iter__(self) -> Iterator[str]:
        """The keys, in the order in which they came."""
        return iter(self.merged())

    def __len__(self) -> int:
        """How many there are."""
        return self._length

    def values(self) -> ValuesView[Value]:
        """All that is in it."""
        return self.merged().values()

    def items(self) -> ItemsView[str, Value]:
        """All with their keys."""
        return self.merged().items()
