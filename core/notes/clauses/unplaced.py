"""The questions about words that a statement says beside its facts: too many numbers, two days, a verb that no reading knows, a tag heard twice."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need
from core.notes.fact import field_names
from core.notes.grammar import FIGURES, KIND_CUES
from core.notes.kinds.remark import Remark
from core.notes.slots.items import Item


def too_much(clause: Clause) -> Found:
    """The question about more numbers than one statement tells, or more statements than one message."""
    said = " ".join(item.said for item in clause.items if item.sort != "break")[:40].strip()
    text = f"That is more than I can take in at once. Please send the rest again from \u201c{said}\u201d on."
    if not clause.beyond:
        text = f"There are too many numbers behind \u201c{said}\u201d for one sentence. Please send them again, one animal a line."
    return Found(Remark, {"text": clause.text(), "on": clause.today}, list(clause.items), Need("what", "", text))


def animal_about(clause: Clause) -> str | None:
    """The animal that a sentence is about; of a doe and her buck the doe."""
    if clause.has("breed", "plan:breed"):
        does = [i for i in (*clause.sorted_as("animal"), *clause.tags()) if (animal := clause.known(i)) is not None and animal.sex == "doe"]
        if len(does) == 1 and (mention := clause.mention(does[0])) is not None:
            return mention.tag
    for i in clause.sorted_as("animal"):
        mention = clause.mention(i)
        if mention and mention.tag:
            return mention.tag
    opening = clause.opening()
    others = clause.each("other_species")
    if opening is not None and clause.known(opening) and not clause.counted(opening) and (not others or others[0] > opening + FAR):
        mention = clause.mention(opening)
        return mention.tag if mention else None
    lone = [i for i in clause.sorted_as("num") if clause.known(i) and not clause.counted(i) and i and clause.items[i - 1].sort == "word"]
    led = clause.led() if len(lone) != 1 else lone[0]
    mention = clause.mention(led) if led is not None and not clause.has("other_species") else None
    return mention.tag if mention else None


FAR: Final = 4  # not a figure: items: an animal of another kind behind as many is none of hers
#: Verbs that no reading of their own statement may pass over.
VERBS: Final = frozenset({"weigh", "lose", "die", "sell", "cull", "wean", "kindle", "foster", "palpate", "treat", "tag", "list"})
#: Kinds that may stand beside such a verb of another kind.
BESIDE_VERB: Final = frozenset(
    {("weigh", "litter_weighed"), ("list", "sold"), ("weigh", "culled"), ("weigh", "condition"), ("treat", "ailment")}
)
#: What an animal loses and lives on.
NO_LIVES: Final = frozenset({"weight", "condition", "fur", "appetite", "interest"})


def which_day(clause: Clause, found: Found, left: list[Item]) -> Need:
    """The question which of several days is meant."""
    days = [clause.items[i].said for i in range(len(clause.items)) if clause.items[i].sort == "date"] or [item.said for item in left]
    said = " and ".join(f"\u201c{day}\u201d" for day in days[:3])
    wanted = "on" if len(left) == 1 and any(names.json == "on" for names in field_names(found.fact)) else ""
    return Need("when", wanted, f"I can't make one day of {said}. Which day is it? For example: yesterday, or 24 nov.")


def unknown_verb(verb: str) -> Need:
    """The question about a verb of the barn that no reading beside it knows."""
    return Need("what", "", f"I can't place \u201c{verb}\u201d in that note. Please send it again in other words, one thing at a time.")


def unplaced(left: list[Item]) -> Need:
    """The question about words and numbers that no reading beside them explains."""
    text = f"I can't place {_quoted(left)} in that note. Please send it again in other words, one thing at a time."
    return Need("which_number" if left[0].sort in FIGURES else "what", "", text)


def what_they_mean(clause: Clause, left: list[Item]) -> tuple[Found, Need]:
    """The question about numbers of a statement from which nothing was read, and what it is asked of."""
    text = f"What does {_quoted(left)} mean? Please send that part again with a verb, for example \u201cweighed 31 4-6\u201d."
    return Found(Remark, {"text": clause.text(), "on": clause.today}), Need("what", "", text)


def _quoted(left: list[Item]) -> str:
    return ", ".join(f"\u201c{item.said}\u201d" for item in left[:3])


def unread_verb(clause: Clause) -> str:
    """A verb of the barn in the statement that none of its readings knows; empty where there is none."""
    if clause.marks.isdisjoint(VERBS):
        return ""
    kinds = [found.fact.kind for found in clause.found]
    for i, item in enumerate(clause.items):
        marks = item.marks & VERBS
        if (
            marks
            and clause.said(i - 1) not in {"no", "none"}
            and clause.said(i + 1) not in NO_LIVES
            and id(item) not in clause.used
            and all(item.marks.isdisjoint(KIND_CUES.get(kind, frozenset())) for kind in kinds)
            and not any((mark, kind) in BESIDE_VERB for mark in marks for kind in kinds)
        ):
            return item.said
    return ""


def misheard(found: Found) -> Need | None:
    """A tag in words that another living animal's would sound like: asked before an animal is taken off the book, or weighed."""
    mention = found.said
    if mention is None or not mention.others or mention.exact:
        return None
    choices = (*mention.tags, *mention.others)
    if found.fact.kind in {"died", "sold", "culled", "given_away"}:
        return Need("confirm", "litter_of" if "litter_of" in found.values else "who", f"Did you say {' or '.join(choices)}?", choices)
    if found.fact.kind == "weighed":
        return Need("which_animal", "who", f"Did you say {' or '.join(choices)}?", choices)
    return None
