"""Files together in one ZIP, and out of it."""

from __future__ import annotations

import io
import zipfile
import zlib
from collections.abc import Iterable, Mapping
from pathlib import Path

#: So that a file with the same content is the same file: the earliest day that a ZIP knows.
DAY = (1980, 1, 1, 0, 0, 0)
#: What is unpacked at most [bytes]: a small file can hold a huge one.
MOST = 4_000_000_000


def zipped(parts: Mapping[str, bytes] | Iterable[tuple[str, bytes]]) -> bytes:
    """A ZIP of these files, name -> content, in their order."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in dict(parts).items():
            told = zipfile.ZipInfo(name, DAY)
            told.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(told, content)
    return out.getvalue()


def unzipped(path: Path) -> dict[str, bytes] | None:
    """The files in a ZIP, name -> content; None for a file that is none. OSError where it can't be read, ValueError where it is broken."""
    if not path.is_file() or not zipfile.is_zipfile(path):
        return None
    try:
        with zipfile.ZipFile(path) as archive:
            if sum(each.file_size for each in archive.infolist()) > MOST:
                raise ValueError("there is too much in it")
            return {name: archive.read(name) for name in archive.namelist() if not name.endswith("/")}
    except (zipfile.BadZipFile, zlib.error, RuntimeError) as error:
        raise ValueError("it is broken") from error
