"""Workbooks as people bring them, made where a test wants one."""

from __future__ import annotations

import io

from openpyxl import Workbook


def workbook(**rows: list[list[object]]) -> bytes:
    """A workbook with these sheets."""
    book = Workbook(write_only=True)
    for name, told in rows.items():
        sheet = book.create_sheet(name)
        for row in told:
            sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
