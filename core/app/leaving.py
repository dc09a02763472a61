"""Deleting a farm: asked for first, done once a waiting time is over. Its last archive is made by the shell, which knows where to."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

from core.app.room import Room
from core.problem import Problem
from core.store import journal, leaving
from core.words import full_day

#: How long a farm that somebody wants deleted stays: time to think it over, and for the others on it to hear of it.
WAITING = timedelta(days=7)


class Leaving(Room):
    """How a farm goes."""

    def want_to_go(self, now: datetime) -> datetime:
        """Let the farm be deleted once the waiting time is over; from when on, by the first who wanted it."""
        with self._engine.begin() as connection:
            leaving.wants_to_go(connection, self._farm, now + WAITING)
            return leaving.goes_at(connection, self._farm) or now + WAITING

    def goes_at(self) -> datetime | None:
        """From when on it may be deleted; None where nobody wants that."""
        with self._engine.begin() as connection:
            return leaving.goes_at(connection, self._farm)

    def stay(self) -> bool:
        """Take back that it shall be deleted; whether there was something to take back."""
        with self._engine.begin() as connection:
            return leaving.stays(connection, self._farm)

    def delete(self, now: datetime, notes: int, folder: Path) -> Problem | None:
        """Delete the farm for good, with its photos; None once it is gone.

        notes   how many are in its last archive: with more by now nothing is deleted
        folder  where the photos lie
        """
        with self._engine.begin() as connection:
            journal.take_farm(connection, self._farm)
            at = leaving.goes_at(connection, self._farm)
            if at is None or at > now:
                text = f"The farm may be deleted from {full_day(at.date())} on." if at else "Nobody asked for the farm to be deleted."
                return Problem("too_early", text, remedy="'haynote delete --last FILE' asks for it, and does it once 7 days are over.")
            if journal.last_id(connection, self._farm) != notes:
                return Problem(
                    "too_early",
                    "A note came in after the last archive.",
                    remedy="Nothing was deleted. Stop 'haynote serve', and try again.",
                )
            files = leaving.delete_farm(connection, self._farm)
        for file in files:
            (folder / file).unlink(missing_ok=True)
        return None
