"""Tables as CSV files, together in one ZIP."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable, Mapping

#: So that a file with the same content is the same file: the earliest day that a ZIP knows.
DAY = (1980, 1, 1, 0, 0, 0)


def zipped(parts: Mapping[str, bytes] | Iterable[tuple[str, bytes]]) -> bytes:
    """A ZIP of these files, name -> content, in their order."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in dict(parts).items():
            told = zipfile.ZipInfo(name, DAY)
            told.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(told, content)
    return out.getvalue()
