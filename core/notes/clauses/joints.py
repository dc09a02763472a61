"""Where pieces of a sentence part or hold together, by their words alone."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.others import BEFALLEN, of_somebody_else, shop_or_vet
from core.notes.clauses.with_animals import LOOKS
from core.notes.slots.items import Item, marks_of

HARD: Final = frozenset({".", ";", "!", "?", "|", "~"})
SOFT: Final = frozenset({
    ",", "and", "but", "so", "then", "also", "plus", "while", "&", "because", "cause", "cuz", "since", "although", "though",
    "and then", "-", "/",
})  # fmt: skip
#: Behind `so` they tell how much, not what follows from it.
DEGREES: Final = frozenset({
    "many", "much", "far", "few", "good", "bad", "big", "small", "tiny", "cold", "hot", "mean", "long", "little", "nice", "well",
    "fat", "thin", "sweet", "gentle", "calm", "cute", "hard",
})  # fmt: skip
NUMBERS: Final = frozenset({"num", "weight", "pair", "clock", "money", "temp", "span", "dose", "cup", "sum", "percent"})
VALUES: Final = NUMBERS | {"cage"}
#: Marks of words that say nothing of the animal before them, and of those that only say which it is.
SAYING_NOTHING: Final = frozenset({"negation", "pronoun", "to", "from", "question", "all", "none"})
OF_ITSELF: Final = frozenset({"doe_word", "buck_word", "kits"})
SMALL: Final = frozenset({
    ",", ":", "-", "(", ")", "and", "and then", "so", "then", "also", "but", "the", "ok", "well", "plus", "=", "&", "/", '"', "'",
    "...", "~", "while", "because", "since",
})  # fmt: skip
#: What may stand before the animal that a piece begins with.
BEFORE_ANIMAL: Final = SMALL | HARD | {"doe", "buck", "tag", "on", "that"}
BIRTHS: Final = frozenset({"kindle", "had", "litter_born"})
BESIDE: Final = 5  # items: as far as a number is looked at with what follows it
SHORT: Final = 6  # words: a sentence without a verb of the barn that is longer stands on its own
#: What befell one animal, and is no heading of a list where the next line has words of its own.
ONE_OWN: Final = BIRTHS | {"die", "lose", "step", "eat", "bite"}
#: What the lines of a list of births or losses tell of each animal.
LISTED: Final = frozenset(
    """kits litter alive dead born die lose all none count had litter_born newborn nest_place sire buck_word doe_word bucks_word does_word to from each froze eat step
    cause:cold cause:heat cause:starved cause:crushed cause:eaten cause:scattered cause:out_of_box cause:predator cause:sick cause:deformed cause:unknown
    kindle pronoun again color_is has_kits""".split()  # noqa: SIM905 - a table of words
)
ALL_WELL: Final = frozenset({"all_alive", "alive_and_well", "well"})
GUESSES: Final = frozenset({"tentative", "negation"})
ANIMAL_PLACES: Final = frozenset({"animal", "num"})
SMALL_OR_DATE: Final = SMALL | {"date"}
BEFORE_CAUSE: Final = SMALL | {"a", "an", "by", "it", "was", "probably", "maybe"}
CAGES: Final = frozenset({"cage", "code"})
WEATHER: Final = frozenset({"weather:cold", "weather:heat", "weather:frost", "degrees_verb"})
ITS_LEFT: Final = frozenset({"left", "remaining", "remain", "remains", "hand", "bin", "stock", "still", "inventory"})
LIMITS: Final = frozenset({"if", "maybe", "perhaps", "possibly", "unless", "almost", "nearly"})
DETAILS: Final = frozenset({"name_word", "born_word", "buck_word", "doe_word", "breed_name", "color", "sire", "dam_word"})
#: Behind a number they tell of so many: of an animal it would be `looks`.
OF_SEVERAL: Final = frozenset({"look", "are", "were", "seem", "made it"})


def nothing_befell(clause: Clause) -> bool:
    """`nothing dead`, `no deaths`: whatever is denied there is told of nobody."""
    return any(
        item.said in {"nothing", "none", "no", "nobody"} and i + 1 < len(clause.items) and not clause.items[i + 1].marks.isdisjoint(ONE_OWN)
        for i, item in enumerate(clause.items)
    )


def behind_animal(clause: Clause, i: int) -> bool:
    """`14 box in 11/22`: the day of this animal's alone, and not of the lines below."""
    return any(clause.known(j) is not None for j in range(i))


def says_of_its_own(items: list[Item]) -> bool:
    """Whether a sentence or line has words that are none of a list's: neither a word of the barn nor a small one."""
    return any(
        item.sort == "word" and item.said not in SMALL and item.said not in LOOKS and (not item.marks & LISTED or item.marks & ALL_WELL)
        for item in items
    )


def goes_to_cage(items: list[Item], i: int) -> bool:
    """`Moss to B1`: where an animal goes, whatever was told of the one before."""
    return i > 0 and items[i].sort in {"code", "cage"} and "into" in items[i - 1].marks


def tells_of_deaths(clause: Clause) -> bool:
    """Whether it says that animals died; `8 alive, 1 dead` only counts kits."""
    return any("die" in item.marks and not (i and clause.items[i - 1].sort in NUMBERS) for i, item in enumerate(clause.items))


def of_the_weather(last: Clause, items: list[Item]) -> bool:
    """`. cold one tonight, down to 18`: a word of the weather and a day or degrees; behind a loss without degrees it is the cause."""
    marks = marks_of(items)
    if marks.isdisjoint(WEATHER) or marks & {"kits", "litter", "lose", "die"}:
        return False
    sorts = {item.sort for item in items}
    degrees = bool(sorts & {"num", "temp"}) and bool(marks & {"outdoors", "degrees_verb"})
    told = degrees or ("date" in sorts and last.marks.isdisjoint({"lose", "die", "dead", "eat", "step", "had", "kindle"}))
    return told and sorts.isdisjoint({"animal", "code"})


def more_cages(last: Clause, items: list[Item]) -> bool:
    """`... to B1, B2 and B3`: the row of cages goes on."""
    return (
        last.items[-1].sort in CAGES
        and "into" in last.marks
        and all(item.said in SMALL or item.sort in CAGES for item in items)
        and any(item.sort in CAGES for item in items)
    )


def degrees_apart(last: Clause, items: list[Item]) -> bool:
    """A line `barn 24F` below one that tells of an animal."""
    sorts = [item.sort for item in items]
    return sorts[0] == "break" and "temp" in sorts and last.marks.isdisjoint(WEATHER) and not {"animal", "code", "num"} & set(sorts)


def degrees_only(items: list[Item]) -> bool:
    """`, down to 18`: a number beside a word of the weather, and nothing of the barn."""
    marks, sorts = marks_of(items), {item.sort for item in items}
    return (
        bool(marks & {"outdoors", "degrees_verb"})
        and "num" in sorts
        and sorts <= {"num", "word", "mark", "date"}
        and not marks & {"kits", "litter"}
    )


def left_over(items: list[Item]) -> bool:
    """`190 lb left now`: how much feed there still is."""
    weighed = any(
        item.sort == "weight" or (item.sort == "num" and items[i + 1 : i + 2] and "bag" in items[i + 1].marks)
        for i, item in enumerate(items)
    )
    return weighed and any("feed_left" in item.marks and ITS_LEFT.intersection(item.said.split()) for item in items)


def only_cause(items: list[Item]) -> bool:
    """`. hawk.`: nothing but what they died of."""
    told = [item for item in items if item.sort not in {"mark", "break"} and item.said not in BEFORE_CAUSE]
    return bool(told) and all(any(mark.startswith("cause:") for mark in item.marks) for item in told)


def only_result(last: Clause, items: list[Item]) -> bool:
    """`; palpated; open`: nothing but how she felt."""
    told = [item for item in items if item.sort not in {"mark", "break"}]
    felt = {"open", "pregnant", "unsure"}
    return last.items[-1].marks >= {"palpate"} and bool(told) and all(item.marks & felt for item in told)


def apart(last: Clause, items: list[Item], marks: frozenset[str], verbs: frozenset[str]) -> bool:
    """Whether a wish, a guess or a denial and a deed beside it are two statements: `..., I wish she'd hurry`, `I didn't expect it but she had 8`.

    Such words hold for their own statement only, so neither may hide the other.
    """
    had = last.marks & verbs
    if items[0].said in SOFT and marks.isdisjoint(verbs) and shop_or_vet(items):
        return True
    if last.marks & BEFALLEN and last.marks.isdisjoint({"new", "gift"}) and of_somebody_else(last.items, spoken_of=last.before is not None):
        return True
    guesses = not marks.isdisjoint(GUESSES) and "palpate" not in had and _guesses(items, verbs)
    if guesses and not figures(items) and (had or last.holds("animal", "num", "weight")):
        return True
    if marks.isdisjoint(verbs):
        return False
    if items[0].said == "but" and last.marks & {"tentative", "negation"}:
        return not had or _guesses(last.items, verbs)
    return not had and items[0].said == "," and "negation" in last.marks and "tentative" not in last.marks and figures(items)


def figures(items: list[Item]) -> bool:
    """Whether a number is told; `one` in words may be no number."""
    return any(item.sort in NUMBERS and not (item.spoken and item.value == 1) for item in items)


def _guesses(items: list[Item], verbs: frozenset[str]) -> bool:
    """Whether a wish, a guess or `I don't` stands before any verb of the barn; `if` and `maybe` may limit what was said before."""
    for i, item in enumerate(items):
        if "tentative" in item.marks:
            return item.said not in LIMITS
        if "negation" in item.marks and i and items[i - 1].said in {"i", "we", "you"} and not item.marks & {"open", "unsure"}:
            return True
        if item.marks & verbs:
            return False
    return False


def describes(items: list[Item]) -> bool:
    """`. Buck. New Zealand, white. Name Duke. Born 5/2/2026.`: details of the newcomer before."""
    told = [item for item in items if item.sort not in {"mark", "break"} and item.said not in SMALL]
    return bool(told) and bool(told[0].marks & DETAILS) and len(told) <= SHORT


def treats(items: list[Item]) -> bool:
    """Whether a piece tells of a remedy, by its name or as something put on."""
    said = [item.said for item in items]
    rubbed = next((i for i, word in enumerate(said) if word in {"put", "rubbed", "dabbed", "smeared"}), None)
    return any(item.marks & {"treat", "drug"} for item in items) or (rubbed is not None and "on" in said[rubbed + 2 :])


def tells_of_itself(items: list[Item]) -> bool:
    """`and moss is mean`: what follows is said of this animal alone."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) > 2 and told[1].said in {"is", "has", "was", "looks"}


def counts_kits(items: list[Item]) -> bool:
    """`2 dead` behind a birth counts kits, whoever has the tag 2."""
    told = [item for item in items if item.said not in SMALL]
    return (
        len(told) > 1
        and told[0].sort == "num"
        and (bool(told[1].marks & {"dead", "alive"}) or (told[1].said in OF_SEVERAL and told[0].value > 1))
    )


def names_sire(items: list[Item]) -> bool:
    """`, buck 3` behind a birth only says whose kits they are."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) == 1 and told[0].sort == "animal" and told[0].value.sex == "buck"


def parts(items: list[Item], i: int) -> bool:
    """Whether a comma, an `and` or a dash may part two statements; `so sweet` may not."""
    item = items[i]
    if item.said not in SOFT or (item.said == "so" and i + 1 < len(items) and items[i + 1].said in DEGREES):
        return False
    return item.sort != "mark" or item.said in {",", "&", "/"} or (item.said == "-" and not item.glued)


def inside(items: list[Item], i: int) -> bool:
    """Whether a dot belongs to a short form (`lb.`, `no.`), a mark to what follows (`palp ? not sure`), rather than to the end of a sentence."""
    if items[i].said == "?" and i + 1 < len(items) and "unsure" in items[i + 1].marks:
        return True
    if items[i].said != "." or i == 0:
        return False
    before = items[i - 1]
    if before.said in {"b", "dob"} and i + 1 < len(items) and items[i + 1].sort == "date":
        return True
    if before.said in {"no", "mr", "mrs", "dr", "approx", "vs", "wt", "wts"} and i + 1 < len(items):
        return before.said != "no"
    return False
