"""Reading a note: from the words to facts, or to the one question that must be asked first.

The message is cut into statements, every kind takes what it can explain, and the rest is weighed: a number, weight, day or animal that
nobody took withholds the facts beside it and asks. Words that nobody took ask nothing.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from functools import lru_cache
from typing import Any, Final
from zoneinfo import ZoneInfo

from core.herd.state import Herd
from core.notes.as_facts import kept_as_remark, remark_of
from core.notes.clauses.asked import ASKS
from core.notes.clauses.asked_about import ASKING
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Scene
from core.notes.clauses.taken_back import CORRECTORS, without_taken_back
from core.notes.clauses.unreal import BARE_VERBS
from core.notes.grammar import LEAST_BEFORE, LEXICON, PLAIN
from core.notes.kinds import reminder
from core.notes.layout.forms import feed_form
from core.notes.layout.heads import headless, tells
from core.notes.layout.receipt import is_receipt, receipt_read
from core.notes.layout.sheets import sheet_told
from core.notes.layout.tables import table_told
from core.notes.layout.text import cleaned
from core.notes.reading import Context, Message, Reading
from core.notes.slots.animals import words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.items import only_signs
from core.notes.slots.lexicon import FOREIGN, FOREIGN_SHARED
from core.notes.slots.tokens import Token, tokens
from core.notes.talk.recall import subject_of
from core.notes.told import Statements
from core.notes.whole import ASKED_FOR, headed_message, whole_message
from core.notes.written import written_fact

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
    words = words_of(herd)
    if ("\n" in text or ":" in text or "[" in text) and (page := _laid_out(message, text, herd, context, today, told=told)) is not None:
        return page
    found = tokens(text)
    scene = Scene(herd, words, today, context, message.text, f"{here.hour:02}:{here.minute:02}", {}, found)
    if _foreign(found):
        return kept_as_remark(text, today, None)
    begin, writing = headless(found)
    if begin and (behind := _behind_head(message, text, found, begin, herd, context, today, writing=writing)) is not None:
        return behind
    whole = Clause(Scan(found, words, LEXICON).run(), scene)
    if whole.says(CORRECTORS):
        whole = Clause(without_taken_back(whole.items), scene)
    if only_signs(whole.items):
        return Reading()
    if not parted and (apart := _apart(whole, message, text, herd, context)) is not None:
        return apart
    if "remind" in whole.marks and (reminded := _reminder_behind(whole, found, message, text, herd, context)) is not None:
        return reminded
    return whole_message(whole, text) or headed_message(whole, text) or Statements(scene, whole.items, text).reading()


def _laid_out(message: Message, text: str, herd: Herd, context: Context, today: date, *, told: bool) -> Reading | None:
    """A receipt, a table, a sheet off the wall or a list with boxes; nothing where the message is none of these."""
    if "\n" in text and is_receipt(text):
        return receipt_read(text, today, herd.settings.date_order)
    if "\n" in text and (rows := table_told(message.text)) is not None:
        return read(replace(message, text=rows), herd, context)
    if "\n" in text and (form := feed_form(text)) is not None:
        return read(replace(message, text=form), herd, context)
    if not told and ("\n" in text or ":" in text) and (sheet := sheet_told(text, words_of(herd))) is not None:
        return read(replace(message, text=sheet), herd, context, told=True)
    if "[" in text and _TICK.search(text):
        return _ticked(replace(message, text=text), herd, context, today)
    return None


def _behind_head(
    message: Message, text: str, found: list[Token], begin: int, herd: Herd, context: Context, today: date, *, writing: bool
) -> Reading | None:
    """What is told behind `please`, `ok so` or `can you log`; nothing where the head belongs to the note."""
    behind = read(replace(message, text=text[begin:]), herd, context)
    if tells(behind) and not writing and _only_ordered(found, begin, behind):
        return kept_as_remark(text, today, behind.subject)
    if tells(behind) or (not writing and behind.ask is None and any(fact.kind == "query" for fact in behind.facts)):
        return behind
    return None


#: What may be asked of the program itself.
GRANTED: Final = frozenset({"remind", "skipped", "setting", "undo", "correct", "for_sale", "query", "remark"})


def _only_ordered(found: list[Any], begin: int, behind: Reading) -> bool:
    """Whether a polite head asks somebody to do a deed of the barn: `please wean 16`."""
    if all(fact.kind in GRANTED for fact in behind.facts):
        return False
    politely = found[0].key in {"please", "pls", "plz"}
    return politely and any(token.start == begin and token.key in BARE_VERBS for token in found[:3])


_OPEN_QUESTION: Final = ("who", "what", "when", "which", "why", "how", "where")
_BULLET: Final = re.compile(r"^\s*[-+*\u2022]\s+")
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
    pieces = [bare for piece in _ASKED_OR_LINE.findall(text) if (bare := _BULLET.sub("", piece).strip())]
    if len(pieces) == 1:
        return None
    readings = [read(replace(message, text=piece), herd, context) if _may_ask(piece) else None for piece in pieces]
    asked = [reading for reading in readings if reading is not None and _asks_alone(reading)]
    rest = "\n".join(piece for piece, reading in zip(pieces, readings, strict=True) if reading is None or not _asks_alone(reading))
    if len(asked) > 1 and rest.rstrip(" :").lower() in {"", *ASKED_FOR}:
        return replace(asked[-1], facts=tuple(fact for reading in asked for fact in reading.facts))
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
    if all(fact.kind == "query" for fact in told.facts) and "".join(rest).strip(" :").lower() in {"setting", "settings"}:
        told = Reading()  # the head of a list of them, and no question
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
                remark_of(line.strip(), today, read(replace(message, text=_EMPTY_BOX.sub(" note ", line)), herd, context).subject)
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
