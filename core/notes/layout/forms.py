"""A purchase of feed as a form, a label and a value a line: told as one sentence.

Feed
Bags bought: 5
Weight: 50 lb each
Paid: $95.00 in all         reads as `bought 5 bags of feed, 50 lb each, $95.00 in all`
"""

from __future__ import annotations

import re
from typing import Final

_HEAD: Final = re.compile(r"(?:rabbit )?(?:feed|pellets)(?: (?:bought|purchased?|bill|record|log|run))?:?", re.IGNORECASE)
_LABELS: Final = {
    "bags": re.compile(r"(?:(?:feed )?(?:bags?|sacks?)(?: of feed)?(?: bought| purchased)?|bought|quantity|qty)", re.IGNORECASE),
    "weight": re.compile(r"(?:bag |sack )?(?:weight|size)(?: (?:each|(?:per|a) bag))?", re.IGNORECASE),
    "price": re.compile(r"(?:paid|price|cost|total)", re.IGNORECASE),
    "each": re.compile(r"(?:price|cost|paid) (?:each|(?:per|a) bag)|(?:per|a) bag|each", re.IGNORECASE),
    "on": re.compile(r"(?:date|day|bought on)", re.IGNORECASE),
}
_LINE: Final = re.compile(r"[-+*]?\s*([a-z ]+?)\s*[:=]\s*(\S.*)", re.IGNORECASE)


def feed_form(text: str) -> str | None:
    """The form as a sentence; None where a line is none of a feed purchase's, or the bags are missing."""
    head, *lines = [line.strip() for line in text.split("\n") if line.strip()]
    if not lines or not _HEAD.fullmatch(head):
        return None
    said: dict[str, str] = {}
    for line in lines:
        found = _LINE.fullmatch(line)
        name = next((name for name, label in _LABELS.items() if found and label.fullmatch(found[1])), None)
        if found is None or name is None or name in said:
            return None
        said[name] = found[2]
    if "bags" not in said:
        return None
    weight = said.get("weight", "")
    parts = [
        f"bought {said['bags'].split(' ')[0]} bags of feed",
        weight and f"{weight.removesuffix(' each')} each",
        said.get("price", ""),
        said.get("each") and f"{said['each']} each",
    ]
    day = f"{said['on']}: " if "on" in said else ""
    return day + ", ".join(part for part in parts if part)
