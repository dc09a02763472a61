"""What a doe does with her nest and kits."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.handbook import flags
from core.herd.changes import of_sex, seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import bad_notes, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class NestManners:
    """What a doe does with her nest and kits."""

    kind: ClassVar[str] = "nest_manners"

    doe: Tag
    sign: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("fur pulled by 14", ({"doe": "14", "sign": "good", "on": "2026-11-25"},)),
    Example("12 never pulled a lick of fur", ({"doe": "12", "sign": "no_fur", "on": "2026-11-25"},)),
    Example("14 toting hay this morning", ({"doe": "14", "sign": "good", "on": "2026-11-25"},)),
    Example("16 made a mess of her nest, pulled it all out", ({"doe": "16", "sign": "scattered", "on": "2026-11-25"},)),
    Example("16 soiled the box", ({"doe": "16", "sign": "soiled", "on": "2026-11-25"},)),
    Example("Clover built a good nest", ({"doe": "9", "sign": "good", "on": "2026-11-25"},)),
    Example("14 no fur", ({"doe": "14", "sign": "no_fur", "on": "2026-11-25"},)),
    Example("12 scattered her nest", ({"doe": "12", "sign": "scattered", "on": "2026-11-25"},)),
    Example("Thistle has been sleeping in her nest box", ({"doe": "16", "sign": "lounging", "on": "2026-11-25"},)),
    Example("Juno pulled a ton of fur and built a lovely nest", ({"doe": "14", "sign": "good", "on": "2026-11-25"},)),
    Example(
        "Nest manners: doe 14, good; doe 12, soiled.",
        ({"doe": "14", "sign": "good", "on": "2026-11-25"}, {"doe": "12", "sign": "soiled", "on": "2026-11-25"}),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "nest box in 14",
    "16 lost 2 kits",
    "31 is changing coat, no fur score today",
    "Moss is peeing everywhere",
)

OPENS: Final = ("manners",)
_SOILING: Final = "peeing | peed | pees | pee | pooping | pooped | poops | soiled | soiling | soils | wet | wetting | messing | messed | dirtied | using | urinating | urinated | potty"
CUES: Final = {
    "soil": _SOILING + " | wets | peeing all over",
    "toilet": "as a toilet | toilet | latrine | a latrine | bathroom | potty spot | potty box | outhouse | privy | restroom | washroom | litter box | litterbox | litter pan | commode | as a bathroom | as a litter box",
    "lounge": "stretched out | lounging | lounges | lounged | laying | lays | lying | lies | sleeping | sleeps | sitting | sits | naps | napping | hanging out | slept | camped out | lounge",
    "nest_place": "in the box | in the nest | in the nest box | in the next box | in box | in her box | in her nest | in her nest box | in nest | in nest box | in the nestbox"
    " | in nestbox | the box | the nest | her box | her nest | the nest box | her nest box | int he nest box | int he box | inthe box | inthe nest | in that box | in nb | nest | box",
    "sign:scattered": "kicked all the nesting | kicked the nesting out | kicked her nest out | kicked out the nest | kicking the nest out | kicked the straw out | threw the straw out | threw straw out | pitched straw out | pitching straw out | had pitched straw out | dug out the straw | tossed the nest | tossed all the nesting | kicked all the straw | kicked all her nesting | threw all the straw | emptied the nest | made a mess of her nest | wrecked her nest | wrecked the nest | trashed her nest | trashed the nest | destroyed her nest | destroyed the nest | ruined her nest | dug all the bedding out | dug the bedding out | dug all her bedding out | dug her bedding out | dug all the straw out | dug all the hay out | scattered nest | scattered the nest | scattered her nest | scattered the next | scattered her kits | scattered them | scattering | scattered kits | dug out the nest | dug kits out of nest | dug kits out of the nest | dug the kits out | dug her kits out | dug them out of the nest"
    " | dug the nest out | tore up the nest | tore up her nest | throws the nest | threw the nest | threw all her nesting | threw her nest | digging out the nest | dug out her nest"
    " | dug everything out | scattered the kits | scattered nest all over | nest scattered | pulled the nest apart | threw all her nest | threw out the nest | dumped the nest | scattered all her",
    "sign:ate_kits": "ate her kits | eats her kits | eats kits | kit eater | ate kits | eating her kits | cannibal",
    "sign:stepped_on": "steps on kits | steps on her kits | stepped on kits | stomps on them | steps on them",
    "sign:no_fur": "no fur | never pulled fur | never pulled any fur | didnt pull fur | didnt pull any fur | not pulled fur | hasnt pulled fur | hasnt pulled any fur | not pulling fur"
    " | wont pull fur | pulled no fur | wouldnt pull fur | isnt pulling fur | bare nest | no fur pulled | no pulled fur | without fur | not a lick of fur | did not pull fur | did not pull any fur",
    "sign:no_nest": "no nest | didnt build any nest | did not build any nest | did not build a nest | did not make a nest | never made any nest | didnt make a nest | didnt build a nest | no nest made | never made a nest | never built a nest | hasnt made a nest | hasnt built a nest | had them on the wire"
    " | kindled on the wire | kits on the wire | had kits on the wire | had em on the wire | on wire | not making a nest | didnt make any nest | no nest at all | has not made a nest | didnt nest | wont make a nest",
    "sign:good": "make nest | makes nest | made nest | make a nest | making nest | makes a nest | made her nest | making her nest | prepare the nest | preparing the nest | nest good | nest is good | nest looks good | nest great | nest looks great | good nest | great nest | nice nest | beautiful nest | perfect nest | pulled fur | fur pulled | fur is pulled | fur was pulled | fur all pulled | pulling fur | pulled lots of fur | pulled plenty of fur | pulled a lot of fur | pulls fur"
    " | pulled a ton of fur | mouthful of hay | mouthful of straw | mouth full of hay | mouth full of straw | carrying hay | dragging hay | carried hay | carrying straw | carrying nesting | hay mouth | hay in mouth | hay in the mouth | nest built | nest is built | built her nest | built the nest | hay mustache | built a nest | built a good nest | made a nest | making a nest | building a nest"
    " | pulled so much fur | lovely nest | pulling her fur | pulled her fur | pulling hair | pulled hair | good mother | good mom | great mom | great mother | good mama | nest is lined | lined the nest | lined her nest"
    " | full of fur | lots of fur | plenty of fur | gathering hay | hay in her mouth | made a good nest | made a great nest | pulled posa | good nest manners | pulled 4 | excellent nest | wonderful nest | best nest | pulled more fur | tons of fur | pulled some fur | pulled good fur | nesting | big nest | cozy nest",
    "pull": "pulled | pulling | pull | pulls | plucking | plucked",
    "fur_word": "fur | hair | wool | lick of fur | bit of fur",
    "carry": "carrying | carried | carries | toting | hauling | dragging | packing | gathering | collecting | stuffing | lugging | running around with | running with",
    "hay_word": "hay | straw | grass | nesting material",
    "manners": "nest manners | soiled | lounging | scattered | pulled fur | pulling fur | no fur | no nest | carrying hay | good nest | never pulled any fur | peeing | peed | pulled plenty of fur | built a nest | didnt pull fur | made a good nest | hay mouth | nest built",
}  # fmt: skip


def read(c: Clause) -> None:
    """A doe and what she does with her nest; words about urine or idling count only with the nest beside them."""
    sign, places = _sign(c)
    if sign in {"no_fur", "no_nest"} and any(item.said == "yet" for item in c.items):
        return
    if sign is None or _meant_otherwise(c):
        return
    used = [c.items[i] for i in places] + [item for item in c.items if item.said == "nest manners"]
    for pick in c.listed_subjects(places[0]):
        if pick is not None and not _is_buck(c, pick):
            c.take(c.past(NestManners, pick, "doe", {"sign": sign}, used))


WELL_DONE: Final = frozenset({"good", "very good"})


def _graded(c: Clause) -> int | None:
    """`Nest manners: doe 9, good; doe 16, soiled`: where the list's title says what is graded, a plain word of praise will do."""
    titled = "manners" in c.virtual or any(item.said == "nest manners" for item in c.items)
    return next((i for i, item in enumerate(c.items) if item.said in WELL_DONE), None) if titled else None


def _sign(c: Clause) -> tuple[str | None, list[int]]:
    graded = _graded(c)
    if graded is not None:
        return "good", [graded]
    for i, item in enumerate(c.items):
        if c.taken(i):
            continue
        for mark in item.marks:
            if mark.startswith("sign:") and not (i + 1 < len(c.items) and "trait" in c.items[i + 1].marks):  # "no fur score yet"
                return mark.removeprefix("sign:"), [i]
    for verb, thing in (("pull", "fur_word"), ("carry", "hay_word")):
        first, second = c.first(verb), c.first(thing)
        if first is not None and second is not None and first < second and c.has("negation", "none", "tentative") is False:
            return "good", [first, second]
        if first is not None and second is not None and verb == "pull" and c.has("negation"):
            return "no_fur", [first, second]
    nest = c.first("nest_place", "box")
    for mark, sign in (("soil", "soiled"), ("lounge", "lounging")):
        place = c.first(mark)
        if place is not None and c.said(place) == "using" and c.has("negation"):
            continue  # "isn't using her box right"
        if place is not None and (nest is not None or c.said(place) == "soiled") and (nest is None or nest > place or c.has("manners")):
            return sign, [place, *([nest] if nest is not None else [])]
    toilet = c.first("toilet")
    if toilet is not None and (nest is not None or (c.first("cage_word") is not None and c.has("box"))):
        return "soiled", [toilet, *([nest] if nest is not None else [])]
    told = c.before is not None and c.before.has("box", "nest_place")
    in_it = next((i for i in c.each("lounge") if c.said(i + 1) in {"in", "inside"} and (nest < i if nest is not None else told)), None)
    if in_it is not None and c.said(in_it + 2) in {"it", "there"}:
        return "lounging", [in_it, *([nest] if nest is not None else [])]
    scattered = c.first("cause:scattered")
    if scattered is not None and (nest is not None or c.has("manners")) and not c.has("kits", "lose", "dead"):
        return "scattered", [scattered, *([nest] if nest is not None else [])]
    return None, []


def _meant_otherwise(c: Clause) -> bool:
    return c.has("cage_word") and not c.has("nest_place", "box") and c.has("soil")


def _is_buck(c: Clause, pick: Pick) -> bool:
    animal = c.herd.find(pick.tag) if pick.tag else None
    return animal is not None and animal.sex == "buck"


def check(fact: NestManners, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: NestManners, herd: Herd) -> Herd:
    """Kept with what was seen of her."""
    return seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))


_ADVICE = {
    "soiled": "Clean the box and put in dry bedding.",
    "scattered": "Put the kits back in a heap in the nest and cover them.",
    "no_fur": "Line the nest for her: dry hay or straw, and fur if you keep some.",
    "no_nest": "Line the nest for her: dry hay or straw, and fur if you keep some.",
}


#: Each sign as a person would say it.
_SEEN = {
    "good": "good nest manners (pulled fur, or built a nest)",
    "soiled": "bad nest manners, soiled the nest",
    "lounging": "bad nest manners, lounging in the nest box",
    "scattered": "bad nest manners, scattered her kits",
    "ate_kits": "bad nest manners, ate kits",
    "stepped_on": "bad nest manners, stepped or sat on kits",
    "no_fur": "bad nest manners, pulled no fur",
    "no_nest": "bad nest manners, made no nest",
}


def reply(fact: NestManners, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What she did, and what may help now."""
    line = dated(f"Doe {fact.doe}: {_SEEN.get(fact.sign, fact.sign)}", fact.on, after)
    bad = bad_notes(after.find(fact.doe), fact.kind, fact.on) if fact.sign != "good" else 0
    often = f"That is bad note {bad} in 12 months: it comes up in the digest." if bad >= flags.BAD_NEST_NOTES.value else None
    return tuple(each for each in (line, _ADVICE.get(fact.sign), often) if each)


WRITTEN = ("doe {doe:TAG} nest manners {sign:CODE}",)


def show(fact: NestManners, _herd: Herd) -> str:
    """`2026-11-25: doe 16 nest manners stepped on`."""
    return noted(fact.on, f"doe {fact.doe} nest manners {fact.sign.replace('_', ' ')}")


KIND = Kind(fact=NestManners, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
