"""Messages that are one thing as a whole: a correction, an undo, a question, a setting or a reminder, and what may stand beside it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.notes.as_facts import ask_for, fact_of, kept_as_remark, subject_told
from core.notes.clauses.asked import ASKS, MARKS_OF_QUESTION, PLACES_OF_QUESTION, RHETORICAL, asks_outright, is_question
from core.notes.clauses.asked_about import ASKING
from core.notes.clauses.asked_barn import barn_asked
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found
from core.notes.clauses.unplaced import animal_about
from core.notes.grammar import ENDS, FIGURES, LEAST_BEFORE, OPENS, PLAIN
from core.notes.kinds import correction, query, reminder, setting, undoing
from core.notes.reading import Reading
from core.notes.settings_told import is_setting, pieces_of, read_settings
from core.notes.slots.items import Item, marks_of
from core.notes.told import Statements

_END: Final = Item("mark", 0, 0, None, frozenset(), ".")  # between sentences
AT_ONCE: Final = frozenset({"never mind", "nevermind", "nvm", "scratch that", "forget that", "strike that"})
ASKED_FOR: Final = frozenset({"requested", "request", "requests", "query", "queries", "question", "questions", "wanted"})
NOT_DONE: Final = frozenset({"didnt", "didn't", "did not"})
BEFORE_UNDO: Final = 4  # not a figure: items: words such as `oh shoot` before it


def whole_message(whole: Clause, text: str) -> Reading | None:
    """A correction, an undo, a question, a setting or a reminder takes the whole message."""
    short = len(whole.items) <= PLACES_OF_QUESTION * 2
    if (whole.has("undo") and _takes_itself_back(whole)) or _asked_and_denied(whole):
        return kept_as_remark(text, whole.today, animal_about(whole))
    _read_amends(whole, text, short=short)
    if whole.found:
        return _told(whole)
    if whole.has("setting") and short:
        apart = _settings_apart(whole, text)
        if apart is not None:
            return apart
        if is_setting(whole):
            read_settings(whole)
    if not whole.found and _wants_reminding(whole):
        reminder.read(whole)
    if not whole.found and (whole.said(0) in ASKED_FOR and whole.said(1) in {":", ","}):
        _read_questions(whole)
    return _told(whole) if whole.found else _asked(whole, text)


def _read_amends(whole: Clause, text: str, *, short: bool) -> None:
    """`undo`, `no, 15 not 14`, `didn't sell him after all`, and a day alone right after a note."""
    if short and undoing.asks_of_undoing(whole):
        how = whole.said(whole.opening() or 0).startswith("how")
        whole.take(Found(query.Query, {"about": "help" if how else "journal"}, list(whole.items)))
    elif whole.has("undo") and short and _undoes(whole):
        undoing.read(whole)
    elif short and whole.scene.context.last and "after all" in text.lower() and whole.says(NOT_DONE):
        undoing.taken_back(whole)
    elif short and whole.has("correct"):
        correction.read(whole)
    elif short and whole.scene.context.last and whole.has("lose"):
        correction.fewer(whole)
    if not whole.found and whole.scene.context.last and len(whole.items) <= LEAST_BEFORE and whole.dates():
        correction.day_alone(whole)


def _undoes(whole: Clause) -> bool:
    """Whether the undo stands near the head, or nothing that it may be about is told."""
    near = (whole.first("undo") or 0) <= BEFORE_UNDO
    return near or not [i for i in whole.sorted_as("num", "pair", "weight") if whole.whole(i) != 1]


def _wants_reminding(whole: Clause) -> bool:
    """Whether the message asks for a reminder, in whatever words."""
    return (
        (whole.has("remind") and _is_reminder(whole))
        or (whole.has("appointment") and reminder.is_appointment(whole))
        or reminder.is_intended(whole)
        or reminder.is_told_to(whole)
    )


def _asked(whole: Clause, text: str) -> Reading | None:
    """The question that the message is, or that stands behind what it tells."""
    if (behind := _asked_behind(whole, text)) is not None:
        return behind
    if (about := barn_asked(text)) is not None:
        return Reading((fact_of(Found(query.Query, about)),))
    if not is_question(whole, text):
        return None
    query.read(whole)
    if whole.found:
        return replace(_told(whole), unread=_figures_behind(whole))
    if any(item.sort == "word" for item in whole.items) and (text.rstrip().endswith("?") or asks_outright(whole)):
        return kept_as_remark(text, whole.today, animal_about(whole))
    return None


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
    if not is_question(asked, f"{asked.text()}{'?' if plainly else ''}"):
        return None
    query.read(asked)
    if not asked.found and not plainly:
        return None
    if not asked.found and not PLAIN.issuperset(asked.sorts()):
        return Statements(whole.scene, whole.items, text).reading()  # its figure is asked about
    told = Statements(whole.scene, whole.items[:begin], text).reading()
    if not any(fact.kind not in {"remark", "query"} for fact in told.facts):
        return None
    return replace(told, facts=(*told.facts, *(fact_of(found) for found in asked.found)))


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
    told = Statements(whole.scene, head, " ".join(item.said for item in head)).reading()
    return any(fact.kind not in {"remark", "query"} for fact in told.facts)


def headed_message(whole: Clause, text: str) -> Reading | None:
    """The same at the head of small talk: `undo that one, I was looking at the wrong cage, that's what I get for ...`.

    Only where nothing behind it could be a record: no figure, no animal, no verb of the barn said of `him` or `her`.
    """
    asked = "?" in text and whole.said(whole.opening() or 0) in ASKING and not text.lower().startswith(RHETORICAL)
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
    if not head.found and not asked and head.has("setting") and is_setting(head):
        read_settings(head)
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


def _settings_apart(whole: Clause, text: str) -> Reading | None:
    """`we have 24 cages. feed is 21.50 a bag now`, `moss gets 1 cup; feed is 23 a bag now`: sentences that are settings, each whole, beside others."""
    clauses = pieces_of(whole, ENDS)
    if len(clauses) < 2:  # not a figure: one sentence is read as a whole
        return None
    settings = [clause for clause in clauses if clause.has("setting") and is_setting(clause)]
    for clause in settings:
        setting.read(clause)
    found = [found for clause in settings for found in clause.found]
    if not settings or len(found) != len(settings) or any(each.need is not None for each in found):
        return None
    rest = [item for clause in clauses if clause not in settings for item in (*clause.items, _END)]
    others = Statements(whole.scene, rest, text).reading() if rest else Reading()
    small_talk = PLAIN.issuperset([item.sort for item in rest])
    facts = tuple(fact for fact in others.facts if not small_talk or fact.kind != "remark")
    return replace(others, facts=(*(fact_of(each) for each in found), *facts))


def _told(whole: Clause) -> Reading:
    asked = next(((found, found.need) for found in whole.found if found.need is not None), None)
    if asked is not None:
        return Reading((), ask_for(*asked, ()), "", subject_told([asked[0]]))
    return Reading(tuple(fact_of(found) for found in whole.found), None, "", subject_told(whole.found))


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
