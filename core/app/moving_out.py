"""Moving out: the whole book in forms that other programs read, and as an archive that another machine takes in."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from core.app.room import Room

if TYPE_CHECKING:
    from core.notes.moving.table import Table


class MovingOut(Room):
    """What the farm can take away. Nobody is asked here whether they may: the shell and the road of a note see to that."""

    def export_tables(self) -> tuple[Table, ...]:
        """The book as tables: what to look at, the facts that stand, and the notes as typed."""
        from core.notes.moving.own_tables import own_tables  # noqa: PLC0415 - only who moves out needs it

        return own_tables(self._hearing.book(), self.name)

    def export_csv(self) -> dict[str, bytes]:
        """The same as CSV files in UTF-8: name -> content. A byte order mark tells spreadsheets which letters these are."""
        from core.notes.moving.table import csv_text  # noqa: PLC0415

        return {f"{table.name.replace(' ', '-')}.csv": csv_text(table).encode("utf-8-sig") for table in self.export_tables()}

    def export_document(self) -> dict[str, Any]:
        """The book as one JSON object; docs/reference/book.schema.json says what stands in it."""
        from core.notes.moving.document import document  # noqa: PLC0415

        return document(self._hearing.book(), self.name)

    def export_fam(self) -> tuple[str, ...]:
        """The family book as the lines of a PLINK .fam file."""
        from core.reports.papers.fam import fam_lines  # noqa: PLC0415 - loads the reckoning

        return fam_lines(self._hearing.book().herd, self.name)
