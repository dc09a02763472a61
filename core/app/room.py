"""What all rooms behind the door share: the farm, and the way to its book."""

from __future__ import annotations

from core.app.hearing import Hearing
from core.app.reckoning import Reckon
from core.store.names import Engine


class Room:
    """A part of the app. `name` is the farm's."""

    def __init__(self, engine: Engine, farm: int, name: str) -> None:
        """Nothing is read from the database until it is asked for."""
        self.name = name
        self._engine = engine
        self._farm = farm
        self._hearing = Hearing(engine, farm)

    @property
    def reckon(self) -> Reckon:
        """Where it is worked out what takes the big libraries: here, unless a shell says otherwise."""
        return self._hearing.reckon

    @reckon.setter
    def reckon(self, where: Reckon) -> None:
        self._hearing.reckon = where
