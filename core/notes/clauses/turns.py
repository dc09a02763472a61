"""Turns of phrase in which a word of the barn says something else: `lost R22's card`, `31 is 4 oz short`, `gave Moss to the judge to look at`.

Each judge looks at one kind of reading and says whether the words around it take it back. They are asked only where such a reading was made.

Over 300 lines: a list of phrases by kind, a few lines each.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Found, Need
from core.notes.kinds.giving import GivenAway
from core.notes.slots.items import Item

#: Kin of an animal that is named only to say whose they are.
KIN: Final = frozenset(
    """dam sire mother father mom momma mama dad daddy brother sister son daughter littermate littermates sibling siblings brothers sisters sons
    daughters grandsire granddam granddaughter grandson aunt parents half-sister half-brother""".split()  # noqa: SIM905 - a table of words
)
BEFORE_KIN: Final = frozenset({"old", "late", "own", "poor", "full", "half", "big", "little", "first", "other"})
#: Other people whose deeds are not this farm's.
STRANGERS: Final = frozenset({"neighbor", "neighbour", "neighbors", "neighbours", "neighbor's", "neighbour's"})
#: What a stranger does with animals of the farm, or what is said to him, stands.
OF_STRANGERS: Final = frozenset(
    {"sold", "given_away", "for_sale", "remark", "query", "remind", "planned", "setting", "undo", "correct", "bred", "refused"}
)
OURS: Final = frozenset({"us", "me", "our", "my"})
OFF_AGAIN: Final = ("fell through", "backed out", "called it off", "changed his mind", "changed her mind", "changed their mind")
ARTICLES: Final = frozenset({"the", "a", "an", "my", "our", "his", "her", "its"})


#: They end in `'s` and own nothing.
SHORT_FORMS: Final = frozenset(
    """it's that's she's he's there's here's today's let's what's who's tonight's how's yesterday's one's where's morning's
    everyone's""".split()  # noqa: SIM905 - a table of words
)


def _of_somebody(c: Clause, found: Found) -> bool:
    """`Sam's 31 weighs 4-6`: the animal of somebody who is none of the herd."""
    if "'s" not in " ".join(c.words()):
        return False
    tags = {value for value in found.values.values() if isinstance(value, str)}
    return any(
        item.sort == "word"
        and item.said.endswith("'s")
        and not item.marks
        and item.said not in SHORT_FORMS
        and str(c.items[i + 1].value) in tags
        for i, item in enumerate(c.items[:-1])
    )


def turned(c: Clause, found: Found) -> bool:
    """Whether a turn of phrase takes the reading back. Where only kin of the named animal is meant, the reading asks which one it is."""
    if found.fact.kind not in OF_STRANGERS and ((c.says(STRANGERS) and _of_a_stranger(c)) or _of_somebody(c, found)):
        return True
    _of_kin(c, found)
    judge = JUDGES.get(found.fact.kind)
    return judge is not None and judge(c, found)


def _used(c: Clause, found: Found) -> list[int]:
    used = {id(item) for item in found.used}
    return [i for i, item in enumerate(c.items) if id(item) in used]


def _of_kin(c: Clause, found: Found) -> None:
    """`R22's dam died`: whose kin it is doesn't say which animal; the book's likeliest stands among the choices."""
    if (
        found.need is not None
        or found.fact.kind == "animal"
        or not (owners := [i for i in c.places("animal") if c.items[i].unit == "possessive"])
    ):
        return
    used = _used(c, found)
    for i in owners:
        if i not in used:
            continue
        item = c.items[i]
        j = i + 1
        while c.said(j) in BEFORE_KIN:
            j += 1
        if c.said(j) not in KIN or c.known(j + 1) is not None:
            continue
        field = next((name for name, value in found.values.items() if value == item.value.tag), "who")
        found.values.pop(field, None)
        animal = c.herd.find(item.value.tag)
        parent = {"dam": "dam", "mother": "dam", "mom": "dam", "mama": "dam", "momma": "dam"}.get(c.said(j), "sire")
        key = getattr(animal, parent, None) if c.said(j) in PARENTS else None
        kin = c.herd.animals.get(key) if key else None
        text = f"Which animal is {item.value.tag}'s {c.said(j)}? Send its tag."
        found.need = Need("which_animal", field, text, (kin.tag,) if kin is not None else ())
        return


PARENTS: Final = frozenset({"dam", "mother", "mom", "mama", "momma", "sire", "father", "dad", "daddy"})


def _of_a_stranger(c: Clause) -> bool:
    """`neighbor butchered 5`: a neighbour at the head, and no animal that can only be the farm's."""
    opening = c.opening() or 0
    first = opening + 1 if c.said(opening) in ARTICLES else opening
    if c.said(first) not in STRANGERS:
        return False
    named = any(
        item.sort == "animal" and item.unit != "possessive" and item.value.tags and c.said(i - 1) not in {"his", "her", "their"}
        for i, item in enumerate(c.items)
        if i >= first
    )
    return not named and all(item.said.split(" ")[-1] not in OURS for item in c.items)


WEIGHTS: Final = frozenset({"weight", "pair"})


def _weights(c: Clause, found: Found) -> list[int]:
    used = {id(item) for item in found.used}
    return [i for i in c.placed(WEIGHTS) if id(c.items[i]) in used]


#: Where an animal that was lost has gone, or that it is found.
HOMES: Final = frozenset({"home", "homes", "family", "owner", "owners", "buyer", "farm"})
BACK: Final = frozenset({"found", "back", "caught", "up", "again", "hiding", "safe"})


def told_on(before: Clause, after: Clause) -> None:
    """What the next breath says of an animal that was lost: `lost 33 yesterday, they found her in the hay`."""
    if not before.marks.isdisjoint({"die", "dead"}) or after.explicit():
        return
    for found in [found for found in before.found if found.fact.kind == "died" and "who" in found.values]:
        if _only_out_of_sight(found, after.items):
            before.found.remove(found)
            before.put_off = after.put_off = True


def _only_out_of_sight(found: Found, told: list[Item]) -> bool:
    """Whether the words behind `lost 33` say that it was found; `she went to a nice home` makes a gift of the death."""
    said = {item.said.split(" ")[-1] for item in told}
    if not any("pronoun" in item.marks for item in told) or any(
        mark in {"die", "dead", "froze"} or mark.startswith("cause:") for item in told for mark in item.marks
    ):
        return False
    if not said.isdisjoint(HOMES):
        found.fact = GivenAway
        found.values.pop("cause", None)
        return False
    return not said.isdisjoint(BACK)


#: Behind a weight they make it a difference.
DIFFERENCES: Final = frozenset(
    {"short", "shy", "more", "less", "lighter", "heavier", "over", "under", "below", "above", "off", "bigger", "smaller"}
)
OF_ITSELF: Final = frozenset(
    {"pure", "solid", "rabbit", "bunny", "fluff", "muscle", "trouble", "attitude", "him", "her", "fun", "joy", "mean", "love"}
)
COMPARED: Final = frozenset({"over", "under", "below", "above", "than", "least", "most"})
HARDLY: Final = frozenset({"just", "hair", "slightly", "little", "bit", "barely", "right", "tad", "smidge"})


def _no_weight(c: Clause, found: Found) -> bool:
    """`4 oz short`, `4 lb of hay`, `under 4-6`, `born at 2 oz`: no weight of the animal on the day."""
    for i in _weights(c, found):
        after = c.items[i + 1] if i + 1 < len(c.items) else None
        if c.items[i].sort == "weight" and after is not None:
            if after.said in DIFFERENCES or (after.said == "to" and c.said(i + 2) == "go"):
                return True
            if after.said == "of" and i + 2 < len(c.items) and c.items[i + 2].sort == "word" and c.said(i + 2) not in OF_ITSELF:
                return True
            if after.marks & {"hay", "feed", "not_feed"}:
                return True
        if found.fact.kind == "weighed" and any(
            other.fact.kind == "kindled" and other.values.get("doe") == found.values.get("who") for other in c.found
        ):
            return True  # "kindled 7 weighing 14 oz"
        if found.fact.kind == "weighed" and not c.has("weigh") and _led_elsewhere(c, i):
            return True
        if c.said(i - 1) in COMPARED and c.said(i - 2) not in HARDLY:
            return True
        if found.fact.kind == "weighed" and any(c.said(j) == "born" for j in range(i)):
            return True
    return False


#: Words that may stand right before a weight that no verb of weighing tells.
BEFORE_WEIGHT: Final = frozenset(
    """is was at now just only about around over under nearly almost already still hit hits made makes reached topped came in to up exactly right
    even finally he's she's it's its pushing approximately roughly today and then got says showed read reads goes went going this with well also so
    um uh like right flat be been are were hes shes good big nice old boy girl doe buck the that real really pretty solid approx close getting
    him her down back today's stands sits sitting standing tipped currently weigh total plus new some almost least""".split()  # noqa: SIM905 - a table of words
)


def _led_elsewhere(c: Clause, i: int) -> bool:
    """`cup holds 6 oz`, `feels like 4-6`, `won at 4-6`, `off by 4 oz`, `a 4-6 buck`: a verb or a small word that tells of something else."""
    before = c.items[i - 1] if i else None
    if before is None or before.sort != "word":
        return False
    if before.said == "at":
        return i > 1 and "show" in c.items[i - 2].marks
    if before.said in {"a", "an"}:
        return i + 1 < len(c.items) and c.items[i + 1].sort == "word"
    if before.said == "like":
        return c.said(i - 2) in {"feels", "looks", "felt", "seems"}
    return before.said not in BEFORE_WEIGHT and not before.marks - {"show"}


#: What is told with them happened once, or the other way.
ONCE: Final = frozenset(
    """ate eaten drank left spilled spilt dumped wasted refused finished stole treat treats extra begged begs skipped skips leaves wastes finish finishes steals spills too knocked scattered threw tossed says said""".split()  # noqa: SIM905 - a table of words
)
ONE_MEAL: Final = frozenset({"tonight", "today", "this morning", "last night", "yesterday", "this evening"})


def _no_ration(c: Clause, found: Found) -> bool:
    """`ate 1/2 cup`, `gave Moss 1/4 cup of oats`, `1 cup of water`: once, and no feed for every day."""
    if any(item.said in ONCE for item in c.items):
        return True
    gave = any(item.said in {"gave", "slipped"} for item in c.items)
    daily = c.has("per_day")
    for i in _used(c, found):
        if c.items[i].sort != "cup" and c.items[i].sort != "weight":
            continue
        j = i + 2 if c.said(i + 1) == "of" else i + 1
        stuff = c.items[j] if j < len(c.items) else None
        if stuff is not None and stuff.marks & {"not_feed"} and stuff.marks.isdisjoint({"hay"}):
            return True
        if gave and not daily and stuff is not None and stuff.marks & {"hay"} and stuff.said != "pellets":
            return True
    return gave and not daily and "from now on" not in c.scene.text.lower() and c.holds("date")


BITES: Final = frozenset({"bit", "bites", "bit the", "biting", "nipped", "charged", "attacked", "scratched"})
PERSONS: Final = frozenset(
    """judge vet kid kids girl boy man lady neighbor neighbour husband wife daughter son child visitor buyer guy woman mom dad sister brother me my
    us him her hand finger helper hell crap heck""".split()  # noqa: SIM905 - a table of words
)
MOODS: Final = frozenset(
    {"mean", "gentle", "sweet", "calm", "friendly", "nasty", "cranky", "grumpy", "vicious", "mellow", "tame", "rude", "nice"}
)


OF_THINGS: Final = frozenset({"feed", "weigh", "not_feed", "hay", "litter_weight"})


def _no_temper(c: Clause, found: Found) -> bool:
    """`bit the wire`, `sweet feed for 9`, `the judge was mean to 22`."""
    places = [i for i in _used(c, found) if any(mark.startswith("temper") for mark in c.items[i].marks)]
    return bool(places) and all(_of_something_else(c, i) for i in places)


def _of_something_else(c: Clause, i: int) -> bool:
    said = c.said(i)
    if said in BITES and (c.said(i + 1) in {"the", "a", "an"} or said.endswith(" the")):
        return not any(item.said in PERSONS for item in c.items[i + 1 : i + 6])
    if said not in MOODS:
        return False
    animal = any(c.items[j].sort == "animal" or "pronoun" in c.items[j].marks or c.known(j) is not None for j in range(i))
    person = any(c.said(j) in PERSONS and c.said(j - 1) in ARTICLES for j in range(1, i))
    following = c.items[i + 1] if i + 1 < len(c.items) else None
    noun = following is not None and any(mark in OF_THINGS or mark.startswith("weather") for mark in following.marks)
    return not animal and (person or noun)


LOOKS_FOR: Final = frozenset(
    """check checked checking watch watching watched look looked looking inspect inspected examine examined searched search test tested testing
    keep an eye eyes""".split()  # noqa: SIM905 - a table of words
)
RID: Final = frozenset({"cleared", "healed", "recovered", "cured", "clear", "free", "rid", "over", "better"})


def _no_sign(c: Clause, found: Found) -> bool:
    """`check 5 for mites`, `5 is over his snuffles`: looked for, or past."""
    places = [i for i in _used(c, found) if c.items[i].marks & {"ail", "fault", "dq", "ail_word", "ail_look"}]
    if not places:
        return False
    first = places[0]
    before = first - 1
    while before > 0 and (c.said(before) in ARTICLES or c.said(before) in {"any", "signs", "sign", "of", "white", "ear", "sore"}):
        before -= 1
    sought = c.said(before) == "for" and any(c.said(j) in LOOKS_FOR for j in range(max(0, before - 6), before))
    rid = (
        c.said(before) == "over"
        or (c.said(before) == "from" and c.said(before - 1) in RID)
        or (c.said(first - 1) == "of" and any(c.said(j) in RID for j in (first - 2, first - 3)))
    )
    near = any(c.items[i].sort in {"animal", "num"} and c.said(i - 1) in {"by", "near", "beside"} for i in _used(c, found))
    strange = any("other_species" in item.marks for item in c.items[:first])
    return (sought and not c.has("found")) or rid or near or strange or c.said(places[-1] + 1) in {"scare", "season", "vaccine", "shot"}


def _no_fault(c: Clause, found: Found) -> bool:
    """The same; and `31 isn't dq`, where nothing but small words is named."""
    said = str(found.values.get("fault") or "")
    return said in {"isn't", "isnt", "is not", "not", "wasn't", "wasnt", "is", "was"} or _no_sign(c, found)


SHOWN_AT: Final = frozenset({"show", "class", "fair", "round", "race", "fight", "bet", "match", "contest"})
OF_DEATH: Final = frozenset(
    """night morning storm heat cold fire flood freeze frost surgery labor labour birth end move dark evening afternoon day week snow
    winter summer""".split()  # noqa: SIM905 - a table of words
)
NOT_DEAD: Final = frozenset({"stopped", "half", "played", "playing", "plays", "as", "thought"})
SCARED: Final = frozenset({"me", "us", "scared", "bored", "sick", "worried", "loved", "tickled", "him", "her"})
PLACES: Final = frozenset({"in", "at", "under", "behind", "on", "around", "inside"})


def _no_death(c: Clause, found: Found) -> bool:
    """`lost R22 in the class`, `stopped dead`; where `lost 33 in the weeds` may be either, it asks."""
    for i in _used(c, found):
        said = c.said(i)
        if said == "dead" and c.said(i - 1) in NOT_DEAD:
            return True
        if said == "death" and ((c.said(i - 1) == "to" and c.said(i - 2) in SCARED) or c.said(i + 1) in {"door", "'"}):
            return True
        if said in {"lost", "lose"} and not c.has("die", "dead"):
            counted = c.items[i + 2] if i + 2 < len(c.items) and c.items[i + 1].sort == "num" else None
            if counted is not None and counted.sort == "word" and _thing(counted) and counted.said.endswith("s"):
                return True  # "lost 33 votes"
            if _only_out_of_sight(found, c.items[i + 2 :]) or c.has("show_place"):
                return True
            place = _whereabouts(c, i)
            if place is None:
                continue
            if c.said(place) in SHOWN_AT:
                return True
            who = found.values.get("who") or "it"
            found.need = found.need or Need(
                "what", "", f"Did {who} die, or is it only out of sight? If it died, send \u201c{who} died\u201d."
            )
    return False


def _whereabouts(c: Clause, verb: int) -> int | None:
    """Index of the place behind `lost 33 in the ...`, where it is no time or cause."""
    for i in range(verb + 2, min(len(c.items) - 1, verb + 5)):
        if c.said(i) in PLACES and c.said(i + 1) in ARTICLES | {"this", "that"} and i + 2 < len(c.items):
            noun = c.items[i + 2]
            causes = any(mark.startswith(("cause:", "weather")) for mark in noun.marks)
            return None if noun.sort != "word" or noun.said in OF_DEATH or causes else i + 2
    return None


def _no_kits(c: Clause, found: Found) -> bool:
    """`2 dead flies`, `lost count at 7`: no kits."""
    if _trod_on_a_thing(c, found):
        return True
    for i in _used(c, found):
        item, after = c.items[i], c.items[i + 1] if i + 1 < len(c.items) else None
        if item.said in {"lost", "lose"} and c.said(i + 1) in {"count", "track", "sight", "hope", "patience", "interest"}:
            return True
        if item.said == "dead" and after is not None and after.sort == "word" and _thing(after):
            return True
    return False


def _trod_on_a_thing(c: Clause, found: Found) -> bool:
    """`I stepped on 16's water bottle`: a thing of hers, no kit."""
    return any(
        c.items[i].unit == "possessive"
        and i + 1 < len(c.items)
        and c.items[i + 1].marks & {"not_feed", "feed"}
        and "cage_word" not in c.items[i + 1].marks
        for i in _used(c, found)
    )


NEARLY: Final = frozenset({"almost", "nearly", "kinda", "sorta", "sort of", "kind of", "practically"})


def _no_color(c: Clause, _found: Found) -> bool:
    """`looks almost black`, `is blue today`: no colour of the coat."""
    places = [i for i, item in enumerate(c.items) if "color" in item.marks]
    return any(c.said(i - 1) in NEARLY or (c.said(i) == "blue" and c.said(i + 1) in {"today", "lately", "again"}) for i in places)


def _not_bred(c: Clause, found: Found) -> bool:
    """`15 x 7 would make nice kits`: a pair that is only thought of."""
    if any(c.said(i) == "would" and c.said(i + 1) in {"be", "make", "give", "throw"} for i in range(len(c.items))):
        return True
    return any(c.said(i) == "x" for i in _used(c, found)) and any(
        item.said.split(" ")[0] in {"would", "could", "should"} for item in c.items
    )


SMALL: Final = frozenset(
    """in at on of from with under by and but so then this last today yesterday overnight one ones runts runt now already again for to out so far
    when while after since because or is was were are she he they i we it that there here just plus total all both both""".split()  # noqa: SIM905 - a table of words
)


def _thing(item: Item) -> bool:
    """Whether a word is a plain noun, or another kind of animal."""
    return "other_species" in item.marks or (
        not item.marks and item.said not in SMALL and not item.said.endswith("ly") and len(item.said) > 2
    )


WILLED: Final = frozenset({"lift", "breed", "mate", "stand", "cooperate", "let", "be", "take", "accept", "go", "have"})


def _no_refusal(c: Clause, found: Found) -> bool:
    """`refuses to eat`, `the vet refused`: nothing of a mating."""
    for i in _used(c, found):
        if c.said(i).startswith("refus"):
            if c.said(i + 1) == "to" and (c.said(i + 2) not in WILLED or (c.said(i + 2) == "go" and c.said(i + 3) not in {"near", "to"})):
                return True
            if c.said(i - 1) in PERSONS:
                return True
    return False


def _no_newcomer(c: Clause, found: Found) -> bool:
    """`no new doe 40`, `new doe 46 didn't come`, `was told there is a new buck 47`."""
    if _off_again(c, found):
        return True
    cue = next((i for i in _used(c, found) if "new" in c.items[i].marks), None)
    if cue is None:
        return False
    if c.said(cue - 1) in {"no", "not"} or any(c.said(j) in {"told", "heard", "says", "said", "hear"} for j in range(cue)):
        return True
    return any(
        "negation" in c.items[j].marks and c.said(j + 1) in {"come", "show", "arrive", "work", "happen", "make", "coming"}
        for j in range(cue, len(c.items))
    )


def _off_again(c: Clause, _found: Found) -> bool:
    """Whether the message says that nothing came of it."""
    text = c.scene.text.lower()
    return any(words in text for words in OFF_AGAIN)


LENT: Final = frozenset({"vet", "judge", "mom", "mother", "mama", "dam", "groomer"})
TO_DO: Final = frozenset(
    {"hold", "pet", "look", "look at", "borrow", "checkup", "check", "photograph", "show", "judge", "pose", "see", "foster"}
)


def _not_given(c: Clause, found: Found) -> bool:
    """`gave R22 to the judge to look at`, `gave R22 back`, `gave 12 up`: it is still here."""
    to = str(found.values.get("to") or "").split()
    if not LENT.isdisjoint(to) or any(c.said(i) == "to" and c.said(i + 1) in TO_DO for i in range(len(c.items))):
        return True
    gave = next((i for i in _used(c, found) if "give" in c.items[i].marks), None)
    return gave is not None and any(item.said in {"back", "up"} for item in c.items[gave + 1 : gave + 3])


def _not_sold(c: Clause, found: Found) -> bool:
    """`sale of R23 fell through`, `as good as sold`, `sold on R23`."""
    if _off_again(c, found) or (not c.explicit() and any(c.said(i) == "sale" and c.said(i - 1) in ARTICLES for i in _used(c, found))):
        return True
    return any(
        c.said(i).split(" ")[-1] in {"sold", "sells"}
        and (
            c.said(i + 1) in {"himself", "herself", "itself", "themselves"}
            or c.said(i - 1) == "as"
            or (c.said(i + 1) == "on" and i + 2 < len(c.items) and c.items[i + 2].sort in {"animal", "num"})
        )
        for i in _used(c, found)
    )


def _not_listed(c: Clause, found: Found) -> bool:
    """`list of 32`, `grocery list: 32 apples`."""
    return any(
        c.said(i) == "list" and (c.said(i + 1) == "of" or (i > 0 and _thing(c.items[i - 1]) and c.items[i - 1].sort == "word"))
        for i in _used(c, found)
    )


SPARED: Final = frozenset({"escaped", "dodged", "saved", "spared", "avoided", "rescued", "pardoned", "headed", "heading", "bound"})


def _not_culled(c: Clause, found: Found) -> bool:
    """`butchering day cost 32`, `32 escaped freezer camp`."""
    if any(item.said in SPARED for item in c.items):
        return True
    return any(
        "cull" in c.items[i].marks
        and c.said(i + 1) in {"day", "fee", "fees", "cost", "costs", "shop", "supplies", "table", "time", "weekend", "date", "charge"}
        for i in _used(c, found)
    )


def _not_planned(c: Clause, found: Found) -> bool:
    """`review the book for 7`, `no plan to cull 12`, `keep 7 on hay only`."""
    if any(c.said(i) == "no" and c.said(i + 1).startswith("plan") for i in range(len(c.items))):
        return True
    for i in _used(c, found):
        if c.said(i) in {"butcher", "process", "cull"} and c.said(i - 1) in ARTICLES:
            return True
        if c.said(i) == "review" and c.said(i + 1) in ARTICLES and i + 2 < len(c.items) and _thing(c.items[i + 2]):
            return True
        if c.items[i].sort in {"animal", "num"} and found.values.get("what") == "keep" and c.said(i + 1) in {"on", "off"}:
            return True
    return False


def _not_done(c: Clause, found: Found) -> bool:
    """`I'm done with this weather`, `9 is done for`, `well done 9`."""
    return any(
        c.said(i) == "done" and (c.said(i - 1) in {"well", "i'm", "im", "am", "we're", "nicely"} or c.said(i + 1) in {"for", "in"})
        for i in _used(c, found)
    )


OTHER_GOODS: Final = frozenset(
    {
        "concrete", "cement", "sand", "soil", "mulch", "potting", "sugar", "flour", "rice", "potatoes", "apples", "ice", "charcoal",
        "gravel", "fertilizer", "lime", "trash",
    }
)  # fmt: skip


def _no_rabbit_feed(c: Clause, _found: Found) -> bool:
    """`3 bags of dog food`, `120 lb of chicken feed left`."""
    return c.has("other_species") or any(item.said in OTHER_GOODS for item in c.items)


def _not_shown(c: Clause, found: Found) -> bool:
    """`first show for 3 on saturday`."""
    return any(c.said(i) == "first" and c.said(i + 1).startswith("show") for i in _used(c, found))


HEATED: Final = frozenset(["incubator", "oven", "fridge", "freezer", "pad", "lamp", "heater", "stove", "microwave", "brooder"])


def _not_outside(c: Clause, found: Found) -> bool:
    """`incubator 99.5F`, `cold water for 9`: not the weather."""
    if found.values.get("celsius") is None:
        return False
    return any(item.said in HEATED for item in c.items) or any(c.said(i + 1) == "water" for i in _used(c, found))


def _not_moved(c: Clause, found: Found) -> bool:
    """`14 belongs in B3`, `built cage B3 for 14`, `14 moved a lot in B3`."""
    moves = [i for i in _used(c, found) if c.items[i].marks & {"move", "shift", "put"}]
    if moves:
        return c.said(moves[0] + 1) in {"a", "around", "about"} and "move" in c.items[moves[0]].marks
    cage = next((i for i in _used(c, found) if c.items[i].sort in {"cage", "code"}), 0)
    return any(item.sort == "word" and not item.marks and item.said not in SMALL and item.said not in STAYING for item in c.items[:cage])


STAYING: Final = frozenset(
    """is lives went goes back stays sits doe buck going gone got over home up down cage hole pen""".split()  # noqa: SIM905 - a table of words
)


def _not_treated(c: Clause, _found: Found) -> bool:
    """`22's ivermectin withdrawal ends friday`."""
    told = c.has("gave", "treat", "give") or c.holds("dose")
    return c.has("withdrawal") and not told and c.says(frozenset({"ends", "is", "over", "up", "was"}))


AFTER_WEAN: Final = frozenset(
    """stress weight weights date age box day time goal period pen herself himself themselves itself problems""".split()  # noqa: SIM905 - a table of words
)


def _not_weaned(c: Clause, found: Found) -> bool:
    """`weaning weight goal`, `weaned herself`, `look weaned`, `vet said wean 16`."""
    return any(
        "wean" in c.items[i].marks
        and (c.said(i + 1) in AFTER_WEAN or c.said(i - 1) in {"look", "looks", "looked", "seem", "seems", "half", "said", "says"})
        for i in _used(c, found)
    )


NO_DEED: Final = frozenset({"nothing", "anything", "something", "everything", "morning", "evening"})


def _not_missed(c: Clause, found: Found) -> bool:
    """`hit or miss`, `missed palpating 14`."""
    return any(
        c.said(i).startswith("miss") and (c.said(i - 1) == "or" or (c.said(i + 1).endswith("ing") and c.said(i + 1) not in NO_DEED))
        for i in _used(c, found)
    )


JUDGES: Final[Mapping[str, Callable[[Clause, Found], bool]]] = {
    "weighed": _no_weight,
    "litter_weighed": _no_weight,
    "ration": _no_ration,
    "temper": _no_temper,
    "ailment": _no_sign,
    "fault": _no_fault,
    "died": _no_death,
    "kits_lost": _no_kits,
    "refused": _no_refusal,
    "animal": _no_newcomer,
    "given_away": _not_given,
    "sold": _not_sold,
    "for_sale": _not_listed,
    "culled": _not_culled,
    "planned": _not_planned,
    "done": _not_done,
    "feed_bought": _no_rabbit_feed,
    "feed_left": _no_rabbit_feed,
    "shown": _not_shown,
    "weather": _not_outside,
    "missed": _not_missed,
    "moved": _not_moved,
    "treated": _not_treated,
    "weaned": _not_weaned,
    "color": _no_color,
    "bred": _not_bred,
    "nest_manners": _trod_on_a_thing,
}
