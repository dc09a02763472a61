"""Whether a message asks something: a question mark, a question word first, or a terse word that only asks (`why 14`, `ped 7`)."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.asked_about import ASKING, ASKS_TO_EAT
from core.notes.clauses.clause import Clause
from core.notes.grammar import ENDS, FIGURES, LEAST_BEFORE, OPENS
from core.notes.kinds import query
from core.notes.slots.items import Item, marks_of

#: Between the two of a pair that is only spoken of.
PAIRING: Final = frozenset({"by", "x", "with", "to", "and", "on", "over", "the", "so", "okay", "ok", "um", "cross", "pair"})
ASKED_ONES: Final = frozenset({"you", "we", "they", "i", "she", "he"})
RHETORICAL: Final = (
    "would you believe",
    "can you believe",
    "could you believe",
    "do you believe",
    "wouldn't you know",
    "wouldnt you know",
    "guess what",
    "guess who",
    "did i ever tell you",
    "have i ever told you",
)
PRONOUN_SEX: Final = {
    "he": "buck",
    "hes": "buck",
    "he's": "buck",
    "him": "buck",
    "his": "buck",
    "she": "doe",
    "shes": "doe",
    "she's": "doe",
    "her": "doe",
}
ASKS: Final = frozenset(mark for mark in query.CUES if mark.startswith("ask:"))
MARKS_OF_QUESTION: Final = ASKS | {"question"}
OUTRIGHT: Final = MARKS_OF_QUESTION | {"show_me"}
WEIGHTS_OF: Final = frozenset({"weights", "weights for", "wts", "weights on", "weights of"})
#: Words that ask at the head of a message, and tell as often.
HALF_ASKING: Final = frozenset({"any", "list", "who", "see"})
#: Words without such a mark that may begin a question.
ASKING_FIRST: Final = frozenset(ASKING) | WEIGHTS_OF | HALF_ASKING
#: Alone they ask who may not be eaten; beside anything else they tell of a medicine.
HELD_FROM_TABLE: Final = frozenset({"withdrawal", "withdrawals", "withdrawl"})
#: Words that ask where nothing is said beside them.
ASKING_ALONE: Final = frozenset({"keep", "keeping", "cull", "litter", "weigh", "weighed", "weight", "total", "count", "feed", "pellets", "sold", "mate", "x", "or", "with", "better", "winter"})  # fmt: skip
#: Words that ask where at most one animal is named and nothing told of it.
ASKING_OF_ONE: Final = frozenset({"weights", "litters", "open", "notes", "sales", "breed to", "bred to", "who"})
PLACES_OF_QUESTION: Final = 12  # not a figure: items: a longer message is more than a question or a correction


def asks_outright(whole: Clause) -> bool:
    """Whether the first word can only begin a question."""
    opening = whole.opening()
    if opening is not None and _asked_of(whole, opening):
        return True
    return opening is not None and whole.said(opening).replace("'", "") in {
        "who",
        "whos",
        "what",
        "whats",
        "which",
        "when",
        "where",
        "why",
        "how",
        "hows",
        "how many",
        "how much",
    }


def is_question(whole: Clause, text: str) -> bool:
    """A question mark, a question word first, or a terse word that only asks (`why 14`, `ped 7`)."""
    opening = whole.opening()
    if opening is None or _names_something(whole, opening):
        return False
    first = whole.items[opening]
    if len(whole.items) == 1 and first.said in HELD_FROM_TABLE:
        return True
    asking = not first.marks.isdisjoint(OUTRIGHT)
    if (
        not asking
        and "?" not in text
        and first.said not in ASKING_FIRST
        and "question" not in whole.marks
        and len(whole.items) > LEAST_BEFORE
    ):
        return False
    if text.lower().startswith(RHETORICAL) or _exclaims(whole, opening, text) or _felt_doubtful(whole):
        return False
    if text.rstrip(" !.").endswith("?") or ("?" in text and asking):
        return True
    if first.marks & {"question", "show_me"} and first.said not in HALF_ASKING:
        return len(whole.items) <= PLACES_OF_QUESTION * 2 and not whole.sorted_as("weight", "pair", "money")
    if first.said == "who" and opening + 1 < len(whole.items) and not whole.items[opening + 1].marks.isdisjoint({"question", "negation"}):
        return True  # "who should i breed next", "who hasn't been bred yet"
    if _asked_of(whole, opening) or _versus(whole) or _named_last(whole, opening) or _opinion_asked(whole) or _weights_of_one(whole, first):
        return True
    return _tersely_asked(whole, opening)


def _names_something(whole: Clause, opening: int) -> bool:
    """Whether the first word, which asks elsewhere, is the name of a thing here."""
    first = whole.items[opening]
    if first.said == "pair" and whole.said(opening + 1) == "of":
        return True  # "pair of does for sale, 9 and 22"
    if first.said == "show":
        if first.start > 0 and whole.items[0] is not first and whole.said(opening - 1) in {"the", "a"}:
            return True
        behind = opening + 1 + (whole.said(opening + 1) in {"of", "on", ","})
        return whole.said(opening + 1) == ":" or (behind < len(whole.items) and whole.items[behind].sort == "date")  # "show 14 Nov: ..."
    return (
        not first.marks.isdisjoint(ASKS) and opening + 2 < len(whole.items) and whole.said(opening + 2) == ":"
    )  # "to do 1 Dec: trim nails"


def _weights_of_one(whole: Clause, first: Item) -> bool:
    """`weights for 14`: one animal, and no weight of it told."""
    return (
        first.said in WEIGHTS_OF
        and not whole.sorted_as("weight", "pair", "clock", "cup")
        and len(whole.sorted_as("num")) + len(whole.explicit()) == 1
    )


def _tersely_asked(whole: Clause, opening: int) -> bool:
    """`why 14`, `ped 7`, `due`: a word that only asks, and nothing told behind it."""
    first = whole.items[opening]
    if first.said in {"for sale", "sales"} and whole.holds("num"):
        return False  # "for sale 3 of 16's 25 each"
    if whole.holds("break") and whole.holds("num", "money"):
        return False  # a page with a heading such as "Feed bill"
    asks = not first.marks.isdisjoint(ASKS) or first.said in HALF_ASKING
    if not asks or len(whole.items) > PLACES_OF_QUESTION or whole.sorted_as("weight", "pair", "money", "cup", "dose", "temp"):
        return False
    if first.said in {"list", "see"} and (whole.said(opening + 1) in PRONOUN_SEX or any(whole.known(i) for i in range(len(whole.items)))):
        return False
    return not _told_behind(whole, opening) and _only_asks(whole)


def _told_behind(whole: Clause, opening: int) -> bool:
    """`last night's chores. 14 kindled 8`: the word heads a sentence that tells something with its number."""
    end = next((i for i in range(opening + 1, len(whole.items)) if whole.said(i) in ENDS | {":"} or whole.items[i].sort == "break"), None)
    if end is None:
        return False
    rest = whole.items[end:]
    return not marks_of(rest).isdisjoint(OPENS) and not FIGURES.isdisjoint([item.sort for item in rest])


def _exclaims(whole: Clause, opening: int, text: str) -> bool:
    """`what a doe`, `how 14 loves hay`, `when 14 kindles, box in 9`: words that lead a question, and ask nothing."""
    first, following = whole.said(opening), whole.said(opening + 1)
    if "?" in text or first not in {"what", "how", "when", "where"}:
        return False
    if first == "what":
        return following in {"a", "an"}
    if whole.known(opening + 1) is None:
        return False
    return first != "when" or any(item.said == "," or "pronoun" in item.marks for item in whole.items[opening + 2 :])


def _felt_doubtful(whole: Clause) -> bool:
    """`palp 22 ?`: the mark tells how she felt."""
    if "palpate" not in whole.marks:
        return False
    words = [item for item in whole.items if item.sort == "word"]
    return len(words) == 1 and "palpate" in words[0].marks and len(whole.sorted_as("animal", "num")) == 1


def _asked_of(whole: Clause, opening: int) -> bool:
    """`is Juno due yet`, `did 14 kindle`: a small verb first, then an animal."""
    following = opening + 1
    if whole.said(opening) not in ASKING:
        return False
    behind = whole.items[following + 1 : following + 2]
    if whole.said(opening) == "did" and (not behind or behind[0].sort in {"date", "mark"}) and whole.items[-1].said != "?":
        return False  # "did R22 today": what was to be done to it
    if whole.said(following) in {"it", "anybody", "anyone"} and ASKS_TO_EAT.search(whole.text()):
        return len(whole.items) <= PLACES_OF_QUESTION
    if whole.said(following) not in ASKED_ONES and (whole.known(following) is None or whole.items[following].unit == "possessive"):
        return False
    if whole.said(opening) in {"did", "does", "is", "has", "will"}:
        return len(whole.items) <= PLACES_OF_QUESTION
    return not whole.sorted_as("weight", "pair", "money", "cup", "dose") and len(whole.items) <= PLACES_OF_QUESTION


def _named_last(whole: Clause, opening: int) -> bool:
    """`14 card`, `7 ped`."""
    return (
        len(whole.items) <= 3
        and bool(whole.items[-1].marks & {"ask:card", "ask:pedigree", "ask:flags", "ask:picture"})
        and whole.known(opening) is not None
    )


def _opinion_asked(whole: Clause) -> bool:
    """`15 by Flint what do you think`: a pair, and behind it a question about the two; no deed is told."""
    if "question" not in whole.marks or not any(word == "you" or word.endswith(" you") for word in whole.words()):
        return False
    asked = next((i for i, item in enumerate(whole.items) if "question" in item.marks), 0)
    if (
        not asked
        or whole.said(asked) not in {"what", "would you", "do you", "how"}
        or not any(item.said == "you" or item.said.endswith(" you") for item in whole.items[asked:])
    ):
        return False
    head = Clause(whole.items[:asked], whole.scene)
    animals = [animal for i in range(asked) if (animal := head.known(i)) is not None]
    rest = [item for i, item in enumerate(head.items) if head.known(i) is None]
    return {animal.sex for animal in animals} == {"doe", "buck"} and all(item.said in PAIRING or item.sort == "mark" for item in rest)


def _versus(whole: Clause) -> bool:
    """`14 vs 9`, and nothing else."""
    return len(whole.items) == 3 and whole.said(1) in {"vs", "versus", "or"} and whole.known(0) is not None and whole.known(2) is not None


def _only_asks(whole: Clause) -> bool:
    """Whether a message that begins with a word such as `due` or `compare` says nothing but what it asks about."""
    first = whole.items[whole.opening() or 0].said
    if first in ASKING_ALONE:
        return len(whole.items) == 1
    if first not in ASKING_OF_ONE:
        return True
    named = sum(1 for i in range(len(whole.items)) if whole.known(i) is not None)
    return (
        all(item.sort in {"animal", "num", "date", "mark", "span"} or item.marks for item in whole.items[1:])
        and named <= 1
        and not whole.has("alive", "dead", "lose")
    )
