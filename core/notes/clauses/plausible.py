"""Ordinary words that are words of the barn as well: whether they say what a kind took them for.

`lost 33` tells of a death, `lost the key to 33's cage` of a key. A reading whose frame doesn't fit is no reading: the words stay a remark.

Over 300 lines: a list of doubts, a few lines each.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from core.herd.litters import alive_now, the_litter
from core.notes.clauses.clause import Clause
from core.notes.clauses.losses import LEAVES
from core.notes.clauses.scene import Found
from core.notes.clauses.turns import turned
from core.notes.clauses.unreal import unreal
from core.notes.slots.items import Item

DETERMINERS: Final = frozenset("the a an my our her his its their some any this that your another one more all both up out".split())  # noqa: SIM905 - a table of words
#: What may stand before an animal that something is done to.
ADJECTIVES: Final = frozenset(
    """big little small smallest biggest old oldest young youngest last first second pretty nice nicest sweet sweetest poor dear good best other extra new beautiful
     lovely handsome junior senior proven show meat spare remaining whole entire pair trio of two three four five six seven eight rabbit rabbits bunny bunnies runt runts pick keeper
     guy girl fellow""".split()  # noqa: SIM905 - a table of words
)
#: What stands behind a verb and is nothing that it was done to.
LINKS: Final = frozenset(
    """to for at on in from of with by and but so then off over under near because since when while after before again already today yesterday tonight overnight
     last this early late just now too also finally sadly suddenly probably maybe i we he she they it him them me us you is was were had has as during around within
     away peacefully quietly naturally who which that if or not no yes there here out up down back together twice once ok fine please well alone unexpectedly
     im weve ive lol ugh rip sorry sad hard badly right left same time once home somewhere yet anyway really pretty very""".split()  # noqa: SIM905 - a table of words
)
PEOPLE: Final = frozenset(
    """me my him her us kid kids hand hands finger fingers thumb arm wrist ankle leg toe boy girl man woman lady wife husband daughter son grandson granddaughter neighbor
     vet child children people everyone anyone sister brother mom dad grandma grandpa friend helper judge visitor hard deep good again today blood""".split()  # noqa: SIM905 - a table of words
)
THINGS: Final = frozenset({"cage_word", "not_feed", "chore_word", "hay", "feed", "box"})
STATES: Final = frozenset(
    {
        "warm", "dry", "cool", "calm", "away", "separate", "separated", "inside", "outside", "quiet", "company", "happy", "busy", "clean",
        "safe", "fed", "watered", "still", "in", "from", "out",
    }
)  # fmt: skip
NEARBY: Final = frozenset({"by", "near", "beside", "next", "in", "for", "over", "at", "on", "under", "above", "behind", "from"})


def doubted(c: Clause) -> None:
    """Take back the readings whose words say something else."""
    kept = [found for found in c.found if not _doubtful(c, found)]
    if len(kept) == len(c.found):
        return
    c.found[:] = kept
    c.used.clear()
    c.used.update(id(item) for found in kept for item in found.used)


def _doubtful(c: Clause, found: Found) -> bool:
    judge = FRAMES.get(found.fact.kind)
    if found.fact.kind in {"ailment", "fault", "temper"} and _all_denied(c, found):
        return True
    if unreal(c, found):
        c.put_off = True
        return True
    if judge is not None and judge(c, found):
        return True
    if turned(c, found):
        c.put_off = True
        return True
    return False


def _cues(c: Clause, found: Found, *words: str) -> list[int]:
    """Where the words of a reading stand: those given, or all that have marks."""
    used = {id(item) for item in found.used}
    wanted = frozenset(words)
    return [
        i
        for i, item in enumerate(c.items)
        if (id(item) in used or item.said == "put") and item.sort == "word" and (item.said in wanted if wanted else item.marks)
    ]


def _object(c: Clause, i: int) -> int:
    """Index of what the word at `i` is done to, past articles and adjectives."""
    i += 1
    while i < len(c.items) and (
        c.said(i) in DETERMINERS
        or c.said(i) in ADJECTIVES
        or c.items[i].marks & {"color", "breed_name", "pronoun", "buck_word", "doe_word", "all", "again"}
    ):
        i += 1
    return i


def _thing(c: Clause, i: int) -> bool:
    """Whether what the word at `i` is done to is a thing: a plain noun, no animal, kit or number."""
    place = _object(c, i)
    if place >= len(c.items) or c.items[place].sort != "word":
        return False
    item = c.items[place]
    if not _only_noun(item):
        return bool(item.marks & THINGS) and not item.marks & {"kits", "litter"}
    return item.said not in LINKS and not item.said.endswith("ly")


def _owned(c: Clause, found: Found) -> bool:
    """Whether the reading's animal only owns what is spoken of: `33's latch`."""
    used = {id(item) for item in found.used}
    for i, item in enumerate(c.items):
        if id(item) in used and item.sort == "animal" and item.unit == "possessive":
            following = _object(c, i)
            after = c.items[following] if following < len(c.items) else None
            if (
                after is not None
                and after.sort == "word"
                and (after.marks & THINGS or (_only_noun(after) and after.said not in LINKS and not after.said.endswith("ing")))
            ):
                return True
    return False


def _only_noun(item: Item) -> bool:
    """Whether a word does nothing in a note but be asked about: `31's card`, `32's pedigree`."""
    return all(mark.startswith(("ask:", "field:")) for mark in item.marks)


def _animal_at(c: Clause, i: int) -> bool:
    return i < len(c.items) and (c.items[i].sort in {"animal", "code", "num", "cage"} or bool(c.items[i].marks & {"kits", "litter"}))


LITTLE: Final = 4  # items: `lost daisy`, and hardly more


def _stranger(found: Found) -> bool:
    """Whether a name that nobody knows stands in the animal's place: it is asked about."""
    return found.said is not None and not found.said.tags and any(item.said.removesuffix("'s") == found.said.said for item in found.used)


def _died(c: Clause, found: Found) -> bool:
    if _stranger(found) and len(c.items) <= LITTLE:
        return False
    if _owned(c, found):
        return True
    return any(_no_life_lost(c, i) for i in _cues(c, found))


#: `passed me the hay`, `passed out`: nobody died.
PASSED_ON: Final = frozenset({"me", "him", "her", "up", "by", "out", "the", "over", "through", "around", "us"})


def _no_life_lost(c: Clause, i: int) -> bool:
    """`lost the key`, `passed out`, `put 33 down for the night`, `is gone to the vet`."""
    said, after = c.said(i), c.said(i + 1)
    thing = _object(c, i)
    return (
        (
            said in {"lost", "lose", "loss"}
            and not c.has("die", "dead")
            and not _animal_at(c, thing)
            and c.said(thing) not in {",", ":", "-", ""}
        )
        or (said in {"passed", "put down", "passed on"} and _thing(c, i) and not _animal_at(c, thing))
        or (said == "passed" and after.split(" ")[0] in PASSED_ON)
        or (said == "put" and _down_for_a_while(c, i) and not c.has("ail"))
        or (said == "is gone" and after in {"to", "from", "for", "with", "off", "in", "out", "again"})
        or (said in {"died", "dead", "dies"} and _of_a_thing(c, i))
    )


def _down_for_a_while(c: Clause, i: int) -> bool:
    """`put 33 down for a minute`."""
    return any(c.said(j) == "down" and c.said(j + 1).split(" ")[0] in {"for", "as", "on", "to", "in", "at"} for j in range(i, len(c.items)))


def _of_a_thing(c: Clause, i: int) -> bool:
    """Whether a plain noun stands before the word at `i`, and animals only behind it as the place: `the light died by 14`."""
    plain = (
        i > 0
        and c.items[i - 1].sort == "word"
        and not c.items[i - 1].marks
        and c.said(i - 1) not in LINKS
        and c.said(i - 1) not in {"found", "i", "we"}
    )
    if not plain or any(c.items[j].sort in {"animal", "code"} or c.known(j) is not None for j in range(i)):
        return False
    after = next((j for j in range(i + 1, len(c.items)) if c.items[j].sort in {"animal", "code", "num"}), None)
    return after is not None and c.said(after - 1).split(" ")[-1] in NEARBY


NAMED_SORTS: Final = frozenset({"animal", "code"})


def _left(c: Clause, found: Found) -> bool:
    """Sold, butchered or given away."""
    if _owned(c, found) and "litter_of" not in found.values:
        return True
    if _stranger(found):
        return False
    cues = [
        i
        for i in _cues(c, found)
        if c.items[i].marks & {"sell", "cull", "list"} and c.said(i).split(" ")[-1] not in {"with", "to", "for", "by"}
    ]
    if found.fact.kind == "sold" and (
        any(c.said(i) == "sold" and c.said(i + 1) in {"me", "us"} for i in cues) or (not cues and c.said(c.opening() or 0) == "bought")
    ):
        return True
    return any(
        _thing(c, i) and "to" not in found.values
        for i in cues
        if not any(_animal_at(c, j) and c.items[j].sort != "num" and c.said(j + 1) != "," for j in range(_object(c, i) - 1, i, -1))
        and not _called_by_name(c, i)
    )


def _called_by_name(c: Clause, i: int) -> bool:
    """`sold the littlest R buck, Pip, for 30`: what was sold is an animal, and its name stands behind it."""
    return any(
        c.said(j - 1) == "," and not c.items[j - 2].marks.isdisjoint({"buck_word", "doe_word", "kits", "scope:grow-outs"})
        for j in c.placed(NAMED_SORTS)
        if j > i + 2  # not a figure: items
    )


def _missed(c: Clause, found: Found) -> bool:
    return _owned(c, found) or any(
        (c.said(i) in {"missed", "misses", "miss"} and (_thing(c, i) or c.said(i - 1) in {"i", "we", "they", "you"}))
        or (c.said(i).endswith("take") and c.said(i + 1) in DETERMINERS)
        for i in _cues(c, found)
    )


def _shown(c: Clause, found: Found) -> bool:
    return _owned(c, found) or (
        not c.has("show_place", "place_number", "place_word")
        and any(c.said(i) in {"won", "placed"} and _thing(c, i) for i in _cues(c, found))
    )


BITES: Final = frozenset(
    {
        "bit", "bites", "bite", "nipped", "nips", "charged", "charges", "scratched", "attacked", "attacks", "boxed", "grunted", "lunged",
        "swatted", "kicked",
    }
)  # fmt: skip


MOODS: Final = frozenset("mean gentle sweet calm friendly nasty cranky grumpy vicious mellow tame".split())  # noqa: SIM905 - a table of words


def _temper(c: Clause, found: Found) -> bool:
    if _owned(c, found):
        return True
    cues = _cues(c, found)
    return bool(cues) and all(_no_temper(c, i) for i in cues)


def _no_temper(c: Clause, i: int) -> bool:
    said = c.said(i)
    if said in BITES:
        if said == "bit" and (c.said(i - 1) in {"a", "little", "wee", "tiny", "quite a", "every"} or c.said(i + 1) == "of"):
            return True
        if any(c.said(j) == "through" and c.said(j + 1) == "my" for j in (i + 1, i + 2)):
            return False  # "bit clean through my glove"
        person = c.said(i + 1) in PEOPLE or c.said(_object(c, i)) in PEOPLE or _by_name(c, i + 1)
        through = c.said(i + 1) in {"through", "off", "into", "the door", "himself", "herself", "itself"}
        return (
            through
            or (not person and _thing(c, i))
            or (
                c.said(i + 1) in {"her", "his", "its"}
                and not (c.said(i + 2) in PEOPLE or i + 2 >= len(c.items))
                and c.said(i + 2) not in LINKS
            )
            or (c.said(i + 2) in {"ear", "ears", "nose", "head", "foot", "leg"} and c.said(i + 1) in {"her", "his", "its"})
        )
    if said not in MOODS:
        return False
    following = c.items[i + 1] if i + 1 < len(c.items) else None
    before = any(c.items[j].sort == "animal" or c.items[j].marks & {"pronoun"} or c.known(j) is not None for j in range(i))
    return not before and following is not None and following.sort == "word" and not following.marks and following.said not in LINKS


def _by_name(c: Clause, i: int) -> bool:
    """`22 bit Ann`: a word with a capital that is no animal's name."""
    item = c.items[i] if i < len(c.items) else None
    return item is not None and item.sort == "word" and not item.marks and item.said.capitalize() in c.scene.text.split()


def _ailing(c: Clause, found: Found) -> bool:
    for i in _cues(c, found):
        if c.said(i) in {"limping", "limp", "limped", "coughing", "sneezing", "runs", "sick", "hurt", "hurts"}:
            if (
                c.said(i + 1) in {"to", "over", "over to", "back"}
                or (c.said(i) == "sick" and c.said(i + 1) == "of")
                or (
                    c.said(i) in {"runs", "the runs"}
                    and c.said(i + 1) in {"are", "were", "the", "around", "when", "from", "away", "to", "up", "in", "out"}
                )
            ):
                return True
            if c.said(i - 1) in {"my", "i", "im", "me", "we", "of"}:
                return True
        if c.said(i) == "the runs" and c.said(i + 1) in {"are", "were", "in", "for"} and c.said(i + 1) != "for":
            return True
    return False


def _faulty(c: Clause, found: Found) -> bool:
    return any(c.said(i) in {"chopped", "pinched", "smut"} and _thing(c, i) for i in _cues(c, found))


def _colored(c: Clause, found: Found) -> bool:
    places = [i for i, item in enumerate(c.items) if item.marks & {"color"}]
    return _owned(c, found) or any(
        c.said(i + 1) in {"with", "from", "covered", "all"}
        or (c.has("color_is") and any(c.said(j) == "looks" for j in range(i)) and c.said(i + 1) in {"today", "this"})
        for i in places
    )


def _done(c: Clause, found: Found) -> bool:
    for i in _cues(c, found):
        if (
            c.said(i) in {"finished", "completed"}
            and _thing(c, i)
            and not c.items[_object(c, i)].marks
            and not c.said(_object(c, i)).endswith("ing")
            and not c.has("chore_word")
        ):
            return True
        if c.said(i + 1) in {"past", "against", "up"}:
            return True
    return False


def _planned(c: Clause, found: Found) -> bool:
    if _owned(c, found):
        return True
    for i in _cues(c, found):
        said = c.said(i)
        if said == "keep" and (
            c.said(_object(c, i)) in {"eye", "track", "tabs", "watch", "an eye", "ahead", "it", "on", "up"}
            or c.said(i + 1) in {"on", "up", "it", "getting"}
        ):
            return True
        if said in {"keep", "keeping"}:
            animal = next(
                (
                    j
                    for j in range(i + 1, len(c.items))
                    if c.items[j].sort in {"animal", "num"} and any(c.items[j] is item for item in found.used)
                ),
                None,
            )
            if animal is not None and c.said(animal + 1) in STATES:
                return True
        if said == "process" and (c.said(i + 1) == "of" or c.said(i - 1) in DETERMINERS):
            return True
    return False


CHORES: Final = (
    "nest",
    "box",
    "nb",
    "check",
    "weigh",
    "wt",
    "wean",
    "palp",
    "breed",
    "rebreed",
    "feed",
    "clean",
    "nail",
    "trim",
    "worm",
    "sale",
    "tattoo",
    "kindl",
    "review",
    "cull",
    "water",
    "tray",
    "chore",
    "weight",
    "tag",
    "remind",
    "mating",
)


def _skipped(c: Clause, found: Found) -> bool:
    """Whether what is left out is no chore of the barn, or a meal that the animal left: `15 skipped her feed`."""
    if any(c.said(i) in {"skipped", "skips"} and c.said(i + 1) in {"her", "his"} for i in range(len(c.items))):
        return True
    words = str(found.values.get("chore") or "").split()
    return bool(words) and not any(word.startswith(CHORES) for word in words[:4])


def _fed(c: Clause, found: Found) -> bool:
    used = {id(item) for item in found.used}
    cups = [i for sort in ("cup", "weight") for i in c.places(sort) if id(c.items[i]) in used]
    for i in cups:
        if c.said(i + 1) == "of" and i + 2 < len(c.items) and c.items[i + 2].sort == "word" and not c.items[i + 2].marks:
            return True
        if c.items[i].sort == "weight" and not c.has(
            "per_day", "each", "feed", "hay", "scope:grow-outs", "scope:bucks", "scope:does", "scope:all"
        ):
            beside = [j for j, item in enumerate(c.items) if "ration" in item.marks and item.said != "on"]
            if all(
                any(
                    item.sort == "word" and not item.marks and item.said not in {"about", "just", "only"}
                    for item in c.items[min(i, j) + 1 : max(i, j)]
                )
                for j in beside
            ):
                return True
    return c.has("had") and any(c.said(i) == "i" and c.said(i + 1) == "had" for i in range(len(c.items)))


def _box(c: Clause, found: Found) -> bool:
    boxes = [i for i, item in enumerate(c.items) if "box" in item.marks and any(item is other for other in found.used)]
    out_of = any(
        c.said(i - 1) in {"out of", "off", "from", "off of", "outta"} and not any(c.items[j].marks & {"box"} for j in range(i))
        for i in boxes
    )
    return out_of and found.values.get("change") == "out"


NO: Final = frozenset(
    {
        "no", "not", "without", "never", "nor", "neither", "isnt", "isn't", "wasnt", "wasn't", "aint", "ain't", "negative for", "free",
        "hardly", "zero", "nothing like", "no more", "no longer", "any", "stopped", "quit", "hasnt", "hasn't", "doesn't", "doesnt",
        "didn't", "didnt", "don't", "dont", "did not", "does not", "do not", "was not", "is not", "are not", "has not", "have not", "had not",
    }
)  # fmt: skip
OVER: Final = frozenset({"gone", "better", "healed", "resolved", "stopped", "cured", "recovered", "over"})


def _denied(c: Clause, i: int) -> bool:
    """Whether the word at `i` is denied: `no nasal discharge`, `no sign of mites`, `the limp is gone`."""
    before = [c.said(j) for j in range(max(0, i - 4), i)]
    near = [word for word in before if word in NO]
    if near and not set(before[before.index(near[0]) + 1 :]) & {",", ".", ";", "but", "and", "just"}:
        return near[0] != "any" or any(word in NO - {"any"} for word in (c.said(j) for j in range(i)))
    after = [word for j in range(i + 1, min(len(c.items), i + 5)) for word in c.said(j).split(" ")]
    return (
        bool(set(after) & OVER)
        and bool(set(after) & {"is", "are", "all", "has", "have", "looks", "seems", "was", "finally", "up", "better"})
        and not set(after) & NO
    )


def _all_denied(c: Clause, found: Found) -> bool:
    cues = [i for i in _cues(c, found) if c.items[i].marks & DENIABLE]
    return bool(cues) and all(_denied(c, i) for i in cues)


DENIABLE: Final = frozenset({"ail", "fault", "temper:bad", "temper:good"})


def _named_person(c: Clause, _found: Found) -> bool:
    """Whether the name is a person's: `sold 32 to a guy named Dave`."""
    return any("name_word" in item.marks and c.said(i - 1) in PEOPLE | BUYERS for i, item in enumerate(c.items))


BUYERS: Final = frozenset(
    {
        "guy", "man", "lady", "woman", "person", "fellow", "fella", "farmer", "dude", "gal", "family", "couple", "breeder", "buyer",
        "customer", "somebody", "someone", "kid", "girl", "boy", "teacher", "student",
    }
)  # fmt: skip


BARE: Final = frozenset(
    {
        "check", "checked", "checking", "looked", "well", "fine", "fat", "happy", "pink", "warm", "good", "healthy", "growing", "big",
        "strong", "nice", "um", "uh", "so", "okay", "ok", "yep", "lol", "still", "now", "in", "her", "with", "there", "under", "total",
        "count", "today", "only", "just", "about", "age", "aged",
    }
)  # fmt: skip


def _some_of_them(c: Clause, found: Found) -> bool:
    """Whether kits counted without a verb are only some of them, or have something done to them: `1 kit with a bad eye`."""
    if any(c.said(i - 1) in LEAVES for i in _used_numbers(c, found)):
        return False  # "so that leaves six"
    if c.has("ail", "fault", "treat", "cause:sick", "give", "sell", "cull") and not c.has("count"):
        return True
    if any("kits" in item.marks and c.said(i + 1) in {"with", "w"} for i, item in enumerate(c.items)) and not c.has("count"):
        return True  # "12 has 1 kit with a bad eye"
    if c.has("count", "left_over", "has_kits") or any(
        ("all" in item.marks and c.whole(i + 1) is not None) or item.said == "all" for i, item in enumerate(c.items)
    ):
        return False
    if _in_passing(c, found) or _of_a_form(c, found):
        return False
    if any((c.said(i + 1), c.said(i + 2)) == ("in", "there") for i in _used_numbers(c, found)):
        return False  # "checked nestbox 12 all good 7 in there"
    used = {id(item) for item in found.used}
    rest = [
        item
        for item in c.items
        if id(item) not in used
        and item.sort == "word"
        and not item.marks
        & {"kits", "all", "alive", "all_alive", "doe_word", "nest_place", "pronoun", "litter", "well", "sign:good", "chore_word"}
        and not ("dead" in item.marks and _none_of_it(c, item))
    ]
    return any(item.said not in LINKS and item.said not in DETERMINERS and item.said not in BARE for item in rest)


def _used_numbers(c: Clause, found: Found) -> list[int]:
    """Where the numbers stand that a reading took."""
    used = {id(item) for item in found.used}
    return [i for i in c.places("num") if id(c.items[i]) in used]


def _none_of_it(c: Clause, item: Item) -> bool:
    """`no dead ones`: said of none."""
    return c.said(c.items.index(item) - 1) in {"no", "none"}


def _in_passing(c: Clause, found: Found) -> bool:
    """Whether `Sorrel's seven kits` are said in passing and agree with the book."""
    doe = c.herd.find(found.values.get("doe") or "")
    litter = the_litter(c.herd, doe.key, c.today) if doe else None
    owned = any(
        item.unit == "possessive" and i + 1 < len(c.items) and c.items[i + 1].value == found.values["count"]
        for i, item in enumerate(c.items)
    )
    return owned and litter is not None and alive_now(litter) == found.values["count"]


def _of_a_form(c: Clause, found: Found) -> bool:
    """Whether a form's line counts the kits and the book agrees: `Doe 12: 7 kits, age 15 days, eyes open`."""
    opening = c.opening()
    doe = c.herd.find(found.values.get("doe") or "")
    litter = the_litter(c.herd, doe.key, c.today) if doe else None
    headed = opening is not None and c.said(opening + 1) in {":", "="}
    return headed and litter is not None and alive_now(litter) == found.values["count"]


AVERAGES: Final = frozenset({"avg", "average", "averaging", "ave", "averaged", "averages"})


def _an_average(c: Clause, _found: Found) -> bool:
    return any(item.said in AVERAGES for item in c.items) and not any(item.said == "each" for item in c.items)


def _treated(c: Clause, found: Found) -> bool:
    """`the pen` is a place; without a dose or a word of giving it is no penicillin."""
    return (
        found.values.get("with_") == "pen"
        and not c.sorted_as("dose")
        and any(c.said(i) == "pen" and c.said(i - 1) in DETERMINERS | {"in", "into", "to", "grow", "out"} for i in range(len(c.items)))
    )


def _weaned(c: Clause, _found: Found) -> bool:
    """`one of 16's weaned kits is dead`: weaned tells which kits."""
    return c.has("dead", "die", "lose", "sell", "cull") and any(
        "wean" in item.marks and i + 1 < len(c.items) and bool(c.items[i + 1].marks & {"kits", "litter"}) for i, item in enumerate(c.items)
    )


def _bred(c: Clause, _found: Found) -> bool:
    """`Juno x Flint gave nice kits`: a pair that is spoken of."""
    return (
        c.has("kits", "litter")
        and any(item.said == "x" for item in c.items)
        and any(item.said in {"gave", "made", "throws", "threw", "produced", "gives", "makes"} for item in c.items)
    )


def _no_weather(c: Clause, _found: Found) -> bool:
    return not any(item.sort in {"temp", "num"} for item in c.items) and any(
        c.said(i - 1) in {"no", "not", "without"} and any(mark.startswith("weather") for mark in item.marks)
        for i, item in enumerate(c.items)
    )


FRAMES: Final[Mapping[str, Callable[[Clause, Found], bool]]] = {
    "died": _died,
    "sold": _left,
    "culled": _left,
    "given_away": _left,
    "for_sale": _left,
    "missed": _missed,
    "shown": _shown,
    "temper": _temper,
    "ailment": _ailing,
    "fault": _faulty,
    "color": _colored,
    "done": _done,
    "planned": _planned,
    "ration": _fed,
    "skipped": _skipped,
    "animal": _named_person,
    "kit_count": _some_of_them,
    "bred": _bred,
    "weather": _no_weather,
    "treated": _treated,
    "weaned": _weaned,
    "weighed": _an_average,
    "nest_box": _box,
}
