"""What a question is about: which of the things that the book can tell."""

from __future__ import annotations

import re
from typing import Final

from core.herd.state import Animal
from core.notes.clauses.clause import Clause
from core.notes.slots.items import breed_said

#: Small verbs that begin a question to be answered with yes or no.
ASKING: Final = frozenset({"is", "are", "did", "has", "was", "were", "does", "will", "have", "can", "should", "would", "could"})
EATING: Final = frozenset({"eat", "eats", "eating", "fed", "get", "gets"})
#: What asks whether an animal may be eaten; of kits without a tag no card tells.
ASKS_TO_EAT: Final = re.compile(
    r"^(?!.*\b(?:kits?|litters?|babies|bunnies|feed)\b).*(?:\bwithdraw(?:al|als|l)?\b|\b(?:i|we|you|anyone|anybody|someone|somebody) eat\b|\bbe eaten\b"
    r"|\b(?:safe|ok|okay|fit|fine|good) to (?:be )?(?:eat|butcher|slaughter|process)\w*)",
    re.IGNORECASE,
)
#: What may have befallen an animal: of anything else (`is Juno allergic to cats`) the book knows nothing.
BEFALL: Final = frozenset(
    """kindle had wean breed palpate treat drug weigh sell cull move box die dead lose pregnant open ail tag show condition fault bite refuse miss
    count give foster feed ration kits litter born""".split()  # noqa: SIM905 - a table of words
)
LONGEST_ASKED: Final = 8  # not a figure: items
SCOPES: Final = {"bucks_word": "bucks", "does_word": "does", "scope:grow-outs": "grow-outs", "scope:all": "all"}
SEXES: Final = {"scope:bucks": "bucks", "scope:does": "does", "buck_word": "bucks", "doe_word": "does"}
#: What sets all of a sex side by side, and what asks who comes out ahead.
RANKS: Final = frozenset({"compare", "rank"})
WHICH: Final = ("which", "who", "whose", "what")
PARENTS: Final = {word: kin for kin, said in (("sire", "sire father dad daddy"), ("dam", "dam mother mom mama")) for word in said.split()}
#: The order in which a question's words are weighed: the narrow before the broad.
ORDER: Final = (
    "digest", "what_if", "help", "why", "compare", "pedigree", "picture", "flags", "journal", "due", "sales", "count",
    "open", "weights", "litters", "keep", "feed", "winter", "pair", "card",
)  # fmt: skip


def asked_about(c: Clause, places: list[int]) -> str | None:
    """What is asked, by the words that can mean nothing else first; None where it is no question for the book."""
    asked = {mark.removeprefix("ask:") for item in c.items for mark in item.marks if mark.startswith("ask:")}
    sexes = {animal.sex for i in places if (animal := c.known(i))}
    if _asks_to_eat(c, places):
        return "card"
    if c.has("open") and c.has("question") and not places:
        asked.add("open")
    if not places and c.has("breed") and c.has("negation") and any(item.said.startswith(("who", "which")) for item in c.items[:2]):
        return "open"  # "who hasn't been bred yet"
    if not places and c.has("plan:breed") and c.has("question") and c.said(c.opening() or 0).startswith(("who", "which")):
        return "pair"  # "who should I breed next"
    if c.says(EATING) and c.said(c.opening() or 0) in {"what", "how much"}:
        return "feed"
    if c.has("breed", "plan:breed") and c.has("question") and places and not c.has("ask:due", "ask:why") and "side by side" not in c.text():
        return "card" if c.said(c.opening() or 0).startswith("when") and len(places) == 1 else "pair"  # "when was 14 bred"
    if c.said(c.opening() or 0) in {"is", "are"} and places and c.has("open", "pregnant", "breed"):
        return "open" if c.has("open") else "card"
    if places and c.has("show_me") and any(item.said == "growing" for item in c.items):
        return "picture"
    if c.has("ask:herd") and len(c.items) <= 2 and not places:
        return "count"
    if not places and _lines_up(c):
        return "compare"
    for about in ORDER:
        if about in asked and _fits(c, about, places, sexes):
            return about
    if len(places) >= 2 and {"doe", "buck"} <= sexes:
        return "pair"
    opening = c.opening() or 0
    if (places or _of_her(c)) and c.said(opening) in ASKING and c.said(opening + 1) != "you":
        return _asked_outright(c)
    return "card" if (places or _of_her(c)) and c.has("question", "show_me") and len(c.items) <= 6 else None


def _asks_to_eat(c: Clause, places: list[int]) -> bool:
    """`is Hank safe to eat`, `can we eat 31`, `withdrawal`, `who is in withdrawal`."""
    if c.sorted_as("span", "dose") or not ASKS_TO_EAT.search(c.text()):
        return False
    return bool(places) or _of_her(c) or c.has("withdrawal")


def _asked_outright(c: Clause) -> str | None:
    """`did 14 kindle?`, `has Moss been wormed?`: what one card or list answers; nothing where it is no short question."""
    if c.says({"have"}) and c.says({"them"}):
        return "litters"  # "did 14 have them?"
    if c.marks.isdisjoint(BEFALL) or len([item for item in c.items if item.sort not in {"mark", "break"}]) > LONGEST_ASKED:
        return None
    return "litters" if c.has("kindle", "had", "wean") else "card"


def _of_her(c: Clause) -> bool:
    """`how is she`, where an animal was spoken of."""
    return any(item.said in {"she", "he", "her", "him"} for item in c.items) and c.spoken_of() is not None


def _fits(c: Clause, about: str, places: list[int], sexes: set[str | None]) -> bool:
    """Whether a word of the question, such as `or` or `with`, means what it usually asks."""
    if about == "compare":
        if parent_asked_of(c, places) is not None:
            return True
        return len(places) >= 2 and not (
            not any(word in c.text() for word in ("better", "compare", "side by side")) and {"doe", "buck"} <= sexes
        )
    if about == "pair":
        return (len(places) >= 2 and {"doe", "buck"} <= sexes) or any(c.said(i) in {"pair", "pairing"} for i in range(len(c.items)))
    if about == "journal" and any(item.said == "going on" for item in c.items):
        return not c.has("open", *(f"ask:{other}" for other in ORDER if other != about))
    if about == "open":
        return not places or len(c.items) <= 3
    if about == "card":
        return bool(places) or _of_her(c) or asks_for_paper(c)
    if about == "digest":
        return not places and len(c.items) <= 4 and not c.dates()
    if about == "due":
        return not c.has("ask:why") and (any(word in c.text() for word in ("due", "do", "chore", "calendar", "ics")) or not places)
    if about == "count":
        return not (places and _counts_litters(c))
    if about == "litters":
        return not c.has("ask:count") or not places or _counts_litters(c)
    if about == "weights":
        return c.has("weigh") or "weigh" in c.text() or "growth" in c.text() or "gaining" in c.text() or "heavy" in c.text()
    return True


def _counts_litters(c: Clause) -> bool:
    """`how many litters has Sorrel had`: her litters, not her kits."""
    return any(c.said(i) == "litters" and c.said(i - 1) == "how many" for i in range(1, len(c.items)))


def asks_for_paper(c: Clause) -> bool:
    """`cage cards for the does`, `print cards`: a paper, and no talk of one."""
    return c.said(c.opening() or 0).startswith(("cage card", "print")) or ("cage card" in c.text() and c.has("show_me", "question"))


def _lines_up(c: Clause) -> bool:
    """`compare the bucks`, `which doe is best`: all of a sex or a breed, none by name."""
    opening = c.said(c.opening() or 0)
    asked = opening in RANKS or (opening.startswith(WHICH) and c.has("ask:best", "ask:compare"))
    return asked and (c.has(*SCOPES, *SEXES) or any(breed_said(item) for item in c.items))


def parent_asked_of(c: Clause, places: list[int]) -> Animal | None:
    """`is 7 better than his sire`: the parent of the one animal spoken of, as the book knows it."""
    kin = next((PARENTS[word] for item in c.items if (word := item.said.rpartition(" ")[2]) in PARENTS), None)
    if kin is None or len(places) > 1:
        return None
    mention = c.mention(places[0]) if places else c.spoken_of()
    animal = c.herd.find(mention.tag) if mention is not None and mention.tag else None
    parent = getattr(animal, kin) if animal is not None else None
    return c.herd.animals.get(parent) if parent else None
