"""A medicine is given."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import ClassVar, Final

from core import words
from core.handbook import health
from core.herd.changes import seen
from core.herd.questions import days_later
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.amounts import age_in_days
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.common_words import COMMON
from core.notes.slots.items import Item
from core.notes.telling import called, dated, noted, parts, quoted, said, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Treated:
    """A medicine is given."""

    kind: ClassVar[str] = "treated"

    who: Tag
    with_: str
    on: date
    dose: str | None = None
    withdrawal_days: int | None = None


EXAMPLES: tuple[Example, ...] = (
    Example(
        "22 ivermectin 0.2 ml\n5 ivermectin 0.3 ml\nwithdrawal 28 days",
        (
            {"who": "22", "with": "ivermectin", "dose": "0.2 ml", "withdrawal_days": 28, "on": "2026-11-25"},
            {"who": "5", "with": "ivermectin", "dose": "0.3 ml", "withdrawal_days": 28, "on": "2026-11-25"},
        ),
    ),
    Example("ivermectin 2-cc 14", ({"who": "14", "with": "ivermectin", "dose": "2 - cc", "on": "2026-11-25"},)),
    Example("5 mites tx ivermectin", ({"who": "5", "with": "ivermectin", "on": "2026-11-25"},)),
    Example(
        "gave moss point two cc of ivermectin hold him twenty eight days",
        ({"who": "5", "with": "ivermectin", "on": "2026-11-25", "dose": "point two cc", "withdrawal_days": 28},),
    ),
    Example(
        "gave 5 penicillin .3 ml, 30 day withdrawal",
        ({"who": "5", "with": "penicillin", "on": "2026-11-25", "dose": ".3 ml", "withdrawal_days": 30},),
    ),
    Example("wormed 22 with fenbendazole", ({"who": "22", "with": "fenbendazole", "on": "2026-11-25"},)),
    Example("treated Moss for ear mites with ivermectin .2 ml", ({"who": "5", "with": "ivermectin", "on": "2026-11-25", "dose": ".2 ml"},)),
    Example("22 enrofloxacin 0.5 ml", ({"who": "22", "with": "enrofloxacin", "on": "2026-11-25", "dose": "0.5 ml"},)),
    Example("9 ivermectin .3cc", ({"who": "9", "with": "ivermectin", "on": "2026-11-25", "dose": ".3 cc"},)),
    Example("9 zornol .3cc", ({"who": "9", "with": "zornol", "on": "2026-11-25", "dose": ".3 cc"},)),
    Example("gave 22 zornol, 14 days withdrawal", ({"who": "22", "with": "zornol", "on": "2026-11-25", "withdrawal_days": 14},)),
    Example(
        "Treatment: doe 22, ivermectin 0.2 cc, 24 Nov. Withdrawal: 28 days.",
        ({"who": "22", "with": "ivermectin", "on": "2026-11-24", "dose": "0.2 cc", "withdrawal_days": 28},),
    ),
    Example(
        "33 has sore hocks, rubbed some balm on it",
        ({"kind": "ailment", "who": "33", "sign": "sore hocks", "on": "2026-11-25"}, {"who": "33", "with": "balm", "on": "2026-11-25"}),
    ),
    Example("33 probiotics in the water", ({"who": "33", "with": "probiotics", "on": "2026-11-25"},)),
    Example("rinsed Clover's eye with saline", ({"who": "9", "with": "saline", "on": "2026-11-25"},)),
    Example("gave 22 ivermectn", ({"who": "22", "with": "ivermectin", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "Moss was down in the dumps all day, didn't even come up for his treat",
    "gave R22 to the neighbor",
    "Clover got a treat for sitting still",
    "moss gets 3/4 cup",
    "remind me friday to worm 22",
)

OPENS: Final = ("treat",)
BESIDE: Final = frozenset({"dose"})
CUES: Final = {
    "treat": "administered | administer | gave a dose | given a dose | hydrated | med given | meds given | tx | rx | medication | medicated with | treated | treat | treating | dosed | wormed | dewormed | vaccinated | medicated | treatment | gave a shot | gave shot | injected | put on | treated for | doctored | meds | started on | treeted | vaccinate | dose",
    "rub": "rubbed | dabbed | smeared | flushed | rinsed | wiped | bathed",
    "drug": "ivermectin | ibermectin | ivory mectin | ivory making | either mectin | ivan martin | penicillin | penicilin | pen | pen g"
    " | procaine | enrofloxacin | amprolium | fenbendazole | meloxicam | piperazine | probiotics | probiotic | oxytetracycline"
    " | tetracycline | sulfa | selamectin | toltrazuril | oxytocin | chlorhexidine | nystatin | mineral oil | electrolytes"
    " | simethicone | gas drops | antibiotic | antibiotics | ointment | eye ointment | salve | balm | saline | peroxide | iodine | silver cream"
    " | coconut oil | vaccine | rhdv | rhdv2 | rhdv2 vaccine | wormer | dewormer | pumpkin seed | calcium | dex | diatomaceous earth"
    " | apple cider vinegar | acv | epsom salt | vitamin | vitamins",
    "gave": "gave | give | given | got | gets | put | on | giving",
    "withdrawal": "has to stay off the table for | off the table for | stay off the table for | stays off the table for | off the menu for | before anyone eats | before anybody eats | before anyone can eat | before you eat | before you can eat | before slaughter | before butchering | before butcher | before processing | before he can be eaten | before she can be eaten | before they can be eaten | before it can be eaten | before he is eaten | before the freezer | until we eat | til we can eat | till we can eat | until anyone eats | until slaughter | until butchering | before he goes in the freezer | not for eating for | not to eat her for | not to eat him for | not to eat them for | not to eat it for | not to butcher her for | not to butcher him for | not to be eaten for | no slaughter for | before we can eat | before eating | before we eat | before i can eat | until we can eat | cant eat him for | cant eat her for | withdrawal | wd | withdraw | withdrawl | wdl | no eating him for | no eating her for | no eating for | hold for | hold | holding | hold off | hold off eating | hold him | hold her | hold him for | hold her for | hold them for | hold it for | dont butcher for | cant butcher for | cant butcher him for | cant butcher her for | dont eat him for | dont eat her for | meat withdrawal | cant eat for | dont eat for | no meat for | w d | withhold | withholding",
}  # fmt: skip


def read(c: Clause) -> None:
    """What an animal was given; the dose and the withdrawal days as the person said them, never guessed."""
    drug, cue = c.first("drug"), c.first("treat")
    if drug is None and cue is None and _rubbed_on(c):
        return
    goes_on = _goes_on(c) if drug is None and cue is None else None
    unheard_of = _unheard_of(c) if drug is None and goes_on is None else []
    if drug is None and cue is None and "treat" not in c.virtual and goes_on is None and not unheard_of:
        return
    if _nothing_given(c, cue) if drug is None else _no_medicine(c, drug, cue):
        return
    days, used = _withdrawal(c)
    doses = c.sorted_as("dose")
    used += [c.items[i] for i in doses[:1]] + [item for item in c.items if item.marks & {"treat", "drug", "withdrawal", "gave"}]
    c.used.update(id(item) for item in used)
    daily = _times_a_day(c)
    c.use(daily)
    at = next((i for i in (cue, drug, *unheard_of) if i is not None), None)
    picks = c.listed_subjects(-1 if at is None else at)
    with_ = _drug(c, drug, cue) or goes_on or " ".join(c.said(i) for i in unheard_of) or None
    used += [c.items[i] for i in unheard_of]
    need = None if with_ else Need("what", "with", "What was it given?")
    spans = [c.items[i] for i in c.sorted_as("span", "percent")]
    dose = " ".join([*(c.said(i) for i in doses[:1]), *(item.said for item in spans), *(c.said(i) for i in daily)]) or None
    if days is not None and (goes_on is not None or _of_all(c)):
        _held_for_all(c, days)
    for pick in picks:
        c.take(c.past(Treated, pick, "who", {"with_": with_, "dose": dose, "withdrawal_days": days}, [*used, *spans], need))


def _nothing_given(c: Clause, cue: int | None) -> bool:
    """`put on weight`, `got a treat`: the words of a treatment, without a remedy."""
    return cue is not None and (
        (c.said(cue) in {"put on", "meds", "dose"} and not c.sorted_as("dose"))
        or (c.said(cue) == "treat" and c.said(cue - 1) in {"his", "her", "a", "got a", "the", "their", "my", "extra", "little"})
    )  # something good to eat


def _no_medicine(c: Clause, drug: int, cue: int | None) -> bool:
    """`moved to the grow out pen`: where they live; or a remedy's name, and no word that anybody got it."""
    if c.said(drug) == "pen" and (
        c.said(drug - 1) in {"the", "a", "his", "her", "their", "that", "this", "grow out", "new"}
        or (c.known(drug + 1) is None and c.has("cause:predator"))
    ):
        return True
    told = cue is not None or c.has("gave", "withdrawal", "rub") or _in_water(c, drug)
    return not told and not c.sorted_as("dose") and "treat" not in c.virtual


def _times_a_day(c: Clause) -> list[int]:
    """`2x day`, `2 x daily`: how often it is given."""
    place = next((i for i in c.sorted_as("num") if c.said(i + 1) == "x" and c.said(i + 2) in {"day", "daily", "a day", "a", "per"}), None)
    return [] if place is None else [place, place + 1, place + 2]


def _in_water(c: Clause, drug: int) -> bool:
    """`R21 amprolium in water 5 days`: mixed into what it drinks or eats."""
    return c.said(drug + 1) == "in" and any(c.said(i) in {"water", "feed", "food"} for i in (drug + 2, drug + 3))


def _rubbed_on(c: Clause) -> bool:
    """`put some salve on it` behind an ailment: what was put on, in the person's words."""
    if c.before is None or "ail" not in c.before.marks:
        return False
    put = next((i for i, item in enumerate(c.items) if item.said == "put" or "rub" in item.marks), None)
    on = next((i for i, item in enumerate(c.items) if item.said == "on" and put is not None and i > put + 1), None)
    if put is None or on is None:
        return False
    told = [item for item in c.items[put + 1 : on] if item.said not in {"some", "a", "the", "a bit of", "more", "little"}]
    pick = c.subject_of(put)
    if not told or pick is None or any(item.sort != "word" or item.marks & {"kits", "litter", "box", "feed", "pronoun"} for item in told):
        return False
    c.take(c.past(Treated, pick, "who", {"with_": " ".join(item.said for item in told)}, [c.items[put], c.items[on], *told]))
    return True


def _unheard_of(c: Clause) -> list[int]:
    """`22 zornol 0.5 ml`, `gave 22 zornol, 14 days withdrawal`: a word nobody knows, beside a dose or a withdrawal, is the remedy's name."""
    if not c.sorted_as("dose") and not (c.has("withdrawal") and c.has("gave", "treat")):
        return []
    strange = [i for i, item in enumerate(c.items) if item.sort == "word" and not item.marks and item.said.isalpha()]
    named = [i for i in strange if c.said(i) not in COMMON and c.said(i - 1) not in {"to", "by", "from"}]
    return named[:1] + [i for before, i in pairwise(named) if i == before + 1 and before == named[0]]


def _goes_on(c: Clause) -> str | None:
    """`ivermectin: buck 5, 0.5 ml; doe 9, 0.4 ml`: a dose alone is of the drug before."""
    if not c.virtual & {"drug", "treat"} or not c.sorted_as("dose") or c.before is None:
        return None
    return next((found.values["with_"] for found in c.before.found if found.fact is Treated), None)


def _of_all(c: Clause) -> bool:
    """`withdrawal 28 days` on a line of its own, `28 days for both`: the withdrawal of all that was given before."""
    told = [i for i, item in enumerate(c.items) if "withdrawal" in item.marks]
    own_line = any(c.said(i - 1) == "\n" for place in told for i in range(max(place - 2, 1), place + 1))
    return own_line or c.says({"both", "all", "each", "everybody", "everyone"})


def _held_for_all(c: Clause, days: int) -> None:
    """A withdrawal told at the end of such a list holds for all of it."""
    before = c.before
    while before is not None:
        for found in before.found:
            if found.fact is Treated and found.values.get("withdrawal_days") is None:
                found.values["withdrawal_days"] = days
        before = before.before if before.virtual & {"drug", "treat"} else None


def _drug(c: Clause, drug: int | None, cue: int | None) -> str | None:
    if drug is not None:
        return _given_for(c, drug) or c.said(drug)
    behind = next((i for i in range((cue or 0) + 1, len(c.items)) if c.said(i) in {"with", "for"}), None)
    if behind is None:
        return None
    told = [i for i in range(behind + 1, len(c.items)) if c.items[i].sort == "word"][:3]
    c.use([behind, *told])
    return " ".join(c.said(i) for i in told) or None


def _given_for(c: Clause, drug: int) -> str | None:
    """`gave 14 tums for calcium`: what it was given stands before `for`, and behind that what it is good for."""
    gave = next((i for i, item in enumerate(c.items) if "gave" in item.marks), None)
    if c.said(drug - 1) != "for" or gave is None or gave > drug:
        return None
    told = [
        item.said
        for item in c.items[gave + 1 : drug - 1]
        if item.sort == "word" and not item.marks and item.said not in {"a", "some", "her", "him"}
    ]
    return " ".join(told) or None


def _withdrawal(c: Clause) -> tuple[int | None, list[Item]]:
    for i in c.each("withdrawal"):
        spans = c.sorted_as("span")
        if spans:
            nearest = min(spans, key=lambda j: abs(j - i))
            return age_in_days(c.items[nearest]), [c.items[nearest]]
        number = c.number_for(i)
        if number is not None:
            return c.whole(number), [c.items[number]]
    return None, []


def check(fact: Treated, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on), _slip(fact))


#: A withdrawal time beyond this is a slip of the finger.
_LONGEST = 3650  # not a figure: ten years


def _slip(fact: Treated) -> Problem | None:
    if fact.withdrawal_days is None or 0 <= fact.withdrawal_days <= _LONGEST:
        return None
    remedy = f'Send it again, for example "gave {fact.who} {fact.with_}, 28 day withdrawal".'
    return Problem("which_number", f"A withdrawal time of {fact.withdrawal_days} days can't be. How long is it?", (), remedy)


def apply(fact: Treated, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Treated, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What was given, until when it must not be eaten, and the caution."""
    line = dated(parts(f"{called(after, fact.who)} given {fact.with_}", told("dose ", fact.dose)), fact.on, after)
    if fact.withdrawal_days is None:
        return (line, health.WITHDRAWAL)
    last = words.full_day(days_later(fact.on, fact.withdrawal_days))
    return (line, f"Withdrawal as you noted it: {words.count(fact.withdrawal_days, 'day')}. Not to be eaten until after {last}.")


WRITTEN = ("treated {who:TAG} with {with:TEXT}(?:, dose {dose:TEXT})?(?:, {withdrawal_days:NUM} day withdrawal)?",)


def show(fact: Treated, _herd: Herd) -> str:
    """`2026-11-25: treated 22 with "ivermectin", dose ".2 ml", 28 day withdrawal`."""
    return noted(
        fact.on,
        parts(
            f"treated {fact.who} with {quoted(fact.with_)}",
            told("dose ", quoted(fact.dose)),
            None if fact.withdrawal_days is None else f"{fact.withdrawal_days} day withdrawal",
        ),
    )


KIND = Kind(fact=Treated, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
