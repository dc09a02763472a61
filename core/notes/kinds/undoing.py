"""Taking a note back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Final

from core.herd.state import Herd
from core.notes.clauses.clause import Clause
from core.notes.clauses.leftovers import ASKED
from core.notes.clauses.scene import Found, Need, unknown_animal
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.slots.items import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo:
    """Taking a note back."""

    kind: ClassVar[str] = "undo"

    who: Tag | None = None
    about: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("forget I said that", ({},)),
    Example("delete 31", ({"who": "31"},)),
    Example("undo the last one", ({},)),
    Example("take that back", ({},)),
    Example("Scratch that last one", ({},)),
    Example("Never mind", ({},)),
    Example("undo 31", ({"who": "31"},)),
    Example("Undo: last entry.", ({},)),
    Example("undo the kindling", ({"about": "kindled"},)),
    Example("forget what i just said", ({},)),
    Example("remove the weight on 31", ({"who": "31", "about": "weighed"},)),
)
NOT_THIS: tuple[str, ...] = (
    "delete 14's photo",
    "undo the latch on 14",
    "14 can undo the latch",
    "take back 31 from the buyer",
    "can't undo the latch",
    "14 kindled 8",
)

OPENS: Final = ()
CUES: Final = {
    "undo": "delete | erase | ignore my last | ignore the last | ignore last | ignore my last message | undo | undoo | take that back | take it back | scratch that | never mind that | delete that | delete the last | forget that | undo that | cancel that | remove that | that was wrong | ignore that | erase that | scratch the | disregard"
    " | never mind | nevermind | delete the | take back | remove the last | strike that | nvm | undo last | undo the last | undo it | forget what i said | forget i said that | forget i said it | forget i said anything | forget what i just said | remove the sale | remove the weight | remove the weighing | remove the note | remove the entry",
}  # fmt: skip
#: Words for a kind of note, as people name it when they take one back.
ABOUT: Final = {
    "wgt": "weighed", "box": "nest_box", "nb": "nest_box", "nestbox": "nest_box", "kindle": "kindled", "breed": "bred", "treated": "treated", "meds": "treated",
    "weaned": "weaned", "lost": "kits_lost", "losses": "kits_lost", "moved": "moved", "fostered": "fostered", "fostering": "fostered", "palp": "palpated", "palpated": "palpated", "missed": "missed",
    "butchering": "culled", "butchered": "culled", "death": "died", "listed": "for_sale", "tag": "tagged", "tattooed": "tagged", "bcs": "condition", "condition": "condition", "feed": "feed_bought",
    "tats": "tagged", "colors": "litter_colors", "score": "scored", "scores": "scored", "show": "shown", "setting": "setting", "ailment": "ailment", "temperament": "temper",
    "weight": "weighed", "wt": "weighed", "wts": "weighed", "weights": "weighed", "weigh": "weighed", "wait": "weighed", "weighing": "weighed", "kindling": "kindled", "litter": "kindled", "breeding": "bred",
    "mating": "bred", "sale": "sold", "loss": "kits_lost", "wean": "weaned", "weaning": "weaned", "move": "moved", "foster": "fostered", "palpation": "palpated",
    "cull": "culled", "fault": "fault", "plan": "planned", "reminder": "remind", "remark": "remark", "treatment": "treated", "tattoo": "tagged", "kindled": "kindled", "bred": "bred", "sold": "sold",
    "gift": "given_away", "giving": "given_away", "died": "died", "culled": "culled", "given_away": "given_away", "shot": "treated", "listing": "for_sale", "ration": "ration", "color": "color", "temper": "temper", "count": "kit_count", "miss": "missed", "weighed": "weighed",
}  # fmt: skip

#: What the weather is called; elsewhere in a message it may be what the kits died of.
WEATHER: Final = frozenset({"weather", "cold", "snap", "frost", "freeze", "heat", "heatwave", "storm"})
#: What a kind is called where it is offered to be taken back; any other by its own name.
NOUNS: Final = {
    "weighed": "weight", "kindled": "kindling", "bred": "breeding", "sold": "sale", "kits_lost": "loss", "weaned": "weaning", "moved": "move",
    "fostered": "fostering", "palpated": "palpation", "missed": "miss", "culled": "cull", "died": "death", "planned": "plan", "remind": "reminder",
    "treated": "treatment", "tagged": "tattoo", "given_away": "gift", "for_sale": "listing", "kit_count": "count", "nest_box": "box", "scored": "score",
    "shown": "show", "litter_colors": "colors", "feed_bought": "feed",
}  # fmt: skip


def noun(kind: str) -> str:
    """A kind of note as a person names it when it is taken back."""
    return NOUNS.get(kind, kind)


def taken_back(c: Clause) -> None:
    """`we didn't breed fifteen after all`."""
    places = c.explicit() or [i for i in c.sorted_as("num") if c.known(i)]
    c.take(Found(Undo, {"who": (c.mention(places[0]) or Mention((), "")).tag if places else None}, list(c.items)))


def read(c: Clause) -> None:
    """The person takes a note back: the last one, or that of an animal or a kind."""
    cue = c.first("undo")
    if cue is None or (cue and "negation" in c.items[cue - 1].marks):
        return
    about = next((ABOUT[word] for item in c.items for word in item.said.split() if word in ABOUT), None)
    if about is None and any(word in WEATHER for item in named_behind(c, cue) for word in item.said.lower().split()):
        about = "weather"
    places = c.explicit() or [i for i in c.sorted_as("num") if c.known(i)]
    if _of_a_thing(c, cue):
        return
    mention = (c.mention(places[-1]) or Mention((), "")) if places else Mention((), "")
    values: dict[str, object] = {"about": about, "who": mention.tag}
    need = unknown_animal(mention, "who", c.scene.words) if places and mention.tag is None else None
    loose = [
        item
        for i, item in enumerate(c.items)
        if item.sort in ASKED and i not in places and c.known(i) is None and not (item.spoken and item.value == 1)
    ]
    if need is None and loose and about is None:
        text = f"I can't place \u201c{loose[0].said}\u201d in that. What shall I take back? For example: \u201cundo\u201d, or \u201cundo the weight on 31\u201d."
        need = Need("which_number" if loose[0].sort == "num" else "what", "", text)
    c.take(Found(Undo, values, list(c.items), need))


def asks_of_undoing(c: Clause) -> bool:
    """`how do i undo`, `what did i just undo`: asked, and nothing taken back by it."""
    cue, opening = c.first("undo"), c.opening()
    if cue is None or opening is None or opening >= cue or any(item.sort == "mark" for item in c.items[opening:cue]):
        return False
    said = " ".join(item.said.lower() for item in c.items[opening:cue]).split()
    return said[0] == "did" or (said[0] in ASKING_OF and not AUXILIARIES.isdisjoint(said))


#: They begin a question about undoing, with one of the others behind them.
ASKING_OF: Final = frozenset({"how", "what", "why", "when", "which", "who"})
AUXILIARIES: Final = frozenset({"do", "did", "does", "to", "can", "could", "was", "were", "is", "have", "has", "would", "should"})


def named_behind(c: Clause, cue: int) -> list[Item]:
    """The items behind the undo that name what is taken back, up to the end of the phrase; small words left out."""
    told: list[Item] = []
    for item in c.items[cue + 1 :]:
        if item.sort == "break" or item.said.lower() in ENDS or (told and item.said.lower() == "that"):
            break
        if item.sort != "mark" and item.said.lower() not in SMALL | BETWEEN and not (item.spoken and item.value == 1):
            told.append(item)
    return told


def _of_a_thing(c: Clause, cue: int) -> bool:
    """`undo the latch`, `take back 31 from the buyer`: what is undone or taken back is no note."""
    if c.said(cue) == "take back" and c.known(cue + 1) is not None and c.said(cue + 2) in {"from", "to", "home"}:
        return True
    place = cue + 1
    while c.said(place) in {"the", "my", "that", "last", "this", "our"}:
        place += 1
    if place < len(c.items) and c.items[place].unit == "possessive":
        place += 1  # "delete 14's photo"
    item = c.items[place] if place < len(c.items) else None
    return (
        c.said(cue) in {"undo", "delete", "erase"}
        and item is not None
        and item.sort == "word"
        and all(mark.startswith("ask:") for mark in item.marks)
        and item.said not in SMALL
        and item.said.split(" ")[0] not in ABOUT
    )


#: Words that may stand beside the undoing.
SMALL: Final = frozenset(
    """dat tht last one it note notes entry entries message messages please ok oh oops no wait sorry i we was wrong just sent said typed wrote thing again
    what everything all both previous first second latest record records""".split()  # noqa: SIM905 - a table of words
)

#: Small words inside the phrase that names it, and what ends that phrase.
BETWEEN: Final = frozenset("the my our this that a an on of for from to in at with about by and 's said thing things bit stuff".split())  # noqa: SIM905 - a table of words
ENDS: Final = frozenset(
    [
        ",",
        ".",
        ";",
        "!",
        "?",
        "-",
        "(",
        "because",
        "cause",
        "cuz",
        "coz",
        "since",
        "as",
        "i",
        "i'm",
        "im",
        "i've",
        "ive",
        "it",
        "it's",
        "its",
        "was",
        "wasn't",
        "he",
        "she",
        "they",
        "you",
        "we",
        "not",
        "but",
    ]
)


def reply(_fact: Undo, _before: Herd, _after: Herd) -> tuple[str, ...]:
    """Nothing: what was taken back is told where the journal is known."""
    return ()


WRITTEN = ("undo(?: the {about:KIND})?(?: on {who:TAG})?",)


def show(fact: Undo, _herd: Herd) -> str:
    """`undo the weighed on 31`."""
    about = f" the {fact.about}" if fact.about is not None else ""
    return f"undo{about}" + (f" on {fact.who}" if fact.who is not None else "")


KIND = Kind(fact=Undo, examples=EXAMPLES, not_this=NOT_THIS, reply=reply, show=show, written=WRITTEN)
