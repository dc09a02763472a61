"""The one door to the domain. The shells come in here, and nowhere else.

Importing it is cheap: the store, and the reckoning behind the reports, are loaded by the first call that needs them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.notes.reading import Message, ReplyTo
from core.problem import Problem

if TYPE_CHECKING:
    from core.app.book import App

__all__ = ["Message", "Problem", "ReplyTo", "open_book"]


def open_book(url: str, farm: str | None = None, *, create: bool = False) -> App | Problem:
    """The farm's book at the address, made on first use; or the reason why it can't be opened.

    A book with several farms wants the farm's name. A name that is not in the book is refused, unless the book is new or `create` is set.
    """
    from core.app.opening import opened  # noqa: PLC0415 - loads SQLAlchemy

    return opened(url, farm, create=create)
