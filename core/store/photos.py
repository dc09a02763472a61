"""Photos: which lies in which file, and whose it is. The files themselves lie in a folder, named by what they hold."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Select, func, select, update

from core.store.once import put_once
from core.store.tables import photos


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo that a person sent.

    chat, number  the message that it came with; `album` what several sent at once have in common
    file          the name of its file: a hash of its content, with an ending
    animal        the key of the animal that it shows; None until that is known
    """

    chat: str
    number: str
    file: str
    sent_at: datetime
    author: str
    album: str | None = None
    animal: str | None = None


def keep(connection: Connection, farm: int, photo: Photo) -> Photo:
    """Keep a photo; one whose album is known already shows the same animal. Kept again it stays as it is."""
    if photo.animal is None and photo.album is not None:
        photo = replace(photo, animal=_of_album(connection, farm, photo))
    put_once(connection, photos, farm_id=farm, **asdict(photo))
    return photo


def _of_album(connection: Connection, farm: int, photo: Photo) -> str | None:
    those = (photos.c.farm_id == farm) & (photos.c.chat == photo.chat) & (photos.c.album == photo.album)
    found: str | None = connection.scalar(select(photos.c.animal).where(those, photos.c.animal.is_not(None)).limit(1))
    return found


def known(connection: Connection, farm: int, chat: str, number: str) -> Photo | None:
    """The photo of a message; None where it has none."""
    row = connection.execute(_fields().where(photos.c.farm_id == farm, photos.c.chat == chat, photos.c.number == number)).one_or_none()
    return None if row is None else Photo(**row._mapping)  # noqa: SLF001 - the library's own name


def show(connection: Connection, farm: int, photo: Photo, animal: str) -> int:
    """Say whose a photo is, and with it all of its album. How many that are."""
    these = photos.c.number == photo.number if photo.album is None else photos.c.album == photo.album
    done = connection.execute(update(photos).where(photos.c.farm_id == farm, photos.c.chat == photo.chat, these).values(animal=animal))
    return int(done.rowcount)


def of_animal(connection: Connection, farm: int, animal: str) -> tuple[Photo, ...]:
    """An animal's photos, the newest first; a file that came twice is told once."""
    those = _fields().where(photos.c.farm_id == farm, photos.c.animal == animal).order_by(photos.c.sent_at.desc(), photos.c.id.desc())
    told: dict[str, Photo] = {}
    for row in connection.execute(those):
        told.setdefault(row.file, Photo(**row._mapping))  # noqa: SLF001 - as above
    return tuple(told.values())


def all_of(connection: Connection, farm: int) -> tuple[Photo, ...]:
    """Every photo of the farm, in the order in which they came."""
    return tuple(Photo(**row._mapping) for row in connection.execute(_fields().where(photos.c.farm_id == farm).order_by(photos.c.id)))  # noqa: SLF001 - as above


def files(connection: Connection) -> tuple[str, ...]:
    """The names of the files of every farm's photos: a copy holds them all."""
    return tuple(connection.scalars(select(photos.c.file).distinct().order_by(photos.c.file)))


def counted(connection: Connection, farm: int) -> int:
    """How many photos show an animal."""
    those = select(func.count(func.distinct(photos.c.file))).where(photos.c.farm_id == farm, photos.c.animal.is_not(None))
    return connection.scalar(those) or 0


def _fields() -> Select[Any]:
    return select(*(photos.c[name] for name in Photo.__dataclass_fields__))
