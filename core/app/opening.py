"""Opening a book: where it is, whether it can be read, and whose it is. What goes wrong is handed back with what to do about it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from shutil import copyfile
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from core.app.book import App
from core.app.troubles import trouble
from core.problem import Problem
from core.store.copying import is_book
from core.store.engine import engine
from core.store.migrate import UnknownFormError, bring_up
from core.store.names import ArgumentError, DBAPIError, Engine, NoSuchModuleError, make_url
from core.store.people import add_farm, farm_names, farm_number
from core.store.photos import Photo
from core.words import listed

if TYPE_CHECKING:
    from core.app.house import House

#: What the first farm of a book is called unless somebody says otherwise.
FIRST_FARM = "home"


def opened(place: str, farm: str | None, *, create: bool) -> App | Problem:
    """The farm's book, or what stands in the way."""
    made = _made(place)
    if isinstance(made, Problem):
        return made
    picked = _farm(made, farm, create=create)
    if isinstance(picked, Problem):
        made.dispose()
        return picked
    return App(made, *picked)


def opened_whole(place: str) -> House | Problem:
    """The book with all its farms, of which there is at least one; or what stands in the way."""
    from core.app.house import House  # noqa: PLC0415 - few serve more than one farm

    made = _made(place)
    if isinstance(made, Problem):
        return made
    with made.begin() as connection:
        if not farm_names(connection):
            add_farm(connection, FIRST_FARM)
    return House(made)


def _made(place: str) -> Engine | Problem:
    """The way to the book, or what stands in it."""
    url = place if "://" in place else f"sqlite:///{place}"
    try:
        return _engine(url)
    except (ArgumentError, NoSuchModuleError, ValueError):
        return Problem(
            "bad_address",
            f"'{place}' is no address of a book.",
            remedy="Give a file, or an address such as sqlite:////path/to/book.sqlite.",
        )
    except ModuleNotFoundError as error:
        return Problem("no_driver", f"{error.name} is not installed.", remedy="For PostgreSQL: pip install 'haynote[postgres]'.")
    except UnknownFormError:
        return Problem("newer_book", "A newer version of Haynote wrote this book.", remedy="Install that version, or give another book.")
    except (DBAPIError, OSError) as error:
        return _cant_be_opened(url, error)


def _cant_be_opened(url: str, error: Exception) -> Problem:
    """Why: in plain words where the machine is the reason, else in the driver's."""
    known = trouble(error)
    if known is not None and known.code != "out_of_reach":
        return replace(known, text=f"The book {_shown(url)} can't be opened. {known.text}")
    text = f"The book {_shown(url)} can't be opened: {_reason(error)}."
    return Problem("no_book", text, remedy="Look whether the file is there, is a book, and is yours to write.")


def _engine(url: str) -> Engine:
    """The engine of a book in today's form; the folder of a file is made."""
    parsed = make_url(url)
    if parsed.get_backend_name() == "sqlite" and parsed.database:
        Path(parsed.database).parent.mkdir(parents=True, exist_ok=True)
    bring_up(url)
    return engine(url)


def _farm(made: Engine, wanted: str | None, *, create: bool) -> tuple[int, str] | Problem:
    """The farm's number and name."""
    with made.begin() as connection:
        names = farm_names(connection)
        if not names or (create and wanted is not None):
            name = wanted or FIRST_FARM
            return add_farm(connection, name), name
        if wanted is None and len(names) > 1:
            return Problem("which_farm", f"The book holds several farms: {listed(names)}.", names[:5], f"Say which one: --farm {names[0]}.")
        name = wanted or names[0]
        number = farm_number(connection, name)
        if number is None:
            return Problem("no_farm", f"There is no farm '{name}' in this book, but {listed(names)}.", names[:5], f"Say --farm {names[0]}.")
        return number, name


#: A journal's lines, and the photos that a book has beside it.
Held = tuple[tuple[str, ...], tuple[Photo, ...]]


def held_in(path: Path, farm: str) -> Held | Problem:
    """The lines of a journal file; of a backup, the journal and the photos of that farm, or of its only one."""
    try:
        if not is_book(path):
            return tuple(path.read_text(encoding="utf-8").splitlines()), ()
        with TemporaryDirectory() as folder:
            copy = Path(folder) / "copy.sqlite"
            copyfile(path, copy)  # a backup is never changed, not even brought up to today's form
            return _held_of(copy, farm)
    except (OSError, UnicodeDecodeError) as error:
        return Problem(
            "no_file",
            f"{path} can't be read: {getattr(error, 'strerror', None) or error}.",
            remedy="Give a backup, or a file that 'haynote export --journal' wrote.",
        )


def _held_of(copy: Path, farm: str) -> Held | Problem:
    found = opened(str(copy), None, create=False)
    if isinstance(found, Problem) and found.code == "which_farm":
        found = opened(str(copy), farm, create=False)
    if isinstance(found, Problem):
        return found
    try:
        return tuple(found.export_journal()), found.photo_rows()
    finally:
        found.close()


def _shown(url: str) -> str:
    """The address without its password."""
    return make_url(url).render_as_string(hide_password=True)


def _reason(error: Exception) -> str:
    """The driver's own words, in one line, without SQL."""
    cause = error.orig if isinstance(error, DBAPIError) else error
    return str(cause).strip().splitlines()[0].rstrip(".")
