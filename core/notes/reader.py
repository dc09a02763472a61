"""Reading a note: from the words to facts, or to the one question that must be asked first.

The message is cut into statements, every kind takes what it can explain, and the rest is weighed: a number, weight, day or animal that
nobody took withholds the facts beside it and asks. Words that nobody took ask nothing.

Over 300 lines: the order in which a message is tried, told once from top to bottom. It is due for a split: questions and corrections apart from statements.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date
from functools import lru_cache
from itertools import pairwise
from typing import Any, Final
from zoneinfo import ZoneInfo

from core.handbook.breeds import breed_words
from core.handbook.colors import color_words
from core.herd.state import Animal, Herd
from core.notes.clauses.clause import CONDITIONS, WELL, Clause, Found, Need, Scene, first_need
from core.notes.clauses.leftovers import unexplained
from core.notes.clauses.others import BEFALLEN, of_somebody_else
from core.notes.clauses.parentage import repeats_parents
from core.notes.clauses.plausible import doubted
from core.notes.clauses.spared import LOSSES, spare
from core.notes.clauses.statements import BIRTHS, statements
from core.notes.clauses.turns import told_on
from core.notes.clauses.typed import as_typed
from core.notes.clauses.unreal import BARE_VERBS, BEFORE_WHETHER, CONDITION, depends, hangs_on, ordered
from core.notes.fact import Fact, field_names, value_to_json
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
from core.notes.kinds.remark import Remark
from core.notes.layout.heads import headless, tells
from core.notes.layout.receipt import is_receipt, receipt_read
from core.notes.layout.sheets import sheet_told
from core.notes.layout.tables import table_told
from core.notes.layout.text import cleaned
from core.notes.reading import Ask, Context, Draft, Message, Reading
from core.notes.slots.animals import Mention, words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.items import Item, color_said, marks_of, only_signs, pair_grams
from core.notes.slots.lexicon import FOREIGN, FOREIGN_SHARED, Lexicon
from core.notes.slots.tokens import Token, tokens
from core.notes.talk.recall import subject_of
from core.notes.written import written_fact
from core.words import OUNCES_IN_POUND

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
CORRECTORS: Final = frozenset(
    {"no", "i mean", "i meant", "make that", "sorry", "er", "rather", "or rather", "wait no", "no wait", "scratch that", "oops", "i said"}
)
COUNTED_WORDS: Final = frozenset({"kits", "born", "alive", "dead", "bucks_word", "does_word", "bag", "falls"})
MOST_HESITATIONS: Final = 20  # not a figure: items: no correction has more of them
ENDS: Final = frozenset({".", ";", "!", "?"})
_END: Final = Item("mark", 0, 0, None, frozenset(), ".")  # between sentences
HESITATIONS: Final = frozenset({"um", "uh", "er", "erm", "uhm", "oh", "like", "wait"})
#: Between the two of a pair that is only spoken of.
PAIRING: Final = frozenset({"by", "x", "with", "to", "and", "on", "over", "the", "so", "okay", "ok", "um", "cross", "pair"})
AT_ONCE: Final = frozenset({"never mind", "nevermind", "nvm", "scratch that", "forget that", "strike that"})
THAT_WAS: Final = frozenset({"that was", "it was", "thats", "that's", "that is", "its", "it's", "was"})
ASKING: Final = query.ASKING
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
NOT_YET: Final = frozenset({"yet", "so far"})
NOTHING: Final = frozenset({"no", "no kits", "nothing", "none", "no babies"})
LEAST_BEFORE: Final = 3  # not a figure: items: a note before a reminder has more
TERSE: Final = 12  # not a figure: items: a note so short is told in the barn's own shorthand
TERSE_PLAIN: Final = 3
LEAST_TOLD: Final = 2  # not a figure: words that make a sentence about an animal
ASKS: Final = frozenset(mark for mark in query.CUES if mark.startswith("ask:"))
MARKS_OF_QUESTION: Final = ASKS | {"question"}
OUTRIGHT: Final = MARKS_OF_QUESTION | {"show_me"}
WEIGHTS_OF: Final = frozenset({"weights", "weights for", "wts", "weights on", "weights of"})
#: Words without such a mark that may begin a question.
ASKING_FIRST: Final = frozenset(ASKING) | WEIGHTS_OF | {"any", "list", "who", "see"}
ASKED_FOR: Final = frozenset({"requested", "request", "requests", "query", "queries", "question", "questions", "wanted"})
NAMED_BY: Final = 2  # not a figure: items: `our feed bag is`, `my yearly aim is`
BEFORE_UNDO: Final = 4  # not a figure: items: words such as `oh shoot` before it
PLACES_OF_QUESTION: Final = 12  # not a figure: items: a longer message is more than a question or a correction


_TICK: Final = re.compile(r"\[[^\S\n]*[xX\u2713]?[^\S\n]*\]")
_EMPTY_BOX: Final = re.compile(r"\[[^\S\n]*\]")


@lru_cache(64)
def _zone(name: str) -> ZoneInfo:
    return ZoneInfo(name)


def read(message: Message, herd: Herd, context: Context = Context(), *, told: bool = False, parted: bool = False) -> Reading:  # noqa: B008 - frozen
    """What the message means to this herd: facts that are safe, a question if there is one, and the words that no fact uses.

    Reads no clock and never raises, whatever the text; `told` says that the lines below its headings are told in words already, `parted` that lines which stand for
    themselves are taken out already. The facts are not yet checked against the herd.
    """
    text = cleaned(message.text)
    if not text:
        return Reading()
    here = message.at.astimezone(_zone(herd.settings.timezone))
    today = here.date()
    exact = written_fact(message.text.strip(), herd, today)
    if exact is not None:
        return Reading((exact,), subject=subject_of(exact))
    if "\n" in text and is_receipt(text):
        return receipt_read(text, today, herd.settings.date_order)
    if "\n" in text and (rows := table_told(message.text)) is not None:
        return read(replace(message, text=rows), herd, context)
    words = words_of(herd)
    if not told and ("\n" in text or ":" in text) and (sheet := sheet_told(text, words)) is not None:
        return read(replace(message, text=sheet), herd, context, told=True)
    if "[" in text and _TICK.search(text):
        return _ticked(replace(message, text=text), herd, context, today)
    found = tokens(text)
    scene = Scene(herd, words, today, context, message.text, f"{here.hour:02}:{here.minute:02}", {}, found)
    if _foreign(found):
        return _remark(text, today, None)
    begin, writing = headless(found)
    if begin:
        behind = read(replace(message, text=text[begin:]), herd, context)
        if tells(behind) and not writing and _only_ordered(found, begin, behind):
            return _remark(text, today, behind.subject)
        if tells(behind) or (not writing and behind.ask is None and any(fact.kind == "query" for fact in behind.facts)):
            return behind
    whole = Clause(Scan(found, scene.words, LEXICON).run(), scene)
    if whole.says(CORRECTORS):
        whole = Clause(_put_right(whole.items), scene)
    items = whole.items
    if only_signs(items):
        return Reading()
    if not parted and (apart := _apart(whole, message, text, herd, context)) is not None:
        return apart
    if "remind" in whole.marks and (reminded := _reminder_behind(whole, found, message, text, herd, context)) is not None:
        return reminded
    return _whole_message(whole, text) or _headed(whole, text) or _Statements(scene, items, text).reading()


#: What may be asked of the program itself.
GRANTED: Final = frozenset({"remind", "skipped", "setting", "undo", "correct", "for_sale", "query", "remark"})


def _only_ordered(found: list[Any], begin: int, behind: Reading) -> bool:
    """Whether a polite head asks somebody to do a deed of the barn: `please wean 16`."""
    if all(fact.kind in GRANTED for fact in behind.facts):
        return False
    politely = found[0].key in {"please", "pls", "plz"}
    return politely and any(token.start == begin and token.key in BARE_VERBS for token in found[:3])


_OPEN_QUESTION: Final = ("who", "what", "when", "which", "why", "how", "where")
#: A line, or a sentence that asks.
_ASKED_OR_LINE: Final = re.compile(r"[^\n?]*\?+|[^\n?]+")


def _apart(whole: Clause, message: Message, text: str, herd: Herd, context: Context) -> Reading | None:
    """What stands for itself beside a note: lines that wish for a reminder or change a setting, and questions."""
    if "\n" in text and whole.has("remind", "setting") and (apart := _lines_apart(message, text, herd, context)) is not None:
        return apart
    if ("?" in text or "\n" in text) and not whole.marks.isdisjoint({"question"} | ASKS):
        return _questions_apart(message, text, herd, context)
    return None


def _questions_apart(message: Message, text: str, herd: Herd, context: Context) -> Reading | None:
    """`why 14?` over `31 4-6`: the questions, and what the rest tells, where it tells something."""
    pieces = [piece for piece in _ASKED_OR_LINE.findall(text) if piece.strip()]
    if len(pieces) == 1:
        return None
    readings = [read(replace(message, text=piece), herd, context) if _may_ask(piece) else None for piece in pieces]
    asked = [reading for reading in readings if reading is not None and _asks_alone(reading)]
    rest = "\n".join(piece for piece, reading in zip(pieces, readings, strict=True) if reading is None or not _asks_alone(reading))
    if not asked or not rest:
        return None
    told = read(replace(message, text=rest), herd, context, parted=True)
    if not tells(told):
        return None
    return replace(told, facts=(*told.facts, *(fact for reading in asked for fact in reading.facts)))


def _may_ask(piece: str) -> bool:
    """Whether a line or sentence begins as a question."""
    first = piece.split(maxsplit=1)[0].strip(",.:;!").lower()
    return first in ASKING or first.startswith(_OPEN_QUESTION)


def _asks_alone(reading: Reading) -> bool:
    return bool(reading.facts) and reading.ask is None and all(fact.kind == "query" for fact in reading.facts)


def _lines_apart(message: Message, text: str, herd: Herd, context: Context) -> Reading | None:
    """Lines that ask for a reminder or change a setting stand for themselves among the lines of a note."""
    lines = text.split("\n")
    readings = [read(replace(message, text=line), herd, context) for line in lines]
    apart = [
        bool(reading.facts) and reading.ask is None and all(fact.kind in {"remind", "setting"} for fact in reading.facts)
        for reading in readings
    ]
    rest = [line for line, alone in zip(lines, apart, strict=True) if not alone]
    if len(rest) == len(lines) or sum(apart) == 1 == sum(1 for line in lines if line.strip()):
        return None
    told = read(replace(message, text="\n".join(rest)), herd, context, parted=True)
    facts = tuple(fact for reading, alone in zip(readings, apart, strict=True) if alone for fact in reading.facts)
    return replace(told, facts=(*told.facts, *facts))


#: What joins the wish for a reminder to the note before it.
_JOINED: Final = re.compile(r"[\s,;.-]*(?:(?:and|also|oh|so|then|please|pls|can|could|would|will|you|u|hey|plus)[\s,]+)*$", re.IGNORECASE)


def _reminder_behind(whole: Clause, found: list[Token], message: Message, text: str, herd: Herd, context: Context) -> Reading | None:
    """`trimmed Moss's nails, and can you remind me saturday to do Clover's`: a note, and a wish behind it."""
    place = whole.first("remind") or 0
    if place < LEAST_BEFORE or not whole.said(place).startswith("remind") or all(item.sort in PLAIN for item in whole.items[:place]):
        return None
    start = found[whole.items[place].start].start
    told = read(replace(message, text=_JOINED.sub("", text[:start])), herd, context, parted=True)
    then = read(replace(message, text=text[start:]), herd, replace(context, subject=told.subject or context.subject), parted=True)
    if not tells(told) or then.ask is not None or [fact.kind for fact in then.facts] != ["remind"]:
        return None
    wish = then.facts[0]
    if isinstance(wish, reminder.Reminder) and wish.who is None and any("pronoun" in item.marks for item in whole.items[place:]):
        wish = replace(wish, who=told.subject)  # "treat her again"
    return replace(told, facts=(*told.facts, wish), subject=then.subject or told.subject)


def _ticked(message: Message, herd: Herd, context: Context, today: date) -> Reading:
    """A list with boxes: a ticked one was done, an empty one is a remark."""
    done, remarks = [], []
    for line in message.text.split("\n"):
        if _EMPTY_BOX.search(line):
            remarks.append(
                _remark_fact(line.strip(), today, read(replace(message, text=_EMPTY_BOX.sub(" note ", line)), herd, context).subject)
            )
        else:
            done.append(_TICK.sub(" done ", line))
    rest = read(replace(message, text="\n".join(done)), herd, context) if any(line.strip() for line in done) else Reading()
    return replace(rest, facts=(*rest.facts, *remarks))


def _foreign(found: list[Any]) -> bool:
    """Whether the words are another language's."""
    if FOREIGN.isdisjoint([token.key for token in found]):
        return False
    words = [token.key for token in found if token.sort == "w"]
    hits = sum(1 for word in words if word in FOREIGN and word not in FOREIGN_SHARED)
    return hits >= 2 or (hits == 1 and len(words) <= 6 and sum(1 for word in words if word in FOREIGN) >= 2)


def _put_right(items: list[Item]) -> list[Item]:
    """The items without what the speaker took back at once: `seven no eight`, `Moss, I mean Flint`."""
    kept = list(items)
    i = 1
    while i < len(kept) - 1:
        if kept[i].said in CORRECTORS:
            before = i - 1
            while before > max(0, i - MOST_HESITATIONS) and (kept[before].said in HESITATIONS or kept[before].said in {",", "?"}):
                before -= 1
            after, most = i + 1, min(len(kept) - 1, i + MOST_HESITATIONS)
            while after < most and (
                kept[after].said in CORRECTORS or kept[after].said in HESITATIONS or kept[after].said in {",", "it's", "it was"}
            ):
                after += 1
            if kept[after].said == kept[before - 1].said and kept[after].said in {"to", "with", "for", "from"} and after < len(kept) - 1:
                after += 1  # "to Moss, scratch that, to Flint"
            if _animal_put_right(kept, i, after):
                continue
            if _count_put_right(kept, before, after):
                continue
            if _ounces_put_right(kept[before], kept[after]):
                kept[before + 1 : after + 1] = []
                continue
            if _alike(kept[before], kept[after]) and not (after + 1 < len(kept) and kept[after + 1].marks & {"negation"}):
                kept[before:after] = []
                i = max(before, 1)
                continue
        i += 1
    return _put_right_last(kept)


def _put_right_last(kept: list[Item]) -> list[Item]:
    """`type 4, fur 4. type 3 i mean`: the words behind the mark that is said again."""
    end = len(kept)
    while end and kept[end - 1].said in ENDS:
        end -= 1
    if end < LEAST_BEFORE or kept[end - 1].said not in {"i mean", "i meant"}:
        return kept
    label, number = kept[end - 3], kept[end - 2]
    if label.sort != "word" or not label.marks or number.sort != "num":
        return kept
    if end > LEAST_BEFORE * 2 and kept[end - 4].said == "no" and kept[end - 5].sort == "num" and kept[end - 6].marks & label.marks:
        return [*kept[: end - 6], *kept[end - 3 : end - 1], *kept[end:]]  # "fur 4 no type 3 i mean"
    earlier = [i for i in range(1, end - 3) if kept[i].sort == "num" and kept[i - 1].said == label.said]
    if len(earlier) != 1:
        return kept
    kept[earlier[0]] = number
    return kept[: end - 3]


def _animal_put_right(kept: list[Item], corrector: int, after: int) -> bool:
    """`Biscuit ten pounds, no wait, that was Clover`: the one animal of the statement was the wrong one."""
    right = after + 1 if kept[after].said in THAT_WAS else after
    if (
        right >= len(kept)
        or kept[right - 1].said not in THAT_WAS
        or not (right + 1 == len(kept) or kept[right + 1].sort in {"break", "mark"})
    ):
        return False
    begin = corrector
    while begin and kept[begin - 1].sort != "break" and kept[begin - 1].said not in ENDS:
        begin -= 1
    sorts = {"animal", "code"} if kept[right].sort == "animal" else {"num"}
    named = [place for place in range(begin, corrector) if kept[place].sort in sorts | {"animal", "code"}]
    if len(named) != 1 or kept[right].sort not in sorts or (sorts == {"num"} and named[0] != begin):
        return False
    kept[named[0]] = kept[right]
    kept[corrector : right + 1] = []
    return True


def _count_put_right(kept: list[Item], before: int, after: int) -> bool:
    """`weaned 16, 5 kits, i mean 4`, `8 born, no, 9 born`: the number before the word is said again, with or without the word."""
    label = kept[before]
    if (
        label.sort != "word"
        or label.marks.isdisjoint(COUNTED_WORDS)
        or not before
        or kept[before - 1].sort != "num"
        or kept[after].sort != "num"
    ):
        return False
    following = kept[after + 1] if after + 1 < len(kept) else None
    again = following is not None and following.said == label.said
    if not again and following is not None and following.sort not in {"mark", "break", "date"}:
        return False
    kept[before - 1] = kept[after]
    kept[before + 1 : after + 1 + again] = []
    return True


def _ounces_put_right(one: Item, other: Item) -> bool:
    """`three pounds fourteen, no, fifteen ounces`: the ounces alone are said again; the weight takes them."""
    if one.sort != "weight" or one.unit != "lb" or one.value[1] == int(one.value[1]):
        return False
    ounces = other.value[1] if other.sort == "weight" and other.unit == "oz" else (other.value if other.sort == "num" else None)
    if ounces is None or ounces != int(ounces) or not 0 <= ounces < OUNCES_IN_POUND:
        return False
    pounds = int(one.value[1])
    one.value = (pair_grams(pounds, ounces), pounds + ounces / OUNCES_IN_POUND)
    return True


def _alike(one: Item, other: Item) -> bool:
    named = {"num", "animal", "code"}
    if color_said(one) and color_said(other):
        return one.marks.isdisjoint({"breed_name"}) and other.marks.isdisjoint({"breed_name"})
    if one.sort == "num" and other.sort == "dose" and one.value != int(one.value):
        return True  # "ivermectin .2 no .3 ml"
    return (one.sort == other.sort and one.sort in {"num", "weight", "pair", "date", "money", "cage", "animal", "code"}) or (
        {one.sort, other.sort} <= named and other.sort != "num"
    )


# --- messages that are one thing as a whole ---------------------------------------------------------------------------


def _whole_message(whole: Clause, text: str) -> Reading | None:
    """A correction, an undo, a question, a setting or a reminder takes the whole message."""
    short = len(whole.items) <= PLACES_OF_QUESTION * 2
    if (whole.has("undo") and _takes_itself_back(whole)) or _asked_and_denied(whole):
        return _remark(text, whole.today, _who(whole))
    if (
        whole.has("undo")
        and short
        and ((whole.first("undo") or 0) <= BEFORE_UNDO or not [i for i in whole.sorted_as("num", "pair", "weight") if whole.whole(i) != 1])
    ):
        undoing.read(whole)
    elif (
        short
        and whole.scene.context.last
        and "after all" in text.lower()
        and any(item.said.replace("'", "") in {"didnt", "did not"} for item in whole.items)
    ):
        undoing.taken_back(whole)
    elif short and whole.has("correct"):
        correction.read(whole)
    elif short and whole.scene.context.last and whole.has("lose"):
        correction.fewer(whole)
    if not whole.found and whole.scene.context.last and len(whole.items) <= LEAST_BEFORE and whole.dates():
        correction.day_alone(whole)
    if whole.found:
        return _told(whole)
    if whole.has("setting") and short:
        apart = _settings_apart(whole, text)
        if apart is not None:
            return apart
        if _is_setting(whole):
            _read_settings(whole)
    if not whole.found and (
        (whole.has("remind") and _is_reminder(whole))
        or (whole.has("appointment") and reminder.is_appointment(whole))
        or reminder.is_intended(whole)
        or reminder.is_told_to(whole)
    ):
        reminder.read(whole)
    if not whole.found and (whole.said(0) in ASKED_FOR and whole.said(1) in {":", ","}):
        _read_questions(whole)
    if not whole.found and (behind := _asked_behind(whole, text)) is not None:
        return behind
    if not whole.found and _is_question(whole, text):
        query.read(whole)
        if not whole.found and any(item.sort == "word" for item in whole.items) and (text.rstrip().endswith("?") or _asks_outright(whole)):
            return _remark(text, whole.today, _who(whole))
        return replace(_told(whole), unread=_figures_behind(whole)) if whole.found else None
    return _told(whole) if whole.found else None


def _figures_behind(whole: Clause) -> str:
    """`what is 31 now? 4-6`: the words behind a question, where they hold a figure that no answer gives back."""
    end = max((i for i, item in enumerate(whole.items) if item.said == "?"), default=len(whole.items))
    behind = whole.items[end + 1 :]
    if FIGURES.isdisjoint([item.sort for item in behind]):
        return ""
    return " ".join(item.said for item in behind if item.sort != "break")


#: What a question stands behind, and what may stand behind a comma only.
_ENDS_BEFORE_QUESTION: Final = frozenset({".", ";", "!", ","})
_ASKING_WORDS: Final = ("who", "what", "when", "which")


def _asked_behind(whole: Clause, text: str) -> Reading | None:
    """`14 kindled 5, who is due next?`: what is told before the question is recorded, and the question asked."""
    plainly = text.rstrip().endswith("?")
    if whole.marks.isdisjoint(OPENS) or not (plainly or whole.has("question") or whole.marks & ASKS):
        return None
    if not (whole.says(_ENDS_BEFORE_QUESTION) or whole.holds("break")):
        return None
    ends = [i for i, item in enumerate(whole.items[:-1], 1) if item.said in _ENDS_BEFORE_QUESTION or item.sort == "break"]
    begin = next((i for i in reversed(ends) if _begins_question(whole, i, plainly=plainly)), None)
    if begin is None or marks_of(whole.items[:begin]).isdisjoint(OPENS):
        return None
    asked = Clause(whole.items[begin:], whole.scene)
    if not _is_question(asked, f"{asked.text()}{'?' if plainly else ''}"):
        return None
    query.read(asked)
    if not asked.found and not plainly:
        return None
    if not asked.found and not PLAIN.issuperset(asked.sorts()):
        return _Statements(whole.scene, whole.items, text).reading()  # its figure is asked about
    told = _Statements(whole.scene, whole.items[:begin], text).reading()
    if not any(fact.kind not in {"remark", "query"} for fact in told.facts):
        return None
    return replace(told, facts=(*told.facts, *(_fact(found) for found in asked.found)))


def _begins_question(whole: Clause, i: int, *, plainly: bool) -> bool:
    """Whether the item, with such an end right before it, begins a question."""
    item, before = whole.items[i], whole.items[i - 1]
    if plainly and item.said in ASKING:
        return True
    if before.said != "," and not item.marks.isdisjoint(MARKS_OF_QUESTION):
        return True
    return item.said.startswith(_ASKING_WORDS)


def _asked_and_denied(whole: Clause) -> bool:
    """`R21 sold? no`: the question and its answer in one breath; how a doe felt is told so too."""
    end = len(whole.items) - 1
    while end > 0 and whole.items[end].said in {".", "!"}:
        end -= 1
    if whole.said(end) == "yet" and whole.said(end - 1) == "not":
        end -= 1  # "R23 sold? not yet"
    return whole.said(end) in {"no", "nope", "not", "not yet"} and whole.said(end - 1) == "?" and not whole.has("palpate")


def _takes_itself_back(whole: Clause) -> bool:
    """`bred 15 to Flint, never mind`: the words take back what they end, and nothing that was sent before."""
    cue = whole.first("undo") or 0
    if whole.said(cue) not in AT_ONCE or any(item.sort != "mark" for item in whole.items[cue + 1 :]):
        return False
    head = whole.items[:cue]
    verb = next((i for i, item in enumerate(head) if item.marks & OPENS), None)
    if verb is None or (verb and head[verb - 1].said in {"the", "that", "last", "my"}):
        return False
    told = _Statements(whole.scene, head, " ".join(item.said for item in head)).reading()
    return any(fact.kind not in {"remark", "query"} for fact in told.facts)


def _headed(whole: Clause, text: str) -> Reading | None:
    """The same at the head of small talk: `undo that one, I was looking at the wrong cage, that's what I get for ...`.

    Only where nothing behind it could be a record: no figure, no animal, no verb of the barn said of `him` or `her`.
    """
    asked = "?" in text and whole.said(whole.opening() or 0) in ASKING
    cue = whole.first("undo", "setting", "correct")
    if not asked and (cue is None or len(whole.items) <= PLACES_OF_QUESTION * 2):
        return None
    last = max((i for i, item in enumerate(whole.items) if item.sort not in {"word", "mark", "break"}), default=0)
    ends = {"?"} if asked else {",", ".", "!", ";", "-"}
    end = next((i for i in range(max(last, cue or 0) + 1, len(whole.items)) if whole.said(i) in ends), None)
    if end is None or not any(item.sort == "word" for item in whole.items[end:]):
        return None
    rest = Clause(whole.items[end:], whole.scene)
    if rest.has("pronoun") and rest.marks & OPENS:
        return None
    head = Clause(whole.items[:end], whole.scene)
    if asked:
        query.read(head)
    elif head.has("undo") and (head.first("undo") or 0) <= BEFORE_UNDO:
        undoing.read(head)
    elif head.has("correct") and whole.scene.context.last:
        correction.read(head)
    if not head.found and not asked and head.has("setting") and _is_setting(head):
        _read_settings(head)
    return _told(head) if head.found else None


def _read_questions(whole: Clause) -> None:
    """`Requested: pedigree of 31; weights of 33`: each piece a question, or none is."""
    parts: list[list[Item]] = [[]]
    for item in whole.items[2:]:
        if item.said == ";" or item.sort == "break":
            parts.append([])
        else:
            parts[-1].append(item)
    clauses = [Clause(part, whole.scene) for part in parts if part]
    for clause in clauses:
        if any(mark.startswith("ask:") for mark in clause.marks):
            query.read(clause)
    if clauses and all(clause.found for clause in clauses):
        for clause in clauses:
            whole.take(clause.found[0])


def _read_settings(whole: Clause) -> None:
    """One setting, or a list of them parted by semicolons or lines: `settings: feed bag, 40 lb; feed price, $17.50 a bag`."""
    clauses = _pieces(whole, frozenset({";"}))
    for clause in clauses if len(clauses) > 1 else ():
        setting.read(clause)
    found = [found for clause in clauses for found in clause.found]
    if len(found) == len(clauses) > 1 and all(each.need is None for each in found):
        for each in found:
            whole.take(each)
    else:
        setting.read(whole)


def _pieces(whole: Clause, ends: frozenset[str]) -> list[Clause]:
    """The message cut at its lines and at these marks."""
    parts: list[list[Item]] = [[]]
    for item in whole.items:
        if item.said in ends or item.sort == "break":
            parts.append([])
        else:
            parts[-1].append(item)
    return [Clause(part, whole.scene) for part in parts if part]


def _settings_apart(whole: Clause, text: str) -> Reading | None:
    """`we have 24 cages. feed is 21.50 a bag now`, `moss gets 1 cup; feed is 23 a bag now`: sentences that are settings, each whole, beside others."""
    clauses = _pieces(whole, ENDS)
    if len(clauses) < 2:  # not a figure: one sentence is read as a whole
        return None
    settings = [clause for clause in clauses if clause.has("setting") and _is_setting(clause)]
    for clause in settings:
        setting.read(clause)
    found = [found for clause in settings for found in clause.found]
    if not settings or len(found) != len(settings) or any(each.need is not None for each in found):
        return None
    rest = [item for clause in clauses if clause not in settings for item in (*clause.items, _END)]
    others = _Statements(whole.scene, rest, text).reading() if rest else Reading()
    small_talk = PLAIN.issuperset([item.sort for item in rest])
    facts = tuple(fact for fact in others.facts if not small_talk or fact.kind != "remark")
    return replace(others, facts=(*(_fact(each) for each in found), *facts))


def _asks_outright(whole: Clause) -> bool:
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


def _told(whole: Clause) -> Reading:
    asked = next(((found, found.need) for found in whole.found if found.need is not None), None)
    if asked is not None:
        return Reading((), _ask(*asked, ()), "", _subject([asked[0]]))
    return Reading(tuple(_fact(found) for found in whole.found), None, "", _subject(whole.found))


HAVING: Final = ("we have", "we've", "we got", "i have", "i've", "i got", "there are", "there's", "theres")


def _is_setting(whole: Clause) -> bool:
    place = whole.first("setting") or 0
    if any("negation" in item.marks for item in whole.items[:place]):
        return False  # "don't keep two bucks a breed"
    if (whole.has("buy", "purchase") and whole.has("bag")) or whole.said(place + 1) == "what":
        return False
    if whole.said(place) in {"winter", "spring"} and whole.dates() and not whole.explicit() and len(whole.items) <= PLACES_OF_QUESTION:
        return True
    if whole.said(place) in {"weights in", "weights"} and len(whole.sorted_as("num", "weight", "pair")) > 1:
        return False
    if any(item.said in {"left", "remaining", "remains", "opened"} for item in whole.items) or (
        any(item.said == "down to" for item in whole.items) and not whole.has("each") and not whole.sorted_as("money", "temp")
    ):
        return False
    return (
        len(whole.said(place).split()) > 1
        or place == whole.opening()
        or whole.said(whole.opening() or 0) in {"setting", "settings", "set"}
        or (
            whole.said(place) == "cages"
            and whole.whole(place - 1) is not None
            and place == len(whole.items) - 1 <= NAMED_BY + 1
            and whole.text().startswith(HAVING)
        )
        or (whole.said(whole.opening() or 0) in {"our", "my"} and place - (whole.opening() or 0) <= NAMED_BY)
    )


def _is_reminder(whole: Clause) -> bool:
    """`remind me ...` asks for a reminder; `reminders` inside another sentence does not."""
    place = whole.first("remind") or 0
    if place and whole.said(whole.opening() or 0) in {"no", "why", "did", "thanks", "who"}:
        return False  # "why did you remind me", "no reminders today"
    if _of_reminders(whole, place):
        return False
    return place <= 6 or any(item.said.startswith("remind me") for item in whole.items)


def _of_reminders(whole: Clause, place: int) -> bool:
    """`thanks for the reminder`, `skip the rebreed reminder`, `Sorrel reminds me of her mother`: nothing to be reminded of."""
    opening = whole.opening() or 0
    noun = whole.said(place) in {"reminder", "reminders"}
    if noun and whole.said(opening) in {"what", "which", "how many"}:
        return True
    if noun and ("skip" in whole.items[opening].marks or whole.said(place - 1) in {"the", "that", "your", "more", "no"}):
        return not whole.dates()
    return whole.said(place) == "remind me" and whole.said(place + 1) == "of" and not whole.dates() and not whole.sorted_as("span")


def _is_question(whole: Clause, text: str) -> bool:
    """A question mark, a question word first, or a terse word that only asks (`why 14`, `ped 7`)."""
    opening = whole.opening()
    if opening is None:
        return False
    first = whole.items[opening]
    if first.said == "pair" and whole.said(opening + 1) == "of":
        return False  # "pair of does for sale, 9 and 22"
    if first.said == "show" and first.start > 0 and whole.items[0] is not first and whole.said(opening - 1) in {"the", "a"}:
        return False
    if (
        first.said == "show"
        and opening + 1 < len(whole.items)
        and (
            whole.items[opening + 1].sort == "date"
            or whole.said(opening + 1) == ":"
            or (whole.said(opening + 1) in {"of", "on", ","} and opening + 2 < len(whole.items) and whole.items[opening + 2].sort == "date")
        )
    ):
        return False
    if not first.marks.isdisjoint(ASKS) and opening + 2 < len(whole.items) and whole.said(opening + 2) == ":":
        return False  # "to do 1 Dec: trim nails"
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
    if first.marks & {"question", "show_me"} and first.said not in {"any", "list", "who", "see"}:
        return len(whole.items) <= PLACES_OF_QUESTION * 2 and not whole.sorted_as("weight", "pair", "money")
    if first.said == "who" and opening + 1 < len(whole.items) and not whole.items[opening + 1].marks.isdisjoint({"question", "negation"}):
        return True  # "who should i breed next", "who hasn't been bred yet"
    if _asked_of(whole, opening) or _versus(whole) or _named_last(whole, opening) or _opinion_asked(whole):
        return True
    if (
        first.said in WEIGHTS_OF
        and not whole.sorted_as("weight", "pair", "clock", "cup")
        and len(whole.sorted_as("num")) + len(whole.explicit()) == 1
    ):
        return True
    if first.said in {"for sale", "sales"} and whole.holds("num"):
        return False  # "for sale 3 of 16's 25 each"
    if whole.holds("break") and whole.holds("num", "money"):
        return False  # a page with a heading such as "Feed bill"
    asks = not first.marks.isdisjoint(ASKS) or first.said in {"any", "list", "who", "see"}
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
    named = sum(1 for i in range(len(whole.items)) if whole.known(i) is not None)
    first = whole.items[whole.opening() or 0].said
    if first in {
        "feed",
        "pellets",
        "weights",
        "weight",
        "litter",
        "litters",
        "keep",
        "keeping",
        "cull",
        "sold",
        "open",
        "count",
        "x",
        "with",
        "total",
        "weigh",
        "notes",
        "winter",
        "sales",
        "breed to",
        "bred to",
        "who",
        "weighed",
        "mate",
        "better",
        "or",
    }:
        if first in {
            "keep",
            "keeping",
            "cull",
            "litter",
            "weigh",
            "weighed",
            "weight",
            "total",
            "count",
            "feed",
            "pellets",
            "sold",
            "mate",
            "x",
            "or",
            "with",
            "better",
            "winter",
        }:
            return len(whole.items) == 1 or first == "sales"
        return (
            all(item.sort in {"animal", "num", "date", "mark", "span"} or item.marks for item in whole.items[1:])
            and (named <= 1)
            and not whole.has("alive", "dead", "lose")
        )
    return True


# --- statements -----------------------------------------------------------------------------------------------------


def _places(table: Mapping[str, int], marks: Iterable[str]) -> int:
    """The places of the kinds that one of these marks may begin, a bit each."""
    places = 0
    for mark in marks:
        if mark in table:
            places |= table[mark]
    return places


class _Statements:
    """The statements of one message, read one by one with the animal of the one before."""

    def __init__(self, scene: Scene, items: list[Item], text: str) -> None:
        self.scene = replace(scene, newcomers={}) if scene.newcomers else scene
        self.text = text
        self.clauses = statements(items, self.scene, OPENS)
        self.remarks: list[Clause] = []

    def reading(self) -> Reading:
        """The facts of all statements, or the question."""
        carried: Mention | None = None
        for clause in self.clauses:
            clause.subject = self._by_pronoun(clause, carried)
            self._read(clause)
            carried = self._newcomer(clause) or self._subject_after(clause) or carried
        return self._together()

    def _by_pronoun(self, clause: Clause, carried: Mention | None) -> Mention | None:
        """The animal spoken of before; where `him` or `she` is of the other sex, the one beside it that fits."""
        animal = self.scene.herd.find(carried.tag) if carried is not None and carried.tag else None
        if animal is None or clause.before is None or "pronoun" not in clause.marks:
            return carried
        wanted = {sex for item in clause.items if (sex := PRONOUN_SEX.get(item.said))}
        if len(wanted) != 1 or animal.sex in wanted:
            return carried
        before = clause.before
        fitting = {
            mention.tag: mention
            for i in range(len(before.items))
            if (known := before.known(i)) is not None and known.sex in wanted and not before.counted(i) and (mention := before.mention(i))
        }
        return next(iter(fitting.values())) if len(fitting) == 1 else carried

    def _read(self, clause: Clause) -> None:
        if clause.beyond:
            clause.take(_too_much(clause))
            return
        if (clause.before is not None and hangs_on(clause)) or ("question" in clause.marks and _yet_to_come(clause)):
            clause.condition = clause.put_off = True
            return
        if (clause.has("tentative") and _tentative(clause)) or (clause.marks & BEFALLEN and _of_an_earlier_time(clause)):
            return
        if not clause.marks.isdisjoint(LOSSES):
            spare(clause)
        if clause.has("negation", "none") and _denied(clause):
            return
        figures = not PLAIN.issuperset(sorts := clause.sorts())
        if figures and clause.overfull():
            clause.take(_too_much(clause))
            return
        if clause.has("other_species") and _of_others(clause):
            return
        if (
            clause.marks & BEFALLEN
            and clause.marks.isdisjoint({"new", "gift"})
            and of_somebody_else(clause.items, spoken_of=clause.subject is not None)
        ):
            return
        if "child_of" in clause.marks:
            repeats_parents(clause)
        wanted = _places(BY_MARK, clause.marks)
        if figures:
            wanted |= _places(BY_FIGURE, clause.marks) | _places(BY_FIGURE, sorts)
        while wanted:
            first = wanted & -wanted
            STATEMENT_KINDS[first.bit_length() - 1].read(clause)
            wanted ^= first
        if clause.found:
            doubted(clause)

    def _newcomer(self, clause: Clause) -> Mention | None:
        """`new doe 40 mini rex. she weighs 4-6`, `tattooed R31 out of 16, 2-3`: the animal that a statement brings onto the book is known from then on."""
        brought = [found for found in clause.found if found.fact.kind in BRINGING and found.need is None and found.values.get("tag")]
        for found in brought:
            tag = found.values["tag"]
            if self.scene.herd.find(tag) is None:
                self.scene.newcomers[tag] = Animal(key=tag, tag=tag, sex=found.values.get("sex"))
        last = brought[-1].values["tag"] if len(brought) == 1 == len(clause.found) else None
        return Mention((last,), last) if last in self.scene.newcomers else None

    @staticmethod
    def _subject_after(clause: Clause) -> Mention | None:
        for found in reversed(clause.found):
            if found.said is not None:
                return found.said
        explicit = clause.explicit()
        if explicit:
            return clause.mention(explicit[0])
        opening = clause.opening()
        if opening is not None and clause.known(opening) and not clause.counted(opening):
            return clause.mention(opening)
        lone = [i for i in clause.sorted_as("num") if clause.known(i) and not clause.counted(i)]
        return clause.mention(lone[0]) if len(lone) == 1 and not clause.found else None

    def _without_the_gone(self) -> None:
        """What is said of an animal that the same message takes off the book tells why it left, and is no fact of its own."""
        gone = {found.values.get("who") for clause in self.clauses for found in clause.found if found.fact.kind in LEAVING} - {None}
        for clause in self.clauses if gone else ():
            kept = [found for found in clause.found if found.fact.kind not in OF_THE_LIVING or found.values.get("who") not in gone]
            held = {id(item) for found in kept for item in found.used}
            clause.used -= {id(item) for found in clause.found if found not in kept for item in found.used} - held
            clause.found[:] = kept

    def _without_the_refused(self) -> None:
        """`bred 15 to Flint, she wouldn't lift`: a mating that the next breath takes back is only the refusal, of that buck."""
        for before, after in pairwise(self.clauses):
            refused = next((found for found in after.found if found.fact.kind == "refused"), None)
            if refused is None or after.explicit() or after.tags():
                continue
            tried = [
                found
                for found in before.found
                if found.fact.kind == "bred"
                and found.values.get("falls") is None
                and refused.values.get("buck") in {None, found.values.get("buck")}
                and found.values.get("doe") == refused.values.get("doe")
            ]
            if len(tried) == 1 and len(before.found) == 1:
                refused.values |= {"buck": tried[0].values.get("buck"), "on": tried[0].values["on"]}
                refused.need = first_need(refused.need, tried[0].need)
                before.found.clear()

    def _without_the_found(self) -> None:
        """What was lost and is told of in the next breath."""
        for before, after in pairwise(self.clauses):
            if "lose" in before.marks and before.found:
                told_on(before, after)

    def _together(self) -> Reading:
        self._without_the_gone()
        self._without_the_refused()
        self._without_the_found()
        founds = [found for clause in self.clauses for found in clause.found]
        if not founds:
            return self._nothing()
        needs: list[tuple[Found, Need]] = []
        safe: list[Found] = []
        for clause in self.clauses:
            self._weigh(clause, len(founds), needs, safe)
        safe = _distinct(safe)
        facts = tuple(_fact(found) for found in safe)
        subject = _subject([*safe, *(found for found, _ in needs)])
        if not needs:
            return Reading((*facts, *self._asides()), None, self._unread(), subject)
        chosen = needs[0]
        for found, need in needs[1:]:
            if first_need(chosen[1], need) is not chosen[1]:
                chosen = (found, need)
        rest = tuple(
            found
            for found, need in needs
            if found is not chosen[0] and need.wanted == chosen[1].wanted and need.why == chosen[1].why and found.said == chosen[0].said
        )
        return Reading(facts, _ask(*chosen, rest), self._unread(), subject)

    def _weigh(self, clause: Clause, facts: int, needs: list[tuple[Found, Need]], safe: list[Found]) -> None:
        """Sort a statement's readings into the safe and those in need; what no reading explains puts all of them in need."""
        left = unexplained(clause, facts)
        verb = _unread_verb(clause)
        for found in clause.found:
            need = found.need or _misheard(found)
            if verb and need is None and not any(item.sort in FIGURES for item in left):
                need = Need(
                    "what", "", f"I can't place \u201c{verb}\u201d in that note. Please send it again in other words, one thing at a time."
                )
            if left and need is None and all(item.sort in {"date", "ordinal"} for item in left):
                need = _which_day(clause, found, left)
            if left and need is None:
                words = ", ".join(f"\u201c{item.said}\u201d" for item in left[:3])
                need = Need(
                    "which_number" if left[0].sort in FIGURES else "what",
                    "",
                    f"I can't place {words} in that note. Please send it again in other words, one thing at a time.",
                )
            if need is None:
                safe.append(found)
            else:
                needs.append((found, need))
        if not clause.found:
            left = [item for item in left if not self._told_of(item)]
        if not clause.found and left and self._matters(clause, left):
            words = ", ".join(f"\u201c{item.said}\u201d" for item in left[:3])
            stand_in = Found(Remark, {"text": clause.text(), "on": clause.today})
            needs.append(
                (
                    stand_in,
                    Need(
                        "what",
                        "",
                        f"What does {words} mean? Please send that part again with a verb, for example \u201cweighed 31 4-6\u201d.",
                    ),
                )
            )

    def _told_of(self, item: Item) -> bool:
        """`had 31 out on the lawn, his colour is ...`: whether a bare number is the animal that a fact beside it is about."""
        if item.sort != "num":
            return False
        animal = self.scene.words.tagged(str(item.value))
        return animal is not None and any(
            found.values.get(name) == animal.tag for clause in self.clauses for found in clause.found for name in ("who", "doe")
        )

    @staticmethod
    def _matters(clause: Clause, left: list[Item]) -> bool:
        """Whether numbers in a statement that nothing was read from may be the barn's; a sentence about something else is a remark."""
        plain = sum(1 for item in clause.items if item.sort == "word" and not item.marks)
        if clause.says(NOT_YET) and clause.says(NOTHING):
            return False  # "14 - day 32, no kits yet"
        known = all(item.sort == "num" and clause.known(clause.items.index(item)) is not None for item in left)
        if known and (clause.says(WELL) or clause.has("alive_and_well")) and not any(item.marks & OPENS for item in clause.items):
            return False  # "22 ok", "31 32 33 fine" among other lines
        if known and len(left) == 1 and left[0] is clause.items[clause.opening() or 0] and _sentence_of(clause):
            return False  # "12 nest clean"
        return (not clause.put_off and clause.marks.isdisjoint({"other_species", "tentative", "negation"})) and (
            plain <= 2 or any(item.sort in {"pair", "weight"} for item in left)
        )

    def _asides(self) -> tuple[Fact, ...]:
        """Statements with numbers that are about something else are kept as they were said."""
        kept = [
            clause for clause in self.clauses if not clause.found and (unexplained(clause) or (clause.explicit() and len(clause.items) > 2))
        ]
        return tuple(_remark_fact(as_typed(clause, self.text), clause.today, _who(clause)) for clause in kept)

    def _unread(self) -> str:
        words = [
            item.said
            for clause in self.clauses
            if clause.found
            for item in clause.items
            if item.sort == "word" and id(item) not in clause.used
        ]
        words += [
            item.said
            for clause in self.clauses
            if not clause.found and not unexplained(clause)
            for item in clause.items
            if item.sort not in {"mark", "break"}
        ]
        return " ".join(words)

    def _nothing(self) -> Reading:
        """No kind read anything: a remark, or the question what was meant."""
        today = self.scene.today
        items = [item for clause in self.clauses for item in clause.items if id(item) not in clause.used or item.sort not in FIGURES]
        words = [item for item in items if item.sort == "word"]
        plain = [item for item in words if not item.marks]
        figures = [item for item in items if item.sort not in {"word", "mark", "break", "animal", "code", "date"}]
        animals = [item for item in items if item.sort in {"animal", "code"}]
        who = next((who for clause in self.clauses if (who := _who(clause))), None)
        mention = next((mention for clause in self.clauses if (mention := _first_mention(clause))), None)
        if not words and (figures or animals):
            return self._what(items, who)
        telling = [
            item
            for i, item in enumerate(items)
            if not (item.said == "not" and i and items[i - 1].sort == "num" and (i + 1 == len(items) or items[i + 1].sort == "mark"))
        ]
        kept = any(item.marks & {"tentative", "negation", "other_species", "none"} for item in telling) or any(
            clause.put_off or _of_an_earlier_time(clause) for clause in self.clauses
        )
        if (figures or animals) and len(words) <= 1 and not plain and not kept and not _told_due(items):
            return self._what(items, who)
        if not kept and (self._barn_numbers(items, plain) or self._figures_of(items, plain, figures, who)):
            return self._what(items, who)
        if mention is not None and mention.tag is None and mention.tags and not kept:
            need = Need("which_animal", "who", f"Which one do you mean by \u201c{mention.said}\u201d?", mention.tags[:5])
            return Reading((), Ask(need.why, need.text, need.choices, Draft("remark", {"text": self.text, "on": today.isoformat()}, "who")))
        return _remark(self.text, today, who)

    @staticmethod
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

    def _figures_of(self, items: list[Item], plain: list[Item], figures: list[Item], who: str | None) -> bool:
        """Whether a terse note says a number or a day of an animal that no reading could join: better asked than kept as words."""
        if (
            who is None
            or sum(1 for item in items if item.sort not in {"mark", "break"}) > TERSE
            or any(item.said.split(" ")[0] in {"no", "none", "due"} for item in items)
            or any(item.marks & {"question", "alive_and_well"} for item in items)
        ):
            return False
        dated = any(item.sort == "date" and item.value.shape in {"numeric", "day_month", "day", "iso"} for item in items)
        counts = [item for item in figures if item.sort != "span" and not (item.sort == "num" and self.scene.words.tagged(str(item.value)))]
        return (bool(counts) or dated) and sum(1 for item in plain if len(item.said) > 2) <= TERSE_PLAIN

    def _what(self, items: list[Item], who: str | None) -> Reading:
        said = " ".join(item.said for item in items[:6])
        text = f"What about \u201c{said}\u201d? Please send a whole note, for example \u201cweighed 31 4-6\u201d or \u201c14 kindled 8, 2 dead\u201d."
        return Reading((), Ask("what", text), "", who or self.scene.context.subject if who else None)


def _sentence_of(clause: Clause) -> bool:
    """Whether two words or more are said of the animal that opens the statement, one of them no word of the barn."""
    words = [item for item in clause.items if item.sort == "word" and item.said not in {"the", "is", "a", "and"}]
    return len(words) >= LEAST_TOLD and any(not item.marks for item in words) and clause.marks & OPENS <= {"temper"}


def _told_due(items: list[Item]) -> bool:
    """`9 due today`: a day that the book knows as well."""
    return any(item.said.startswith("due ") for item in items) or (
        any(item.said == "due" for item in items) and any(item.sort == "date" for item in items)
    )


def _tentative(clause: Clause) -> bool:
    """Whether the statement only says what may be. Words about a reminder, and `if` behind the fact, leave the fact."""
    place = clause.first("tentative") or 0
    told = [i for i, item in enumerate(clause.items) if item.marks & OPENS]
    said = clause.said(place)
    following = clause.items[place + 1] if place + 1 < len(clause.items) else None
    if said in CONDITION:
        return _conditional(clause, place, told)
    if (
        said in {"maybe", "perhaps", "possibly", "about to", "nearly", "almost"}
        and following is not None
        and following.sort in {"num", "weight", "pair"}
    ):
        return False
    if said in {"almost", "nearly", "about to"} and not any(i > place for i in told):
        return False
    if said in CONDITIONS and told and told[0] < place:
        return False  # "replace Juno with 33 once she's old enough"
    if said in {"hope", "hoping", "hopefully", "expecting", "expect", "maybe", "perhaps", "supposed to"} and told and told[0] < place:
        return False
    return not (said == "supposed to" and clause.sorted_as("temp")) and not clause.has("palpate")


def _yet_to_come(clause: Clause) -> bool:
    """`when 14 kindles, ...`: what is told of the present begins a condition, what is told of the past does not."""
    opening = clause.opening()
    if opening is None or clause.said(opening) != "when":
        return False
    verb = next((item for item in clause.items[opening + 1 :] if item.marks & OPENS), None)
    return verb is not None and verb.said.split(" ")[0].endswith("s")


def _conditional(clause: Clause, place: int, told: list[int]) -> bool:
    """Whether an `if` leaves the statement undone; a hedge does not, nor one behind a deed that is told."""
    whether = clause.said(place - 1) in BEFORE_WHETHER
    if not whether and not depends(clause, place):
        return False
    clause.condition = place == clause.opening()
    if told and told[0] < place:
        clause.put_off = not whether and ordered(clause, place)
        return clause.put_off or not clause.sorted_as("num", "weight", "pair")
    clause.put_off = not whether
    return True


def _of_an_earlier_time(clause: Clause) -> bool:
    """`9 had 6 last time`: what befell her before is no news; `two more than last time` only compares."""
    for i, item in enumerate(clause.items):
        if item.said in {".", ",", ";", "and", "but", "than", "as", "since", "from", "like", "unlike", "break"}:
            return False
        if item.said == "last time" or (item.said == "last" and clause.said(i + 1) == "time"):
            return True
    return False


def _too_much(clause: Clause) -> Found:
    """The question about more numbers than one statement tells, or more statements than one message."""
    said = " ".join(item.said for item in clause.items if item.sort != "break")[:40].strip()
    text = f"That is more than I can take in at once. Please send the rest again from \u201c{said}\u201d on."
    if not clause.beyond:
        text = f"There are too many numbers behind \u201c{said}\u201d for one sentence. Please send them again, one animal a line."
    return Found(Remark, {"text": clause.text(), "on": clause.today}, list(clause.items), Need("what", "", text))


UNDONE: Final = frozenset(
    {
        "haven't",
        "havent",
        "have not",
        "hasn't",
        "hasnt",
        "has not",
        "didn't",
        "didnt",
        "did not",
        "not",
        "never",
        "ain't",
        "aint",
        "can't",
        "cant",
    }
)


NOBODY: Final = frozenset({"none", "nobody", "neither", "no one", "nothing"})
YET: Final = frozenset({"yet", "more"})
DENYING: Final = frozenset({"nobody", "no one", "noone", "no"})


def _denied(clause: Clause) -> bool:
    """Whether the verb is denied: `hasn't kindled yet`, `no kits yet`, `not bred`, `none of them died`."""
    said = clause.words()
    nobody = None if NOBODY.isdisjoint(said) else next(i for i, item in enumerate(clause.items) if item.said in NOBODY)
    if (
        nobody is not None
        and not clause.sorted_as("num", "weight", "pair")
        and any(item.marks & {"die", "lose", "step", "eat", "dead"} for item in clause.items[nobody + 1 :])
    ):
        return True
    last_yet = -1 if YET.isdisjoint(said) else max(i for i, item in enumerate(clause.items) if item.said in YET)
    if "negation" not in clause.marks and DENYING.isdisjoint(said):
        return False
    for i, item in enumerate(clause.items):
        if item.said in {"nobody", "no one", "noone"} and any(after.marks & OPENS - {"had"} for after in clause.items[i + 1 : i + 4]):
            return True
        if "negation" in item.marks or (item.said == "no" and i + 1 < len(clause.items)):
            if item.said in UNDONE and i + 1 < len(clause.items) and "palpate" in clause.items[i + 1].marks:
                return "open" not in clause.items[i + 1].marks  # "didn't feel a thing in 22"
            if (item.said != "no" and item.marks & {"refuse", "miss", "ail", "unsure", "open", "not_dq", "temper:bad"}) or (
                clause.has("palpate") and clause.has("unsure")
            ):
                continue
            behind = clause.items[i + 1 : i + 5]
            if item.said == "no":
                yet = i < last_yet
                if yet and behind and behind[0].marks & OPENS:
                    return True  # "no palp yet"
                if behind and behind[0].marks & {"kits", "litter"} and (yet or (len(clause.items) <= 5 and not clause.has("miss"))):
                    return True
                continue
            if clause.has("box") and behind and behind[0].marks & {"box_in", "box_out"}:
                return True  # "box not in yet"
            if clause.said(i + 1) == "using" and clause.has("lounge", "toilet"):
                continue  # "isn't using her box right, she lies in it"
            for after in behind:
                if after.sort in {"num", "weight", "pair", "animal"} and after.sort != "animal":
                    break
                if after.marks & OPENS == {"count"} and any(item.marks & BIRTHS for item in clause.items[:i]):
                    break  # "she kindled! haven't counted yet" denies no birth
                if after.marks & OPENS or (after.marks & {"alive", "color", "pregnant"} and "dead" not in after.marks):
                    return True
    return False


def _of_others(clause: Clause) -> bool:
    """Whether a number counts some other animal: `14 chickens died`."""
    for i, item in enumerate(clause.items):
        if (
            "other_species" in item.marks
            and i
            and (clause.items[i - 1].sort == "num" or (i > 1 and clause.items[i - 2].sort == "num" and clause.items[i - 1].sort == "word"))
        ):
            return not any(other.sort == "animal" for other in clause.items)
    return False


def _first_mention(clause: Clause) -> Mention | None:
    explicit = clause.explicit()
    return clause.mention(explicit[0]) if explicit else None


def _who(clause: Clause) -> str | None:
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
    if opening is not None and clause.known(opening) and not clause.counted(opening) and not clause.has("other_species"):
        mention = clause.mention(opening)
        return mention.tag if mention else None
    lone = [i for i in clause.sorted_as("num") if clause.known(i) and not clause.counted(i) and i and clause.items[i - 1].sort == "word"]
    led = clause.led() if len(lone) != 1 else lone[0]
    mention = clause.mention(led) if led is not None and not clause.has("other_species") else None
    return mention.tag if mention else None


FIGURES: Final = frozenset({"num", "pair", "weight", "sum"})
BRINGING: Final = frozenset({"animal", "tagged"})
LEAVING: Final = frozenset({"died", "culled", "sold", "given_away"})
OF_THE_LIVING: Final = frozenset({"ailment", "fault", "temper", "condition"})
#: Verbs that no reading of their own statement may pass over.
VERBS: Final = frozenset({"weigh", "lose", "die", "sell", "cull", "wean", "kindle", "foster", "palpate", "treat", "tag", "list"})
#: Kinds that may stand beside such a verb of another kind.
BESIDE_VERB: Final = frozenset(
    {("weigh", "litter_weighed"), ("list", "sold"), ("weigh", "culled"), ("weigh", "condition"), ("treat", "ailment")}
)


#: What an animal loses and lives on.
NO_LIVES: Final = frozenset({"weight", "condition", "fur", "appetite", "interest"})


def _which_day(clause: Clause, found: Found, left: list[Item]) -> Need:
    """The question which of several days is meant."""
    days = [clause.items[i].said for i in range(len(clause.items)) if clause.items[i].sort == "date"] or [item.said for item in left]
    said = " and ".join(f"\u201c{day}\u201d" for day in days[:3])
    wanted = "on" if len(left) == 1 and any(names.json == "on" for names in field_names(found.fact)) else ""
    return Need("when", wanted, f"I can't make one day of {said}. Which day is it? For example: yesterday, or 24 nov.")


def _unread_verb(clause: Clause) -> str:
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


def _misheard(found: Found) -> Need | None:
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


def _distinct(founds: list[Found]) -> list[Found]:
    """Each fact once, however often the message says it, and where it is told most fully."""
    if len(founds) < 2 or _each_of_another(founds):
        return founds
    return _without_repeats(_without_repeats(founds)[::-1])[::-1]


def _each_of_another(founds: list[Found]) -> bool:
    """Whether no two readings are of one kind, or each is of another animal: none repeats another then."""
    if len({found.fact for found in founds}) == len(founds):
        return True
    for name in ("who", "doe"):
        told = {(found.fact, tag) for found in founds if (tag := found.values.get(name)) is not None}
        if len(told) == len(founds):
            return True
    return False


def _without_repeats(founds: list[Found]) -> list[Found]:
    """The readings that say more than any before them."""
    kept: list[Found] = []
    telling: dict[tuple[type[Fact], str, str], list[Found]] = {}  # a kind's field and what it says -> the readings that say so
    for found in founds:
        told = [(found.fact, name, repr(value)) for name, value in _told_by(found).items()]
        alike = min((telling.get(each, []) for each in told), key=len, default=kept)
        if not any(found.fact is other.fact and _says_no_more(found, other) for other in alike):
            kept.append(found)
            for each in told:
                telling.setdefault(each, []).append(found)
    return kept


def _told_by(found: Found) -> dict[str, Any]:
    """What a reading says; a second word for the same temper is no second fact."""
    return {name: value for name, value in found.values.items() if value is not None and (name, found.fact.kind) != ("sign", "temper")}


def _says_no_more(found: Found, other: Found) -> bool:
    """Whether a reading only repeats another."""
    return all(other.values.get(name) == value for name, value in _told_by(found).items())


def _subject(founds: list[Found]) -> str | None:
    """The animal last spoken of."""
    for found in reversed(founds):
        for name in ("who", "doe", "litter_of", "tag", "to"):
            tag = found.values.get(name)
            if isinstance(tag, str) and name != "to":
                return tag
    return None


def _fact(found: Found) -> Fact:
    known = {names.code for names in field_names(found.fact)}
    return found.fact(**{name: value for name, value in found.values.items() if name in known})


def _ask(found: Found, need: Need, rest: tuple[Found, ...]) -> Ask:
    if not need.wanted:
        return Ask(need.why, need.text, need.choices)
    return Ask(need.why, need.text, need.choices, _draft(found, need.wanted, rest))


def _draft(found: Found, wanted: str, rest: tuple[Found, ...] = ()) -> Draft:
    known = {
        name.rstrip("_"): value_to_json(value)
        for name, value in found.values.items()
        if value is not None and name.rstrip("_") != wanted.rstrip("_")
    }
    return Draft(found.fact.kind, known, wanted.rstrip("_"), tuple(_draft(other, wanted) for other in rest))


def _remark_fact(text: str, today: date, who: str | None) -> Fact:
    return Remark(text=text, on=today, who=who)


def _remark(text: str, today: date, who: str | None) -> Reading:
    """The words kept as they are."""
    if not any(sign.isalpha() for sign in text):
        return Reading()
    return Reading((_remark_fact(text, today, who),), None, "", who)
