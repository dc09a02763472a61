"""A sign of ill health that somebody saw."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.handbook import health
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.others import ill_person
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, quoted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Ailing:
    """A sign of ill health that somebody saw."""

    kind: ClassVar[str] = "ailment"

    who: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("3 has a lump, 1 inch", ({"who": "3", "sign": "lump 1 inch", "on": "2026-11-25"},)),
    Example("22 half off feed", ({"who": "22", "sign": "off feed half", "on": "2026-11-25"},)),
    Example("31's ear is torn", ({"who": "31", "on": "2026-11-25", "sign": "ear is torn"},)),
    Example(
        "Clover has snuffles gave her penicillin",
        (
            {"who": "9", "sign": "snuffles", "on": "2026-11-25"},
            {"kind": "treated", "who": "9", "with": "penicillin", "on": "2026-11-25"},
        ),
    ),
    Example("Moss has a bad eye today, all weepy", ({"who": "5", "sign": "bad eye today, all weepy", "on": "2026-11-25"},)),
    Example("Moss has the sniffles", ({"who": "5", "sign": "the sniffles", "on": "2026-11-25"},)),
    Example("9 has a weepy eye", ({"who": "9", "sign": "weepy eye", "on": "2026-11-25"},)),
    Example("buck 7 limping", ({"who": "7", "sign": "limping", "on": "2026-11-25"},)),
    Example("22 off feed", ({"who": "22", "sign": "off feed", "on": "2026-11-25"},)),
    Example(
        "Flint has a runny nose and he's sneezing",
        (
            {"who": "3", "sign": "runny nose", "on": "2026-11-25"},
            {"who": "3", "sign": "sneezing", "on": "2026-11-25"},
        ),
    ),
    Example(
        "Pip has been scratching his ears, probably mites",
        (
            {"who": "R23", "sign": "scratching his ears", "on": "2026-11-25"},
            {"who": "R23", "sign": "mites", "on": "2026-11-25"},
        ),
    ),
    Example("Biscuit's right eye was all goopy today", ({"who": "22", "sign": "right eye was all goopy", "on": "2026-11-25"},)),
    Example("r23 runs", ({"who": "R23", "sign": "runs", "on": "2026-11-25"},)),
    Example("pip has sore hocks", ({"who": "R23", "sign": "sore hocks", "on": "2026-11-25"},)),
    Example(
        "Health check: R23, sneezing; R21, ok.",
        (
            {"who": "R23", "sign": "sneezing", "on": "2026-11-25"},
            {"kind": "remark", "text": "R21, ok.", "on": "2026-11-25", "who": "R21"},
        ),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "cut 2 inch wire for 31",
    "R21 sneezing gone",
    "I feel sick",
    "I could have sworn Clover was coughing",
    "the truck runs rough",
    "checked on Sorrel though my wife came down with a fever",
    "gave 5 penicillin .3 ml for a runny nose",
)

OPENS: Final = ("ail",)
CUES: Final = {
    "ail": "wouldnt eat | would not eat | will not eat | wouldnt touch her food | wouldnt touch his food | left her feed | left his feed | leaving her feed | leaving his feed | not eat | does not eat | did not eat | hasnt been eating | isnt drinking | nose dirty | dirty nose | nose is dirty | crusty around the nose | goopy nose | has snot | got snot | snot on his nose | snot on her nose | snot on the nose | snot on his paws | snot on her paws | snot coming out of his nose | snot coming out of her nose | boogers | booger nose | conjunctivitis | rhinitis | pasteurella | dyspnea | anorexia | anorexic | epistaxis | otitis | dermatitis | alopecia | diarrhoea | upper respiratory | torticollis | myiasis | dystocia | ileus | cystitis | urine scald | sludgy urine | gi slowdown | hair loss | losing fur | losing hair | sneezing fits | eye goop | wet chin | wet dewlap | drool | bad gas | gassy | cut on | bite wound | scratch on | scrape | scrapes | wont put weight on | not putting weight on | gunk in her eye | gunk in his eye | gunk in the eye | gunky eye | gunky eyes | gunk in both eyes | goop in her eye | goop in his eye | eye discharge | ear discharge | discharge | droopy ears | wouldnt touch his feed | wouldnt touch her feed | fever | feverish | dehydrated | constipated | wobbly | shivering | trembling | stopped drinking | gurgly belly | hard belly | eye is crusted shut | crusty eye | crusty eyes | crusty nose | raspy breathing | noisy breathing | rattly breathing | blowing bubbles | teary eye | teary eyes | watery eye | watery eyes | watery nose | stopped up | mucusy | drippy nose | nose dripping | nose is dripping | nose is running | nose running | left eye is weepy | eye is weepy | eye is runny | eye is watering | watering eyes | eye is swollen | foot is swollen | ear mite | bare hocks | raw hocks | hock is raw | raw hock | runny butt | messy butt | snotty nose | snotty | snotty nosed | sneezing | sneezes | sneezed | sneezy | runny nose | wet nose | diarrhea | diarhea | the runs | runs | runny poop | scours | poopy butt | messy bottom | dirty butt | mites | ear mites"
    " | earmites | air mites | your mites | mange | abscess | abcess | sore hocks | sore hock | sore feet | limping | limp | limps | limped | lame | head tilt | wry neck | weepy eye | weepy eyes | runny eye | runny eyes"
    " | goopy eye | goopy eyes | bloat | bloated | off feed | off her pellets | off his pellets | off pellets | off her food | off his food | not touching her feed | not touching his feed | wont touch her feed | wont touch his feed | hasnt touched her pellets | hasnt touched his pellets | off her hay | off his hay | off her feed | off his feed | not eating | wont eat | isnt eating | hasnt eaten | hasnt touched her feed | hasnt touched his feed | didnt eat | quit eating"
    " | stopped eating | mastitis | hot mastitis | snuffles | snuttles | wool block | stasis | gi stasis | flystrike | fly strike | maggots | urine burn | ringworm | lethargic | coughing | cough | wheezing | wheezy | wheezes | fleas"
    " | tilting her head | tilting his head | tilts her head | tilts his head | drooling | slobbers | slobbering | vent disease | broken leg | bald patch | bald spot | wound | wounded | hurt | injured | bleeding | swollen | lump | swelling | infected | infection | sick | ill | scabs | scabby"
    " | crusty ears | crusty ear | sore eye | heat stroke | heatstroke | panting | not drinking | wont drink | mucus | soft poop | mushy poop | no poop | not pooping | torn ear | torn toenail | ripped toenail | broken toenail"
    " | bloody nose | blood in urine | bloody urine | red urine | seizure | paralyzed | dragging his back legs | dragging her back legs | dragging back legs | lice | fur mites | dandruff | hot spot | pink eye | cloudy eye"
    " | runny stool | loose stool | loose stools | hock sores | pododermatitis | cocci | coccidiosis | worms | pinworms | prolapse | congested | nasal discharge | eye infection | sneeze | sneezin | stuffy | hot ears | scratching her ears"
    " | scratching his ears | shaking her head | shaking his head | head shaking | labored breathing | breathing hard | hunched up | hunched | grinding teeth | grinding her teeth | grinding his teeth | the sniffles | sniffles | a cold | limpy | favoring",
    "ail_look": "torn | ripped | bleeding | scabby | weepy | runny | goopy | crusty | gunky | watery | teary | crusted | crusted shut | swollen shut | matted | matted shut",
    "ail_word": "health | nose | eye | ear | leg | foot | toenail | toe | hock | paw",
}  # fmt: skip


def read(c: Clause) -> None:
    """An animal and the sign that somebody saw."""
    places = c.each("ail") or _body_and_look(c)
    if not places or (c.has("kits", "treat", "palpate", "wean") and not _one_animal(c)):
        return
    if c.has("treat", "withdrawal", "drug") or any(found.fact.kind == "died" for found in c.found):
        return
    if ill_person(c.items):
        return
    died = (
        next((found for found in c.before.found if found.fact.kind == "died"), None)
        if c.before is not None and not c.explicit() and not c.sorted_as("num")
        else None
    )
    if died is not None:  # "R22 died, bloat"
        died.values["cause"] = died.values.get("cause") or _sign(c, places)
        c.use(places)
        return
    if _over(c, places[-1]):
        return  # "sneezing gone" is a remark
    picks = c.listed_subjects(places[0])
    if (None in picks and len(c.items) > 4) or not {"i", "im", "i'm"}.isdisjoint({c.said(places[0] - 1), c.said(places[0] - 2)}):
        return
    if c.has("lose", "die", "dead", "cull") and any(mark.startswith("cause:") for i in places for mark in c.items[i].marks):
        return
    size = _size(c, places)
    sign = " ".join([_sign(c, places), *(c.said(i) for i in size)])
    for pick in picks:
        c.take(c.past(Ailing, pick, "who", {"sign": sign}, [c.items[i] for i in (*places, *size)]))


LENGTHS: Final = frozenset({"cm", "mm", "inch", "inches"})


def _size(c: Clause, places: list[int]) -> list[int]:
    """`abscess on the jaw, 2 cm`, `half off her feed`: how big or how much of it, a part of the sign."""
    long = next((i for i in c.sorted_as("num") if c.said(i + 1) in LENGTHS), None)
    if long is not None:
        return [long, long + 1]
    return [i for i in c.sorted_as("num") if c.said(i) == "half" and i + 1 == places[0]]


_STILL: Final = frozenset(
    {"is", "are", "has", "have", "all", "now", "much", "finally", "seems", "looks", "completely", "went", "mostly", "almost"}
)
_ENDED: Final = frozenset(
    {"gone", "better", "cleared", "cleared up", "healed", "healed up", "resolved", "over", "stopped", "away", "cured"}
)


def _over(c: Clause, last: int) -> bool:
    """Whether what stands behind the sign says that it has passed."""
    i = last + 1
    while c.said(i) in _STILL:
        i += 1
    return c.said(i) in _ENDED and not any(item.marks & {"negation"} for item in c.items[last + 1 : i])


_BETWEEN: Final = frozenset({"is", "are", "was", "were", "looks", "looked", "seems", "has been", "been", "all", "a bit", "a little", "a", "little", "kind", "of", "really", "pretty", "so", "very", "still"})  # fmt: skip


def _body_and_look(c: Clause) -> list[int]:
    """`his left eye is all weepy`: a part of the body, and how it looks a few small words on."""
    for i in c.each("ail_word"):
        j = i + 1
        if c.said(i - 1) in {"my", "our"}:
            continue
        while c.said(j) in _BETWEEN or c.said(j) == "," or (j < len(c.items) and c.items[j].sort == "date"):
            j += 1
        if j < len(c.items) and "ail_look" in c.items[j].marks:
            return [i, j]
    return []


def _one_animal(c: Clause) -> bool:
    return bool(c.explicit())


def _sign(c: Clause, places: list[int]) -> str:
    """The words from the first sign to the last, with a part of the body said beside it."""
    first, last = places[0], places[-1]
    while (
        first > 0
        and c.items[first - 1].sort == "word"
        and c.said(first - 1) in {"left", "right", "back", "front", "bad", "bit", "little", "some", "sore", "weepy", "runny", "swollen"}
    ):
        first -= 1
    words = [item.said for item in c.items[first : last + 1]] if last - first < 8 else [c.said(i) for i in places]
    words += [item.said for item in c.items[last + 1 : _where(c, last)]]
    return " ".join(words).replace(" ,", ",")


BODY: Final = frozenset(
    """foot feet leg legs eye eyes ear ears nose hock hocks paw paws chin jaw neck back belly shoulder hip tail toe toes side head cheek dewlap teat teats
    rump face lip mouth throat chest flank vent""".split()  # noqa: SIM905 - a table of words
)
BEFORE_BODY: Final = frozenset(
    "on in of around over behind under near her his its the one both left right back front hind rear inner outer inside outside".split()  # noqa: SIM905
)


def _where(c: Clause, last: int) -> int:
    """Where the words end that tell on which part of the body it is: `limping on her left back foot`."""
    i = last + 1
    if c.said(i) not in {"on", "in", "of", "around", "over", "behind", "under", "near"} and not c.said(last).endswith(" on"):
        return last + 1
    while c.said(i) in BEFORE_BODY and c.said(i + 1) in BODY | BEFORE_BODY:
        i += 1
    return i + 1 if c.said(i) in BODY else last + 1


def check(fact: Ailing, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Ailing, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Ailing, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The sign, and when it is a vet's matter. No diagnosis."""
    sign = fact.sign.lower()
    urgent = health.CALL_A_VET if any(re.search(rf"\b{re.escape(flag)}\b", sign) for flag in health.RED_FLAGS) else None
    catching = health.ZOONOSES if any(word in sign for word in health.CATCHING_SIGNS) else None
    line = dated(f"{called(after, fact.who)}: {fact.sign}", fact.on, after)
    return tuple(each for each in (line, urgent, catching) if each)


WRITTEN = ("{who:TAG} ailing, {sign:TEXT}",)


def show(fact: Ailing, _herd: Herd) -> str:
    """`2026-11-25: 5 ailing, "snotty nose"`."""
    return noted(fact.on, f"{fact.who} ailing, {quoted(fact.sign)}")


KIND = Kind(fact=Ailing, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
