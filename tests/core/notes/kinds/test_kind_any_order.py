"""Whatever is noted, in whatever order, the book holds: notes may be undone and leave later ones hanging."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from core.herd.calendar import all_chores
from core.herd.litters import alive_now, untagged
from core.herd.questions import stage
from core.herd.state import Herd
from core.notes.fact import Fact
from core.notes.kinds import KIND_OF
from tests.farm import TODAY, small_herd
from tests.strategies import told_facts, written_facts

ANY = st.one_of(told_facts(), *written_facts().values())


def _after(herd: Herd, facts: list[Fact]) -> Herd:
    for fact in facts:
        herd = KIND_OF[fact.kind].apply(fact, herd.on_day(TODAY))
    return herd


@given(st.sampled_from((Herd(), small_herd())), st.lists(ANY, max_size=12))
def test_no_order_raises(start: Herd, facts: list[Fact]) -> None:
    """Every fact can be checked, taken, answered and written, and the calendar asked, after any others."""
    herd = start
    for fact in facts:
        kind = KIND_OF[fact.kind]
        kind.check(fact, herd, TODAY)
        after = kind.apply(fact, herd.on_day(TODAY))
        kind.reply(fact, herd, after)
        kind.show(fact, herd)
        herd = after
    assert all(chore.text and chore.key for chore in all_chores(herd, TODAY))


@given(st.sampled_from((Herd(), small_herd())), st.lists(ANY, max_size=12))
def test_the_book_stays_sound(start: Herd, facts: list[Fact]) -> None:
    """Keys lead to their animals, living tags to living animals, and no nest holds fewer than no kits."""
    herd = _after(start, facts)

    assert all(key == animal.key for key, animal in herd.animals.items())
    assert sorted(herd.living_tags.values()) == sorted(animal.key for animal in herd.animals.values() if animal.living)
    assert all(alive_now(litter) >= 0 and untagged(herd, litter) >= 0 for litter in herd.litters.values())
    assert all(mating.doe in herd.animals and mating.buck in herd.animals for mating in herd.matings)
    assert all(herd.animals[key].litter == litter.key for litter in herd.litters.values() for key in litter.tagged)
    assert all(stage(herd, animal, TODAY) for animal in herd.animals.values())


@given(st.lists(ANY, max_size=6), ANY)
def test_chores_have_one_key_each(facts: list[Fact], last: Fact) -> None:
    """No two open chores share a key."""
    keys = [chore.key for chore in all_chores(_after(small_herd(), [*facts, last]), TODAY)]

    assert len(keys) == len(set(keys))
