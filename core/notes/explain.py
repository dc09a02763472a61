"""Why a note was read as it was: its words, what each was taken for, the rules that took them and those that almost did, and why it asks.

For whoever finds a note misread: `haynote read --explain`. Each rule is told with the line of the file where it took the words or gave up.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import PurePath
from typing import Final

from core.herd.state import Herd
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need
from core.notes.fact import Cents, Json, to_json, value_to_json
from core.notes.grammar import ALL, KIND_CUES
from core.notes.journal import Note
from core.notes.kinds import KIND_OF
from core.notes.layout.text import cleaned
from core.notes.listen import noted
from core.notes.reader import read
from core.notes.reading import Context, Message, Reading
from core.notes.replay import Book
from core.notes.slots.animals import Mention
from core.notes.slots.dates import Said
from core.notes.slots.items import Item
from core.notes.slots.tokens import Token
from core.notes.watching import PARTS, Step, watched

#: The kinds' names by their modules' names in `core.notes`.
KIND_IN: Final[Mapping[str, str]] = {f"kinds.{module.__name__.rpartition('.')[2]}": module.KIND.name for module in ALL}
#: A kind's own ways in: `read`, and `taken_back` of an undo said in other words.
WAYS_IN: Final = frozenset({"read", "taken_back"})
STOPS: Final[Mapping[str, str]] = {
    "is_tentative": "it says only what may be",
    "is_denied": "it says that something is not so",
    "counts_others": "it counts other animals",
}
ROADS: Final[Mapping[str, str]] = {
    "written_fact": "it is a sentence as the book writes it",
    "receipt_read": "it is a receipt",
    "_ticked": "it is a list with boxes, each line read by itself",
    "_foreign": "it is in another language",
    "whole_message": "it is one thing as a whole",
}


@dataclass(slots=True)
class Trial:
    """A kind that was asked what it can read in a statement."""

    room: str
    clause: Clause
    taken: list[tuple[Found, str]] = field(default_factory=list)  # with the place in the code
    ended: int = 0
    gave_nothing: str = ""  # the kind's last step before it gave up

    @property
    def kind(self) -> str:
        """The kind's name in the contract."""
        return KIND_IN[self.room]


@dataclass(slots=True)
class Pass:
    """One message, or one part of it, on its way through the reader."""

    text: str
    road: str = ""
    tokens: list[Token] = field(default_factory=list)
    items: list[Item] = field(default_factory=list)
    kept: list[Item] = field(default_factory=list)
    clauses: list[Clause] = field(default_factory=list)
    trials: list[Trial] = field(default_factory=list)
    stops: dict[int, str] = field(default_factory=dict)  # by the clause's id
    left: dict[int, list[Item]] = field(default_factory=dict)
    doubted: dict[int, str] = field(default_factory=dict)  # by the reading's id: who took it back
    verb: str = ""
    misheard: Need | None = None
    reading: Reading = field(default_factory=Reading)


def explained(book: Book, message: Message) -> tuple[Note, dict[str, Json]]:
    """The note that the message would be, and why, as plain values for JSON."""
    passes: list[Pass] = []

    def reads(message: Message, herd: Herd, context: Context = Context()) -> Reading:  # noqa: B008 - frozen
        reading, steps = watched(lambda: read(message, herd, context))
        passes.extend(passes_of(steps))
        return reading

    note = noted(book, message, reads)
    return note, {"readings": [told(one) for one in passes], "asks": why_asked(note, passes)}


# --- from steps to passes -----------------------------------------------------------------------------------------


def passes_of(steps: Iterable[Step]) -> list[Pass]:
    """The message as it went through the reader; a list with boxes gives one more for each part, before the whole."""
    done: list[Pass] = []
    under_way: list[Pass] = []
    trials: list[Trial] = []
    for step in steps:
        if (step.room, step.name) == ("reader", "read"):
            if not step.ends:
                under_way.append(Pass(cleaned(step.args[0].text)))
                continue
            done.append(under_way.pop())
            done[-1].reading = step.result or Reading()
        elif step.room in KIND_IN or step.room in PARTS:
            _in_kind(step, under_way[-1], trials)
        elif step.name == "Marked.take" and not step.ends and trials:
            trials[-1].taken.append((step.args[1], _place(*step.caller)))
        elif step.ends:
            _on_the_road(step, under_way[-1])
    return done


def _in_kind(step: Step, now: Pass, trials: list[Trial]) -> None:
    """A step inside a kind's own file, or a part of it."""
    if step.name in WAYS_IN:
        if step.ends:
            trials.pop().ended = step.line
        else:
            trials.append(Trial(step.room, step.args[0]))
            now.trials.append(trials[-1])
    elif step.ends and trials and "<" not in step.name:
        trials[-1].gave_nothing = "" if step.result else step.name


def _on_the_road(step: Step, now: Pass) -> None:
    """A step of the reader that ended."""
    match step.name:
        case "tokens":
            now.tokens = step.result
        case "Scan.run":
            now.items, now.kept = list(step.result), list(step.result)  # a note that takes nothing back is not put right
        case "without_taken_back":
            now.kept = list(step.result)
        case "statements":
            now.clauses = list(step.result)
        case "unexplained":
            now.left.setdefault(id(step.args[0]), step.result)
        case "unread_verb":
            now.verb = now.verb or step.result
        case "misheard":
            now.misheard = now.misheard or step.result
        case name if name in STOPS and step.result:
            now.stops[id(step.args[0])] = STOPS[name]
        case name if name in ROADS and step.result:
            now.road = ROADS[name]
        case name if step.room == "clauses.plausible" and step.result and step.caller[2] == "_doubtful":
            now.doubted[id(step.args[1])] = f"plausible.py, {name}"


def _place(file: str, line: int, name: str) -> str:
    """`kindling.py:131, read`."""
    return f"{PurePath(file).name}:{line}, {name.partition('.<')[0]}"


# --- from passes to plain values ----------------------------------------------------------------------------------


def told(one: Pass) -> dict[str, Json]:
    """One pass as plain values."""
    at_statements = {id(clause) for clause in one.clauses}
    whole = [trial for trial in one.trials if id(trial.clause) not in at_statements]
    tried: dict[int, list[Trial]] = {}
    for trial in one.trials:
        tried.setdefault(id(trial.clause), []).append(trial)
    users = _users(one)
    kept = {id(item) for item in one.kept}
    return {
        "text": one.text,
        "road": one.road or None,
        "tokens": [token.text for token in one.tokens],
        "items": [_item(item, users.get(id(item), set())) for item in one.items],
        "put_right": [item.said for item in one.items if id(item) not in kept],
        "whole": {"fired": _fired(one, whole), "nearly": [_nearly(trial) for trial in whole if not trial.taken]},
        "statements": [_statement(one, clause, tried.get(id(clause), [])) for clause in one.clauses],
        "facts": [to_json(fact) for fact in one.reading.facts],
        "unread": one.reading.unread,
    }


def _users(one: Pass) -> dict[int, set[str]]:
    """The kinds that used an item in a reading that stands, by the item's id."""
    users: dict[int, set[str]] = {}
    for trial in one.trials:
        for found, _ in trial.taken:
            for item in found.used if _taken_back(one, trial, found) is None else ():
                users.setdefault(id(item), set()).add(found.fact.kind)
    return users


def _item(item: Item, users: Iterable[str]) -> dict[str, Json]:
    """What a word or number was taken for, the cues that it is, and the kinds that used it."""
    return {"said": item.said, "as": item.sort, "value": _value(item), "cues": sorted(item.marks), "used_by": sorted(users)}


def _value(item: Item) -> str | None:
    """An item's value in words; None where its words are all there is."""
    match item.value:
        case None:
            return None
        case Mention() as mention:
            return " or ".join(mention.tags) or f"unknown: {mention.said}"
        case Said() as said:
            return " ".join([said.shape, *(str(part) for part in (said.modifier, said.words, said.year) if part)])
        case (grams, *_) if item.sort == "weight":
            return f"{grams} g"
        case Decimal() | int() as cents if item.sort == "money":
            return str(value_to_json(Cents(cents)))
        case Decimal() as number:
            return f"{number.normalize():f}"
        case tuple() as parts:
            return " ".join(str(part) for part in parts if part is not None)
        case value:
            return str(value)


def _statement(one: Pass, clause: Clause, trials: Iterable[Trial]) -> dict[str, Json]:
    """One statement: what it says, the rules that fired, those that almost did, and what nobody took."""
    return {
        "text": clause.text(),
        "about": clause.subject.tag if clause.subject else None,
        "not_read": one.stops.get(id(clause)),
        "fired": _fired(one, trials),
        "nearly": [_nearly(trial) for trial in trials if not trial.taken and _cues(trial)],
        "left": [item.said for item in one.left.get(id(clause), [])],
    }


def _fired(one: Pass, trials: Iterable[Trial]) -> list[dict[str, Json]]:
    """The readings that were made, each with its place in the code; one that was taken back says by whom."""
    return [
        {
            "kind": found.fact.kind,
            "at": place,
            "cues": _cues(trial, found.used),
            "says": {name.rstrip("_"): value_to_json(value) for name, value in found.values.items() if value is not None},
            "lacks": {"why": found.need.why, "wanted": found.need.wanted} if found.need else None,
            "taken_back": _taken_back(one, trial, found),
        }
        for trial in trials
        for found, place in trial.taken
    ]


def _taken_back(one: Pass, trial: Trial, found: Found) -> str | None:
    """Who took the reading back; None where it stands."""
    if any(each is found for each in trial.clause.found):
        return None
    return one.doubted.get(id(found), "the same message tells why the animal left")


def _nearly(trial: Trial) -> dict[str, Json]:
    """A kind that knew words of the statement and read nothing: the words, and where it gave up."""
    file = trial.room.removeprefix("kinds.") + ".py"
    after = f", after {trial.gave_nothing} gave nothing" if trial.gave_nothing else ""
    return {"kind": trial.kind, "cues": _cues(trial), "gave_up": f"{file}:{trial.ended}{after}"}


def _cues(trial: Trial, among: Iterable[Item] | None = None) -> dict[str, list[str]]:
    """The words that the kind knows, with what they are to it."""
    items = trial.clause.items if among is None else among
    return {item.said: sorted(item.marks & KIND_CUES[trial.kind]) for item in items if item.marks & KIND_CUES[trial.kind]}


def why_asked(note: Note, passes: Iterable[Pass]) -> dict[str, Json] | None:
    """Where the note's question comes from: a rule that lacks something, words that no rule took, or the book."""
    ask = note.ask
    if ask is None:
        return None
    for one in passes:
        if one.reading.ask is not None and one.reading.ask.text == ask.text:
            return {"why": ask.why, "because": _because(one, ask.text)}
    about = f" of {ask.draft.kind} ({KIND_OF[ask.draft.kind].check.__module__.rpartition('.')[2]}.py)" if ask.draft else ""
    return {"why": ask.why, "because": f"the words are clear; the check{about} against the book, or the talk before, asks"}


def _because(one: Pass, text: str) -> str:
    """What in the words asks."""
    for trial in one.trials:
        for found, place in trial.taken:
            if found.need is not None and found.need.text == text:
                return f"{found.fact.kind} ({place}) lacks {found.need.wanted or 'clear words'}"
    if one.misheard is not None and one.misheard.text == text:
        return "the animal may have been misheard"
    if one.verb and f"“{one.verb}”" in text:
        return f"no rule took the verb “{one.verb}”"
    left = [item.said for items in one.left.values() for item in items]
    if left:
        return "no rule took " + ", ".join(f"“{said}”" for said in left)
    return one.road or "no rule read anything in it"
