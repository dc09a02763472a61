"""All kinds against the examples and counter-examples of all others: a kind must not take what another kind's words say."""

from __future__ import annotations

import pytest

from core.notes.kinds import KIND_OF
from tests.core.notes.kinds.reads import AT, farm

#: A kind's counter-example is mostly a plain note of a kind that looks like it. Behind each kind stand the kinds that its counter-examples
#: really are; a fact of any other kind has been read into words that don't say it. A remark is always allowed, as it records nothing.
#: What is an example of a kind as well needs no entry.
REALLY: dict[str, str] = {
    # Births and what they look like: mating, felt, missed, the box and the nest around them, and the kits counted, lost and moved.
    "bred": "palpated planned query",
    "refused": "bred",
    "palpated": "bred",
    "nest_box": "kit_count kits_lost moved nest_manners",
    "nest_manners": "kits_lost nest_box",
    "kindled": "query ration weighed",
    "fostered": "bred given_away moved",
    "kit_count": "ailment fault kits_lost query",
    "weaned": "kindled",
    "litter_colors": "color kit_count",
    "litter_weighed": "weighed",
    # Numbers that are a weight, a score, feed or money.
    "weighed": "feed_left litter_weighed ration scored",
    "condition": "scored weighed",
    "scored": "condition sold weighed",
    "ration": "feed_bought feed_left treated",
    "feed_bought": "animal feed_left setting",
    "feed_left": "ailment feed_bought kit_count",
    "setting": "done planned weather",
    # Health and looks.
    "temper": "ailment for_sale",
    "ailment": "treated",
    "treated": "given_away ration",
    "fault": "ailment scored",
    "color": "animal done litter_colors",
    "weather": "kits_lost ration",
    # Comings and goings.
    "animal": "kindled sold",
    "tagged": "animal",
    "moved": "bred fostered",
    "died": "kits_lost nest_manners",
    "shown": "query",
    "sold": "feed_bought for_sale planned query",
    "for_sale": "query sold",
    "culled": "planned query",
    "given_away": "fostered planned ration temper treated",
    # Plans, chores and talk.
    "planned": "query",
    "remind": "done planned",
    "done": "remind",
    "skipped": "done missed",
    "query": "kindled remind weighed",
    "undo": "kindled",
    "remark": "kindled undo weighed",
}


#: How many entries may be left over when a counter-example goes.
IN_VAIN = 5
#: The kinds that the examples say their texts are.
SAID: dict[str, set[str]] = {}
for _kind in KIND_OF.values():
    for _example in _kind.examples:
        SAID.setdefault(_example.text, set()).update({_kind.name, *(fact.get("kind", _kind.name) for fact in _example.facts)})


def allowed(text: str, owner: str) -> set[str]:
    """The kinds that a counter-example of one kind may be."""
    return {"remark", *REALLY.get(owner, "").split(), *SAID.get(text, ())}


@pytest.fixture(scope="module")
def given() -> dict[str, set[str]]:
    """The kinds of facts that each text gives on the sample farm, read once for all kinds."""
    texts = {*SAID, *(text for kind in KIND_OF.values() for text in kind.not_this)}
    return {text: {fact["kind"] for fact in farm().read(text, AT)["facts"]} for text in texts}


@pytest.mark.parametrize("kind", KIND_OF)
def test_a_kind_takes_nothing_of_another(given: dict[str, set[str]], kind: str) -> None:
    """No example or counter-example of another kind becomes a fact of this one, unless the example or the list says so."""
    taken = [text for text, said in SAID.items() if kind in given[text] - said - {"remark"}]
    counter = [(other.name, text) for other in KIND_OF.values() if other.name != kind for text in other.not_this]
    taken += [text for owner, text in counter if kind in given[text] - allowed(text, owner)]
    assert taken == [], f"read as {kind}; where that is right, REALLY says so"


def test_few_kinds_are_allowed_in_vain(given: dict[str, set[str]]) -> None:
    """The list doesn't grow quietly wide: hardly an entry outlives the counter-example that needed it."""
    needed = {(kind.name, found) for kind in KIND_OF.values() for text in kind.not_this for found in given[text] - SAID.get(text, set())}
    vain = [entry for owner, kinds in REALLY.items() for entry in ((owner, kind) for kind in kinds.split()) if entry not in needed]
    assert len(vain) <= IN_VAIN, f"take these out of REALLY: {vain}"
