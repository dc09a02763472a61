"""A till receipt sent as a message: its feed is bought, the rest is asked about."""

from __future__ import annotations

from typing import Any

import pytest

from tests.core.notes.kinds.reads import fact, read

HEAD = "VALLEY FARM SUPPLY\n"
TAIL = "\nSUBTOTAL 61.98\nTAX 4.34\nTOTAL 66.32"

RECEIPTS: list[tuple[str, list[dict[str, Any]], str]] = [
    (
        "11/20/2026\nRABBIT PELLETS 50 LB 18.50\nT POST 6FT 4.98",
        [fact("feed_bought", on="2026-11-20", grams=22680, bags=1, price="18.50")],
        "what",
    ),
    (
        "11/20/26\nRABBIT PELLETS 50 LB 2 @ 18.50 37.00\nT POST 6FT 4.98",
        [fact("feed_bought", on="2026-11-20", grams=45359, bags=2, price="37.00")],
        "what",
    ),
    ("RABBIT PELLETS 50 LB 2 @ 18.50\nT POST 6FT 4.98", [fact("feed_bought", grams=45359, bags=2, price="37.00")], "what"),
    ("RABBIT FEED 2 @ 18.50 40.00\nT POST 6FT 4.98", [], "what"),
    ("RABBIT FEED 18.50\nT POST 6FT 4.98", [fact("feed_bought", bags=1, price="18.50")], "what"),
    ("13/45/2026\nRABBIT PELLETS 50 LB 18.50\nT POST 6FT 4.98", [], "when"),
    ("12/24/2026\nRABBIT PELLETS 50 LB 18.50\nT POST 6FT 4.98", [], "when"),
    ("T POST 6FT 4.98\nGATE HOOK 2.49", [], "what"),
]


@pytest.mark.parametrize(("lines", "facts", "why"), RECEIPTS, ids=[lines.replace("\n", " / ") for lines, _, _ in RECEIPTS])
def test_a_receipt_gives_its_feed(lines: str, facts: list[dict[str, Any]], why: str) -> None:
    """The bags, the weight and the price where they agree, on the day of the receipt; never a total."""
    assert read(HEAD + lines + TAIL) == (facts, why)
