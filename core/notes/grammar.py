"""What all kinds know together: their order, the marks that each can begin with, and the one lexicon of their words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

from core.handbook.breeds import breed_words
from core.handbook.colors import color_words
from core.notes.kinds import (
    ailment,
    animal,
    coloring,
    condition,
    correction,
    culling,
    death,
    doing,
    fault,
    feed_left,
    feed_purchase,
    fostering,
    giving,
    kindling,
    kit_count,
    kit_loss,
    listing,
    litter_colors,
    litter_weighing,
    mating,
    miss,
    moving,
    nest_box,
    nest_manners,
    palpation,
    plan,
    query,
    ration,
    refusal,
    remark,
    reminder,
    sale,
    scoring,
    setting,
    showing,
    skipping,
    tagging,
    temper,
    treatment,
    undoing,
    weaning,
    weather,
    weighing,
)
from core.notes.slots.lexicon import Lexicon

#: Kinds in the order in which they may take words: the special before the general.
STATEMENT_KINDS: Final = (
    skipping, nest_manners, refusal, miss, palpation, treatment, animal, tagging, culling, litter_colors, fostering, sale, listing, giving, mating, plan,
    moving, nest_box, weaning, kindling, kit_loss, death, litter_weighing, condition, scoring, ration, feed_purchase, feed_left, weighing,
    kit_count, fault, showing, temper, ailment, weather, coloring, doing,
)  # fmt: skip
ALL: Final = (*STATEMENT_KINDS, undoing, correction, setting, reminder, query, remark)
OPENS: Final = frozenset().union(*(module.OPENS for module in ALL))
#: Marks that a kind's reading can begin with; a kind is asked only where one of them is.
TRIGGERS: Final[Mapping[Any, frozenset[str]]] = {module: frozenset(module.CUES) for module in STATEMENT_KINDS}
#: Mark -> the places of the kinds that know it, a bit each.
BY_MARK: Final[Mapping[str, int]] = {
    mark: sum(1 << place for place, module in enumerate(STATEMENT_KINDS) if mark in TRIGGERS[module])
    for mark in frozenset().union(*TRIGGERS.values())
}
#: The same for kinds that a figure gives without any word of theirs: `31 4-6`, `14 to B3`, `12 6 kits`, `6 live 2 dead`.
BESIDE: Final[Mapping[Any, frozenset[str]]] = {module: getattr(module, "BESIDE", frozenset()) for module in STATEMENT_KINDS}
BY_FIGURE: Final[Mapping[str, int]] = {
    mark: sum(1 << place for place, module in enumerate(STATEMENT_KINDS) if mark in BESIDE[module])
    for mark in frozenset().union(*BESIDE.values())
}
KIND_CUES: Final[Mapping[str, frozenset[str]]] = {module.KIND.name: frozenset(module.CUES) for module in ALL}
PLAIN: Final = frozenset({"word", "mark", "break", "date", "time"})  # items that no kind can begin with when it has no word of its own
LEXICON: Final = Lexicon([*(module.CUES for module in ALL), {"color": " | ".join(color_words()), "breed_name": " | ".join(breed_words())}])
ENDS: Final = frozenset({".", ";", "!", "?"})
LEAST_BEFORE: Final = 3  # not a figure: items: a note before a reminder has more


def kinds_beginning(table: Mapping[str, int], marks: Iterable[str]) -> int:
    """The places of the kinds that one of these marks may begin, a bit each."""
    places = 0
    for mark in marks:
        if mark in table:
            places |= table[mark]
    return places


FIGURES: Final = frozenset({"num", "pair", "weight", "sum"})
