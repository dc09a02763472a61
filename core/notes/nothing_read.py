"""When no kind read anything: the message is kept as a remark, or asked about, where its numbers or animals may be the barn's."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.notes.as_facts import ask_for, kept_as_remark
from core.notes.clauses.clause import Clause
from core.notes.clauses.denied import of_an_earlier_time
from core.notes.clauses.scene import Found, Need, Scene, unknown_animal
from core.notes.clauses.unplaced import animal_about
from core.notes.grammar import FIGURES, OPENS
from core.notes.kinds.moving import Moved
from core.notes.kinds.weighing import Weighed
from core.notes.reading import Ask, Draft, Reading
from core.notes.slots.animals import Mention
from core.notes.slots.common_words import COMMON
from core.notes.slots.items import Item, pair_grams
from core.notes.telling import called
from core.words import weight

TERSE: Final = 12  # not a figure: items: a note so short is told in the barn's own shorthand
TERSE_PLAIN: Final = 3
LIKELY: Final = 3  # not a figure: items: an animal and two more


def nothing_read(clauses: Sequence[Clause], scene: Scene, text: str) -> Reading:
    """No kind read anything: a remark, or the question what was meant."""
    today = scene.today
    items = [item for clause in clauses for item in clause.items if id(item) not in clause.used or item.sort not in FIGURES]
    words = [item for item in items if item.sort == "word"]
    plain = [item for item in words if not item.marks]
    figures = [item for item in items if item.sort not in {"word", "mark", "break", "animal", "code", "date"}]
    animals = [item for item in items if item.sort in {"animal", "code"}]
    who = next((who for clause in clauses if (who := animal_about(clause))), None)
    mention = next((mention for clause in clauses if (mention := _first_mention(clause))), None)
    if len(clauses) == 1 and (likely := _likely(clauses[0])) is not None:
        return likely
    if not words and (figures or animals):
        return _what(items, who, scene)
    if len(clauses) == 1 and (asked := _weight_of_a_stranger(clauses[0])) is not None:
        return asked
    telling = [
        item
        for i, item in enumerate(items)
        if not (item.said == "not" and i and items[i - 1].sort == "num" and (i + 1 == len(items) or items[i + 1].sort == "mark"))
    ]
    kept = any(item.marks & {"tentative", "negation", "other_species", "none"} for item in telling) or any(
        clause.put_off or of_an_earlier_time(clause) for clause in clauses
    )
    if (figures or animals) and len(words) <= 1 and not plain and not kept and not _told_due(items):
        return _what(items, who, scene)
    if not kept and (_barn_numbers(items, plain) or _figures_of(items, plain, figures, who, scene)):
        return _what(items, who, scene)
    if mention is not None and mention.tag is None and mention.tags and not kept:
        need = Need("which_animal", "who", f"Which one do you mean by \u201c{mention.said}\u201d?", mention.tags[:5])
        return Reading((), Ask(need.why, need.text, need.choices, Draft("remark", {"text": text, "on": today.isoformat()}, "who")))
    return kept_as_remark(text, today, who)


def _likely(clause: Clause) -> Reading | None:
    """`biscuit 9 12`, `clover in 4`: what it most likely says, to be said yes to."""
    told = [i for i, item in enumerate(clause.items) if item.sort not in {"mark", "break"}]
    animal = clause.known(told[0]) if len(told) == LIKELY else None
    last = clause.whole(told[-1]) if animal is not None and animal.living else None
    if animal is None or last is None:
        return None
    first, named = clause.whole(told[1]), called(clause.herd, animal.tag)
    if first is not None and clause.items[told[0]].sort == "num":
        return None  # "16 3 2" may tell of a litter as well
    if first is not None and clause.herd.settings.weight_units == "lb" and (grams := pair_grams(first, last)):
        found = Found(Weighed, {"who": animal.tag, "grams": grams, "on": clause.today})
        return _asked(found, f"{named}: {weight(grams)}? Say yes, or send the whole note.")
    if clause.said(told[1]) in {"in", "to", "is in", "now in"} and clause.known(told[-1]) is None:
        found = Found(Moved, {"who": animal.tag, "cage": str(last), "on": clause.today})
        return _asked(found, f"{named}: in cage {last} now? Say yes, or send the whole note.")
    return None


def _asked(found: Found, text: str) -> Reading:
    need = Need("what", "confirm", text, ("yes", "no"))
    return Reading((), ask_for(found, need, ()), "", found.values["who"])


def _weight_of_a_stranger(clause: Clause) -> Reading | None:
    """`Bonnie 4-14`, and nobody of that name: a weight, and the question whose it is."""
    told = [item for item in clause.items if item.sort not in {"mark", "break"}]
    name = told[0].said if told else ""
    if [item.sort for item in told] not in (["word", "pair"], ["word", "weight"]) or told[0].marks or not name.isalpha() or name in COMMON:
        return None
    grams = clause.grams(clause.items.index(told[1]))
    found = Found(Weighed, {"grams": grams, "on": clause.today})
    return Reading((), ask_for(found, unknown_animal(Mention((), name), "who", clause.scene.words), ()))


def _barn_numbers(items: list[Item], plain: list[Item]) -> bool:
    """Whether numbers stand beside words of the barn that no reading could join."""
    marked = any(item.marks & OPENS for item in items)
    numbers = [item for item in items if item.sort in {"num", "weight", "pair", "sum"}]
    animals = any(item.sort in {"animal", "code"} for item in items)
    if any(item.sort == "pair" for item in items) and (marked or animals):
        return True
    return (marked and len(numbers) > 1 and len(plain) <= 3) or (
        (any(item.sort == "pair" for item in items) or (len(numbers) > 2 and any(item.sort == "weight" for item in items)))
        and len(plain) <= 2
    )


def _figures_of(items: list[Item], plain: list[Item], figures: list[Item], who: str | None, scene: Scene) -> bool:
    """Whether a terse note says a number or a day of an animal that no reading could join: better asked than kept as words."""
    if (
        who is None
        or sum(1 for item in items if item.sort not in {"mark", "break"}) > TERSE
        or any(item.said.split(" ")[0] in {"no", "none", "due"} for item in items)
        or any(item.marks & {"question", "alive_and_well"} for item in items)
    ):
        return False
    dated = any(item.sort == "date" and item.value.shape in {"numeric", "day_month", "day", "iso"} for item in items)
    counts = [item for item in figures if item.sort != "span" and not (item.sort == "num" and scene.words.tagged(str(item.value)))]
    return (bool(counts) or dated) and sum(1 for item in plain if len(item.said) > 2) <= TERSE_PLAIN


def _what(items: list[Item], who: str | None, scene: Scene) -> Reading:
    said = " ".join(item.said for item in items[:6])
    text = f"What about \u201c{said}\u201d? Please send a whole note, for example \u201cweighed 31 4-6\u201d or \u201c14 kindled 8, 2 dead\u201d."
    return Reading((), Ask("what", text), "", who or scene.context.subject if who else None)


def _told_due(items: list[Item]) -> bool:
    """`9 due today`: a day that the book knows as well."""
    return any(item.said.startswith("due ") for item in items) or (
        any(item.said == "due" for item in items) and any(item.sort == "date" for item in items)
    )


def _first_mention(clause: Clause) -> Mention | None:
    explicit = clause.explicit()
    return clause.mention(explicit[0]) if explicit else None
