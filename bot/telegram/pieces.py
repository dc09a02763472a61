"""Long answers in several messages: the service takes only so much in one."""

from __future__ import annotations

from itertools import accumulate

#: What goes into one message, in the service's own count: UTF-16 units. Its limit is 4096 [D: Bot API, sendMessage]; the rest is air.
LONGEST = 3900


def length(text: str) -> int:
    """How long the service thinks the text is: most emoji count as two."""
    return len(text.encode("utf-16-le", "surrogatepass")) // 2


def pieces(text: str, longest: int = LONGEST) -> tuple[str, ...]:
    """The text cut at line ends; a line that is too long by itself is cut at a space, or where it must be."""
    found: list[str] = []
    piece = ""
    for line in (part for whole in text.split("\n") for part in _short_lines(whole, longest)):
        joined = f"{piece}\n{line}" if piece else line
        if length(joined) <= longest:
            piece = joined
            continue
        found.append(piece)
        piece = line
    return tuple(part for part in (*found, piece) if part.strip())


def _short_lines(line: str, longest: int) -> list[str]:
    """The line in parts that fit, one after the other."""
    parts = []
    while length(line) > longest:
        cut = _fitting(line, longest)
        at = line.rfind(" ", 0, cut) + 1 or cut
        parts.append(line[:at].rstrip())
        line = line[at:].lstrip()
    return [*parts, line]


def _fitting(line: str, longest: int) -> int:
    """How many characters fit of a line that is too long."""
    units = accumulate(length(letter) for letter in line)
    return next(place for place, used in enumerate(units) if used > longest)
