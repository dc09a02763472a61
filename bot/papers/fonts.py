"""Letters for paper and pictures, in any script: fonts that come inside the libraries, then those of the machine.

DejaVu Sans (inside matplotlib) has Latin, Greek, Cyrillic, Arabic, Hebrew, Armenian, Georgian and many signs. For what it lacks
the other fonts are looked at in turn, and opened only then.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

#: Fonts inside other packages: package, and where in it the files lie.
PACKAGES = (
    ("fontpkg_noto_sans_devanagari", "files/*.ttf"),
    ("fontpkg_noto_sans_thai", "files/*.ttf"),
)

#: Fonts of many scripts that machines have, the broadest first.
PLACES = (
    "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf",
    "/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc",
    "/usr/share/fonts/noto-cjk/NotoSansCJK-Regular.ttc",
    "/usr/share/fonts/truetype/wqy/wqy-microhei.ttc",
    "/System/Library/Fonts/Supplemental/Arial Unicode.ttf",
    "/Library/Fonts/Arial Unicode.ttf",
    "C:/Windows/Fonts/msyh.ttc",
    "C:/Windows/Fonts/msgothic.ttc",
    "C:/Windows/Fonts/malgun.ttf",
    "C:/Windows/Fonts/Nirmala.ttf",
)


#: Words written from the right, with the spaces between them.
FROM_THE_RIGHT = re.compile(r"[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+(?: +[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+)*")
LEFT_TO_RIGHT = "\u200e"


def in_our_order(text: str) -> str:
    """The text with signs that nobody sees, so that a name from the right turns neither the tag before it nor the day behind it around."""
    told = FROM_THE_RIGHT.sub(rf"\g<0>{LEFT_TO_RIGHT}", text)
    return text if told == text else LEFT_TO_RIGHT + told


@lru_cache(maxsize=1)
def folder() -> Path:
    """Where DejaVu Sans lies. matplotlib itself is not loaded."""
    return _package("matplotlib") / "mpl-data" / "fonts" / "ttf"


def regular() -> Path:
    """The font of most text."""
    return folder() / "DejaVuSans.ttf"


def bold() -> Path:
    """The font of tags and heads."""
    return folder() / "DejaVuSans-Bold.ttf"


def others() -> Iterator[Path]:
    """Fonts for what DejaVu lacks, as far as they are there."""
    for package, where in PACKAGES:
        if find_spec(package) is not None:
            yield from sorted(_package(package).glob(where))
    yield from (path for place in PLACES if (path := Path(place)).exists())


def _package(name: str) -> Path:
    found = find_spec(name)
    places = found.submodule_search_locations if found else None
    if not places:
        raise ModuleNotFoundError(name)
    return Path(next(iter(places)))
