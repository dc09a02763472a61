"""All documents can be written as JSON: no infinite number, no value that JSON doesn't know."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from core.herd.state import Herd
from core.reports.card import card
from core.reports.compare import compare
from core.reports.digest import digest
from core.reports.due import due
from core.reports.feed import feed
from core.reports.herd_document import herd_document
from core.reports.keep_or_cull import keep_or_cull
from core.reports.pairing import pairing
from core.reports.why import why
from tests.core.reports.season import END, season

HERD = season(5, (("New Zealand", 2, 4), ("Mini Rex", 2, 3))).herd
DOE, BUCK = HERD.animals["103"], HERD.animals["101"]

DOCUMENTS: dict[str, Callable[[Herd], dict[str, Any]]] = {
    "due": lambda herd: due(herd, END, 60).document(),
    "digest": lambda herd: digest(herd, END).document(),
    "keep": lambda herd: keep_or_cull(herd, END).document(),
    "herd": lambda herd: herd_document(herd, END).document(),
    "card": lambda herd: card(herd, END, DOE).document(),
    "why": lambda herd: why(herd, END, DOE).document(),
    "pair": lambda herd: pairing(herd, END, DOE, BUCK).document(),
    "compare": lambda herd: compare(herd, END, DOE, BUCK).document(),
    "feed": lambda herd: feed(herd, END).document(),
}


@pytest.mark.parametrize("name", DOCUMENTS)
def test_document_is_plain_json(name: str) -> None:
    """Written and read back, a document is the same."""
    told = DOCUMENTS[name](HERD)
    assert json.loads(json.dumps(told, allow_nan=False)) == told


@pytest.mark.parametrize("name", DOCUMENTS)
def test_document_is_the_same_each_time(name: str) -> None:
    """Nothing in a document depends on chance or on what was asked before."""
    again = season(5, (("New Zealand", 2, 4), ("Mini Rex", 2, 3))).herd
    assert json.dumps(DOCUMENTS[name](again)) == json.dumps(DOCUMENTS[name](HERD))
