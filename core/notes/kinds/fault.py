"""Something that counts against an animal at a show or for breeding."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, parts, quoted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultSeen:
    """Something that counts against an animal at a show or for breeding."""

    kind: ClassVar[str] = "fault"

    who: Tag
    fault: str
    on: date
    disqualifies: bool | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("33 has a torn ear", ({"who": "33", "fault": "torn ear", "on": "2026-11-25"},)),
    Example("fault 31: bowed legs", ({"who": "31", "fault": "bowed legs", "on": "2026-11-25"},)),
    Example("R22 split penis dq", ({"who": "R22", "fault": "split penis", "on": "2026-11-25", "disqualifies": True},)),
    Example("32 white hairs, not a dq", ({"who": "32", "fault": "white hairs", "on": "2026-11-25", "disqualifies": False},)),
    Example("R21 has a kinked tail", ({"who": "R21", "fault": "kinked tail", "on": "2026-11-25"},)),
    Example("Flint has a moon eye", ({"who": "3", "fault": "moon eye", "on": "2026-11-25"},)),
    Example("I noticed 32 has a white toenail so he's out", ({"who": "32", "fault": "white toenail", "on": "2026-11-25"},)),
    Example(
        "r twenty one has a split penis that's a dq",
        ({"who": "R21", "fault": "split penis", "on": "2026-11-25", "disqualifies": True},),
    ),
    Example("Faults: 31, white toenail (DQ).", ({"who": "31", "fault": "white toenail", "on": "2026-11-25", "disqualifies": True},)),
    Example("32 has atorn ear", ({"who": "32", "fault": "torn ear", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "5 snotty nose",
    "trimmed a toenail on 9",
    "31 type 4",
    "my fault 31 got into the garden",
)

OPENS: Final = ("fault",)
CUES: Final = {
    "fault": "crooked teeth | long teeth | overgrown teeth | misaligned teeth | off bite | bad bite | toenail white | toenail wht | wht toenail | wht toe nail | wite toenail | wite toe nail | whit toenail | white toe | white nails | white toenail | white toenails | white nail | white toe nail | white spot | white foot | stray white hairs | scattered white hairs | white hairs | malocclusion | bad teeth | wolf teeth | buck teeth | buckteeth | butting teeth"
    " | cow hocked | cow hocks | split penis | pinched hindquarters | pinched hips | pinched hq | snipey | moon eye | wall eye | wry tail | broken tail | crooked tail | bent tail | kinked tail | screw tail | narrow loin | long shoulders | long shoulder | hutch stain"
    " | mismatched toenails | mismatched toenail | undercut | undercut hips | chopped | flat over the loin | light eyes | eye color | wrong eye color | off teeth | tooth problem | faults | fault | extra toenail | missing toenail"
    " | bent ear | lopped ear | dewlap too big | big dewlap | woolly coat | thin coat | poor fur | long fur | rough coat | bad undercolor | white undercolor | brindling | smut | crooked front leg | crooked legs | bowed legs | one testicle"
    " | no testicles | undescended testicle | cryptorchid | double vulva | frosted ears | body tumor | rabbit syphilis | torn ear | ear too long | long ears | short ears | narrow hips | hips pinched | low shoulders | high shoulders | big ears | curled whiskers | guard hairs | pinched | disqualifying fault | hollow loin | mandolin | head too small | overweight for show",
    "dq": "dq | d q | dqd | disqualified | disqualification | disqualifies | disqualify | disqualifying | thats a dq | dqs | disqual | dee cue | dee q | d cue | dee queue | deeq",
    "not_dq": "not a disqualification | not disqualified | not a disqualifier | not a dq | no dq | not disqualifying | isnt a dq | not dq",
}  # fmt: skip


def read(c: Clause) -> None:
    """A fault, and whether it disqualifies where that was said."""
    places = c.each("fault")
    dq = c.first("dq", "not_dq")
    if not places and dq is None and "fault" not in c.virtual:
        return
    if not places and dq is None and c.found:
        return  # "..., 32 has to go" tells something else
    pick = c.subject_of(places[0] if places else dq)
    if pick is None or (dq is None and places and all(_of_somebody(c, i) for i in places)):
        return
    disqualifies = None if dq is None else not ("not_dq" in c.items[dq].marks or _denied_before(c, dq))
    named = [i for i in places if c.said(i) not in {"fault", "faults"}]
    used = [c.items[i] for i in places] + ([c.items[dq]] if dq is not None else [])
    counted = [i - 1 for i in named if c.whole(i - 1) is not None and c.items[i - 1] not in pick.items]  # "2 white toenails"
    text = " ".join(c.said(i) for i in sorted({*named, *counted})) if named else _words(c, pick, places, dq)
    if not named and text in {"none", "nil", "nothing"}:
        return  # "faults: 31, white toenail; 32, none"
    need = None if text else Need("what", "fault", "What is the fault?")
    numbers = [c.items[i] for i in (counted if named else c.sorted_as("num")) if c.items[i] not in pick.items]
    c.take(c.past(FaultSeen, pick, "who", {"fault": text, "disqualifies": disqualifies}, [*used, *numbers], need))


BETWEEN: Final = 2  # not a figure: items: `is not really a disqualification`


def _denied_before(c: Clause, dq: int) -> bool:
    """`though that is not a disqualification`."""
    return any("negation" in item.marks for item in c.items[max(0, dq - BETWEEN - 1) : dq])


def _of_somebody(c: Clause, i: int) -> bool:
    """`my own fault`, `nobody's fault`: a person is to blame."""
    return c.said(i) == "fault" and (c.said(i - 1) in {"my", "own", "our", "your", "their"} or c.said(i - 1).endswith("body's"))


def _words(c: Clause, pick: Pick, places: list[int], dq: int | None) -> str:
    skip = {id(item) for item in pick.items} | {id(c.items[i]) for i in places} | ({id(c.items[dq])} if dq is not None else set())
    words = [
        item.said
        for item in c.items
        if id(item) not in skip
        and item.sort in {"word", "num"}
        and item.said not in {"has", "a", "is", "got", "the", "for", "that's", "thats", "with"}
    ]
    return " ".join(words)


def check(fact: FaultSeen, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: FaultSeen, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: FaultSeen, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The fault, and whether it disqualifies."""
    weight = {True: "disqualifies", False: "does not disqualify", None: None}[fact.disqualifies]
    return (dated(parts(f"{called(after, fact.who)}: {fact.fault}", weight), fact.on, after),)


WRITTEN = ("{who:TAG} fault {fault:TEXT}(?:, (?P<disqualifies>disqualifies|does not disqualify))?",)


def show(fact: FaultSeen, _herd: Herd) -> str:
    """`2026-11-25: 31 fault "white toenail", disqualifies`."""
    return noted(
        fact.on,
        parts(
            f"{fact.who} fault {quoted(fact.fault)}", {True: "disqualifies", False: "does not disqualify", None: None}[fact.disqualifies]
        ),
    )


KIND = Kind(fact=FaultSeen, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
