"""What is only wanted, needed, ordered, yet to come or denied: none of it has happened, whatever verb of the barn follows.

`15 needs breeding`, `16 to be weaned`, `31 should weigh 4-6`, `need to foster 2 kits from 12 to 16`, `didn't buy 4 bags`: a remark, and no fact.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found

#: Words before a verb or a figure that leave it undone.
MODALS: Final = frozenset(
    """will|should|should be|shall|could|would|must|must be|need|needs|needing|want|wants|wanted|wanna|gonna|gotta|need to|needs to|want to|wants to
    |wanted to|have to|has to|got to|going to|planning to|planning on|plan to|plan on|time to|lets|let|be|due to be|i want|to|target|goal|i'd|we'd|id|i'll|we'll|she'll|he'll|they'll|it'll|thought|remember|recall|what if|nearly|almost|practically|planning|plans|ideas|heard|dreamt|dreamed"""
    .replace("\n    ", "").split("|")
)  # fmt: skip
#: Behind them an infinitive tells of nothing done: `ready to wean`, `told to foster`, `tried to breed`.
BEFORE_DEED: Final = frozenset(
    """ready told enough due overdue supposed meaning hoping old asked asks says wait waiting forgot afraid about scheduled set hard easy best better how when where whether
    nice like love hate try tried trying me wants want plan plans time remember unable failed waited reason trying soon early late""".split()  # noqa: SIM905 - a table of words
)
#: What somebody says ought to be done is no plan of the speaker's.
ORDERED: Final = frozenset({"told", "me", "says", "asked", "forgot", "remember", "how", "when", "whether", "hate", "afraid", "hard"})
PAST_DUTY: Final = frozenset({"had", "has", "have", "needed", "got", "used", "out", "proved", "seems", "seem", "looks", "appears", "found"})
#: A verb behind `i'd` or `let me` that stays bare.
BARE_VERBS: Final = frozenset(
    """be wean breed rebreed cull sell give treat tag tattoo weigh foster move butcher list palpate kindle box put buy get feed keep show score
    take worm""".split()  # noqa: SIM905 - a table of words
)
#: Behind `could` and `would` they tell of what was so.
PERCEIVED: Final = frozenset({"only", "feel", "find", "see", "count", "hear", "not", "say", "you", "make", "tell", "smell"})
BREAKS: Final = frozenset(
    {",", ".", ";", ":", "but", "and", "so", "because", "cause", "since", "when", "after", "then", "-", "(", ")", "!", "?"}
)
REACH: Final = 6  # not a figure: items: as far as such a word reaches
#: Readings that only tell of what is to come, is wished, or asks; each with the words that leave it, None for all.
_JUDGED: Final = frozenset({"i'd", "we'd", "id"})  # "I'd give her a 4 for type" is a judgement, no wish
_WISHES: Final = frozenset({"need", "needs", "want", "wants", "must", "need to", "must be"})
ALLOWED: Final[Mapping[str, frozenset[str] | None]] = {
    "planned": None,
    "skipped": None,
    "remind": None,
    "setting": None,
    "query": None,
    "weather": None,
    "remark": None,
    "undo": None,
    "correct": None,
    "refused": None,
    "for_sale": _WISHES,
    "ailment": _WISHES | {"heard"},
    "temper": _WISHES | {"heard"},
    "fault": _WISHES,
    "scored": _JUDGED,
    "condition": _JUDGED,
    "palpated": frozenset({"could", "would"}),
    "ration": frozenset({"will", "going to", "gonna", "lets", "let", "have to"}),
}
#: Readings of which a denial is a part.
DENIABLE: Final = frozenset(
    {
        "planned", "skipped", "remind", "setting", "query", "weather", "remark", "undo", "correct", "refused", "missed", "palpated",
        "ailment", "temper", "fault", "for_sale", "kit_count", "kindled", "died",
    }
)  # fmt: skip
LACKING: Final = frozenset({"no_fur", "no_nest"})  # signs that are a denial
#: Between `didn't` or `isn't` and what it denies.
SMALL_BETWEEN: Final = frozenset(
    """a an the any even over under above quite yet at been be all really actually have get gets give given gave buy bought her him more than our my up to
    of in to at on put pee peed ever eat eaten""".split()  # noqa: SIM905 - a table of words
)
NOT_DENIED: Final = frozenset({"only", "just", "bad", "sure", "surprised", "to"})
#: Nouns: no deed stands in them.
NOUNS: Final = frozenset(
    {
        "kits", "litter", "buck_word", "doe_word", "bucks_word", "does_word", "pronoun", "to", "from", "each", "all", "box", "modal",
        "cage_word",
    }
)  # fmt: skip
KITS: Final = frozenset({"kits", "litter"})
CONDITION: Final = frozenset({"if", "unless"})
#: Before `if` they make a question of it, no condition.
BEFORE_WHETHER: Final = frozenset(
    """see seeing check checking checked know knows wonder wondering wondered ask asked asks sure idk tell tells find out what as even say says said
    only""".split()  # noqa: SIM905 - a table of words
)
#: Behind `if` they only hedge: `if you ask me`, `if memory serves`.
HEDGED: Final = frozenset({"you", "memory", "anything", "anyone", "anybody", "that's", "thats", "that is", "so", "somebody", "someone"})
#: `if I counted right`: what a speaker doubts of himself is no condition.
SELF_DOUBTS: Final = frozenset(
    """counted count remember recall recollect right mistaken correctly heard say said see know believe guess read wrong""".split()  # noqa: SIM905 - a table of words
)
CHAINED: Final = frozenset({",", "then", "and", "so", "-"})
FIGURES: Final = frozenset({"num", "weight", "pair", "clock", "cup", "dose", "money", "temp", "cage", "code"})


def unreal(c: Clause, found: Found) -> bool:
    """Whether the words before what a reading tells say that it hasn't happened."""
    if "negation" not in c.marks and not c.says(MODALS):
        return False
    place = _told_at(c, found)
    if place is None:
        return False
    kind = found.fact.kind
    for i in range(place - 1, max(-1, place - 1 - REACH), -1):
        item = c.items[i]
        if item.said == "when" and c.said(i - 1) in {"remember", "recall", "remembering", "forget", "forgot"}:
            return True
        if item.said == ":" and c.said(i - 1) in {"planning", "planned", "plan", "plans", "goal", "goals", "ideas", "wish list"}:
            return kind not in {"planned", "remind", "setting"}
        if item.said in BREAKS or item.sort == "break":
            return False
        if item.said in MODALS and _leaves_undone(c, i, place):
            if item.said == "to" and kind == "planned":
                return c.said(i - 1) in ORDERED
            allowed = ALLOWED.get(kind, frozenset())
            return allowed is not None and item.said not in allowed
        if (
            "negation" in item.marks
            and kind not in DENIABLE
            and found.values.get("sign") not in LACKING
            and c.said(i + 1) not in NOT_DENIED
            and all(each.said in SMALL_BETWEEN or each.sort in {"animal", "code", "num"} for each in c.items[i + 1 : place])
        ):
            return True
    return False


def _told_at(c: Clause, found: Found) -> int | None:
    """Index of the first verb, state or figure that the reading took; the animal and its kits are told nothing by themselves."""
    used = {id(item) for item in found.used}
    tags = {value for value in found.values.values() if isinstance(value, str)}
    for i, item in enumerate(c.items):
        if id(item) not in used:
            continue
        if item.sort == "word":
            if item.marks - NOUNS and item.said not in MODALS and item.marks.isdisjoint(KITS):
                return i
        elif item.sort in FIGURES and not (item.sort == "num" and str(item.value) in tags):
            return i
    return None


def _leaves_undone(c: Clause, i: int, place: int) -> bool:
    """Whether the word at `i` says of what follows that it is wished, ordered or to come."""
    said, following, before = c.said(i), c.said(i + 1), c.said(i - 1)
    if said == "be":
        return before == "to" and c.said(i - 2) not in PAST_DUTY
    if said == "to" and before in {"has", "have"}:
        return True
    if said == "to":
        return i + 1 == place and following.split(" ")[0] in BARE_VERBS and before in BEFORE_DEED
    if said in {"could", "would"}:
        return following not in PERCEIVED
    if said in {"nearly", "almost", "practically"}:
        return c.items[place].sort == "word"
    if said == "heard":
        return c.items[place].sort == "word" and not c.items[place].said.endswith("ing")
    if said == "thought":
        return following not in {"i", "we"}
    if said == "must":
        return following != "have"
    if said == "will":
        return following not in {"say", "admit", "tell", "note", "add"}
    if said in {"shall", "i'd", "we'd", "id"}:
        return following in BARE_VERBS
    if said == "let":
        return following in {"me", "us"} and c.said(i + 2) in BARE_VERBS
    return True


def depends(c: Clause, i: int) -> bool:
    """Whether the `if` at `i` sets a condition: `if 14 kindles`; `if I counted right` sets none."""
    if c.said(i + 1) in HEDGED:
        return False
    return c.said(i + 1) not in {"i", "we", "my", "our"} or all(item.said not in SELF_DOUBTS for item in c.items[i + 1 :])


def ordered(c: Clause, i: int) -> bool:
    """Whether what stands before a condition at `i` is an order, no deed: `cull 31 if ...`, `box in 9 if ...`."""
    verb = next((item for item in c.items[:i] if item.sort == "word" and item.marks - NOUNS), None)
    first = next((item for item in c.items[:i] if item.sort == "word" and item.marks), None)
    return (verb is not None and verb.said.split(" ")[0] in BARE_VERBS) or (first is not None and "box" in first.marks)


def hangs_on(c: Clause) -> bool:
    """Whether a statement only follows from the condition that was set right before it."""
    return c.before is not None and c.before.condition and c.items[0].said in CHAINED
